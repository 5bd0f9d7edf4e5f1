import { exposureNotes, exposureRows, type RideAnswer } from '@lastinch/core';
import { tableLines, wrap } from './lines.ts';
import type { Paper } from './paper.ts';

/** What the seat takes, one column a setup. */
export function exposureLines(answers: readonly RideAnswer[], paper: Paper): string[] {
  const { system } = paper;
  const columns = answers.map(({ exposure, speed }) => exposureRows(exposure, { system, speed }));
  const rows = (columns[0] ?? []).map(({ id, name, note }) => ({
    name: note === '' ? name : `${name} (${note})`,
    cells: columns.map((column) => column.find((row) => row.id === id)?.text ?? ''),
  }));
  return tableLines({ heads: answers.map(({ setup }) => setup), rows }, paper);
}

/** What to think of these figures. */
export const exposureNoteLines = ({ exposure }: RideAnswer, paper: Paper): string[] =>
  exposureNotes(exposure, paper.system).flatMap((note) => wrap(note, paper, '  '));
