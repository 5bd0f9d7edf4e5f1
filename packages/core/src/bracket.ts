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
  weldStresses,
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

// --- Whether the brackets of a rig hold ---

export { BRACKET_CHANGES, type BracketChange } from './bracket/changes.ts';
export { type BracketCheck, type BracketLoad, type BracketPart, bracketChecks } from './bracket/checks.ts';
export type { BracketMeasures, SectionMeasures } from './bracket/measures.ts';
export { BRACKET_TRIALS, checkBrackets } from './jobs/bracket.ts';
export type {
  BracketAnswer,
  BracketCase,
  BracketLife,
  BracketLine,
  BracketRequest,
  BracketsAnswer,
} from './jobs/bracket-answer.ts';
export type { Hit } from './jobs/bracket-loads.ts';
export type { NotChecked } from './jobs/bracket-not-checked.ts';

// --- In words ---

export {
  BRACKET_CAUTIONS,
  BRACKET_PART_NAMES,
  bracketChangeText,
  bracketName,
  crackText,
  NOT_CHECKED_TEXTS,
} from './words/brackets.ts';
