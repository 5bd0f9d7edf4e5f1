import { bad, good, type Result, type UnitSystem } from '@lastinch/core';
import { readPressFile } from '@lastinch/core/rigfile';
import {
  designForNeed,
  designStop,
  type NeedDesign,
  type PrintMaterial,
  type PrintMaterialName,
  type StopDesignRequest,
  targetFault,
  type WantedCurve,
} from '@lastinch/core/stops';
import { unitsAsked } from './asked.ts';
import { type BandOptions, bandAsked, bandProblems } from './band-asked.ts';
import { readRigText } from './hosts/files.ts';
import { progressLine } from './hosts/progress.ts';
import { materialAsked, OptionReader, type PrintedOptions, printedAsked } from './printed-asked.ts';

/** Options that tell a printed stop and the curve that it is designed for. */
export interface DesignOptions extends PrintedOptions, BandOptions {
  readonly need?: string;
  readonly material?: string;
  readonly target?: string;
  readonly density?: string;
  readonly columns?: string;
  readonly units?: string;
}

const TRIALS = 100;
const SEED = 1;

/** What was typed of a printed stop, read but not worked out. */
export interface AskedDesign {
  readonly shape: ReturnType<typeof printedAsked>;
  readonly material: PrintMaterialName | PrintMaterial;
  readonly density: readonly number[] | null;
  readonly system: UnitSystem;
}

/** A design, and the end that it is for where one was named. */
export type Designed = Omit<NeedDesign, 'need'> & { readonly need: NeedDesign['need'] | null };

/**
 * Reads the options of a design.
 *
 * @param more – reads what a command asks for beyond it, into the same list of problems
 */
export async function designAsked(
  options: DesignOptions,
  more: (reader: OptionReader) => void = () => {},
): Promise<Result<AskedDesign>> {
  const reader = new OptionReader();
  const units = unitsAsked(options.units);
  if (!units.ok) reader.problems.push(...units.problems);
  const shape = printedAsked(options, reader);
  const material = await materialAsked(options.material, reader);
  const density = options.density === undefined ? null : reader.list('--density', options.density, 'ratio');
  const given = [options.target, options.density, options.need].filter((one) => one !== undefined);
  if (given.length !== 1)
    reader.refuse(
      '--target',
      given.join(' and '),
      'one of --target CURVE.csv, --density "50 %, 30 %", --need RIG.yaml --end front',
    );
  more(reader);
  if (reader.problems.length > 0 || material === null || !units.ok) return bad(...reader.problems);
  const system =
    units.value ?? (/\bin\b|"/.test(`${options.height} ${options.diameter}`) ? 'shop' : 'metric');
  return good({ shape, material, density, system });
}

/** Works a design out: for an end of a rig, for a curve in a file, or for densities. */
export function designed(
  { shape, material, density }: AskedDesign,
  options: DesignOptions,
): Promise<Result<Designed>> {
  const asked = { ...shape, material, trials: TRIALS, seed: SEED };
  return options.need === undefined
    ? designOf(asked, density, options)
    : forNeed(options.need, asked, options);
}

type Asked = Omit<StopDesignRequest, 'target' | 'density'>;

/** For a curve in a file, or for densities. */
async function designOf(
  asked: Asked,
  density: readonly number[] | null,
  options: DesignOptions,
): Promise<Result<Designed>> {
  const wanted =
    options.target === undefined ? good(null) : await wantedCurve(options.target, options, asked);
  if (!wanted.ok) return wanted;
  const answer = designStop({ ...asked, target: wanted.value, density });
  return answer.ok ? good({ design: answer.value, need: null }) : answer;
}

/** For one end of a rig. */
async function forNeed(file: string, asked: Asked, options: DesignOptions): Promise<Result<Designed>> {
  const band = await bandAsked(file, options);
  if (!band.ok) return band;
  const progress = progressLine(process.stderr);
  const answer = designForNeed(band.value, asked, (share) => progress.show('driving stops', share));
  progress.clear();
  return answer.ok ? answer : bad(...bandProblems(answer.problems));
}

/** A wanted curve out of a file, each fault with its line. */
async function wantedCurve(
  file: string,
  { columns }: DesignOptions,
  shape: Pick<Asked, 'height' | 'foot' | 'cap'>,
): Promise<Result<WantedCurve>> {
  const text = await readRigText(file);
  if (!text.ok) return text;
  const read = readPressFile(text.value.text, { file: text.value.file, columns: columns ?? null, ram: null });
  if (!read.ok) return read;
  const curve = { crush: read.value.travel, force: read.value.force };
  const fault = targetFault(curve, shape);
  if (fault === null) return good(curve);
  const line = fault.point === undefined ? undefined : read.value.line[fault.point];
  const where = { file: text.value.file, ...(line !== undefined && { line }) };
  return bad({ code: 'stop-design-target', where, found: fault.found, accepted: fault.accepted });
}
