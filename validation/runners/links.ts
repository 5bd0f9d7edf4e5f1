import {
  type AxleCurves,
  type AxleGeometry,
  curvesOf,
  type DragLink,
  type PoseResult,
  poseOf,
  type StrutId,
} from '@lastinch/core';
import type { Values } from '../check-file.ts';
import type { Runner } from '../runner.ts';
import { number } from './inputs.ts';

interface Asked {
  readonly bump: number;
  readonly roll: number;
}

const posesOf = (poses: unknown) => poses as readonly Asked[];

function reached(geometry: unknown, { bump, roll }: Asked) {
  const result: PoseResult = poseOf(geometry as AxleGeometry, bump, roll);
  if (result.status !== 'reached') throw new Error(`A pose of a check cannot be reached: ${bump}, ${roll}`);
  return result;
}

/** Curves at one pose alone, of a rear axle. */
const curvesAt = (geometry: unknown, { bump, roll }: Asked, dragLink?: DragLink): AxleCurves =>
  curvesOf(geometry as AxleGeometry, {
    bumps: [bump],
    rolls: [roll],
    end: 'rear',
    ...(dragLink === undefined ? {} : { dragLink }),
  });

const ATRIDE: Asked = { bump: 0, roll: 0 };

/** Poses of linked axles and what follows from them. */
export const links: Runner = {
  poses: ({ geometry, poses }) => ({
    poses: posesOf(poses).map((asked): Values => {
      const { pose, gives } = reached(geometry, asked);
      const { kind } = geometry as AxleGeometry;
      return {
        shift: pose.shift,
        rotation: pose.rotation,
        ...(kind === 'four-link' ? { gives: gives.map(({ length }) => length) } : {}),
        ...(kind === 'radius-arms' ? { clamps: gives.slice(0, 2).map(({ turn }) => turn) } : {}),
      };
    }),
  }),
  'poses-near': ({ geometry, poses }) => ({
    poses: posesOf(poses).map((asked): Values => {
      const { pose, gives } = reached(geometry, asked);
      const curves = curvesAt(geometry, asked);
      return {
        shift: pose.shift,
        steer: curves.steer[0],
        wind: -curves.pinion[0],
        gives: gives.map(({ length }) => length),
      };
    }),
  }),
  lines: ({ geometry, poses }) => ({
    poses: posesOf(poses).map((asked): Values => {
      const curves = curvesAt(geometry, asked);
      const { antiSlope, rollCentreZ, rollAxisRise, bumpSteer, rollSteer, instantX, instantZ } = curves;
      const struts = (Object.keys(curves.struts) as StrutId[]).filter((id) => !id.startsWith('stop'));
      return {
        antiSlope: antiSlope[0],
        rollCentreZ: rollCentreZ[0],
        rollAxisRise: rollAxisRise[0],
        bumpSteer: bumpSteer[0],
        rollSteer: rollSteer[0],
        instantX: instantX[0],
        instantZ: instantZ[0],
        struts: Object.fromEntries(
          struts.map((id) => [
            id,
            {
              byBump: curves.struts[id]?.byBump[0] ?? Number.NaN,
              byRoll: curves.struts[id]?.byRoll[0] ?? Number.NaN,
              length: curves.struts[id]?.length[0] ?? Number.NaN,
            },
          ]),
        ),
      };
    }),
  }),
  'side-view': ({ geometry, wheelbase, cgHeight }) => {
    const axle = geometry as AxleGeometry;
    const curves = curvesOf(axle, {
      bumps: [0],
      rolls: [0],
      end: 'rear',
      anti: { wheelbase: number(wheelbase), cgHeight: number(cgHeight), driveShare: 1, brakeShare: 0 },
    });
    return {
      ahead: curves.instantX[0] - axle.centre[0],
      above: curves.instantZ[0] - axle.centre[2] + axle.tyreRadius,
      antiSlope: curves.antiSlope[0],
      antiSquat: curves.antiDrive?.[0] ?? Number.NaN,
    };
  },
  'roll-centre': ({ geometry }) => ({ rollCentreZ: curvesAt(geometry, ATRIDE).rollCentreZ[0] }),
  'drag-link': ({ geometry, dragLink, poses }) => ({
    headings: posesOf(poses).map(
      (asked) => curvesAt(geometry, asked, dragLink as DragLink).wheelSteer?.[0] ?? Number.NaN,
    ),
  }),
};
