/** The four corners of a rig, in the order used by every array and file: front before rear, left before right. */
export const CORNERS = ['frontLeft', 'frontRight', 'rearLeft', 'rearRight'] as const;
export type Corner = (typeof CORNERS)[number];

export const ENDS = ['front', 'rear'] as const;
export type End = (typeof ENDS)[number];

export const SIDES = ['left', 'right'] as const;
export type Side = (typeof SIDES)[number];

/** What a finding is about: one corner, one end, or the whole rig. */
export type Place = Corner | End | 'rig';

export const endOf = (corner: Corner): End => (corner.startsWith('front') ? 'front' : 'rear');
export const sideOf = (corner: Corner): Side => (corner.endsWith('Left') ? 'left' : 'right');
export const cornerAt = (end: End, side: Side): Corner =>
  `${end}${side === 'left' ? 'Left' : 'Right'}` as Corner;
