import type { Place } from '../finding/place.ts';

/** Where something is, at the head of a sentence. */
export const PLACE_NAMES: Readonly<Record<Place, string>> = {
  frontLeft: 'Front left',
  frontRight: 'Front right',
  rearLeft: 'Rear left',
  rearRight: 'Rear right',
  front: 'Front',
  rear: 'Rear',
  rig: 'Whole rig',
};
