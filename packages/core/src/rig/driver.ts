import type { Reading } from './reading.ts';

/** Who drives, and what he sits on. His mass is aboard in the corner weights already. */
export interface Driver {
  /** In his clothes, with helmet and boots [kg]. */
  readonly mass: Reading;
  /** Share of it that rests on the seat; the rest stands on his feet. */
  readonly onSeat: Reading;
  /** Front axle to his hips, backwards [m]. */
  readonly behindFrontAxle: Reading;
  /** Centre line of the rig to his hips, positive to the left [m]. */
  readonly left: Reading;
  readonly cushion: Cushion;
}

/** What the seat gives under him. Exactly one of the first three is there. */
export interface Cushion {
  /** How far it squashes when he sits down [m]. */
  readonly sag: Reading | null;
  /** Vertical rate under him [N/m]. */
  readonly rate: Reading | null;
  /** How fast he bobs on it by himself [Hz]. */
  readonly frequency: Reading | null;
  /** Share of critical damping. */
  readonly dampingRatio: Reading;
}
