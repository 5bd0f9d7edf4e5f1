import { formatFigure, formatValue, needle, PLACE_NAMES, type UnitSystem } from '@lastinch/core';
import {
  BRACKET_CAUTIONS,
  BRACKET_PART_NAMES,
  type BracketAnswer,
  type BracketCase,
  type BracketsAnswer,
  bracketChangeText,
  crackText,
} from '@lastinch/core/bracket';
import { tableLines, wrap } from './lines.ts';
import type { Paper } from './paper.ts';
import { cautionLines, findingLines, section } from './sections.ts';

/** The whole answer of `bracket` in lines for a terminal. */
export function bracketPage(answer: BracketsAnswer, paper: Paper): string[] {
  const { system } = paper;
  const over =
    answer.force === null
      ? answer.demands.map(({ name, speed }) => `${name} at ${needle(speed, system)}`).join(', ')
      : `a load of ${formatValue(answer.force, 'force', { system })}`;
  return [
    ...wrap(`${answer.rig}, ${answer.setup}: whether the brackets hold, under ${over}`, paper).map(
      paper.ink.heading,
    ),
    ...section('FINDINGS', findingLines(answer.findings, paper), paper),
    ...answer.brackets.flatMap((one) => bracketLines(one, answer, paper)),
    ...section('HOW FAR TO TRUST THIS', trustLines(paper), paper),
    ...section('CAUTIONS', [...cautionLines(paper, BRACKET_CAUTIONS), ...cautionLines(paper)], paper),
  ];
}

function bracketLines(one: BracketAnswer, { wanted, force }: BracketsAnswer, paper: Paper): string[] {
  const { system } = paper;
  const name = `${PLACE_NAMES[one.end]}, ${one.mount}`.toUpperCase();
  const metalHead = (share: number) =>
    share === 1 ? 'On metal' : `On metal, ${Math.round(100 * share - 100)} % faster`;
  const parts = one.ride.lines.map(({ part }) => part);
  const lineOf = (of: BracketCase, part: string) => of.lines.find((line) => line.part === part);
  const factor = (of: BracketCase, part: string): string => {
    const line = lineOf(of, part);
    return line ? formatFigure(line.factor, { system }) : '';
  };
  const rows = parts.map((part) => {
    const line = lineOf(one.ride, part);
    const number = (value: number | null | undefined): string =>
      value === null || value === undefined || line === undefined ? '' : shown(value, line.in, system);
    return {
      name: capital(BRACKET_PART_NAMES[part] ?? part),
      cells: [
        number(line?.carries),
        number(line?.bears),
        factor(one.ride, part),
        String(line?.needs ?? wanted),
        ...(one.metal ? [factor(one.metal, part)] : []),
      ],
    };
  });
  const heads = ['Carries', 'Bears', 'Factor', 'Wanted', ...(one.metal ? ['On metal'] : [])];
  const changes = one.changes.map(({ change, step, part, factor, needs }) => ({
    name: bracketChangeText(change, step, system),
    cells: [
      String(Number(factor.toPrecision(3))),
      BRACKET_PART_NAMES[part] ?? part,
      factor >= needs ? 'enough' : 'too little',
    ],
  }));
  return [
    ...section(
      name,
      [
        ...wrap(loadText(one.ride, force, system), paper, '  '),
        ...(one.metal
          ? wrap(`${metalHead(one.metal.speedShare)}: ${loadText(one.metal, force, system)}`, paper, '  ')
          : []),
        ...tableLines({ heads, rows }, paper),
      ],
      paper,
    ),
    ...(changes.length === 0
      ? []
      : [
          '',
          ...wrap('One thing built otherwise, the load as it is:', paper, '  '),
          ...tableLines({ heads: ['Factor', 'Then governs', ''], rows: changes }, paper),
        ]),
    ...(one.life.length === 0
      ? []
      : ['', ...one.life.flatMap((life) => wrap(crackText(life, system), paper, '  '))]),
  ];
}

function loadText(
  { force, hit, swing, load }: BracketCase,
  typed: number | null,
  system: UnitSystem,
): string {
  const n = (value: number) => formatValue(Number(value.toPrecision(3)), 'force', { system });
  if (typed !== null) return `Load as asked: ${n(typed)}.`;
  const side = load.sideways > 0 ? `, of it ${n(load.sideways)} to the side by its lean` : '';
  return `Worst hit ${formatFigure(force, { system })} on ${hit.demand}, ${Math.round(1000 * hit.lasted)} ms long; with its own swing, ${Number(swing.toPrecision(3))} times, ${n(load.force)}${side}.`;
}

/** Stress in MPa or ksi; a pressure gauge's unit would be no help here. */
function shown(value: number, kind: 'pressure' | 'force', system: UnitSystem): string {
  if (kind === 'force') return formatValue(value, 'force', { system });
  return system === 'metric'
    ? `${Math.round(value / 1e6)} MPa`
    : `${(value / 6.894757e6).toPrecision(3)} ksi`;
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

const trustLines = (paper: Paper): string[] =>
  [
    'Each part by a published formula, first yield of sound steel under a load at rest, times how far the bracket swings; the least factor governs. ± covers 95 in 100 of rigs that the readings allow, to the worse side.',
    'Loads are peaks of the model over these courses at these speeds; another rock gives more. The metal case rests on the stiffness of metal, which nobody measured.',
    'Finite elements of a clamped plate and of a tube with gussets lie within 10 % of these formulas (docs/validation.md).',
  ].flatMap((line) => wrap(line, paper, '  '));
