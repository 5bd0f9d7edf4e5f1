import type { FieldState } from '@lastinch/core/rigfile';

/** How a reading stands. Each is said in a word beside the field. */
export type FieldStatus =
  /** Typed, but not usable as it is. */
  | 'problem'
  /** Not there, and the program cannot do without it. */
  | 'needed'
  /** Not there; the program took a value of its own. */
  | 'assumed'
  /** Typed with `~`. */
  | 'guessed'
  /** Typed without a tolerance; the program took one. */
  | 'tolerance-assumed'
  | 'measured'
  /** Not there, and not missed. */
  | 'absent';

export function statusOf(field: FieldState): FieldStatus {
  if (field.problems.length > 0) return field.typed === null ? 'needed' : 'problem';
  const { reading } = field;
  if (reading === null) return 'absent';
  if (reading.origin === 'assumed') return 'assumed';
  if (reading.origin === 'guessed') return 'guessed';
  return reading.toleranceOrigin === 'assumed' ? 'tolerance-assumed' : 'measured';
}

/** What is worth a walk to the rig: everything that was not measured with a tolerance. */
export const isOpen = (status: FieldStatus): boolean => status !== 'measured' && status !== 'absent';

export const STATUS_WORD: Readonly<Record<FieldStatus, string | null>> = {
  problem: 'not usable',
  needed: 'needed',
  assumed: 'assumed',
  guessed: 'guessed',
  'tolerance-assumed': '± assumed',
  measured: null,
  absent: null,
};
