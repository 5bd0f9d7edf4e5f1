import { FrontArchive } from './archive.ts';
import { comparedBound, comparedMiddles, type Judged, type Report } from './objectives.ts';
import { byPromise } from './pareto.ts';
import type { Picker } from './picker.ts';
import type { SearchProblem } from './problem.ts';
import type { Search, Task, WhyEnded } from './search.ts';
import { candidateAt } from './space.ts';
import { emptyTally, type Tally } from './tally.ts';

/** A candidate on its way: how low its middles may come out by what is known. */
interface Running {
  readonly index: number;
  stage: number;
  atLeast: readonly number[];
}

/**
 * The search itself, whoever picks the candidates: a round is bounded as a whole, then its candidates go through the
 * stages one after another, the most promising first, each until it is judged or a judged one beats its bound.
 */
export class Searching implements Search {
  readonly #problem: SearchProblem;
  readonly #picker: Picker;
  readonly #always: ReadonlySet<number>;
  readonly #archive = new FrontArchive<Judged>();
  readonly #kept: Judged[] = [];
  readonly #tally: Writable<Tally>;
  #why: WhyEnded | null = null;
  /** Picked and not bounded yet; then bounded and waiting, the most promising last; then the one being judged. */
  #fresh: readonly number[] = [];
  #waiting: Running[] = [];
  #running: Running | null = null;
  #judgedOfRound: Judged[] = [];

  /** @param known – judged already, elsewhere: they stand on the front and discard, but are not counted again */
  constructor(problem: SearchProblem, picker: Picker, known: readonly Judged[]) {
    this.#problem = problem;
    this.#picker = picker;
    this.#always = new Set(problem.always);
    this.#tally = copyOf(emptyTally(problem.stages.length, problem.constraints.length));
    for (const judged of known) this.#offer(judged);
    this.#advance();
  }

  get why(): WhyEnded | null {
    return this.#why;
  }

  get tally(): Tally {
    return copyOf(this.#tally);
  }

  get front(): readonly Judged[] {
    return this.#archive.entries().sort((a, b) => a.index - b.index);
  }

  get always(): readonly Judged[] {
    return [...this.#kept].sort((a, b) => a.index - b.index);
  }

  ask(): readonly Task[] {
    const { space } = this.#problem;
    if (this.#fresh.length > 0)
      return this.#fresh.map((index) => ({ index, candidate: candidateAt(space, index), stage: 0 }));
    if (this.#running === null) return [];
    const { index, stage } = this.#running;
    return [{ index, candidate: candidateAt(space, index), stage }];
  }

  tell(reports: readonly Report[]): void {
    const due = this.#fresh.length > 0 ? this.#fresh.length : this.#running === null ? 0 : 1;
    if (reports.length !== due) throw new Error(`${reports.length} reports for ${due} tasks`);
    if (this.#fresh.length > 0) this.#takeBounds(reports);
    else if (this.#running !== null) this.#takeStage(this.#running, reports[0]);
    this.#advance();
  }

  #takeBounds(reports: readonly Report[]): void {
    const bounded: Running[] = [];
    this.#fresh.forEach((index, i) => {
      this.#tally.seen += 1;
      const running = { index, stage: 0, atLeast: [] };
      if (this.#goesOn(running, reports[i])) bounded.push(running);
    });
    this.#fresh = [];
    const order = byPromise(bounded.map(({ atLeast }) => atLeast));
    this.#waiting = order.reverse().map((i) => bounded[i]);
  }

  #takeStage(running: Running, report: Report): void {
    this.#running = this.#goesOn(running, report) ? running : null;
  }

  /** Books what a stage brought. True when there is more to do for this candidate. */
  #goesOn(running: Running, report: Report): boolean {
    if (report.kind === 'barred') this.#bar(report.by);
    else if (report.kind === 'judged') this.#judge(running, report);
    else {
      const bound = comparedBound(report.atLeast, this.#problem.objectives);
      // A later stage may know less about an objective than an earlier one did.
      running.atLeast = bound.map((value, k) => Math.max(value, running.atLeast[k] ?? value));
      running.stage += 1;
      if (running.stage > this.#problem.stages.length)
        throw new Error(`candidate ${running.index} has more stages than were named`);
      return true;
    }
    return false;
  }

  #judge({ index, atLeast }: Running, { objectives, samples }: Report & { kind: 'judged' }): void {
    this.#tally.judged += 1;
    const judged = {
      index,
      objectives: objectives.map(({ low, middle, high }) => ({
        low: low + 0,
        middle: middle + 0,
        high: high + 0,
      })),
      // + 0 makes −0 to 0, which a file could not keep.
      samples: samples.map((value) => value + 0),
    };
    const middles = comparedMiddles(judged, this.#problem.objectives);
    middles.forEach((middle, k) => {
      if (!Number.isFinite(middle))
        throw new Error(`objective ${this.#problem.objectives[k].id} of candidate ${index} is ${middle}`);
      if (middle < atLeast[k])
        throw new Error(
          `objective ${this.#problem.objectives[k].id} of candidate ${index} came out as ${middle}, below a bound, ${atLeast[k]}, that it was given before`,
        );
    });
    this.#offer(judged);
    this.#judgedOfRound.push(judged);
  }

  #offer(judged: Judged): void {
    if (this.#always.has(judged.index)) this.#kept.push(judged);
    this.#archive.offer(comparedMiddles(judged, this.#problem.objectives), judged);
  }

  #bar(by: readonly string[]): void {
    this.#tally.barred += 1;
    for (const constraint of by) {
      const at = this.#problem.constraints.indexOf(constraint);
      if (at < 0)
        throw new Error(`a candidate is barred by ${constraint}, which is not among the constraints`);
      this.#tally.barredBy[at] += 1;
      if (by.length === 1) this.#tally.barredAloneBy[at] += 1;
    }
  }

  /** Goes on to the next thing that has to be judged, past all that is beaten by now. */
  #advance(): void {
    while (this.#why === null && this.#fresh.length === 0) {
      this.#running ??= this.#waiting.pop() ?? null;
      if (this.#running !== null) {
        if (this.#always.has(this.#running.index) || !this.#archive.beats(this.#running.atLeast)) return;
        this.#tally.discarded[this.#running.stage - 1] += 1;
        this.#running = null;
        continue;
      }
      this.#picker.took(this.#judgedOfRound);
      this.#judgedOfRound = [];
      const picked = this.#picker.pick(this.front);
      if (typeof picked === 'string') this.#why = picked;
      else this.#fresh = picked;
    }
  }
}

type Writable<T> = {
  -readonly [K in keyof T]: T[K] extends readonly number[] ? number[] : T[K];
};

const copyOf = (tally: Tally): Writable<Tally> => ({
  ...tally,
  discarded: [...tally.discarded],
  barredBy: [...tally.barredBy],
  barredAloneBy: [...tally.barredAloneBy],
});
