import type { UnitSystem } from '../quantity/quantity.ts';
import { way } from './ways.ts';

interface Life {
  readonly demand: string;
  readonly hits: number;
  readonly pass: number | null;
  readonly fullCrushes: { readonly least: number; readonly most: number };
  readonly passes: { readonly least: number | null; readonly most: number | null };
}

const MILE: Readonly<Record<UnitSystem, readonly [string, number]>> = {
  shop: ['mile', 1609.344],
  metric: ['km', 1000],
};
const two = (value: number): string => String(Number(value.toPrecision(2)));
/** Farther than this nobody keeps a stop [m]. */
const FOR_EVER = 1e8;

/** Hits, wear, and when to look: two sentences in plain words. */
export function lifeText({ demand, hits, pass, fullCrushes, passes }: Life, system: UnitSystem): string {
  if (passes.least === null || hits === 0) return `${demand}: the stop is not touched.`;
  const [name, unit] = MILE[system];
  const times = pass === null ? 1 : unit / pass;
  const each = pass === null ? 'drop' : name;
  const wear = `${two(hits * times)} hits a ${each}, worth ${two(fullCrushes.least * times)} to ${two(fullCrushes.most * times)} full crushes`;
  const far = (count: number | null): string =>
    count === null || count * (pass ?? 1) > FOR_EVER
      ? 'longer than anybody keeps one'
      : pass === null
        ? `${two(count)} drops`
        : way(count * pass, system);
  const look =
    passes.least * (pass ?? 1) > 10 * FOR_EVER
      ? ''
      : ` Press it again after ${far(passes.least / 10)} of it.`;
  return `${demand}: ${wear}; at 10 000 to 100 000 full crushes a stop (assumed) worn after ${far(passes.least)} to ${far(passes.most)}.${look}`;
}

/** When to look at any stop. @source trade notes of this house */
export const LOOK_AT_STOPS =
  'Look at the stop after the first 6 miles (10 km), after 60 (100 km), then before each trip: cracks, set, a loose stud. A stop that is a tenth shorter than new has had its time.';
