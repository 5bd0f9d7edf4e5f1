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
      readonly kind: 'rubber' | 'polyurethane' | 'foam';
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

/** What was told of a stop that nobody pressed, as far as the shelf wants it. */
type Told =
  | {
      readonly kind: 'rubber' | 'polyurethane' | 'foam';
      readonly steps: readonly { readonly height: number }[];
    }
  | {
      readonly kind: 'gas';
      readonly rodDiameter: number;
      readonly pressure: number;
      readonly column: number;
      readonly stroke: number;
    };

interface Estimated {
  readonly crush: readonly number[];
  readonly least: readonly number[];
  readonly most: readonly number[];
  readonly usableCrush: { readonly value: number; readonly tolerance: number | null };
}

/** An estimate for the shelf: a block by the middle of its band at the usable crush. */
export function estimatedStop(
  told: Told,
  { crush, least, most, usableCrush }: Estimated,
  { name, from }: { readonly name: string; readonly from: string },
): EstimatedStop {
  if (told.kind === 'gas') return { ...told, name, from };
  const [low, high] = [least, most].map((force) => along(crush, force, usableCrush.value)) as [
    number,
    number,
  ];
  return {
    kind: told.kind,
    name,
    from,
    freeLength: told.steps.reduce((sum, step) => sum + step.height, 0),
    usableCrush: { value: usableCrush.value, tolerance: usableCrush.tolerance ?? 0 },
    force: { value: (low + high) / 2, tolerance: (high - low) / 2 },
  };
}

/** On straight lines between points. */
function along(crush: readonly number[], force: readonly number[], at: number): number {
  const k = crush.findIndex((c) => c >= at);
  const i = k === -1 ? crush.length - 1 : Math.max(1, k);
  const [c0, c1, f0, f1] = [crush[i - 1]!, crush[i]!, force[i - 1]!, force[i]!];
  return f0 + ((f1 - f0) * (at - c0)) / (c1 - c0);
}

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
