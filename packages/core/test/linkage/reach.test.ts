import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Finding } from '../../src/finding/finding.ts';
import { movedPoint, type Vector } from '../../src/linkage/geometry.ts';
import { type MovingLine, reachOf, tiePointOn } from '../../src/linkage/reach.ts';
import { type LineAsked, lineFindings } from '../../src/linkage/reach-findings.ts';
import { slackLoop } from '../../src/linkage/slack-loop.ts';
import { sampleRange } from '../../src/linkage/travel-range.ts';
import { minus, size } from '../../src/linkage/vector.ts';
import { AXLE, ON_ARM, STRAIGHT } from './plain-axle.ts';

const range = { bump: 0.12, droop: 0.15, lock: 0.6 };
const kingpin = { point: [-2.5, 0.7, 0.43], axis: [-0.1, -0.12, 1] } as const;
const hose: MovingLine = { body: [-2.3, 0.45, 0.75], axle: [-2.6, 0.62, 0.5], kingpin };
const sampled = sampleRange(AXLE, range, ON_ARM);
const reach = reachOf(hose, AXLE, sampled);

/** Rodrigues by three plain rotations would be a twin: a point turned about a line keeps its distance from both. */
const turnAbout = (point: Vector, angle: number): Vector => {
  // Independent of the code: half-angle quaternion product q·p·q*.
  const n = size(kingpin.axis);
  const [s, w] = [Math.sin(angle / 2) / n, Math.cos(angle / 2)];
  const [x, y, z] = [kingpin.axis[0] * s, kingpin.axis[1] * s, kingpin.axis[2] * s];
  const p = minus(point, kingpin.point);
  const t = [2 * (y * p[2] - z * p[1]), 2 * (z * p[0] - x * p[2]), 2 * (x * p[1] - y * p[0])];
  return [
    kingpin.point[0] + p[0] + w * t[0] + y * t[2] - z * t[1],
    kingpin.point[1] + p[1] + w * t[1] + z * t[0] - x * t[2],
    kingpin.point[2] + p[2] + w * t[2] + x * t[1] - y * t[0],
  ];
};

const factOf = (finding: Finding | undefined, name: string): number => {
  const fact = finding?.facts[name];
  return typeof fact === 'object' ? fact.value : Number.NaN;
};

describe('the free length that a hose needs', () => {
  test('no bump, droop, roll and lock pulls its ends further apart, or brings them closer', () => {
    const wheel = fc.double({ min: -0.15, max: 0.12, noNaN: true });
    const lock = fc.double({ min: -0.6, max: 0.6, noNaN: true });
    fc.assert(
      fc.property(wheel, wheel, lock, (left, right, steer) => {
        const pose = ON_ARM((left + right) / 2, Math.asin((left - right) / 1.6));
        if (pose === null || reach === null) throw new Error('every place of this range can be reached');
        const distance = size(minus(movedPoint(pose, AXLE, turnAbout(hose.axle, steer)), hose.body));
        expect(distance).toBeLessThanOrEqual(reach.longest.value + 1e-7);
        expect(distance).toBeGreaterThanOrEqual(reach.shortest.value - 1e-7);
      }),
      { seed: 5, numRuns: 5000 },
    );
  });

  test('straight up and down it is a triangle', () => {
    const plain: MovingLine = { body: [-2.5, 0.3, 0.83], axle: [-2.5, 0, 0.43], kingpin: null };
    const straight = reachOf(plain, AXLE, sampleRange(AXLE, { bump: 0.1, droop: 0.1, lock: 0 }, STRAIGHT));
    expect(straight?.atRide).toBeCloseTo(0.5, 12);
    expect(straight?.longest.value).toBeCloseTo(Math.hypot(0.3, 0.5), 9);
    expect(straight?.shortest.value).toBeCloseTo(Math.hypot(0.3, 0.3), 9);
  });

  test('the mirror image needs as much', () => {
    const mirror = ([x, y, z]: Vector): Vector => [x, -y, z];
    const mirrored = reachOf(
      {
        body: mirror(hose.body),
        axle: mirror(hose.axle),
        kingpin: { point: mirror(kingpin.point), axis: mirror(kingpin.axis) },
      },
      AXLE,
      sampleRange(AXLE, range, (bump, roll) => {
        const pose = ON_ARM(bump, -roll);
        if (pose === null) return null;
        const [a, b, c, d, e, f, g, h, i] = pose.rotation;
        return { ...pose, shift: mirror(pose.shift), rotation: [a, -b, c, -d, e, -f, g, -h, i] };
      }),
    );
    expect(mirrored?.longest.value).toBeCloseTo(reach?.longest.value ?? Number.NaN, 7);
    expect(mirrored?.shortest.value).toBeCloseTo(reach?.shortest.value ?? Number.NaN, 7);
  });
});

describe('where to tie a hose to a link', () => {
  const link = { id: 'upper', axle: [-2.5, 0.3, 0.6], body: [-1.6, 0.3, 0.65] } as const;
  const plain: MovingLine = { body: [-1.5, 0.45, 0.7], axle: [-2.52, 0.5, 0.55], kingpin: null };
  const over = sampleRange(AXLE, { ...range, lock: 0 }, ON_ARM);
  const tied = tiePointOn(link, plain, AXLE, over);
  const needAt = (fraction: number) =>
    over.places.reduce((most, { pose }) => {
      const joint = movedPoint(pose, AXLE, link.axle);
      const tie: Vector = [0, 1, 2].map(
        (k) => link.body[k as 0] + fraction * (joint[k as 0] - link.body[k as 0]),
      ) as unknown as Vector;
      return Math.max(
        most,
        size(minus(tie, plain.body)),
        size(minus(movedPoint(pose, AXLE, plain.axle), tie)),
      );
    }, 0);

  test('no other place on the link leaves less to the longer part', () => {
    const best = Math.max(tied?.bodyPart.longest.value ?? 0, tied?.axlePart.longest.value ?? 0);
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (fraction) => {
        expect(needAt(fraction)).toBeGreaterThan(best - 1e-5);
      }),
      { seed: 2, numRuns: 300 },
    );
  });

  test('both parts have to reach alike, and together no less than the hose without a tie', () => {
    expect(tied?.bodyPart.longest.value).toBeCloseTo(tied?.axlePart.longest.value ?? Number.NaN, 4);
    const whole = reachOf(plain, AXLE, over)?.longest.value ?? Number.NaN;
    expect((tied?.bodyPart.longest.value ?? 0) + (tied?.axlePart.longest.value ?? 0)).toBeGreaterThan(whole);
    expect(tied?.fromBody).toBeCloseTo((tied?.fraction ?? 0) * size(minus(link.axle, link.body)), 12);
  });
});

describe('the loop of a slack hose', () => {
  test('it bends tighter the closer its ends, and a free one tighter than an arc by 1.28 to 1.35', () => {
    const share = fc.double({ min: 0.001, max: 0.9999, noNaN: true });
    fc.assert(
      fc.property(share, share, (one, other) => {
        const [near, far] = [slackLoop(1, Math.min(one, other)), slackLoop(1, Math.max(one, other))];
        expect(near.arcRadius).toBeLessThanOrEqual(far.arcRadius);
        expect(near.freeRadius).toBeLessThanOrEqual(far.freeRadius);
        expect(near.arcRadius / near.freeRadius).toBeGreaterThan(1.28);
        expect(near.arcRadius / near.freeRadius).toBeLessThan(1.35);
      }),
      { seed: 4, numRuns: 500 },
    );
  });

  test('a taut one has no loop, and one whose ends meet is a circle', () => {
    expect(slackLoop(0.4, 0.4).freeRadius).toBe(Number.POSITIVE_INFINITY);
    expect(slackLoop(0.4, 0.45).arcSag).toBe(0);
    expect(slackLoop(1, 0).arcRadius).toBeCloseTo(1 / (2 * Math.PI), 9);
  });
});

describe('story S7: the brake hose at strap-stretched droop and full lock', () => {
  const place = { left: -0.15, right: -0.15, steer: 0.6 };
  const taped = {
    atRide: 0.4,
    longest: { value: 0.535, place },
    shortest: { value: 0.3, place },
    missed: 0,
  };
  const asked: LineAsked = {
    name: 'brake hose',
    freeLengths: [0.56, 0.56, 0.56],
    diameter: null,
    leastRadius: null,
    tie: null,
    because: ['front.hose.freeLength'],
  };

  test('560 mm free over 535 leaves 25: minimum acceptable, and a qualified person inspects', () => {
    const [finding, ...others] = lineFindings('front', [taped, taped, taped], asked);
    expect(others).toEqual([]);
    expect(finding?.code).toBe('line-slack-minimum');
    expect(finding?.severity).toBe('note');
    expect(finding?.value?.value).toBeCloseTo(0.025, 12);
    expect(finding?.remedies.map(({ code }) => code)).toEqual(['inspect-hose']);
  });

  test('540 mm is unproven with a longer one to be had, 530 is over', () => {
    const [near] = lineFindings('front', [taped, taped, taped], {
      ...asked,
      freeLengths: [0.54, 0.54, 0.54],
    });
    expect(near?.code).toBe('line-slack-minimum');
    expect(near?.severity).toBe('unproven');
    expect(near?.remedies[0]?.code).toBe('longer-hose');
    const [short] = lineFindings('front', [taped, taped, taped], {
      ...asked,
      freeLengths: [0.53, 0.53, 0.53],
    });
    expect(short?.code).toBe('line-taut');
    expect(short?.severity).toBe('over');
    expect(short?.remedies[0]?.amount?.value).toBeCloseTo(0.03, 9);
  });

  test('within its uncertainty of taut it may be taut', () => {
    const spread = [0, 0.02, -0.02, 0.02, -0.02].map((off) => ({
      ...taped,
      longest: { value: 0.535 + off, place },
    }));
    const [finding] = lineFindings('front', spread, { ...asked, freeLengths: spread.map(() => 0.55) });
    expect(finding?.code).toBe('line-taut');
    expect(finding?.severity).toBe('unproven');
  });

  test('without a length it says what is needed; one wrapped too tightly is told', () => {
    const [needed] = lineFindings('front', [taped, taped, taped], { ...asked, freeLengths: null });
    expect(needed?.code).toBe('line-length-needed');
    expect(factOf(needed, 'wantedLength')).toBeCloseTo(0.56, 9);
    const tight = lineFindings('front', [taped, taped, taped], {
      ...asked,
      freeLengths: [0.6, 0.6, 0.6],
      leastRadius: 0.17,
    });
    expect(tight.map(({ code, severity }) => [code, severity])).toEqual([['line-bends-tight', 'over']]);
  });
});
