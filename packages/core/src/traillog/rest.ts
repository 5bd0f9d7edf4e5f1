/** One second or so of three axes: enough to tell rest, direction and size without keeping a sample. */
export interface Window {
  readonly from: number;
  readonly to: number;
  readonly samples: number;
  readonly mean: readonly number[];
  /** Mean products xx, yy, zz, xy, xz, yz. */
  readonly products: readonly number[];
}

const LENGTH = 1;
/** A window that lost more than a fifth of its second says nothing. */
const FILLED = 0.8;

/** Cuts a stream of three axes into windows of a second; a step of the clock ends one. */
export class Windows {
  readonly list: Window[] = [];
  #from = Number.NaN;
  #last = Number.NaN;
  #samples = 0;
  readonly #sums = new Float64Array(9);

  add(time: number, x: number, y: number, z: number): void {
    const isBroken = !(time >= this.#last && time - this.#last < LENGTH / 2);
    if (isBroken || time - this.#from >= LENGTH) this.end();
    if (this.#samples === 0) this.#from = time;
    this.#last = time;
    this.#samples += 1;
    const sums = this.#sums;
    sums[0] += x;
    sums[1] += y;
    sums[2] += z;
    sums[3] += x * x;
    sums[4] += y * y;
    sums[5] += z * z;
    sums[6] += x * y;
    sums[7] += x * z;
    sums[8] += y * z;
  }

  end(): void {
    if (this.#samples > 2 && this.#last - this.#from >= FILLED * LENGTH) {
      const means = Array.from(this.#sums, (sum) => sum / this.#samples);
      this.list.push({
        from: this.#from,
        to: this.#last,
        samples: this.#samples,
        mean: means.slice(0, 3),
        products: means.slice(3),
      });
    }
    this.#samples = 0;
    this.#sums.fill(0);
  }
}

/** How the device hung while nothing moved. */
export interface Rest {
  /** Mean of the three axes at rest [m/s²]: it points up. */
  readonly vector: readonly [number, number, number];
  readonly size: number;
  /** Standard deviation of the windows' means [m/s²]. */
  readonly spread: number;
  /** How long it rested [s]. */
  readonly seconds: number;
}

/** Below that a window is at rest [m/s²]: an engine may idle. common practice, no source */
const QUIET = 0.4;
/** Shorter rests are a stop of the wind, not of the rig [s]. */
const LEAST_REST = 3;

/** Root mean square of a window about its own mean, all axes together. */
export const shakeOf = ({ mean, products }: Window): number =>
  Math.sqrt(Math.max(0, products[0] + products[1] + products[2] - squared(mean)));

const squared = (v: readonly number[]): number => v.reduce((sum, part) => sum + part * part, 0);

/** The rest of a log: the mean of its quiet windows; null where it never rested. */
export function restOf(windows: readonly Window[]): Rest | null {
  const quiet = windows.filter((window) => shakeOf(window) < QUIET);
  const seconds = quiet.reduce((sum, { from, to }) => sum + to - from, 0);
  if (seconds < LEAST_REST * FILLED) return null;
  const vector = [0, 1, 2].map((axis) => quiet.reduce((sum, { mean }) => sum + mean[axis], 0) / quiet.length);
  const spread = Math.sqrt(
    quiet.reduce((sum, { mean }) => sum + squared(mean.map((part, k) => part - vector[k])), 0) / quiet.length,
  );
  return { vector: [vector[0], vector[1], vector[2]], size: Math.sqrt(squared(vector)), spread, seconds };
}

/**
 * Mean square of the acceleration along a direction, gravity taken out [m²/s⁴]:
 *
 *     E[(u·a − g)²] = uᵀ·E[a·aᵀ]·u − 2g·u·E[a] + g²
 */
export function alongSquare(
  { mean, products: [xx, yy, zz, xy, xz, yz] }: Window,
  up: readonly number[],
  gravity: number,
): number {
  const [u, v, w] = up;
  const whole = u * u * xx + v * v * yy + w * w * zz + 2 * (u * v * xy + u * w * xz + v * w * yz);
  return Math.max(0, whole - 2 * gravity * (u * mean[0] + v * mean[1] + w * mean[2]) + gravity * gravity);
}
