import type { SolidRequest } from './solid-request.ts';

/** Cubes of the grid along the edge of a cell: fine where the file stays small enough, coarse at most. */
const FINE = 6;
const COARSE = 4;
/** Triangles for each cell with one cube to a cell: measured, about as (cubes a cell)². */
const PER_CELL = 75;
/** More is a file that slicers take minutes over; beyond the second not even they can be expected to. */
const COMFORTABLE = 1.5e6;
const MOST = 4e6;

/** Edge of the grid's cubes for a stop [m]; null where it would come to too many triangles. */
export function gridFor({ body, cell, plate, cap }: SolidRequest): number | null {
  const widest = Math.max(...body.radius.value);
  const cells = (Math.PI * widest ** 2 * (body.height + plate / 4 + cap / 4)) / cell ** 3;
  const triangles = (cubes: number) => cells * PER_CELL * cubes ** 2;
  if (triangles(FINE) < COMFORTABLE) return cell / FINE;
  const cubes = Math.max(COARSE, Math.sqrt(COMFORTABLE / (cells * PER_CELL)));
  return triangles(cubes) < MOST ? cell / cubes : null;
}
