/**
 * Where things stand in the solver's typed arrays: the one table of offsets.
 *
 * State: seven coordinates, their seven speeds, then two running sums of the energy books.
 * Coordinates are about static ride height; heave up, pitch nose down, roll left side up.
 */
export const COORDINATES = 7;
export const HEAVE = 0;
export const PITCH = 1;
export const ROLL = 2;
/** Axle heave of the front; its roll follows, then the rear pair. */
export const AXLE = 3;
export const MOTION = 2 * COORDINATES;
/** Work done on the tyres by the ground, and energy taken out by the elements [J]. */
export const GROUND_WORK = MOTION;
export const DISSIPATED = MOTION + 1;
export const STATE = MOTION + 2;

/** Switches of one corner. A switch that is on means: this contact carries force. */
export const SWITCHES = 5;
export const STOP = 0;
export const METAL = 1;
export const COIL = 2;
export const DROOP = 3;
export const TYRE = 4;
