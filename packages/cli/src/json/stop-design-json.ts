import { designDoubtText, type StopDesign } from '@lastinch/core/stops';

/** The answer of `stop design --json`: `lastinch/stop-design/1`, SI. */
export const stopDesignJson = (material: string, design: StopDesign) => ({
  schema: 'lastinch/stop-design/1',
  units: 'SI',
  material,
  structure: 'sheet-gyroid',
  densityRange: design.range,
  density: design.at.map((height, i) => ({ height, density: design.density[i] })),
  curve: design.curve,
  tooSoft: design.tooSoft,
  tooHard: design.tooHard,
  strain: design.strain,
  closesAt: design.closesAt,
  energy: design.energy,
  slenderness: design.slenderness,
  doubts: design.doubts.map((code) => ({ code, text: designDoubtText(code) })),
});
