import { formatFigure, formatValue, needle, PLACE_NAMES } from '@lastinch/core';
import {
  type ChooseAnswer,
  type ChosenMember,
  type ChosenSetup,
  type ChosenTrim,
  changesText,
  changeText,
  fastestText,
  moneyText,
  settingsText,
  setupFragment,
  whyTexts,
} from '@lastinch/core/choose';
import { callOf, wantsTable } from './choose-page.ts';
import { tableLines, wrap } from './lines.ts';
import type { Paper } from './paper.ts';
import { cautionLines, section } from './sections.ts';

/** One member of the list in full: what it is made of, how it drives, why it stands, what each step alone buys. */
export function chooseMemberPage(answer: ChooseAnswer, member: ChosenMember, paper: Paper): string[] {
  const { system } = paper;
  const { money, rig } = answer;
  const nameOf = callOf(answer);
  const steps = [
    ...(answer.doNothing ? [{ name: 'as it is', of: answer.doNothing }] : []),
    ...(answer.onlySettings ? [{ name: 'only set', of: answer.onlySettings }] : []),
    ...member.changes.flatMap((change) => {
      const alone = answer.singles.find((one) => isAlone(one, change));
      return alone ? [{ name: changeText(change, system), of: alone }] : [];
    }),
    { name: `${nameOf(member.index)}, all of it`, of: member },
  ];
  const missing = member.changes.filter((change) => !answer.singles.some((one) => isAlone(one, change)));
  return [
    ...wrap(`${rig}, ${nameOf(member.index)}: ${changesText(member.changes, system)}`, paper).map(
      paper.ink.heading,
    ),
    ...section(
      'WHAT IT COSTS',
      member.changes.flatMap((change) =>
        wrap(
          `${changeText(change, system)}: ${moneyText(change.price, money)}, ${Number(change.hours.toFixed(2))} h.`,
          paper,
          '  ',
        ),
      ),
      paper,
    ),
    ...member.trims.flatMap((trim) =>
      section(`IN ${trim.trim.toUpperCase()} TRIM`, trimLines(trim, paper), paper),
    ),
    ...section(
      'WHY IT STANDS',
      [
        ...(member.fastest ? [`Speed: ${fastestText(member.fastest, system)}.`] : []),
        ...whyTexts(member.why, { system, money, nameOf }),
      ].flatMap((line) => wrap(line, paper, '  ')),
      paper,
    ),
    ...section(
      'WHAT EACH STEP ALONE BUYS, WITH THE BEST SETTINGS',
      [
        ...wantsTable(answer, steps, paper),
        ...(missing.length > 0
          ? wrap(`Alone each of these breaks a limit: ${changesText(missing, system)}.`, paper, '  ')
          : []),
      ],
      paper,
    ),
    ...section(
      'FOR THE RIG FILE, UNDER setups',
      member.trims.flatMap(({ trim, patch }) =>
        setupFragment(patch, `Chosen: ${changesText(member.changes, system)}; ${trim} trim.`, system),
      ),
      paper,
    ),
    ...section('CAUTIONS', cautionLines(paper), paper),
  ];
}

function isAlone(one: ChosenSetup, change: ChosenSetup['changes'][number]): boolean {
  const [only] = one.changes;
  return (
    one.changes.length === 1 &&
    only.id === change.id &&
    only.part === change.part &&
    only.size?.value === change.size?.value
  );
}

function trimLines({ settings, rides, column }: ChosenTrim, paper: Paper): string[] {
  const { system } = paper;
  const rows = rides.map(({ course, speed, spare, corner, shaking, body }) => ({
    name: course,
    cells: [
      needle(speed, system),
      formatValue(spare, 'length', { system }),
      PLACE_NAMES[corner].toLowerCase(),
      formatValue(shaking, 'acceleration', { system }),
      formatValue(body, 'acceleration', { system }),
    ],
  }));
  return [
    ...wrap(`Set: ${settingsText(settings, system)}.`, paper, '  '),
    ...tableLines({ heads: ['at', 'spare', 'where', 'seat r.m.s.', 'body peak'], rows }, paper),
    ...wrap(
      `Spare: gap to metal less flex allowance and reserve, nominally; below zero it is used up. Travel column at full crush, ${PLACE_NAMES[column.corner].toLowerCase()}: ${formatFigure(column.spare, { system })} to spare, ${VERDICTS[column.verdict]}.`,
      paper,
      '  ',
    ),
  ];
}

const VERDICTS = { pass: 'passes', 'not-proven': 'not proven either way', fail: 'fails' } as const;
