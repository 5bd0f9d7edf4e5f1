import { strapRateOf } from '../elements/droop-limit.ts';
import type { End } from '../finding/place.ts';
import type { ValueOf } from '../rig/reading.ts';
import type { Setup } from '../rig/setup.ts';
import type { AxleModel } from './model.ts';

/**
 * What a strap loses: harder while it is stretched, softer on the way back. Nobody measures it at home. Assumed for every
 * strap, `common practice, no source`; it bears on what happens in droop, hardly on any crush.
 */
const STRAP_RATE_FACTOR = 0.2;

/**
 * The strap of an end: it pulls from where it comes tight, not from where it is fully stretched,
 *
 *     tight = stretched − stretch·length ÷ (q·ρ),   rate at the axle = K·(q·ρ)²
 *
 * q strap travel ÷ shock travel, ρ shock travel ÷ axle travel. Webbing of another length has its rate the other way round:
 * half as long, twice as stiff.
 *
 * @param stretched – axle droop with the strap fully stretched [m]; infinite without a strap
 */
export function strapLaw(setup: Setup, end: End, stretched: number, at: ValueOf): AxleModel['droopLimit'] {
  const { base, patch } = setup.ends[end];
  const { strap, shock } = base;
  if (!strap) return { at: Infinity, rate: 0, rateFactor: 0 };
  const measured = at(strap.length);
  const length = patch.strapLength ? at(patch.strapLength) : measured;
  const perAxle = at(strap.ratio) * at(shock.ratio);
  const rate = (strapRateOf(strap, at) * measured) / length;
  return {
    at: stretched - (at(strap.stretch) * length) / perAxle,
    rate: rate * perAxle ** 2,
    rateFactor: STRAP_RATE_FACTOR,
  };
}
