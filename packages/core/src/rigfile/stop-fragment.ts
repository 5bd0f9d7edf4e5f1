import type { Dimension } from '../finding/figure.ts';
import { fromSi } from '../quantity/dimension.ts';
import type { UnitSystem } from '../quantity/quantity.ts';
import { shownUnit } from '../quantity/shown.ts';

/** What is known of a stop that goes on the shelf of a rig file. */
export interface ShelfStop {
  readonly name: string;
  /** Comment lines that say where it comes from. */
  readonly from: readonly string[];
  /** [m]; null when not measured. */
  readonly freeLength: number | null;
  /** [m], and its 95 % half-width. */
  readonly usableCrush: { readonly value: number; readonly tolerance: number };
  /** From zero, rising [m], [N]. */
  readonly crush: readonly number[];
  readonly force: readonly number[];
  readonly hysteresis: number | null;
  /** A marked estimate with its half-width; null when nothing is known. */
  readonly dynamicFactor: { readonly value: number; readonly tolerance: number } | null;
}

/** What a press test gave, as far as the shelf wants it. */
interface Pressed {
  readonly crush: readonly number[];
  readonly force: readonly number[];
  readonly usableCrush: { readonly value: number; readonly tolerance: number | null };
  readonly hysteresis: number | null;
  readonly isLossAbsurd: boolean;
  readonly dynamicFactor: { readonly value: number; readonly tolerance: number } | null;
}

/** A stop that was pressed, for the shelf. A loss that no stop has is left out. */
export const pressedStop = (
  fit: Pressed,
  {
    name,
    file,
    freeLength,
  }: { readonly name: string; readonly file: string; readonly freeLength: number | null },
): ShelfStop => ({
  name,
  from: [`Pressed: ${file}.`],
  freeLength,
  usableCrush: { value: fit.usableCrush.value, tolerance: fit.usableCrush.tolerance ?? 0 },
  crush: fit.crush,
  force: fit.force,
  hysteresis: fit.isLossAbsurd ? null : fit.hysteresis,
  dynamicFactor: fit.dynamicFactor,
});

/** Letters, digits, dashes: a name that needs no quotes and no dots in a key. */
export const isShelfName = (name: string): boolean => /^[A-Za-z][\w-]{0,39}$/.test(name);

/**
 * The stop as text for `parts.stops` of a rig file, with `parts:` and `stops:` above it.
 *
 * @invariant read back by `readRig` it is the same curve to five digits
 */
export function stopFragment(stop: ShelfStop, system: UnitSystem): string {
  const { crush, force, freeLength, usableCrush, hysteresis, dynamicFactor } = stop;
  const write = (value: number, dimension: Dimension): string => {
    const unit = shownUnit(dimension, system, value);
    return `${Number(fromSi(value, unit).toPrecision(5))} ${unit.name}`;
  };
  const half = Number(
    fromSi(usableCrush.tolerance, shownUnit('length', system, usableCrush.value)).toPrecision(2),
  );
  const rows = crush.map((c, i) => `        - [${write(c, 'length')}, ${write(force[i]!, 'force')}]`);
  const share = (value: number): number => Number((100 * value).toPrecision(2));
  return [
    'parts:',
    '  stops:',
    `    ${stop.name}:`,
    ...stop.from.map((line) => `      # ${line.replace(/[\r\n]+/g, ' ')}`),
    freeLength === null
      ? '      # freeLength: measure it; a swap of stops needs it'
      : `      freeLength: ${write(freeLength, 'length')}`,
    `      usableCrush: ${write(usableCrush.value, 'length')} ± ${half}`,
    '      curve:',
    ...rows,
    ...(hysteresis === null ? [] : [`      hysteresis: ${share(hysteresis)} %`]),
    ...(dynamicFactor === null
      ? []
      : [
          '      # Assumed from the material, not measured.',
          `      dynamicFactor: ~ ${dynamicFactor.value} ± ${dynamicFactor.tolerance}`,
        ]),
    '',
  ].join('\n');
}
