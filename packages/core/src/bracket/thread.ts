import type { BoltGrade } from '../rig/thread.ts';

/** A screw thread with flanks at 60°. */
export interface Thread {
  /** Major diameter [m]. */
  readonly diameter: number;
  /** [m] */
  readonly pitch: number;
}

/**
 * Area that a thread pulls on: A_s = π/4·(d − 0.9382·P)² [m²]. The inch form, π/4·(d − 0.9743/n)², is taken with its own
 * constant, because its tables are.
 * @source ISO 898-1:2013, 9.1.6.1 (from memory, areas read in a table that quotes it); inch: ASME B1.1 (from memory)
 */
export function stressArea({ diameter, pitch }: Thread, form: 'metric' | 'inch'): number {
  return (Math.PI / 4) * (diameter - (form === 'metric' ? 0.9382 : 0.9743) * pitch) ** 2;
}

/** Least strengths of a bolt [Pa]: at proof and at break. */
export interface BoltClass {
  readonly proof: number;
  readonly ultimate: number;
}

const KSI = 6.894757293168e6;

/**
 * Classes that can be named in a rig file.
 * @source ISO 898-1:2013 (stresses from memory; the loads of M8 to M12 read in a table that quotes it) and SAE J429 (read in
 *   a table that quotes it)
 */
export const BOLT_CLASSES: Readonly<Record<BoltGrade, BoltClass>> = {
  '8.8': { proof: 580e6, ultimate: 800e6 },
  '10.9': { proof: 830e6, ultimate: 1040e6 },
  '12.9': { proof: 970e6, ultimate: 1220e6 },
  'grade 2': { proof: 55 * KSI, ultimate: 74 * KSI },
  'grade 5': { proof: 85 * KSI, ultimate: 120 * KSI },
  'grade 8': { proof: 120 * KSI, ultimate: 150 * KSI },
};

/** Share of the break in tension that a bolt bears in shear through its threads. @source EN 1993-1-8, table 3.4 (from memory) */
export const SHEAR_SHARE = 0.6;

/**
 * How far a bolt is used under tension and shear together: (f_t/F_t)² + (f_v/F_v)², where 1 is all of it.
 * @source AISC ellipse, as in Shigley, ch. 8 (from memory)
 */
export function boltUse(
  load: { readonly tension: number; readonly shear: number },
  bears: { readonly tension: number; readonly shear: number },
): number {
  return (load.tension / bears.tension) ** 2 + (load.shear / bears.shear) ** 2;
}

/**
 * Area that must shear before the thread of a nut strips, at the crests of the bolt:
 * A = π·d·(L/P)·(P/2 + (d − d₂)·tan 30°), d₂ = d − 0.6495·P.
 * The thread of the bolt strips at the crests of the nut: the same with D₁ = d − 1.0825·P and (d₂ − D₁).
 *
 * @param engaged – length of full threads in each other [m]; the first and last turn do not count as full
 * @validity basic profile without its tolerances, which take up to a quarter of it; a nut that spreads strips sooner
 * @source Alexander, SAE 770420 (1977), and FED-STD-H28/2B (both from memory); geometry of the profile
 */
export function stripAreas({ diameter, pitch }: Thread, engaged: number): { nut: number; bolt: number } {
  const flank = Math.tan(Math.PI / 6);
  const middle = diameter - 0.6495 * pitch;
  const inner = diameter - 1.0825 * pitch;
  const turns = engaged / pitch;
  return {
    nut: Math.PI * diameter * turns * (pitch / 2 + (diameter - middle) * flank),
    bolt: Math.PI * inner * turns * (pitch / 2 + (middle - inner) * flank),
  };
}
