import * as at from './layout.ts';
import { type i32, type Memory, whole } from './memory.ts';

/**
 * Reads the ground at a distance of one side into `GROUND_HEIGHT` [m] and `GROUND_RISE`, how fast it rises under a tyre
 * [m/s]: the cubic of `course/sampled`, both from the same four numbers.
 */
export function readGround(m: Memory, ground: i32, distance: number): void {
  const samples = whole(m[ground + at.SAMPLES]);
  const place = (distance - m[ground + at.ORIGIN]) * m[ground + at.PER_SAMPLE_STEP];
  const last = m[ground + at.LAST_SAMPLE];
  if (place > 0 && place < last) {
    const piece = whole(place);
    const i = samples + 2 * piece;
    const step = m[ground + at.SAMPLE_STEP];
    const u = place - piece;
    const away = 1 - u;
    const rise = m[i + 2] - m[i];
    const m0 = step * m[i + 1];
    const m1 = step * m[i + 3];
    m[at.GROUND_HEIGHT] = m[i] + u * u * (3 - 2 * u) * rise + u * away * (away * m0 - u * m1);
    m[at.GROUND_RISE] =
      m[at.RIDE_SPEED] *
      m[ground + at.PER_SAMPLE_STEP] *
      (6 * u * away * rise + away * (1 - 3 * u) * m0 + u * (3 * u - 2) * m1);
  } else {
    m[at.GROUND_HEIGHT] = m[place > 0 ? samples + 2 * whole(last) : samples];
    m[at.GROUND_RISE] = 0;
  }
}

/** The same under the tyre of a corner at a time [s]. */
export function readGroundUnder(m: Memory, corner: i32, time: number): void {
  const axle = at.FRONT + (corner >> 1) * at.AXLE_SIZE;
  const distance = m[at.RIDE_SPEED] * time - m[axle + at.BEHIND_FRONT];
  readGround(m, at.LEFT_GROUND + (corner & 1) * at.GROUND_SIZE, distance);
}
