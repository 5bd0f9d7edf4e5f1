import { estimateDoubtText, type StopEstimate } from '@lastinch/core/stops';
import { figureJson } from './figure-json.ts';

/** The answer of `stop estimate --json`: `lastinch/stop-estimate/1`, SI. */
export const stopEstimateJson = (name: string, estimate: StopEstimate, fragment: string) => ({
  schema: 'lastinch/stop-estimate/1',
  units: 'SI',
  name,
  kind: estimate.kind,
  assumed: true,
  band: estimate.crush.map((crush, i) => ({
    crush,
    least: estimate.least[i],
    middle: estimate.middle[i],
    most: estimate.most[i],
  })),
  usableCrush: figureJson(estimate.usableCrush),
  energy: { least: estimate.energy[0], middle: estimate.energy[1], most: estimate.energy[2] },
  shapeFactors: estimate.shapeFactors,
  warmed: estimate.warmed,
  doubts: estimate.doubts.map((code) => ({ code, text: estimateDoubtText(code) })),
  yaml: fragment,
});
