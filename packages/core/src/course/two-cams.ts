import { heightAt, type SampledSide, slopeAt } from './sampled.ts';

/** Two cams, one behind the other, each a rounded box |x/a|^c + |z/b|^c = 1. Lengths in m. */
export interface Cams {
  /** a: about 1.05 of the free radius of a passenger tyre. */
  readonly halfLength: number;
  /** b: about as much. */
  readonly halfHeight: number;
  /** c ≥ 1: about 1.8; 2 is an ellipse. */
  readonly order: number;
  /** From cam to cam: about 0.8 of the contact length. */
  readonly spacing: number;
}

/**
 * Cams that go with a tyre, by the proportions above.
 * @validity they are those of a passenger tyre; nobody has published a set for an off-road tyre
 * @source from memory, low confidence
 */
export const usualCams = (freeRadius: number, contactLength: number): Cams => ({
  halfLength: 1.05 * freeRadius,
  halfHeight: 1.05 * freeRadius,
  order: 1.8,
  spacing: 0.8 * contactLength,
});

/** Samples of the search under a cam. */
const ALONG_CAM = 24;

/**
 * Ground as two cams in tandem feel it: each cam stands on the highest thing under it,
 *
 *     e(s) = max over x of h(s + x) + b·((1 − |x/a|^c)^{1/c} − 1),   w(s) = (e(s + ℓs/2) + e(s − ℓs/2)) ÷ 2
 *
 * A sharp edge is felt before the wheel's centre reaches it, and rounded. The slope is that of w: by the envelope theorem
 * e′(s) is the slope of the ground where the cam touches.
 *
 * @invariant flat ground is flat, far behind a step its whole height is felt, a long ramp keeps its slope
 * @validity narrow gaps are bridged, as a tyre's tread does not; where a cam jumps from one thing to the next the slope
 *   jumps too and is read as a cubic between samples. No change of load with the shape of the ground.
 * @source tandem elliptical cams: Schmeitz, thesis, TU Delft (2004); title page read, equations from memory
 */
export function twoCams(side: SampledSide, cams: Cams): SampledSide {
  const { halfLength, spacing } = cams;
  const half = spacing / 2;
  const shift = Math.max(1, Math.ceil(half / Math.min(side.step, (2 * halfLength) / ALONG_CAM)));
  const step = half / shift;
  const reach = Math.ceil(halfLength / step) * step;
  // One cam felt from `reach` before the ground to `reach` behind it, and half the spacing more on both sides.
  const length = (side.samples.length / 2 - 1) * side.step;
  const pieces = Math.ceil((length + 2 * (reach + half)) / step - 1e-9);
  const origin = side.origin - reach - half;
  const felt = oneCam(side, cams, { origin: origin - half, step, count: pieces + 1 + 2 * shift });
  const samples = new Float64Array(2 * (pieces + 1));
  for (let i = 0; i < samples.length; i += 1) samples[i] = (felt[i] + felt[i + 4 * shift]) / 2;
  return { origin, step, samples, breaks: [] };
}

/** Height and slope under one cam, interleaved, at even places. */
function oneCam(
  side: SampledSide,
  { halfLength, halfHeight, order }: Cams,
  { origin, step, count }: { origin: number; step: number; count: number },
): Float64Array {
  const lift = (x: number): number =>
    halfHeight * (Math.max(0, 1 - Math.abs(x / halfLength) ** order) ** (1 / order) - 1);
  const most = Math.floor(halfLength / step);
  const lifts = Float64Array.from({ length: 2 * most + 1 }, (_, k) => lift((k - most) * step));
  const ground = Float64Array.from({ length: count + 2 * most }, (_, k) =>
    heightAt(side, origin + (k - most) * step),
  );
  const felt = new Float64Array(2 * count);
  for (let i = 0; i < count; i += 1) {
    let best = most;
    for (let k = 0; k <= 2 * most; k += 1)
      if (ground[i + k] + lifts[k] > ground[i + best] + lifts[best]) best = k;
    const place = origin + i * step;
    const x = highest(
      (at) => heightAt(side, place + at) + lift(at),
      Math.max(-halfLength, (best - most - 1) * step),
      Math.min(halfLength, (best - most + 1) * step),
    );
    felt[2 * i] = heightAt(side, place + x) + lift(x);
    felt[2 * i + 1] = slopeAt(side, place + x);
  }
  return felt;
}

const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** Where f is highest between two places around its best sample: golden section, to 1e-5 of the interval: the height is off by the square of that. */
function highest(f: (x: number) => number, from: number, to: number): number {
  let [low, high] = [from, to];
  let [x1, x2] = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)];
  let [f1, f2] = [f(x1), f(x2)];
  for (let k = 0; k < 24; k += 1) {
    if (f1 < f2) {
      low = x1;
      [x1, f1] = [x2, f2];
      x2 = low + GOLDEN * (high - low);
      f2 = f(x2);
    } else {
      high = x2;
      [x2, f2] = [x1, f1];
      x1 = high - GOLDEN * (high - low);
      f1 = f(x1);
    }
  }
  return (low + high) / 2;
}
