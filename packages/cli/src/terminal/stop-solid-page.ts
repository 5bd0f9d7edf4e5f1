import { formatValue } from '@lastinch/core';
import { designDoubtText, STOP_CAUTIONS, type StopDesign } from '@lastinch/core/stops';
import { PLAY, pauseHeight, type Seat, type SolidFigures } from '@lastinch/mesh';
import { tableLines, wrap } from './lines.ts';
import type { Paper } from './paper.ts';
import { cautionLines, section } from './sections.ts';

export interface ToldSolid {
  readonly file: string;
  readonly bytes: number;
  readonly material: string;
  readonly seat: Seat | null;
  /** Thinnest wall that the printer makes whole [m]. */
  readonly wall: number;
  readonly design: StopDesign;
  readonly figures: SolidFigures;
}

/** Of a printed thermoplastic polyurethane [kg/m³] (from memory). */
const HEAVY = [1100, 1250] as const;

/** The answer of `stop solid` in lines for a terminal. */
export function stopSolidPage(told: ToldSolid, paper: Paper): string[] {
  const { file, bytes, material, seat, design, figures } = told;
  const { system, ink } = paper;
  // A tenth of a millimetre: a printer makes no finer step.
  const length = (value: number) => formatValue(Math.round(1e4 * value) / 1e4, 'length', { system });
  const wall = (value: number) => formatValue(Math.round(1e5 * value) / 1e5, 'length', { system });
  const percent = (share: number) => `${(100 * share).toFixed(1)} %`;
  const slices = figures.slices.map(({ from, to, asked, made }) => ({
    name: `${length(from)} to ${length(to)}`,
    cells: [percent(asked), percent(made), signed(made / asked - 1)],
  }));
  const lines = (sentences: readonly string[], mark: string) =>
    sentences.flatMap((sentence) => wrap(sentence, paper, mark));
  const [light, heavy] = HEAVY.map((density) => Math.round(1000 * density * figures.volume));
  return [
    ...wrap(`Written: ${file}`, paper).map(ink.heading),
    '',
    ...lines(
      [
        `One closed body, ${figures.triangles.toLocaleString('en')} triangles, ${(bytes / 1e6).toFixed(1)} MB, in millimetres.`,
        `${length(figures.height)} high${partsText(figures, design, length)}; ${(1e6 * figures.volume).toFixed(1)} cm³ solid.`,
        `Weighs ${light} to ${heavy} g in ${material} (1.10 to 1.25 g/cm³): weigh the print, one outside is not as drawn.`,
        `Thinnest wall ${wall(figures.wall.thinnest)}, ${length(figures.wall.at)} above the plate; the printer makes ${wall(told.wall)}.`,
      ],
      '  ',
    ),
    ...section(
      'DENSITY ABOVE THE PLATE',
      tableLines({ heads: ['asked', 'made', ''], rows: [...slices].reverse() }, paper),
      paper,
    ),
    ...section('SEAT', lines(seatText(seat, length), '  '), paper),
    ...section('TO PRINT', lines(printText(told), '  → '), paper),
    ...section('DOUBTS', lines(design.doubts.map(designDoubtText), '  ? '), paper),
    ...section('CAUTIONS', cautionLines(paper, STOP_CAUTIONS), paper),
  ];
}

const signed = (share: number): string => `${share < 0 ? '−' : '+'}${Math.abs(100 * share).toFixed(1)} %`;

function partsText(
  { height, plate }: SolidFigures,
  { body }: StopDesign,
  length: (value: number) => string,
): string {
  const cap = height - plate - body.height;
  const parts = [
    ...(plate > 0 ? [`plate ${length(plate)}`] : []),
    `lattice ${length(body.height)}`,
    ...(cap > 1e-6 ? [`cap ${length(cap)}`] : []),
  ];
  return parts.length > 1 ? ` (${parts.join(', ')})` : '';
}

function seatText(seat: Seat | null, length: (value: number) => string): readonly string[] {
  switch (seat?.kind) {
    case undefined:
      return [];
    case 'nut':
      return [
        `Pocket for a hexagon nut ${seat.thread.name}, ${length(seat.thread.acrossFlats)} across flats and ${length(seat.thread.nutHeight)} high, ${length(PLAY)} of play; also holds the head of a bolt as a stud. Measure yours: older nuts are wider.`,
        `Pause the print ${length(pauseHeight(seat.thread))} above the bed, lay it in, go on. Hole for the screw ${length(seat.thread.clearance)}.`,
      ];
    case 'clearance':
      return [
        `Hole ${length(seat.thread.clearance)} for ${seat.thread.name}, put in from the tip, with a washer under its head.`,
      ];
    case 'insert':
      return [`Hole ${length(seat.diameter)} wide and ${length(seat.depth)} deep from below, for an insert.`];
  }
}

function printText({ file, figures, seat }: ToldSolid): readonly string[] {
  return [
    'Foot on the bed. Print it solid (100 % fill): its walls carry the density, not the fill of the slicer.',
    ...(/\.stl$/i.test(file) ? ['STL knows no unit: tell the slicer millimetres.'] : []),
    ...(figures.hollows.count > 0
      ? [`${figures.hollows.count} hollows without a way out hold air: add vents, or leave the skin off.`]
      : []),
    ...(seat === null ? ['It has no hole: glue it into a cup, or name a stud.'] : []),
    'Print coupons of its cell in the same filament and press them first: they tell its force far better.',
  ];
}
