import { filtered } from './filter.ts';
import { highest } from './peak.ts';
import type { TransferFunction } from './transfer.ts';

/** Angular frequency [rad/s] and damping ratio of the one-mass spine. */
const SPEED = 52.9;
const DAMPING = 0.224;
/** Standard acceleration of free fall [m/s²]. */
const GRAVITY = 9.80665;

const ONE_MASS: TransferFunction = {
  gain: 1,
  sections: [{ numerator: [1, 0, 0], denominator: [SPEED * SPEED, 2 * DAMPING * SPEED, 1] }],
};

/**
 * Dynamic response index: how far a mass on a spring and a damper is pressed in, over how far it stands pressed in by
 * its weight. ẍ + 2ζω·ẋ + ω²·x = a(t), DRI = ω²·x_max ÷ g, with ω = 52.9 rad/s and ζ = 0.224.
 *
 * @param history – vertical acceleration of the seat above rest [m/s²], up positive, evenly sampled, at least six
 * samples, ending when the hit is over
 * @param rate – samples a second [Hz]
 * @returns [1] ≥ 0
 * @validity one mass, one hit, upright; made for ejection seats and mine blasts. The scales that go with it were
 * drawn from different data and disagree, so none is shown here.
 * @source the equation and its constants as given in an encyclopaedia (read); closed form 3.96 per m/s of impulse
 */
export const dynamicResponseIndex = (history: Float64Array, rate: number): number =>
  (SPEED * SPEED * Math.max(0, highest(filtered(history, rate, ONE_MASS)))) / GRAVITY;
