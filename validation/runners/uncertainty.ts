import { type Corner, normalQuantile, normalTrials, type TravelColumn, travelOf } from '@lastinch/core';
import type { Runner } from '../runner.ts';
import { number, numbers, text } from './inputs.ts';
import { type Known, knownSetup } from './known-rig.ts';

const SEED = 1;

/** The column of a corner, by the usual number of trials unless the check asks for more. */
function columnOf({ corner, readings, trials }: Readonly<Record<string, unknown>>): TravelColumn {
  const options = { seed: SEED, ...(trials === undefined ? {} : { trials: number(trials) }) };
  return travelOf(knownSetup(readings as Known), options).corners[text(corner) as Corner];
}

/** The q-quantile of a sample, straight between its order statistics. */
function quantile(sample: readonly number[], q: number): number {
  const sorted = [...sample].sort((a, b) => a - b);
  const place = q * (sorted.length - 1);
  const below = Math.floor(place);
  const above = Math.min(below + 1, sorted.length - 1);
  return sorted[below] + (place - below) * (sorted[above] - sorted[below]);
}

const column = (trials: Float64Array, dimensions: number, which: number): number[] =>
  Array.from({ length: trials.length / dimensions }, (_, trial) => trials[trial * dimensions + which]);

const mean = (sample: readonly number[]): number => sample.reduce((a, b) => a + b, 0) / sample.length;
const moment = (a: readonly number[], b: readonly number[]): number =>
  mean(a.map((value, i) => value * b[i]));

/** The entry that lies furthest from where it belongs. */
const furthest = (values: readonly number[], from: number): number =>
  values.reduce((a, b) => (Math.abs(b - from) > Math.abs(a - from) ? b : a));

/** Normal trials, propagation through a travel column, probabilities. */
export const uncertainty: Runner = {
  'normal-moments': ({ count, dimensions }) => {
    const size = number(dimensions);
    const trials = normalTrials(number(count), size, SEED);
    const columns = Array.from({ length: size }, (_, which) => column(trials, size, which));
    const pairs = columns.flatMap((a, i) => columns.slice(i + 1).map((b) => moment(a, b)));
    return {
      mean: furthest(columns.map(mean), 0),
      variance: furthest(
        columns.map((each) => moment(each, each)),
        1,
      ),
      fourth: furthest(
        columns.map((each) => mean(each.map((z) => z ** 4))),
        3,
      ),
      correlation: furthest(pairs, 0),
    };
  },
  'normal-quantiles': ({ count, probabilities }) => {
    const trials = [...normalTrials(number(count), 1, SEED)];
    return numbers(probabilities).map((q) => quantile(trials, q));
  },
  'additive-model': ({ count, quantities }) => {
    const size = number(quantities);
    const trials = normalTrials(number(count), size, SEED);
    const sums = Array.from({ length: number(count) }, (_, trial) =>
      trials.subarray(trial * size, (trial + 1) * size).reduce((a, b) => a + b, 0),
    );
    const standard = Math.sqrt(moment(sums, sums) - mean(sums) ** 2);
    return { standard, low: quantile(sums, 0.025), high: quantile(sums, 0.975) };
  },
  quantile: ({ probabilities }) => numbers(probabilities).map(normalQuantile),
  column: (inputs) => {
    const { hardTravel, spare } = columnOf(inputs);
    return {
      hardTravel: hardTravel.value,
      hardTravelTolerance: hardTravel.tolerance ?? Number.NaN,
      spare: spare.value,
      spareTolerance: spare.tolerance ?? Number.NaN,
    };
  },
  'column-probability': (inputs) => ({
    spareBelowZero: columnOf(inputs).probability.spareBelowZero,
  }),
  'column-blame': (inputs) =>
    Object.fromEntries(
      columnOf(inputs)
        .blame.filter(({ share }) => share > 0)
        .map(({ key, share }) => [key, share]),
    ),
  'first-share': (inputs) =>
    Object.fromEntries(columnOf(inputs).contacts.map(({ id, firstShare }) => [id, firstShare])),
  'hard-travel': (inputs) => ({
    halfWidth: columnOf(inputs).hardTravel.tolerance ?? Number.NaN,
  }),
};
