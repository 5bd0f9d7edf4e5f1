import type { Dimension, Figure } from '../finding/figure.ts';
import { fromSi } from '../quantity/dimension.ts';
import { formatFigure, formatValue } from '../quantity/format.ts';
import type { UnitSystem } from '../quantity/quantity.ts';
import { shownUnit } from '../quantity/shown.ts';

/** A number of an estimate in so many digits as mean anything: `1200 lb`. */
export function roughText(value: number, dimension: Dimension, system: UnitSystem): string {
  const unit = shownUnit(dimension, system, value);
  return `${Number(fromSi(value, unit).toPrecision(2))} ${unit.name}`;
}

interface Fit {
  readonly crush: readonly number[];
  readonly force: readonly number[];
  readonly tolerance: number;
  readonly offset: Figure;
  readonly touch: Figure;
  readonly usableCrush: Figure;
  readonly hysteresis: number | null;
  readonly energy: number;
  readonly dynamicFactor: { readonly value: number; readonly tolerance: number } | null;
}

/** What a press test says, a name and a figure each. */
export function fitRows(
  fit: Fit,
  system: UnitSystem,
): readonly { readonly name: string; readonly text: string }[] {
  const { hysteresis, dynamicFactor } = fit;
  const [deep, top] = [fit.crush, fit.force].map((all) => all[all.length - 1] ?? 0) as [number, number];
  const deepest = formatFigure({ dimension: 'force', value: top, tolerance: fit.tolerance }, { system });
  return [
    { name: 'Touched at press travel', text: formatFigure(fit.touch, { system }) },
    { name: 'Gauge before touch', text: formatFigure(fit.offset, { system }) },
    { name: 'Deepest reading', text: `${formatValue(deep, 'length', { system })}, ${deepest}` },
    { name: 'Usable crush', text: formatFigure(fit.usableCrush, { system }) },
    { name: 'Work to there', text: formatValue(fit.energy, 'energy', { system }) },
    {
      name: 'Lost of what was put in',
      text: hysteresis === null ? 'unknown' : `${Math.round(100 * hysteresis)} %`,
    },
    {
      name: 'Harder when hit at 1 m/s',
      text:
        dynamicFactor === null
          ? 'unknown; name the material for the usual number'
          : `~ ${dynamicFactor.value} ± ${dynamicFactor.tolerance} times, assumed from the material`,
    },
  ];
}

/** Said where the way back of a press test gives a loss that no stop has. */
export const LOSS_ABSURD =
  'It gave back less than any stop does: the way back was not read well, and is left out.';

interface Estimate {
  readonly usableCrush: Figure;
  readonly energy: readonly [number, number, number];
  readonly warmed: number | null;
}

/** What an estimate by kind says, sentence by sentence. */
export const estimateLines = (
  { usableCrush, energy, warmed }: Estimate,
  system: UnitSystem,
): readonly string[] => [
  `Usable crush ${formatFigure(usableCrush, { system })}.`,
  `Held at the end of the curve: ${roughText(energy[0], 'energy', system)} to ${roughText(energy[2], 'energy', system)}.`,
  ...(warmed === null
    ? []
    : [
        `From 20 to 80 °C its charge rises ${warmed.toFixed(2)} times by gauge; charge it cold, check it hot.`,
      ]),
  'By hardness, density or charge alone a stop is known this badly: a press test settles it.',
];
