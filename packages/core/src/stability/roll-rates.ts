import { ENDS, type End } from '../finding/place.ts';
import { STANDARD_GRAVITY } from '../stance/gravity.ts';
import { AXLE, BODY_ROLL, balanceAt, newBalance } from './roll-energy.ts';
import type { RollEnd, RollModel } from './roll-model.ts';
import { descent } from './settle.ts';
import { atRest, pullOnSlope } from './side-slope.ts';

/** Roll stiffness of one end by element [N·m/rad], stops not touched. */
export interface RollStiffness {
  readonly springs: number;
  readonly gas: number;
  readonly bar: number;
  readonly tyres: number;
  /** Springs, gas and bar side by side: of the body against the axle. */
  readonly suspension: number;
  /** That and the tyres one after the other: of the body against the ground. */
  readonly whole: number;
}

/**
 * Roll stiffness of one end:
 *
 *     springs, gas: 2·rate·station²,   tyres: 2·rate·(track/2)²
 *     suspension = springs + gas + bar,   whole = 1 ÷ (1/suspension + 1/tyres)
 *
 * @source virtual work; elements side by side and one after the other
 */
export function rollStiffness({ spring, gas, barRate, tyreRate, halfTrack }: RollEnd): RollStiffness {
  const springs = 2 * spring.rate * spring.halfStation ** 2;
  const ofGas = 2 * gas.rate * gas.halfStation ** 2;
  const tyres = 2 * tyreRate * halfTrack ** 2;
  const suspension = springs + ofGas + barRate;
  return {
    springs,
    gas: ofGas,
    bar: barRate,
    tyres,
    suspension,
    whole: (suspension * tyres) / (suspension + tyres),
  };
}

/** What a little sideways acceleration does, per g of it. */
export interface RollPerG {
  /** Lean of the body against the ground [rad]. */
  readonly bodyRoll: number;
  readonly ends: Readonly<
    Record<
      End,
      {
        /** Taken off one tyre and put on the other [N]. */
        readonly loadTransfer: number;
        /** Lean of the body against the axle [rad]. */
        readonly tilt: number;
      }
    >
  >;
}

/**
 * Roll gradient and load transfer of small motion about rest: the curvature of the energy solved for a pull to the side.
 * With stiff tyres the gradient is the textbook's m·d ÷ (K − m·g·d).
 *
 * @returns null where the rig does not stand upright at all: springs too soft for the height of its mass
 * @validity until a stop touches, a coil unseats or a tyre lifts
 */
export function rollPerG(model: RollModel): RollPerG | null {
  const rest = atRest(model);
  if (rest.status === 'tips') return null;
  const still = newBalance();
  const pulled = newBalance();
  balanceAt(model, pullOnSlope(0), rest.coordinates, still);
  balanceAt(model, { ...pullOnSlope(0), right: STANDARD_GRAVITY }, rest.coordinates, pulled);
  for (let i = 0; i < still.slope.length; i += 1) still.slope[i] = pulled.slope[i] - still.slope[i];
  const per = descent(still, 0);
  if (per === null) return null;
  const ends = Object.fromEntries(
    ENDS.map((end, e) => {
      const { tyreRate, halfTrack } = model.ends[end];
      const axleRoll = per[AXLE + 2 * e + 1];
      return [end, { loadTransfer: tyreRate * halfTrack * axleRoll, tilt: per[BODY_ROLL] - axleRoll }];
    }),
  ) as Record<End, { loadTransfer: number; tilt: number }>;
  return { bodyRoll: per[BODY_ROLL], ends };
}

/**
 * Sideways acceleration at which the first stop of an end touches [m/s²], by the lean of small motion.
 *
 * @returns 0 where one touches at rest
 */
export function stopTouchesAt({ stop }: RollEnd, tiltPerG: number): number {
  const free = Math.max(0, Math.min(stop.touches.left, stop.touches.right));
  return (free / (stop.halfStation * tiltPerG)) * STANDARD_GRAVITY;
}
