import type { Dimension } from '../finding/figure.ts';
import { bad, good, type Problem, type Result, type Where } from '../finding/problem.ts';
import { parseQuantity } from '../quantity/parse.ts';
import { openDocument, type Plain, type RigDocument, shorten, whereOf } from './document.ts';
import { versionProblem } from './migrate/version.ts';
import { nearest } from './nearest.ts';

/** Numbers of a printed lattice's law, in the order that correlations are kept in. */
const NUMBERS = ['solidModulus', 'densityPower', 'softening', 'closing'] as const;
type LawNumber = (typeof NUMBERS)[number];

/** A printed material as it stands in a file of its own. */
export interface MaterialFile {
  readonly name: string;
  readonly middle: Readonly<Record<LawNumber, number>> & { readonly structure: 'sheet-gyroid' };
  /** 95 % half-widths; of the modulus in its logarithm. */
  readonly half: Readonly<Record<LawNumber, number>>;
  /** Row by row in the order modulus, density power, softening, closing. */
  readonly correlation: readonly number[];
  /** Numbers that presses have told; the others stand with `~`. */
  readonly told: readonly LawNumber[];
}

/** The same before it is known that a file can hold it. */
type MaterialToWrite = Omit<MaterialFile, 'middle'> & {
  readonly middle: Readonly<Record<LawNumber, number>>;
};

const KEYS = ['schema', 'printMaterial', 'structure', ...NUMBERS, 'together'] as const;
/** Least and most that a number can be in any elastomer that prints. */
const RANGE: Readonly<Record<LawNumber, readonly [number, number]>> = {
  solidModulus: [0.5e6, 500e6],
  densityPower: [-3, 3],
  softening: [0, 30],
  closing: [0.5, 3],
};
const ACCEPTED: Readonly<Record<LawNumber, string>> = {
  solidModulus: '0.5 to 500 MPa with its half-width, for example 31 MPa ± 3',
  densityPower: '-3 to 3 with its half-width, for example -0.1 ± 0.2',
  softening: '0 to 30 with its half-width, for example 1.8 ± 0.4',
  closing: '0.5 to 3 with its half-width, for example 1.2 ± 0.1',
};

/**
 * A printed material as text of a file: each number with its 95 % half-width, `~` where it was taken and not told by a press.
 *
 * @param from – what it was read from, a line each, without line ends
 */
export function materialText(material: MaterialToWrite, from: readonly string[]): string {
  const { name, middle, half, correlation, told } = material;
  const number = (key: LawNumber): string => {
    const scale = key === 'solidModulus' ? 1e6 : 1;
    const width = (half[key] * (key === 'solidModulus' ? middle.solidModulus : 1)) / scale;
    const value = Number((middle[key] / scale).toPrecision(6));
    const mark = told.includes(key) ? '' : '~ ';
    return `${key}: ${mark}${value}${key === 'solidModulus' ? ' MPa' : ''} ± ${Number(width.toPrecision(4))}`;
  };
  const pairs = NUMBERS.flatMap((one, i) =>
    NUMBERS.slice(i + 1).flatMap((other, k) => {
      const by = correlation[i * NUMBERS.length + i + 1 + k];
      return Math.abs(by) < 0.005
        ? []
        : [`  ${one}-${other}: ${Math.max(-0.999, Math.min(0.999, by)).toFixed(3)}`];
    }),
  );
  return [
    ...from.map((line) => `# ${line}`),
    'schema: 1',
    `printMaterial: ${name}`,
    'structure: sheet-gyroid',
    "# Young's modulus of the printed solid; the modulus goes with an extra (density ÷ 35 %)^power.",
    number('solidModulus'),
    number('densityPower'),
    '# How much walls soften as they bend, and that cells close at a strain of 1 − closing·density.',
    number('softening'),
    number('closing'),
    ...(pairs.length > 0 ? ['# How their errors go together.', 'together:', ...pairs] : []),
    '',
  ].join('\n');
}

/**
 * Reads a file of a printed material.
 *
 * @failure those of YAML text, `rig-schema-version`, `rig-key-missing`, `rig-key-unknown`, `rig-wrong-shape`,
 *   `quantity-out-of-range` and problems of quantities, each with file, line and key
 */
export function readMaterial(text: string, file: string): Result<MaterialFile> {
  const placed = (problems: readonly Problem[]): Result<MaterialFile> =>
    bad(...problems.map((one) => ({ ...one, where: { file, ...one.where } })));
  const { document, problems: broken } = openDocument(text);
  if (document === null || broken.length > 0) return placed(broken);
  const version = versionProblem(document);
  if (version !== null) return placed([version]);
  const problems: Problem[] = [];
  const plain = document.plain as Readonly<Record<string, Plain>>;
  for (const key of Object.keys(plain))
    if (!KEYS.some((known) => known === key)) {
      const meant = nearest(key, KEYS);
      const known = [...(meant === null ? [] : [meant]), ...KEYS.filter((one) => one !== meant)].join(', ');
      problems.push({ code: 'rig-key-unknown', where: whereOf(document, key), found: key, accepted: known });
    }
  const name = textAt(document, 'printMaterial', 'the name of the material', problems);
  const structure = textAt(document, 'structure', 'sheet-gyroid', problems);
  if (structure !== null && structure !== 'sheet-gyroid')
    problems.push(wrongShape(document, 'structure', structure, 'sheet-gyroid'));
  const numbers = NUMBERS.map((key) => numberAt(document, key, problems));
  const correlation = correlationsOf(document, plain.together, problems);
  if (problems.length > 0 || name === null) return placed(problems);
  const record = (of: (one: ReadNumber, key: LawNumber) => number) =>
    Object.fromEntries(NUMBERS.map((key, i) => [key, of(numbers[i], key)])) as Record<LawNumber, number>;
  return good({
    name,
    middle: { structure: 'sheet-gyroid', ...record(({ value }) => value) },
    half: record(({ value, half }, key) => (key === 'solidModulus' ? half / value : half)),
    correlation,
    told: NUMBERS.filter((_, i) => !numbers[i].isTaken),
  });
}

interface ReadNumber {
  readonly value: number;
  readonly half: number;
  readonly isTaken: boolean;
}

const wrongShape = (document: RigDocument, key: string, found: string, accepted: string): Problem => ({
  code: 'rig-wrong-shape',
  where: whereOf(document, key),
  found: shorten(found),
  accepted,
});

function textAt(document: RigDocument, key: string, accepted: string, problems: Problem[]): string | null {
  const text = document.typed.get(key);
  if (text !== undefined && text.trim() !== '') return text.trim();
  problems.push({ code: 'rig-key-missing', where: whereOf(document, key), found: '', accepted });
  return null;
}

function numberAt(document: RigDocument, key: LawNumber, problems: Problem[]): ReadNumber {
  const accepted = ACCEPTED[key];
  const text = textAt(document, key, accepted, problems);
  const none: ReadNumber = { value: Number.NaN, half: Number.NaN, isTaken: false };
  if (text === null) return none;
  const where: Where = whereOf(document, key);
  const dimension: Dimension = key === 'solidModulus' ? 'pressure' : 'ratio';
  const read = parseQuantity(text, dimension, where);
  if (!read.ok) {
    problems.push(...read.problems);
    return none;
  }
  const { value, plus, minus, assumed } = read.value;
  const [least, most] = RANGE[key];
  if (!(value >= least && value <= most) || plus === null || minus === null || !(plus >= 0)) {
    problems.push({ code: 'quantity-out-of-range', where, found: shorten(text), accepted });
    return none;
  }
  return { value, half: (plus + minus) / 2, isTaken: assumed };
}

function correlationsOf(
  document: RigDocument,
  plain: Plain | undefined,
  problems: Problem[],
): readonly number[] {
  const n = NUMBERS.length;
  const all: number[] = NUMBERS.flatMap((_, i) => NUMBERS.map((__, k) => (i === k ? 1 : 0)));
  if (plain === undefined) return all;
  const accepted = 'pairs of numbers, for example solidModulus-softening: 0.8';
  if (typeof plain !== 'object' || Array.isArray(plain)) {
    problems.push(wrongShape(document, 'together', String(plain), accepted));
    return all;
  }
  for (const [pair, value] of Object.entries(plain as Readonly<Record<string, Plain>>)) {
    const [i, k] = pair.split('-').map((one) => NUMBERS.indexOf(one as LawNumber));
    if (
      i === undefined ||
      k === undefined ||
      i < 0 ||
      k < 0 ||
      i === k ||
      typeof value !== 'number' ||
      Math.abs(value) >= 1
    )
      problems.push(
        wrongShape(
          document,
          `together.${pair}`,
          `${pair}: ${String(value)}`,
          `${accepted}, between -1 and 1`,
        ),
      );
    else all[i * n + k] = all[k * n + i] = value;
  }
  return all;
}
