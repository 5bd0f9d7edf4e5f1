import type { BracketAnswer, BracketCase, BracketLine } from '../jobs/bracket-answer.ts';
import { formatFigure } from '../quantity/format.ts';
import {
  BRACKET_CAUTIONS,
  BRACKET_PART_NAMES,
  bracketChangeText,
  crackText,
  NOT_CHECKED_TEXTS,
} from '../words/brackets.ts';
import { findingText } from '../words/findings.ts';
import { PLACE_NAMES } from '../words/places.ts';
import { type SheetAnswers, written } from './answers.ts';
import { stands } from './decision.ts';
import { heading, type SheetBlock, type SheetSection, say, tick, warn } from './sheet.ts';

/** Whether the brackets of the file hold what the courses put into them, and what was not checked. */
export function bracketsSection(answers: SheetAnswers): SheetSection {
  const { brackets, system } = answers;
  const blocks: readonly SheetBlock[] =
    brackets === null
      ? [
          say(
            'No bracket was checked: the rig file tells of none, or of no course to drive. Nothing about the strength of one, of its bolts or its welds stands here.',
          ),
        ]
      : [
          ...brackets.brackets.flatMap((one) => bracketBlocks(one, answers)),
          ...brackets.findings.filter(stands).map((finding) => warn(findingText(finding, { system }))),
          ...BRACKET_CAUTIONS.map(warn),
        ];
  return { id: 'brackets', title: 'Brackets, bolts, welds', blocks };
}

const VERDICTS: Readonly<Record<BracketLine['verdict'], string>> = {
  holds: 'holds',
  open: 'not proven',
  short: 'TOO WEAK',
};

function bracketBlocks(one: BracketAnswer, answers: SheetAnswers): readonly SheetBlock[] {
  const { system } = answers;
  const factor = (of: BracketCase | null, part: string): string => {
    const line = of?.lines.find((each) => each.part === part);
    return line ? formatFigure(line.factor, { system }) : '';
  };
  const enough = one.changes.filter(({ factor: gained, needs }) => gained >= needs);
  const unchecked = one.notChecked.map((what) => NOT_CHECKED_TEXTS[what] ?? what);
  return [
    heading(`${PLACE_NAMES[one.end]}, ${one.mount}: worst hit ${written(one.ride.force, answers)}`),
    {
      kind: 'table',
      heads: ['What gives way', 'factor', 'wanted', '', ...(one.metal ? ['factor on metal'] : [])],
      rows: one.ride.lines.map(({ part, needs, verdict }) => [
        BRACKET_PART_NAMES[part] ?? part,
        factor(one.ride, part),
        String(needs),
        VERDICTS[verdict],
        ...(one.metal ? [factor(one.metal, part)] : []),
      ]),
    },
    // Where it is too weak, each of these alone would do.
    ...(one.ride.lines.some(({ verdict }) => verdict !== 'holds')
      ? enough.map(({ change, step }) =>
          tick(`One of these does: ${bracketChangeText(change, step, system)}.`),
        )
      : []),
    ...one.life.map((life) => say(crackText(life, system))),
    say(`Not checked: ${unchecked.join('; ')}.`),
  ];
}
