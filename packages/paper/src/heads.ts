import type { Sheet } from '@lastinch/core/sheet';

/** What stands at the head and foot of every layout. */
export const titleOf = ({ rig, setup }: Sheet): string => `Build sheet: ${rig}, ${setup}`;
export const FOOT =
  'Advice from your own readings, not a certificate. Local rules and licensed practice decide.';
export const READ_HEADS = ['To read', 'Expected', 'Read', 'Goes to'] as const;
/** Where a reading goes that only warns. */
export const NO_KEY = '—';
