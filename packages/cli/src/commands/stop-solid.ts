import { extname } from 'node:path';
import { formatValue } from '@lastinch/core';
import { plateFor, type Seat, SOLID_FORMATS, type SolidFormat, THREADS, threadNamed } from '@lastinch/mesh';
import { type ExitCode, refuse } from '../asked.ts';
import { type DesignOptions, designAsked, designed } from '../design-asked.ts';
import { isTaken, writeOver } from '../hosts/files.ts';
import { writeJson, writeLines } from '../hosts/output.ts';
import { progressLine } from '../hosts/progress.ts';
import { makeSolid } from '../hosts/solid-maker.ts';
import { stopSolidJson } from '../json/stop-solid-json.ts';
import { materialName, type OptionReader } from '../printed-asked.ts';
import { paperFor } from '../terminal/paper.ts';
import { stopSolidPage } from '../terminal/stop-solid-page.ts';

export interface StopSolidOptions extends DesignOptions {
  readonly stud?: string;
  readonly seat?: string;
  readonly insert?: string;
  readonly out: string;
  readonly json?: boolean;
}

const SEATS = ['nut', 'clearance', 'insert'] as const;

/** `lastinch stop solid`: the solid of a printed stop as a file for a slicer. */
export async function stopSolid(options: StopSolidOptions): Promise<ExitCode> {
  let [seat, format]: [Seat | null, SolidFormat] = [null, '3mf'];
  const asked = await designAsked(options, (reader) => {
    seat = seatAsked(options, reader);
    format = formatAsked(options.out, reader);
  });
  if (!asked.ok) return refuse(asked.problems);
  const taken = isTaken(options.out);
  if (taken !== null) return refuse([taken]);
  // The plate that the seat needs stands below the lattice, and the curve is worked out with it.
  const foot = options.foot === undefined ? plateFor(seat) : asked.value.shape.foot;
  const shaped = { ...asked.value, shape: { ...asked.value.shape, foot } };
  const design = await designed(shaped, options);
  if (!design.ok) return refuse(design.problems);
  const { body } = design.value.design;
  const { cell, cap, vents } = shaped.shape;
  const title = `Stop, ${formatValue(body.height, 'length', { system: 'metric' })}`;
  const progress = progressLine(process.stderr);
  const made = await makeSolid(
    { body, cell, plate: foot, seat, cap, vents },
    { format, title },
    progress.show,
  );
  progress.clear();
  if (!made.ok) return refuse(made.problems);
  const written = writeOver(options.out, made.value.bytes);
  if (!written.ok) return refuse(written.problems);
  const { system } = asked.value;
  const material = materialName(asked.value.material);
  const told = {
    file: options.out,
    bytes: made.value.bytes.length,
    material,
    seat,
    wall: shaped.shape.wall,
    design: design.value.design,
    figures: made.value.solid.figures,
  };
  if (options.json) writeJson(stopSolidJson(told));
  else writeLines(stopSolidPage(told, paperFor(process.stdout, process.env, system)));
  return 0;
}

function formatAsked(file: string, reader: OptionReader): SolidFormat {
  const ending = extname(file).slice(1).toLowerCase();
  const format = SOLID_FORMATS.find((one) => one === ending);
  if (format === undefined)
    reader.refuse('--out', file, 'a name that ends with .3mf (knows its unit) or .stl (millimetres)');
  return format ?? '3mf';
}

function seatAsked({ stud, seat, insert }: StopSolidOptions, reader: OptionReader): Seat | null {
  const kind = SEATS.find((one) => one === (seat ?? (insert === undefined ? 'nut' : 'insert')));
  if (kind === undefined) {
    reader.refuse('--seat', seat ?? '', SEATS.join(', '));
    return null;
  }
  if (kind === 'insert') {
    const [diameter = Number.NaN, depth = Number.NaN, ...more] =
      insert === undefined ? [] : reader.list('--insert', insert, 'length');
    if (Number.isNaN(diameter + depth) || more.length > 0)
      reader.refuse(
        '--insert',
        insert ?? 'nothing',
        'width and depth of its hole as its maker says: "9.6 mm, 12 mm"',
      );
    return { kind, diameter, depth };
  }
  if (insert !== undefined) reader.refuse('--insert', insert, '--seat insert with it');
  if (stud === undefined) {
    if (seat !== undefined) reader.refuse('--seat', seat, '--stud with it: M10, or "3/8-16"');
    return null;
  }
  const thread = threadNamed(stud);
  if (thread === null) {
    reader.refuse('--stud', stud, THREADS.map(({ name }) => name).join(', '));
    return null;
  }
  return { kind, thread };
}
