import type { Samples } from './decimate.ts';
import type { Role } from './role.ts';
import type { Item } from './scene.ts';
import { textWidth } from './text-width.ts';

/** What lies between two curves over the same x, for example all force curves that will do. */
export interface CurveArea {
  readonly x: readonly number[];
  readonly low: readonly number[];
  readonly high: readonly number[];
  readonly role: Role;
  /** Words over, in and under it, each where there is the most room; left out where there is none. */
  readonly words?: { readonly above?: string; readonly inside?: string; readonly below?: string };
}

interface Plot {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}
type Scale = (value: number) => number;
interface Scales {
  readonly x: Scale;
  readonly y: Scale;
}

const WORD = 12;
const PLACES = 24;

/** The area itself, to be drawn under the curves; what lies above `most` is cut off. */
export const areaItems = (area: CurveArea, scales: Scales, most: number): readonly Item[] => {
  const edge = (y: readonly number[]): number[][] =>
    cutOff(area.x, y, most).map(([x, v]) => [scales.x(x), scales.y(v)]);
  const points = [...edge(area.low), ...edge(area.high).reverse()].flat();
  return points.length < 6 ? [] : [{ kind: 'polygon', role: area.role, points, name: 'area' }];
};

/** A curve that runs along a value where it would be above it. */
const cutOff = (
  x: readonly number[],
  y: readonly number[],
  most: number,
): readonly (readonly [number, number])[] =>
  x.flatMap((at, k): readonly (readonly [number, number])[] => {
    const point = [at, Math.min(y[k]!, most)] as const;
    const isCrossed = k > 0 && y[k - 1]! > most !== y[k]! > most;
    if (!isCrossed) return [point];
    const share = (most - y[k - 1]!) / (y[k]! - y[k - 1]!);
    return [[x[k - 1]! + (at - x[k - 1]!) * share, most], point];
  });

/** Its words, to be drawn over the curves. */
export const areaWords = (area: CurveArea, scales: Scales, plot: Plot): readonly Item[] => {
  const at = (y: readonly number[], pixel: number): number | null => {
    const xs = area.x.map(scales.x);
    const k = xs.findIndex((x) => x >= pixel);
    if (k < 1) return null;
    const share = (pixel - xs[k - 1]!) / (xs[k]! - xs[k - 1]! || 1);
    return Math.min(plot.top, scales.y(y[k - 1]! + (y[k]! - y[k - 1]!) * share));
  };
  const spans = {
    above: (x: number) => [at(area.high, x), plot.top],
    inside: (x: number) => [at(area.low, x), at(area.high, x)],
    below: (x: number) => [plot.bottom, at(area.low, x)],
  } as const;
  const onLowEdge = (text: string): readonly Item[] => {
    const x = scales.x(area.x[area.x.length - 1]!) - 6;
    const edge = at(area.low, x - textWidth(text, WORD, true));
    const end = at(area.low, x);
    if (edge === null || end === null) return [];
    const y = Math.max(edge, end) + WORD;
    return [
      { kind: 'text', role: 'figure', x, y, text, size: WORD, anchor: 'end', bold: true, rimmed: true },
    ];
  };
  const word = (where: keyof typeof spans, text: string): readonly Item[] => {
    const half = textWidth(text, WORD, true) / 2;
    let best: { readonly room: number; readonly x: number; readonly y: number } | null = null;
    for (let k = 0; k <= PLACES; k += 1) {
      const x = plot.left + half + 6 + ((plot.right - plot.left - 2 * half - 12) * k) / PLACES;
      const found = [x - half, x, x + half].map(spans[where]);
      if (found.some(([low, high]) => low === null || high === null)) continue;
      const low = Math.max(...found.map(([value]) => value!));
      const high = Math.min(...found.map(([, value]) => value!));
      if (high - low > (best?.room ?? WORD * 1.25)) best = { room: high - low, x, y: (low + high) / 2 };
    }
    if (best === null) return [];
    const { x, y } = best;
    return [
      { kind: 'text', role: 'figure', x, y, text, size: WORD, anchor: 'middle', bold: true, rimmed: true },
    ];
  };
  const { above, inside, below } = area.words ?? {};
  const under = below === undefined ? [] : word('below', below);
  return [
    ...(above === undefined ? [] : word('above', above)),
    ...(inside === undefined ? [] : word('inside', inside)),
    ...under,
    // Too flat under it for words: they stand on its edge and point down.
    ...(below === undefined || under.length > 0 ? [] : onLowEdge(`↓ ${below}`)),
  ];
};

/** The beginning of a curve up to where it first goes above a value. */
export const pieceTo = ({ x, y }: Samples, most: number): readonly (readonly [number, number])[] => {
  const points: [number, number][] = [];
  for (let k = 0; k < x.length; k += 1) {
    if (y[k]! > most) {
      if (k > 0 && y[k - 1]! < most) {
        const share = (most - y[k - 1]!) / (y[k]! - y[k - 1]!);
        points.push([x[k - 1]! + (x[k]! - x[k - 1]!) * share, most]);
      }
      break;
    }
    points.push([x[k]!, y[k]!]);
  }
  return points;
};
