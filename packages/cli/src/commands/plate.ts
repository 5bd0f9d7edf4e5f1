import { bad, good, type Problem, parseQuantity, type Result, type UnitSystem } from '@lastinch/core';
import {
  type BoltPattern,
  gussetPlate,
  type Plate,
  padPlate,
  plateDoubts,
  plateProblems,
  standoffPlate,
  topPlate,
} from '@lastinch/core/plates';
import { fitsPaper, plateDxf, plateSvg, plateTemplate } from '@lastinch/paper';
import { type ExitCode, paperAsked, refuse, unitsAsked } from '../asked.ts';
import { writeOver } from '../hosts/files.ts';
import { writeLines } from '../hosts/output.ts';
import { pdfOf } from '../hosts/pdf.ts';
import { paperFor } from '../terminal/paper.ts';
import { plateNotes, platePage, plateTitle } from '../terminal/plate-page.ts';

const KINDS = ['top', 'gusset', 'standoff', 'pad'] as const;
type Kind = (typeof KINDS)[number];

/** Sizes that a plate may be told by; which it needs hangs on its kind. */
const SIZES = [
  'thickness',
  'length',
  'width',
  'radius',
  'stud',
  'bolt',
  'boltAlong',
  'boltAcross',
  'slot',
  'foot',
  'height',
  'toe',
  'relief',
  'web',
  'flange',
  'kerf',
] as const;
type Size = (typeof SIZES)[number];
type Sizes = Readonly<Partial<Record<Size, number>>>;

const NEEDED: Readonly<Record<Kind, readonly Size[]>> = {
  top: ['thickness', 'length', 'width'],
  gusset: ['thickness', 'foot', 'height'],
  standoff: ['thickness', 'length', 'web', 'flange'],
  pad: ['thickness', 'length'],
};

export type PlateOptions = Readonly<Partial<Record<Size, string>>> & {
  readonly out?: string;
  readonly paper?: string;
  readonly units?: string;
};

/** `lastinch plate KIND`: a plate to cut, as DXF or SVG in true scale, or as a paper template. */
export async function plate(kind: string, options: PlateOptions): Promise<ExitCode> {
  const units = unitsAsked(options.units);
  if (!units.ok) return refuse(units.problems);
  const paper = paperAsked(options.paper);
  if (!paper.ok) return refuse(paper.problems);
  const made = plateAsked(kind, options);
  if (!made.ok) return refuse(made.problems);
  const { shape, kerf, system } = made.value;
  const page = paperFor(process.stdout, process.env, units.value ?? system);
  const title = plateTitle(shape, page);
  const { out } = options;
  if (out !== undefined) {
    const ending = out.toLowerCase().match(/\.(dxf|svg|pdf)$/)?.[1];
    if (ending === undefined) return refuse([option('--out', out, 'a name that ends in .dxf, .svg or .pdf')]);
    if (ending === 'pdf' && !fitsPaper(shape, paper.value))
      return refuse([option('--paper', paper.value, 'a sheet that is larger than the plate; or .dxf, .svg')]);
    const bytes =
      ending === 'pdf'
        ? await pdfOf(plateTemplate(shape, paper.value, title, plateNotes(shape, page)))
        : good(Buffer.from(ending === 'dxf' ? plateDxf(shape, kerf) : plateSvg(shape, kerf, title)));
    if (!bytes.ok) return refuse(bytes.problems);
    const written = writeOver(out, bytes.value);
    if (!written.ok) return refuse(written.problems);
  }
  writeLines(platePage({ shape, kerf, doubts: plateDoubts(shape), out: out ?? null }, page));
  return 0;
}

const option = (key: string, found: string, accepted: string): Problem => ({
  code: 'ask-option',
  where: { key },
  found,
  accepted,
});

interface AskedPlate {
  readonly shape: Plate;
  readonly kerf: number;
  /** That of the first size as it was typed. */
  readonly system: UnitSystem;
}

function plateAsked(word: string, options: PlateOptions): Result<AskedPlate> {
  const kind = KINDS.find((one) => one === word);
  if (kind === undefined) return bad(option('KIND', word, KINDS.join(', ')));
  const sizes = sizesTyped(options);
  if (!sizes.ok) return sizes;
  const missing = NEEDED[kind].filter((size) => sizes.value[size] === undefined);
  if (missing.length > 0)
    return bad(
      ...missing.map((size) => option(flagOf(size), 'nothing', 'a length, for example 4 in or 100 mm')),
    );
  const shape = shapeOf(kind, sizes.value);
  const kerf = sizes.value.kerf ?? 0;
  const problems = plateProblems(shape, kerf);
  if (problems.length > 0)
    return bad(...problems.map((one) => ({ ...one, where: { key: `--${one.where.key}` } })));
  // A kerf is known in millimetres, whatever the rig is built in.
  const typed = SIZES.filter((size) => size !== 'kerf').map((size) => options[size] ?? '');
  return good({ shape, kerf, system: /\d\s*[cm]?m\b/.test(typed.join(' ')) ? 'metric' : 'shop' });
}

const flagOf = (size: Size): string => `--${size.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}`;

function sizesTyped(options: PlateOptions): Result<Sizes> {
  const sizes: Partial<Record<Size, number>> = {};
  const problems: Problem[] = [];
  for (const size of SIZES) {
    const text = options[size];
    if (text === undefined) continue;
    const read = parseQuantity(text, 'length', { key: flagOf(size) });
    if (!read.ok) problems.push(...read.problems);
    else if (read.value.value < 0) problems.push(option(flagOf(size), text, 'a length of zero or more'));
    else sizes[size] = read.value.value;
  }
  return problems.length > 0 ? bad(...problems) : good(sizes);
}

/** A blunt end is as high as the plate is thick, a weld of that leg clears the corner: common practice, no source. */
function shapeOf(kind: Kind, sizes: Sizes): Plate {
  const { thickness = 0, length = 0, radius, stud = 0 } = sizes;
  switch (kind) {
    case 'top':
      return topPlate(
        { thickness, length, width: sizes.width ?? length, radius: radius ?? 0 },
        stud,
        boltsOf(sizes),
      );
    case 'pad': {
      const { width = length } = sizes;
      const round = sizes.width === undefined && radius === undefined;
      return padPlate({ thickness, length, width, radius: radius ?? (round ? length / 2 : 0) }, stud);
    }
    case 'gusset': {
      const { foot = 0, height = 0, toe = thickness, relief = 2 * thickness } = sizes;
      return gussetPlate({ foot, height, thickness, toe, relief });
    }
    case 'standoff': {
      const { web = 0, flange = 0 } = sizes;
      return standoffPlate({ length, web, flange, thickness, insideRadius: radius ?? thickness }, stud);
    }
  }
}

const boltsOf = ({ bolt, boltAlong, boltAcross, slot = 0 }: Sizes): BoltPattern | null =>
  bolt === undefined || boltAlong === undefined || boltAcross === undefined
    ? null
    : { diameter: bolt, along: boltAlong, across: boltAcross, slot };
