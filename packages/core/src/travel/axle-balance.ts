import { cubicValue, type MonotoneCubic } from '../numerics/monotone-cubic.ts';

/** What holds an axle against the body, as plain numbers of one trial. Travel is that of the axle below the part. */
export interface AxleSprings {
  /** Coil rate × ratio² [N/m], half the distance between the coils [m], and the droop at which one goes loose [m]. */
  readonly coilRate: number;
  readonly coilArm: number;
  readonly loose: number;
  /** Stop: press curve along the stop, travel ratio, half the distance, and free bump of the side that goes up. */
  readonly stopCurve: MonotoneCubic;
  readonly stopRatio: number;
  readonly stopArm: number;
  readonly stopFree: number;
  /** Anti-roll bar [N·m/rad]. */
  readonly bar: number;
}

/** Where an axle stands against the body: heave of its middle [m], bump positive, and roll [rad] towards the side that goes up. */
export interface AxleStand {
  readonly heave: number;
  readonly roll: number;
}

/** Travel at so far from the middle, on the side that goes up (1) or down (−1) [m]. */
export const travelAt = (arm: number, way: 1 | -1, { heave, roll }: AxleStand): number =>
  heave + way * arm * Math.sin(roll);

/** Change of the coil's force against ride height, seen at the axle; it cannot pull [N]. */
const coilForce = ({ coilRate, coilArm, loose }: AxleSprings, way: 1 | -1, stand: AxleStand): number =>
  coilRate * Math.max(travelAt(coilArm, way, stand), -loose);

/** Force of a stop, seen at the axle [N]. */
function stopForce(springs: AxleSprings, way: 1 | -1, stand: AxleStand): number {
  const crush = (travelAt(springs.stopArm, way, stand) - springs.stopFree) * springs.stopRatio;
  return crush > 0 ? springs.stopRatio * cubicValue(springs.stopCurve, crush) : 0;
}

const lifting = (springs: AxleSprings, stand: AxleStand): number =>
  coilForce(springs, 1, stand) +
  coilForce(springs, -1, stand) +
  stopForce(springs, 1, stand) +
  stopForce(springs, -1, stand);

/** Farther the heave of a rolled axle is not looked for [m]. */
const FAR = 0.5;
const EXACT = 1e-7;

/**
 * Heave that an axle takes when it is rolled and carries what it carried before:
 *
 *     Σ change of coil forces + stop forces = 0
 *
 * @returns [m]; 0 while the coils alone work, below zero once a stop pushes or a coil is loose
 * @validity friction, gas and the spread of weight left to right are not in it
 */
export function heaveAt(springs: AxleSprings, roll: number): number {
  let low = -FAR;
  let high = FAR;
  let heave = 0;
  // The sum rises with the heave all the way: a secant that is kept inside its bracket.
  let atLow = lifting(springs, { heave: low, roll });
  let atHigh = lifting(springs, { heave: high, roll });
  for (let step = 0; step < 80 && high - low > EXACT; step += 1) {
    const force = lifting(springs, { heave, roll });
    if (force === 0) return heave;
    if (force > 0) [high, atHigh] = [heave, force];
    else [low, atLow] = [heave, force];
    const secant = (low * atHigh - high * atLow) / (atHigh - atLow);
    const middle = (low + high) / 2;
    heave = step % 3 === 2 ? middle : Math.min(Math.max(secant, low + EXACT / 4), high - EXACT / 4);
  }
  return heave;
}

/**
 * Roll moment that holds an axle there [N·m], by virtual work: each force times its arm·cos(roll), and the bar.
 *
 * @source virtual work
 */
export function momentAt(springs: AxleSprings, stand: AxleStand): number {
  const pair = (of: typeof coilForce) => of(springs, 1, stand) - of(springs, -1, stand);
  return (
    Math.cos(stand.roll) * (springs.coilArm * pair(coilForce) + springs.stopArm * pair(stopForce)) +
    springs.bar * stand.roll
  );
}
