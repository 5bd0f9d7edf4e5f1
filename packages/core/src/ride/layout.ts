/**
 * Where things stand in the memory of the kernel: the one table of places.
 *
 * Coordinates are about static ride height; heave up, pitch nose down, roll left side up. The seat is the last one and
 * stays at rest when nobody sits.
 */
export const RIG_COORDINATES = 7;
export const COORDINATES = 8;
export const HEAVE = 0;
export const PITCH = 1;
export const ROLL = 2;
/** Heave of the front axle; its roll follows, then the rear pair. */
export const AXLE = 3;
export const SEAT = 7;

/**
 * A state, in its own block. The rate of what stands at i, in the first two rows and in the sums, stands at
 * i + `RATE`: rows of positions, speeds, accelerations; first-order states and their rates.
 */
export const POSITION = 0;
export const SPEED = 8;
export const ACCELERATION = 16;
export const RATE = 8;
/** Positions and speeds. */
export const MOTION_SIZE = 16;
/**
 * First-order states: running sums, which feed nothing back, then the inner displacement of each stop's viscous branch.
 */
export const SUMS = 24;
export const SUMS_SIZE = 8;
/** Without a viscous branch. */
export const PLAIN_SUMS_SIZE = 4;
/** ∫ heave acceleration² dt, the same of the seat, and the energy books. */
export const SQUARED_ACCELERATION = 24;
export const SQUARED_SEAT = 25;
export const GROUND_WORK = 26;
export const DISSIPATED = 27;
export const INNER = 28;
export const INNER_SIZE = 4;
export const INNER_RATE = 36;
/** Since the start [s]. */
export const TIME = 40;
/** Contacts that should carry force in this state, as bits. */
export const WANTED = 41;
/**
 * What a look at a state leaves behind, a corner each: travel and speed at the stop's station, closing speed of the shock,
 * force along the stop.
 */
export const STOP_TRAVEL = 42;
export const STOP_SPEED = 46;
export const SHOCK_SPEED = 50;
export const STOP_FORCE = 54;
/** The ground under each tyre at the time of the state: height [m], and how fast it rises [m/s]. */
export const HEIGHT_UNDER = 58;
export const RISE_UNDER = 62;
export const STATE_SIZE = 66;

/**
 * Contacts of one corner, as bits: 1 means that it carries force. The bit of a contact is
 * 1 << (CONTACTS·corner + which), corners in the house order: one byte a corner.
 */
export const CONTACTS = 8;
export const ALL_CONTACTS = 32;
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

/** Constants of one axle, counted from its block. */
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
/** Limits and rates below are zero where the stop has no such branch. */
export const FRICTION_LIMIT = 31;
export const FRICTION_TRAVEL = 32;
export const MAXWELL_RATE = 33;
export const MAXWELL_DAMPING = 34;
/** Places of tables. */
export const SHOCK_TABLE = 35;
export const STOP_TABLE = 36;
/** Places of the paths of spring, shock and stop; 0 where the ratio is the same over all travel. */
export const SPRING_PATH = 37;
export const SHOCK_PATH = 38;
export const STOP_PATH = 39;
/** Axle travel at which metal is met, left, then right. */
export const METAL_TRAVEL = 40;
/** 1 when an element of the axle has a path. */
export const HAS_PATHS = 42;
export const AXLE_SIZE = 44;

/** From here on places count from the memory's beginning; the first kilobyte stays free, as compilers like it. */
/** The two ends of a step change places when it is accepted: `FROM` says which one is its start. */
export const ONE_END = 128;
export const OTHER_END = ONE_END + STATE_SIZE;
/** The stages between them. */
export const SECOND = OTHER_END + STATE_SIZE;
export const THIRD = SECOND + STATE_SIZE;
export const FOURTH = THIRD + STATE_SIZE;
/** A state between the two ends. */
export const INSIDE = FOURTH + STATE_SIZE;

/** The run. */
export const RUN = INSIDE + STATE_SIZE;
export const FROM = RUN;
/** Contacts that carry force. Held during a step, changed only at an event. */
export const CONTACTS_ON = RUN + 1;
export const RIDE_SPEED = RUN + 2;
export const DURATION = RUN + 3;
export const PLANNED_STEP = RUN + 4;
/** Fourth root of the error of the last accepted step, in accepted errors. */
export const LAST_ROOT = RUN + 6;
/** Place of the next row of the schedule: when to land, and the longest step until then. */
export const NEXT_BREAK = RUN + 7;
/** 1 once the run left what the model is good for. */
export const LEFT_VALIDITY = RUN + 8;
export const STEPS = RUN + 9;
export const REJECTED = RUN + 10;
export const EVENTS = RUN + 11;
export const EVALUATIONS = RUN + 12;
/** Where in the tried step contacts switch, and which: these wait till the next step begins, 0 when none does. */
export const EVENT_SHARE = RUN + 13;
export const EVENT_CONTACTS = RUN + 14;
/** Switches in a row without any time between them. */
export const SWITCHED_STILL = RUN + 15;

/** 1 ÷ accepted error of each position and speed, and of each inner displacement. */
export const PER_ERROR = RUN + 16;
export const PER_INNER_ERROR = PER_ERROR + MOTION_SIZE;

/** Where the switch of each contact that changed lies in the step. */
export const ROOTS = PER_INNER_ERROR + INNER_SIZE;
/** Motion of the contact whose switch is looked for, at both ends of the step. */
export const SWITCHING = ROOTS + ALL_CONTACTS;
/** Contacts newly made, by bit number. */
export const TOUCHES = SWITCHING + 10;
/** Where each touched stop last turned round: crush and friction share; of no account without friction. */
export const REVERSALS = TOUCHES + ALL_CONTACTS;

/** The step that was right when each contact was made last [s], 0 while it has not been; contacts just made, as bits. */
export const STEP_WHEN_MADE = REVERSALS + 8;
export const JUST_MADE = STEP_WHEN_MADE + ALL_CONTACTS;

/** Running extremes, a corner each for the first five. */
export const PEAK_TRAVEL = JUST_MADE + 2;
export const PEAK_STOP_FORCE = PEAK_TRAVEL + 4;
export const AIRBORNE = PEAK_STOP_FORCE + 4;
export const PEAK_COMPRESSION = AIRBORNE + 4;
export const PEAK_REBOUND = PEAK_COMPRESSION + 4;
export const PEAK_ACCELERATION = PEAK_REBOUND + 4;
export const PEAK_SEAT = PEAK_ACCELERATION + 1;
export const PEAK_PITCH = PEAK_SEAT + 1;
export const PEAK_ROLL = PEAK_PITCH + 1;
/** Values at the ends of a step and at places between them. */
export const READINGS = PEAK_ROLL + 1;

/** The body, and the seat on it. */
export const BODY = READINGS + 6;
export const PER_BODY_MASS = BODY;
/** What the springs carry at rest, per mass of the body alone: the sitter's weight with it. */
export const RESTING_LIFT = BODY + 1;
export const PER_PITCH_INERTIA = BODY + 2;
export const PER_ROLL_INERTIA = BODY + 3;
export const GRAVITY = BODY + 4;
/** 0 without a seat. */
export const SEAT_MASS = BODY + 5;
export const SEAT_RATE = BODY + 6;
export const SEAT_DAMPING = BODY + 7;
export const SEAT_AHEAD = BODY + 8;
export const SEAT_LEFT = BODY + 9;
/** 1 when a stop has a viscous branch. */
export const HAS_INNER = BODY + 10;
/** 1 when no axle has gas, paths, ends of the shock, oil, friction or a viscous branch. */
export const IS_PLAIN = BODY + 11;

export const FRONT = BODY + 12;
export const REAR = FRONT + AXLE_SIZE;

/** Ground under each side, left, then right; it begins one piece before the first sample. */
export const ORIGIN = REAR + AXLE_SIZE;
export const PIECES_PER_METRE = ORIGIN + 2;
export const PIECES_PER_SECOND = ORIGIN + 4;
export const LAST_PIECE = ORIGIN + 6;
/** Place of its pieces. */
export const PIECES = ORIGIN + 8;
/** The same plus `SHIFT`, which brings a whole number into the low bits of its sum with it. */
export const SHIFTED_PIECES = ORIGIN + 10;
export const SHIFT = 6_755_399_441_055_744;
/** 1 on the left, −1 on the right. */
export const SIGN = ORIGIN + 12;

/** The contacts that carry force once more, 1 for each that does, a corner each: as numbers, so that both sides are read at once. */
export const HELD = ORIGIN + 14;
export const HELD_STOP = HELD + 4 * STOP;
export const HELD_METAL = HELD + 4 * METAL;
export const HELD_COIL = HELD + 4 * COIL;
export const HELD_DROOP = HELD + 4 * DROOP;
export const HELD_TYRE = HELD + 4 * TYRE;
export const HELD_OPEN = HELD + 4 * OPEN;
export const HELD_CLOSED = HELD + 4 * CLOSED;
export const HELD_CLOSING = HELD + 4 * CLOSING;

/** What was read off a path last, left, then right. */
export const SIDE_LEVER = HELD + ALL_CONTACTS;

/** What was read off the ground last: height [m], and how fast it rises [m/s]. */
export const GROUND_HEIGHT = SIDE_LEVER + 2;
export const GROUND_RISE = GROUND_HEIGHT + 1;
/** Ratio over that of ride height, where a path was followed last. */
export const LEVER = GROUND_RISE + 1;

/** Tables, breaks and samples follow, as long as they are. */
export const HEAP = LEVER + 1;
