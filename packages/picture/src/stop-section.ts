import { formatValue, type UnitSystem } from '@lastinch/core';
import { levelRings } from './level-rings.ts';
import type { Item, Scene } from './scene.ts';
import { textWidth } from './text-width.ts';

/** A value along a height, straight between places, from the foot up. */
interface Along {
  readonly at: readonly number[];
  readonly value: readonly number[];
}

/** A printed stop as far as a cut through its axis shows it. Lengths in metres. */
export interface StopShape {
  /** Of the lattice, and the radius and the density along it. */
  readonly height: number;
  readonly radius: Along;
  readonly bore: number;
  readonly skin: number;
  /** Solid below and above the lattice, on top of its height. */
  readonly foot: number;
  readonly cap: number;
  readonly cell: number;
  readonly density: Along;
  /** Half level of the sheet at each place of the density: all at |sin X cos Y + sin Y cos Z + sin Z cos X| below it is solid. */
  readonly level: readonly number[];
}

/** How it is crushed, from the foot up. */
export interface StopState {
  /** [m] */
  readonly crush: number;
  readonly slices: readonly { readonly at: number; readonly strain: number; readonly closesAt: number }[];
}

export interface StopSectionOptions {
  readonly shape: StopShape;
  /** Null draws it free. */
  readonly state: StopState | null;
  readonly system: UnitSystem;
  readonly width: number;
}

/** Closed lines around the solid in the cut, free [m]; made once, then drawn in any state. */
export type SectionRings = readonly (readonly number[])[];

/** Grid lines over a cell: walls of a twelfth of it keep their thickness. */
const PER_CELL = 24;
/** A stop of very many cells is drawn more coarsely: nobody sees more on a screen. */
const MOST_POINTS = 200_000;
/** Mean slope of the level on the sheet, per radian: makes a level a distance from the wall. */
const SLOPE = 1.53;

/**
 * The cut through the axis of a stop with a sheet lattice: the sheet itself, in the same place and as thick as in the
 * solid that is printed.
 */
export const sectionRings = (shape: StopShape): SectionRings => {
  const { cell, bore, skin, foot, cap } = shape;
  const height = totalOf(shape);
  const widest = Math.max(...shape.radius.value);
  const step = Math.max(cell / PER_CELL, Math.sqrt((2 * widest * height) / MOST_POINTS));
  const columns = 2 * Math.ceil(widest / step) + 5;
  const rows = Math.ceil(height / step) + 5;
  const x = (i: number): number => (i - (columns - 1) / 2) * step;
  const y = (j: number): number => ((j - 2) * height) / (rows - 5);
  const turn = (2 * Math.PI) / cell;
  const values = new Float64Array(columns * rows);
  for (let j = 0; j < rows; j += 1) {
    const z = y(j);
    const radius = along(shape.radius, z - foot);
    const half = along({ at: shape.density.at, value: shape.level }, z - foot);
    const swing = Math.sin(turn * (z - foot));
    for (let i = 0; i < columns; i += 1) {
      const out = Math.abs(x(i));
      const a = turn * x(i);
      const level = Math.sin(a) + swing * Math.cos(a);
      let solid = ((Math.abs(level) - half) * cell) / (2 * Math.PI * SLOPE);
      if (skin > 0) solid = Math.min(solid, radius - skin - out);
      if (foot > 0) solid = Math.min(solid, z - foot);
      if (cap > 0) solid = Math.min(solid, height - cap - z);
      const beyond = Math.max(out - radius, -z, z - height, bore > 0 ? bore - out : -widest);
      values[j * columns + i] = Math.max(solid, beyond);
    }
  }
  return levelRings({ columns, rows, values, x, y });
};

const totalOf = ({ height, foot, cap }: StopShape): number => foot + height + cap;

const TEXT = 11.5;
const SIDE = { left: 64, right: 12, top: 30, bottom: 40 } as const;
const TALLEST = 360;
/** Share of the width that the cut may take, and that the strain takes beside it. */
const CUT = 0.6;
const PLACES = 3;

/** The cut to scale, free or crushed, with the strain of each height beside it and where that height closes. */
export const stopSectionScene = (rings: SectionRings, options: StopSectionOptions): Scene => {
  const { shape, state, system, width } = options;
  const height = totalOf(shape);
  const widest = Math.max(...shape.radius.value);
  const room = width - SIDE.left - SIDE.right;
  const scale = Math.min((room * CUT) / (2 * widest), TALLEST / height);
  const axis = SIDE.left + widest * scale;
  const sceneHeight = height * scale + SIDE.top + SIDE.bottom;
  const crushed = heightsOf(shape, state);
  const at = (x: number): number => axis + x * scale;
  const up = (z: number): number => SIDE.bottom + crushed(z) * scale;
  const length = (value: number): string => formatValue(value, 'length', { system });
  const text = (words: string, x: number, y: number, anchor: 'start' | 'middle' | 'end'): Item => ({
    kind: 'text',
    role: 'note',
    x,
    y,
    text: words,
    size: TEXT,
    anchor,
  });
  const items: Item[] = [
    {
      kind: 'region',
      role: 'crush',
      name: 'walls',
      rings: rings.map((ring) => ring.map((value, k) => (k % 2 === 0 ? at(value) : up(value)))),
    },
    { kind: 'line', role: 'note', dashed: true, x1: axis, y1: up(0) - 6, x2: axis, y2: up(height) + 6 },
  ];
  // What it is set on: metal under the foot.
  const foot = along(shape.radius, 0);
  items.push({
    kind: 'line',
    role: 'pad',
    weight: 'strong',
    x1: at(-foot) - 8,
    y1: up(0),
    x2: at(foot) + 8,
    y2: up(0),
  });
  if (state !== null && state.crush > 0) {
    const tip = along(shape.radius, shape.height);
    const free = SIDE.bottom + height * scale;
    items.push(
      {
        kind: 'line',
        role: 'pad',
        weight: 'strong',
        x1: at(-tip) - 8,
        y1: up(height),
        x2: at(tip) + 8,
        y2: up(height),
      },
      { kind: 'line', role: 'note', dashed: true, x1: at(-tip), y1: free, x2: at(tip), y2: free },
    );
  }
  for (let k = 0; k <= PLACES; k += 1) {
    const lattice = (shape.height * k) / PLACES;
    const z = shape.foot + lattice;
    const density = `${Math.round(100 * along(shape.density, lattice))} %`;
    const edge = at(-along(shape.radius, lattice));
    items.push(
      text(
        density,
        SIDE.left - 16,
        Math.min(Math.max(up(z), SIDE.bottom + 5), sceneHeight - SIDE.top),
        'end',
      ),
      { kind: 'line', role: 'leader', x1: SIDE.left - 12, y1: up(z), x2: edge - 3, y2: up(z) },
    );
  }
  items.push(
    text('solid', 2, sceneHeight - TEXT, 'start'),
    text(`${length(2 * foot)} at the foot`, axis, SIDE.bottom - 16, 'middle'),
    text(
      `${length(crushed(height))} high${state === null || state.crush === 0 ? '' : `, crushed ${length(state.crush)}`}`,
      axis,
      sceneHeight - TEXT,
      'middle',
    ),
  );
  if (state !== null)
    items.push(
      ...strainItems(state, up, {
        from: at(widest) + 34,
        to: width - SIDE.right,
        low: shape.foot,
        high: shape.foot + shape.height,
        sceneHeight,
      }),
    );
  return { bounds: { left: 0, right: width, bottom: 0, top: sceneHeight }, items, layoutWidth: width };
};

/** Strain over height as steps, and the strain at which each height closes as a broken line. */
const strainItems = (
  { slices }: StopState,
  up: (z: number) => number,
  place: {
    readonly from: number;
    readonly to: number;
    /** Ends of the lattice, free [m]. */
    readonly low: number;
    readonly high: number;
    readonly sceneHeight: number;
  },
): readonly Item[] => {
  const { from, to, sceneHeight } = place;
  const x = (strain: number): number => from + (to - from) * Math.min(1, strain);
  const edges = [place.low, ...slices.slice(1).map(({ at }, k) => (slices[k]!.at + at) / 2), place.high];
  const steps = (of: (slice: StopState['slices'][number]) => number): number[] =>
    slices.flatMap((slice, k) => [x(of(slice)), up(edges[k]!), x(of(slice)), up(edges[k + 1]!)]);
  const strained = steps(({ strain }) => strain);
  const bottom = up(edges[0]!);
  const top = up(edges[edges.length - 1]!);
  const word = (text: string, at: number, y: number, anchor: 'start' | 'middle' | 'end'): Item => ({
    kind: 'text',
    role: 'axis',
    x: at,
    y,
    text,
    size: 10.5,
    anchor,
  });
  const closes = slices[slices.length - 1]?.closesAt ?? 1;
  const title = 'local strain';
  return [
    { kind: 'polygon', role: 'crush', name: 'strain', points: [from, bottom, ...strained, from, top] },
    { kind: 'polyline', role: 'limit', name: 'closes', points: steps(({ closesAt }) => closesAt) },
    { kind: 'line', role: 'axis', x1: from, y1: bottom, x2: from, y2: top },
    { kind: 'line', role: 'axis', x1: from, y1: bottom, x2: to, y2: bottom },
    word('0', from, bottom - 10, 'middle'),
    word('50 %', x(0.5), bottom - 10, 'middle'),
    ...(to - from < 110 ? [] : [word('100 %', to - textWidth('100 %', 10.5) / 2 + 8, bottom - 10, 'middle')]),
    { ...word(title, from, sceneHeight - TEXT, 'start'), role: 'note', size: TEXT } as Item,
    { ...word('closed', Math.min(x(closes), to - 14), top + 9, 'middle'), role: 'limit' } as Item,
  ];
};

/**
 * Where a free height comes to lie: solid ends as they are, the lattice between them shorter by its strain. Bulging is
 * not drawn.
 */
const heightsOf = ({ height, foot }: StopShape, state: StopState | null): ((z: number) => number) => {
  if (state === null || state.slices.length === 0) return (z) => z;
  const strain = { at: state.slices.map(({ at }) => at), value: state.slices.map((slice) => slice.strain) };
  const step = height / STEPS;
  const shorter = [0];
  for (let k = 0; k < STEPS; k += 1)
    shorter.push(shorter[k]! + step * along(strain, foot + (k + 0.5) * step));
  // A dozen strains stand for all heights: together they make up the crush.
  const share = state.crush / (shorter[STEPS]! || 1);
  const at = shorter.map((_, k) => foot + k * step);
  return (z) => z - share * along({ at, value: shorter }, Math.min(Math.max(z, foot), foot + height));
};
const STEPS = 48;

const along = ({ at, value }: Along, place: number): number => {
  const k = at.findIndex((here) => here >= place);
  if (k === 0 || at.length === 1) return value[0]!;
  if (k < 0) return value[value.length - 1]!;
  const share = (place - at[k - 1]!) / (at[k]! - at[k - 1]! || 1);
  return value[k - 1]! + (value[k]! - value[k - 1]!) * share;
};
