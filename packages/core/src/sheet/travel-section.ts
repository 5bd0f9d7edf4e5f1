import { CORNERS } from '../finding/place.ts';
import { PLACE_NAMES } from '../words/places.ts';
import { type SheetAnswers, written } from './answers.ts';
import { type SheetSection, say } from './sheet.ts';

const TERMS = [
  ['Hard travel', 'hardTravel'],
  ['Free bump', 'freeBump'],
  ['Stop crush', 'crush'],
  ['Clearance', 'clearance'],
  ['To spare', 'spare'],
] as const;

/** The travel columns before and after, to scale and in figures. */
export function travelSection(answers: SheetAnswers): SheetSection {
  const { before, after } = answers.comparison;
  const row = ([name, term]: (typeof TERMS)[number]): readonly string[] => [
    name,
    ...CORNERS.map((corner) => {
      const [from, to] = [before, after].map(({ travel }) => written(travel.corners[corner][term], answers));
      return from === to ? `${to}, as now` : `${from} → ${to}`;
    }),
  ];
  return {
    id: 'travel',
    title: 'Travel before and after',
    blocks: [
      say(
        'Axle travel from ride height, both wheels together. Up is bump. A band is where a boundary lies, 95 %.',
      ),
      {
        kind: 'table',
        heads: ['Now → as built', ...CORNERS.map((corner) => PLACE_NAMES[corner])],
        rows: TERMS.map(row),
      },
      { kind: 'columns', travel: after.travel, against: before.travel },
    ],
  };
}
