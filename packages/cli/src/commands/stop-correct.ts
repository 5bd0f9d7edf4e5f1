import { basename } from 'node:path';
import { bad, good, type Result } from '@lastinch/core';
import { isShelfName, materialText, readCoupons, readPressFile } from '@lastinch/core/rigfile';
import { type CorrectRequest, correctMaterial, fitStop } from '@lastinch/core/stops';
import { type ExitCode, refuse, unitsAsked } from '../asked.ts';
import { designedBody } from '../designed-body.ts';
import { readRigText, writeNewFile } from '../hosts/files.ts';
import { writeJson, writeLines } from '../hosts/output.ts';
import { materialAsked, OptionReader } from '../printed-asked.ts';
import { paperFor } from '../terminal/paper.ts';
import { stopCorrectPage } from '../terminal/stop-correct-page.ts';

export interface StopCorrectOptions {
  readonly coupons?: string;
  readonly stop?: string;
  readonly design?: string;
  readonly columns?: string;
  readonly material?: string;
  readonly name?: string;
  readonly out?: string;
  readonly units?: string;
  readonly json?: boolean;
}

/** `lastinch stop correct`: the material that presses of coupons and of a printed stop show. */
export async function stopCorrected(options: StopCorrectOptions): Promise<ExitCode> {
  const reader = new OptionReader();
  const units = unitsAsked(options.units);
  if (!units.ok) reader.problems.push(...units.problems);
  const before = await materialAsked(options.material, reader);
  if (options.coupons === undefined && options.stop === undefined)
    reader.refuse(
      '--coupons',
      '',
      '--coupons READINGS.csv, or --stop PRESS.csv --design DESIGN.json, or both',
    );
  if ((options.stop === undefined) !== (options.design === undefined))
    reader.refuse('--design', options.design ?? '', '--stop and --design together');
  const name = options.name ?? nameOf(options.coupons ?? options.stop ?? '');
  if (!isShelfName(name))
    reader.refuse('--name', name, 'letters, digits and dashes, a letter first, for example my-tpu');
  if (reader.problems.length > 0 || before === null || !units.ok) return refuse(reader.problems);

  const coupons = options.coupons === undefined ? good([]) : await couponsIn(options.coupons);
  if (!coupons.ok) return refuse(coupons.problems);
  const stops = options.stop === undefined ? good([]) : await stopIn(options.stop, options);
  if (!stops.ok) return refuse(stops.problems);
  const answer = correctMaterial({ name, before, coupons: coupons.value, stops: stops.value });
  if (!answer.ok) return refuse(answer.problems);
  const from = [
    `Printed material, read from ${[options.coupons, options.stop]
      .flatMap((file) => (file === undefined ? [] : [basename(file)]))
      .join(' and ')}: ${answer.value.readings} readings.`,
    '~ marks a number that no press has told yet.',
  ];
  const text = materialText(answer.value.material, from);
  if (options.out !== undefined) {
    const written = writeNewFile(options.out, text);
    if (!written.ok) return refuse(written.problems);
  }
  if (options.json)
    writeJson({ schema: 'lastinch/stop-correct/1', units: 'SI', ...answer.value, yaml: text });
  else
    writeLines(
      stopCorrectPage(
        { corrected: answer.value, text, out: options.out ?? null },
        paperFor(process.stdout, process.env, units.value ?? 'metric'),
      ),
    );
  return 0;
}

async function couponsIn(file: string): Promise<Result<CorrectRequest['coupons']>> {
  const text = await readRigText(file);
  return text.ok ? readCoupons(text.value.text, text.value.file) : text;
}

async function stopIn(
  file: string,
  { design, columns }: StopCorrectOptions,
): Promise<Result<CorrectRequest['stops']>> {
  const [text, drawn] = [await readRigText(file), await readRigText(design ?? '')];
  if (!text.ok) return text;
  if (!drawn.ok) return drawn;
  const body = designedBody(drawn.value.text, drawn.value.file);
  if (!body.ok) return body;
  const where = { file: text.value.file };
  const read = readPressFile(text.value.text, { ...where, columns: columns ?? null, ram: null });
  if (!read.ok) return read;
  // Offset and touch taken out as of any press.
  const fit = fitStop({ ...read.value, ...where, resolution: null, fullScale: null, material: null });
  return fit.ok
    ? good([{ body: body.value, crush: fit.value.crush, force: fit.value.force, where }])
    : bad(...fit.problems);
}

/** The name of the file as far as it can be a name: `My TPU.csv` is `My-TPU`. */
const nameOf = (file: string): string =>
  basename(file)
    .replace(/\.[^.]*$/, '')
    .replace(/[^\w-]+/g, '-')
    .replace(/^[^A-Za-z]+|-+$/g, '')
    .slice(0, 40) || 'pressed';
