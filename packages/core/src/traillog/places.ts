import type { Counted, LogPlace } from './channels.ts';

const KEPT = 5;
/** As much of a cell as is shown. */
const SHOWN = 40;

/** Counts places, and keeps the first few of them. */
export class PlaceCount {
  #count = 0;
  readonly #first: LogPlace[] = [];

  add(line: number, column: number, found: string): void {
    this.#count += 1;
    if (this.#first.length < KEPT) this.#first.push({ line, column, found: found.slice(0, SHOWN) });
  }

  get counted(): Counted {
    return { count: this.#count, first: [...this.#first] };
  }
}
