import { CORNERS, type Corner, cornerAt, type End, endOf } from '../finding/place.ts';
import type { Setup } from '../rig/setup.ts';
import { type Column, columnOf } from './columns.ts';
import type { Draws } from './draws.ts';

/** Masses of a setup, sampled [kg]. */
export interface Weights {
  /** On each tyre. */
  readonly corner: Readonly<Record<Corner, Column>>;
  /** Above the springs, per corner. */
  readonly sprungCorner: Readonly<Record<Corner, Column>>;
  readonly total: Column;
  readonly sprung: Column;
  /** Above the springs, per end. */
  readonly sprungEnd: Readonly<Record<End, Column>>;
}

/**
 * Corner readings and axle masses to sprung masses:
 *
 *     sprung corner = corner reading − axle mass ÷ 2 (+ half of what a setup loads on that end)
 *
 * @validity the axle's own centre of gravity lies midway between its tyres
 */
export function weightsOf(setup: Setup, draws: Draws): Weights {
  const length = draws.trials + 1;
  const corner = {} as Record<Corner, Column>;
  const sprungCorner = {} as Record<Corner, Column>;
  for (const place of CORNERS) {
    const { base, patch } = setup.ends[endOf(place)];
    const measured = draws.of(setup.rig.cornerMass[place]);
    const added = patch.addedLoad && draws.of(patch.addedLoad);
    const axle = draws.of(base.unsprungMass);
    corner[place] = added ? columnOf(length, (i) => measured[i] + added[i] / 2) : measured;
    const loaded = corner[place];
    sprungCorner[place] = columnOf(length, (i) => loaded[i] - axle[i] / 2);
  }
  const sum = (of: Readonly<Record<Corner, Column>>, places: readonly Corner[]) =>
    columnOf(length, (i) => places.reduce((total, place) => total + of[place][i], 0));
  const atEnd = (end: End) => sum(sprungCorner, [cornerAt(end, 'left'), cornerAt(end, 'right')]);
  return {
    corner,
    sprungCorner,
    total: sum(corner, CORNERS),
    sprung: sum(sprungCorner, CORNERS),
    sprungEnd: { front: atEnd('front'), rear: atEnd('rear') },
  };
}
