import {
  CORNERS,
  type CourseShape,
  type RideHistory,
  type RideModel,
  type RideRun,
  runRide,
  sampleCourse,
} from '@lastinch/core';
import type { Runner } from '../runner.ts';
import { fittedRide } from './fitted-ride.ts';
import { number, numbers } from './inputs.ts';
import { type LinearRig, linearModel } from './linear-rig.ts';
import { amplitudeAt, twoSwings } from './signal.ts';

const NAMES = ['heave', 'pitch', 'roll', 'frontHeave', 'frontRoll', 'rearHeave', 'rearRoll'] as const;
type Coordinate = (typeof NAMES)[number];

/** Far below the default: these checks ask for the equations, not for the usual accuracy of a run. */
const FINE = 1e-8;
/** Enough for an amplitude fitted through hundreds of samples. */
const FITTED = 1e-7;

function historyOf(
  rig: unknown,
  course: CourseShape,
  {
    speed,
    duration,
    rate,
    tolerance = FINE,
  }: { speed: number; duration: number; rate: number; tolerance?: number },
): RideHistory {
  const run = runRide(linearModel(rig as LinearRig), sampleCourse(course), {
    speed,
    duration,
    tolerance,
    historyRate: rate,
  });
  if (run.status !== 'finished' || run.history === null)
    throw new Error(`The ride of a check ended as ${run.status}`);
  return run.history;
}

const sample = (history: RideHistory, name: Coordinate, index: number): number =>
  history.coordinates[7 * index + NAMES.indexOf(name)];

const record = (history: RideHistory, name: Coordinate): number[] =>
  Array.from({ length: history.count }, (_, k) => sample(history, name, k));

/** Let go above flat ground; sampled at the given times, which are multiples of 50 ms. */
function letGo(
  model: unknown,
  lift: unknown,
  times: readonly number[],
): { history: RideHistory; at: number[] } {
  const rate = 20;
  const history = historyOf(
    model,
    { kind: 'drop', height: number(lift) },
    { speed: 1, duration: Math.max(...times) + 0.01, rate },
  );
  return { history, at: times.map((time) => Math.round(time * rate)) };
}

/** Steady motion over a sine road whose wave is as long as the wheelbase: both ends see the same ground. */
function overSine({ model, frequency, amplitude, settle, periods }: Readonly<Record<string, unknown>>) {
  const { sprung } = model as LinearRig;
  const f = number(frequency);
  const spacing = sprung.toFrontAxle + sprung.toRearAxle;
  const speed = f * spacing;
  const duration = number(settle) + number(periods) / f;
  const height = number(amplitude);
  const rate = Math.ceil(40 * f);
  const history = historyOf(
    model,
    {
      kind: 'waves',
      waves: [{ n: 1 / spacing, common: height, commonPhase: 0, own: 0, leftPhase: 0, rightPhase: 0 }],
      fadeIn: (speed * number(settle)) / 2,
      length: speed * duration + spacing,
    },
    { speed, duration, rate, tolerance: FITTED },
  );
  const first = Math.ceil(number(settle) * rate);
  const times = Array.from({ length: history.count - first }, (_, k) => (first + k) / rate);
  const gain = (motion: (index: number, time: number) => number) =>
    amplitudeAt(
      times.map((time, k) => motion(first + k, time)),
      times,
      f,
    ) / height;
  const body = (k: number) => sample(history, 'heave', k);
  const axle = (k: number) => sample(history, 'frontHeave', k);
  const ground = (time: number) => height * Math.sin(2 * Math.PI * f * time);
  return {
    body: gain(body),
    suspension: gain((k) => axle(k) - body(k)),
    tyre: gain((k, time) => ground(time) - axle(k)),
  };
}

function decayOf({ model, lift, step, count }: Readonly<Record<string, unknown>>) {
  const rate = Math.round(1 / number(step));
  const history = historyOf(
    model,
    { kind: 'drop', height: number(lift) },
    { speed: 1, duration: number(count) / rate, rate },
  );
  return twoSwings([record(history, 'heave'), record(history, 'frontHeave')], 1 / rate);
}

/** A whole ride of a model that stands in the check as the engine takes it. */
function wholeRide({ model, course, speed, duration }: Readonly<Record<string, unknown>>): RideRun {
  const run = runRide(model as RideModel, sampleCourse(course as CourseShape), {
    speed: number(speed),
    duration: number(duration),
    tolerance: FITTED,
    historyRate: 20,
  });
  if (run.status !== 'finished') throw new Error(`The ride of a check ended as ${run.status}`);
  return run;
}

const atCorners = (run: RideRun, of: (corner: RideRun['corners']['frontLeft']) => number) =>
  Object.fromEntries(CORNERS.map((corner) => [corner, of(run.corners[corner])]));

/** The ride engine against closed forms and general solvers: as a linear machine, and with all that switches. */
export const ride: Runner = {
  'free-heave': ({ model, lift, times }) => {
    const { history, at } = letGo(model, lift, numbers(times));
    return {
      body: at.map((k) => sample(history, 'heave', k)),
      axle: at.map((k) => sample(history, 'frontHeave', k)),
    };
  },
  'decay-poles': (inputs) => {
    const { ride, hop } = decayOf(inputs);
    return {
      rideFrequency: ride.frequency,
      rideDamping: ride.damping,
      hopFrequency: hop.frequency,
      hopDamping: hop.damping,
    };
  },
  'decay-frequencies': (inputs) => {
    const { ride, hop } = decayOf(inputs);
    return { rideFrequency: ride.frequency, hopFrequency: hop.frequency };
  },
  'sine-gains': (inputs) => overSine(inputs),
  'sine-gain-body': (inputs) => overSine(inputs).body,
  'sine-gain-suspension': (inputs) => overSine(inputs).suspension,
  'common-heave': ({ model, lift, times }) => {
    const { history, at } = letGo(model, lift, numbers(times));
    const { sprung, front, rear } = model as LinearRig;
    return at.map(
      (k) =>
        (sprung.mass * sample(history, 'heave', k) +
          front.mass * sample(history, 'frontHeave', k) +
          rear.mass * sample(history, 'rearHeave', k)) /
        (sprung.mass + front.mass + rear.mass),
    );
  },
  ends: ({ model, course, speed, times }) => {
    const at = numbers(times);
    const rate = 20;
    const history = historyOf(model, course as CourseShape, {
      speed: number(speed),
      duration: Math.max(...at) + 0.01,
      rate,
    });
    const { toFrontAxle, toRearAxle } = (model as LinearRig).sprung;
    const rise = (x: number) =>
      at.map((time) => {
        const k = Math.round(time * rate);
        return sample(history, 'heave', k) - x * sample(history, 'pitch', k);
      });
    return { front: rise(toFrontAxle), rear: rise(-toRearAxle) };
  },
  'whole-motion': (inputs) => {
    const { history } = wholeRide(inputs);
    if (history === null) throw new Error('The ride of a check has no history');
    return Object.fromEntries(
      NAMES.map((name) => [
        name,
        numbers(inputs.times).map((time) => sample(history, name, Math.round(time * 20))),
      ]),
    );
  },
  'fitted-ride': fittedRide,
  'whole-crush': (inputs) => atCorners(wholeRide(inputs), ({ peakCrush }) => peakCrush),
  'whole-force': (inputs) => atCorners(wholeRide(inputs), ({ peakStopForce }) => peakStopForce),
  coordinates: ({ model, course, speed, times }) => {
    const at = numbers(times);
    const rate = 20;
    const history = historyOf(model, course as CourseShape, {
      speed: number(speed),
      duration: Math.max(...at) + 0.01,
      rate,
    });
    return Object.fromEntries(
      NAMES.map((name) => [name, at.map((time) => sample(history, name, Math.round(time * rate)))]),
    );
  },
};
