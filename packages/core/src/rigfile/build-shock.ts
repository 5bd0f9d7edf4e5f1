import { shockGasOf } from '../elements/shock-gas.ts';
import {
  type DampedCorner,
  dampingOfPush,
  dampingRatioTable,
  FASTEST_BY_HAND,
  handPushTable,
  measuredTable,
} from '../elements/shock-table.ts';
import type { End } from '../finding/place.ts';
import type { ShockGas, ShockSetting } from '../rig/parts.ts';
import { nominal, type Reading } from '../rig/reading.ts';
import type { Shock } from '../rig/rig.ts';
import { TAPED } from './build-spring.ts';
import { readForceTable } from './force-table.ts';
import type { Gaps } from './gaps.ts';
import { nearest } from './nearest.ts';
import type { ReadBeside } from './read-beside.ts';
import { USUAL, USUAL_DAMPING_RATIO } from './usual-value.ts';

/** Shock of one end. */
export function buildShock(
  gaps: Gaps,
  end: End,
  corner: DampedCorner,
  { ratio, spread }: { readonly ratio: Reading; readonly spread: Reading },
  readBeside: ReadBeside | undefined,
): Shock {
  const key = `${end}.shock`;
  const lengths = {
    rideLength: gaps.typedReading(`${key}.rideLength`, TAPED),
    collapsedLength: gaps.typedReading(`${key}.collapsedLength`, TAPED),
    extendedLength: gaps.typedReading(`${key}.extendedLength`, TAPED),
  };
  const friction = gaps.typedReading(`${key}.friction`, { dimension: 'force', tool: 'guess-tolerance' });
  const gas = buildGas(gaps, key);
  const topOutRate = gaps.typedReading(`${key}.topOutRate`, { dimension: 'rate', tool: 'guess-tolerance' });
  const held = {
    gas: shockGasOf({ gas, ...lengths }, nominal)?.force ?? 0,
    friction: friction?.value ?? 0,
  };
  const settings = buildSettings(gaps, `${key}.settings`, { ...corner, ...held }, readBeside);
  const shock = { ...lengths, ratio, spread, settings, setting: '', gas, friction, topOutRate };
  checkLengths(gaps, end, shock);
  return { ...shock, setting: chosenSetting(gaps, end, settings) };
}

/** Gas is known by charge and rod together, and its force at ride height by where the shaft stands then. */
function buildGas(gaps: Gaps, key: string): ShockGas | null {
  const pressureKey = `${key}.gasPressure`;
  const rodKey = `${key}.rodDiameter`;
  if (gaps.at(pressureKey) === undefined && gaps.at(rodKey) === undefined) return null;
  const pressure = gaps.typedReading(pressureKey, { dimension: 'pressure', tool: 'gauge-tolerance' });
  const rodDiameter = gaps.typedReading(rodKey, TAPED);
  if (!pressure) gaps.ask(pressureKey, '150 psi, 1000 kPa');
  if (!rodDiameter) gaps.ask(rodKey, '5/8 in, 16 mm');
  for (const length of ['rideLength', 'collapsedLength', 'extendedLength'])
    if (gaps.at(`${key}.${length}`) === undefined) gaps.ask(`${key}.${length}`, '21 1/4 in, 540 mm');
  const rise = gaps.readingOr(
    `${key}.gasRise`,
    { dimension: 'ratio', tool: 'guess-tolerance' },
    USUAL.shockGasRise,
  );
  return pressure && rodDiameter ? { pressure, rodDiameter, rise } : null;
}

/** Name of the setting that stands in when the file has none. */
const ESTIMATED_SETTING = 'estimated';

/** What a setting is reckoned from beside its own readings. */
interface ShockAround extends DampedCorner {
  /** Push of the gas [N], 0 where it was not measured. */
  readonly gas: number;
  /** Of the seals [N]. */
  readonly friction: number;
}

/** All settings of a shock; at least one. */
function buildSettings(
  gaps: Gaps,
  key: string,
  around: ShockAround,
  readBeside: ReadBeside | undefined,
): Readonly<Record<string, ShockSetting>> {
  const names = gaps.names(key);
  if (names.length === 0) {
    gaps.assumptions.push({ key: `${key}.${ESTIMATED_SETTING}`, what: 'value', rule: 'shock-damping-ratio' });
    const table = dampingRatioTable(USUAL_DAMPING_RATIO, around);
    return { [ESTIMATED_SETTING]: { id: ESTIMATED_SETTING, ...table, origin: 'assumed' } };
  }
  const settings: [string, ShockSetting][] = [];
  const rule = { dimensions: ['speed', 'force'], kind: 'shock' } as const;
  for (const id of names) {
    const here = `${key}.${id}`;
    if (gaps.at(`${here}.dampingRatio`) !== undefined) {
      gaps.assumptions.push({ key: here, what: 'value', rule: 'shock-damping-ratio' });
      const share = {
        compression: gaps.value(`${here}.dampingRatio.compression`) ?? USUAL_DAMPING_RATIO.compression,
        rebound: gaps.value(`${here}.dampingRatio.rebound`) ?? USUAL_DAMPING_RATIO.rebound,
      };
      settings.push([id, { id, ...dampingRatioTable(share, around), origin: 'guessed' }]);
    } else if (gaps.at(`${here}.handPush`) !== undefined) {
      const setting = pushed(gaps, here, id, around);
      if (setting) settings.push([id, setting]);
    } else {
      const table = readForceTable(gaps, here, rule, readBeside);
      if (table) settings.push([id, { id, ...measuredTable(table.first, table.second), origin: 'measured' }]);
    }
  }
  return Object.fromEntries(settings);
}

/** A push by hand becomes a low-speed estimate, marked; null when something is wrong with it. */
function pushed(gaps: Gaps, here: string, id: string, { gas, friction }: ShockAround): ShockSetting | null {
  const key = `${here}.handPush`;
  const speed = gaps.value(`${key}.speed`);
  const push = gaps.value(`${key}.push`);
  const pull = gaps.value(`${key}.pull`);
  if (gaps.at(`${key}.speed`) === undefined) gaps.ask(`${key}.speed`, '2 in/s, 50 mm/s');
  if (gaps.at(`${key}.push`) === undefined) gaps.ask(`${key}.push`, '150 lb, 700 N');
  if (speed === null || push === null) return null;
  if (speed > FASTEST_BY_HAND) {
    gaps.problem(
      'rig-inconsistent',
      `${key}.speed`,
      gaps.text(`${key}.speed`) ?? '',
      `at most ${FASTEST_BY_HAND} m/s: nobody pushes faster by hand, a bench curve goes into a table`,
    );
    return null;
  }
  const damping = dampingOfPush({ speed, push, pull }, gas, friction);
  const needs = `what gas (${Math.round(gas)} N) and seals (${Math.round(friction)} N) need by themselves`;
  for (const [name, force] of [
    ['push', damping.compression],
    ['pull', damping.rebound],
  ] as const) {
    if (force === null || force > 0) continue;
    gaps.problem(
      'rig-inconsistent',
      `${key}.${name}`,
      gaps.text(`${key}.${name}`) ?? '',
      `more than ${needs}`,
    );
    return null;
  }
  gaps.assumptions.push({ key: here, what: 'value', rule: 'shock-hand-push' });
  return { id, ...handPushTable(speed, damping), origin: 'guessed' };
}

function chosenSetting(gaps: Gaps, end: End, settings: Shock['settings']): string {
  const names = Object.keys(settings);
  const key = `${end}.shock.setting`;
  const typed = gaps.text(key);
  if (typed === undefined) return names[0] ?? '';
  // A setting whose table is faulty has its own problem already.
  const known = gaps.names(`${end}.shock.settings`);
  if (!Object.hasOwn(settings, typed) && !known.includes(typed)) {
    const accepted = [nearest(typed, names), ...names].filter((name) => name !== null);
    gaps.problem('rig-unknown-name', key, typed, [...new Set(accepted)].join(', '));
  }
  return typed;
}

function checkLengths(
  gaps: Gaps,
  end: End,
  shock: Pick<Shock, 'rideLength' | 'collapsedLength' | 'extendedLength'>,
): void {
  const { rideLength, collapsedLength, extendedLength } = shock;
  const order = [
    [collapsedLength, rideLength, 'rideLength', 'the collapsed length'],
    [rideLength, extendedLength, 'extendedLength', 'the length at ride'],
    [collapsedLength, extendedLength, 'extendedLength', 'the collapsed length'],
  ] as const;
  for (const [shorter, longer, name, than] of order) {
    if (!shorter || !longer || longer.value > shorter.value) continue;
    gaps.problem(
      'rig-inconsistent',
      `${end}.shock.${name}`,
      longer.text,
      `more than ${than}, ${shorter.text}`,
    );
    return;
  }
}
