import { hermiteSlope, hermiteValue } from '../numerics/hermite.ts';
import type { Stepper } from './stepper.ts';

/** Where a state inside a step is written. */
export interface Inside {
  readonly position: Float64Array;
  readonly speed: Float64Array;
  readonly sums: Float64Array;
  readonly acceleration: Float64Array;
}

export const makeInside = (coordinates: number, sums: number): Inside => ({
  position: new Float64Array(coordinates),
  speed: new Float64Array(coordinates),
  sums: new Float64Array(sums),
  acceleration: new Float64Array(coordinates + sums),
});

/** State inside an accepted step: a cubic through both ends for every coordinate, speed and first-order state. */
export function stateInside(
  { start, end }: Stepper,
  step: number,
  theta: number,
  { position, speed, sums }: Inside,
): void {
  for (let i = 0; i < position.length; i += 1) {
    position[i] = hermiteValue(start.position[i], start.speed[i], end.position[i], end.speed[i], step, theta);
    speed[i] = hermiteValue(
      start.speed[i],
      start.acceleration[i],
      end.speed[i],
      end.acceleration[i],
      step,
      theta,
    );
  }
  const n = position.length;
  for (let j = 0; j < sums.length; j += 1) {
    sums[j] = hermiteValue(
      start.sums[j],
      start.acceleration[n + j],
      end.sums[j],
      end.acceleration[n + j],
      step,
      theta,
    );
  }
}

/** Largest value of the cubic with slopes m0 > 0 > m1 at its ends: its slope has one root between them. */
export function crestOf(y0: number, m0: number, y1: number, m1: number, step: number): number {
  let low = 0;
  let high = 1;
  for (let k = 0; k < 30; k += 1) {
    const middle = (low + high) / 2;
    if (hermiteSlope(y0, m0, y1, m1, step, middle) > 0) low = middle;
    else high = middle;
  }
  return hermiteValue(y0, m0, y1, m1, step, (low + high) / 2);
}

/** Largest value of the parabola through three even points, or of the points when it has no crest between them. */
export function parabolaCrest(before: number, middle: number, after: number): number {
  const bend = before - 2 * middle + after;
  if (!(middle >= before && middle >= after) || bend >= 0) return Math.max(before, middle, after);
  return middle - (before - after) ** 2 / (8 * bend);
}
