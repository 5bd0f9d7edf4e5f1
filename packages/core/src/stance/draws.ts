import { NormalTable } from '../numerics/sampling.ts';
import { nominal, type Reading, type ValueOf } from '../rig/reading.ts';
import type { Rig } from '../rig/rig.ts';

/** How many trials, from which seed. */
export interface TrialOptions {
  /** 2 … 65536; 2048 when left out. */
  readonly trials?: number;
  readonly seed?: number;
}

export const DEFAULT_TRIALS = 2048;
export const DEFAULT_SEED = 1;

/**
 * The same sampled rigs for every question that is asked about one rig, in every setup: a reading has the same error
 * in trial 17 wherever it is used, so a difference between two setups holds no noise of its own.
 */
export interface Draws {
  readonly trials: number;
  readonly seed: number;
  /** Nominal value at index 0, then one value a trial [SI]. Do not write into it. */
  of(reading: Reading): Float64Array;
  /** The standard normals behind `of`, one a trial, without the nominal. */
  scores(reading: Reading): Float64Array;
  /** All readings as they are in one trial; trial 0 is the nominal rig. */
  trial(index: number): ValueOf;
}

/** Normals do not depend on the rig, so that an edit of a reading does not make them anew. */
const tables: NormalTable[] = [];
/** A page asks with few trials while somebody types and with all of them after; a third size drops the oldest. */
const TABLES_KEPT = 2;
const drawn = new WeakMap<Rig, readonly Draws[]>();

/**
 * Draws the readings of a rig. A reading is normal about its value with standard deviation half its half-width,
 * upward and downward apart (split normal) when they differ.
 *
 * @invariant same rig, trials and seed: same draws; the setup plays no part
 * @validity a reading that must be positive and is so uncertain that trials would cross zero is held at a tenth of
 * its value there
 * @source JCGM 101:2008, 6.4.7 (normal), 5.9 (procedure)
 */
export function drawsOf(rig: Rig, options: TrialOptions = {}): Draws {
  const trials = options.trials ?? DEFAULT_TRIALS;
  const seed = options.seed ?? DEFAULT_SEED;
  const ofRig = drawn.get(rig) ?? [];
  const known = ofRig.find((draws) => draws.trials === trials && draws.seed === seed);
  if (known) return known;
  const made = draw(rig, tableOf(trials, seed));
  drawn.set(rig, [...ofRig.slice(1 - TABLES_KEPT), made]);
  return made;
}

function tableOf(trials: number, seed: number): NormalTable {
  const known = tables.find((table) => table.count === trials && table.seed === seed);
  if (known) return known;
  const table = new NormalTable(trials, seed);
  tables.push(table);
  if (tables.length > TABLES_KEPT) tables.shift();
  return table;
}

/** Formulas at the nominal readings alone: columns of one element. */
export const NOMINAL_DRAWS: Draws = {
  trials: 0,
  seed: 0,
  of: (reading) => Float64Array.of(reading.value),
  scores: () => new Float64Array(0),
  trial: () => nominal,
};

/**
 * The first trials of some draws: the same sampled rigs, for a question that looks at few of them. A hypercube of fewer
 * trials would be other rigs.
 */
export function firstTrials(draws: Draws, trials: number): Draws {
  const columns = new Map<Reading, Float64Array>();
  const of = (reading: Reading): Float64Array => {
    let column = columns.get(reading);
    if (!column) {
      column = draws.of(reading).subarray(0, trials + 1);
      columns.set(reading, column);
    }
    return column;
  };
  return {
    trials,
    seed: draws.seed,
    of,
    scores: (reading) => draws.scores(reading).subarray(0, trials),
    trial: (index) => (reading) => of(reading)[index],
  };
}

function draw(rig: Rig, normals: NormalTable): Draws {
  const dimensions = new Map<string, number>();
  // What is on the rig comes first, so that trying out setups and parts leaves its draws as they are. Points of links and
  // brackets come last: a travel column does without them, and a column of normals costs all that come before it.
  const { shelf, setups, choices, ...measured } = rig;
  const { front, rear, limits } = rig;
  const without = { points: null, brackets: null };
  const columnsFirst = {
    ...measured,
    front: { ...front, ...without },
    rear: { ...rear, ...without },
    limits: { ...limits, bracketFactor: null },
  };
  const late = [front.points, rear.points, choices, front.brackets, rear.brackets, limits.bracketFactor];
  numberKeys([columnsFirst, shelf, setups, ...late], dimensions);
  const columns = new Map<Reading, Float64Array>();
  const dimensionOf = (reading: Reading): number => {
    const known = dimensions.get(reading.key);
    if (known !== undefined) return known;
    dimensions.set(reading.key, dimensions.size);
    return dimensions.size - 1;
  };
  const scores = (reading: Reading) => normals.column(dimensionOf(reading));
  const of = (reading: Reading): Float64Array => {
    let column = columns.get(reading);
    if (!column) {
      column = sampled(reading, scores(reading));
      columns.set(reading, column);
    }
    return column;
  };
  return {
    trials: normals.count,
    seed: normals.seed,
    of,
    scores,
    trial: (index) => (reading) => of(reading)[index],
  };
}

function sampled(reading: Reading, scores: Float64Array): Float64Array {
  const { value } = reading;
  const up = reading.plus / 2;
  const down = reading.minus / 2;
  const floor = value > 0 && POSITIVE.has(reading.dimension) ? value / 10 : Number.NEGATIVE_INFINITY;
  const column = new Float64Array(scores.length + 1);
  column[0] = value;
  for (let i = 0; i < scores.length; i += 1) {
    const score = scores[i];
    const sample = value + score * (score > 0 ? up : down);
    column[i + 1] = Math.max(sample, floor);
  }
  return column;
}

const POSITIVE = new Set<Reading['dimension']>(['mass', 'rate', 'ratio', 'inertia', 'pressure']);

/** Numbers every reading once, in the order in which it is met. */
function numberKeys(value: unknown, dimensions: Map<string, number>): void {
  if (typeof value !== 'object' || value === null) return;
  if (Array.isArray(value) && typeof value[0] === 'number') return;
  if ('key' in value && 'toleranceOrigin' in value) {
    const { key } = value as Reading;
    if (!dimensions.has(key)) dimensions.set(key, dimensions.size);
    return;
  }
  for (const part of Object.values(value)) numberKeys(part, dimensions);
}
