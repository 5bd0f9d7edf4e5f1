import type { Section } from './section.ts';

/** A tube or bar pressed along its axis. */
export interface Strut {
  readonly section: Section;
  readonly length: number;
  /** Effective ÷ real length: 1 both ends hinged, 2 one end built in and the other free, 0.7 built in and hinged. */
  readonly fixity: number;
  /** Young's modulus and yield strength [Pa]. */
  readonly modulus: number;
  readonly yield: number;
}

export interface StrutAnswer {
  /** Load at which it buckles or yields [N]. */
  readonly critical: number;
  readonly law: 'johnson' | 'euler';
  /** Effective length ÷ radius of gyration, and where one law hands over to the other. */
  readonly slenderness: number;
  readonly transition: number;
}

/**
 * Johnson's parabola for stout struts, Euler's hyperbola for slender ones:
 * λ ≤ λ₁ = √(2π²E/σ_y): P = A·(σ_y − (σ_y·λ/2π)²/E), beyond: P = π²·E·A/λ².
 *
 * @validity straight, loaded on its axis; a load beside the axis adds bending (`pressedAside`)
 * @source Johnson and Euler as in Shigley, Mechanical Engineering Design, 9th ed., ch. 4 (from memory)
 */
export function strutLoad({ section, length, fixity, modulus, yield: strength }: Strut): StrutAnswer {
  const { area, inertia, sideInertia } = section;
  const radius = Math.sqrt(Math.min(inertia, sideInertia) / area);
  const slenderness = (fixity * length) / radius;
  const transition = Math.sqrt((2 * Math.PI ** 2 * modulus) / strength);
  const isStout = slenderness <= transition;
  const stress = isStout
    ? strength - ((strength * slenderness) / (2 * Math.PI)) ** 2 / modulus
    : (Math.PI ** 2 * modulus) / slenderness ** 2;
  return { critical: stress * area, law: isStout ? 'johnson' : 'euler', slenderness, transition };
}

/**
 * Largest stress of a strut that is pressed beside its axis and pushed sideways at its free end:
 * σ = P/A + (P·e + H·L)/(1 − P/P_E) · c/I, the bending made larger by what the bow adds.
 *
 * @param aside – load beside the axis [m]; sideways force at the free end [N]
 * @returns Infinity at Euler's load and beyond
 * @source amplification of moments, 1/(1 − P/P_E), as in Timoshenko and Gere, Theory of Elastic Stability (from memory)
 */
export function pressedAside(
  strut: Strut,
  load: { readonly force: number; readonly aside: number; readonly sideways: number },
): number {
  const { section, length, fixity, modulus } = strut;
  const { area, inertia, fibre } = section;
  const euler = (Math.PI ** 2 * modulus * inertia) / (fixity * length) ** 2;
  if (load.force >= euler) return Number.POSITIVE_INFINITY;
  const moment = (load.force * load.aside + load.sideways * length) / (1 - load.force / euler);
  return load.force / area + (moment * fibre) / inertia;
}
