import { problemText } from '@lastinch/core';
import { readPressFile } from '@lastinch/core/rigfile';

/** A curve that a made stop is to follow [m], [N]. */
export interface Target {
  readonly crush: readonly number[];
  readonly force: readonly number[];
}

/** A typed or chosen curve; null with a reason, or without one while nothing stands there. */
export interface ReadTarget {
  readonly value: Target | null;
  readonly error: string | null;
  /** Lines that cannot be read, counted from one. */
  readonly wrong: readonly number[];
}

/** Crush and force, a line each, with units in the cells or in a first line. */
export function readTarget(text: string): ReadTarget {
  if (text.trim() === '') return { value: null, error: null, wrong: [] };
  const read = readPressFile(text, { file: 'the wanted curve', columns: null, ram: null });
  if (read.ok)
    return { value: { crush: read.value.travel, force: read.value.force }, error: null, wrong: [] };
  return {
    value: null,
    error: read.problems.map(problemText).join(' '),
    wrong: read.problems.flatMap(({ where }) => where.line ?? []),
  };
}
