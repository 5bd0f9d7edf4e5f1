/** Something that happened to the clock of a log. */
export interface TimePlace {
  readonly line: number;
  /** Of the row after it, from the zero of the log [s]. */
  readonly time: number;
  /** Step of the clock there [s]. */
  readonly step: number;
}

export interface TimePlaces {
  readonly count: number;
  /** Sum and largest of the steps, without sign [s]. */
  readonly total: number;
  readonly longest: number;
  readonly first: readonly TimePlace[];
}

/** What the clock of a stream did. */
export interface TimingReport {
  readonly rows: number;
  /** Time from row to row, without jumps of the clock [s]. */
  readonly duration: number;
  /** Rows a second over all of it, holes included [Hz]. */
  readonly rate: number;
  /** Median step [s]; not a number with fewer than two rows. */
  readonly interval: number;
  /** Share of the steps within a fifth of the median. */
  readonly even: number;
  /** Steps of more than three medians: nothing was recorded there. */
  readonly holes: TimePlaces;
  /** Rows at the time of the row before. */
  readonly repeats: TimePlaces;
  /** The clock went back, or forward by an hour or more. */
  readonly jumps: TimePlaces;
}

/** Steps longer than so many medians are holes: `common practice, no source`. */
const HOLE = 3;
/** Longer steps are a clock that was set, not a hole [s]. */
const JUMP = 3600;
const EVEN = 0.2;
/** Bins of the steps: 1 % apart, from a tenth of a microsecond on. */
const SHORTEST = 1e-7;
const PER_E = 100;
const BINS = Math.ceil(PER_E * Math.log(JUMP / SHORTEST)) + 1;
/** Rows after which the median so far is looked at, to tell what may become a hole. */
const LEARN = 512;
/** Holes of which the places are kept until all is known; more than that is no log. */
const MOST = 100_000;
const SHOWN = 10;

/** Watches the clock of one stream, row by row, in bounded memory. */
export class Timing {
  #rows = 0;
  #last = 0;
  #duration = 0;
  #steps = 0;
  #median = Number.NaN;
  readonly #counts = new Float64Array(BINS);
  readonly #sums = new Float64Array(BINS);
  #candidates: TimePlace[] = [];
  readonly #repeats: TimePlace[] = [];
  readonly #jumps: TimePlace[] = [];
  #repeated = 0;

  add(time: number, line: number): void {
    this.#rows += 1;
    const step = time - this.#last;
    this.#last = time;
    if (this.#rows === 1) return;
    if (step === 0) {
      this.#repeated += 1;
      if (this.#repeats.length < SHOWN) this.#repeats.push({ line, time, step });
      return;
    }
    if (step < 0 || step >= JUMP) {
      if (this.#jumps.length < MOST) this.#jumps.push({ line, time, step });
      return;
    }
    this.#duration += step;
    this.#steps += 1;
    const bin = Math.max(0, Math.floor(PER_E * Math.log(step / SHORTEST)));
    this.#counts[bin] += 1;
    this.#sums[bin] += step;
    if (this.#steps % LEARN === 0 || this.#steps === 16) this.#learn();
    if (!(step <= 2 * this.#median) && this.#candidates.length < MOST)
      this.#candidates.push({ line, time, step });
  }

  finish(): TimingReport {
    this.#learn();
    const median = this.#median;
    const holes = this.#candidates.filter(({ step }) => step > HOLE * median);
    let even = 0;
    for (let bin = 0; bin < BINS; bin += 1) {
      const step = this.#sums[bin] / this.#counts[bin];
      if (Math.abs(step - median) <= EVEN * median) even += this.#counts[bin];
    }
    return {
      rows: this.#rows,
      duration: this.#duration,
      rate: this.#duration > 0 ? this.#rows / this.#duration : Number.NaN,
      interval: median,
      even: this.#steps > 0 ? even / this.#steps : Number.NaN,
      holes: placesOf(holes),
      repeats: { ...placesOf(this.#repeats), count: this.#repeated },
      jumps: placesOf(this.#jumps),
    };
  }

  /** The median, to the mean of the steps of its bin. */
  #learn(): void {
    let before = 0;
    for (let bin = 0; bin < BINS; bin += 1) {
      before += this.#counts[bin];
      if (2 * before >= this.#steps && this.#counts[bin] > 0) {
        this.#median = this.#sums[bin] / this.#counts[bin];
        break;
      }
    }
    this.#candidates = this.#candidates.filter(({ step }) => step > 2 * this.#median);
  }
}

function placesOf(places: readonly TimePlace[]): TimePlaces {
  const sizes = places.map(({ step }) => Math.abs(step));
  return {
    count: places.length,
    total: sizes.reduce((sum, size) => sum + size, 0),
    longest: sizes.reduce((most, size) => Math.max(most, size), 0),
    first: places.slice(0, SHOWN),
  };
}
