import { groupedAssumptions } from '../words/assumptions.ts';
import type { SheetAnswers } from './answers.ts';
import { type SheetSection, say } from './sheet.ts';

/** What nobody measured, what was taken instead, and how to measure it. */
export function assumedSection({ setup }: SheetAnswers): SheetSection {
  const groups = groupedAssumptions(setup.rig.assumptions);
  return {
    id: 'assumed',
    title: 'Assumed, because it was not measured',
    blocks:
      groups.length === 0
        ? [say('Nothing: every reading of the rig file was typed with its tolerance.')]
        : [
            {
              kind: 'table',
              heads: ['Taken', 'for', 'to measure'],
              rows: groups.map(({ what, names, howToMeasure }) => [what, names.join(', '), howToMeasure]),
            },
          ],
  };
}
