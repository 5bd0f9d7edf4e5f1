/**
 * Public surface `@lastinch/core/sheet`: the build sheet of a setup, as data that page and paper lay out.
 */

export type {
  Sheet,
  SheetBlock,
  SheetColumns,
  SheetReading,
  SheetSection,
  SheetSectionId,
  SheetTable,
  SheetWords,
} from './sheet/sheet.ts';
export { SHEET_SECTIONS } from './sheet/sheet.ts';
export { type SheetRequest, sheetOfRig } from './sheet/sheet-of-rig.ts';
