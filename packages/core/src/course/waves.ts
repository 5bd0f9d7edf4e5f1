import type { Side } from '../finding/place.ts';
import type { Wave } from '../rig/course-spec.ts';
import { fadeSamples } from './fade.ts';

/** Samples worked out at once: they stay near the processor, and the turning pointers are set anew for each lot. */
const LOT = 1024;

/**
 * A road as a sum of sines: g(s)·Σ [common·sin(2πns + commonPhase) + own·sin(2πns + phase of the side)], with g as in
 * `fade.ts`, at even distances from zero. All parts of a wave turn alike, on both sides, so each wave is one pointer
 * that is turned by 2πn·step from sample to sample, instead of four sines.
 *
 * @returns height and slope of each side, interleaved, `pieces + 1` of each
 */
export function sampleWaves(
  shape: { readonly waves: readonly Wave[]; readonly fadeIn: number; readonly length: number },
  pieces: number,
): Readonly<Record<Side, Float64Array>> {
  const step = shape.length / pieces;
  const left = new Float64Array(2 * (pieces + 1));
  const right = new Float64Array(2 * (pieces + 1));
  for (let first = 0; first <= pieces; first += LOT) {
    const last = Math.min(pieces + 1, first + LOT);
    for (const wave of shape.waves) addWave(wave, { left, right, first, last, step });
  }
  return { left: fadeSamples(left, step, shape.fadeIn), right: fadeSamples(right, step, shape.fadeIn) };
}

interface Lot {
  readonly left: Float64Array;
  readonly right: Float64Array;
  readonly first: number;
  readonly last: number;
  readonly step: number;
}

/** common·sin(ks + a) + own·sin(ks + b) is the imaginary part of (common·e^ia + own·e^ib)·e^iks. */
function addWave(wave: Wave, { left, right, first, last, step }: Lot): void {
  const k = 2 * Math.PI * wave.n;
  const commonRe = wave.common * Math.cos(wave.commonPhase);
  const commonIm = wave.common * Math.sin(wave.commonPhase);
  const leftRe = commonRe + wave.own * Math.cos(wave.leftPhase);
  const leftIm = commonIm + wave.own * Math.sin(wave.leftPhase);
  const rightRe = commonRe + wave.own * Math.cos(wave.rightPhase);
  const rightIm = commonIm + wave.own * Math.sin(wave.rightPhase);
  const leftSlopeRe = k * leftRe;
  const leftSlopeIm = k * leftIm;
  const rightSlopeRe = k * rightRe;
  const rightSlopeIm = k * rightIm;
  const turnRe = Math.cos(k * step);
  const turnIm = Math.sin(k * step);
  let re = Math.cos(k * first * step);
  let im = Math.sin(k * first * step);
  for (let i = 2 * first; i < 2 * last; i += 2) {
    left[i] += leftRe * im + leftIm * re;
    left[i + 1] += leftSlopeRe * re - leftSlopeIm * im;
    right[i] += rightRe * im + rightIm * re;
    right[i + 1] += rightSlopeRe * re - rightSlopeIm * im;
    const turned = re * turnRe - im * turnIm;
    im = re * turnIm + im * turnRe;
    re = turned;
  }
}
