import type { UnitSystem } from '../quantity/quantity.ts';

/** [m] */
const LONG: Readonly<Record<UnitSystem, readonly [string, number]>> = {
  shop: ['mi', 1609.344],
  metric: ['km', 1000],
};

/** How far somebody drives: `12 mi`, `0.5 km`; to two digits, as anybody says it. */
export function way(distance: number, system: UnitSystem): string {
  const [name, unit] = LONG[system];
  return Number.isFinite(distance) ? `${Number((distance / unit).toPrecision(2))} ${name}` : 'unknown';
}
