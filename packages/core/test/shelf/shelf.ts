import { bouncingMass, stiffMetal, stopTouch } from './contact.ts';
import type { ShelfProblem } from './problem.ts';
import { dampedOscillator, drivenPair, freeFall } from './smooth.ts';

/** Every problem with a known answer. */
export const SHELF: readonly ShelfProblem[] = [
  freeFall,
  dampedOscillator,
  drivenPair,
  bouncingMass,
  stopTouch,
  stiffMetal,
];
