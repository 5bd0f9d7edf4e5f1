/**
 * Coil spring at its seat: F = preload + rate·x while it is seated; a coil cannot pull.
 *
 * @param preload – force at ride height [N], > 0
 * @param rate – [N/m], > 0
 * @param compression – from ride height [m], bump positive
 * @returns force on the body, up [N], while seated: where it is positive. That is also the switch of this law.
 * @invariant holds energy F²/(2·rate) and loses none
 * @validity until coils touch: coil bind is a contact of the travel column, not of this law
 * @source Hooke's law; end coils and rate tables are not in it
 */
export function coilForce(preload: number, rate: number, compression: number): number {
  return preload + rate * compression;
}

/** Energy held by a seated coil pressed by `force` [J]. */
export function coilEnergy(rate: number, force: number): number {
  return (force * force) / (2 * rate);
}
