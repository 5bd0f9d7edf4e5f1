import type { Side } from '../finding/place.ts';
import type { Wave } from '../rig/course-spec.ts';
import type { HeightAndSlope } from './sampled.ts';

/**
 * A road as a sum of sines: g(s)·Σ [common·sin(2πns + commonPhase) + own·sin(2πns + phase of the side)].
 * g = c³(10 − 15c + 6c²), c = s/fadeIn, lets it rise from flat without a step in height, slope or curvature.
 */
export function waveSum(waves: readonly Wave[], fadeIn: number, side: Side): HeightAndSlope {
  return (s) => {
    if (s <= 0) return { height: 0, slope: 0 };
    let height = 0;
    let slope = 0;
    for (const wave of waves) {
      const k = 2 * Math.PI * wave.n;
      const common = k * s + wave.commonPhase;
      const own = k * s + (side === 'left' ? wave.leftPhase : wave.rightPhase);
      height += wave.common * Math.sin(common) + wave.own * Math.sin(own);
      slope += k * (wave.common * Math.cos(common) + wave.own * Math.cos(own));
    }
    const c = fadeIn > 0 ? Math.min(1, s / fadeIn) : 1;
    const gain = c * c * c * (10 + c * (6 * c - 15));
    const gainSlope = c < 1 ? (30 * c * c * (1 - c) * (1 - c)) / fadeIn : 0;
    return { height: gain * height, slope: gain * slope + gainSlope * height };
  };
}
