import {
  absorbedPower,
  accelerationDose,
  accelerationFrom,
  DAILY_VALUES,
  dynamicResponseIndex,
  equivalentStress,
  estimatedDose,
  exposureOf,
  guidanceZone,
  horizontalSpinalResponse,
  largestSize,
  lowPassedPeak,
  maximumTransient,
  rootMeanSquare,
  SPINAL_RATE,
  seatAcceleration,
  timeToExposure,
  totalValue,
  verticalSpinalResponse,
  vibrationDose,
  type Weighting,
  weightedHistory,
  weightingResponse,
  workingLifeFactor,
} from '@lastinch/core';
import type { Runner } from '../runner.ts';
import { number, numbers, text } from './inputs.ts';
import { bumpAt, fitted, halfSineAt, sampled, sineAt } from './record.ts';

type Sines = readonly { readonly size: number; readonly frequency: number; readonly phase?: number }[];
type Pulses = readonly { readonly size: number; readonly start: number; readonly length: number }[];

const weightingOf = (value: unknown): Weighting => text(value) as Weighting;
const degrees = (angle: number): number => (angle * 180) / Math.PI;

/** What a filter makes of a long sine, after its start has died away. */
const sineThrough = (weighting: Weighting, rate: number, frequency: number) => {
  const slowest = weighting === 'Wf' ? 80 : 12;
  const sine = sampled(rate, 2.5 * slowest, (t) => Math.sin(2 * Math.PI * frequency * t));
  return fitted(weightedHistory(sine, rate, weighting), rate, frequency, slowest);
};

/** Simpson's rule over the logarithm of the frequency. */
function noiseThrough(weighting: Weighting): number {
  const [from, to, pieces] = [Math.log(1e-3), Math.log(1e5), 4000];
  const step = (to - from) / pieces;
  let total = 0;
  for (let k = 0; k <= pieces; k += 1) {
    const frequency = Math.exp(from + k * step);
    const share = k === 0 || k === pieces ? 1 : k % 2 === 1 ? 4 : 2;
    total += share * weightingResponse(weighting, frequency).gain ** 2 * frequency;
  }
  return (total * step) / 3;
}

const spinalRecord = (duration: number, of: (time: number) => number): Float64Array =>
  sampled(SPINAL_RATE, duration - 1 / SPINAL_RATE, of);

/** What a seat takes, through the public surface of core. */
export const exposure: Runner = {
  'weighting-gain': ({ weighting, at }) =>
    numbers(at).map((frequency) => weightingResponse(weightingOf(weighting), frequency).gain),
  'weighting-phase': ({ weighting, at }) =>
    numbers(at).map((frequency) => degrees(weightingResponse(weightingOf(weighting), frequency).phase)),
  'filter-gain': ({ weighting, rate, at }) =>
    numbers(at).map((frequency) => sineThrough(weightingOf(weighting), number(rate), frequency).gain),
  'filter-phase': ({ weighting, rate, at }) =>
    numbers(at).map((frequency) => sineThrough(weightingOf(weighting), number(rate), frequency).phase),
  'noise-integral': ({ weighting }) => noiseThrough(weightingOf(weighting)),
  'noise-filter': ({ weighting, rate }) => {
    const one = new Float64Array(20 * number(rate));
    one[20] = 1;
    const answer = weightedHistory(one, number(rate), weightingOf(weighting));
    return (number(rate) / 2) * answer.reduce((total, value) => total + value * value, 0);
  },
  record: ({ sines, pulses, duration, rate }) => {
    const history = sampled(number(rate), number(duration), (t) => {
      const fade = t < 1 ? (1 - Math.cos(Math.PI * t)) / 2 : 1;
      const swing = (sines as Sines).reduce((total, sine) => total + sineAt(sine, t), 0);
      return fade * swing + (pulses as Pulses).reduce((total, pulse) => total + bumpAt(pulse, t), 0);
    });
    const { seat } = exposureOf(history, number(rate));
    if (seat === null) return Number.NaN;
    const { rms, dose, peak, crestFactor, maximumTransient: transient } = seat.vertical;
    return {
      rms: rms ?? Number.NaN,
      dose,
      peak,
      crestFactor: crestFactor ?? Number.NaN,
      maximumTransient: transient ?? Number.NaN,
      maximumTransientFading: maximumTransient(
        weightedHistory(history, number(rate), 'Wk'),
        number(rate),
        'exponential',
      ),
      absorbedPower: seat.absorbedPower ?? Number.NaN,
      dynamicResponseIndex: seat.dynamicResponseIndex,
      lowPassedPeak: seat.lowPassedPeak,
      timeToAction: seat.toAction.byAcceleration ?? Number.NaN,
      timeToLimitByDose: seat.toLimit.byDose,
    };
  },
  'dri-half-sines': ({ hits, rate }) =>
    (hits as Pulses).map((hit) =>
      dynamicResponseIndex(
        sampled(number(rate), 1, (t) => halfSineAt({ ...hit, start: 0.1 }, t)),
        number(rate),
      ),
    ),
  'dri-step': ({ size, rate }) =>
    dynamicResponseIndex(
      sampled(number(rate), 1, () => number(size)),
      number(rate),
    ),
  'dri-impulse': ({ speedChange, length, rate }) => {
    // A bump without corners: its samples add up to its area.
    const size = (2 * number(speedChange)) / number(length);
    return dynamicResponseIndex(
      sampled(number(rate), 0.5, (t) => bumpAt({ size, start: 0.1, length: number(length) }, t)),
      number(rate),
    );
  },
  'absorbed-power': ({ at, rate, duration }) =>
    numbers(at).map((frequency) =>
      absorbedPower(
        sampled(number(rate), number(duration), (t) => Math.SQRT2 * Math.sin(2 * Math.PI * frequency * t)),
        number(rate),
      ),
    ),
  'low-passed-peak': ({ at, rate }) =>
    numbers(at).map((frequency) =>
      lowPassedPeak(
        sampled(number(rate), 6, (t) => {
          const fade = t < 4 ? (1 - Math.cos((Math.PI * t) / 4)) / 2 : 1;
          return fade * Math.sin(2 * Math.PI * frequency * t);
        }),
        number(rate),
      ),
    ),
  sine: ({ frequency, duration, rate }) => {
    const history = sampled(number(rate), number(duration), (t) =>
      sineAt({ size: Math.SQRT2, frequency: number(frequency) }, t),
    );
    const rms = rootMeanSquare(history);
    return {
      rms,
      dose: vibrationDose(history, number(rate)),
      estimatedDose: estimatedDose(rms, number(duration)),
      crestFactor: largestSize(history) / rms,
    };
  },
  burst: ({ frequency, length, rate }) => {
    const history = sampled(number(rate), 4, (t) =>
      t > 1 && t < 1 + number(length) ? sineAt({ size: Math.SQRT2, frequency: number(frequency) }, t - 1) : 0,
    );
    return {
      linear: maximumTransient(history, number(rate), 'linear'),
      exponential: maximumTransient(history, number(rate), 'exponential'),
    };
  },
  'total-value': ({ foreAndAft, sideways, vertical }) =>
    totalValue({ foreAndAft: number(foreAndAft), sideways: number(sideways), vertical: number(vertical) }),
  'time-to-values': ({ counted }) => ({
    action: timeToExposure(number(counted), DAILY_VALUES.action.acceleration) / 3600,
    limit: timeToExposure(number(counted), DAILY_VALUES.limit.acceleration) / 3600,
  }),
  'estimated-doses': ({ accelerations, duration }) =>
    numbers(accelerations).map((acceleration) => estimatedDose(acceleration, number(duration))),
  zone: ({ duration }) => {
    const { equalEnergy, fourthPower } = guidanceZone(number(duration));
    return { equalEnergy: { ...equalEnergy }, fourthPower: { ...fourthPower } };
  },
  'spinal-level-gain': ({ at }) =>
    numbers(at).map((frequency) => {
      const sine = spinalRecord(60, (t) => Math.sin(2 * Math.PI * frequency * t));
      return fitted(horizontalSpinalResponse(sine), SPINAL_RATE, frequency, 20).gain;
    }),
  'spinal-network': ({ steady, swings, halfSines, length }) => {
    const response = (of: (time: number) => number) => verticalSpinalResponse(spinalRecord(12, of));
    return {
      steady: Object.fromEntries(
        Object.entries(steady as Record<string, number>).map(([name, value]) => [
          name,
          response(() => value).at(-1) ?? Number.NaN,
        ]),
      ),
      swings: Object.fromEntries(
        (swings as readonly { name: string; size: number; frequency: number }[]).map(({ name, ...sine }) => {
          const settled = response((t) => sineAt(sine, t)).slice(-4 * SPINAL_RATE);
          return [name, { highest: Math.max(...settled), lowest: Math.min(...settled) }];
        }),
      ),
      halfSines: numbers(halfSines).map((size) =>
        Math.max(...response((t) => halfSineAt({ size, start: 1, length: number(length) }, t))),
      ),
    };
  },
  'spinal-dose': ({ swings, halfSine, duration }) => {
    const history = spinalRecord(
      number(duration),
      (t) =>
        (swings as Sines).reduce((total, sine) => total + sineAt(sine, t), 0) +
        halfSineAt({ size: number(halfSine), start: 1, length: 0.1 }, t),
    );
    return {
      vertical: accelerationDose(verticalSpinalResponse(history), 'upward'),
      level: accelerationDose(horizontalSpinalResponse(history), 'both'),
    };
  },
  'spinal-stress': ({ foreAndAft, sideways, vertical }) =>
    equivalentStress({
      foreAndAft: number(foreAndAft),
      sideways: number(sideways),
      vertical: number(vertical),
    }),
  'spinal-factor': ({ stresses, startAge, daysPerYear, years }) =>
    numbers(stresses).map((stress) =>
      workingLifeFactor(stress, {
        startAge: number(startAge),
        daysPerYear: number(daysPerYear),
        years: number(years),
      }),
    ),
  'seat-place': ({ heave, pitch, roll, ahead, left, rate, samples }) => {
    const motion = (of: unknown) =>
      accelerationFrom(
        sampled(number(rate), 4, (t) => sineAt(of as Sines[0], t)),
        number(rate),
      );
    const seat = seatAcceleration(
      { heave: motion(heave), pitch: motion(pitch), roll: motion(roll) },
      { ahead: number(ahead), left: number(left) },
    );
    return numbers(samples).map((n) => seat[n]);
  },
};
