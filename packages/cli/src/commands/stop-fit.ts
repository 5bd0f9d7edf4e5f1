import { basename } from 'node:path';
import { type Dimension, type Problem, parseQuantity, type Result } from '@lastinch/core';
import { isShelfName, pressedStop, readPressFile, stopFragment } from '@lastinch/core/rigfile';
import { fitStop, STOP_MATERIALS } from '@lastinch/core/stops';
import { type ExitCode, refuse, unitsAsked } from '../asked.ts';
import { readRigText, writeNewFile } from '../hosts/files.ts';
import { writeJson, writeLines } from '../hosts/output.ts';
import { stopFitJson } from '../json/stop-fit-json.ts';
import { paperFor } from '../terminal/paper.ts';
import { stopFitPage } from '../terminal/stop-fit-page.ts';

export interface StopFitOptions {
  readonly name?: string;
  readonly columns?: string;
  readonly ram?: string;
  readonly length?: string;
  readonly gaugeStep?: string;
  readonly gaugeEnd?: string;
  readonly material?: string;
  readonly units?: string;
  readonly out?: string;
  readonly json?: boolean;
}

/** `lastinch stop fit PRESS.csv`: a press test read, and the stop that it makes for `parts.stops`. */
export async function stopFitted(file: string, options: StopFitOptions): Promise<ExitCode> {
  const problems: Problem[] = [];
  const take = <T>(read: Result<T>): T | null => {
    if (!read.ok) problems.push(...read.problems);
    return read.ok ? read.value : null;
  };
  const typed = (key: string, text: string | undefined, dimension: Dimension): number | null => {
    if (text === undefined) return null;
    const value = take(parseQuantity(text, dimension, { key }))?.value ?? null;
    if (value === null || value > 0) return value;
    problems.push({ code: 'quantity-out-of-range', where: { key }, found: text, accepted: 'more than zero' });
    return null;
  };
  const units = take(unitsAsked(options.units));
  const ram = typed('--ram', options.ram, 'length');
  const freeLength = typed('--length', options.length, 'length');
  const resolution = typed('--gauge-step', options.gaugeStep, 'force');
  const fullScale = typed('--gauge-end', options.gaugeEnd, 'force');
  const material = STOP_MATERIALS.find((one) => one === options.material) ?? null;
  if (options.material !== undefined && material === null)
    problems.push(option('--material', options.material, STOP_MATERIALS.join(', ')));
  const name = options.name ?? nameOf(file);
  if (!isShelfName(name))
    problems.push(option('--name', name, 'letters, digits and dashes, a letter first, for example soft-60'));
  if (problems.length > 0) return refuse(problems);

  const text = await readRigText(file);
  if (!text.ok) return refuse(text.problems);
  const read = readPressFile(text.value.text, {
    file: text.value.file,
    columns: options.columns ?? null,
    ram,
  });
  if (!read.ok) return refuse(read.problems);
  const fitted = fitStop({ ...read.value, file: text.value.file, resolution, fullScale, material });
  if (!fitted.ok) return refuse(fitted.problems);
  const fit = fitted.value;
  if (freeLength !== null && freeLength <= (fit.crush[fit.crush.length - 1] ?? 0))
    return refuse([option('--length', options.length ?? '', 'more than the stop was pressed')]);

  const stop = pressedStop(fit, { name, file: basename(text.value.file), freeLength });
  const system =
    units ??
    (/\b(in|lb|lbf|psi)\b|"/.test(`${options.columns ?? ''} ${text.value.text}`) ? 'shop' : 'metric');
  const fragment = stopFragment(stop, system);
  if (options.out !== undefined) {
    const written = writeNewFile(options.out, fragment);
    if (!written.ok) return refuse(written.problems);
  }
  if (options.json) writeJson(stopFitJson(name, fit, fragment));
  else
    writeLines(
      stopFitPage(
        { name, file: text.value.file, fit, fragment, out: options.out ?? null },
        paperFor(process.stdout, process.env, system),
      ),
    );
  return 0;
}

const option = (key: string, found: string, accepted: string): Problem => ({
  code: 'ask-option',
  where: { key },
  found,
  accepted,
});

/** The name of the file as far as it can be a key: `Soft 60mm.csv` is `Soft-60mm`. */
function nameOf(file: string): string {
  const plain = basename(file)
    .replace(/\.[^.]*$/, '')
    .replace(/[^\w-]+/g, '-')
    .replace(/^[^A-Za-z]+|-+$/g, '')
    .slice(0, 40);
  return plain === '' ? 'pressed' : plain;
}
