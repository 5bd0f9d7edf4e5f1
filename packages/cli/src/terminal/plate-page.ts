import { formatValue } from '@lastinch/core';
import {
  cutLength,
  type Plate,
  type PlateDoubt,
  plateArea,
  plateDoubtText,
  plateMass,
} from '@lastinch/core/plates';
import { CAUTIONS } from './cautions.ts';
import { wrap } from './lines.ts';
import type { Paper } from './paper.ts';
import { cautionLines, section } from './sections.ts';

const NAMES: Readonly<Record<Plate['kind'], string>> = {
  top: 'Top plate',
  gusset: 'Gusset',
  standoff: 'Standoff, laid flat',
  pad: 'Strike pad',
};

export interface MadePlate {
  readonly shape: Plate;
  readonly kerf: number;
  readonly doubts: readonly PlateDoubt[];
  /** The file that was written; null when none was asked for. */
  readonly out: string | null;
}

const size = (metres: number, { system }: Paper): string => formatValue(metres, 'length', { system });

/** What a plate is, at its head: `Top plate, 1/4 in thick, 4 in × 3 in`. */
export function plateTitle({ kind, corners, thickness }: Plate, paper: Paper): string {
  const span = (of: 'x' | 'y'): number =>
    Math.max(...corners.map((corner) => corner[of])) - Math.min(...corners.map((corner) => corner[of]));
  return `${NAMES[kind]}, ${size(thickness, paper)} thick, ${size(span('x'), paper)} × ${size(span('y'), paper)}`;
}

/** Holes and bends in words. */
export function plateNotes({ holes, bends }: Plate, paper: Paper): readonly string[] {
  const at = (x: number, y: number): string =>
    x === 0 && y === 0
      ? 'in the middle'
      : `${size(x, paper)} along, ${size(y, paper)} across from the middle`;
  return [
    ...holes.map(({ x, y, width, length, what }) => {
      const name = what === 'stud' ? 'Stud hole' : 'Bolt hole';
      const wide =
        length > width ? `slot ${size(width, paper)} × ${size(length, paper)}` : size(width, paper);
      return `${name}: ${wide}, ${at(x, y)}.`;
    }),
    ...bends.map(
      ({ y1, insideRadius, allowance }) =>
        `Bend line ${size(y1, paper)} across: 90°, inside radius ${size(insideRadius, paper)}, ${size(allowance, paper)} of the flat goes into it.`,
    ),
  ];
}

/** What was drawn, what it weighs, and what to look at before it is cut. */
export function platePage({ shape, kerf, doubts, out }: MadePlate, paper: Paper): string[] {
  const cut =
    kerf > 0
      ? `path moved by half a kerf of ${formatValue(kerf, 'length', { system: 'metric' })}`
      : 'no kerf taken off: the machine does';
  const facts = [
    `Mass in steel ${formatValue(plateMass(shape), 'mass', paper)}; face ${(plateArea(shape) * 1e4).toFixed(1)} cm²; cut ${size(cutLength(shape, kerf), paper)}, ${cut}.`,
    ...plateNotes(shape, paper),
  ];
  return [
    ...wrap(plateTitle(shape, paper), paper).map(paper.ink.heading),
    ...facts.flatMap((fact) => wrap(fact, paper, '  ')),
    ...(out === null ? [] : wrap(`Written to ${out}, in millimetres, true scale.`, paper, '  ')),
    ...section(
      'LOOK AT',
      doubts.flatMap((doubt) => wrap(plateDoubtText(doubt), paper, '  ? ')),
      paper,
    ),
    ...section(
      'CAUTIONS',
      cautionLines(paper, [
        'A drawing says nothing about strength. Measure a cardboard copy on the rig first; deburr, round the edges.',
        CAUTIONS[0] ?? '',
      ]),
      paper,
    ),
  ];
}
