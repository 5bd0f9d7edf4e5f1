import { describe, expect, it } from 'vitest';
import { B1, B2, B3, E1, E2, E3, E4 } from '../../src/ride/stepper.ts';
import { stiffMetal, stopTouch } from '../shelf/contact.ts';
import { controlledSteps, evenSteps, missOf, restart, stepperFor } from '../shelf/drive.ts';
import type { ShelfProblem } from '../shelf/problem.ts';
import { SHELF } from '../shelf/shelf.ts';
import { dampedOscillator, freeFall } from '../shelf/smooth.ts';

const STAGE_WEIGHTS = [B1, B2, B3] as const;
const ERROR_WEIGHTS = [E1, E2, E3, E4] as const;

/** Places of the stages in a step, and the weights by which each stage leans on the one before it. */
const PLACES = [0, 1 / 2, 3 / 4, 1];
const LEANS = [0, 1 / 2, 3 / 4];

const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);

describe('the coefficients of the step', () => {
  const [b1, b2, b3] = STAGE_WEIGHTS;

  it('add to one, and those of the error to nothing', () => {
    expect(sum(STAGE_WEIGHTS)).toBeCloseTo(1, 15);
    expect(sum(ERROR_WEIGHTS)).toBeCloseTo(0, 15);
  });

  it('meet the four conditions of the third order', () => {
    // Hairer, Nørsett, Wanner, Solving Ordinary Differential Equations I, II.1 (from memory).
    expect(b2 * PLACES[1] + b3 * PLACES[2]).toBeCloseTo(1 / 2, 15);
    expect(b2 * PLACES[1] ** 2 + b3 * PLACES[2] ** 2).toBeCloseTo(1 / 3, 15);
    expect(b3 * LEANS[2] * PLACES[1]).toBeCloseTo(1 / 6, 15);
    expect(b1).toBeCloseTo(2 / 9, 15);
  });

  it('belong to an embedded result that meets the second order and not the third', () => {
    const embedded = [...STAGE_WEIGHTS, 0].map((b, i) => b - ERROR_WEIGHTS[i]);
    expect(sum(embedded)).toBeCloseTo(1, 15);
    expect(sum(embedded.map((b, i) => b * PLACES[i]))).toBeCloseTo(1 / 2, 15);
    expect(Math.abs(sum(embedded.map((b, i) => b * PLACES[i] ** 2)) - 1 / 3)).toBeGreaterThan(0.01);
    // As printed: 7/24, 1/4, 1/3, 1/8 (Bogacki and Shampine 1989, from memory).
    [7 / 24, 1 / 4, 1 / 3, 1 / 8].forEach((b, i) => {
      expect(embedded[i]).toBeCloseTo(b, 15);
    });
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
  it('is exact on speeds that are cubic in time, and not on those of fourth order: its order is three', () => {
    const misses = [[2], [2, -7], [2, -7, 5], [2, -7, 5, 3]].map((push) => {
      const problem = pushed(...push);
      const stepper = stepperFor(problem);
      stepper.attempt(0, 1);
      stepper.accept();
      return missOf(stepper, problem, 1);
    });
    expect(Math.max(...misses.slice(0, 3))).toBeLessThan(1e-14);
    // Σ bc³ is 11/48 instead of 1/4.
    expect(misses[3]).toBeCloseTo(3 / 48, 12);
  });

  it('leaves free fall on its parabola to rounding, however many there are', () => {
    expect(evenSteps(freeFall, 1)).toBeLessThan(1e-14);
    expect(evenSteps(freeFall, 1000)).toBeLessThan(1e-12);
  });

  it('costs three evaluations, and one to begin with', () => {
    const stepper = stepperFor(dampedOscillator);
    for (let k = 0; k < 10; k += 1) {
      stepper.attempt(k * 0.01, 0.01);
      stepper.accept();
    }
    expect(stepper.evaluations).toBe(31);
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
  it('falls by eight when the step is halved', () => {
    for (const at of [0, 0.1, 0.23]) {
      const stepper = restart(stepperFor(dampedOscillator), at, dampedOscillator.exact(at));
      const ratio = stepper.attempt(at, 2e-3) / stepper.attempt(at, 1e-3);
      expect(Math.log2(ratio)).toBeGreaterThan(2.9);
      expect(Math.log2(ratio)).toBeLessThan(3.1);
    }
  });

  it('is larger than the error that the step really makes, which falls by sixteen', () => {
    const real = [4e-3, 2e-3].map((step) => {
      const stepper = stepperFor(dampedOscillator);
      const told = stepper.attempt(0, step);
      stepper.accept();
      const made = missOf(stepper, dampedOscillator, step);
      expect(told).toBeGreaterThan(made);
      return made;
    });
    expect(Math.log2(real[0] / real[1])).toBeGreaterThan(3.8);
    expect(Math.log2(real[0] / real[1])).toBeLessThan(4.2);
  });

  it('is told in accepted errors: twice as strict, twice as large', () => {
    const told = [1, 0.5].map((accepted) => stepperFor(dampedOscillator, accepted).attempt(0, 0.01));
    expect(told[1] / told[0]).toBeCloseTo(2, 12);
  });
});

describe.each(SHELF.filter(({ name }) => name !== freeFall.name).map((problem) => [problem.name, problem]))(
  'the problem of the %s',
  (_name, problem) => {
    it('is met with order three within 0.2, when steps end where the law switches', () => {
      const misses = [40, 80, 160].map((steps) => evenSteps(problem, steps));
      for (let k = 0; k < 2; k += 1) {
        expect(Math.log2(misses[k] / misses[k + 1])).toBeGreaterThan(2.8);
        expect(Math.log2(misses[k] / misses[k + 1])).toBeLessThan(3.2);
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
