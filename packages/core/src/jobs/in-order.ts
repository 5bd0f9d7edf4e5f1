import type { Fold } from './fold.ts';

/** Folds rows in the order of their units, however they come in; those that are early wait. */
export class InOrder<Answer> {
  /** Units folded so far: all below this number. */
  folded = 0;
  /** Most stretches that ever waited. */
  mostWaiting = 0;
  readonly #waiting = new Map<number, { readonly to: number; readonly rows: Float64Array }>();

  constructor(
    readonly fold: Fold<Answer>,
    readonly width: number,
  ) {}

  take(from: number, to: number, rows: Float64Array): void {
    this.#waiting.set(from, { to, rows });
    for (
      let ready = this.#waiting.get(this.folded);
      ready !== undefined;
      ready = this.#waiting.get(this.folded)
    ) {
      this.#waiting.delete(this.folded);
      for (let unit = this.folded; unit < ready.to; unit += 1)
        this.fold.take(ready.rows, (unit - this.folded) * this.width);
      this.folded = ready.to;
    }
    this.mostWaiting = Math.max(this.mostWaiting, this.#waiting.size);
  }
}
