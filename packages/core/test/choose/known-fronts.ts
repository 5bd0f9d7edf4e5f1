import type { Judge, SearchProblem } from '../../src/choose/problem.ts';
import { USUAL_LIMITS } from '../../src/choose/problem.ts';
import type { ChoiceAxis } from '../../src/choose/space.ts';

/** Objectives as functions of choices in 0…1. */
export type TestFunction = (x: readonly number[]) => number[];

const rest = (x: readonly number[]): number =>
  1 + (9 * x.slice(1).reduce((sum, v) => sum + v, 0)) / (x.length - 1);

/** @source Zitzler, Deb, Thiele, Evol. Comput. 8 (2000) 173: read in the manuals of two libraries, which agree */
export const ZDT: Readonly<Record<'ZDT1' | 'ZDT2' | 'ZDT3', TestFunction>> = {
  ZDT1: (x) => [x[0], rest(x) * (1 - Math.sqrt(x[0] / rest(x)))],
  ZDT2: (x) => [x[0], rest(x) * (1 - (x[0] / rest(x)) ** 2)],
  ZDT3: (x) => [
    x[0],
    rest(x) * (1 - Math.sqrt(x[0] / rest(x)) - (x[0] / rest(x)) * Math.sin(10 * Math.PI * x[0])),
  ],
};

/** Three objectives. @source Deb, Thiele, Laumanns, Zitzler (2005): read in the manual of a library */
export const DTLZ2: TestFunction = (x) => {
  const far = 1 + x.slice(2).reduce((sum, v) => sum + (v - 0.5) ** 2, 0);
  const [a, b] = [(x[0] * Math.PI) / 2, (x[1] * Math.PI) / 2];
  return [far * Math.cos(a) * Math.cos(b), far * Math.cos(a) * Math.sin(b), far * Math.sin(a)];
};

export const axes = (options: readonly number[]): ChoiceAxis[] =>
  options.map((count, i) => ({ id: `x${i + 1}`, options: count, isOrdered: true }));

/** Choices in 0…1, evenly spaced. */
export const valuesOf = (options: readonly number[], candidate: readonly number[]): number[] =>
  candidate.map((option, axis) => (options[axis] === 1 ? 0 : option / (options[axis] - 1)));

export function problemOf(
  options: readonly number[],
  objectives: number,
  change: Partial<SearchProblem> = {},
): SearchProblem {
  return {
    space: { axes: axes(options), home: options.map(() => 0) },
    objectives: Array.from({ length: objectives }, (_, k) => ({ id: `f${k + 1}`, resolution: 0 })),
    stages: ['nothing known'],
    constraints: [],
    trials: 0,
    always: [],
    seed: 1,
    limits: USUAL_LIMITS,
    ...change,
  };
}

/** Judges by a function, in one stage, with nothing known before. */
export function judgeOf(options: readonly number[], f: TestFunction, count?: { judged: number }): Judge {
  return {
    bound: () => ({ kind: 'bound', atLeast: f(options.map(() => 0)).map(() => Number.NEGATIVE_INFINITY) }),
    open: (candidate) => ({
      next() {
        if (count) count.judged += 1;
        return {
          kind: 'judged',
          objectives: f(valuesOf(options, candidate)).map((v) => ({ low: v, middle: v, high: v })),
          samples: [],
        };
      },
    }),
  };
}
