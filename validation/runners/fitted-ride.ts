import {
  type AxleModel,
  type BarOnBench,
  barRateAtAxle,
  type Corner,
  type CourseShape,
  type End,
  type FrictionBranch,
  type MaxwellBranch,
  measuredTable,
  type RideModel,
  runRide,
  type ShockGasReadings,
  sampleCourse,
  shockGasAt,
  withSealFriction,
} from '@lastinch/core';
import type { Values } from '../check-file.ts';
import { number, texts } from './inputs.ts';

type PerEnd<T> = Partial<Readonly<Record<End, T>>>;

/** What is fitted to the bare rig of a check, as its owner would know it. */
interface Parts {
  readonly gas?: PerEnd<ShockGasReadings & { readonly fromOpen: number }>;
  /** Seal friction [N]. */
  readonly seals?: PerEnd<number>;
  readonly bars?: PerEnd<BarOnBench>;
  readonly ends?: PerEnd<NonNullable<AxleModel['shock']['ends']>>;
  readonly oil?: PerEnd<number>;
  readonly friction?: PerEnd<FrictionBranch>;
  /** Takes the place of the rate factor. */
  readonly maxwell?: PerEnd<MaxwellBranch>;
  readonly seat?: NonNullable<RideModel['seat']>;
}

/** Far below the default: these checks ask for the equations, not for the usual accuracy of a run. */
const FINE = 1e-7;

function withParts(axle: AxleModel, end: End, parts: Parts): AxleModel {
  const { shock, stop } = axle;
  const seals = parts.seals?.[end];
  const table =
    seals === undefined ? shock : withSealFriction(measuredTable(shock.speed, shock.force), seals);
  const gas = parts.gas?.[end];
  const bar = parts.bars?.[end];
  const ends = parts.ends?.[end];
  const oilFactor = parts.oil?.[end];
  const friction = parts.friction?.[end];
  const maxwell = parts.maxwell?.[end];
  return {
    ...axle,
    ...(bar && { antiRollRate: barRateAtAxle(bar) }),
    shock: {
      ...shock,
      speed: table.speed,
      force: table.force,
      ...(gas && { gas: shockGasAt(gas, gas.fromOpen) }),
      ...(ends && { ends }),
    },
    stop: {
      ...stop,
      ...(oilFactor !== undefined && { oilFactor }),
      ...(friction && { friction }),
      ...(maxwell && { maxwell, rateFactor: 0 }),
    },
  };
}

/** A whole ride of a rig with parts fitted: peaks where the stops were used, and r.m.s. values. */
export function fittedRide(inputs: Readonly<Record<string, unknown>>): Values {
  const bare = inputs.model as RideModel;
  const parts = inputs.parts as Parts;
  const model: RideModel = {
    ...bare,
    axles: {
      front: withParts(bare.axles.front, 'front', parts),
      rear: withParts(bare.axles.rear, 'rear', parts),
    },
    ...(parts.seat && { seat: parts.seat }),
  };
  const run = runRide(model, sampleCourse(inputs.course as CourseShape), {
    speed: number(inputs.speed),
    duration: number(inputs.duration),
    tolerance: FINE,
  });
  if (run.status !== 'finished') throw new Error(`The ride of a check ended as ${run.status}`);
  const corners = texts(inputs.corners) as Corner[];
  const each = (of: (corner: Corner) => number) =>
    Object.fromEntries(corners.map((corner) => [corner, of(corner)]));
  const { body, seat } = run;
  return {
    peakCrush: each((corner) => run.corners[corner].peakCrush),
    peakStopForce: each((corner) => run.corners[corner].peakStopForce),
    peakAcceleration: body.peakAcceleration,
    rmsAcceleration: body.rmsAcceleration,
    ...(seat && {
      seat: { peakAcceleration: seat.peakAcceleration, rmsAcceleration: seat.rmsAcceleration },
    }),
  };
}
