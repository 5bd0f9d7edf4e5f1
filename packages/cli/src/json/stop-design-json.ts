import type { UnitSystem } from '@lastinch/core';
import {
  DENSER,
  type DesignedForNeed,
  designDoubtText,
  needDesignTexts,
  printedTexts,
  STIFFER,
  type StopDesign,
} from '@lastinch/core/stops';

/** The answer of `stop design --json`: `lastinch/stop-design/1`, SI. */
export const stopDesignJson = (
  { material, design, need }: { material: string; design: StopDesign; need: DesignedForNeed | null },
  system: UnitSystem,
) => ({
  schema: 'lastinch/stop-design/1',
  units: 'SI',
  material,
  structure: 'sheet-gyroid',
  densityRange: design.range,
  density: design.at.map((height, i) => ({ height, density: design.density[i] })),
  curve: design.curve,
  body: design.body,
  tooSoft: design.tooSoft,
  tooHard: design.tooHard,
  missed: design.missed,
  strain: design.strain,
  closesAt: design.closesAt,
  strains: design.strains,
  energy: design.energy,
  lost: design.lost,
  slenderness: design.slenderness,
  skinFolds: design.skinFolds,
  endsHold: design.endsHold,
  air: design.air,
  scatter: { denserBy: DENSER, stifferBy: STIFFER, zones: design.scatter },
  need: need && { ...need, text: needDesignTexts(need, system) },
  text: printedTexts(design, system),
  doubts: design.doubts.map((code) => ({ code, text: designDoubtText(code) })),
});
