import { assumptionText } from '../words/assumptions.ts';
import { readingName } from '../words/readings.ts';
import type { SheetAnswers } from './answers.ts';
import { type SheetSection, say } from './sheet.ts';

/** What nobody measured, what was taken instead, and how to measure it. */
export function assumedSection({ setup }: SheetAnswers): SheetSection {
  const { assumptions } = setup.rig;
  const groups = new Map<string, { readonly howToMeasure: string; readonly names: string[] }>();
  for (const assumption of assumptions) {
    const { what, howToMeasure } = assumptionText(assumption);
    const group = groups.get(what) ?? { howToMeasure, names: [] };
    group.names.push(readingName(assumption.key));
    groups.set(what, group);
  }
  return {
    id: 'assumed',
    title: 'Assumed, because it was not measured',
    blocks:
      groups.size === 0
        ? [say('Nothing: every reading of the rig file was typed with its tolerance.')]
        : [
            {
              kind: 'table',
              heads: ['Taken', 'for', 'to measure'],
              rows: [...groups].map(([what, { names, howToMeasure }]) => [
                what,
                names.join(', '),
                howToMeasure,
              ]),
            },
          ],
  };
}
