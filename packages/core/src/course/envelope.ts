import type { SampledSide, Track } from './sampled.ts';
import { type Cams, twoCams } from './two-cams.ts';

/**
 * How a tyre of finite size reads the ground, as a new course that a point may follow: `point` takes it as it is,
 * `footprint` averages it over the contact length, `two-cams` lets a pair of cams roll over it. The two ends of a rig
 * may differ; each gets its own.
 */
export type Envelope =
  | { readonly kind: 'point' }
  | { readonly kind: 'footprint'; readonly length: number }
  | ({ readonly kind: 'two-cams' } & Cams);

/** The course as a tyre feels it. What it feels begins and ends earlier and later than the ground by half its reach. */
export function enveloped(track: Track, envelope: Envelope): Track {
  if (envelope.kind === 'point') return track;
  const reach =
    envelope.kind === 'footprint' ? envelope.length / 2 : envelope.halfLength + envelope.spacing / 2;
  const felt = (side: SampledSide): SampledSide =>
    envelope.kind === 'footprint' ? movingFootprint(side, envelope.length) : twoCams(side, envelope);
  const left = felt(track.left);
  const right = track.right === track.left ? left : felt(track.right);
  return { ...track, left, right, end: track.end + reach };
}

/**
 * Ground averaged over a contact length, ahead and behind alike:
 *
 *     w(s) = (1/ℓ)·∫ h from s − ℓ/2 to s + ℓ/2,   w′(s) = (h(s + ℓ/2) − h(s − ℓ/2)) ÷ ℓ
 *
 * The integral is that of the cubic pieces, exact to rounding, and so are height and slope at every new sample.
 *
 * @param length – ℓ [m] > 0
 * @invariant a wave of length λ keeps |sin(πℓ/λ) ÷ (πℓ/λ)| of its height: none of a wave as long as the foot
 * @validity pressure even along the foot; a tyre bent around a sharp edge lifts before it and sinks behind it, `two-cams`
 * @source moving average, any text on signals; as a tyre's footprint common practice in road vehicle dynamics
 */
export function movingFootprint(side: SampledSide, length: number): SampledSide {
  const half = length / 2;
  const step = half / Math.ceil(half / side.step);
  const pieces = Math.ceil((lengthOf(side) + length) / step - 1e-9);
  const origin = side.origin - half;
  const readAt = areaUnder(side);
  // A search lays out thousands of tracks: nothing is made for a sample.
  const ahead = new Float64Array(2);
  const behind = new Float64Array(2);
  const samples = new Float64Array(2 * (pieces + 1));
  for (let i = 0; i <= pieces; i += 1) {
    readAt(origin + i * step + half, ahead);
    readAt(origin + i * step - half, behind);
    samples[2 * i] = (ahead[AREA] - behind[AREA]) / length;
    samples[2 * i + 1] = (ahead[HEIGHT] - behind[HEIGHT]) / length;
  }
  const breaks = side.breaks.flatMap((at) => [at - half, at + half]).sort((a, b) => a - b);
  return { origin, step, samples, breaks };
}

const lengthOf = ({ samples, step }: SampledSide): number => (samples.length / 2 - 1) * step;

/** Places in what `areaUnder` reads. */
const AREA = 0;
const HEIGHT = 1;

/** Reads the integral of the height from the first sample to a distance, and the height there. */
function areaUnder({ samples, step, origin }: SampledSide): (distance: number, into: Float64Array) => void {
  const last = samples.length / 2 - 1;
  const before = new Float64Array(last + 1);
  for (let i = 0; i < last; i += 1) {
    const sum = samples[2 * i] + samples[2 * i + 2];
    const bend = samples[2 * i + 1] - samples[2 * i + 3];
    before[i + 1] = before[i] + step * (sum / 2 + (step * bend) / 12);
  }
  const end = samples[2 * last];
  return (distance, into) => {
    const place = (distance - origin) / step;
    if (place <= 0) {
      into[AREA] = (distance - origin) * samples[0];
      into[HEIGHT] = samples[0];
      return;
    }
    if (place >= last) {
      into[AREA] = before[last] + (place - last) * step * end;
      into[HEIGHT] = end;
      return;
    }
    const i = Math.floor(place);
    const u = place - i;
    const y0 = samples[2 * i];
    const rise = samples[2 * i + 2] - y0;
    const a = step * samples[2 * i + 1];
    const b = step * samples[2 * i + 3];
    // h = y0 + a·u + (3·rise − 2a − b)·u² + (a + b − 2·rise)·u³
    const c2 = 3 * rise - 2 * a - b;
    const c3 = a + b - 2 * rise;
    into[AREA] = before[i] + step * u * (y0 + u * (a / 2 + u * (c2 / 3 + (u * c3) / 4)));
    into[HEIGHT] = y0 + u * (a + u * (c2 + u * c3));
  };
}
