import { bad, good, type Result } from '@lastinch/core';
import type { Solid } from './solid.ts';
import { solidOf } from './solid.ts';
import { type PlacedMesh, threeMfOf } from './three-mf.ts';

/** Small cylinders of even density to print and press, of the cell that the stop will have. Lengths in metres. */
export interface CouponRequest {
  readonly densities: readonly number[];
  readonly diameter: number;
  readonly height: number;
  readonly cell: number;
}

export interface Coupon {
  readonly name: string;
  readonly density: number;
  readonly solid: Solid;
}

/** Between coupons on the plate [m]. */
const APART = 5e-3;

/**
 * The solids of coupons, one for each density: lattice through and through, open at all faces, no plate and no cap, so
 * that what is pressed is the lattice alone.
 *
 * @failure as `solidOf`; `stop-shape` for fewer than one density
 */
export function couponSolids(
  { densities, diameter, height, cell }: CouponRequest,
  onProgress: (share: number) => void = () => {},
): Result<readonly Coupon[]> {
  if (densities.length === 0)
    return bad({ code: 'stop-shape', where: {}, found: 'no density', accepted: 'one density or more' });
  const coupons: Coupon[] = [];
  for (const [i, density] of densities.entries()) {
    const made = solidOf(
      {
        body: {
          height,
          radius: { at: [0, height], value: [diameter / 2, diameter / 2] },
          bore: 0,
          skin: 0,
          density: { at: [0, height], value: [density, density] },
        },
        cell,
        plate: 0,
        seat: null,
        cap: 0,
        vents: null,
      },
      (share) => onProgress((i + share) / densities.length),
    );
    if (!made.ok) return made;
    coupons.push({ name: `coupon ${i + 1}, ${Math.round(100 * density)} %`, density, solid: made.value });
  }
  return good(coupons);
}

/** All coupons on one plate, in a row, as a 3MF file. */
export function couponFile(title: string, coupons: readonly Coupon[], diameter: number): Uint8Array {
  const parts = coupons.map(
    ({ name, solid }, i): PlacedMesh => ({ name, mesh: solid.mesh, at: [(diameter + APART) * i, 0] }),
  );
  return threeMfOf(title, parts);
}
