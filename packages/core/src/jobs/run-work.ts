import type { Problem } from '../finding/problem.ts';
import type { Bench } from './bench.ts';
import type { Crew, Seat } from './crew.ts';
import type { Fold } from './fold.ts';
import { InOrder } from './in-order.ts';
import { type Stretch, Stretches } from './stretches.ts';
import { openBench, type WorkPlan } from './work.ts';

/** How shared work ended. Being cancelled is an ending like the others, not an error. */
export type WorkOutcome<Answer> =
  | { readonly kind: 'done'; readonly answer: Answer; readonly counters: WorkCounters }
  /** `share` of the work was done by then, 0…1. */
  | { readonly kind: 'cancelled'; readonly share: number }
  /** Something is wrong with the request. */
  | { readonly kind: 'refused'; readonly problems: readonly Problem[] }
  /** Workers broke twice over the same stretch, or could not be started. */
  | { readonly kind: 'broken'; readonly message: string };

export interface WorkCounters {
  readonly units: number;
  /** Stretches that the units were cut into, and the most that ever waited for earlier ones. */
  readonly stretches: number;
  readonly mostWaiting: number;
  /** Workers that were started or taken, replaced ones included. */
  readonly workers: number;
}

/** Work on its way. */
export interface Work<Answer> {
  readonly outcome: Promise<WorkOutcome<Answer>>;
  /** Ends it at once; the outcome is then `cancelled`, unless it had ended already. */
  cancel(): void;
}

export interface WorkOptions {
  /** Share of the work done, 0…1, never falling. */
  readonly onProgress?: (share: number) => void;
}

/** How often a stretch is tried, each time by a fresh worker. */
const ATTEMPTS = 2;

/**
 * Shares a plan out over a crew and folds what comes back in the order of the units.
 *
 * @invariant the answer is the same to the last bit for any crew, any number of workers and any order in which they
 * finish; memory holds the fold and a bounded number of rows
 */
export function startWork<Answer>(
  plan: WorkPlan,
  foldOf: () => Fold<Answer>,
  crew: Crew,
  options: WorkOptions = {},
): Work<Answer> {
  const opened = openBench(plan);
  if (!opened.ok)
    return { outcome: Promise.resolve({ kind: 'refused', problems: opened.problems }), cancel() {} };
  const foreman = new Foreman(plan, opened.value, foldOf(), crew, options);
  return { outcome: foreman.run(), cancel: () => foreman.cancel() };
}

class Foreman<Answer> {
  readonly #plan: WorkPlan;
  readonly #bench: Bench;
  readonly #crew: Crew;
  readonly #onProgress: (share: number) => void;
  readonly #order: InOrder<Answer>;
  readonly #stretches: Stretches;
  readonly #size: number;
  readonly #whole: number;
  /** Everyone at work or waiting; of these the ones who wait. */
  readonly #seats = new Set<Seat>();
  readonly #idle = new Set<Seat>();
  #isOver = false;
  #workers = 0;
  #done = 0;
  #settle: (outcome: WorkOutcome<Answer>) => void = () => {};
  #fail: (error: unknown) => void = () => {};

  constructor(
    plan: WorkPlan,
    bench: Bench,
    fold: Fold<Answer>,
    crew: Crew,
    { onProgress = () => {} }: WorkOptions,
  ) {
    this.#plan = plan;
    this.#bench = bench;
    this.#crew = crew;
    this.#onProgress = onProgress;
    this.#order = new InOrder(fold, bench.width);
    this.#size = Math.min(crew.size, bench.units);
    this.#stretches = new Stretches(bench.units, this.#size);
    this.#whole = this.#costOf({ from: 0, to: bench.units });
  }

  run(): Promise<WorkOutcome<Answer>> {
    return new Promise((settle, fail) => {
      this.#settle = settle;
      this.#fail = fail;
      if (this.#bench.units === 0) this.#finish();
      for (let k = 0; k < this.#size; k += 1) this.#spawn(this.#start(1));
    });
  }

  cancel(): void {
    this.#end({ kind: 'cancelled', share: this.#share() });
  }

  /** A mistake of our own on the way must not leave the outcome open for ever. */
  #spawn(task: Promise<void>): void {
    task.catch((error: unknown) => {
      if (this.#isOver) return;
      this.#dismiss();
      this.#fail(error);
    });
  }

  async #start(attempt: number): Promise<void> {
    const seat = this.#crew.take();
    this.#seats.add(seat);
    this.#workers += 1;
    let problems: readonly Problem[];
    try {
      problems = await seat.open(this.#plan);
    } catch (error) {
      if (this.#isOver) return;
      this.#drop(seat);
      // One that does not even start is replaced once; then there is something wrong with the place, not with it.
      if (attempt >= ATTEMPTS) return this.#end({ kind: 'broken', message: messageOf(error) });
      return this.#start(attempt + 1);
    }
    if (this.#isOver) return;
    if (problems.length > 0) return this.#end({ kind: 'refused', problems });
    return this.#keepBusy(seat);
  }

  async #keepBusy(seat: Seat): Promise<void> {
    this.#idle.delete(seat);
    for (let mine = this.#next(); mine !== null; mine = this.#next()) {
      const since = this.#crew.clock();
      let rows: Float64Array;
      try {
        rows = await seat.rows(mine.from, mine.to);
      } catch (error) {
        if (this.#isOver) return;
        this.#drop(seat);
        if (mine.attempt >= ATTEMPTS) return this.#end({ kind: 'broken', message: messageOf(error) });
        this.#stretches.giveBack(mine);
        return this.#start(1);
      }
      if (this.#isOver) return;
      this.#take(mine, rows, this.#crew.clock() - since);
    }
    this.#idle.add(seat);
    if (!this.#isOver && this.#order.folded === this.#bench.units) this.#finish();
  }

  #next(): Stretch | null {
    return this.#isOver ? null : this.#stretches.next(this.#order.folded);
  }

  #take(stretch: Stretch, rows: Float64Array, ms: number): void {
    this.#stretches.took(stretch, ms);
    this.#done += this.#costOf(stretch);
    this.#order.take(stretch.from, stretch.to, rows);
    this.#onProgress(this.#share());
    if (this.#order.folded === this.#bench.units) return;
    // Those who waited for earlier units to come in may go on.
    for (const other of [...this.#idle]) this.#spawn(this.#keepBusy(other));
  }

  #share(): number {
    if (this.#order.folded === this.#bench.units) return 1;
    return Math.min(1, this.#done / this.#whole);
  }

  #costOf({ from, to }: Pick<Stretch, 'from' | 'to'>): number {
    let cost = 0;
    for (let unit = from; unit < to; unit += 1) cost += this.#bench.cost(unit);
    return cost;
  }

  #finish(): void {
    const { cut } = this.#stretches;
    const counters = {
      units: this.#bench.units,
      stretches: cut,
      mostWaiting: this.#order.mostWaiting,
      workers: this.#workers,
    };
    this.#end({ kind: 'done', answer: this.#order.fold.finish(), counters });
  }

  #end(how: WorkOutcome<Answer>): void {
    if (this.#isOver) return;
    this.#dismiss();
    this.#settle(how);
  }

  /** Sends everyone home: who waits may be asked again, who is busy with what nobody wants any more is ended. */
  #dismiss(): void {
    this.#isOver = true;
    for (const seat of this.#seats) {
      if (this.#idle.has(seat)) this.#crew.giveBack(seat);
      else seat.end();
    }
    this.#seats.clear();
    this.#idle.clear();
  }

  #drop(seat: Seat): void {
    this.#seats.delete(seat);
    seat.end();
  }
}

const messageOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));
