/** Units `from` … `to` − 1, given to one worker at once. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  /** 1 when it is tried for the first time. */
  readonly attempt: number;
}

/** What one stretch should take [ms]: long against the sending of a message, short against patience. */
const STRETCH_MS = 25;
/** A stretch is at most so many times as long as the one before: a first measurement may be wrong by much. */
const GROWTH = 4;
/** Stretches a worker that may be ahead of the first unfinished unit: bounds what waits, whatever one slow unit does. */
const AHEAD = 8;

/** Cuts the units of a plan into stretches of about equal time, learning the pace from those that came back. */
export class Stretches {
  cut = 0;
  #next = 0;
  #length = 1;
  /** Units a millisecond and worker. */
  #pace: number | null = null;
  readonly #again: Stretch[] = [];

  constructor(
    readonly units: number,
    readonly workers: number,
  ) {}

  /** @param folded – all units below are done; null when there is nothing to do now */
  next(folded: number): Stretch | null {
    const before = this.#again.pop();
    if (before !== undefined) return before;
    if (this.#next >= this.units || this.#next - folded >= AHEAD * this.workers * this.#length) return null;
    const from = this.#next;
    this.#next = Math.min(this.units, from + this.#length);
    this.cut += 1;
    return { from, to: this.#next, attempt: 1 };
  }

  /** To be tried by somebody else. */
  giveBack({ from, to, attempt }: Stretch): void {
    this.#again.push({ from, to, attempt: attempt + 1 });
  }

  /** @param ms – what the stretch took */
  took({ from, to }: Stretch, ms: number): void {
    const seen = (to - from) / Math.max(ms, 0.01);
    // One slow stretch, or one on a machine that was busy, moves the pace by half.
    this.#pace = this.#pace === null ? seen : (this.#pace + seen) / 2;
    this.#length = Math.max(1, Math.min(Math.floor(STRETCH_MS * this.#pace), this.#length * GROWTH));
  }
}
