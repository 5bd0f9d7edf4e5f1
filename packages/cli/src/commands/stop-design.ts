import type { Problem } from '@lastinch/core';
import { readPressFile } from '@lastinch/core/rigfile';
import { designStop, targetFault, type WantedCurve } from '@lastinch/core/stops';
import { type ExitCode, refuse, unitsAsked } from '../asked.ts';
import { readRigText } from '../hosts/files.ts';
import { writeJson, writeLines } from '../hosts/output.ts';
import { stopDesignJson } from '../json/stop-design-json.ts';
import { materialAsked, OptionReader, type PrintedOptions, printedAsked } from '../printed-asked.ts';
import { paperFor } from '../terminal/paper.ts';
import { stopDesignPage } from '../terminal/stop-design-page.ts';

export interface StopDesignOptions extends PrintedOptions {
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
  if ((options.target === undefined) === (density === null))
    reader.refuse('--target', options.target ?? '', 'either --target CURVE.csv or --density "50 %, 30 %"');
  if (reader.problems.length > 0 || material === null || !units.ok) return refuse(reader.problems);

  const wanted = options.target === undefined ? null : await wantedCurve(options.target, options, shape);
  if (wanted !== null && 'problems' in wanted) return refuse(wanted.problems);
  const answer = designStop({ ...shape, material, target: wanted, density, trials: TRIALS, seed: SEED });
  if (!answer.ok) return refuse(answer.problems);
  const system =
    units.value ?? (/\bin\b|"/.test(`${options.height} ${options.diameter}`) ? 'shop' : 'metric');
  if (options.json) writeJson(stopDesignJson(material, answer.value));
  else
    writeLines(
      stopDesignPage({ material, design: answer.value }, paperFor(process.stdout, process.env, system)),
    );
  return 0;
}

/** A wanted curve out of a file, each fault with its line. */
async function wantedCurve(
  file: string,
  { columns }: StopDesignOptions,
  shape: { readonly height: number; readonly foot: number; readonly cap: number },
): Promise<WantedCurve | { readonly problems: readonly Problem[] }> {
  const text = await readRigText(file);
  if (!text.ok) return text;
  const read = readPressFile(text.value.text, { file: text.value.file, columns: columns ?? null, ram: null });
  if (!read.ok) return read;
  const curve = { crush: read.value.travel, force: read.value.force };
  const fault = targetFault(curve, shape);
  if (fault === null) return curve;
  const line = fault.point === undefined ? undefined : read.value.line[fault.point];
  const where = { file: text.value.file, ...(line !== undefined && { line }) };
  return {
    problems: [{ code: 'stop-design-target', where, found: fault.found, accepted: fault.accepted }],
  };
}
