import { type Section, sectionModulus } from './section.ts';

/** A beam built in at its root, loaded across at its free end; its section may change along it. */
export interface Cantilever {
  /** Load line to root [m]. */
  readonly length: number;
  /** Section at a distance from the load line [m]. */
  readonly sectionAt: (distance: number) => Section;
  /** Distances at which the section jumps or bends, for the integral [m]. */
  readonly breaks: readonly number[];
  /** Young's modulus [Pa]. */
  readonly modulus: number;
}

export interface BeamAnswer {
  /** Of the load line, by bending and by shear of the walls [m]. */
  readonly deflection: number;
  readonly shearDeflection: number;
  /** Bending stress at the root, and the largest along the beam with its distance from the load [Pa], [m]. */
  readonly rootStress: number;
  readonly peakStress: number;
  readonly peakAt: number;
}

const PIECES = 200;
const POISSON = 0.3;

/**
 * δ = ∫ F·x²/(E·I(x)) dx, σ(x) = F·x·c(x)/I(x), x from the load; walls shear by ∫ F/(G·A_v) dx.
 * Where the depth falls towards the load the largest stress need not be at the root.
 *
 * @param force – across the beam [N]
 * @validity plane sections: depth small against length, taper below about 20°; a short stub gives more at its root, and
 *   what carries it gives as well
 * @source strength of materials: Castigliano's theorem, for example Shigley, Mechanical Engineering Design, 9th ed., ch. 4
 *   (from memory)
 */
export function bendCantilever(
  { length, sectionAt, breaks, modulus }: Cantilever,
  force: number,
): BeamAnswer {
  const shearModulus = modulus / (2 * (1 + POISSON));
  const inside = breaks.filter((at) => at > 0 && at < length).sort((a, b) => a - b);
  const places = [0, ...inside, length];
  let bending = 0;
  let shearing = 0;
  let peakStress = 0;
  let peakAt = 0;
  for (let k = 1; k < places.length; k += 1) {
    const [from, to] = [places[k - 1], places[k]];
    const step = (to - from) / PIECES;
    for (let i = 0; i < PIECES; i += 1) {
      const x = from + (i + 0.5) * step;
      const { inertia, shearArea } = sectionAt(x);
      bending += ((x * x + (step * step) / 12) / inertia) * step;
      shearing += step / shearArea;
    }
    for (let i = 0; i <= PIECES; i += 1) {
      // A jump belongs to the weaker side: the cut just before it.
      const x = i === PIECES && k < places.length - 1 ? to - 1e-9 * length : from + i * step;
      const stress = (force * x) / sectionModulus(sectionAt(x));
      if (stress > peakStress) [peakStress, peakAt] = [stress, x];
    }
  }
  return {
    deflection: (force * bending) / modulus,
    shearDeflection: (force * shearing) / shearModulus,
    rootStress: (force * length) / sectionModulus(sectionAt(length)),
    peakStress,
    peakAt,
  };
}
