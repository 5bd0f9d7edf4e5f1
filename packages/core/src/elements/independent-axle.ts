/**
 * An independent pair of wheels in the coordinates of a solid axle. With wheel travels z₁ (left) and z₂, heave
 * z = (z₁ + z₂)/2 and roll ψ = (z₁ − z₂)/(2w) about half tracks w,
 *
 *     ½·(m/2)·(ż₁² + ż₂²) = ½·m·ż² + ½·(m·w²)·ψ̇²
 *
 * and an element with travel ratio ρ to its wheel is pressed by ρ·(z ± w·ψ), less what the body moves there: so it is a
 * solid axle of the same mass, roll inertia m·w², with every station at the half track and every ratio per wheel travel.
 * Exact for small angles, not an approximation: in this plane nothing tells the two apart.
 *
 * @param mass – both wheels, hubs and brakes, half of arms and shocks [kg]
 * @param track – tyre centre to tyre centre [m]
 * @returns roll inertia [kg·m²], and the distance left to right at which every element stands [m]
 * @validity camber, scrub and jacking of the arms are not in it, as links are not for the solid axle; half shafts are part
 *   of the mass
 * @source kinetic energy and virtual work
 */
export function asSolidAxle({ mass, track }: { readonly mass: number; readonly track: number }) {
  return { rollInertia: mass * (track / 2) ** 2, spread: track };
}
