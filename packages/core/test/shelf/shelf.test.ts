import { describe, expect, it } from 'vitest';
import { slopeOf } from '../numerics/quadrature.ts';
import { bouncingMass, stiffMetal, stopTouch } from './contact.ts';
import type { ShelfProblem } from './problem.ts';
import { SHELF } from './shelf.ts';
import { dampedOscillator } from './smooth.ts';

/** Places inside every smooth piece of an answer. */
function inside({ switches, duration }: ShelfProblem): readonly { at: number; width: number }[] {
  const ends = [0, ...switches, duration];
  return ends.slice(1).flatMap((end, i) =>
    [0.1, 0.35, 0.5, 0.8, 0.95].map((part) => ({
      at: ends[i] + part * (end - ends[i]),
      width: end - ends[i],
    })),
  );
}

describe.each(SHELF.map((problem) => [problem.name, problem] as const))(
  'the answer of the shelf to %s',
  (_name, problem) => {
    it('starts where the problem starts', () => {
      const { position, speed } = problem.exact(0);
      problem.position.forEach((value, i) => {
        expect(position[i]).toBeCloseTo(value, 12);
        expect(speed[i]).toBeCloseTo(problem.speed[i], 12);
      });
    });

    it('has the speed that its positions show, and obeys the law', () => {
      for (const { at, width } of inside(problem)) {
        const { position, speed } = problem.exact(at);
        const out = new Float64Array(position.length);
        problem.accelerate(at, Float64Array.from(position), Float64Array.from(speed), out);
        position.forEach((_, i) => {
          const h = 0.002 * width;
          const shownSpeed = slopeOf((t) => problem.exact(t).position[i], at, h);
          const shown = slopeOf((t) => problem.exact(t).speed[i], at, h);
          // Fourth-order difference over 1/500 of a piece that holds two turns or less: (4π/500)⁴/30 is 1.4e-8.
          expect(Math.abs(shownSpeed - speed[i])).toBeLessThan(1e-7 * problem.size * width + 1e-10);
          expect(Math.abs(shown - out[i])).toBeLessThan(1e-7 * problem.size + 1e-9);
        });
      }
    });

    it('is continuous in position and speed where the law switches', () => {
      for (const at of problem.switches) {
        const before = problem.exact(at - 1e-11);
        const after = problem.exact(at + 1e-11);
        before.position.forEach((_, i) => {
          expect(Math.abs(after.position[i] - before.position[i])).toBeLessThan(1e-9);
          expect(Math.abs(after.speed[i] - before.speed[i])).toBeLessThan(1e-10 * problem.size + 1e-10);
        });
      }
    });

    it('switches where the law does, and nowhere else', () => {
      const jerk = (t: number) => {
        const { position, speed } = problem.exact(t);
        const out = new Float64Array(position.length);
        const ahead = new Float64Array(position.length);
        problem.accelerate(t, Float64Array.from(position), Float64Array.from(speed), out);
        const next = problem.exact(t + 1e-7);
        problem.accelerate(t + 1e-7, Float64Array.from(next.position), Float64Array.from(next.speed), ahead);
        return (ahead[0] - out[0]) / 1e-7;
      };
      for (const at of problem.switches) {
        const change = Math.abs(jerk(at + 1e-6) - jerk(at - 2e-6));
        expect(change).toBeGreaterThan(0.5 * problem.size);
      }
    });
  },
);

describe('answers of the shelf that a handbook knows', () => {
  it('the damped oscillator loses its logarithmic decrement each turn: ζ = 0.2 gives 1.282550', () => {
    // The decrement 2πζ/√(1 − ζ²) of any book on vibration, from memory.
    const turn = (2 * Math.PI) / (2 * Math.PI * 1.25 * Math.sqrt(1 - 0.04));
    const [first] = dampedOscillator.exact(0).position;
    const [second] = dampedOscillator.exact(turn).position;
    expect(Math.log(first / second)).toBeCloseTo(1.28255, 6);
  });

  it('the bouncing mass comes back to its height', () => {
    const [fall, leave] = bouncingMass.switches;
    expect(bouncingMass.exact(leave + fall - 1e-9).position[0]).toBeCloseTo(0.1, 9);
  });

  it('the mass on a stop crushes it by v·√(m/k) and leaves as fast as it came', () => {
    const [touch, leave] = stopTouch.switches;
    expect(stopTouch.exact((touch + leave) / 2).position[0]).toBeCloseTo(1.5 * Math.sqrt(350 / 4e5), 12);
    expect(stopTouch.exact(leave + 0.01).speed[0]).toBe(-1.5);
  });

  it('the mass on metal turns where all its energy is in stop and metal', () => {
    const [reach, leave] = stiffMetal.switches;
    const [deepest] = stiffMetal.exact((reach + leave) / 2).position;
    const held = (4e5 * deepest ** 2) / 2 + (2e7 * (deepest - 0.04) ** 2) / 2;
    expect(held).toBeCloseTo((350 * 2.5 ** 2) / 2, 6);
  });
});
