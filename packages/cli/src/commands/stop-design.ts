import { type Dimension, type Problem, parseQuantity } from '@lastinch/core';
import { readPressFile } from '@lastinch/core/rigfile';
import { designStop, PRINT_MATERIALS } from '@lastinch/core/stops';
import { type ExitCode, refuse, unitsAsked } from '../asked.ts';
import { readRigText } from '../hosts/files.ts';
import { writeJson, writeLines } from '../hosts/output.ts';
import { stopDesignJson } from '../json/stop-design-json.ts';
import { paperFor } from '../terminal/paper.ts';
import { stopDesignPage } from '../terminal/stop-design-page.ts';

export interface StopDesignOptions {
  readonly height: string;
  readonly diameter: string;
  readonly bore?: string;
  readonly cell?: string;
  readonly wall?: string;
  readonly material?: string;
  readonly target?: string;
  readonly density?: string;
  readonly columns?: string;
  readonly units?: string;
  readonly json?: boolean;
}

/** Two lines of a 0.4 mm nozzle; a cell that leaves walls room to bend. */
const USUAL_WALL = '0.8 mm';
const USUAL_CELL = '10 mm';
const TRIALS = 100;
const SEED = 1;

/** `lastinch stop design`: the density along the height of a printed stop, or the curve of given densities. */
export async function stopDesigned(options: StopDesignOptions): Promise<ExitCode> {
  const problems: Problem[] = [];
  const list = (key: string, text: string, dimension: Dimension): readonly number[] =>
    text.split(',').map((each) => {
      const read = parseQuantity(each, dimension, { key });
      if (!read.ok) problems.push(...read.problems);
      return read.ok ? read.value.value : Number.NaN;
    });
  const option = (key: string, found: string, accepted: string) =>
    problems.push({ code: 'ask-option', where: { key }, found, accepted });
  const units = unitsAsked(options.units);
  if (!units.ok) problems.push(...units.problems);
  const [height = Number.NaN, ...taller] = list('--height', options.height, 'length');
  const [foot = Number.NaN, tip = foot, ...more] = list('--diameter', options.diameter, 'length');
  const [bore = 0] = options.bore === undefined ? [0] : list('--bore', options.bore, 'length');
  const [cell = Number.NaN] = list('--cell', options.cell ?? USUAL_CELL, 'length');
  const [wall = Number.NaN] = list('--wall', options.wall ?? USUAL_WALL, 'length');
  if (taller.length > 0) option('--height', options.height, 'one height');
  if (more.length > 0) option('--diameter', options.diameter, 'one, or that of the foot and that of the tip');
  const material = PRINT_MATERIALS.find((one) => one === (options.material ?? 'tpu-95a'));
  if (material === undefined) option('--material', options.material ?? '', PRINT_MATERIALS.join(', '));
  const density = options.density === undefined ? null : list('--density', options.density, 'ratio');
  if ((options.target === undefined) === (density === null))
    option('--target', options.target ?? '', 'either --target CURVE.csv or --density "50 %, 30 %"');
  if (problems.length > 0 || material === undefined || !units.ok) return refuse(problems);

  let target = null;
  if (options.target !== undefined) {
    const text = await readRigText(options.target);
    if (!text.ok) return refuse(text.problems);
    const asked = { file: text.value.file, columns: options.columns ?? null, ram: null };
    const read = readPressFile(text.value.text, asked);
    if (!read.ok) return refuse(read.problems);
    target = { crush: read.value.travel, force: read.value.force };
  }
  const answer = designStop({
    height,
    diameters: [foot, tip],
    bore,
    cell,
    wall,
    material,
    target,
    density,
    trials: TRIALS,
    seed: SEED,
  });
  if (!answer.ok)
    return refuse(
      answer.problems.map((one) =>
        one.code === 'stop-design-target' ? { ...one, where: { file: options.target ?? '' } } : one,
      ),
    );
  const system =
    units.value ?? (/\bin\b|"/.test(`${options.height} ${options.diameter}`) ? 'shop' : 'metric');
  if (options.json) writeJson(stopDesignJson(material, answer.value));
  else
    writeLines(
      stopDesignPage({ material, design: answer.value }, paperFor(process.stdout, process.env, system)),
    );
  return 0;
}
