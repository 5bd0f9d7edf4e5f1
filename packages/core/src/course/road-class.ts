import type { Side } from '../finding/place.ts';
import { xTimesK1 } from '../numerics/bessel.ts';
import { fourierSum } from '../numerics/fourier.ts';
import { normalQuantile } from '../numerics/normal-quantile.ts';
import type { CourseShape } from '../rig/course-spec.ts';
import { fadeSamples } from './fade.ts';
import type { SampledSide } from './sampled.ts';
import { evenly, streamFor } from './scatter.ts';

type Shape = Extract<CourseShape, { readonly kind: 'road-class' }>;

/** Waves of the road [cycles/m]: the band of the standard. */
const SLOWEST_WAVE = 0.011;
const QUICKEST_WAVE = 2.83;
/** Where the roughness is given [cycles/m]. */
const REFERENCE = 0.1;

/** Samples in the shortest wave: about 22. */
const STEP = 1 / 64;
/** Length after which a short road would repeat, 1024 m: it has waves enough even in its lowest octave. */
const FEWEST_SAMPLES = 2 ** 16;

export const SHORTEST_WAVE = 1 / QUICKEST_WAVE;

/**
 * Coherence of two parallel tracks, the real part and all there is of their cross spectrum ÷ spectrum, on ground that
 * is alike in every direction and whose spectrum falls with n⁻²: γ = x·K₁(x), x = 2πn·(distance between the tracks).
 *
 * The plane spectrum of such ground falls with the third power of the wave number, and γ is its cosine transform
 * across the tracks, ∫cos(ky·b)·(kx² + ky²)^(−3/2) dky ÷ ∫(kx² + ky²)^(−3/2) dky.
 *
 * @validity isotropy is a model. On paved roads, built in lanes, measured coherence was fitted better by other curves
 * @source Dodds and Robson, J. Sound Vib. 31 (1973) 175 (from memory); the integral: NIST DLMF 10.32.11 (from memory,
 * checked by quadrature)
 */
export const trackCoherence = (n: number, trackWidth: number): number =>
  xTimesK1(2 * Math.PI * n * trackWidth);

/**
 * A random road of given roughness: Gd(n) = Gd(n0)·(n/n0)⁻², 0.011 to 2.83 cycles/m, as a sum of cosines at even
 * wave numbers with random phases. Each amplitude is that of its band exactly, on both sides, so two roads of a class
 * differ in their phases alone; as a sum of thousands of waves the height is very nearly Gaussian. The phase of a
 * wave on the left differs from that on the right by a normal of variance −2·ln γ, whose mean cosine is γ.
 *
 * Roads of the same seed begin alike if their lengths lie between the same two of 1024, 2048, 4096 m …
 *
 * @source ISO 8608 for the spectrum; the sum of cosines: Shinozuka and Jan, J. Sound Vib. 25 (1972) 111 (from memory)
 */
export function classRoad(shape: Shape): Readonly<Record<Side, SampledSide>> {
  const pieces = Math.max(1, Math.round(shape.length / STEP));
  let count = FEWEST_SAMPLES;
  while (count < pieces) count *= 2;
  const waves = drawWaves(shape, count * STEP);

  const left = new Float64Array(2 * (pieces + 1));
  const right = new Float64Array(2 * (pieces + 1));
  for (const derivative of [0, 1] as const) {
    const { re, im } = heightsOf(waves, count, derivative);
    for (let i = 0; i <= pieces; i += 1) {
      left[2 * i + derivative] = re[i % count];
      right[2 * i + derivative] = im[i % count];
    }
  }
  const end = pieces * STEP;
  const breaks = [0, Math.min(shape.fadeIn, end), end];
  const [first, second] = shape.mirrored ? [right, left] : [left, right];
  return {
    left: { origin: 0, step: STEP, samples: fadeSamples(first, STEP, shape.fadeIn), breaks },
    right: { origin: 0, step: STEP, samples: fadeSamples(second, STEP, shape.fadeIn), breaks },
  };
}

/** Waves at k/period, from the first on: amplitude and phase on either side. */
interface RoadWaves {
  readonly first: number;
  readonly perMetre: number;
  readonly amplitude: Float64Array;
  readonly leftPhase: Float64Array;
  readonly rightPhase: Float64Array;
}

function drawWaves({ roughness, trackWidth, seed }: Shape, period: number): RoadWaves {
  const perMetre = 1 / period;
  const first = Math.round(SLOWEST_WAVE * period);
  const count = Math.round(QUICKEST_WAVE * period) - first + 1;
  const amplitude = new Float64Array(count);
  const leftPhase = new Float64Array(count);
  const rightPhase = new Float64Array(count);
  const stream = streamFor(seed, 'road');
  for (let j = 0; j < count; j += 1) {
    const k = first + j;
    const from = Math.max(SLOWEST_WAVE, (k - 0.5) * perMetre);
    const to = Math.min(QUICKEST_WAVE, (k + 0.5) * perMetre);
    const variance = to > from ? roughness * REFERENCE * REFERENCE * (1 / from - 1 / to) : 0;
    amplitude[j] = Math.sqrt(2 * variance);
    const alike = Math.max(1e-15, Math.min(1, trackCoherence(k * perMetre, trackWidth)));
    const common = 2 * Math.PI * evenly(stream);
    const apart = Math.sqrt(-2 * Math.log(alike)) * normalQuantile(evenly(stream));
    leftPhase[j] = common + apart / 2;
    rightPhase[j] = common - apart / 2;
  }
  return { first, perMetre, amplitude, leftPhase, rightPhase };
}

/** Heights (derivative 0) or slopes (1) of the left side as real and of the right side as imaginary parts. */
function heightsOf(
  waves: RoadWaves,
  count: number,
  derivative: 0 | 1,
): { re: Float64Array; im: Float64Array } {
  const re = new Float64Array(count);
  const im = new Float64Array(count);
  const turn = derivative * (Math.PI / 2);
  waves.amplitude.forEach((amplitude, j) => {
    const k = waves.first + j;
    const half = (amplitude / 2) * (2 * Math.PI * k * waves.perMetre) ** derivative;
    const leftRe = half * Math.cos(waves.leftPhase[j] + turn);
    const leftIm = half * Math.sin(waves.leftPhase[j] + turn);
    const rightRe = half * Math.cos(waves.rightPhase[j] + turn);
    const rightIm = half * Math.sin(waves.rightPhase[j] + turn);
    // A real height has a wave and its conjugate; the right side is turned by i to be told apart afterwards.
    re[k] = leftRe - rightIm;
    im[k] = leftIm + rightRe;
    re[count - k] = leftRe + rightIm;
    im[count - k] = rightRe - leftIm;
  });
  fourierSum(re, im);
  return { re, im };
}
