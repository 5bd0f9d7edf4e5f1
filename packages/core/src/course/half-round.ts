import { type SampledSide, sampleSide } from './sampled.ts';

/** A round thing of the given height and length on the ground, half a log by default, as a rigid wheel rolls over it. */
export interface HalfRound {
  readonly height: number;
  /** Along the ground [m]; at least twice the height, where it is half a cylinder. */
  readonly length: number;
  /** Of the wheel that rolls over it [m]. */
  readonly wheelRadius: number;
}

const PIECES = 128;

/** Half the distance over which the wheel touches it, and not the ground [m]. */
export function reach({ height, length, wheelRadius }: HalfRound): number {
  const { radius, sunk } = circleOf(height, length);
  return Math.sqrt((radius + wheelRadius) ** 2 - (sunk + wheelRadius) ** 2);
}

/** Radius of the circle whose segment has this height and chord, and how deep its centre lies below the ground. */
function circleOf(height: number, length: number): { radius: number; sunk: number } {
  const radius = (length * length) / (8 * height) + height / 2;
  return { radius, sunk: radius - height };
}

/**
 * Lowest path of the wheel's centre above that on the flat: √((R + r)² − u²) − d − r for |u| < √((R + r)² − (d + r)²);
 * R and d are radius and depth of the segment's circle, r the wheel's radius, u is counted from the middle.
 * At both ends the slope jumps, as a rigid wheel does when it meets the edge.
 *
 * @validity a wheel that does not give; a soft tyre rounds more
 * @source plane geometry
 */
export function sampleHalfRound(shape: HalfRound, start: number): SampledSide {
  const { radius, sunk } = circleOf(shape.height, shape.length);
  const touching = reach(shape);
  const arm = radius + shape.wheelRadius;
  const middle = start + touching;
  return sampleSide(
    (s) => {
      const u = Math.max(-touching, Math.min(touching, s - middle));
      const up = Math.sqrt(arm * arm - u * u);
      // The first and the last sample lie on the ground to the last digit, with the slope that begins and ends there.
      const touches = Math.abs(u) < touching * (1 - 1e-12);
      return { height: touches ? up - sunk - shape.wheelRadius : 0, slope: -u / up };
    },
    { from: start, to: start + 2 * touching, pieces: PIECES, breaks: [start, start + 2 * touching] },
  );
}
