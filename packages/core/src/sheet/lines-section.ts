import type { LinkLineId } from '../finding/link-lines.ts';
import { ENDS, type End, endOf, type Place } from '../finding/place.ts';
import type { KnockOnLine } from '../jobs/links-answer.ts';
import { linkLineName } from '../words/link-lines.ts';
import { remedyText } from '../words/remedies.ts';
import { type SheetAnswers, written } from './answers.ts';
import { heading, type SheetBlock, type SheetSection, say, tick, warn } from './sheet.ts';

/** What hangs on the axle and must follow it: in the order in which it is looked at under the rig. */
const LINES: readonly (readonly [string, readonly LinkLineId[]])[] = [
  ['Hoses', ['hose-slack']],
  [
    'Strap, shock and coil',
    ['droop', 'shock-left-bump', 'shock-left-droop', 'coil-left-bump', 'coil-held-droop'],
  ],
  [
    'Driveshaft',
    [
      'pinion-angle',
      'joint-ride',
      'joint-bump',
      'joint-droop',
      'joint-most',
      'slip-left-in',
      'slip-left-out',
      'shaft-length',
      'shaft-speed',
    ],
  ],
  ['Steering and axle', ['caster', 'panhard-slope', 'drag-link-slope', 'axle-sideways', 'axle-steer']],
];

/** Hoses, strap, shaft and steering, before and after, each with its limit and what is to be done. */
export function linesSection(answers: SheetAnswers): SheetSection {
  const { knockOn, steady, missing } = answers.links;
  // What stays and keeps its limit is no work.
  const told = [...knockOn, ...steady.filter(({ kept }) => kept === 'over' || kept === 'unproven')];
  const parts = LINES.flatMap(([title, ids]): readonly SheetBlock[] => {
    const lines = ids.flatMap((id) =>
      ENDS.flatMap((end) => told.filter(({ of, place }) => of === id && placedAt(place, end))),
    );
    return lines.length === 0 ? [] : [heading(title), ...partOf(lines, answers)];
  });
  const untold = [...new Set(missing.map(({ end, what }) => `${end} ${what.replaceAll('-', ' ')}`))];
  return {
    id: 'lines',
    title: 'Hoses, strap, shaft, steering',
    blocks: [
      ...parts,
      ...(parts.length === 0
        ? [say('Nothing of it moves, and every limit that is known is kept.')]
        : [say('* common practice, no source. What does not move and keeps its limit is left out.')]),
      ...(untold.length === 0 ? [] : [say(`Not measured, so not worked out here: ${untold.join(', ')}.`)]),
      warn(
        'Brake hoses and steering: whatever a figure says, a qualified person looks at them before it is driven.',
      ),
    ],
  };
}

const placedAt = (place: Place, end: End): boolean =>
  place === end || (place !== 'rig' && place !== 'front' && place !== 'rear' && endOf(place) === end);

function partOf(lines: readonly KnockOnLine[], answers: SheetAnswers): readonly SheetBlock[] {
  const { system } = answers;
  const figure = (one: KnockOnLine['before']): string => (one ? written(one, answers) : 'not known');
  const remedies = new Set(
    lines.flatMap(({ kept, remedies }) =>
      kept === 'over' || kept === 'unproven' ? remedies.map((remedy) => remedyText(remedy, { system })) : [],
    ),
  );
  return [
    {
      kind: 'table',
      heads: ['', 'now', 'as built', 'limit'],
      rows: lines.map((line) => [
        linkLineName(line),
        figure(line.before),
        figure(line.after),
        limitText(line, answers),
      ]),
    },
    ...[...remedies].map(tick),
  ];
}

/** Rules of thumb carry a star, as they do on the screen. */
function limitText({ limit, limitOf, kept }: KnockOnLine, answers: SheetAnswers): string {
  if (!limit) return '';
  const words = { over: ': NOT KEPT', unproven: ': not proven', note: '', fine: ': kept' } as const;
  return `${written(limit, answers)}${limitOf === 'practice' ? ' *' : ''}${kept ? words[kept] : ''}`;
}
