import type { UnitSystem } from '@lastinch/core';
import type { SheetColumns } from '@lastinch/core/sheet';
import { columnDescription, columnScene, paperStyle, svgOf } from '@lastinch/picture';

/** Width for which the columns are laid out [px]: two by two, so that words stay legible on a bench. */
const WIDTH = 640;
/** Height of the travel of one row [px]: both rows, with heads and words, are no taller than a page. */
const HEIGHT = 250;

export const columnsTitle = ({ travel, against }: SheetColumns): string =>
  `Travel columns to scale: ${against.setup} beside ${travel.setup}`;

/** The travel columns of a sheet as a picture for print. */
export const columnsSvg = (block: SheetColumns, system: UnitSystem, idPrefix: string): string =>
  svgOf(columnScene(block.travel, { width: WIDTH, height: HEIGHT, system, against: block.against }), {
    title: columnsTitle(block),
    description: columnDescription(block.travel, { system, against: block.against }),
    idPrefix,
    style: paperStyle,
  });
