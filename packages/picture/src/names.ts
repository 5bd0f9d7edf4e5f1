import type { Corner, DroopLine, Verdict } from '@lastinch/core';

/** The few words that stand in pictures; sentences come from the phrase book of the core. */
export const CORNER_NAMES: Readonly<Record<Corner, string>> = {
  frontLeft: 'Front left',
  frontRight: 'Front right',
  rearLeft: 'Rear left',
  rearRight: 'Rear right',
};

/** Two capitals, front or rear before left or right, for where there is little room. */
export const CORNER_MARKS: Readonly<Record<Corner, string>> = {
  frontLeft: 'FL',
  frontRight: 'FR',
  rearLeft: 'RL',
  rearRight: 'RR',
};

export const VERDICT_NAMES: Readonly<Record<Verdict, string>> = {
  pass: 'pass',
  'not-proven': 'not proven',
  fail: 'fail',
};

export const DROOP_NAMES: Readonly<Record<DroopLine['id'], string>> = {
  shock: 'shock open',
  strap: 'strap taut',
  spring: 'spring loose',
  hose: 'hose taut',
  shaft: 'shaft at end',
};
