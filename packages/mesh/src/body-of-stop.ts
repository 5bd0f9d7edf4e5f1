import type { AlongHeight } from '@lastinch/core';
import { cubicValue, monotoneCubic } from '@lastinch/core';
import type { Field, FieldBody } from './field-body.ts';
import { gyroidLevel, sheetLevel } from './gyroid.ts';
import { PLAY, WEB } from './seat.ts';
import type { SolidRequest } from './solid-request.ts';

/** The fields of the two faces of the sheet: never zero at one place, so they need no common edge. */
export const SHEET_FACES = 0b11;

/**
 * The sheet between triangles is fuller than the true one: its faces are hollow towards the solid, and a chord of a
 * hollow lies outside. The half level is made smaller by this much × (grid ÷ cell)². A numerical device, fitted once to
 * meshes of 8 and 10 mm cells at densities of 30 and 50 %; what it leaves is tested slice by slice.
 */
const CHORDS = 0.91;
/** Mean slope of the level on the sheet, per radian. @source check values 10.3 */
const MEAN_SLOPE = 1.53;
/** Bottoms of holes lie this share of the grid beyond the face that they break through, lest two planes be one. */
const BEYOND = 0.37;
const ROWS = 1024;

/**
 * A stop to print as fields: a sheet whose half level follows the density, within the outline; solid below, above and
 * around it where asked; holes taken out. z = 0 is the foot's face, the lattice begins above the plate.
 */
export function bodyOfStop(request: SolidRequest, spacing: number): FieldBody {
  const { body, cell, plate, cap, vents, seat } = request;
  const tip = plate + body.height;
  const end = tip + cap;
  const radius = alongRows(body.radius, body.height, (r) => r);
  const chords = 1 - CHORDS * (spacing / cell) ** 2;
  const level = alongRows(body.density, body.height, (rho) => chords * sheetLevel(rho));
  const scale = cell / (2 * Math.PI * MEAN_SLOPE);
  const deep = 2 * spacing;
  const inLattice = (z: number) => Math.min(Math.max(z - plate, 0), body.height);
  const sheet =
    (side: 1 | -1): Field =>
    (x, y, z) =>
      z < plate - deep || z > tip + deep
        ? deep
        : (level(inLattice(z)) + side * gyroidLevel(x, y, z - plate, cell)) * scale;
  const slant = (z: number) => {
    const step = body.height / ROWS;
    return Math.hypot(1, (radius(z + step) - radius(z - step)) / (2 * step));
  };
  const fields: Field[] = [
    sheet(-1),
    sheet(1),
    (_x, _y, z) => Math.min(z, end - z),
    (x, y, z) => (radius(inLattice(z)) - Math.hypot(x, y)) / slant(inLattice(z)),
  ];
  const add = (field: Field): number => 1 << (fields.push(field) - 1);
  // Solid in any of these, whatever the sheet does.
  let solid = 0;
  if (plate > 0 || cap > 0)
    solid |= add((_x, _y, z) =>
      Math.max(plate > 0 ? plate - z : -body.height, cap > 0 ? z - tip : -body.height),
    );
  const { skin } = body;
  if (skin > 0)
    solid |= add((x, y, z) => (Math.hypot(x, y) - radius(inLattice(z)) + skin) / slant(inLattice(z)));
  // Free where one of these is not positive.
  let needed = 0b1100;
  const beyond = BEYOND * spacing;
  if (body.bore > 0) needed |= add((x, y, z) => Math.max(Math.hypot(x, y) - body.bore, plate - beyond - z));
  const hole = (holeRadius: number, top: number): void => {
    needed |= add((x, y, z) => Math.max(Math.hypot(x, y) - holeRadius, z - top));
  };
  if (seat?.kind === 'insert') hole(seat.diameter / 2, seat.depth);
  else if (seat !== null) hole(seat.thread.clearance / 2, plate + beyond);
  // A pocket is free where none of these is positive.
  let pocket = 0;
  if (seat?.kind === 'nut') {
    const half = (seat.thread.acrossFlats + PLAY) / 2;
    const [low, high] = [WEB, WEB + seat.thread.nutHeight + PLAY];
    const reach = (2 / Math.sqrt(3)) * half + deep;
    const near: (field: Field) => Field = (field) => (x, y, z) =>
      z > low - deep && z < high + deep && Math.hypot(x, y) < reach ? field(x, y, z) : deep;
    for (const turn of [0, 1, 2]) {
      const [c, s] = [Math.cos((turn * Math.PI) / 3), Math.sin((turn * Math.PI) / 3)];
      pocket |= add(near((x, y) => Math.abs(c * x + s * y) - half));
    }
    pocket |= add(near((_x, _y, z) => Math.max(low - z, z - high)));
  }
  if (vents !== null) {
    const height = plate + Math.min(cell, body.height / 2);
    const turns = Array.from({ length: vents.count }, (_, i) => (2 * Math.PI * (i + 0.5)) / vents.count);
    const rays = turns.map((turn) => [Math.cos(turn), Math.sin(turn)]);
    needed |= add((x, y, z) => {
      const inner = radius(inLattice(z)) - skin - cell / 2;
      let nearest = deep;
      for (const [c, s] of rays) {
        const off = Math.hypot(c * y - s * x, z - height) - vents.diameter / 2;
        nearest = Math.min(nearest, Math.max(off, inner - (c * x + s * y)));
      }
      return nearest;
    });
  }
  const widest = Math.max(...body.radius.value);
  return {
    fields,
    isSolid: (positive) =>
      (positive & needed) === needed &&
      ((positive & SHEET_FACES) === SHEET_FACES || (positive & solid) !== 0) &&
      (pocket === 0 || (positive & pocket) !== 0),
    from: [-widest, -widest, 0],
    to: [widest, widest, end],
  };
}

/** A curve along the height, told quickly: straight between many even rows. */
function alongRows(
  { at, value }: AlongHeight,
  height: number,
  of: (value: number) => number,
): (z: number) => number {
  const rows = new Float64Array(ROWS + 2);
  const curve = value.length === 1 ? null : monotoneCubic(at, value);
  for (let i = 0; i < rows.length; i += 1) {
    const z = Math.min(height, (i * height) / ROWS);
    rows[i] = of(curve === null ? value[0] : cubicValue(curve, z));
  }
  return (z) => {
    const u = Math.min(Math.max((z * ROWS) / height, 0), ROWS);
    const i = Math.floor(u);
    return rows[i] + (u - i) * (rows[i + 1] - rows[i]);
  };
}
