import type { Dimension } from '../finding/figure.ts';
import { fromSi } from '../quantity/dimension.ts';
import type { UnitSystem } from '../quantity/quantity.ts';
import { shownUnit } from '../quantity/shown.ts';

/** A number that is no reading, with its half-width. */
interface Guess {
  readonly value: number;
  readonly tolerance: number;
}

/** An estimated stop for the shelf of a rig file: nothing in it may look measured. */
export type EstimatedStop =
  | {
      readonly kind: 'rubber' | 'polyurethane';
      readonly name: string;
      readonly from: string;
      readonly freeLength: number;
      readonly usableCrush: Guess;
      /** At the usable crush [N]. */
      readonly force: Guess;
    }
  | {
      readonly kind: 'gas';
      readonly name: string;
      readonly from: string;
      readonly rodDiameter: number;
      readonly pressure: number;
      readonly column: number;
      readonly stroke: number;
    };

/**
 * The stop as text for `parts.stops` of a rig file. A block is written by its force at full crush, so that the rig takes it
 * as a guess with an interval and never as a press test.
 */
export function estimateFragment(stop: EstimatedStop, system: UnitSystem): string {
  const write = (value: number, dimension: Dimension): string => {
    const unit = shownUnit(dimension, system, value);
    return `${Number(fromSi(value, unit).toPrecision(4))} ${unit.name}`;
  };
  const guess = ({ value, tolerance }: Guess, dimension: Dimension): string => {
    const unit = shownUnit(dimension, system, value);
    return `~ ${write(value, dimension)} ± ${Number(fromSi(tolerance, unit).toPrecision(2))}`;
  };
  const lines =
    stop.kind === 'gas'
      ? [
          `usableCrush: ${write(stop.stroke, 'length')}`,
          'gas:',
          `  rodDiameter: ${write(stop.rodDiameter, 'length')}`,
          `  pressure: ${write(stop.pressure, 'pressure')}`,
          `  column: ${write(stop.column, 'length')}`,
          '  # 1 slow, 1.4 fast.',
          '  index: ~ 1.2 ± 0.2',
        ]
      : [
          `freeLength: ${write(stop.freeLength, 'length')}`,
          `usableCrush: ${guess(stop.usableCrush, 'length')}`,
          `material: ${stop.kind}`,
          `forceAtFullCrush: ${guess(stop.force, 'force')}`,
        ];
  return [
    'parts:',
    '  stops:',
    `    ${stop.name}:`,
    `      # ${stop.from}`,
    '      # Estimated, not pressed.',
    ...lines.map((line) => `      ${line}`),
    '',
  ].join('\n');
}
