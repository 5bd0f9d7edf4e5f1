/**
 * The coordinates of an axle against the body, and where they stand in the solver's arrays.
 *
 *     moved = centre + (X, Y, BUMP) + Rz(YAW)·Rx(ROLL)·Ry(WIND)·(point − centre)
 *
 * The order of the three turns is chosen so that each is what the trade means by it, at any size below a quarter turn
 * of roll: YAW is the direction of the hub line seen from above, sin ROLL its rise, WIND the turn about the hub line.
 * The first four are found from the links, the last two are asked for.
 */
export const X = 0;
export const Y = 1;
/** Steer of the axle [rad], to the left positive. */
export const YAW = 2;
/** Wind-up [rad], right hand about the hub line: the front of the axle goes down. */
export const WIND = 3;
export const BUMP = 4;
/** [rad], left side up positive. */
export const ROLL = 5;

/** Coordinates that the links decide. */
export const FREE = 4;
export const COORDINATES = 6;
/** Largest number of conditions: five rods. */
export const MOST = 5;
/** Of a five-rod axle: where the size of the locked-in give stands, after the coordinates. */
export const GIVE = 6;
export const STATES = 7;

/** Numbers of a rod: joint on the axle from its centre, then centre of the axle from the joint on the body, then its length. */
export const ROD = 7;
export const ON_AXLE = 0;
export const FROM_BODY = 3;
export const LENGTH = 6;
