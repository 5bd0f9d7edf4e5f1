import { bend, type Stretch, straight } from './stretch.ts';

interface Crest {
  readonly height: number;
  /** Of the straight flanks, up and down [1]. */
  readonly grade: number;
  /** Length of the rounded top [m]. */
  readonly top: number;
  /** Length over which it is rounded at either foot [m]. */
  readonly foot: number;
}

/** Length of one straight flank [m]; below zero when the height is gained before the roundings are done. */
export const flank = ({ height, grade, top, foot }: Crest): number => height / grade - foot / 2 - top / 4;

/**
 * A hill: foot, flank, top, flank, foot. Foot and top are parabolas, as road builders lay out vertical curves, so the
 * top has the even curvature 2·grade/top; a rig leaves the ground where speed² · 2·grade/top exceeds gravity.
 */
export function crest(shape: Crest): readonly Stretch[] {
  const { grade, top, foot } = shape;
  const length = flank(shape);
  return [
    bend(foot, 0, grade),
    straight(length, grade),
    bend(top, grade, -grade),
    straight(length, -grade),
    bend(foot, -grade, 0),
  ];
}
