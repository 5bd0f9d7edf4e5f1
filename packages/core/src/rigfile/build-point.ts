import { formatValue } from '../quantity/format.ts';
import type { HeightFrom, Taped, TapedPair, TapedPoint } from '../rig/linkage.ts';
import { heightOf, tapedValue } from '../rig/linkage.ts';
import { nominal, type Reading, type Sided } from '../rig/reading.ts';
import type { Gaps } from './gaps.ts';

/** A point under a rig: tape, plumb line and a floor that is not quite level. */
export const POINTED = { dimension: 'length', tool: 'under-rig-tolerance' } as const;

/** What heights and spreads of one end may rest on. */
export interface Datums {
  /** Centre of the axle tube above the floor. */
  readonly tube: Reading;
  /** Underside of the frame rail above the floor, null when it was not measured. */
  readonly rail: Reading | null;
  readonly railKey: string;
}

interface Way {
  readonly name: string;
  readonly factor: number;
  readonly from?: HeightFrom;
}

const FORE_AFT: readonly Way[] = [
  { name: 'ahead', factor: 1 },
  { name: 'behind', factor: -1 },
];
const PAIR: readonly Way[] = [
  { name: 'spread', factor: 0.5 },
  { name: 'out', factor: 1 },
];
const ALONE: readonly Way[] = [
  { name: 'left', factor: 1 },
  { name: 'right', factor: -1 },
];
const HEIGHT: readonly Way[] = [
  { name: 'aboveFloor', factor: 1, from: 'floor' },
  { name: 'aboveTube', factor: 1, from: 'tube' },
  { name: 'belowTube', factor: -1, from: 'tube' },
  { name: 'aboveRail', factor: 1, from: 'rail' },
  { name: 'belowRail', factor: -1, from: 'rail' },
];

/** The way that was typed; null when none was, or more than one, which is then a problem. */
function typedWay(gaps: Gaps, key: string, ways: readonly Way[]): (Way & { reading: Reading }) | null {
  const typed = ways.filter(({ name }) => gaps.at(`${key}.${name}`) !== undefined);
  const [first, second] = typed;
  if (!first) return null;
  if (second) {
    const path = `${key}.${second.name}`;
    gaps.problem('rig-inconsistent', path, gaps.text(path) ?? '', `either this or ${key}.${first.name}`);
  }
  return { ...first, reading: gaps.needed(`${key}.${first.name}`, POINTED) };
}

function neededWay(gaps: Gaps, key: string, ways: readonly Way[], example: string) {
  const typed = typedWay(gaps, key, ways);
  if (typed) return typed;
  const names = ways.map(({ name }) => name);
  const [name = ''] = names;
  gaps.ask(`${key}.${name}`, `one of ${names.join(', ')}: ${name}: ${example}`);
  return { ...(ways[0] as Way), reading: gaps.standIn(`${key}.${name}`, 'length') };
}

/** What a height was taped from must have a height itself. */
function datumOf(gaps: Gaps, from: HeightFrom | undefined, datums: Datums): Reading | null {
  if (from === 'tube') return datums.tube;
  if (from !== 'rail') return null;
  if (!datums.rail) gaps.ask(datums.railKey, '24 1/2 in ± 1/8, 620 mm: heights are taped from it');
  return datums.rail;
}

/** A point that stands alone: so far left of the centreline. */
export const pointAlone = (gaps: Gaps, key: string, datums: Datums): TapedPoint =>
  pointOf(gaps, key, datums, neededWay(gaps, key, ALONE, '10 1/2 in; minus is right'));

/** The left one of a pair. @param spread – what is known of its spread already, null when nothing is */
export function pointOfPair(gaps: Gaps, key: string, datums: Datums, spread: Reading | null): TapedPoint {
  const typed = typedWay(gaps, key, PAIR);
  const sideways =
    typed ??
    (spread ? { reading: spread, factor: 0.5 } : neededWay(gaps, key, PAIR, '38 in, from left to right'));
  return pointOf(gaps, key, datums, sideways);
}

function pointOf(gaps: Gaps, key: string, datums: Datums, { reading, factor }: Taped): TapedPoint {
  const ahead = neededWay(gaps, key, FORE_AFT, '3 1/2 in');
  const up = neededWay(gaps, key, HEIGHT, '16 3/4 in');
  return {
    key,
    ahead: { reading: ahead.reading, factor: ahead.factor },
    left: { reading, factor },
    up: { reading: up.reading, factor: up.factor },
    from: up.from ?? 'floor',
    datum: datumOf(gaps, up.from, datums),
  };
}

/** The right one of a pair: the mirror of the left, but for what was typed of it. */
function mirrored(gaps: Gaps, key: string, datums: Datums, other: TapedPoint): TapedPoint {
  const ahead = typedWay(gaps, key, FORE_AFT);
  const out = typedWay(gaps, key, [{ name: 'out', factor: 1 }]);
  const up = typedWay(gaps, key, HEIGHT);
  if (!ahead && !out && !up)
    return { ...other, left: { reading: other.left.reading, factor: -other.left.factor } };
  return {
    key,
    ahead: ahead ? { reading: ahead.reading, factor: ahead.factor } : other.ahead,
    left: out
      ? { reading: out.reading, factor: -1 }
      : { reading: other.left.reading, factor: -other.left.factor },
    up: up ? { reading: up.reading, factor: up.factor } : other.up,
    from: up ? (up.from ?? 'floor') : other.from,
    datum: up ? datumOf(gaps, up.from, datums) : other.datum,
  };
}

/** Both ends of what is there twice: the left one as typed, the right one its mirror unless typed. */
export function sidedPair(
  gaps: Gaps,
  key: string,
  datums: Datums,
  spread: Reading | null = null,
): Sided<TapedPair> {
  const left = {
    axle: pointOfPair(gaps, `${key}.axle`, datums, spread),
    frame: pointOfPair(gaps, `${key}.frame`, datums, null),
  };
  return {
    left,
    right: {
      axle: mirrored(gaps, `${key}.right.axle`, datums, left.axle),
      frame: mirrored(gaps, `${key}.right.frame`, datums, left.frame),
    },
  };
}

export const pairAlone = (gaps: Gaps, key: string, datums: Datums): TapedPair => ({
  axle: pointAlone(gaps, `${key}.axle`, datums),
  frame: pointAlone(gaps, `${key}.frame`, datums),
});

/** Whether all of it was typed well, so that it may be judged. */
export const isWhole = (gaps: Gaps, ...points: readonly TapedPoint[]): boolean =>
  points.every(({ ahead, left, up, datum }) =>
    [ahead.reading, left.reading, up.reading, ...(datum ? [datum] : [])].every(({ key }) =>
      gaps.readings.has(key),
    ),
  );

/** Ahead of the axle tube, left of the centreline, above the floor [m]. */
export const placeOf = (point: TapedPoint): readonly [number, number, number] => [
  tapedValue(point.ahead, nominal),
  tapedValue(point.left, nominal),
  heightOf(point, nominal),
];

export function apart(one: TapedPoint, other: TapedPoint): number {
  const a = placeOf(one);
  const b = placeOf(other);
  return Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
}

/** A length in the units in which its neighbour was typed. */
export const lengthText = (value: number, like: string): string =>
  formatValue(value, 'length', { system: /mm|cm|\dm| m\b/.test(like) ? 'metric' : 'shop' });
