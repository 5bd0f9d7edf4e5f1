import { scaleLinear } from 'd3-scale';
import type { Role } from './role.ts';
import type { Item, Scene } from './scene.ts';
import { fitText, textWidth } from './text-width.ts';

/** What is known of one value: its middle and its 95 % interval. */
export interface ScatterSpread {
  readonly low: number;
  readonly middle: number;
  readonly high: number;
}

export interface ScatterPoint {
  /** A page finds its mark again by it. */
  readonly name: string;
  /** Stands beside the mark: `A`. */
  readonly letter: string;
  readonly x: ScatterSpread;
  readonly y: ScatterSpread;
  /** A round mark for who stands on the front, a square one for those that are there to be compared with. */
  readonly kind: 'member' | 'other';
  readonly isChosen: boolean;
  /** Outside of what is asked for: smaller, without intervals. */
  readonly isFaint: boolean;
}

export interface ScatterOptions {
  readonly points: readonly ScatterPoint[];
  /** With the unit, for example `lift, in`: the values are given in it. */
  readonly xLabel: string;
  readonly yLabel: string;
  /** Size of the chart [px]. */
  readonly width: number;
  readonly height?: number;
}

/** Where a mark stands in the picture [px, from the lower left corner]. */
export interface ScatterPlace {
  readonly name: string;
  readonly x: number;
  readonly y: number;
}

const TICK = 10.5;
const LABEL = 11.5;
const LETTER = 12.5;
const MARK = 5;
const MARGIN = { top: 14, right: 20, tick: 5 } as const;
/** Room around the values, as a share of their range. */
const AIR = 0.06;

interface Layout {
  readonly width: number;
  readonly height: number;
  readonly plot: Readonly<Record<'left' | 'right' | 'bottom' | 'top', number>>;
  readonly x: ReturnType<typeof scaleLinear<number, number>>;
  readonly y: ReturnType<typeof scaleLinear<number, number>>;
}

/**
 * Candidates by two of the things that are wanted, with a bar over the 95 % interval of each, and a letter that keeps
 * clear of marks and other letters. Both axes are such that the lower left is the better corner, or say so.
 */
export const scatterScene = (options: ScatterOptions): Scene => {
  const layout = layoutOf(options);
  const { width, height } = layout;
  const items: Item[] = axisItems(options, layout);
  // The chosen one over the others, the faint ones under them.
  const order = [...options.points].sort((a, b) => rank(a) - rank(b));
  for (const point of order) if (!point.isFaint) items.push(...barItems(point, layout));
  for (const point of order) items.push(...markItems(point, layout));
  items.push(...letterItems(order, layout));
  return { bounds: { left: 0, right: width, bottom: 0, top: height }, items, layoutWidth: width };
};

/** Where the marks of such a scene stand, to find the one under a finger. */
export const scatterPlaces = (options: ScatterOptions): readonly ScatterPlace[] => {
  const { x, y } = layoutOf(options);
  return options.points.map((point) => ({ name: point.name, x: x(point.x.middle), y: y(point.y.middle) }));
};

const rank = ({ isChosen, isFaint, kind }: ScatterPoint): number =>
  (isChosen ? 4 : 0) + (isFaint ? 0 : 2) + (kind === 'member' ? 1 : 0);

const roleOf = ({ isChosen, kind }: ScatterPoint): Role =>
  isChosen ? 'second' : kind === 'member' ? 'first' : 'note';

function layoutOf({ points, width, height: asked }: ScatterOptions): Layout {
  const height = asked ?? Math.round(Math.max(240, Math.min(400, width * 0.62)));
  const bottom = TICK + LABEL + 18;
  const top = height - MARGIN.top;
  const y = scaleLinear(reach(points.map((point) => [point.y, point.isFaint])), [bottom, top]);
  const ticks = y.ticks(Math.max(2, Math.floor((top - bottom) / 42)));
  const text = y.tickFormat(ticks.length);
  const left =
    LABEL + 12 + Math.max(0, ...ticks.map((tick) => textWidth(text(tick), TICK))) + MARGIN.tick + 3;
  const right = width - MARGIN.right;
  const x = scaleLinear(reach(points.map((point) => [point.x, point.isFaint])), [left, right]);
  return { width, height, plot: { left, right, bottom, top }, x, y };
}

/** All middles, and the intervals of those that show theirs. */
function reach(spreads: readonly (readonly [ScatterSpread, boolean])[]): [number, number] {
  const values = spreads.flatMap(([{ low, middle, high }, isFaint]) =>
    isFaint ? [middle] : [low, middle, high],
  );
  const low = Math.min(...values);
  const high = Math.max(...values);
  if (!(high > low)) return Number.isFinite(low) ? [low - 1, low + 1] : [0, 1];
  const air = (high - low) * AIR;
  return [low - air, high + air];
}

function axisItems({ xLabel, yLabel }: ScatterOptions, { plot, x, y, width }: Layout): Item[] {
  const { left, right, bottom, top } = plot;
  const items: Item[] = [];
  const yTicks = y.ticks(Math.max(2, Math.floor((top - bottom) / 42)));
  const yText = y.tickFormat(yTicks.length);
  for (const tick of yTicks)
    items.push(
      { kind: 'line', role: 'grid', x1: left, y1: y(tick), x2: right, y2: y(tick) },
      word('axis', left - MARGIN.tick - 2, y(tick), yText(tick), TICK, 'end'),
    );
  const xTicks = x.ticks(Math.max(2, Math.floor((right - left) / 72)));
  const xText = x.tickFormat(xTicks.length);
  for (const tick of xTicks) {
    const text = xText(tick);
    const at = Math.min(x(tick), width - 2 - textWidth(text, TICK) / 2);
    items.push(
      { kind: 'line', role: 'grid', x1: x(tick), y1: bottom, x2: x(tick), y2: top },
      word('axis', at, bottom - MARGIN.tick - TICK * 0.75, text, TICK, 'middle'),
    );
  }
  items.push(
    { kind: 'line', role: 'axis', x1: left, y1: bottom, x2: right, y2: bottom },
    { kind: 'line', role: 'axis', x1: left, y1: bottom, x2: left, y2: top },
    word('note', right, LABEL * 0.7, fitText(xLabel, right - left, LABEL), LABEL, 'end'),
    {
      ...word(
        'note',
        LABEL * 0.75,
        (bottom + top) / 2,
        fitText(yLabel, top - bottom, LABEL),
        LABEL,
        'middle',
      ),
      upright: true,
    },
  );
  return items;
}

const word = (
  role: Role,
  x: number,
  y: number,
  text: string,
  size: number,
  anchor: 'start' | 'middle' | 'end',
): Item & { readonly kind: 'text' } => ({ kind: 'text', role, x, y, text, size, anchor });

/** A cross of the two intervals; one that is no longer than its mark is left out. */
function barItems(point: ScatterPoint, { x, y }: Layout): Item[] {
  const role = roleOf(point);
  const weight = point.isChosen ? 'plain' : 'faint';
  const [atX, atY] = [x(point.x.middle), y(point.y.middle)];
  const ends = { x: [x(point.x.low), x(point.x.high)], y: [y(point.y.low), y(point.y.high)] } as const;
  const bar = (x1: number, y1: number, x2: number, y2: number): Item => ({
    kind: 'polyline',
    role,
    weight,
    points: [x1, y1, x2, y2],
  });
  return [
    ...(ends.x[1] - ends.x[0] > 2 * MARK ? [bar(ends.x[0], atY, ends.x[1], atY)] : []),
    ...(ends.y[1] - ends.y[0] > 2 * MARK ? [bar(atX, ends.y[0], atX, ends.y[1])] : []),
  ];
}

function markItems(point: ScatterPoint, { x, y }: Layout): Item[] {
  const { kind, isChosen, isFaint, name } = point;
  const role = roleOf(point);
  const [atX, atY] = [x(point.x.middle), y(point.y.middle)];
  const radius = isFaint ? MARK - 2 : MARK;
  const weight = isFaint ? ('faint' as const) : isChosen ? ('strong' as const) : ('plain' as const);
  const paper: Item = { kind: 'circle', role: 'paper', x: atX, y: atY, radius };
  const mark: Item =
    kind === 'member'
      ? { kind: 'circle', role, weight, x: atX, y: atY, radius, name }
      : {
          kind: 'rect',
          role,
          weight,
          x: atX - radius,
          y: atY - radius,
          width: 2 * radius,
          height: 2 * radius,
          name,
        };
  // A ring around the chosen one: a shape, not a colour only.
  const ring: Item[] = isChosen ? [{ kind: 'circle', role, x: atX, y: atY, radius: radius + 4 }] : [];
  return [paper, mark, ...ring];
}

/** Letters beside their marks, the nearest free place first. Faint marks have none, unless they are chosen. */
function letterItems(points: readonly ScatterPoint[], { plot, x, y }: Layout): Item[] {
  const marks = points.map((point) => ({
    x: x(point.x.middle),
    y: y(point.y.middle),
    half: MARK + 2,
    tall: MARK + 2,
  }));
  const taken = [...marks];
  const items: Item[] = [];
  // The chosen one first, so that it has the best place.
  for (const point of [...points].reverse()) {
    if (point.isFaint && !point.isChosen) continue;
    const [atX, atY] = [x(point.x.middle), y(point.y.middle)];
    const half = textWidth(point.letter, LETTER, true) / 2 + 1;
    const tall = LETTER / 2;
    const place = PLACES.map(({ far, turn }) => ({
      x: atX + (MARK + half + far) * Math.cos(turn),
      y: atY + (MARK + tall + far) * Math.sin(turn),
      half,
      tall,
      far,
    })).find(
      (free) =>
        free.x - half >= plot.left &&
        free.x + half <= plot.right + MARGIN.right &&
        free.y - tall >= plot.bottom &&
        free.y + tall <= plot.top + MARGIN.top &&
        taken.every(
          (other) =>
            Math.abs(other.x - free.x) >= other.half + half ||
            Math.abs(other.y - free.y) >= other.tall + tall,
        ),
    );
    if (place === undefined) continue;
    taken.push(place);
    if (place.far > FAR[1])
      items.push({ kind: 'line', role: 'leader', x1: atX, y1: atY, x2: place.x, y2: place.y });
    items.push({
      ...word('figure', place.x, place.y, point.letter, LETTER, 'middle'),
      bold: true,
      rimmed: true,
    });
  }
  return items;
}

const FAR = [3, 8, 16, 26, 38];
/** Right of it and above first, then around, then further off. */
const PLACES = FAR.flatMap((far) =>
  [1, 3, 7, 5, 0, 2, 4, 6].map((eighth) => ({ far, turn: (eighth * Math.PI) / 4 })),
);
