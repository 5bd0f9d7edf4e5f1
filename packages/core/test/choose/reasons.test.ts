import { describe, expect, test } from 'vitest';
import { comparisonOf } from '../../src/choose/compare.ts';
import type { Judged, Objective } from '../../src/choose/objectives.ts';
import { decidingInputs, ranksHeld } from '../../src/choose/rank.ts';
import { reasonsOf } from '../../src/choose/reasons.ts';
import { shortlist } from '../../src/choose/shortlist.ts';
import { normalTrials } from '../../src/numerics/sampling.ts';

/** Lift [mm], harshness [m/s²], price: invented. */
const OBJECTIVES: readonly Objective[] = [
  { id: 'lift', resolution: 5 },
  { id: 'harshness', resolution: 0.1 },
  { id: 'price', resolution: 0 },
];

const judged = (index: number, middles: readonly number[], samples: readonly number[] = []): Judged => ({
  index,
  objectives: middles.map((middle) => ({ low: middle, middle, high: middle })),
  samples,
});

const LOW = judged(1, [0, 9, 400]);
const SOFT = judged(2, [50, 4, 900]);
const CHEAP = judged(3, [60, 7, 100]);
const MIDDLE = judged(4, [25, 6, 500]);
const NOTHING = judged(0, [0, 12, 0]);

describe('reasons', () => {
  const reasons = reasonsOf([LOW, SOFT, CHEAP, MIDDLE], [NOTHING], OBJECTIVES);
  const of = (one: Judged) => reasons.find(({ index }) => index === one.index);

  test('who is best in something is told so, with the lag of the next', () => {
    expect(of(LOW)?.reasons).toContainEqual({ code: 'best', objective: 0, next: 25, alike: 0 });
    expect(of(SOFT)?.reasons).toContainEqual({ code: 'best', objective: 1, next: 2, alike: 0 });
    expect(of(CHEAP)?.reasons).toContainEqual({ code: 'best', objective: 2, next: 300, alike: 0 });
  });

  test('who is best in nothing is the best for what it costs, or the most even', () => {
    const middle = of(MIDDLE)?.reasons;
    // With 25 mm or less there is LOW alone, which is harsher; for 500 or less LOW and CHEAP, both harsher.
    expect(middle).toContainEqual({ code: 'best-within', objective: 1, within: 0 });
    expect(middle).toContainEqual({ code: 'best-within', objective: 1, within: 2 });
    // Lags: lift 5 of 12 steps, harshness 2 of 5, price 4 of 8.
    expect(middle).toContainEqual({ code: 'most-even', lag: 0.5 });
  });

  test('what limits a member is where it is farthest behind', () => {
    expect(of(SOFT)?.limited).toEqual({ objective: 2, behind: 800, lag: 1 });
    expect(of(MIDDLE)?.limited).toEqual({ objective: 2, behind: 400, lag: 0.5 });
  });

  test('what it beats and gives up against doing nothing', () => {
    const [against] = of(SOFT)?.against ?? [];
    expect(against.with).toBe(0);
    expect(against.better.map(({ objective, by }) => [objective, by])).toEqual([[1, -8]]);
    expect(against.worse.map(({ objective, by }) => [objective, by])).toEqual([
      [0, 50],
      [2, 900],
    ]);
  });

  test('a rival that falls short in one thing alone is named', () => {
    const [first] = reasonsOf([judged(1, [50, 4, 900]), judged(2, [40, 5, 700])], [], OBJECTIVES);
    expect(first.reasons).toContainEqual({ code: 'kept-by', objective: 1, rival: 2, by: 1 });
  });

  test('the only one is told so, and is behind in nothing', () => {
    const [only] = reasonsOf([MIDDLE], [NOTHING], OBJECTIVES);
    expect(only.reasons).toEqual([{ code: 'alone' }]);
    expect(only.limited).toBeNull();
    expect(only.neighbours).toEqual([]);
  });

  test('differences below the resolution are none', () => {
    const { better, worse, alike } = comparisonOf(
      judged(1, [10, 4.01, 5]),
      judged(2, [11, 3.99, 6]),
      OBJECTIVES,
    );
    expect([better.length, worse.length, alike]).toEqual([1, 0, [0, 1]]);
  });
});

describe('rank', () => {
  const two = [
    { id: 'a', resolution: 0 },
    { id: 'b', resolution: 0 },
  ];

  test('is counted over the trials, with the same readings for all', () => {
    const first = judged(1, [1, 2], [1, 2, 1, 2, 3, 3, 1, 1]);
    const second = judged(2, [2, 1], [2, 1, 2, 3, 2, 1, 1, 1]);
    const [one, other] = ranksHeld([first, second], two);
    // Trial 2: first beats second; trial 3: second beats first; trial 4: alike, both stand.
    expect([one.held, other.held, one.trials]).toEqual([3, 3, 4]);
    expect(one.margins).toEqual([1, 1, -1, 0]);
  });

  test('without trials nothing is said', () => {
    expect(ranksHeld([judged(1, [1, 2])], two)).toEqual([{ held: 0, trials: 0, margins: [] }]);
  });

  test('trials in which one is better or worse are counted, whatever the middles say', () => {
    const comparison = comparisonOf(
      judged(1, [1, 0], [1, 0, 3, 0, 1, 0]),
      judged(2, [2, 0], [2, 0, 2, 0, 1, 0]),
      two,
    );
    expect(comparison.better).toEqual([{ objective: 0, by: -1, better: 1, worse: 1 }]);
    expect(comparison.trials).toBe(3);
  });
});

describe('the reading that decides', () => {
  const trials = 64;
  const inputs = 40;
  const scores = normalTrials(trials, inputs, 5);
  const scoresOf = (input: number): number[] =>
    Array.from({ length: trials }, (_, t) => scores[t * inputs + input]);

  test('is found among many that do not', () => {
    const margins = scoresOf(7).map((score, t) => 1 - 2 * score + 0.8 * scoresOf(20)[t]);
    const [first, ...others] = decidingInputs(margins, inputs, scoresOf);
    expect(first.input).toBe(7);
    expect(first.rises).toBe(false);
    // 4 ÷ (4 + 0.64) of the variance; trials are Latin, so hardly any of it is chance.
    expect(Math.abs(first.share - 0.862)).toBeLessThan(0.02);
    expect(others.every(({ input }) => input === 20)).toBe(true);
  });

  test('is not made up where none decides: no more often than 5 % of the time', () => {
    let alarms = 0;
    for (let seed = 0; seed < 200; seed += 1) {
      const noise = normalTrials(trials, 1, 1000 + seed);
      if (decidingInputs(Array.from(noise), inputs, scoresOf).length > 0) alarms += 1;
    }
    // Binomial(200, 0.05): above 20 with probability 0.001.
    expect(alarms).toBeLessThanOrEqual(20);
  });
});

describe('short list', () => {
  test('has the best in each objective, then who adds most', () => {
    const members = [LOW, SOFT, CHEAP, MIDDLE].map((one) => ({ ...one, alike: [] }));
    expect(shortlist(members, OBJECTIVES, 3)).toEqual([0, 1, 2]);
    expect(shortlist(members, OBJECTIVES, 9)).toEqual([0, 1, 2, 3]);
    expect(shortlist([], OBJECTIVES, 3)).toEqual([]);
  });
});
