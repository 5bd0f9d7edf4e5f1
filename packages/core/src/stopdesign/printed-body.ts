import { gaussIntegral } from '../numerics/gauss.ts';
import { cubicValue, monotoneCubic } from '../numerics/monotone-cubic.ts';
import { bondedModulus, shapeFactor } from './block.ts';
import { type Layer, slicesOf } from './column.ts';
import { type HeldEnds, heldFactor } from './held-ends.ts';
import { type LatticeMaterial, latticeLaw, latticeModulus } from './lattice-law.ts';
import { type LayerLaw, neoHookeanLaw } from './layer-law.ts';
import { LATTICE_POISSON, skinLaw } from './skin-law.ts';

/** Values at heights from foot to tip, between them a monotone curve. Heights rise from 0 to the body's height [m]. */
export interface AlongHeight {
  readonly at: readonly number[];
  readonly value: readonly number[];
}

/** A stop to print: a body of revolution whose lattice is denser or thinner along its height. */
export interface PrintedBody {
  /** Of the lattice, at rest [m]. */
  readonly height: number;
  /** Outer radius along the height [m]. */
  readonly radius: AlongHeight;
  /** Radius of a hole through the middle [m]; 0 for none. */
  readonly bore: number;
  /** Relative density of the lattice along the height. */
  readonly density: AlongHeight;
  /** Solid wall around the lattice [m]; 0 for none. */
  readonly skin: number;
  /** Solid plates below and above the lattice, on top of its height, printed in one with it [m]; none unless given. */
  readonly foot?: number;
  readonly cap?: number;
}

/** What nobody knows of a print beside its material, each 0 … 1 from the least that it can be to the most. */
export interface PrintHold {
  /** Stress at which the skin folds, from an uneven tube by itself to a sheet held all over by the lattice. */
  readonly skin: number;
  /** Hold that solid ends have on the widening of the lattice. */
  readonly ends: number;
}

/** Half-way: where nothing else is known. */
export const HALF_HELD: PrintHold = { skin: 0.5, ends: 0.5 };

/** Slices that a body is cut into where nothing else is asked: the crush to about 1e-4 of itself. */
export const SLICES = 60;

/** Bulk modulus of a solid elastomer [Pa] (from memory). Only where a solid plate is held flat does it count. */
const BULK = 1e9;

/**
 * The slices of a printed body: first those of the lattice from foot to tip, `count` of them, then its solid plates.
 *
 * A skin carries beside the lattice until it folds (`skinLaw`). Solid ends keep the lattice from widening (`heldFactor`);
 * they themselves are flat discs bonded to lattice and metal, and hardly give.
 *
 * @validity a skin thin against the radius; sides straight or nearly so
 */
export function printedLayers(
  body: PrintedBody,
  material: LatticeMaterial,
  hold: PrintHold,
  count = SLICES,
): readonly Layer[] {
  const radiusAt = curveOf(body.radius);
  const densityAt = curveOf(body.density);
  const areaAt = (z: number) => Math.PI * (radiusAt(z) ** 2 - body.bore ** 2);
  const held = 1 + hold.ends * (endsHold(body) - 1);
  const lattice = slicesOf(
    {
      height: body.height,
      areaAt,
      lawAt(z) {
        const inside = timesLaw(latticeLaw(material, densityAt(z)), held);
        if (body.skin === 0) return inside;
        const radius = radiusAt(z);
        const share = (Math.PI * (radius ** 2 - (radius - body.skin) ** 2)) / areaAt(z);
        const skin = skinLaw(
          material.solidModulus,
          { thickness: body.skin, radius },
          latticeModulus(material, densityAt(z)),
          hold.skin,
        );
        return besideLaw(inside, skin, share);
      },
    },
    count,
  );
  const plate = (height: number, z: number): readonly Layer[] => {
    if (height === 0) return [];
    const shape = { height, diameter: 2 * radiusAt(z), bore: 2 * body.bore, ends: 'bonded' } as const;
    const modulus = bondedModulus(material.solidModulus, shapeFactor(shape), 1, BULK);
    return [{ height, area: areaAt(z), law: neoHookeanLaw(modulus / 3) }];
  };
  return [...lattice, ...plate(body.foot ?? 0, 0), ...plate(body.cap ?? 0, body.height)];
}

/** How much stiffer full hold of the solid ends makes the lattice: 1 without solid ends. */
export function endsHold(body: PrintedBody): number {
  const ends = (((body.foot ?? 0) > 0 ? 1 : 0) + ((body.cap ?? 0) > 0 ? 1 : 0)) as HeldEnds;
  return heldFactor(LATTICE_POISSON, meanRadius(body), body.height, ends);
}

const timesLaw = (law: LayerLaw, factor: number): LayerLaw => ({
  stress: (e) => factor * law.stress(e),
  slope: (e) => factor * law.slope(e),
  energy: (e) => factor * law.energy(e),
  locksAt: law.locksAt,
});

/** Two laws side by side under one strain, the second on its share of the area. */
const besideLaw = (inner: LayerLaw, outer: LayerLaw, share: number): LayerLaw => ({
  stress: (e) => (1 - share) * inner.stress(e) + share * outer.stress(e),
  slope: (e) => (1 - share) * inner.slope(e) + share * outer.slope(e),
  energy: (e) => (1 - share) * inner.energy(e) + share * outer.energy(e),
  locksAt: Math.min(inner.locksAt, outer.locksAt),
});

/** The monotone curve through values along the height; one value stands for all. */
export function curveOf({ at, value }: AlongHeight): (z: number) => number {
  if (value.length === 1) return () => value[0];
  const curve = monotoneCubic(at, value);
  return (z) => cubicValue(curve, z);
}

const meanRadius = ({ radius }: PrintedBody): number =>
  radius.value.reduce((sum, r) => sum + r, 0) / radius.value.length;

/** Height, solid plates and all ÷ mean outer diameter. Above about 1.5 a column of rubber may buckle (common practice, no source). */
export const slenderness = (body: PrintedBody): number =>
  (body.height + (body.foot ?? 0) + (body.cap ?? 0)) / (2 * meanRadius(body));

/** Room for air between the walls, at rest [m³]. */
export function airVolume(body: PrintedBody): number {
  const radiusAt = curveOf(body.radius);
  const densityAt = curveOf(body.density);
  const inner = (z: number) =>
    Math.PI * Math.max((radiusAt(z) - body.skin) ** 2 - body.bore ** 2, 0) * (1 - densityAt(z));
  return gaussIntegral(inner, 0, body.height, 12);
}
