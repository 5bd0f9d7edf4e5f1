import type { End } from '@lastinch/core';
import type { DrawnAxle } from '@lastinch/picture';
import { useMemo } from 'react';
import type { Answers, Lane } from '../../answers.ts';
import { type AxleAnswer, type AxleStand, axleOf, type LinkedAxle, posedAxle, type Reach } from './axle.ts';
import { COARSE, FINE, figuresHere, figuresOver } from './figures.ts';
import type { FiguresPair } from './LinkCurves.tsx';
import { withPoint } from './points.ts';
import type { HeldPoint } from './use-drag.ts';

export type AxlePair = Readonly<Record<Lane, AxleAnswer | null>>;

/** Both setups as they stand at ride height, the proposal with the point that is under the finger. */
export function useAxles(answers: Answers, end: End, held: HeldPoint | null): AxlePair {
  const { now, proposed } = answers;
  const still = useMemo(
    () => (now.setup === null || now.check === null ? null : axleOf(now.setup, now.check, end)),
    [now.setup, now.check, end],
  );
  const moved = useMemo(() => {
    if (proposed.setup === null || proposed.check === null || proposed.setupId === now.setupId) return null;
    const setup = held === null ? proposed.setup : withPoint(proposed.setup, end, held.target, held.total);
    return axleOf(setup, proposed.check, end);
  }, [proposed.setup, proposed.check, proposed.setupId, now.setupId, end, held]);
  return useMemo(() => ({ now: still, proposed: moved }), [still, moved]);
}

const linkedOf = (answer: AxleAnswer | null): LinkedAxle | null =>
  answer?.status === 'linked' ? answer.axle : null;
export const linkedPair = (axles: AxlePair): Readonly<Record<Lane, LinkedAxle | null>> => ({
  now: linkedOf(axles.now),
  proposed: linkedOf(axles.proposed),
});

export function useCurves(
  axles: AxlePair,
  end: End,
  reach: Reach,
  roll: number,
  quick: boolean,
): FiguresPair {
  const count = quick ? COARSE : FINE;
  const over = (answer: AxleAnswer | null) => {
    const axle = linkedOf(answer);
    return axle === null ? null : figuresOver(axle, end, reach, roll, count);
  };
  const { bump, droop } = reach;
  // biome-ignore lint/correctness/useExhaustiveDependencies: a range of the same ends is the same range.
  const now = useMemo(() => over(axles.now), [axles.now, end, bump, droop, roll, count]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a range of the same ends is the same range.
  const proposed = useMemo(() => over(axles.proposed), [axles.proposed, end, bump, droop, roll, count]);
  return useMemo(() => ({ now, proposed }), [now, proposed]);
}

export interface PosedLane {
  readonly drawn: DrawnAxle | null;
  readonly figures: ReturnType<typeof figuresHere>;
  /** In words, when the links do not go there. */
  readonly stopped: {
    readonly links: readonly string[];
    readonly bump: number;
    readonly roll: number;
  } | null;
}

export function posedPair(
  axles: AxlePair,
  end: End,
  stand: AxleStand,
): Readonly<Record<Lane, PosedLane | null>> {
  const of = (lane: Lane): PosedLane | null => {
    const axle = linkedOf(axles[lane]);
    if (axle === null) return null;
    const figures = figuresHere(axle, end, stand);
    const posed = posedAxle(axle, stand);
    if (posed.status === 'unreachable') return { drawn: null, figures, stopped: posed.unreachable };
    const { curves } = figures;
    const [x, z, roll, rise] = [
      curves.instantX[0],
      curves.instantZ[0],
      curves.rollCentreZ[0],
      curves.rollAxisRise[0],
    ];
    return {
      figures,
      stopped: null,
      drawn: {
        name: lane === 'now' ? 'now' : 'proposed',
        geometry: axle.geometry,
        pose: posed.pose,
        shaft:
          axle.shaft === null
            ? null
            : { pinion: axle.shaft.pinionJoint.point, case: axle.shaft.caseJoint.point },
        dragLink: axle.dragLink,
        instant: x === undefined || z === undefined ? null : { x, z },
        rollCentre: roll === undefined || rise === undefined ? null : { z: roll, rise },
      },
    };
  };
  return { now: of('now'), proposed: of('proposed') };
}
