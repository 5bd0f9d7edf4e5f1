import type { FieldState } from '@lastinch/core/rigfile';
import type { RigEdit } from '../../document/rig-document.ts';

/** Whether a gap is given once for both sides, or for each. */
export type SidesGiven = 'both' | 'apart';

/** Null for a reading that has no sides. Only gaps may differ from left to right. */
export function sidesOf({ path }: FieldState): SidesGiven | null {
  const last = path.at(-1);
  if (last === 'gap') return 'both';
  return (last === 'left' || last === 'right') && path.at(-2) === 'gap' ? 'apart' : null;
}

/** The edits that give a reading for each side, both as the one was; or that keep one of two for both. */
export function sidesEdits(field: FieldState, given: SidesGiven): readonly RigEdit[] {
  const { path, typed } = field;
  if (given === 'apart') return [{ path: path.slice(0, -1), text: typed }];
  if (typed === null) return [];
  return [
    { path, text: null },
    { path: [...path, 'left'], text: typed },
    { path: [...path, 'right'], text: typed },
  ];
}
