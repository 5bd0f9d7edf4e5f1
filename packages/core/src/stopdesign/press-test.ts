import { isotonic } from '../numerics/isotonic.ts';

/** Readings of a press in the order they were taken: down, and back up when the way back was read too. */
export interface PressReadings {
  /** Travel of the press from wherever it was zeroed [m]. */
  readonly travel: readonly number[];
  /** What its gauge or scale said [N], its offset with it. */
  readonly force: readonly number[];
  /** The gauge: how fine it reads, and the largest it can show [N]; null when not told. */
  readonly resolution: number | null;
  readonly fullScale: number | null;
}

/** What is doubtful about a press test. */
export const PRESS_DOUBTS = [
  'few-points',
  'no-touch-read',
  'past-full-scale',
  'low-on-the-gauge',
  'no-way-back',
  'way-back-incomplete',
  'very-stiff',
  'very-soft',
] as const;
export type PressDoubt = (typeof PRESS_DOUBTS)[number];

/** A press test made into the curve of a stop. */
export interface PressCurve {
  /** From first touch, rising [m], [N]. */
  readonly crush: readonly number[];
  readonly force: readonly number[];
  /** 95 % half-width of the force: scatter about the curve and the gauge together [N]. */
  readonly tolerance: number;
  /** What the gauge showed before the stop was touched [N]. */
  readonly offset: number;
  /** Travel of the press at first touch [m], and its 95 % half-width. */
  readonly touch: number;
  readonly touchTolerance: number;
  /** Lost ÷ put in, over one press and release; null without a way back. */
  readonly hysteresis: number | null;
  /** As deep as pressed, or where one more millimetre holds less energy for its force than the last [m]. */
  readonly usableCrush: number;
  readonly doubts: readonly PressDoubt[];
}

/** Fewer readings than this after touch make no curve. */
export const LEAST_READINGS = 3;
/** Fewer than this make a doubtful one (common practice, no source). */
const ENOUGH_READINGS = 8;
/** A gauge is trusted above this share of its full scale (common practice, no source). */
const LOW_SHARE = 0.1;
/** A stop stiffer or softer than this, force at the deepest reading ÷ crush [N/m], was hardly read in these units. */
const VERY_STIFF = 2e7;
const VERY_SOFT = 5e3;
/** Points that a curve needs: more are only noise. */
const MOST_POINTS = 25;

/**
 * The monotone curve of a press test, with what it lost and how sure it is.
 *
 * The offset is what the gauge showed while travel went on and nothing rose; first touch is where the line through the
 * first rise meets it. Noise is taken out by the rising sequence nearest to the readings.
 *
 * @param readings – at least `LEAST_READINGS` above touch on the way down, else null
 * @validity a slow press: what a hit adds is not in it
 */
export function pressCurve(readings: PressReadings): PressCurve | null {
  const deepest = indexOfLargest(readings.travel);
  const down = branch(readings, 0, deepest + 1);
  const { offset, scatter, start, isTouchRead } = touchOf(down, readings.resolution ?? 0);
  const touched = { travel: down.travel.slice(start), force: down.force.slice(start).map((f) => f - offset) };
  if (touched.travel.length < LEAST_READINGS) return null;

  const touch = isTouchRead ? zeroOf(touched, down.travel[start - 1]) : touched.travel[0];
  const rising = isotonic(touched.force);
  const noise = Math.max(scatter, scatterAlong(touched));
  const gauge = (readings.resolution ?? 0) / Math.sqrt(3);
  const points = thinned(
    touched.travel.map((travel) => travel - touch),
    rising,
  );
  const deep = points.crush[points.crush.length - 1];
  const back = branch(readings, deepest, readings.travel.length);
  const backForce = [...isotonic(back.force.map((f) => f - offset).reverse())];
  const backCrush = back.travel.map((travel) => travel - touch).reverse();
  const wayBack = back.travel.length >= LEAST_READINGS;
  const stiffness = points.force[points.force.length - 1] / deep;
  const { fullScale } = readings;
  const largest = Math.max(...readings.force);

  const doubts: PressDoubt[] = [];
  if (touched.travel.length < ENOUGH_READINGS) doubts.push('few-points');
  if (!isTouchRead) doubts.push('no-touch-read');
  if (fullScale !== null && largest >= fullScale) doubts.push('past-full-scale');
  if (fullScale !== null && largest < LOW_SHARE * fullScale) doubts.push('low-on-the-gauge');
  if (!wayBack) doubts.push('no-way-back');
  else if (backCrush[0] > 0.1 * deep) doubts.push('way-back-incomplete');
  if (stiffness > VERY_STIFF) doubts.push('very-stiff');
  if (stiffness < VERY_SOFT) doubts.push('very-soft');

  return {
    ...points,
    tolerance: 2 * Math.hypot(noise, gauge),
    offset,
    touch,
    touchTolerance: (2 * Math.hypot(noise, gauge)) / Math.max(firstSlope(points), Number.MIN_VALUE),
    hysteresis: wayBack ? lossShare(points, { crush: backCrush, force: backForce }) : null,
    usableCrush: usableCrushOf(points),
    doubts,
  };
}

interface Branch {
  readonly travel: readonly number[];
  readonly force: readonly number[];
}

interface Points {
  readonly crush: readonly number[];
  readonly force: readonly number[];
}

/** A part of the readings, those at one travel averaged: a reading taken twice is one place. */
function branch({ travel, force }: PressReadings, from: number, to: number): Branch {
  const at: number[] = [];
  const sums: { force: number; count: number }[] = [];
  for (let i = from; i < to; i += 1) {
    const last = sums[sums.length - 1];
    if (last !== undefined && travel[i] === at[at.length - 1]) {
      last.force += force[i];
      last.count += 1;
    } else {
      at.push(travel[i]);
      sums.push({ force: force[i], count: 1 });
    }
  }
  return { travel: at, force: sums.map((sum) => sum.force / sum.count) };
}

/**
 * Where the readings leave the flat beginning. A reading belongs to the flat while it lies within four standard
 * deviations of those before it, or two steps of the gauge; before there are three to have a deviation, within half a
 * per cent of the whole. The deviation is that from reading to reading: about the mean a slow rise would widen its own flat.
 */
function touchOf({ force }: Branch, resolution: number) {
  const rise = Math.max(...force) - force[0];
  const isFlat = (before: readonly number[], next: number): boolean => {
    const spread = before.length < 3 ? 0.005 * rise : 4 * successive(before);
    return Math.abs(next - mean(before)) <= Math.max(spread, 2 * resolution);
  };
  let flat = 1;
  while (flat < force.length && isFlat(force.slice(0, flat), force[flat])) flat += 1;
  // Readings that rise at once have no flat: what the first shows is taken as the touch itself.
  if (flat < 2) return { offset: 0, scatter: 0, start: 0, isTouchRead: false };
  const level = force.slice(0, flat);
  return { offset: mean(level), scatter: deviation(level), start: flat, isTouchRead: true };
}

/** Travel at which the line through the first readings after touch meets zero, no earlier than the last flat one. */
function zeroOf({ travel, force }: Branch, lastFlat: number): number {
  const slope = (force[1] - force[0]) / (travel[1] - travel[0]);
  if (!(slope > 0)) return lastFlat;
  return Math.min(Math.max(travel[0] - force[0] / slope, lastFlat), travel[0] - 1e-9);
}

/** Points of the curve: from zero, strictly rising in force, no more than are needed. */
function thinned(crush: readonly number[], force: Float64Array): Points {
  const out: { crush: number[]; force: number[] } = { crush: [0], force: [0] };
  const step = Math.max(1, Math.ceil(crush.length / MOST_POINTS));
  for (let i = 0; i < crush.length; i += step) {
    const k = i + step >= crush.length ? crush.length - 1 : i;
    const last = out.force.length - 1;
    if (crush[k] > out.crush[last] && force[k] > out.force[last]) {
      out.crush.push(crush[k]);
      out.force.push(force[k]);
    }
  }
  return out;
}

/** Lost ÷ put in between the smallest and the largest crush that both ways cover. */
function lossShare(down: Points, back: Points): number {
  const from = Math.max(down.crush[0], back.crush[0]);
  const to = Math.min(down.crush[down.crush.length - 1], back.crush[back.crush.length - 1]);
  const given = area(down, from, to);
  return Math.max(0, 1 - area(back, from, to) / given);
}

/** Area under straight lines through points, between two places. */
function area({ crush, force }: Points, from: number, to: number): number {
  let sum = 0;
  for (let i = 1; i < crush.length; i += 1) {
    const [a, b] = [Math.max(crush[i - 1], from), Math.min(crush[i], to)];
    if (b <= a) continue;
    const at = (x: number) =>
      force[i - 1] + ((force[i] - force[i - 1]) * (x - crush[i - 1])) / (crush[i] - crush[i - 1]);
    sum += ((at(a) + at(b)) / 2) * (b - a);
  }
  return sum;
}

/**
 * Crush at which energy held ÷ force is greatest: beyond it more force buys less. A curve that never gets there is
 * usable as deep as it was pressed.
 * @source densification as the strain of best energy efficiency, Maiti, Gibson and Ashby 1984 (from memory)
 */
function usableCrushOf(points: Points): number {
  let best = 0;
  let at = 0;
  points.crush.forEach((crush, i) => {
    if (i === 0) return;
    const share = area(points, 0, crush) / points.force[i];
    if (share > best) [best, at] = [share, crush];
  });
  return at;
}

const firstSlope = ({ crush, force }: Points): number => force[1] / crush[1];
const mean = (values: readonly number[]): number => values.reduce((sum, v) => sum + v, 0) / values.length;
const deviation = (values: readonly number[]): number => {
  const middle = mean(values);
  return Math.sqrt(values.reduce((sum, v) => sum + (v - middle) ** 2, 0) / Math.max(1, values.length - 1));
};
/** Standard deviation from each reading to the next. @source von Neumann, Ann. Math. Stat. 12 (1941) 367 (from memory) */
const successive = (values: readonly number[]): number => {
  let sum = 0;
  for (let i = 1; i < values.length; i += 1) sum += (values[i] - values[i - 1]) ** 2;
  return Math.sqrt(sum / 2 / Math.max(1, values.length - 1));
};
/**
 * Standard deviation of readings along a smooth curve: each against the straight line between its neighbours.
 * @source Gasser, Sroka and Jennen-Steinmetz, Biometrika 73 (1986) 625 (from memory)
 */
function scatterAlong({ travel, force }: Branch): number {
  let sum = 0;
  for (let i = 1; i < travel.length - 1; i += 1) {
    const ahead = (travel[i] - travel[i - 1]) / (travel[i + 1] - travel[i - 1]);
    const off = force[i] - (1 - ahead) * force[i - 1] - ahead * force[i + 1];
    sum += (off * off) / (1 + ahead * ahead + (1 - ahead) * (1 - ahead));
  }
  return Math.sqrt(sum / Math.max(1, travel.length - 2));
}

function indexOfLargest(values: readonly number[]): number {
  return values.reduce((best, value, i) => (value > values[best] ? i : best), 0);
}
