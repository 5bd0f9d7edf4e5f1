import type { Corner, End, Verdict } from '@lastinch/core';
import type { Lane } from '../answers.ts';

export const CORNER_NAME: Readonly<Record<Corner, string>> = {
  frontLeft: 'Front left',
  frontRight: 'Front right',
  rearLeft: 'Rear left',
  rearRight: 'Rear right',
};
export const END_NAME: Readonly<Record<End, string>> = { front: 'Front', rear: 'Rear' };

export const LANE_NAME: Readonly<Record<Lane, string>> = { now: 'On the rig now', proposed: 'Proposed' };

export const VERDICT_WORD: Readonly<Record<Verdict, string>> = {
  pass: 'Pass',
  'not-proven': 'Not proven',
  fail: 'Fail',
};

/** `as-measured` reads better with its hyphens as spaces; a name that its owner gave stays as he wrote it. */
export const setupLabel = (id: string): string => (id === 'as-measured' ? 'as measured' : id);

/** A share of 0…1 in words that do not promise more than the trials can tell. */
export function inAHundred(share: number): string {
  if (share < 0.005) return 'under 1 in 100';
  if (share > 0.995) return 'over 99 in 100';
  return `${Math.round(share * 100)} in 100`;
}
