import { doubtText, type StopFit } from '@lastinch/core/stops';
import { figureJson } from './figure-json.ts';

/** The answer of `stop fit --json`: `lastinch/stop-fit/1`, SI. */
export const stopFitJson = (name: string, fit: StopFit, fragment: string) => ({
  schema: 'lastinch/stop-fit/1',
  units: 'SI',
  name,
  curve: fit.crush.map((crush, i) => ({ crush, force: fit.force[i] })),
  forceTolerance: fit.tolerance,
  offset: figureJson(fit.offset),
  touch: figureJson(fit.touch),
  usableCrush: figureJson(fit.usableCrush),
  hysteresis: fit.hysteresis,
  energy: fit.energy,
  dynamicFactor: fit.dynamicFactor && { ...fit.dynamicFactor, assumed: true },
  doubts: fit.doubts.map((code) => ({ code, text: doubtText(code) })),
  yaml: fragment,
});
