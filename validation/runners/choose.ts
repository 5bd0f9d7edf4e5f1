import {
  hypervolume,
  type Judge,
  judgeScout,
  layOutStudy,
  mergeAnswers,
  type SearchProblem,
  type Study,
  searchPart,
  USUAL_LIMITS,
} from '@lastinch/core/choose';
import type { Runner } from '../runner.ts';
import { number, numbers } from './inputs.ts';

type Objectives = (candidate: readonly number[]) => number[];

const rest = (x: readonly number[]): number =>
  1 + (9 * x.slice(1).reduce((sum, v) => sum + v, 0)) / (x.length - 1);

/** Test functions of choices in 0…1. */
const FUNCTIONS: Readonly<Record<string, Objectives>> = {
  ZDT1: (x) => [x[0], rest(x) * (1 - Math.sqrt(x[0] / rest(x)))],
  ZDT2: (x) => [x[0], rest(x) * (1 - (x[0] / rest(x)) ** 2)],
  ZDT3: (x) => [
    x[0],
    rest(x) * (1 - Math.sqrt(x[0] / rest(x)) - (x[0] / rest(x)) * Math.sin(10 * Math.PI * x[0])),
  ],
  DTLZ2: (x) => {
    const far = 1 + x.slice(2).reduce((sum, v) => sum + (v - 0.5) ** 2, 0);
    const [s, t] = [(x[0] * Math.PI) / 2, (x[1] * Math.PI) / 2];
    return [far * Math.cos(s) * Math.cos(t), far * Math.cos(s) * Math.sin(t), far * Math.sin(s)];
  },
};

/** Scouts and parts one after another, then merged: the way of the program. */
function studyOf(options: readonly number[], resolution: number, objectives: Objectives): Study {
  const space = {
    axes: options.map((count, i) => ({ id: `x${i}`, options: count, isOrdered: true })),
    home: options.map(() => 0),
  };
  const problem: SearchProblem = {
    space,
    objectives: objectives(space.home).map((_, k) => ({ id: `f${k}`, resolution })),
    stages: ['nothing known'],
    constraints: [],
    trials: 0,
    always: [],
    seed: 1,
    limits: USUAL_LIMITS,
  };
  const judge: Judge = {
    bound: () => ({ kind: 'bound', atLeast: problem.objectives.map(() => Number.NEGATIVE_INFINITY) }),
    open: (candidate) => ({
      next: () => ({
        kind: 'judged',
        objectives: objectives(candidate).map((middle) => ({ low: middle, middle, high: middle })),
        samples: [],
      }),
    }),
  };
  const layout = layOutStudy(problem);
  const scouted = layout.scouts.map((_, scout) => judgeScout(problem, layout, judge, scout));
  const parts = Array.from({ length: layout.parts }, (_, part) =>
    searchPart(problem, layout, judge, scouted, part),
  );
  const study = mergeAnswers(problem, layout, [...scouted, ...parts]);
  if ('missing' in study) throw new Error('parts are missing');
  return study;
}

function functionStudy(inputs: Readonly<Record<string, unknown>>): Study {
  const options = numbers(inputs.options);
  const of = FUNCTIONS[String(inputs.function)];
  const resolution = inputs.resolution === undefined ? 0 : number(inputs.resolution);
  return studyOf(options, resolution, (candidate) =>
    of(candidate.map((option, axis) => option / (options[axis] - 1))),
  );
}

const points = ({ members }: Study): number[][] =>
  members.map(({ objectives }) => objectives.map(({ middle }) => middle));
const who = ({ members }: Study): number[] =>
  members.flatMap(({ index, alike }) => [index, ...alike]).sort((a, b) => a - b);

/** Fronts with known answers, and the volume they cover. */
export const choose: Runner = {
  'test-function-front': (inputs) => {
    const front = points(functionStudy(inputs));
    return { first: front.map(([f]) => f), second: front.map(([, f]) => f), count: front.length };
  },
  'test-function-who': (inputs) => who(functionStudy(inputs)),
  'test-function-sphere': (inputs) => {
    const squares = points(functionStudy(inputs)).map((point) => point.reduce((sum, v) => sum + v * v, 0));
    return { largest: Math.max(...squares), least: Math.min(...squares) };
  },
  'sums-who': ({ table }) => {
    const places = table as readonly (readonly (readonly number[])[])[];
    return who(
      studyOf(
        places.map((parts) => parts.length),
        0,
        (candidate) => [0, 1, 2].map((k) => candidate.reduce((sum, part, i) => sum + places[i][part][k], 0)),
      ),
    );
  },
  volume: ({ points: given, corner }) =>
    hypervolume(
      (given as readonly unknown[]).map((point) => numbers(point)),
      numbers(corner),
    ),
};
