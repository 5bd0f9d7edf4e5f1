/**
 * Public surface `@lastinch/core/bracket`: what carries a stop, a spring or a shock, the formulas behind, and whether it
 * will hold.
 */

// --- Sections and beams ---

export { type BeamAnswer, bendCantilever, type Cantilever } from './bracket/cantilever.ts';
export { pressedAside, type Strut, type StrutAnswer, strutLoad } from './bracket/column.ts';
export {
  barSection,
  boxSection,
  type Gussets,
  roundSection,
  type Section,
  sectionModulus,
  withGussets,
} from './bracket/section.ts';

// --- Plates ---

export {
  type PlateAnswer,
  rectanglePlateUnderPatch,
  roundPlateUnderPatch,
  roundPlateUnderPressure,
  type Sheet,
} from './bracket/plate.ts';

// --- Joints ---

export { type BoltedWall, boltBearing } from './bracket/bearing.ts';
export {
  BOLT_CLASSES,
  type BoltClass,
  boltUse,
  SHEAR_SHARE,
  stressArea,
  stripAreas,
  type Thread,
} from './bracket/thread.ts';
export {
  type WeldGroup,
  type WeldLoad,
  type WeldRun,
  weldedAround,
  weldedRound,
  weldGroup,
  weldStress,
} from './bracket/weld-lines.ts';

// --- Loads that come again, and suddenly ---

export {
  crackShare,
  DETAILS,
  type Detail,
  FATIGUE_FACTOR,
  loopsToCrack,
  type StressKind,
} from './bracket/fatigue.ts';
export { dropFactor, impactForce, loadFactor, type PulseShape } from './bracket/load-factor.ts';
