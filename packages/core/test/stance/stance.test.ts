import { describe, expect, test } from 'vitest';
import { drawsOf } from '../../src/stance/draws.ts';
import { slopesAtRest } from '../../src/stance/end-stance.ts';
import { stanceOf } from '../../src/stance/stance.ts';
import { ochre } from '../jobs/ochre.ts';
import { changed, type RigFacts, reading, rigOf, setupOf } from '../travel/typed-rig.ts';

const stance = (facts: RigFacts) => stanceOf(setupOf(rigOf(facts)));
const G = 9.80665;

describe('masses', () => {
  /**
   * Error of a sprung corner mass, √(axle² + unsprung²) ÷ 2: an axle of 980 ± 10 kg over 290 ± 25 kg gives
   * 345 ± 13 kg a corner (propagation of the GUM, JCGM 100:2008, 5.1.2).
   */
  test('980 ± 10 kg on an axle of 290 ± 25 kg leave 345 ± 13 kg on each spring', () => {
    const { sprungCornerMass } = stance({
      corners: [
        [490, 5],
        [490, 5],
        [420, 0],
        [420, 0],
      ],
      front: { axleMass: [290, 25] },
    });
    expect(sprungCornerMass.frontLeft.value).toBeCloseTo(345, 12);
    // Half-widths from 2048 trials scatter by 2 %.
    expect(Math.abs(sprungCornerMass.frontLeft.tolerance! / Math.hypot(5, 12.5) - 1)).toBeLessThan(0.05);
  });

  test('added load goes above the springs, half on each side, and moves the centre of gravity to its end', () => {
    const loaded = stanceOf(
      changed({}, {}, { addedLoad: reading('setups.changed.rear.addedLoad', 100, 'mass') }),
    );
    const before = stance({});
    expect(loaded.totalMass.value - before.totalMass.value).toBeCloseTo(100, 12);
    expect(loaded.sprungCornerMass.rearLeft.value - before.sprungCornerMass.rearLeft.value).toBeCloseTo(
      50,
      12,
    );
    expect(loaded.cg.behindFrontAxle.value).toBeCloseTo((2.6 * (840 + 100)) / 1900, 12);
    expect(loaded.ends.front.springLoad).toEqual(before.ends.front.springLoad);
  });

  test('the sprung mass has its centre above that of the rig, by what the axles weigh at hub height', () => {
    const { sprungCg, cg } = stance({});
    expect(cg.height.value).toBeCloseTo(0.8, 12);
    // Moments about the ground: 1800·0.8 = 1300·h + 2·250·0.42.
    expect(sprungCg.height.value).toBeCloseTo((1800 * 0.8 - 500 * 0.42) / 1300, 12);
    expect(sprungCg.behindFrontAxle.value).toBeCloseTo((2.6 * (840 - 250)) / 1300, 12);
  });

  describe('a setup that lifts raises the body and leaves the axles', () => {
    const drop = (end: 'front' | 'rear', by: number | readonly [number, number]) => ({
      seatAndStopDrop: reading(`setups.changed.${end}.seatAndStopDrop`, by),
    });
    const before = stance({});

    test('by the same at both ends: the body by all of it, the whole by the share that is sprung', () => {
      const { sprungCg, cg } = stanceOf(changed({}, drop('front', 0.05), drop('rear', 0.05)));
      expect(sprungCg.height.value - before.sprungCg.height.value).toBeCloseTo(0.05, 12);
      // Moments: 1300 of 1800 kg go up by 0.05 m.
      expect(cg.height.value - before.cg.height.value).toBeCloseTo((1300 * 0.05) / 1800, 12);
    });

    test('at one end: as a plank does that is raised there', () => {
      const { sprungCg } = stanceOf(changed({}, drop('front', 0.05)));
      const fromRear = 1 - before.sprungCg.behindFrontAxle.value / 2.6;
      expect(sprungCg.height.value - before.sprungCg.height.value).toBeCloseTo(0.05 * fromRear, 12);
    });

    test('a spacer lifts by its thickness over the travel ratio, load lets it sag', () => {
      const facts = { front: { springRatio: 0.8 } };
      const lifted = stanceOf(
        changed(facts, { springSpacer: reading('setups.changed.front.springSpacer', 0.04) }),
      );
      const share = (960 - 250) / 1300;
      expect(lifted.sprungCg.height.value - before.sprungCg.height.value).toBeCloseTo(0.05 * share, 12);
      const loaded = stanceOf(
        changed({}, {}, { addedLoad: reading('setups.changed.rear.addedLoad', 100, 'mass') }),
      );
      const sag = (100 * G) / (2 * 30_000);
      // 1400 kg are sprung then, 690 of them at the rear; the load comes in as high as the whole was.
      const level = (1900 * 0.8 - 500 * 0.42) / 1400;
      expect(loaded.sprungCg.height.value).toBeCloseTo(level - (sag * 690) / 1400, 12);
    });

    test('as surely as the lift is known; not at all without a length that it rests on', () => {
      const unsure = stanceOf(changed({}, drop('front', [0.05, 0.01]), drop('rear', [0.05, 0.01])));
      // Two independent halves, each with its share of the sprung mass, which is known exactly here.
      const tolerance = 0.01 * Math.hypot(710 / 1300, 590 / 1300);
      expect(Math.abs(unsure.sprungCg.height.tolerance! / tolerance - 1)).toBeLessThan(0.02);
      const springs = { springs: { long: { rate: 30_000 } } };
      const coil = setupOf(
        rigOf({ ...springs, setups: { changed: { front: { spring: 'long' } } } }),
        'changed',
      );
      expect(stanceOf(coil).cg.height.tolerance).toBeNull();
    });
  });

  test('a heavy diagonal is named, an even rig is not', () => {
    const crossed = stance({ corners: [510, 450, 390, 450] });
    const [finding] = crossed.findings.filter(({ code }) => code === 'statics-weights-cross');
    expect(crossed.crossShare.value).toBeCloseTo(960 / 1800, 12);
    expect(finding.facts.heavier).toBe('frontLeft, rearRight');
    expect((finding.facts.difference as { value: number }).value).toBeCloseTo(60, 9);
    expect(stance({}).findings).toEqual([]);
  });
});

describe('springs at ride', () => {
  test('carry the sprung weight, and balance the difference of the tyres at their own, smaller spread', () => {
    const { ends } = stance({ corners: [500, 440, 420, 420], front: { springRatio: 0.9 } });
    const { left, right } = ends.front.springLoad;
    expect((left.value + right.value) * 0.9).toBeCloseTo((940 - 250) * G, 9);
    // Moments about the length axis: springs at 0.9 m, tyres at 1.6 m.
    expect((left.value - right.value) * 0.9 * 0.9).toBeCloseTo((500 - 440) * G * 1.6, 9);
  });

  test('settle by load ÷ rate; a tape that disagrees with that is reported', () => {
    const front = {
      springRate: [30_000, 600] as const,
      coil: { free: [0.42, 0.0016] as const, ride: [0.26, 0.0016] as const },
      axleMass: [250, 10] as const,
    };
    const { ends, findings } = stance({ front });
    expect(ends.front.settledDeflection.value).toBeCloseTo((710 * G) / 2 / 30_000, 12);
    expect(ends.front.settledLength!.value).toBeCloseTo(0.42 - (710 * G) / 2 / 30_000, 12);
    const finding = findings.find(({ code }) => code === 'statics-spring-length-disagrees')!;
    expect(finding.place).toBe('front');
    expect(finding.value!.value).toBeCloseTo(0.26 - ends.front.settledLength!.value, 12);
    const agreeing = stance({ front: { ...front, coil: { ...front.coil, ride: [0.305, 0.0016] } } });
    expect(agreeing.findings).toEqual([]);
  });

  /** fn = 4.985 ÷ √δ, δ the static deflection in cm: √(g/δ) ÷ 2π, with a tyre that does not give. */
  test.each([
    [0.1, 1.58],
    [0.15, 1.29],
    [0.2, 1.11],
  ])('settled by %s m on hard tyres the body rides at %s Hz', (deflection, expected) => {
    const springRate = (710 * G) / 2 / deflection;
    const { ends } = stance({ front: { springRate, tyreRate: 1e12 } });
    expect(ends.front.settledDeflection.value).toBeCloseTo(deflection, 12);
    expect(ends.front.rideFrequency.value).toBeCloseTo(expected, 2);
  });

  test('a rate known to 4 % gives a ride frequency known to about 2 %', () => {
    const { rideFrequency } = stance({ front: { springRate: [30_000, 1200], tyreRate: 1e12 } }).ends.front;
    // f goes with √k: half the relative half-width. Scatter of 2048 trials: 2 %.
    expect(Math.abs(rideFrequency.tolerance! / (0.02 * rideFrequency.value) - 1)).toBeLessThan(0.05);
  });
});

describe('shock slopes near rest', () => {
  test('from rest to the first measured speed, each way', () => {
    const slopes = slopesAtRest({
      id: 'x',
      speed: [-0.5, -0.1, 0, 0.2, 1],
      force: [-900, -300, 0, 100, 300],
      origin: 'measured',
    });
    expect(slopes).toEqual({ compression: 500, rebound: 3000 });
  });

  test('a table of one side only has no slope on the other', () => {
    const slopes = slopesAtRest({ id: 'x', speed: [0, 1], force: [0, 700], origin: 'measured' });
    expect(slopes).toEqual({ compression: 700, rebound: 0 });
  });

  /** ζ = c ÷ (2·√(k·m)) of the sprung mass of a corner, rate and slope both brought to the axle by their ratio². */
  test('a damping ratio is the slope over critical damping, both at the axle', () => {
    const front = { shockSlope: [1500, 9000] as const, shock: { ratio: 0.8 }, springRatio: 0.9 };
    const { dampingRatio } = stance({ front }).ends.front;
    const critical = 2 * Math.sqrt(30_000 * 0.9 ** 2 * ((960 - 250) / 2));
    expect(dampingRatio.compression.value).toBeCloseTo((1500 * 0.8 ** 2) / critical, 12);
    expect(dampingRatio.rebound.value).toBeCloseTo((9000 * 0.8 ** 2) / critical, 12);
  });

  test('damping ratios that were typed come back as they were typed', () => {
    const { dampingRatio } = stanceOf(setupOf(ochre)).ends.rear;
    expect(dampingRatio.compression.value).toBeCloseTo(0.25, 12);
    expect(dampingRatio.rebound.value).toBeCloseTo(0.55, 12);
  });

  test('strong damping is known as well as weak: by half of what mass and rate are known to', () => {
    const front = { shockSlope: [1000, 30_000] as const, springRate: [30_000, 1200] as const };
    const { compression, rebound } = stance({ front }).ends.front.dampingRatio;
    expect(rebound.value).toBeGreaterThan(1);
    // ζ goes with 1 ÷ √k. Scatter of 2048 trials: 2 %.
    for (const { value, tolerance } of [compression, rebound])
      expect(Math.abs(tolerance! / (0.02 * value) - 1)).toBeLessThan(0.05);
  });

  test('the tyre pressure softens only the tyre', () => {
    const front = { shockSlope: [1000, 4000] as const };
    const { dampingRatio, hopFrequency, rateAtAxle } = stance({ front }).ends.front;
    const aired = stanceOf(
      changed({ front }, { tyrePressure: reading('setups.changed.front.tyrePressure', 85_000, 'pressure') }),
    ).ends.front;
    expect(aired.rateAtAxle).toEqual(rateAtAxle);
    expect(aired.dampingRatio).toEqual(dampingRatio);
    expect(aired.hopFrequency.value).toBeLessThan(hopFrequency.value);
  });
});

describe('draws', () => {
  const rig = rigOf({ front: { gap: [0.06, 0.004, 0.001] } });

  test('a reading has its nominal value first, and up and down its own spread', () => {
    const { gap } = rig.front.stopMount;
    const column = drawsOf(rig).of(gap.left);
    expect(column[0]).toBe(0.06);
    const above = column.filter((x) => x > 0.06);
    const below = column.filter((x) => x < 0.06);
    const rms = (xs: Float64Array) => Math.sqrt(xs.reduce((sum, x) => sum + (x - 0.06) ** 2, 0) / xs.length);
    // Half a normal about its mode: root mean square = standard deviation of that side.
    expect(rms(above)).toBeCloseTo(0.002, 5);
    expect(rms(below)).toBeCloseTo(0.0005, 6);
  });

  test('same rig, trials and seed: same draws; another seed: others', () => {
    const { left } = rig.front.stopMount.gap;
    expect(drawsOf(rig, { seed: 2 }).of(left)).not.toEqual(drawsOf(rig, { seed: 1 }).of(left));
    expect(drawsOf(structuredClone(rig)).of(left)).toEqual(drawsOf(rig).of(left));
  });

  test('a rate that is hardly known never goes through zero', () => {
    const unsure = rigOf({ front: { springRate: [30_000, 60_000] } });
    const column = drawsOf(unsure).of(unsure.front.spring.rate);
    expect(Math.min(...column)).toBe(3000);
  });

  test('results are plain data that survive a structured clone', () => {
    const result = stance({ front: { coil: { free: [0.42, 0.002] } } });
    expect(structuredClone(result)).toEqual(result);
  });
});
