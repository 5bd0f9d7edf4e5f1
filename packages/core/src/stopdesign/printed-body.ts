import { cubicValue, monotoneCubic } from '../numerics/monotone-cubic.ts';
import { type Layer, slicesOf } from './column.ts';
import { type LatticeMaterial, latticeLaw } from './lattice-law.ts';
import type { LayerLaw } from './layer-law.ts';

/** Values at heights from foot to tip, between them a monotone curve. Heights rise from 0 to the body's height [m]. */
export interface AlongHeight {
  readonly at: readonly number[];
  readonly value: readonly number[];
}

/** A stop to print: a body of revolution whose lattice is denser or thinner along its height. */
export interface PrintedBody {
  /** Foot to tip, at rest [m]. */
  readonly height: number;
  /** Outer radius along the height [m]. */
  readonly radius: AlongHeight;
  /** Radius of a hole through the middle [m]; 0 for none. */
  readonly bore: number;
  /** Relative density of the lattice along the height. */
  readonly density: AlongHeight;
  /** Solid wall around the lattice [m]; 0 for none. */
  readonly skin: number;
}

/** Slices that a body is cut into where nothing else is asked: the crush to about 1e-4 of itself. */
export const SLICES = 60;

/**
 * The slices of a printed body. A skin carries beside the lattice: at least nothing, since a thin wall folds outward, at
 * most as solid rubber with free sides; `skinShare` says where between.
 *
 * @param skinShare – 0 … 1 of the solid skin's force
 */
export function printedLayers(
  body: PrintedBody,
  material: LatticeMaterial,
  skinShare: number,
  count = SLICES,
): readonly Layer[] {
  const radiusAt = curveOf(body.radius);
  const densityAt = curveOf(body.density);
  const areaAt = (z: number) => Math.PI * (radiusAt(z) ** 2 - body.bore ** 2);
  return slicesOf(
    {
      height: body.height,
      areaAt,
      lawAt(z) {
        const lattice = latticeLaw(material, densityAt(z));
        if (body.skin === 0 || skinShare === 0) return lattice;
        const skinArea = Math.PI * (radiusAt(z) ** 2 - (radiusAt(z) - body.skin) ** 2);
        const share = skinArea / areaAt(z);
        return besideLaw(lattice, material.solidModulus / 3, share, skinShare);
      },
    },
    count,
  );
}

/** Lattice on its share of the area, a skin of solid rubber on the rest. */
function besideLaw(lattice: LayerLaw, shearModulus: number, share: number, skinShare: number): LayerLaw {
  const g = shearModulus * skinShare * share;
  const inner = 1 - share;
  return {
    stress: (e) => inner * lattice.stress(e) + g * ((1 - e) ** -2 - (1 - e)),
    slope: (e) => inner * lattice.slope(e) + g * (2 * (1 - e) ** -3 + 1),
    energy: (e) => inner * lattice.energy(e) + (g / 2) * ((1 - e) ** 2 + 2 / (1 - e) - 3),
    locksAt: lattice.locksAt,
  };
}

/** The monotone curve through values along the height; one value stands for all. */
export function curveOf({ at, value }: AlongHeight): (z: number) => number {
  if (value.length === 1) return () => value[0];
  const curve = monotoneCubic(at, value);
  return (z) => cubicValue(curve, z);
}

/** Height ÷ mean outer diameter. Above about 1.5 a column of rubber may buckle (common practice, no source). */
export function slenderness({ height, radius }: PrintedBody): number {
  const mean = radius.value.reduce((sum, r) => sum + r, 0) / radius.value.length;
  return height / (2 * mean);
}
