/**
 * Public surface `@lastinch/core/plates`: plates to cut, as shapes. Their strength is another matter.
 */

export { bendAllowance, neutralShare } from './plates/flat-pattern.ts';
export { type BoltPattern, gussetPlate, padPlate, standoffPlate, topPlate } from './plates/kinds.ts';
export {
  arcOf,
  type Outline,
  type OutlinePoint,
  outlineArea,
  outlineLength,
  type PlateCorner,
  roundedOutline,
} from './plates/outline.ts';
export {
  cutLength,
  type HoleCut,
  type Plate,
  type PlateBend,
  type PlateCut,
  type PlateHole,
  plateArea,
  plateCut,
  plateMass,
} from './plates/plate.ts';
export { PLATE_DOUBTS, type PlateDoubt, plateDoubts, plateProblems } from './plates/sound.ts';
export { plateDoubtText } from './words/plates.ts';
