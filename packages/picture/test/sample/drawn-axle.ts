import { type AxleGeometry, curvesOf, poseOf } from '@lastinch/core';
import type { DrawnAxle } from '../../src/link-axle.ts';

/** An invented rear axle on three links and a Panhard bar; never an expected value. */
export const threeLink: AxleGeometry = {
  kind: 'three-link',
  centre: [-2.6, 0, 0.42],
  halfTrack: 0.8,
  tyreRadius: 0.42,
  links: [
    { id: 'lower-left', axle: [-2.62, 0.46, 0.34], body: [-1.62, 0.38, 0.42] },
    { id: 'lower-right', axle: [-2.62, -0.46, 0.34], body: [-1.62, -0.38, 0.42] },
    { id: 'upper', axle: [-2.58, -0.12, 0.62], body: [-1.78, -0.16, 0.6] },
    { id: 'panhard', axle: [-2.72, -0.5, 0.5], body: [-2.72, 0.52, 0.56] },
  ],
  struts: {
    'spring-left': { axle: [-2.6, 0.45, 0.5], body: [-2.58, 0.42, 0.82] },
    'spring-right': { axle: [-2.6, -0.45, 0.5], body: [-2.58, -0.42, 0.82] },
    'shock-left': { axle: [-2.68, 0.5, 0.38], body: [-2.75, 0.36, 0.9] },
    'shock-right': { axle: [-2.68, -0.5, 0.38], body: [-2.75, -0.36, 0.9] },
  },
};

export function drawnAxle(name: string, geometry: AxleGeometry, bump: number, roll: number): DrawnAxle {
  const found = poseOf(geometry, bump, roll);
  if (found.status !== 'reached') throw new Error('an invented axle that cannot move so');
  const curves = curvesOf(geometry, { bumps: [bump], rolls: [roll], end: 'rear' });
  return {
    name,
    geometry,
    pose: found.pose,
    shaft: { pinion: [-2.35, -0.02, 0.44], case: [-1.4, 0, 0.6] },
    dragLink: null,
    instant: { x: curves.instantX[0]!, z: curves.instantZ[0]! },
    rollCentre: { z: curves.rollCentreZ[0]!, rise: curves.rollAxisRise[0]! },
  };
}
