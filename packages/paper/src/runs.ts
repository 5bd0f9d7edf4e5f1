import type { SheetBlock } from '@lastinch/core/sheet';

/** Boxes that follow each other are one list, readings one table. */
export function runsOf(blocks: readonly SheetBlock[]): readonly (readonly SheetBlock[])[] {
  const runs: SheetBlock[][] = [];
  for (const block of blocks) {
    const last = runs.at(-1);
    const joins = block.kind === 'tick' || block.kind === 'reading';
    if (joins && last?.[0]?.kind === block.kind) last.push(block);
    else runs.push([block]);
  }
  return runs;
}
