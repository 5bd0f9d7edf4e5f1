import type { Verdict } from '@lastinch/core';
import { scaleLinear } from 'd3-scale';
import { areaItems, areaWords, type CurveArea, pieceTo } from './curve-area.ts';
import { legendItems, toneOf } from './curve-legend.ts';
import { decimate, rangeOf, type Samples } from './decimate.ts';
import type { Role } from './role.ts';
import type { Item, Scene, TextItem } from './scene.ts';
import { fitText, textWidth } from './text-width.ts';

export interface CurveSeries extends Samples {
  readonly name: string;
  /** Tone and dash; by default the first, second and third in turn. */
  readonly role?: Role;
  /** Measured points are marked with a ring each. */
  readonly points?: boolean;
  /** Stands at the curve and before its name: more curves than tones can be told apart by it. */
  readonly letter?: string;
  /** As a mark before its name. */
  readonly verdict?: Verdict;
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
  readonly areas?: readonly CurveArea[];
  /** The axis ends here; what goes higher is cut off. */
  readonly most?: number;
  /** Size of the chart [px]. */
  readonly width: number;
  readonly height?: number;
  /** Axis begins at zero even where no value does. */
  readonly zero?: boolean;
}

const TICK = 10.5;
const LABEL = 11.5;
const SPACE = { top: 8, right: 14, tick: 5 } as const;

/**
 * A line chart: force curves, shock tables, histories. Long series are thinned to their extremes per pixel, so that
 * a peak is where it was. Series are told apart by dash and name as well as by tone.
 */
export const curveScene = (options: CurveOptions): Scene => {
  const { bands = [], areas = [], width, most = Number.POSITIVE_INFINITY } = options;
  const series = options.most === undefined ? options.series : options.series.map((one) => cutAt(one, most));
  const height = options.height ?? Math.round(Math.max(200, Math.min(340, width * 0.5)));
  const legend = legendItems(series, width, height);
  const bandEnds = (axis: 'x' | 'y'): number[] =>
    bands.filter((band) => band.axis === axis).flatMap((band) => [band.from, band.to]);
  const xs = rangeOf([...series.map(({ x }) => x), ...areas.map(({ x }) => x), bandEnds('x')]) ?? {
    low: 0,
    high: 1,
  };
  const ys = rangeOf([
    ...series.flatMap(({ y, spread }) => (spread === undefined ? [y] : [y, spread.low, spread.high])),
    bandEnds('y'),
    ...areas.flatMap(({ low, high }) => [low, high].map((edge) => edge.filter((value) => value <= most))),
    options.most === undefined ? [] : [most],
    options.zero === false ? [] : [0],
  ]) ?? { low: 0, high: 1 };
  const bottom = TICK + LABEL + 16;
  const top = height - legend.height - SPACE.top;
  const yScale = scaleLinear(open(ys), [bottom, top]);
  if (options.most === undefined) yScale.nice(Math.max(2, Math.floor((top - bottom) / 42)));
  const yTicks = yScale.ticks(Math.max(2, Math.floor((top - bottom) / 42)));
  const yText = yScale.tickFormat(yTicks.length);
  const left = LABEL + 12 + Math.max(...yTicks.map((tick) => textWidth(yText(tick), TICK))) + SPACE.tick + 3;
  const right = width - SPACE.right;
  const xScale = scaleLinear(open(xs), [left, right]);
  const xTicks = xScale.ticks(Math.max(2, Math.floor((right - left) / 72)));
  const xText = xScale.tickFormat(xTicks.length);

  const items: Item[] = [...legend.items];
  const plot = { left, right, bottom, top };
  for (const area of areas) items.push(...areaItems(area, { x: xScale, y: yScale }, most));
  for (const band of bands) items.push(...bandItems(band, xScale, yScale, plot));
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
    const role = toneOf(one, k);
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
    const letter = letterAt(one, k, xScale, yScale);
    if (letter !== null) items.push({ ...letter, role });
  });
  for (const area of areas) items.push(...areaWords(area, { x: xScale, y: yScale }, plot));
  return { bounds: { left: 0, right: width, bottom: 0, top: height }, items, layoutWidth: width };
};

/** A curve as far as it stays under a value; with a range about it, as much of both as does. */
const cutAt = (series: CurveSeries, most: number): CurveSeries => {
  const { x, y, spread } = series;
  if (spread === undefined) {
    const piece = pieceTo({ x, y }, most);
    return { ...series, x: piece.map(([at]) => at), y: piece.map(([, value]) => value) };
  }
  const under = (values: ArrayLike<number>): readonly number[] =>
    Array.from(values, (value) => (value > most ? Number.NaN : value));
  return { ...series, y: under(y), spread: { low: under(spread.low), high: under(spread.high) } };
};

/** The letter of a curve beside it, each a little further back than the one before, so that they keep apart. */
const letterAt = (
  { letter, x, y }: CurveSeries,
  k: number,
  xScale: Scale,
  yScale: Scale,
): TextItem | null => {
  if (letter === undefined || x.length < 2) return null;
  const wanted = x[0]! + (x[x.length - 1]! - x[0]!) * Math.max(0.4, 0.94 - 0.14 * k);
  let i = 1;
  while (i < x.length - 1 && x[i]! < wanted) i += 1;
  const share = (wanted - x[i - 1]!) / (x[i]! - x[i - 1]! || 1);
  return {
    kind: 'text',
    role: 'figure',
    x: xScale(wanted) - 7,
    y: yScale(y[i - 1]! + (y[i]! - y[i - 1]!) * share) + 6,
    text: letter,
    size: 12.5,
    anchor: 'middle',
    bold: true,
    rimmed: true,
  };
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
