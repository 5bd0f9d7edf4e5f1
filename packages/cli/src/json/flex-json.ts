import { CORNERS, type Corner } from '@lastinch/core';
import { type Articulation, flexEndText, type Ramp, rampEndText } from '@lastinch/core/links';
import { figureJson } from './figure-json.ts';

/** How the axles of a setup flex, by the wheel that goes up. */
export function flexJson({ setup, flex, ramps, trials, seed }: Articulation) {
  return {
    setup,
    flex: Object.fromEntries(CORNERS.map((corner) => [corner, cornerJson(flex[corner])])),
    ramps: { frontLeft: rampJson(ramps.frontLeft), frontRight: rampJson(ramps.frontRight) },
    sampling: { trials, seed },
  };
}

function cornerJson(flex: Articulation['flex'][Corner]) {
  const { up, limits, angle, bump, droop, lowTyreLoad, pad } = flex;
  return {
    up,
    limits,
    angle: figureJson(angle),
    bump: figureJson(bump),
    droop: figureJson(droop),
    lowTyreLoad: figureJson(lowTyreLoad),
    pad: pad && { offset: figureJson(pad.offset), stands: pad.stands },
    text: flexEndText(flex),
  };
}

const rampJson = ({ twist, height, index, lifts, ends }: Ramp) => ({
  twist: figureJson(twist),
  height: figureJson(height),
  index: figureJson(index),
  lifts,
  ends,
  text: ends ? rampEndText(lifts) : 'not known',
});
