import type { TravelColumn, UnitSystem } from '@lastinch/core';
import { formatFigure } from '@lastinch/core';
import { columnLabels, type Gutter } from './column-labels.ts';
import { type ColumnShape, nearContacts } from './column-parts.ts';
import { CORNER_NAMES, VERDICT_NAMES } from './names.ts';
import type { Role } from './role.ts';
import { marksBetween, markText, type Ruler } from './ruler.ts';
import type { Item } from './scene.ts';
import { fitText, textWidth } from './text-width.ts';
import { VERDICT_ROLES, verdictMark } from './verdict-mark.ts';

/** One column in a panel, with the setup that it belongs to. */
export interface PanelColumn {
  readonly column: TravelColumn;
  readonly shape: ColumnShape;
  readonly setup: string;
}

/** Where a panel stands and what it shares with the others. Widths in pixels, heights in metres. */
export interface PanelPlace {
  readonly left: number;
  readonly width: number;
  /** Scene height of ride height. */
  readonly ride: number;
  readonly up: number;
  readonly down: number;
  /** Lines of words in the head, above `up` [px]. */
  readonly head: number;
  readonly metresPerPixel: number;
  readonly ruler: Ruler;
  readonly system: UnitSystem;
}

/** Thickness of the metal block above a column [px]. */
export const METAL = 13;
/** Words may stand this far above and below the drawn travel [px]. */
export const MARGIN = { top: 18, bottom: 20 } as const;
const PAD = 6;
const RULER_WIDTH = 32;
const SPINE = 32;
const columnWidth = (panel: number, pair: boolean): number =>
  pair ? Math.min(46, Math.max(26, panel * 0.095)) : Math.min(64, Math.max(34, panel * 0.2));

/** One corner: its head with verdict, one column or two side by side on one ruler, and their labels. */
export const columnPanel = (columns: readonly PanelColumn[], place: PanelPlace): readonly Item[] => {
  const u = place.metresPerPixel;
  const pair = columns.length > 1;
  const wide = columnWidth(place.width, pair);
  const gutter = (edge: number, way: 1 | -1, room: number): Gutter => ({
    edge: edge * u,
    way,
    room,
    bottom: place.ride - place.down - MARGIN.bottom * u,
    top: place.ride + place.up + MARGIN.top * u,
    ride: place.ride,
    metresPerPixel: u,
  });
  const items: Item[] = [...headOf(columns, place)];
  const [first, second] = columns;
  if (pair) {
    const middle = place.left + place.width / 2;
    const leftX = middle - SPINE / 2 - wide;
    const rightX = middle + SPINE / 2;
    const room = place.width / 2 - SPINE / 2 - wide - PAD;
    items.push(
      ...spineOf(middle - SPINE / 2, SPINE, place, true),
      ...columnAt(first!, leftX, wide, place, 'against'),
      ...columnAt(second!, rightX, wide, place, 'column'),
      ...columnLabels(first!.shape, gutter(leftX, -1, room), place.system, nameOf(first!, 'against')),
      ...columnLabels(second!.shape, gutter(rightX + wide, 1, room), place.system, nameOf(second!, 'column')),
    );
  } else {
    const x = place.left + PAD + RULER_WIDTH;
    items.push(
      ...spineOf(x - RULER_WIDTH, RULER_WIDTH, place, false),
      ...columnAt(first!, x, wide, place, 'column'),
      ...columnLabels(
        first!.shape,
        gutter(x + wide, 1, place.width - PAD * 2 - RULER_WIDTH - wide),
        place.system,
        nameOf(first!, 'column'),
      ),
    );
  }
  return items;
};

const nameOf = (column: PanelColumn, which: string): string => `${column.column.corner}.${which}`;

/** Space for the words of a head [px]: title, setup, verdict, spare, clearance. */
export const headHeight = (pair: boolean): number => (pair ? 90 : 74);

const headOf = (columns: readonly PanelColumn[], place: PanelPlace): readonly Item[] => {
  const u = place.metresPerPixel;
  const pair = columns.length > 1;
  const top = place.ride + place.up + (MARGIN.top + place.head) * u;
  const title: Item = {
    kind: 'text',
    role: 'title',
    x: (place.left + (pair ? place.width / 2 : PAD)) * u,
    y: top - 9 * u,
    text: CORNER_NAMES[columns[0]!.column.corner],
    size: 15,
    bold: true,
    anchor: pair ? 'middle' : 'start',
  };
  const items: Item[] = [title];
  columns.forEach((column, k) => {
    const way = pair && k === 1 ? -1 : 1;
    const x = place.left + (way === 1 ? PAD : place.width - PAD);
    const room = pair ? place.width / 2 - PAD * 1.5 : place.width - PAD * 2;
    items.push(...headWords(column, x, way, room, top - (pair ? 26 : 27) * u, pair, place));
  });
  return items;
};

/** Figures of the head shrink before they would leave it [px]. */
const HEAD_SIZES = [12, 11, 10, 9, 8] as const;

const headWords = (
  { column, shape, setup }: PanelColumn,
  x: number,
  way: 1 | -1,
  room: number,
  top: number,
  pair: boolean,
  place: PanelPlace,
): readonly Item[] => {
  const u = place.metresPerPixel;
  const items: Item[] = [];
  const anchor = way === 1 ? 'start' : 'end';
  const say = (y: number, text: string, role: Role, size: number, indent = 0, bold = false): void => {
    items.push({ kind: 'text', role, x: (x + way * indent) * u, y, text, size, anchor, bold });
  };
  let y = top;
  if (pair) {
    say(y, fitText(setup, room, 11), 'note', 11);
    y -= 17 * u;
  }
  items.push(...verdictMark(column.verdict, (x + way * 7) * u, y, 6 * u));
  say(y, VERDICT_NAMES[column.verdict], VERDICT_ROLES[column.verdict], 13, 19, true);
  const lines = [
    `spare ${formatFigure(column.spare, place)}`,
    `clearance ${formatFigure(column.clearance, place)}`,
  ];
  const size =
    HEAD_SIZES.find((px) => lines.every((line) => textWidth(line, px) <= room)) ??
    HEAD_SIZES[HEAD_SIZES.length - 1]!;
  const where = shape.tightest === null ? '' : ` at ${shape.tightest.name}`;
  if (textWidth(lines[0] + where, size) <= room) lines[0] += where;
  for (const line of lines) {
    y -= 16 * u;
    say(y, line, 'figure', size);
  }
  return items;
};

const columnAt = (
  { column, shape }: PanelColumn,
  left: number,
  wide: number,
  place: PanelPlace,
  which: string,
): readonly Item[] => {
  const u = place.metresPerPixel;
  const x = left * u;
  const width = wide * u;
  const name = (part: string): string => `${column.corner}.${which}.${part}`;
  const items: Item[] = [];
  const metal = shape.boundaries.find((boundary) => boundary.id === 'metal')!;
  const later = nearContacts(shape);
  const highest = later.at(-1)?.travel.value ?? 0;
  const roof = metal.at + METAL * u;
  if (highest > roof) {
    items.push({
      kind: 'rect',
      role: 'note',
      x: x + width * 0.3,
      y: place.ride + roof,
      width: width * 0.4,
      height: highest - roof,
      weight: 'faint',
      dashed: true,
    });
  }
  items.push({
    kind: 'rect',
    role: 'metal',
    x,
    y: place.ride + metal.at,
    width,
    height: METAL * u,
    name: name('metal'),
  });
  for (const contact of later) {
    const y = place.ride + contact.travel.value;
    items.push({ kind: 'line', role: 'contact', x1: x + width * 0.15, y1: y, x2: x + width, y2: y });
  }
  for (const part of shape.parts) {
    items.push({
      kind: 'rect',
      role: part.id,
      x,
      y: place.ride + part.from,
      width,
      height: part.to - part.from,
      name: name(part.id),
    });
  }
  if (shape.overlap !== null) {
    const { from, to } = shape.overlap;
    items.push({
      kind: 'rect',
      role: 'overlap',
      x,
      y: place.ride + from,
      width,
      height: to - from,
      name: name('overlap'),
    });
  }
  let lastSign = Number.NEGATIVE_INFINITY;
  for (const boundary of shape.boundaries) {
    const y = place.ride + boundary.at;
    const ride = boundary.id === 'ride';
    const over = ride ? 5 * u : 0;
    if (boundary.tolerance !== null && boundary.tolerance > 0) {
      const half = boundary.tolerance;
      items.push({
        kind: 'band',
        role: 'tolerance',
        x,
        width,
        y,
        plus: half,
        minus: half,
        name: name(`${boundary.id}.tolerance`),
      });
    }
    items.push({
      kind: 'line',
      role: ride ? 'ride' : 'contact',
      x1: x - over,
      y1: y,
      x2: x + width + over,
      y2: y,
      weight: ride ? 'strong' : 'plain',
      dashed: boundary.tolerance === null,
    });
    // Boundaries come from the bottom up: a sign that would touch the one below it is left to its dashes.
    if (boundary.tolerance === null && y > lastSign + 14 * u) {
      const text = '?';
      items.push({
        kind: 'text',
        role: 'figure',
        x: x + width / 2,
        y: y + 7 * u,
        text,
        size: 11,
        anchor: 'middle',
      });
      lastSign = y;
    }
  }
  return items;
};

/** The tape beside a column, or between two: its zero is ride height. */
const spineOf = (left: number, wide: number, place: PanelPlace, both: boolean): readonly Item[] => {
  const u = place.metresPerPixel;
  const { ruler, ride } = place;
  const items: Item[] = [];
  const right = left + wide;
  const tick = (x1: number, x2: number, y: number): Item => ({
    kind: 'line',
    role: 'axis',
    x1: x1 * u,
    y1: y,
    x2: x2 * u,
    y2: y,
    weight: 'faint',
  });
  for (const k of marksBetween(ruler, -place.down, place.up)) {
    const y = ride + k * ruler.step;
    const numbered = k % ruler.every === 0;
    const long = numbered ? 6 : k % Math.max(2, ruler.every / 2) === 0 ? 4 : 2.5;
    items.push(tick(right - long, right, y));
    if (both) items.push(tick(left, left + long, y));
    if (numbered) {
      items.push({
        kind: 'text',
        role: 'axis',
        x: (both ? left + wide / 2 : right - 8) * u,
        y,
        text: markText(ruler, k),
        size: 10,
        anchor: both ? 'middle' : 'end',
      });
    }
  }
  items.push({
    kind: 'text',
    role: 'axis',
    x: (both ? left + wide / 2 : right - 8) * u,
    y: ride - place.down - 13 * u,
    text: ruler.unitName,
    size: 10,
    anchor: both ? 'middle' : 'end',
  });
  return items;
};
