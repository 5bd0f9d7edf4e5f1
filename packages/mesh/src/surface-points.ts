import type { Field, FieldBody } from './field-body.ts';

/** What holds the ids of grid vertices and fields of a point on an edge in one number: 2²⁶ · 2¹⁹ · 2⁴ < 2⁵³. */
const MOST_APART = 2 ** 19;
const MOST_FIELDS = 16;
/** A point stays this share of its edge away from both ends: no slivers, at a cost of some hundredths of a millimetre. */
const FROM_ENDS = 0.01;

export type PlaceOf = (vertex: number, into: Float64Array) => void;

/**
 * The points of a surface that is cut out of a grid. A point is named by the grid vertices between which it lies and by
 * the fields that are zero at it; whoever asks for the same name gets the same point, so neighbours share it exactly.
 */
export class SurfacePoints {
  count = 0;
  private xyz = new Float32Array(3 * 4096);
  private keys = new Float64Array(1 << 14).fill(-1);
  private at = new Int32Array(1 << 14);
  private edges = 0;
  private readonly rare = new Map<string, number>();
  private readonly a = new Float64Array(3);
  private readonly b = new Float64Array(3);

  constructor(
    private readonly body: FieldBody,
    private readonly spacing: number,
    private readonly placeOf: PlaceOf,
  ) {}

  /**
   * Where a field is zero on the edge of two grid vertices, u < v, whose values have unlike signs.
   *
   * @param isAlone – no other surface crosses the edge: only then is the point moved to the true zero, which could lie
   *   beyond the other surface, outside of the body
   */
  onEdge(u: number, v: number, field: number, valueAtU: number, valueAtV: number, isAlone: boolean): number {
    const key = (u * MOST_APART + (v - u)) * MOST_FIELDS + field;
    if (2 * this.edges > this.keys.length) this.widen();
    const mask = this.keys.length - 1;
    let slot = hash(u, v, field) & mask;
    for (let known = this.keys[slot]; known !== -1; known = this.keys[slot]) {
      if (known === key) return this.at[slot];
      slot = (slot + 1) & mask;
    }
    this.keys[slot] = key;
    this.edges += 1;
    this.placeOf(u, this.a);
    this.placeOf(v, this.b);
    const guess = valueAtU / (valueAtU - valueAtV);
    const s = isAlone ? this.zeroBetween(field, guess) : inside(guess);
    const made = this.add(
      this.a[0] + s * (this.b[0] - this.a[0]),
      this.a[1] + s * (this.b[1] - this.a[1]),
      this.a[2] + s * (this.b[2] - this.a[2]),
    );
    this.at[slot] = made;
    return made;
  }

  /** Where two or three fields are zero inside a face or a cell of the grid. */
  onCrossing(name: string, fields: number, x: number, y: number, z: number): number {
    const known = this.rare.get(name);
    if (known !== undefined) return known;
    const [px, py, pz] = this.ontoFields(fields, x, y, z);
    const made = this.add(px, py, pz);
    this.rare.set(name, made);
    return made;
  }

  points(): Float32Array {
    return this.xyz.slice(0, 3 * this.count);
  }

  private add(x: number, y: number, z: number): number {
    if (3 * this.count + 3 > this.xyz.length) {
      const wider = new Float32Array(2 * this.xyz.length);
      wider.set(this.xyz);
      this.xyz = wider;
    }
    this.xyz[3 * this.count] = x;
    this.xyz[3 * this.count + 1] = y;
    this.xyz[3 * this.count + 2] = z;
    this.count += 1;
    return this.count - 1;
  }

  /** False position with the field itself, from the straight guess; the guess where the field has no change of sign. */
  private zeroBetween(field: number, guess: number): number {
    const at = this.body.fields[field];
    const value = (s: number) =>
      at(
        this.a[0] + s * (this.b[0] - this.a[0]),
        this.a[1] + s * (this.b[1] - this.a[1]),
        this.a[2] + s * (this.b[2] - this.a[2]),
      );
    let [low, high] = [0, 1];
    let [atLow, atHigh] = [value(0), value(1)];
    if (atLow < 0 === atHigh < 0) return inside(guess);
    let s = inside(guess);
    for (let tries = 0; tries < 4; tries += 1) {
      const found = value(s);
      if (Math.abs(found) < 1e-4 * this.spacing) break;
      if (found < 0 === atLow < 0) [low, atLow] = [s, found];
      else [high, atHigh] = [s, found];
      s = low + ((high - low) * atLow) / (atLow - atHigh);
    }
    return inside(s);
  }

  /**
   * The nearest place where all these fields are zero: Gauss and Newton's steps, never further than a third of the grid,
   * and never through another surface.
   */
  private ontoFields(fields: number, x: number, y: number, z: number): readonly [number, number, number] {
    const which = this.body.fields.filter((_, k) => (fields >> k) & 1);
    // A field that is far from zero here has a jump near by: its trace means nothing and is left as it is.
    if (which.some((at) => Math.abs(at(x, y, z)) > 0.2 * this.spacing)) return [x, y, z];
    const d = 1e-3 * this.spacing;
    const p = [x, y, z];
    for (let round = 0; round < 4; round += 1)
      for (const at of which) {
        const [px, py, pz] = p;
        const value = at(px, py, pz);
        const slope = [
          (at(px + d, py, pz) - at(px - d, py, pz)) / (2 * d),
          (at(px, py + d, pz) - at(px, py - d, pz)) / (2 * d),
          (at(px, py, pz + d) - at(px, py, pz - d)) / (2 * d),
        ];
        const size = slope[0] ** 2 + slope[1] ** 2 + slope[2] ** 2;
        if (size < 0.01) continue;
        for (let i = 0; i < 3; i += 1) p[i] -= (value * slope[i]) / size;
      }
    const moved = Math.hypot(p[0] - x, p[1] - y, p[2] - z);
    const [px, py, pz] = p;
    const isStill = (at: Field, k: number) =>
      ((fields >> k) & 1) === 1 || at(x, y, z) > 0 === at(px, py, pz) > 0;
    return moved < 0.3 * this.spacing && this.body.fields.every(isStill) ? [px, py, pz] : [x, y, z];
  }

  private widen(): void {
    const [keys, at] = [this.keys, this.at];
    this.keys = new Float64Array(2 * keys.length).fill(-1);
    this.at = new Int32Array(2 * keys.length);
    const mask = this.keys.length - 1;
    for (let i = 0; i < keys.length; i += 1) {
      const key = keys[i];
      if (key === -1) continue;
      const field = key % MOST_FIELDS;
      const pair = (key - field) / MOST_FIELDS;
      const apart = pair % MOST_APART;
      const u = (pair - apart) / MOST_APART;
      let slot = hash(u, u + apart, field) & mask;
      while (this.keys[slot] !== -1) slot = (slot + 1) & mask;
      this.keys[slot] = key;
      this.at[slot] = at[i];
    }
  }
}

const inside = (s: number): number => Math.min(1 - FROM_ENDS, Math.max(FROM_ENDS, s));

function hash(u: number, v: number, field: number): number {
  let h = Math.imul(u, 0x9e3779b1) ^ Math.imul(v, 0x85ebca6b) ^ Math.imul(field + 1, 0xc2b2ae35);
  h = Math.imul(h ^ (h >>> 15), 0x2c1b3c6d);
  return (h ^ (h >>> 13)) >>> 0;
}
