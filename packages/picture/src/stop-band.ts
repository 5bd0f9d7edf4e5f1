import { fromSi, shownUnit, type UnitSystem, type Verdict } from '@lastinch/core';
import type { StopCandidate, StopNeed, StopVerdict } from '@lastinch/core/stops';
import { type CurveBand, type CurveSeries, curveScene } from './curve.ts';
import type { Role } from './role.ts';
import type { Scene } from './scene.ts';

export interface StopBandOptions {
  readonly need: StopNeed;
  /** Stop that the other of two compared setups has on this end; null where there is none, or it is the same. */
  readonly other: string | null;
  readonly system: UnitSystem;
  readonly width: number;
  readonly height?: number;
}

const VERDICTS: Readonly<Record<StopVerdict, { readonly word: string; readonly mark: Verdict }>> = {
  does: { word: 'fine', mark: 'pass' },
  open: { word: 'open', mark: 'not-proven' },
  'does-not': { word: 'over', mark: 'fail' },
};
/** Shown beyond the end of the room, as a share of it. */
const BEYOND = 0.15;
/** Shown above the highest force that matters. */
const HEADROOM = 1.25;

/** Curves of stops in a legend and in tables go by their letters, in the order of the answer. */
export const stopLetter = (index: number): string => String.fromCharCode(97 + (index % 26));

/**
 * Which force curves an end needs, shaded, with the stops that were driven over it. Crush counts from where the present
 * stop touches; where the room ends, reserve and flex begin.
 */
export const stopBandScene = (options: StopBandOptions): Scene => {
  const { need, other, system, width, height } = options;
  const driven = need.candidates.filter((one) => 'verdict' in one);
  const most =
    HEADROOM *
    Math.max(
      need.least[need.least.length - 1] ?? 0,
      ...driven.map((one) => forceAtRoom(one, need.room)),
      need.limits.bracket?.value ?? 0,
    );
  const length = shownUnit('length', system, need.room);
  const force = shownUnit('force', system, most);
  const inLength = (value: number): number => fromSi(value, length);
  const inForce = (value: number): number => fromSi(value, force);
  const end = inLength(need.room * (1 + BEYOND));
  const series = driven.map((one, k): CurveSeries => {
    const { x, y } = upTo(
      one.curve.crush.map((c) => inLength(c + one.touchesAfter)),
      one.curve.force.map(inForce),
      end,
    );
    const where = one.isInSetup ? ', on it now' : one.id === other ? ', on it in the other setup' : '';
    return {
      name: `${one.id}: ${VERDICTS[one.verdict].word}${where}`,
      letter: stopLetter(k),
      verdict: VERDICTS[one.verdict].mark,
      role: roleOf(one, other),
      x,
      y,
    };
  });
  const bands: CurveBand[] = [
    { axis: 'x', from: inLength(need.room), to: end, role: 'reserve', label: 'reserve' },
  ];
  if (need.limits.bracket !== null) {
    const limit = inForce(need.limits.bracket.value);
    bands.push({ axis: 'y', from: limit, to: limit, role: 'limit', label: 'bracket bears' });
  }
  return curveScene({
    series,
    areas:
      need.crush.length === 0
        ? []
        : [
            {
              x: need.crush.map(inLength),
              low: need.least.map(inForce),
              high: need.most.map(inForce),
              role: 'allowed',
              words: { above: 'hits too hard', inside: 'does', below: 'runs into metal' },
            },
          ],
    bands,
    most: inForce(most),
    xLabel: `crush from where the present stop touches, ${length.name}`,
    yLabel: `force, ${force.name}`,
    width,
    ...(height !== undefined && { height }),
  });
};

/** A curve as far as an x: what goes on past the metal is of no use to anybody. */
const upTo = (x: readonly number[], y: readonly number[], end: number) => {
  const k = x.findIndex((value) => value > end);
  if (k < 1) return { x, y };
  const share = (end - x[k - 1]!) / (x[k]! - x[k - 1]!);
  return {
    x: [...x.slice(0, k), end],
    y: [...y.slice(0, k), y[k - 1]! + (y[k]! - y[k - 1]!) * share],
  };
};

const roleOf = (one: StopCandidate, other: string | null): Role =>
  one.isInSetup ? 'first' : one.id === other ? 'second' : 'third';

/** Force of a stop at the end of the room, or at the end of its own curve [N]. */
const forceAtRoom = ({ curve, touchesAfter }: StopCandidate, room: number): number => {
  const k = curve.crush.findIndex((c) => c + touchesAfter >= room);
  return curve.force[k === -1 ? curve.force.length - 1 : k] ?? 0;
};
