import {
  type AxleModel,
  type asSolidAxle,
  type CourseShape,
  type RideModel,
  runRide,
  sampleCourse,
} from '@lastinch/core';
import { number, numbers } from './inputs.ts';
import { linearModel } from './linear-rig.ts';

interface WheelPair {
  readonly mass: number;
  readonly track: number;
  readonly rate: number;
  readonly ratio: number;
  readonly c: number;
  readonly shockRatio: number;
}

const NAMES = ['heave', 'pitch', 'roll', 'frontHeave', 'frontRoll', 'rearHeave', 'rearRoll'] as const;

/** Motion of a rig on independent wheels, which the engine drives as the solid axles that they are made into. */
export function independentMotion(inputs: Readonly<Record<string, unknown>>, made: typeof asSolidAxle) {
  const { sprung, front, rear, tyre, course } = inputs as {
    readonly sprung: RideModel['sprung'];
    readonly front: WheelPair;
    readonly rear: WheelPair;
    readonly tyre: { readonly rate: number; readonly damping: number };
    readonly course: CourseShape;
  };
  const linear = ({ mass, track, rate, c }: WheelPair) => {
    const { rollInertia, spread } = made({ mass, track });
    return {
      mass,
      rollInertia,
      halfTrack: track / 2,
      springStation: spread / 2,
      springRate: rate,
      shockStation: spread / 2,
      shockSlope: c,
      tyreRate: tyre.rate,
      tyreDamping: tyre.damping,
    };
  };
  const model = linearModel({ sprung, front: linear(front), rear: linear(rear) });
  const geared = (axle: AxleModel, { ratio, shockRatio }: WheelPair): AxleModel => ({
    ...axle,
    spring: { ...axle.spring, ratio },
    shock: { ...axle.shock, ratio: shockRatio },
  });
  const at = numbers(inputs.times);
  const rate = 20;
  const run = runRide(
    { ...model, axles: { front: geared(model.axles.front, front), rear: geared(model.axles.rear, rear) } },
    sampleCourse(course),
    { speed: number(inputs.speed), duration: Math.max(...at) + 0.01, tolerance: 1e-8, historyRate: rate },
  );
  const { history } = run;
  if (run.status !== 'finished' || history === null)
    throw new Error(`The ride of a check ended as ${run.status}`);
  return Object.fromEntries(
    NAMES.map((name, i) => [name, at.map((time) => history.coordinates[7 * Math.round(time * rate) + i])]),
  );
}
