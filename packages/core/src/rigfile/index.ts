/** Text ⇄ rig. Apart from the public surface of core, so that a worker need not load a YAML parser. */
export { type CouponRows, couponForm, readCoupons } from './coupon-form.ts';
export { MAX_RIG_CHARACTERS } from './document.ts';
export { editRig, type RigFileEdit } from './edit.ts';
export { type EstimatedStop, estimatedStop, estimateFragment } from './estimate-fragment.ts';
export { type FieldState, fieldsOf } from './fields.ts';
export { rigJsonSchema } from './json-schema.ts';
export { type MaterialFile, materialText, readMaterial } from './material-file.ts';
export { nearest } from './nearest.ts';
export { type PressFile, type PressFileOptions, readPressFile } from './press-file.ts';
export { type ReadRigOptions, readRig } from './read.ts';
export type { ReadBeside } from './read-beside.ts';
export { shelfEdits } from './shelf-edits.ts';
export { starterRig } from './starter.ts';
export { isShelfName, pressedStop, type ShelfStop, stopFragment } from './stop-fragment.ts';
