import {
  type ChooseAnswer,
  type ChosenMember,
  type ChosenSetup,
  changesText,
  constraintText,
  fastestText,
  settingsText,
  stageText,
  WANT_MEANINGS,
  WANT_NAMES,
  WHY_ENDED,
  wantCell,
  wantHead,
  whyShortTexts,
} from '@lastinch/core/choose';
import { tableLines, wrap } from './lines.ts';
import type { Paper } from './paper.ts';
import { cautionLines, section } from './sections.ts';

/** The whole answer of `choose` in lines for a terminal. */
export function choosePage(answer: ChooseAnswer, paper: Paper): string[] {
  const { members, doNothing, onlySettings, singles, from } = answer;
  const marked = members.map((member, k) => ({ mark: markOf(k), member }));
  const nameOf = (one: ChosenSetup): string =>
    marked.find(({ member }) => member.index === one.index)?.mark ?? '·';
  return [
    ...wrap(`${answer.rig}: the best few of ${answer.tally.candidates} candidates, from ${from}`, paper).map(
      paper.ink.heading,
    ),
    ...wrap(leadText(answer), paper, '  '),
    ...section(
      'NONE OF THESE IS BEATEN IN ALL THAT IS WANTED',
      wantsTable(
        answer,
        [
          ...marked.map(({ mark, member }) => ({ name: mark, of: member })),
          ...(doNothing && !doNothing.isOnFront ? [{ name: 'as it is', of: doNothing }] : []),
          ...(onlySettings && !onlySettings.isOnFront ? [{ name: 'set', of: onlySettings }] : []),
        ],
        paper,
      ).concat(
        wrap(
          `${answer.wants.map((want) => `${WANT_NAMES[want]}: ${WANT_MEANINGS[want]}`).join('; ')}.`,
          paper,
          '  ',
        ),
      ),
      paper,
    ),
    ...section(
      'WHAT EACH IS',
      marked.flatMap(({ mark, member }) =>
        memberLines(mark, member, { answer, nameOf: callOf(answer), paper }),
      ),
      paper,
    ),
    ...section(
      'WHAT EACH STEP ALONE BUYS, WITH THE BEST SETTINGS',
      wantsTable(
        answer,
        singles.map((one) => ({ name: `${changesText(one.changes, paper.system)} ${nameOf(one)}`, of: one })),
        paper,
      ),
      paper,
    ),
    ...section('WHAT BECAME OF THE OTHERS', tallyLines(answer, paper), paper),
    ...section('HOW FAR TO TRUST THIS', trustLines(answer, paper), paper),
    ...section('CAUTIONS', cautionLines(paper), paper),
  ];
}

/** A … Z, then AA and so on. */
export const markOf = (k: number): string =>
  k < 26 ? String.fromCharCode(65 + k) : `${markOf(Math.floor(k / 26) - 1)}${markOf(k % 26)}`;

function leadText({ tally, members, trials, why }: ChooseAnswer): string {
  const early = tally.discarded.reduce((sum, { candidates }) => sum + candidates, 0);
  return (
    `${tally.barred} of ${tally.seen} break a constraint, ${early} were beaten before they were driven to the end, ` +
    `${tally.judged} were judged in full: at the nominal readings and in ${trials} rigs over their tolerances. ` +
    `${members.length} are beaten by none. ${WHY_ENDED[why]}`
  );
}

interface Row {
  readonly name: string;
  readonly of: ChosenSetup;
}

export function wantsTable({ wants, money }: ChooseAnswer, rows: readonly Row[], paper: Paper): string[] {
  if (rows.length === 0) return [];
  const options = { system: paper.system, money };
  return tableLines(
    {
      heads: wants.map((want) => wantHead(want, options)),
      rows: rows.map(({ name, of }) => ({
        name,
        cells: wants.map((want) => {
          const spread = of.wants[want];
          return spread === undefined ? '' : wantCell(want, spread, options);
        }),
      })),
    },
    paper,
  );
}

interface MemberOn {
  readonly answer: ChooseAnswer;
  readonly nameOf: (index: number) => string;
  readonly paper: Paper;
}

function memberLines(mark: string, member: ChosenMember, { answer, nameOf, paper }: MemberOn): string[] {
  const { system } = paper;
  const { trims, fastest, changes, why } = member;
  const own = [
    ...trims.map(({ trim, settings }) => `${trim} trim: ${settingsText(settings, system)}.`),
    ...(fastest ? [`Speed: ${fastestText(fastest, system)}.`] : []),
    ...whyShortTexts(why, { system, money: answer.money, nameOf }),
  ];
  return [
    ...wrap(`${changesText(changes, system)}.`, paper, `  ${mark}  `).map(paper.ink.heading),
    ...own.flatMap((line) => wrap(line, paper, '     ')),
  ];
}

/** What a candidate is called on this page. */
export function callOf({ members, doNothing, onlySettings }: ChooseAnswer): (index: number) => string {
  return (index) => {
    if (index === doNothing?.index) return 'as it is';
    if (index === onlySettings?.index) return 'only setting it';
    const place = members.findIndex((member) => member.index === index);
    return place < 0 ? `candidate ${index}` : markOf(place);
  };
}

function tallyLines({ tally }: ChooseAnswer, paper: Paper): string[] {
  const merged = new Map<string, number>();
  for (const { stage, candidates } of tally.discarded) {
    const said = stageText(stage);
    merged.set(said, (merged.get(said) ?? 0) + candidates);
  }
  return [
    ...tally.barredBy
      .filter(({ candidates }) => candidates > 0)
      .map(
        ({ constraint, candidates, alone }) =>
          `${candidates} break ${constraintText(constraint)}, ${alone} of them nothing else.`,
      ),
    ...[...merged]
      .filter(([, candidates]) => candidates > 0)
      .map(([said, candidates]) => `${candidates} were seen to be beaten ${said}.`),
  ].flatMap((line) => wrap(line, paper, '  '));
}

const trustLines = ({ trials }: ChooseAnswer, paper: Paper): string[] =>
  [
    `± covers 95 in 100 of the rigs that your readings allow, from ${trials} of them; of a share that was counted the bracket is its 95 % interval. Candidates are compared at the nominal readings and by the share that was counted.`,
    'The best setting of a trim is sought one setting after another: first those that keep the reserve clear, of these the one that shakes the seat least. All candidates are driven in the same sampled rigs, so differences between them are surer than each figure.',
  ].flatMap((line) => wrap(line, paper, '  '));
