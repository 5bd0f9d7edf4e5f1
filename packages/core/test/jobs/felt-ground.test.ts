import { describe, expect, it } from 'vitest';
import { heightAt } from '../../src/course/sampled.ts';
import { sampleCourse } from '../../src/course/track.ts';
import { FeltGrounds } from '../../src/jobs/felt-ground.ts';
import { rideRig } from '../../src/jobs/ride.ts';
import { sweepRig } from '../../src/jobs/sweep.ts';
import type { CourseShape } from '../../src/rig/course-spec.ts';
import { resolveSetup } from '../../src/rig/setup-resolve.ts';
import { TYRE_FEELS, type TyreFeel } from '../../src/rig/tyre-feel.ts';
import { tyreFootText } from '../../src/words/tyres.ts';
import { rigOf, SMALLEST } from '../rigfile/smallest-rig.ts';
import { must } from './ochre.ts';

const POUND = 0.45359237;
const GRAVITY = 9.80665;
/** Short bumps, a third of a metre from crest to crest: about as long as a foot. */
const BUMPS: CourseShape = {
  kind: 'washboard',
  height: 0.02,
  spacing: 0.4,
  length: 6,
  fadeIn: 0.4,
  start: 3,
  rightPhase: 0,
};
const LONG: CourseShape = { kind: 'whoops', height: 0.15, spacing: 8, count: 2, start: 3, rightPhase: 0 };

const TEXT = SMALLEST.replaceAll(
  'axle: { track: 60 in }',
  'axle: { track: 60 in }\n  tyre: { rate: 150 N/mm, pressure: 15 psi, radius: 400 mm }',
);
const rig = rigOf(
  `${TEXT}setups:\n  aired-down: { front: { tyrePressure: 8 psi }, rear: { tyrePressure: 8 psi } }\n  loaded: { rear: { addedLoad: 400 lb } }\n`,
);
const setup = (id = 'as-measured') => must(resolveSetup(rig, id));
const rode = (course: CourseShape, tyres?: TyreFeel) =>
  must(
    rideRig({
      rig,
      setup: 'as-measured',
      course,
      courseName: course.kind,
      speed: 6,
      historyRate: 0,
      trials: 0,
      seed: 1,
      tyres,
    }),
  );

describe('the foot of a tyre', () => {
  it('is the chord of its circle pressed in by load over rate, at each end', () => {
    const { contact, used } = new FeltGrounds().foot(setup());
    // R = loaded radius + δ; half the chord √(R² − (R − δ)²).
    const chord = (pounds: number): number => {
      const deflection = (pounds * POUND * GRAVITY) / 150e3;
      return 2 * Math.sqrt((0.4 + deflection) ** 2 - 0.4 ** 2);
    };
    expect(contact.front).toBeCloseTo(chord(1000), 12);
    expect(contact.rear).toBeCloseTo(chord(900), 12);
    expect(used).toBeCloseTo((chord(1000) + chord(900)) / 2, 12);
  });

  it('grows when the tyre is aired down or carries more, its free radius being what it was', () => {
    const grounds = new FeltGrounds();
    const { contact } = grounds.foot(setup());
    const aired = grounds.foot(setup('aired-down')).contact;
    expect(aired.front).toBeGreaterThan(1.1 * contact.front);
    expect(aired.front).toBeLessThan(1.5 * contact.front);
    const loaded = grounds.foot(setup('loaded')).contact;
    expect(loaded.front).toBe(contact.front);
    // 1100 lb on each rear tyre now: the free circle is that of 900 lb, pressed in further.
    const free = 0.4 + (900 * POUND * GRAVITY) / 150e3;
    const centre = free - (1100 * POUND * GRAVITY) / 150e3;
    expect(loaded.rear).toBeCloseTo(2 * Math.sqrt(free ** 2 - centre ** 2), 12);
  });
});

describe('the ground that is driven over', () => {
  it('as a point is the course itself', () => {
    const grounds = new FeltGrounds('point');
    expect(grounds.of(BUMPS, setup())).toBe(grounds.plain(BUMPS));
    expect(grounds.foot(setup()).used).toBe(0);
  });

  it('under a foot keeps sin(πℓ/λ) ÷ (πℓ/λ) of a wave', () => {
    const grounds = new FeltGrounds('footprint');
    const { used } = grounds.foot(setup());
    const felt = grounds.of(BUMPS, setup()).left;
    const plain = sampleCourse(BUMPS).left;
    const range = (side: typeof felt) => {
      const heights = Array.from({ length: 401 }, (_, i) => heightAt(side, 5 + i / 400));
      return Math.max(...heights) - Math.min(...heights);
    };
    const angle = (Math.PI * used) / 0.4;
    expect(range(felt) / range(plain)).toBeCloseTo(Math.abs(Math.sin(angle) / angle), 3);
  });

  it('is laid out once for setups on the same tyres, and anew for others', () => {
    const grounds = new FeltGrounds();
    const first = grounds.of(LONG, setup());
    expect(grounds.of(LONG, setup())).toBe(first);
    expect(grounds.of(LONG, setup('aired-down'))).not.toBe(first);
    expect(grounds.of(LONG, setup())).toBe(first);
  });

  it('shakes a rig less on bumps as short as its foot, and the same on long ones', () => {
    const rms = (course: CourseShape, tyres?: TyreFeel) => rode(course, tyres).body.rmsAcceleration.value;
    expect(rms(BUMPS, 'footprint')).toBeLessThan(0.6 * rms(BUMPS, 'point'));
    expect(rms(LONG, 'footprint') / rms(LONG, 'point')).toBeCloseTo(1, 1);
    expect(rms(BUMPS)).toBe(rms(BUMPS, 'footprint'));
  });

  it('is told in the answer, of a ride and of a sweep', () => {
    for (const feel of TYRE_FEELS) expect(rode(LONG, feel).tyres.feel).toBe(feel);
    expect(rode(LONG).tyres).toEqual(new FeltGrounds().foot(setup()));
    const sweep = must(
      sweepRig({
        rig,
        setups: ['as-measured', 'aired-down'],
        course: LONG,
        courseName: 'long',
        wantedSpeed: null,
        from: 3,
        to: 6,
        step: 1,
        trials: 0,
        seed: 1,
        tyres: 'point',
      }),
    );
    expect(sweep.setups.map(({ tyres }) => tyres.feel)).toEqual(['point', 'point']);
  });
});

describe('in words', () => {
  const contact = { front: 0.34, rear: 0.33 };

  it('says how the ground was read and over what length', () => {
    const said = (feel: TyreFeel, used: number) =>
      tyreFootText({ feel, contact, used }, { system: 'metric' });
    expect(said('footprint', 0.335)).toMatch(/over a foot of 3[34]0 mm, /);
    expect(said('two-cams', 0.335)).toMatch(/two cams .* passenger tyre/);
    expect(said('point', 0)).toMatch(/point: short sharp things are harder/);
  });

  it('names both ends where one ground stands for two that differ', () => {
    const foot = { feel: 'footprint', contact: { front: 0.4, rear: 0.3 }, used: 0.35 } as const;
    expect(tyreFootText(foot, { system: 'metric' })).toContain('(mean of 400 mm in front and 300 mm behind)');
  });
});
