import { printable } from '@lastinch/picture';
import { wrap } from './lines.ts';
import type { Paper } from './paper.ts';

/** A stop as text for the rig file, or where it was written to. */
export function fragmentLines(fragment: string, out: string | null, paper: Paper): string[] {
  if (out !== null)
    return wrap(
      `Written: ${out}. Move it under parts.stops of the rig file, then: lastinch stop need.`,
      paper,
      '  ',
    );
  return fragment
    .trimEnd()
    .split('\n')
    .map((line) => `  ${printable(line, paper.unicode)}`);
}
