import { DENSER, designDoubtText, STIFFER, type StopDesign } from '@lastinch/core/stops';

/** The answer of `stop design --json`: `lastinch/stop-design/1`, SI. */
export const stopDesignJson = (material: string, design: StopDesign) => ({
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
  doubts: design.doubts.map((code) => ({ code, text: designDoubtText(code) })),
});
