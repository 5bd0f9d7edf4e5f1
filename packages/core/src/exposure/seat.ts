/** Motion of the body at its centre of gravity, evenly sampled, all of one length. */
export interface BodyMotion {
  /** Vertical acceleration [m/s²], up positive, above rest. */
  readonly heave: Float64Array;
  /** Angular acceleration in pitch [rad/s²], nose down positive. */
  readonly pitch: Float64Array;
  /** Angular acceleration in roll [rad/s²], left side up positive; left out: none. */
  readonly roll?: Float64Array;
}

/** Where the seat is, from the centre of gravity [m]. */
export interface SeatPlace {
  readonly ahead: number;
  /** Positive to the left. */
  readonly left?: number;
}

/**
 * Vertical acceleration of a seat that is bolted to the body: a = z̈ − x·θ̈ + y·φ̈.
 *
 * @returns [m/s²], up positive, as long as the motion
 * @validity small angles; the seat's own spring and cushion, and the sitter's mass on it, are not in it
 * @throws when the histories differ in length
 * @source rigid body, small angles; signs of docs/names-and-frames.md
 */
export function seatAcceleration(motion: BodyMotion, { ahead, left = 0 }: SeatPlace): Float64Array {
  const { heave, pitch, roll } = motion;
  if (pitch.length !== heave.length || (roll ?? heave).length !== heave.length)
    throw new Error('seatAcceleration: histories of one length');
  return heave.map((acceleration, n) => acceleration - ahead * pitch[n] + left * (roll?.[n] ?? 0));
}

/**
 * Acceleration from positions (or angles), by the differences of fourth order through five samples.
 *
 * @param positions – evenly sampled, at least five
 * @param rate – samples a second [Hz]
 * @returns in the unit of the positions per s²
 * @validity error h⁴/90 of the sixth derivative: 1 % at a fifteenth of the rate for a sine. An error ε of a position
 * becomes up to 5.4·ε·rate², so positions out of an adaptive run ask for a fine tolerance.
 * @throws on fewer samples
 * @source Abramowitz and Stegun, table 25.2 (from memory); exact on polynomials of fourth order
 */
export function accelerationFrom(positions: Float64Array, rate: number): Float64Array {
  const last = positions.length - 1;
  if (last < 4) throw new Error('accelerationFrom: needs five samples');
  return positions.map((_, n) => {
    const centre = Math.min(Math.max(n, 2), last - 2);
    const weights = SECOND_DIFFERENCE[n - centre + 2];
    let total = 0;
    for (let j = 0; j < 5; j += 1) total += weights[j] * positions[centre - 2 + j];
    return (total * rate * rate) / 12;
  });
}

/** Twelve times the second derivative at each of five samples. */
const SECOND_DIFFERENCE = [
  [35, -104, 114, -56, 11],
  [11, -20, 6, 4, -1],
  [-1, 16, -30, 16, -1],
  [-1, 4, 6, -20, 11],
  [11, -56, 114, -104, 35],
] as const;
