import type { ShelfProblem } from './problem.ts';

const GRAVITY = 9.80665;

/** Thrown up and falling: a parabola. */
export const freeFall: ShelfProblem = {
  name: 'free fall',
  position: [0.4],
  speed: [2],
  duration: 0.8,
  switches: [],
  size: GRAVITY,
  accelerate(_time, _position, _speed, out) {
    out[0] = -GRAVITY;
  },
  exact: (t) => ({ position: [0.4 + 2 * t - (GRAVITY * t * t) / 2], speed: [2 - GRAVITY * t] }),
};

/** q″ = −ω²q − 2ζωq′ from q = 1 at rest. */
export const dampedOscillator: ShelfProblem = (() => {
  const omega = 2 * Math.PI * 1.25;
  const zeta = 0.2;
  const damped = omega * Math.sqrt(1 - zeta * zeta);
  return {
    name: 'damped oscillator',
    position: [1],
    speed: [0],
    duration: 1.5,
    switches: [],
    size: omega * omega,
    accelerate(_time, position, speed, out) {
      out[0] = -omega * omega * position[0] - 2 * zeta * omega * speed[0];
    },
    exact(t) {
      const decay = Math.exp(-zeta * omega * t);
      const [sine, cosine] = [Math.sin(damped * t), Math.cos(damped * t)];
      return {
        position: [decay * (cosine + ((zeta * omega) / damped) * sine)],
        speed: [((-decay * omega * omega) / damped) * sine],
      };
    },
  };
})();

/** Two equal masses on three equal springs, pushed by a sine: both modes and a law that depends on time. */
export const drivenPair: ShelfProblem = (() => {
  // In phase x₊ = q₁ + q₂ swings at 1, out of phase x₋ = q₁ − q₂ at √3; the first mass is pushed by sin 2t.
  const slow = 1;
  const fast = Math.sqrt(3);
  // x″ + w²x = sin 2t from rest: (sin 2t − (2/w) sin wt) ÷ (w² − 4).
  const mode = (w: number, t: number) =>
    [
      (Math.sin(2 * t) - (2 / w) * Math.sin(w * t)) / (w * w - 4),
      (2 * Math.cos(2 * t) - 2 * Math.cos(w * t)) / (w * w - 4),
    ] as const;
  return {
    name: 'driven pair of masses',
    position: [0, 0],
    speed: [0, 0],
    duration: 3,
    switches: [],
    size: 2,
    accelerate(time, position, _speed, out) {
      out[0] = -2 * position[0] + position[1] + Math.sin(2 * time);
      out[1] = position[0] - 2 * position[1];
    },
    exact(t) {
      const [sum, sumSpeed] = mode(slow, t);
      const [gap, gapSpeed] = mode(fast, t);
      return {
        position: [(sum + gap) / 2, (sum - gap) / 2],
        speed: [(sumSpeed + gapSpeed) / 2, (sumSpeed - gapSpeed) / 2],
      };
    },
  };
})();
