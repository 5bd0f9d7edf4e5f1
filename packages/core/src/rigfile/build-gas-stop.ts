import { rodArea } from '../elements/gas-chamber.ts';
import { columnFor, gasStopOf } from '../elements/gas-stop.ts';
import type { Stop } from '../rig/parts.ts';
import { nominal, type Reading } from '../rig/reading.ts';
import { TAPED } from './build-spring.ts';
import type { Gaps } from './gaps.ts';
import { USUAL, usualGasColumn } from './usual-value.ts';

/** What else a stop with gas cannot have: its curve is worked out. */
const NOT_BESIDE_GAS = ['curve', 'material', 'hysteresis', 'dynamicFactor', 'vent'] as const;

/** Force at full stroke when neither it nor the column was measured: 3 to 9 kN. */
const USUAL_FULL_FORCE = 6e3;
/** Where a charge alone already gives more than that, the column is that of this squeeze. */
const LEAST_SQUEEZE = 2;

/** A gas-charged stop: readings of its gas, and the curve that they make over the usable crush. */
export function buildGasStop(
  gaps: Gaps,
  key: string,
  usableCrush: Reading,
): Pick<Stop, 'gas' | 'crush' | 'force' | 'origin'> {
  for (const name of NOT_BESIDE_GAS)
    if (gaps.at(`${key}.${name}`) !== undefined)
      gaps.problem('rig-inconsistent', `${key}.${name}`, name, `either this or ${key}.gas`);
  const pressure = { dimension: 'pressure', tool: 'gauge-tolerance' } as const;
  const parts = {
    rodDiameter: gaps.needed(`${key}.gas.rodDiameter`, TAPED),
    pressure: gaps.needed(`${key}.gas.pressure`, pressure),
    index: gaps.readingOr(
      `${key}.gas.index`,
      { dimension: 'ratio', tool: 'ratio-tolerance' },
      USUAL.gasIndex,
    ),
  };
  if (parts.index.value < 1 || parts.index.value > 1.7)
    gaps.problem('rig-inconsistent', parts.index.key, parts.index.text, '1 to 1.7');
  const stroke = usableCrush.value;
  const column = columnOf(gaps, key, parts, stroke);
  const oil = oilOf(gaps, key);
  const gas = { ...parts, column, oil };
  const origin = column.origin === 'assumed' ? 'assumed' : 'measured';
  // A column that is too short has its problem already; a curve is only made of one that is not.
  if (!(column.value > stroke)) return { gas, crush: [0, stroke], force: [0, 1], origin };
  const { crush, force } = gasStopOf(gas, stroke, nominal);
  return { gas, crush, force, origin };
}

function columnOf(
  gaps: Gaps,
  key: string,
  parts: { readonly rodDiameter: Reading; readonly pressure: Reading; readonly index: Reading },
  stroke: number,
): Reading {
  const chamber = {
    area: rodArea(parts.rodDiameter.value),
    pressure: parts.pressure.value,
    index: Math.max(1, parts.index.value),
  };
  const preload = chamber.area * chamber.pressure;
  const full = gaps.value(`${key}.forceAtFullCrush`);
  const asked = parts.rodDiameter.text !== '' && parts.pressure.text !== '';
  if (full !== null && full <= preload && asked) {
    gaps.problem(
      'rig-inconsistent',
      `${key}.forceAtFullCrush`,
      gaps.text(`${key}.forceAtFullCrush`) ?? '',
      `more than the charge pushes by itself, ${Math.round(preload)} N`,
    );
  }
  const force = full !== null && full > preload ? full : Math.max(USUAL_FULL_FORCE, LEAST_SQUEEZE * preload);
  const column = gaps.readingOr(
    `${key}.gas.column`,
    TAPED,
    usualGasColumn(columnFor(chamber, stroke, force), stroke),
  );
  if (column.value <= stroke)
    gaps.problem('rig-inconsistent', column.key, column.text, 'more than the usable crush');
  return column;
}

function oilOf(gaps: Gaps, key: string) {
  if (gaps.at(`${key}.gas.oil`) === undefined) return null;
  const force = gaps.typedReading(`${key}.gas.oil.force`, { dimension: 'force', tool: 'guess-tolerance' });
  const speed = gaps.typedReading(`${key}.gas.oil.speed`, { dimension: 'speed', tool: 'guess-tolerance' });
  if (!force) gaps.ask(`${key}.gas.oil.force`, '900 lb, 4 kN');
  if (!speed) gaps.ask(`${key}.gas.oil.speed`, '40 in/s, 1 m/s');
  return force && speed ? { force, speed } : null;
}
