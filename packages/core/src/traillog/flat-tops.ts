/** A stretch at the end of the range of a sensor. */
export interface FlatTop {
  readonly line: number;
  /** First sample of it [s]. */
  readonly time: number;
  readonly samples: number;
  /** Index of the axis, and where it stood [SI]. */
  readonly axis: number;
  readonly at: number;
}

/** As many equal samples at the extreme are a flat top: `common practice, no source`. */
const FLAT = 3;
/** Flat tops of several axes closer than that are one hit [s]. */
const ONE_HIT = 0.1;
const MOST = 100_000;
/** An extreme that is less than so many standard deviations from the mean is where the signal lives, not an end. */
const FAR = 3;
/** Ranges that sensors usually have, in g; an extreme at one of them to within this share is its end. */
const USUAL = [2, 4, 8, 16];
const GRAVITY = 9.80665;
const AT_RANGE = 0.01;

/** Watches one axis for equal samples at its largest and smallest value. Both are known at the end only. */
export class FlatTops {
  #run = 0;
  #value = Number.NaN;
  #time = 0;
  #line = 0;
  #high: FlatTop[] = [];
  #low: FlatTop[] = [];
  #max = Number.NEGATIVE_INFINITY;
  #min = Number.POSITIVE_INFINITY;
  #count = 0;
  #sum = 0;
  #squares = 0;

  constructor(readonly axis: number) {}

  add(value: number, time: number, line: number): void {
    this.#count += 1;
    this.#sum += value;
    this.#squares += value * value;
    if (value === this.#value) {
      this.#run += 1;
      return;
    }
    this.#end();
    this.#value = value;
    this.#run = 1;
    this.#time = time;
    this.#line = line;
  }

  finish(): readonly FlatTop[] {
    this.#end();
    const mean = this.#sum / this.#count;
    const spread = Math.sqrt(Math.max(0, this.#squares / this.#count - mean * mean));
    return [...this.#high, ...this.#low].filter(
      ({ at }) => spread > 0 && (isUsual(Math.abs(at)) || Math.abs(at - mean) > FAR * spread),
    );
  }

  #end(): void {
    const at = this.#value;
    if (this.#run === 0 || Number.isNaN(at)) return;
    if (at > this.#max) {
      this.#max = at;
      this.#high = [];
    }
    if (at < this.#min) {
      this.#min = at;
      this.#low = [];
    }
    if (this.#run < FLAT) return;
    const tops = at === this.#max ? this.#high : at === this.#min ? this.#low : null;
    if (tops !== null && tops.length < MOST)
      tops.push({ line: this.#line, time: this.#time, samples: this.#run, axis: this.axis, at });
  }
}

const isUsual = (size: number): boolean =>
  USUAL.some((range) => Math.abs(size / (range * GRAVITY) - 1) < AT_RANGE);

/** Hits that took any axis to its end, in the order of time: flat tops at about one time are one hit. */
export function clippedHits(tops: readonly FlatTop[]): readonly FlatTop[] {
  const sorted = [...tops].sort((a, b) => a.time - b.time);
  return sorted.filter((top, k) => k === 0 || top.time - sorted[k - 1].time > ONE_HIT);
}
