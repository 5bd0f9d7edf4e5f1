import { bend, cosineRise, type Stretch, straight } from './stretch.ts';

/**
 * A ramp that throws, a deck, and a slope to land on. The ramp is a parabola from level to the slope 2·height/length,
 * then rounded to level over the lip, its highest point; the deck runs in half a cosine to the height of the landing,
 * which goes down straight, rounded at both ends.
 *
 * @source common practice, no source; the slopes follow from the heights
 */
export function rampLanding(shape: {
  readonly height: number;
  readonly length: number;
  readonly lip: number;
  readonly deck: number;
  readonly landingHeight: number;
  readonly landingLength: number;
}): readonly Stretch[] {
  const { height, length, lip, deck, landingHeight, landingLength } = shape;
  const up = (2 * height) / length;
  const down = landingHeight / (landingLength - lip);
  return [
    bend(length - lip, 0, up),
    bend(lip, up, 0),
    cosineRise(deck, landingHeight - height),
    ...(landingHeight > 0
      ? [bend(lip, 0, -down), straight(landingLength - 2 * lip, -down), bend(lip, -down, 0)]
      : []),
  ];
}
