import { scaleLinear } from 'd3-scale';
import { decimate, rangeOf, type Samples } from './decimate.ts';
import type { Role } from './role.ts';
import type { Item, Scene } from './scene.ts';
import { fitText, textWidth } from './text-width.ts';

export interface CurveSeries extends Samples {
  readonly name: string;
  /** Tone and dash; by default the first, second and third in turn. */
  readonly role?: Role;
  /** Measured points are marked with a ring each. */
  readonly points?: boolean;
  /** Range of y at each x, as long as x; drawn as two faint lines of the same kind. Not finite: nothing is known there. */
  readonly spread?: { readonly low: ArrayLike<number>; readonly high: ArrayLike<number> };
}

/** A stretch of one axis that means something, for example the usable crush, or a single value when both ends are equal. */
export interface CurveBand {
  readonly axis: 'x' | 'y';
  readonly from: number;
  readonly to: number;
  readonly role: Role;
  readonly label?: string;
}

export interface CurveOptions {
  readonly series: readonly CurveSeries[];
  /** With the unit, for example `crush, mm`: the values are given in it. */
  readonly xLabel: string;
  readonly yLabel: string;
  readonly bands?: readonly CurveBand[];
  /** Size of the chart [px]. */
  readonly width: number;
  readonly height?: number;
  /** Axis begins at zero even where no value does. */
  readonly zero?: boolean;
}

const TICK = 10.5;
const LABEL = 11.5;
const SPACE = { top: 8, right: 14, tick: 5 } as const;
const DEFAULTS: readonly Role[] = ['first', 'second', 'third'];

/**
 * A line chart: force curves, shock tables, histories. Long series are thinned to their extremes per pixel, so that
 * a peak is where it was. Series are told apart by dash and name as well as by tone.
 */
export const curveScene = (options: CurveOptions): Scene => {
  const { series, bands = [], width } = options;
  const height = options.height ?? Math.round(Math.max(200, Math.min(340, width * 0.5)));
  const legend = legendItems(series, width, height);
  const bandEnds = (axis: 'x' | 'y'): number[] =>
    bands.filter((band) => band.axis === axis).flatMap((band) => [band.from, band.to]);
  const xs = rangeOf([...series.map(({ x }) => x), bandEnds('x')]) ?? { low: 0, high: 1 };
  const ys = rangeOf([
    ...series.flatMap(({ y, spread }) => (spread === undefined ? [y] : [y, spread.low, spread.high])),
    bandEnds('y'),
    options.zero === false ? [] : [0],
  ]) ?? { low: 0, high: 1 };
  const bottom = TICK + LABEL + 16;
  const top = height - legend.height - SPACE.top;
  const yScale = scaleLinear(open(ys), [bottom, top]).nice(Math.max(2, Math.floor((top - bottom) / 42)));
  const yTicks = yScale.ticks(Math.max(2, Math.floor((top - bottom) / 42)));
  const yText = yScale.tickFormat(yTicks.length);
  const left = LABEL + 12 + Math.max(...yTicks.map((tick) => textWidth(yText(tick), TICK))) + SPACE.tick + 3;
  const right = width - SPACE.right;
  const xScale = scaleLinear(open(xs), [left, right]);
  const xTicks = xScale.ticks(Math.max(2, Math.floor((right - left) / 72)));
  const xText = xScale.tickFormat(xTicks.length);

  const items: Item[] = [...legend.items];
  for (const band of bands) items.push(...bandItems(band, xScale, yScale, { left, right, bottom, top }));
  for (const tick of yTicks) {
    const y = yScale(tick);
    items.push(
      { kind: 'line', role: tick === 0 ? 'axis' : 'grid', x1: left, y1: y, x2: right, y2: y },
      {
        kind: 'text',
        role: 'axis',
        x: left - SPACE.tick - 2,
        y,
        text: yText(tick),
        size: TICK,
        anchor: 'end',
      },
    );
  }
  for (const tick of xTicks) {
    const x = xScale(tick);
    const text = xText(tick);
    // A number at the edge of the picture moves in, so that it is not cut.
    const at = Math.min(x, width - 2 - textWidth(text, TICK) / 2);
    items.push(
      { kind: 'line', role: 'axis', x1: x, y1: bottom, x2: x, y2: bottom - SPACE.tick },
      {
        kind: 'text',
        role: 'axis',
        x: at,
        y: bottom - SPACE.tick - TICK * 0.75,
        text,
        size: TICK,
        anchor: 'middle',
      },
    );
  }
  items.push(
    { kind: 'line', role: 'axis', x1: left, y1: bottom, x2: right, y2: bottom },
    { kind: 'line', role: 'axis', x1: left, y1: bottom, x2: left, y2: top },
    {
      kind: 'text',
      role: 'note',
      x: right,
      y: LABEL * 0.7,
      text: fitText(options.xLabel, right - left, LABEL),
      size: LABEL,
      anchor: 'end',
    },
    {
      kind: 'text',
      role: 'note',
      x: LABEL * 0.75,
      y: (bottom + top) / 2,
      text: fitText(options.yLabel, top - bottom, LABEL),
      size: LABEL,
      anchor: 'middle',
      upright: true,
    },
  );
  series.forEach((one, k) => {
    const role = one.role ?? DEFAULTS[k % DEFAULTS.length]!;
    const drawn = (y: ArrayLike<number>): readonly number[][] =>
      decimate({ x: one.x, y }, xScale.domain()[0]!, xScale.domain()[1]!, right - left).map((piece) =>
        piece.map((value, at) => (at % 2 === 0 ? xScale(value) : yScale(value))),
      );
    for (const end of one.spread === undefined ? [] : [one.spread.low, one.spread.high])
      for (const points of drawn(end)) items.push({ kind: 'polyline', role, weight: 'faint', points });
    for (const points of drawn(one.y)) {
      items.push({ kind: 'polyline', role, points, name: one.name });
      if (one.points) {
        for (let at = 0; at < points.length; at += 2) {
          items.push({ kind: 'circle', role, x: points[at]!, y: points[at + 1]!, radius: 3 });
        }
      }
    }
  });
  return { bounds: { left: 0, right: width, bottom: 0, top: height }, items, layoutWidth: width };
};

/** A range with some length, also when all values are the same. */
const open = ({ low, high }: { readonly low: number; readonly high: number }): [number, number] =>
  high > low ? [low, high] : [low - (Math.abs(low) || 1) / 2, high + (Math.abs(high) || 1) / 2];

type Scale = (value: number) => number;

const bandItems = (
  band: CurveBand,
  xScale: Scale,
  yScale: Scale,
  plot: { readonly left: number; readonly right: number; readonly bottom: number; readonly top: number },
): readonly Item[] => {
  const scale = band.axis === 'x' ? xScale : yScale;
  const low = scale(Math.min(band.from, band.to));
  const high = scale(Math.max(band.from, band.to));
  const items: Item[] = [];
  const box =
    band.axis === 'x'
      ? { x: low, y: plot.bottom, width: high - low, height: plot.top - plot.bottom }
      : { x: plot.left, y: low, width: plot.right - plot.left, height: high - low };
  if (high > low) items.push({ kind: 'rect', role: band.role, weight: 'faint', ...box });
  else {
    const x2 = box.x + box.width;
    items.push({ kind: 'line', role: band.role, x1: box.x, y1: box.y, x2, y2: box.y + box.height });
  }
  if (band.label !== undefined) {
    const text = fitText(band.label, plot.right - plot.left - 8, TICK);
    const long = textWidth(text, TICK);
    // Inside the band where it is wide enough, before it where not, so that words stand on clear paper.
    const beside = high - low >= long + 8 || low - long - 4 < plot.left ? low + 4 : low - long - 4;
    const x = Math.min(band.axis === 'x' ? beside : plot.right - long - 4, plot.right - long);
    const y = band.axis === 'x' ? plot.top - TICK * 0.7 : Math.min(high + TICK * 0.7, plot.top - TICK * 0.7);
    items.push({ kind: 'text', role: band.role, x, y, text, size: TICK, anchor: 'start' });
  }
  return items;
};

/** A sample of each line with its name, in as many rows as needed, at the top. */
const legendItems = (
  series: readonly CurveSeries[],
  width: number,
  height: number,
): { readonly items: readonly Item[]; readonly height: number } => {
  const row = LABEL * 1.5;
  const items: Item[] = [];
  let x = 8;
  let rows = 1;
  series.forEach(({ name, role }, k) => {
    const text = fitText(name, width - 52, LABEL);
    const long = 30 + textWidth(text, LABEL) + 18;
    if (x > 8 && x + long > width) {
      x = 8;
      rows += 1;
    }
    const y = height - row * (rows - 0.4);
    const tone = role ?? DEFAULTS[k % DEFAULTS.length]!;
    items.push(
      { kind: 'line', role: tone, x1: x, y1: y, x2: x + 24, y2: y },
      { kind: 'text', role: 'figure', x: x + 30, y, text, size: LABEL, anchor: 'start' },
    );
    x += long;
  });
  return { items, height: series.length === 0 ? 0 : rows * row };
};
