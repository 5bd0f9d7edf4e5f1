import { headOf, MARGIN, PAD, type PanelColumn, type PanelPlace } from './column-head.ts';
import { columnLabels, type Gutter } from './column-labels.ts';
import { nearContacts } from './column-parts.ts';
import { marksBetween, markText } from './ruler.ts';
import type { Item } from './scene.ts';

/** Thickness of the metal block above a column [px]. */
export const METAL = 13;
const RULER_WIDTH = 32;
const SPINE = 28;
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
