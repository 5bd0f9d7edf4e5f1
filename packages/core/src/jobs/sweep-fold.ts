import type { Figure } from '../finding/figure.ts';
import { knownPaths } from '../ride/paths-from-setup.ts';
import { resolveSetup } from '../rig/setup-resolve.ts';
import { NOMINAL_DRAWS } from '../stance/draws.ts';
import { FeltGrounds } from './felt-ground.ts';
import type { Fold } from './fold.ts';
import { seatOf } from './seat-record.ts';
import type { Band, CriterionSweep, FirstBreak, SetupSweep, SweepAnswer } from './sweep-answer.ts';
import type { SweepRequest } from './sweep-bench.ts';
import { CRITERIA, type Criterion, criteriaOf } from './sweep-criteria.ts';
import { sweepFindings } from './sweep-findings.ts';
import { HELD, NO_LIMIT, PLACES, REFINED, STATES, type State, SweepLayout } from './sweep-scan.ts';
import { coverageOf, TrialRange } from './trial-range.ts';

/**
 * Reduces a sweep rig by rig: the nominal rows stay, of the trials only counts and the ends of their ranges.
 *
 * @throws when a setup cannot be resolved: the bench of the same request has refused it before
 */
export function sweepFold(request: SweepRequest): Fold<SweepAnswer> {
  const setups = request.setups.map((id) => {
    const resolved = resolveSetup(request.rig, id);
    if (!resolved.ok) throw new Error(`setup ${id} was resolved before`);
    return resolved.value;
  });
  const layout = new SweepLayout(request);
  const { speeds } = layout;
  const { trials } = request;
  const books = setups.map(
    (setup) =>
      new SetupBook(layout, trials, criteriaOf(setup, NOMINAL_DRAWS, request.distancePerDay ?? null)),
  );
  let unit = 0;
  return {
    take(rows, at) {
      const row = rows.slice(at, at + layout.width);
      const which = unit % setups.length;
      if (unit < setups.length) books[which].nominal = row;
      else books[which].takeTrial(row, which === 0 ? null : books[0].last);
      unit += 1;
    },
    finish() {
      const step = speeds[1] - speeds[0];
      const about = {
        rig: request.rig.name,
        course: request.courseName,
        wantedSpeed: request.wantedSpeed,
        distancePerDay: request.distancePerDay ?? null,
        seat: seatOf(request.rig),
        speeds: [...speeds],
        step,
        refined: (step * REFINED) / 2,
        trials,
        seed: request.seed,
        coverage: trials === 0 ? 0 : coverageOf(trials),
      };
      const grounds = new FeltGrounds(request.tyres);
      const swept = setups.map((setup, which): Omit<SetupSweep, 'findings'> => {
        // A comparison says the same from both sides; it is counted at the second one and turned round for the first.
        const other = which === 0 ? books[1] : books[which];
        const turned = which === 0;
        return {
          setup: setup.id,
          tyres: grounds.foot(setup),
          paths: knownPaths(setup),
          criteria: books[which].criteria(other, turned),
        };
      });
      return {
        ...about,
        setups: swept.map((one, which) => ({ ...one, findings: sweepFindings(setups[which], about, one) })),
      };
    },
  };
}

/** What is kept of one setup while the trials come in. */
class SetupBook {
  nominal = new Float64Array(0);
  /** First speed not held of the last trial, by criterion; infinite when never. */
  readonly last = new Float64Array(CRITERIA.length);
  readonly faster = new Int32Array(CRITERIA.length);
  readonly slower = new Int32Array(CRITERIA.length);
  readonly #never = new Int32Array(CRITERIA.length);
  readonly #broken: Int32Array;
  readonly #firsts: readonly TrialRange[];
  readonly #figures: readonly TrialRange[];

  constructor(
    readonly layout: SweepLayout,
    readonly trials: number,
    readonly asked: readonly Criterion[],
  ) {
    const count = CRITERIA.length * layout.speeds.length;
    this.#broken = new Int32Array(count);
    this.#firsts = CRITERIA.map(() => new TrialRange(trials));
    this.#figures = Array.from({ length: count }, () => new TrialRange(trials));
  }

  /** @param beside – first speeds of the same trial in the first setup; null for that one itself */
  takeTrial(row: Float64Array, beside: Float64Array | null): void {
    const { layout } = this;
    CRITERIA.forEach((_, k) => {
      const first = firstSpeed(layout, row, k) ?? Number.POSITIVE_INFINITY;
      this.last[k] = first;
      this.#firsts[k].take(first);
      if (first === Number.POSITIVE_INFINITY) this.#never[k] += 1;
      if (beside !== null && first > beside[k]) this.faster[k] += 1;
      if (beside !== null && first < beside[k]) this.slower[k] += 1;
      for (let i = 0; i < layout.speeds.length; i += 1) {
        const cell = layout.value(k, i);
        this.#figures[cell].take(row[cell]);
        const state = row[layout.state(k, i)];
        if (state !== HELD && state !== NO_LIMIT) this.#broken[cell] += 1;
      }
    });
  }

  criteria(compared: SetupBook | undefined, turned: boolean): readonly CriterionSweep[] {
    const { layout, trials, nominal } = this;
    const at = Array.from(layout.speeds, (_, i) => i);
    return this.asked.map((criterion, k) => {
      const states = at.map((i): State => STATES[nominal[layout.state(k, i)]]);
      const counted = trials > 0 && compared !== undefined;
      const [more, less] = counted
        ? [compared.faster[k] / trials, compared.slower[k] / trials]
        : [Number.NaN, Number.NaN];
      return {
        id: criterion.id,
        dimension: criterion.dimension,
        keeps: criterion.keeps,
        limit: limitOf(criterion),
        first: this.#first(k, states),
        bands: bandsOf(layout, nominal, k, states),
        states,
        values: at.map((i) => nominal[layout.value(k, i)]),
        spread: at.map((i) => (trials === 0 ? null : this.#figures[layout.value(k, i)].ends())),
        brokenShare: trials === 0 ? null : at.map((i) => this.#broken[layout.value(k, i)] / trials),
        against:
          !counted || criterion.limit === null
            ? null
            : turned
              ? { faster: less, slower: more }
              : { faster: more, slower: less },
      };
    });
  }

  #first(k: number, states: readonly State[]): FirstBreak {
    const { layout, nominal, trials } = this;
    if (states[0] === 'no-limit')
      return { kind: 'no-limit', speed: null, trials: null, neverShare: null, place: null };
    const first = states.findIndex((state) => state !== 'held');
    const over = {
      trials: trials === 0 ? null : this.#firsts[k].ends(),
      neverShare: trials === 0 ? null : this.#never[k] / trials,
    };
    if (first < 0) return { kind: 'never', speed: null, place: null, ...over };
    return {
      kind: states[first] === 'unknown' ? 'unknown' : first === 0 ? 'broken-at-once' : 'broken',
      speed: firstSpeed(layout, nominal, k),
      place: PLACES[nominal[layout.place(k)]],
      ...over,
    };
  }
}

const limitOf = ({ limit, dimension }: Criterion): Figure | null =>
  limit === null ? null : { dimension, value: limit(0), tolerance: 0 };

/** Speed at which a criterion is first not held; null when it holds all the way. */
function firstSpeed(layout: SweepLayout, row: Float64Array, k: number): number | null {
  const { speeds } = layout;
  for (let i = 0; i < speeds.length; i += 1) {
    const state = row[layout.state(k, i)];
    if (state === NO_LIMIT) return null;
    if (state !== HELD) return i === 0 ? speeds[0] : row[layout.edge(k, i - 1)];
  }
  return null;
}

/** Stretches of the nominal rig that do not hold; between `broken` and `unknown` the border is half way. */
function bandsOf(
  layout: SweepLayout,
  row: Float64Array,
  k: number,
  states: readonly State[],
): readonly Band[] {
  const { speeds } = layout;
  const border = (i: number): number => {
    const edge = row[layout.edge(k, i)];
    return Number.isNaN(edge) ? (speeds[i] + speeds[i + 1]) / 2 : edge;
  };
  const bands: Band[] = [];
  let begun = 0;
  for (let i = 1; i <= states.length; i += 1) {
    if (states[i] === states[begun]) continue;
    const kind = states[begun];
    if (kind === 'broken' || kind === 'unknown')
      bands.push({
        kind,
        from: begun === 0 ? speeds[0] : border(begun - 1),
        to: i === states.length ? speeds[i - 1] : border(i - 1),
      });
    begun = i;
  }
  return bands;
}
