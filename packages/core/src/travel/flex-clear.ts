import { type Column, columnOf } from '../stance/columns.ts';
import { heaveAt } from './axle-balance.ts';
import { hold, pastLimit, type RolledAxle, rollUnder } from './rolled-axle.ts';

/** Something that must not end a flex, and what is left to it [m]: negative where it would. */
export interface ClearAtFlex {
  readonly id: string;
  readonly name: string;
  readonly left: Column;
}

/** What may end a flex, beside a tyre without load. An open shock only while no strap is there to spare it. */
const meant = (id: string, strapped: boolean): boolean =>
  id === 'stop' || id === 'strap' || (id === 'shock-open' && !strapped);

/**
 * The axle rolled until what is meant to end its flex does, with everything else taken away; there, what each of the
 * others has left, as axle travel where it lies.
 */
export function clearAtFlex(axle: RolledAxle): readonly ClearAtFlex[] {
  const { limits, springs, liftingMoment } = axle;
  const strapped = limits.some(({ id }) => id === 'strap');
  const others = limits.filter(({ id }) => !meant(id, strapped));
  if (others.length === 0) return [];
  const kept = limits.filter(({ id }) => meant(id, strapped));
  const free: RolledAxle = { ...axle, limits: kept, ...hold(kept, axle, axle) };
  const stands = springs.map((spring, i) => {
    const roll = rollUnder(free, i, liftingMoment[i]);
    return { heave: heaveAt(spring, roll), roll };
  });
  return others.map((limit) => ({
    id: limit.id,
    name: limit.name,
    left: columnOf(springs.length, (i) => -pastLimit(limit, i, stands[i], axle)),
  }));
}
