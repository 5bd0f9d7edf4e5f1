import { describe, expect, test } from 'vitest';
import { travelNeeds, travelOf } from '../../src/travel/travel.ts';
import { verdictOn } from '../../src/travel/verdict.ts';
import { changed, type RigFacts, reading, rigOf, setupOf } from './typed-rig.ts';

const front = (facts: RigFacts, trials = 4096) =>
  travelOf(setupOf(rigOf(facts)), { trials }).corners.frontLeft;

/** Φ of the standard normal, by the series of Abramowitz and Stegun 26.2.17 (error below 7.5e-8). */
function phi(x: number): number {
  const t = 1 / (1 + 0.2316419 * Math.abs(x));
  const series =
    t * (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  const tail = (Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI)) * series;
  return x > 0 ? 1 - tail : tail;
}

describe('T16: the verdict', () => {
  test.each([
    [0.005, 0.005, 'pass'],
    [0.0049, 0.005, 'not-proven'],
    [-0.0049, 0.005, 'not-proven'],
    [-0.005, 0.005, 'fail'],
    [0, 0, 'pass'],
    [1, null, 'not-proven'],
  ] as const)('spare %s with u %s is: %s', (value, tolerance, expected) => {
    expect(verdictOn({ dimension: 'length', value, tolerance })).toBe(expected);
  });
});

describe('T15: uncertainty of a sum is that of the GUM', () => {
  // spare = gap ÷ 1 − g − c − f − r: half-widths add as squares (JCGM 100:2008, 5.1.2), shares are squares ÷ their sum.
  const facts: RigFacts = {
    reserve: [0.01, 0.001],
    front: {
      contacts: { sump: { gap: [0.13, 0.003] } },
      gap: [0.06, 0.002],
      crush: [0.04, 0.0015],
      flex: [0.012, 0.004],
    },
  };
  const squares = { gap: 9, stop: 4, crush: 2.25, flex: 16, reserve: 1 };
  const total = 9 + 4 + 2.25 + 16 + 1;
  const column = front(facts);

  test('half-width of spare, 2 % for the scatter of 4096 trials', () => {
    expect(Math.abs(column.spare.tolerance! / (0.001 * Math.sqrt(total)) - 1)).toBeLessThan(0.04);
  });

  test('each reading is to blame for its square', () => {
    const share = (key: string) => column.blame.find((blame) => blame.key === key)?.share ?? 0;
    expect(share('front.contacts.sump.gap')).toBeCloseTo(squares.gap / total, 2);
    expect(share('front.stop.gap')).toBeCloseTo(squares.stop / total, 2);
    expect(share('front.stop.usableCrush')).toBeCloseTo(squares.crush / total, 2);
    expect(share('front.flex')).toBeCloseTo(squares.flex / total, 2);
    expect(share('limits.reserve')).toBeCloseTo(squares.reserve / total, 2);
    expect(column.blame.map(({ key }) => key)[0]).toBe('front.flex');
    expect(column.blame.reduce((sum, { share: each }) => sum + each, 0)).toBeCloseTo(1, 2);
  });

  test('the probability behind it is that of the normal', () => {
    const deviation = (0.001 * Math.sqrt(total)) / 2;
    const standing = column.spare.value / deviation;
    // Counting 4096 trials: standard error 0.5 % where p is near a tenth.
    expect(Math.abs(column.probability.spareBelowZero - phi(-standing))).toBeLessThan(0.015);
  });

  test('the probability of metal is that of a clearance smaller than the flex', () => {
    const near = front({
      reserve: [0.01, 0.001],
      front: {
        contacts: { sump: { gap: [0.1135, 0.003] } },
        gap: [0.06, 0.002],
        crush: [0.04, 0.0015],
        flex: [0.012, 0.004],
      },
    });
    const deviation = (0.001 * Math.sqrt(total - 1)) / 2;
    expect(Math.abs(near.probability.metal - phi(-0.0015 / deviation))).toBeLessThan(0.015);
  });

  describe('T16: a frame that flexes does not press a coil or a shock any further', () => {
    const exactly = (sump: number, left: { coil?: number; shock?: number }) =>
      front({
        front: {
          contacts: { sump: { gap: 0.1 + sump } },
          ...(left.coil === undefined ? {} : { coil: { ride: 0.3, solid: 0.2 - left.coil } }),
          ...(left.shock === undefined ? {} : { shock: { ride: 0.5, closed: 0.4 - left.shock } }),
          gap: 0.06,
          crush: 0.04,
          flex: 0.012,
        },
      }).probability.metal;

    test.each([
      ['nothing is reached', 0.02, { coil: 0.005, shock: 0.005 }, 0],
      ['the coil is solid', 0.02, { coil: -0.001 }, 1],
      ['the shock is bottomed', 0.02, { shock: -0.001 }, 1],
      ['the frame flexes into the sump, behind the coil', 0.011, { coil: 0.005 }, 1],
      ['the frame flexes into the sump, nothing else known', 0.011, {}, 1],
    ] as const)('%s', (_name, sump, left, expected) => {
      expect(exactly(sump, left)).toBe(expected);
    });

    /** Two independent ways to metal: 1 − (1 − p₁)(1 − p₂). */
    test('either of both is enough', () => {
      const { probability } = front({
        front: {
          contacts: { sump: { gap: [0.114, 0.003] } },
          coil: { ride: [0.3, 0.003], solid: 0.198 },
          gap: 0.06,
          crush: 0.04,
          flex: [0.012, 0.004],
        },
      });
      const sump = phi(-0.002 / (Math.hypot(0.003, 0.004) / 2));
      const coil = phi(-0.002 / 0.0015);
      // Counting 4096 trials: standard error 0.7 %.
      expect(Math.abs(probability.metal - (1 - (1 - sump) * (1 - coil)))).toBeLessThan(0.015);
    });
  });

  test('a travel ratio enters by its derivative: gap ÷ ratio', () => {
    const { hardTravel, blame } = front({
      front: {
        contacts: { bar: { gap: [0.0762, 0.0016], ratio: [0.7, 0.01] } },
        flex: 0,
        gap: 0.05,
        crush: 0.03,
      },
    });
    const byGap = 0.0016 / 0.7;
    const byRatio = (0.0762 / 0.49) * 0.01;
    expect(Math.abs(hardTravel.tolerance! / Math.hypot(byGap, byRatio) - 1)).toBeLessThan(0.05);
    const share = byRatio ** 2 / (byRatio ** 2 + byGap ** 2);
    expect(blame.find(({ key }) => key.endsWith('ratio'))!.share).toBeCloseTo(share, 1);
  });

  test('the larger side of an uneven tolerance counts', () => {
    const uneven = front({
      front: { contacts: { sump: { gap: [0.13, 0.001, 0.005] } }, flex: 0 },
      reserve: 0,
    });
    expect(uneven.hardTravel.tolerance).toBeCloseTo(0.005, 4);
  });
});

describe('T13, T18: two contacts that are level', () => {
  const column = front({
    reserve: 0,
    front: {
      contacts: { bar: { gap: [0.12, 0.004] }, sump: { gap: [0.12, 0.004] } },
      flex: 0,
    },
  });

  test('each comes first half the time', () => {
    for (const { firstShare } of column.contacts) expect(Math.abs(firstShare - 0.5)).toBeLessThan(0.025);
  });

  /**
   * Smaller of two equal independent normals: mean −σ/√π, variance σ²(1 − 1/π) (Clark, Operations Research 9 (1961)
   * 145, from memory); covariance with either is half its variance, so each share is 1/4 ÷ (1 − 1/π) = 0.3668.
   */
  test('blame is shared, and some of it belongs to neither alone', () => {
    for (const { share } of column.blame)
      expect(Math.abs(share - 0.25 / (1 - 1 / Math.PI))).toBeLessThan(0.02);
    expect(column.blame).toHaveLength(2);
  });

  test('the tie is a finding, and both are named in it', () => {
    const { findings } = travelOf(
      setupOf(rigOf({ front: { contacts: { bar: { gap: [0.12, 0.004] }, sump: { gap: [0.121, 0.004] } } } })),
    );
    expect(findings.find(({ id }) => id === 'travel-contacts-tie.front')!.facts.contacts).toBe('bar, sump');
  });
});

describe('T9: what cannot be known is asked for', () => {
  const facts: RigFacts = { stops: { foam: { crush: 0.07 } }, springs: { long: { rate: 30_000 } } };

  test('a stop without a free length needs it, or the gap that will be set', () => {
    const swap = changed(facts, { stop: 'foam' });
    expect(travelNeeds(swap).map(({ code, where }) => [code, where.key])).toEqual([
      ['rig-needs-reading', 'shelf.stops.foam.freeLength'],
      ['rig-needs-reading', 'front.stop.freeLength'],
    ]);
    const set = changed(facts, { stop: 'foam', stopGap: reading('setups.changed.front.stopGap', 0.03) });
    expect(travelNeeds(set)).toEqual([]);
  });

  test('a column made all the same has unknown tolerances and proves nothing', () => {
    const { corners, findings } = travelOf(changed(facts, { stop: 'foam' }));
    expect(corners.frontLeft.verdict).toBe('not-proven');
    for (const figure of [corners.frontLeft.spare, corners.frontLeft.freeBump, corners.frontLeft.clearance])
      expect(figure.tolerance).toBeNull();
    expect(findings.map(({ id }) => id)).toContain('stop-gap-needed.front');
    expect(corners.rearLeft.spare.tolerance).not.toBeNull();
  });

  test('a coil without a free length cannot say how high the rig stands', () => {
    const needs = travelNeeds(changed(facts, { spring: 'long' })).map(({ where }) => where.key);
    expect(needs).toContain('shelf.springs.long.freeLength');
  });
});

describe('findings of a column', () => {
  const codes = (facts: RigFacts, id = 'as-measured') =>
    travelOf(setupOf(rigOf(facts), id)).findings.map((finding) => finding.id);

  test('sides that differ are told apart, sides alike are said once', () => {
    const facts: RigFacts = { front: { gap: 0.06, gapRight: 0.05 } };
    expect(codes(facts)).toEqual(
      expect.arrayContaining(['travel-pass.frontLeft', 'travel-pass.frontRight', 'travel-pass.rear']),
    );
  });

  test('ids are unique', () => {
    const ids = codes({
      front: { gap: [-0.002, 0.003], gapRight: 0.2, contacts: { sump: { gap: [0.1, 0.02] } } },
    });
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids).toContain('stop-touches-at-ride.frontLeft');
    expect(ids).toContain('stop-after-metal.frontRight');
  });

  test('a shock that bottoms first is not called a stop', () => {
    expect(codes({ front: { shock: { ride: 0.5, closed: 0.4 } } })).toContain(
      'shock-bottoms-before-stop.front',
    );
  });

  test('one contact on the list is too few to be sure', () => {
    expect(codes({})).toContain('travel-only-one-contact.front');
    const two = { front: { contacts: { a: { gap: 0.13 }, b: { gap: 0.2 } } } };
    expect(codes(two)).not.toContain('travel-only-one-contact.front');
  });

  test('a lift of which hardly anything arrives as spare is called by its name, an honest one is not', () => {
    const facts: RigFacts = { front: { contacts: { a: { gap: 0.09 }, b: { gap: 0.2 } } } };
    const lifted = (spacer: number) =>
      travelOf(
        changed(facts, {
          springSpacer: reading('setups.changed.front.springSpacer', 0.04),
          stopSpacer: reading('setups.changed.front.stopSpacer', spacer),
        }),
      );
    const ids = (spacer: number) => lifted(spacer).findings.map(({ id }) => id);
    expect(lifted(0.004).corners.frontLeft.verdict).toBe('fail');
    expect(ids(0.004)).toContain('lift-buys-no-safety.front');
    expect(lifted(0.02).corners.frontLeft.verdict).toBe('fail');
    expect(ids(0.02)).not.toContain('lift-buys-no-safety.front');
  });

  test('T21: clay is a gap at its contact, so its thickness goes by the ratio there', () => {
    const facts: RigFacts = {
      front: {
        contacts: { bar: { gap: 0.0938, ratio: 0.7 }, tube: { gap: 0.16 } },
        gap: 0.075,
        crush: 0.045,
        curve: { crush: [0, 0.039, 0.045], force: [0, 5000, 7500] },
        witness: { passes: [0.114], clay: 0.0098 },
      },
    };
    const { findings } = travelOf(setupOf(rigOf(facts)));
    const flex = findings.find(({ code }) => code === 'witness-flex-observed')!;
    // 134 mm to the bar, 114 used, 14 mm of axle travel left in the clay: 6 mm; at full crush by 7500 ÷ 5000.
    expect(flex.value!.value).toBeCloseTo(0.006, 12);
    expect((flex.facts.atFullCrush as { value: number }).value).toBeCloseTo(0.009, 12);
  });

  test('T21: passes that differ by more than the readings allow are not to be concluded from', () => {
    const facts: RigFacts = {
      front: {
        gap: [0.06, 0.002],
        witness: {
          passes: [
            [0.06, 0.001],
            [0.075, 0.001],
          ],
        },
      },
    };
    const ids = travelOf(setupOf(rigOf(facts))).findings.map(({ id }) => id);
    expect(ids).toContain('witness-data-scattered.front');
  });

  test('an assumption that a verdict hangs on is named with its share', () => {
    const rig = rigOf({ front: { contacts: { sump: { gap: [0.125, 0.001] } }, flex: [0.012, 0.006] } });
    const assumed = { ...rig.front.flex, origin: 'assumed', toleranceOrigin: 'assumed' } as const;
    const { findings } = travelOf(setupOf({ ...rig, front: { ...rig.front, flex: assumed } }));
    const finding = findings.find(({ code }) => code === 'assumption-matters')!;
    expect(finding.facts.reading).toBe('front.flex');
    expect(finding.value!.value).toBeGreaterThan(0.9);
    expect(finding.remedies).toEqual([{ code: 'measure-again', target: 'front.flex' }]);
  });

  test('results are plain data that survive a structured clone, the same every time', () => {
    const make = () => travelOf(setupOf(rigOf({ front: { gap: [0.06, 0.002], shaft: 0.1 } })));
    expect(structuredClone(make())).toEqual(make());
  });
});
