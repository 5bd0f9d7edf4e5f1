import { articulationOf } from '@lastinch/core/links';
import type { Runner } from '../runner.ts';
import { text } from './inputs.ts';
import { type Known, knownSetup } from './known-rig.ts';

/** The nominal rig is what is held against theirs. */
const flexed = (readings: unknown) => articulationOf(knownSetup(readings as Known), { trials: 2 });

/** Axles flexed to their first contact, and the ramp. */
export const flex: Runner = {
  flex: ({ end, readings }) => {
    const { angle, bump, droop } = flexed(readings).flex[text(end) === 'front' ? 'frontLeft' : 'rearLeft'];
    return { angle: angle.value, bump: bump.value, droop: droop.value };
  },
  ramp: ({ readings }) => {
    const { twist, index } = flexed(readings).ramps.frontLeft;
    return { twist: twist.value, index: index.value / 1000 };
  },
};
