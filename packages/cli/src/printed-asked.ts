import { type Dimension, type Problem, parseQuantity } from '@lastinch/core';
import { readMaterial } from '@lastinch/core/rigfile';
import { PRINT_MATERIALS, type PrintMaterial, type PrintMaterialName } from '@lastinch/core/stops';
import { readRigText } from './hosts/files.ts';

/** Options that tell the outline, the solid parts and the cells of a printed stop. */
export interface PrintedOptions {
  readonly height: string;
  readonly diameter: string;
  readonly bore?: string;
  readonly cell?: string;
  readonly wall?: string;
  readonly skin?: string;
  readonly foot?: string;
  readonly cap?: string;
  readonly vents?: string;
}

/** Two lines of a 0.4 mm nozzle; a cell that leaves walls room to bend. */
const USUAL_WALL = '0.8 mm';
const USUAL_CELL = '10 mm';

/** Reads options one by one and keeps what is wrong with each. */
export class OptionReader {
  readonly problems: Problem[] = [];

  refuse(key: string, found: string, accepted: string): void {
    this.problems.push({ code: 'ask-option', where: { key }, found, accepted });
  }

  list(key: string, text: string, dimension: Dimension): readonly number[] {
    return text.split(',').map((each) => {
      const read = parseQuantity(each, dimension, { key });
      if (!read.ok) this.problems.push(...read.problems);
      return read.ok ? read.value.value : Number.NaN;
    });
  }

  one(key: string, text: string, dimension: Dimension): number {
    const [value = Number.NaN, ...more] = this.list(key, text, dimension);
    if (more.length > 0) this.refuse(key, text, 'one');
    return value;
  }
}

/** Outline, cells, solid parts and vents as typed; what cannot be read goes to the reader's problems. */
export function printedAsked(options: PrintedOptions, reader: OptionReader) {
  const length = (key: string, text: string | undefined): number =>
    text === undefined ? 0 : reader.one(key, text, 'length');
  const [foot = Number.NaN, tip = foot, ...more] = reader.list('--diameter', options.diameter, 'length');
  if (more.length > 0)
    reader.refuse('--diameter', options.diameter, 'one, or that of the foot and that of the tip');
  return {
    height: reader.one('--height', options.height, 'length'),
    diameters: [foot, tip] as const,
    bore: length('--bore', options.bore),
    ...cellsAsked(options, reader),
    skin: length('--skin', options.skin),
    foot: length('--foot', options.foot),
    cap: length('--cap', options.cap),
    vents: ventsAsked(options.vents, reader),
  };
}

export const cellsAsked = ({ cell, wall }: Pick<PrintedOptions, 'cell' | 'wall'>, reader: OptionReader) => ({
  cell: reader.one('--cell', cell ?? USUAL_CELL, 'length'),
  wall: reader.one('--wall', wall ?? USUAL_WALL, 'length'),
});

function ventsAsked(text: string | undefined, reader: OptionReader) {
  if (text === undefined) return null;
  const holes = /^\s*(\d+)\s*[x×]\s*(.+)$/.exec(text);
  if (holes === null) {
    reader.refuse('--vents', text, 'how many and how wide, for example "2 x 4 mm"');
    return null;
  }
  return { count: Number(holes[1]), diameter: reader.one('--vents', holes[2] ?? '', 'length') };
}

/** A printed elastomer that is known as a band, or the file of one whose coupons were pressed. */
export async function materialAsked(
  text: string | undefined,
  reader: OptionReader,
): Promise<PrintMaterialName | PrintMaterial | null> {
  const name = PRINT_MATERIALS.find((one) => one === (text ?? 'tpu-95a'));
  if (name !== undefined || text === undefined) return name ?? null;
  if (!/[./\\]/.test(text)) {
    reader.refuse('--material', text, `${PRINT_MATERIALS.join(', ')}, or a file of lastinch stop correct`);
    return null;
  }
  const file = await readRigText(text);
  const read = file.ok ? readMaterial(file.value.text, file.value.file) : file;
  if (!read.ok) reader.problems.push(...read.problems);
  return read.ok ? read.value : null;
}

/** As it is called in a heading. */
export const materialName = (material: PrintMaterialName | PrintMaterial): string =>
  typeof material === 'string' ? material : material.name;
