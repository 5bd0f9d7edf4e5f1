import { bad, good, type Result } from '@lastinch/core';
import { readPressFile } from '@lastinch/core/rigfile';
import {
  designForNeed,
  designStop,
  type NeedDesign,
  type StopDesignRequest,
  targetFault,
  type WantedCurve,
} from '@lastinch/core/stops';
import { type ExitCode, refuse, unitsAsked } from '../asked.ts';
import { type BandOptions, bandAsked, bandProblems } from '../band-asked.ts';
import { readRigText } from '../hosts/files.ts';
import { writeJson, writeLines } from '../hosts/output.ts';
import { progressLine } from '../hosts/progress.ts';
import { stopDesignJson } from '../json/stop-design-json.ts';
import { materialAsked, OptionReader, type PrintedOptions, printedAsked } from '../printed-asked.ts';
import { paperFor } from '../terminal/paper.ts';
import { stopDesignPage } from '../terminal/stop-design-page.ts';

export interface StopDesignOptions extends PrintedOptions, BandOptions {
  readonly need?: string;
  readonly material?: string;
  readonly target?: string;
  readonly density?: string;
  readonly columns?: string;
  readonly units?: string;
  readonly json?: boolean;
}

const TRIALS = 100;
const SEED = 1;

/** `lastinch stop design`: the density along the height of a printed stop, or the curve of given densities. */
export async function stopDesigned(options: StopDesignOptions): Promise<ExitCode> {
  const reader = new OptionReader();
  const units = unitsAsked(options.units);
  if (!units.ok) reader.problems.push(...units.problems);
  const shape = printedAsked(options, reader);
  const material = materialAsked(options.material, reader);
  const density = options.density === undefined ? null : reader.list('--density', options.density, 'ratio');
  const given = [options.target, options.density, options.need].filter((one) => one !== undefined);
  if (given.length !== 1)
    reader.refuse(
      '--target',
      given.join(' and '),
      'one of --target CURVE.csv, --density "50 %, 30 %", --need RIG.yaml --end front',
    );
  if (reader.problems.length > 0 || material === null || !units.ok) return refuse(reader.problems);

  const asked = { ...shape, material, trials: TRIALS, seed: SEED };
  const answer =
    options.need === undefined
      ? await designOf(asked, density, options)
      : await forNeed(options.need, asked, options);
  if (!answer.ok) return refuse(answer.problems);
  const { design, need } = answer.value;
  const system =
    units.value ?? (/\bin\b|"/.test(`${options.height} ${options.diameter}`) ? 'shop' : 'metric');
  if (options.json) writeJson(stopDesignJson({ material, design, need }, system));
  else writeLines(stopDesignPage({ material, design, need }, paperFor(process.stdout, process.env, system)));
  return need !== null && need.breaks.middle.length > 0 ? 1 : 0;
}

type Asked = Omit<StopDesignRequest, 'target' | 'density'>;
type Designed = Omit<NeedDesign, 'need'> & { readonly need: NeedDesign['need'] | null };

/** For a curve in a file, or for densities. */
async function designOf(
  asked: Asked,
  density: readonly number[] | null,
  options: StopDesignOptions,
): Promise<Result<Designed>> {
  const wanted =
    options.target === undefined ? good(null) : await wantedCurve(options.target, options, asked);
  if (!wanted.ok) return wanted;
  const answer = designStop({ ...asked, target: wanted.value, density });
  return answer.ok ? good({ design: answer.value, need: null }) : answer;
}

/** For one end of a rig. */
async function forNeed(file: string, asked: Asked, options: StopDesignOptions): Promise<Result<Designed>> {
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
  { columns }: StopDesignOptions,
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
