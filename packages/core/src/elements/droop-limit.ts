/**
 * What ends droop: a strap, or the shock on its own top. It pulls when stretched:
 *
 *     F = rate·e·max(0, 1 − rateFactor·v),   e = stretch beyond the limit
 *
 * Same ad-hoc loss as the stop: harder while opening (v < 0), softer on the way back.
 *
 * @param rate – [N/m]
 * @param stretch – beyond the limit [m], > 0; the caller decides whether it is reached
 * @param speed – [m/s], compression positive
 * @returns pull [N] ≥ 0: it draws axle and body together, so the force on the body is −F
 * @validity a strap's measured stretch curve is not in it; one rate stands for it
 */
export function droopPull(rate: number, rateFactor: number, stretch: number, speed: number): number {
  const gain = 1 - rateFactor * speed;
  return gain > 0 ? rate * stretch * gain : 0;
}

/**
 * Rate of a limit strap: full load ÷ stretch at full load, K = load ÷ (stretch·length).
 *
 * @param stretch – at full load, share of the free length, > 0
 * @returns [N/m]; it acts from where the strap comes tight, not from where it is fully stretched
 */
export function strapRate(fullLoad: number, stretch: number, length: number): number {
  return fullLoad / (stretch * length);
}

/** Energy held by a stretched limit [J]. */
export function droopEnergy(rate: number, stretch: number): number {
  return (rate * stretch * stretch) / 2;
}
