import { describe, expect, it } from 'vitest';
import { A21, A31, A32, A41, A42, A43, B1, B2, B3, B4, E1, E2, E3, E4, E5 } from '../../src/ride/stepper.ts';
import { stiffMetal, stopTouch } from '../shelf/contact.ts';
import { controlledSteps, evenSteps, missOf, restart, stepperFor } from '../shelf/drive.ts';
import type { ShelfProblem } from '../shelf/problem.ts';
import { SHELF } from '../shelf/shelf.ts';
import { dampedOscillator, freeFall } from '../shelf/smooth.ts';

/** Stages of a step, its end the fifth: what each leans on those before it, and its place. */
const LEANS = [[], [A21], [A31, A32], [A41, A42, A43], [B1, B2, B3, B4]];
const PLACES = [0, 1 / 3, 2 / 3, 1, 1];
const WEIGHTS = [B1, B2, B3, B4, 0];
const ERROR_WEIGHTS = [E1, E2, E3, E4, E5];

const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);

/** Left sides of the order conditions that end in 1/2, 1/3, 1/6, 1/4, 1/8, 1/12, 1/24, after the first. */
function conditions(weights: readonly number[]): readonly number[] {
  const over = (of: (i: number) => number): number => sum(weights.map((b, i) => b * of(i)));
  const leaned = (values: readonly number[], i: number): number => sum(LEANS[i].map((a, j) => a * values[j]));
  const c = PLACES;
  const squares = c.map((x) => x * x);
  const ac = c.map((_, i) => leaned(c, i));
  return [
    over((i) => c[i]),
    over((i) => squares[i]),
    over((i) => ac[i]),
    over((i) => c[i] ** 3),
    over((i) => c[i] * ac[i]),
    over((i) => leaned(squares, i)),
    over((i) => leaned(ac, i)),
  ];
}

// Hairer, Nørsett, Wanner, Solving Ordinary Differential Equations I, II.1 and II.2 (from memory).
const RIGHT_SIDES = [1 / 2, 1 / 3, 1 / 6, 1 / 4, 1 / 8, 1 / 12, 1 / 24];

describe('the coefficients of the step', () => {
  it('place each stage where what it leans on adds up to', () => {
    LEANS.forEach((leans, i) => {
      expect(sum(leans)).toBeCloseTo(PLACES[i], 15);
    });
  });

  it('add to one, and those of the error to nothing', () => {
    expect(sum(WEIGHTS)).toBeCloseTo(1, 15);
    expect(sum(ERROR_WEIGHTS)).toBeCloseTo(0, 15);
  });

  it('meet the eight conditions of the fourth order', () => {
    conditions(WEIGHTS).forEach((left, k) => {
      expect(left).toBeCloseTo(RIGHT_SIDES[k], 15);
    });
  });

  it('belong to an embedded result that meets the third order and not the fourth', () => {
    const embedded = conditions(WEIGHTS.map((b, i) => b - ERROR_WEIGHTS[i]));
    for (let k = 0; k < 3; k += 1) expect(embedded[k]).toBeCloseTo(RIGHT_SIDES[k], 15);
    expect(
      Math.max(...embedded.slice(3).map((left, k) => Math.abs(left - RIGHT_SIDES[k + 3]))),
    ).toBeGreaterThan(1e-3);
  });
});

/** A motion that is a polynomial in time: q″ = Σ aₖtᵏ. */
function pushed(...a: readonly number[]): ShelfProblem {
  const start = { position: [0.3], speed: [-1.1] };
  return {
    name: 'pushed',
    ...start,
    duration: 1,
    switches: [],
    size: 1,
    accelerate(time, _position, _speed, out) {
      out[0] = sum(a.map((ak, k) => ak * time ** k));
    },
    exact: (t) => ({
      position: [0.3 - 1.1 * t + sum(a.map((ak, k) => (ak * t ** (k + 2)) / ((k + 1) * (k + 2))))],
      speed: [-1.1 + sum(a.map((ak, k) => (ak * t ** (k + 1)) / (k + 1)))],
    }),
  };
}

describe('a step', () => {
  it('is exact on motions that are of fourth order in time, and not on those of fifth: its order is four', () => {
    const misses = [[2], [2, -7], [2, -7, 5], [2, -7, 5, 3]].map((push) => {
      const problem = pushed(...push);
      const stepper = stepperFor(problem);
      stepper.attempt(0, 1);
      stepper.accept();
      return missOf(stepper, problem, 1);
    });
    expect(Math.max(...misses.slice(0, 3))).toBeLessThan(1e-14);
    // Σ b·Σ ac³ is 5/108 instead of 1/20.
    expect(misses[3]).toBeCloseTo(3 * (1 / 20 - 5 / 108), 12);
  });

  it('leaves free fall on its parabola to rounding, however many there are', () => {
    expect(evenSteps(freeFall, 1)).toBeLessThan(1e-14);
    expect(evenSteps(freeFall, 1000)).toBeLessThan(1e-12);
  });

  it('costs four evaluations, and one to begin with', () => {
    const stepper = stepperFor(dampedOscillator);
    for (let k = 0; k < 10; k += 1) {
      stepper.attempt(k * 0.01, 0.01);
      stepper.accept();
    }
    expect(stepper.evaluations).toBe(41);
  });

  it('begins with the accelerations that the last one ended with', () => {
    const stepper = stepperFor(dampedOscillator);
    stepper.attempt(0, 0.01);
    stepper.accept();
    const carried = stepper.start.acceleration[0];
    stepper.evaluateStart(0.01);
    expect(stepper.start.acceleration[0]).toBe(carried);
  });

  it('can be tried again shorter from the same place', () => {
    const once = stepperFor(dampedOscillator);
    once.attempt(0, 0.01);
    const twice = stepperFor(dampedOscillator);
    twice.attempt(0, 0.4);
    twice.attempt(0, 0.01);
    expect([...twice.end.position, ...twice.end.speed]).toEqual([...once.end.position, ...once.end.speed]);
  });

  it('reports no number when the motion is none', () => {
    const stepper = stepperFor(dampedOscillator);
    restart(stepper, 0, { position: [Number.NaN], speed: [0] });
    expect(stepper.attempt(0, 0.01)).toBeNaN();
  });
});

describe('the error that a step reports', () => {
  it('falls by sixteen when the step is halved', () => {
    for (const at of [0, 0.1, 0.23]) {
      const stepper = restart(stepperFor(dampedOscillator), at, dampedOscillator.exact(at));
      const ratio = stepper.attempt(at, 2e-3) / stepper.attempt(at, 1e-3);
      expect(Math.log2(ratio)).toBeGreaterThan(3.9);
      expect(Math.log2(ratio)).toBeLessThan(4.1);
    }
  });

  it('is larger than the error that the step really makes, which falls by thirty-two', () => {
    const real = [4e-3, 2e-3].map((step) => {
      const stepper = stepperFor(dampedOscillator);
      const told = stepper.attempt(0, step);
      stepper.accept();
      const made = missOf(stepper, dampedOscillator, step);
      expect(told).toBeGreaterThan(made);
      return made;
    });
    expect(Math.log2(real[0] / real[1])).toBeGreaterThan(4.8);
    expect(Math.log2(real[0] / real[1])).toBeLessThan(5.2);
  });

  it('is told in accepted errors: twice as strict, twice as large', () => {
    const told = [1, 0.5].map((accepted) => stepperFor(dampedOscillator, accepted).attempt(0, 0.01));
    expect(told[1] / told[0]).toBeCloseTo(2, 12);
  });
});

describe.each(SHELF.filter(({ name }) => name !== freeFall.name).map((problem) => [problem.name, problem]))(
  'the problem of the %s',
  (_name, problem) => {
    it('is met with order four within 0.2, when steps end where the law switches', () => {
      const misses = [80, 160, 320].map((steps) => evenSteps(problem, steps));
      for (let k = 0; k < 2; k += 1) {
        expect(Math.log2(misses[k] / misses[k + 1])).toBeGreaterThan(3.8);
        expect(Math.log2(misses[k] / misses[k + 1])).toBeLessThan(4.2);
      }
    });

    it('is met the closer, the less error is accepted', () => {
      const coarse = controlledSteps(problem, { tolerance: 1e-4, lands: true });
      const fine = controlledSteps(problem, { tolerance: 1e-8, lands: true });
      expect(fine.miss).toBeLessThan(coarse.miss / 100);
      expect(fine.miss).toBeLessThan(1e-5);
    });
  },
);

describe('a law that switches inside a step', () => {
  it.each([
    ['stop', stopTouch],
    ['metal', stiffMetal],
  ])('of a %s spoils the order, which is why switches are found in time', (_name, problem) => {
    // The same even steps over the whole run. The miss depends on where in a step the switch falls: the worst of many.
    const across = { ...problem, switches: [] };
    const worst = [300, 2400].map((steps) =>
      Math.max(...Array.from({ length: 24 }, (_, k) => evenSteps(across, steps + k))),
    );
    expect(Math.log2(worst[0] / worst[1]) / 3).toBeLessThan(2.3);
  });

  it('costs plain error control more failed steps than landing on it', () => {
    for (const problem of [stopTouch, stiffMetal]) {
      const blind = controlledSteps(problem, { tolerance: 1e-6, lands: false });
      const landed = controlledSteps(problem, { tolerance: 1e-6, lands: true });
      expect(blind.rejected).toBeGreaterThan(2 * landed.rejected);
    }
  });
});
