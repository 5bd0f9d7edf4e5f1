import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { hypervolume } from '../../src/choose/hypervolume.ts';
import { mergeAnswers } from '../../src/choose/merge.ts';
import { compared, type Report } from '../../src/choose/objectives.ts';
import { packAnswer, packedWidth, unpackAnswer } from '../../src/choose/pack.ts';
import { frontOf } from '../../src/choose/pareto.ts';
import { layOutStudy } from '../../src/choose/parts.ts';
import { type Judge, type SearchProblem, USUAL_LIMITS } from '../../src/choose/problem.ts';
import { candidateAt, candidateCount, indexOf } from '../../src/choose/space.ts';
import { startSearch } from '../../src/choose/start.ts';
import { randomStream } from '../../src/numerics/random.ts';
import { DTLZ2, judgeOf, problemOf, valuesOf, ZDT } from './known-fronts.ts';
import { answersOf, standing, studyOf } from './study.ts';

const ZDTS = ['ZDT1', 'ZDT2', 'ZDT3'] as const;

/** An invented job: three courses whose worst counts, a sum of prices, a share of trials that go wrong. */
interface Job {
  readonly problem: SearchProblem;
  readonly judge: Judge;
  /** Middles straight away, without stages or bounds; null when it is barred. */
  truth(index: number): readonly number[] | null;
}

const STAGES = ['price', 'first course', 'second course', 'third course'];

function jobOf(options: readonly number[], seed: number, resolution: number, bars: boolean): Job {
  const random = randomStream(seed);
  const draw = (most: number): number => random.below(most * 10) / 10;
  const price = options.map((count) => Array.from({ length: count }, () => random.below(4)));
  const courses = [0, 1, 2].map(() => options.map((count) => Array.from({ length: count }, () => draw(6))));
  const twist = Array.from({ length: 64 }, () => draw(3));
  const sum = (table: readonly number[][], candidate: readonly number[]): number =>
    candidate.reduce((total, option, axis) => total + table[axis][option], 0);
  const onCourse = (course: number, candidate: readonly number[]): number =>
    sum(courses[course], candidate) +
    twist[(sum(price, candidate) * 7 + course * 11 + candidate[0] * 3) % 64];
  const problem = problemOf(options, 3, {
    stages: STAGES,
    constraints: ['dear', 'odd'],
    objectives: ['price', 'worst', 'total'].map((id) => ({ id, resolution })),
    always: [0],
    seed,
  });
  const barredBy = (candidate: readonly number[]): string[] => {
    const by: string[] = [];
    if (bars && sum(price, candidate) > options.length * 2) by.push('dear');
    if (bars && candidate[candidate.length - 1] % 3 === 2) by.push('odd');
    return by;
  };
  const middles = (candidate: readonly number[]): number[] => {
    const on = [0, 1, 2].map((course) => onCourse(course, candidate));
    return [sum(price, candidate), Math.max(...on), on[0] + on[1] + on[2]];
  };
  return {
    problem,
    judge: {
      bound(candidate): Report {
        const by = barredBy(candidate);
        if (by.length > 0) return { kind: 'barred', by };
        return { kind: 'bound', atLeast: [sum(price, candidate), Number.NEGATIVE_INFINITY, 0] };
      },
      open(candidate) {
        let ridden = 0;
        let worst = Number.NEGATIVE_INFINITY;
        let total = 0;
        return {
          next(): Report {
            const now = onCourse(ridden, candidate);
            ridden += 1;
            worst = Math.max(worst, now);
            total += now;
            if (ridden < 3) return { kind: 'bound', atLeast: [sum(price, candidate), worst, total] };
            return {
              kind: 'judged',
              objectives: middles(candidate).map((v) => ({ low: v - 1, middle: v, high: v + 1 })),
              samples: [],
            };
          },
        };
      },
    },
    truth: (index) => {
      const candidate = candidateAt(problem.space, index);
      return barredBy(candidate).length > 0 ? null : middles(candidate);
    },
  };
}

const jobs = fc
  .record({
    options: fc.array(fc.integer({ min: 1, max: 5 }), { minLength: 2, maxLength: 6 }),
    seed: fc.integer({ min: 0, max: 2 ** 31 - 1 }),
    resolution: fc.constantFrom(0, 0.5, 2),
    bars: fc.boolean(),
  })
  .map(({ options, seed, resolution, bars }) => jobOf(options, seed, resolution, bars));

/** Everybody judged, the front by its definition. */
function bruteForce({ problem, truth }: Job): number[] {
  const all: { index: number; point: number[] }[] = [];
  for (let index = 0; index < candidateCount(problem.space); index += 1) {
    const values = truth(index);
    if (values !== null)
      all.push({ index, point: values.map((value, k) => compared(value, problem.objectives[k])) });
  }
  return frontOf(all.map(({ point }) => point)).map((i) => all[i].index);
}

describe('bounds', () => {
  test('never discard one who would have stood on the front', () => {
    let discarded = 0;
    fc.assert(
      fc.property(jobs, (job) => {
        const study = studyOf(job.problem, job.judge);
        expect(standing(study)).toEqual(bruteForce(job));
        expect(study.why).toBe('every-candidate');
        const { seen, judged, barred } = study.tally;
        const dropped = study.tally.discarded.reduce((sum, count) => sum + count, 0);
        expect(seen).toBe(candidateCount(job.problem.space));
        expect(judged + barred + dropped).toBe(seen);
        discarded += dropped;
      }),
      { seed: 6, numRuns: 150 },
    );
    // Else nothing was tested.
    expect(discarded).toBeGreaterThan(3000);
  });

  test('that is none is our own mistake and says which', () => {
    const job = jobOf([3, 3], 1, 0, false);
    const judge: Judge = { ...job.judge, bound: () => ({ kind: 'bound', atLeast: [1000, 0, 0] }) };
    expect(() => studyOf(job.problem, judge)).toThrow(/price of candidate 0 came out as 4, below a bound/);
  });
});

describe('a study', () => {
  const job = jobOf([5, 4, 5, 4, 3], 11, 0.5, true);

  test('says which constraint barred how many, and how many by itself alone', () => {
    const { tally, always } = studyOf(job.problem, job.judge);
    let [dear, odd, both] = [0, 0, 0];
    for (let index = 0; index < candidateCount(job.problem.space); index += 1) {
      const report = job.judge.bound(candidateAt(job.problem.space, index));
      if (report.kind !== 'barred') continue;
      if (report.by.includes('dear')) dear += 1;
      if (report.by.includes('odd')) odd += 1;
      if (report.by.length === 2) both += 1;
    }
    expect(tally.barredBy).toEqual([dear, odd]);
    expect(tally.barredAloneBy).toEqual([dear - both, odd - both]);
    expect(both).toBeGreaterThan(0);
    expect(always.map(({ index }) => index)).toEqual([0]);
  });

  test.each([
    ['every candidate looked at', {}],
    ['a Pareto search', { exhaustUpTo: 10, mostJudged: 400 }],
  ])('is the same to the last bit for any order and place of its parts: %s', (_, limits) => {
    const problem = { ...job.problem, limits: { ...USUAL_LIMITS, ...limits } };
    const layout = layOutStudy(problem);
    const inOrder = answersOf(problem, job.judge);
    const turned = answersOf(problem, job.judge, (parts) => [...parts].reverse());
    expect(layout.parts).toBeGreaterThan(3);
    const whole = JSON.stringify(mergeAnswers(problem, layout, inOrder));
    expect(JSON.stringify(mergeAnswers(problem, layout, [...turned].reverse()))).toBe(whole);
    // Kept in a file, then taken up again, with one part done twice.
    const kept = JSON.parse(JSON.stringify([...turned, inOrder[3]]));
    expect(JSON.stringify(mergeAnswers(problem, layout, kept))).toBe(whole);
    // As rows of numbers, the way they come from a worker.
    const width = packedWidth(problem, layout);
    const rows = new Float64Array(width * inOrder.length);
    for (const [i, answer] of inOrder.entries()) packAnswer(problem, answer, rows, i * width);
    const unpacked = inOrder.map((_, i) => unpackAnswer(problem, rows, i * width));
    expect(unpacked).toEqual(inOrder);
    expect(JSON.stringify(mergeAnswers(problem, layout, unpacked))).toBe(whole);
  });

  test('names the parts that nobody did', () => {
    const layout = layOutStudy(job.problem);
    const answers = answersOf(job.problem, job.judge).filter(({ unit }) => unit !== 1 && unit !== 5);
    expect(mergeAnswers(job.problem, layout, answers)).toEqual({ missing: [1, 5] });
  });

  test('of candidates alike the one with the fewest changes stands', () => {
    const problem = problemOf([3, 3, 3], 1, { objectives: [{ id: 'f', resolution: 0 }] });
    const home = { ...problem, space: { ...problem.space, home: [2, 1, 1] } };
    // The first axis alone matters.
    const study = studyOf(
      home,
      judgeOf([3, 3, 3], ([x]) => [x]),
    );
    expect(study.members).toHaveLength(1);
    expect(candidateAt(home.space, study.members[0].index)).toEqual([0, 1, 1]);
    expect(study.members[0].alike).toHaveLength(8);
  });

  test('asked again before it was told asks the same; told too little it refuses', () => {
    const search = startSearch(job.problem);
    expect(search.ask()).toEqual(search.ask());
    expect(() => search.tell([])).toThrow(/0 reports for/);
  });
});

describe('a Pareto search over a space too large to look through', () => {
  const limits = { ...USUAL_LIMITS, exhaustUpTo: 1000 };
  const corner = (width: number): number[] => new Array<number>(width).fill(1.1);

  test.each(ZDTS)('%s, ten choices of eleven: 99.9 %% of the volume of its exact front', (name) => {
    const f = ZDT[name];
    const options = [51, ...new Array<number>(9).fill(11)];
    const exact = Array.from({ length: 51 }, (_, i) => f([i / 50, ...new Array<number>(9).fill(0)]));
    const study = studyOf(problemOf(options, 2, { limits }), judgeOf(options, f));
    const found = study.members.map(({ objectives }) => objectives.map(({ middle }) => middle));
    const whole = hypervolume(exact, corner(2));
    expect(hypervolume(found, corner(2))).toBeGreaterThan(0.999 * whole);
    expect(hypervolume(found, corner(2))).toBeLessThanOrEqual(whole * (1 + 1e-12));
    expect(study.tally.judged).toBeLessThanOrEqual(limits.mostJudged + 25);
  });

  test('DTLZ2, three objectives, seven choices of eleven: 99 % of the volume of its exact front', () => {
    const options = new Array<number>(7).fill(11);
    const exact = Array.from({ length: 121 }, (_, i) =>
      DTLZ2([Math.floor(i / 11) / 10, (i % 11) / 10, 0.5, 0.5, 0.5, 0.5, 0.5]),
    );
    const study = studyOf(problemOf(options, 3, { limits }), judgeOf(options, DTLZ2));
    const found = study.members.map(({ objectives }) => objectives.map(({ middle }) => middle));
    expect(hypervolume(found, corner(3))).toBeGreaterThan(0.99 * hypervolume(exact, corner(3)));
  });

  test('stops by itself when the front is stable, and says so', () => {
    const options = [21, 5, 5, 5, 5];
    const study = studyOf(
      problemOf(options, 2, { limits: { ...limits, mostJudged: 20_000 } }),
      judgeOf(options, ZDT.ZDT2),
    );
    expect(study.why).toBe('front-stable');
    expect(study.tally.judged).toBeLessThan(6000);
  });

  test('says when the limit of judged candidates came first', () => {
    const options = new Array<number>(8).fill(9);
    const study = studyOf(
      problemOf(options, 3, { limits: { ...limits, mostJudged: 200 } }),
      judgeOf(options, DTLZ2),
    );
    expect(study.why).toBe('limit-reached');
    expect(study.tally.judged).toBeLessThanOrEqual(200 + layOutStudy(problemOf(options, 3)).scouts.length);
  });

  test('ends although a constraint bars every candidate', () => {
    const options = new Array<number>(6).fill(5);
    const problem = problemOf(options, 2, { limits, constraints: ['all'] });
    const study = studyOf(problem, {
      bound: () => ({ kind: 'barred', by: ['all'] }),
      open: () => ({ next: () => ({ kind: 'barred', by: ['all'] }) }),
    });
    expect(study.members).toEqual([]);
    expect(study.tally.barredAloneBy).toEqual([study.tally.seen]);
  });

  test('another seed looks elsewhere, the same seed does the same', () => {
    const options = new Array<number>(8).fill(9);
    const of = (seed: number) =>
      JSON.stringify(
        studyOf(
          problemOf(options, 3, { seed, limits: { ...limits, mostJudged: 200 } }),
          judgeOf(options, DTLZ2),
        ),
      );
    expect(of(1)).toBe(of(1));
    expect(of(1)).not.toBe(of(2));
  });
});

describe('known fronts, every candidate looked at', () => {
  test.each(ZDTS)('%s: who stands is who has nothing else than its first choice', (name) => {
    const f = ZDT[name];
    const options = [31, 3, 3, 3];
    const study = studyOf(problemOf(options, 2), judgeOf(options, f));
    const all = Array.from(
      { length: candidateCount({ axes: problemOf(options, 2).space.axes, home: [] }) },
      (_, i) => candidateAt(problemOf(options, 2).space, i),
    );
    const exact = frontOf(all.map((candidate) => f(valuesOf(options, candidate))));
    expect(standing(study)).toEqual(exact);
    for (const index of exact) expect(all[index].slice(1)).toEqual([0, 0, 0]);
    expect(indexOf(problemOf(options, 2).space, all[exact[0]])).toBe(exact[0]);
  });
});
