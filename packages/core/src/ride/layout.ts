/**
 * Where things stand in the solver's typed arrays: the one table of offsets.
 *
 * Coordinates are about static ride height; heave up, pitch nose down, roll left side up. The seat is the last one and
 * only there when somebody sits.
 */
export const RIG_COORDINATES = 7;
export const HEAVE = 0;
export const PITCH = 1;
export const ROLL = 2;
/** Heave of the front axle; its roll follows, then the rear pair. */
export const AXLE = 3;
export const SEAT = 7;

/**
 * First-order states. First the running sums, which feed nothing back: ∫ heave acceleration² dt, the same of the seat,
 * and the energy books. Then the inner displacement of each stop's viscous branch, only there when a stop has one.
 */
export const SUMS = 4;
export const SQUARED_ACCELERATION = 0;
export const SQUARED_SEAT = 1;
export const GROUND_WORK = 2;
export const DISSIPATED = 3;
export const INNER = 4;

/**
 * Contacts of one corner, as bits: 1 means that it carries force. The bit of a contact is
 * 1 << (CONTACTS·corner + which), corners in the house order: one byte a corner.
 */
export const CONTACTS = 8;
export const STOP = 0;
export const METAL = 1;
export const COIL = 2;
/** A strap, or whatever else ends droop first. */
export const DROOP = 3;
export const TYRE = 4;
/** The shock on its own metal, open and closed. */
export const OPEN = 5;
export const CLOSED = 6;
/** Not a contact: which way a touched stop with friction moves. It switches where the stop turns round. */
export const CLOSING = 7;

/** What the dynamics leave behind for each corner: travel and speed at the stop's station, closing speed of the shock. */
export const PROBE = 3;
export const STOP_TRAVEL = 0;
export const STOP_SPEED = 1;
export const SHOCK_SPEED = 2;

/** Constants of one axle, packed. */
export const X = 0;
export const BEHIND_FRONT = 1;
export const PER_MASS = 2;
export const PER_INERTIA = 3;
export const HALF_TRACK = 4;
export const SPRING_STATION = 5;
export const SPRING_RATE = 6;
export const PRELOAD = 7;
export const SHOCK_STATION = 8;
export const SHOCK_RATIO = 9;
export const STOP_STATION = 10;
export const STOP_RATIO = 11;
/** Left, then right. */
export const STOP_GAP = 12;
export const METAL_AT = 14;
export const STOP_RATE_FACTOR = 16;
export const METAL_RATE = 17;
export const DROOP_AT = 18;
export const DROOP_RATE = 19;
export const DROOP_RATE_FACTOR = 20;
export const TYRE_LOAD = 21;
export const TYRE_RATE = 22;
export const TYRE_DAMPING = 23;
export const GAS_FORCE = 24;
export const GAS_RATE = 25;
export const ANTI_ROLL_RATE = 26;
export const OPEN_AT = 27;
export const CLOSED_AT = 28;
export const SHOCK_END_RATE = 29;
export const OIL_FACTOR = 30;
export const AXLE_CONSTANTS = 31;
