import type { ShockSetting, Spring, Stop } from '../rig/parts.ts';
import { readForceTable } from './force-table.ts';
import type { Gaps } from './gaps.ts';
import type { ReadBeside } from './read-beside.ts';
import { STOP_EXPONENT, STOP_FORCE, type StopMaterial, USUAL, USUAL_DAMPING_RATIO } from './usual-value.ts';

/** A coil, on the rig or on the shelf. */
export function buildSpring(gaps: Gaps, key: string, id: string): Spring {
  const spring: Spring = {
    id,
    rate: gaps.needed(`${key}.rate`, { dimension: 'rate', tool: 'press-rate-tolerance' }),
    freeLength: gaps.typedReading(`${key}.freeLength`, TAPED),
    solidLength: gaps.typedReading(`${key}.solidLength`, TAPED),
  };
  const { freeLength, solidLength } = spring;
  if (freeLength && solidLength && solidLength.value >= freeLength.value) {
    gaps.problem(
      'rig-inconsistent',
      `${key}.solidLength`,
      solidLength.text,
      `less than the free length, ${freeLength.text}`,
    );
  }
  return spring;
}

export const TAPED = { dimension: 'length', tool: 'tape-tolerance' } as const;

/** A bump stop, on the rig or on the shelf. Without a press test its curve is a marked estimate. */
export function buildStop(gaps: Gaps, key: string, id: string, readBeside: ReadBeside | undefined): Stop {
  const freeLength = gaps.typedReading(`${key}.freeLength`, TAPED);
  // A free length says nothing about crush: it is asked for, never taken in its place.
  const usableCrush = gaps.needed(`${key}.usableCrush`, {
    dimension: 'length',
    tool: 'press-crush-tolerance',
  });
  if (freeLength && usableCrush.text !== '' && usableCrush.value >= freeLength.value) {
    gaps.problem(
      'rig-inconsistent',
      `${key}.usableCrush`,
      usableCrush.text,
      `less than the free length, ${freeLength.text}`,
    );
  }
  const rateFactor = gaps.readingOr(
    `${key}.rateFactor`,
    { dimension: 'stiffnessOverSpeed', tool: 'guess-tolerance' },
    USUAL.stopRateFactor,
  );
  const rule = { dimensions: ['length', 'force'], kind: 'stop' } as const;
  const table = readForceTable(gaps, `${key}.curve`, rule, readBeside);
  const shared = { id, freeLength, usableCrush, rateFactor };
  if (table) return { ...shared, crush: table.first, force: table.second, origin: 'measured' };
  return { ...shared, ...powerCurve(gaps, key, usableCrush.value) };
}

/** F = F_full·(x/x_full)ⁿ, exponent by material: common practice, no source. */
function powerCurve(gaps: Gaps, key: string, fullCrush: number): Pick<Stop, 'crush' | 'force' | 'origin'> {
  const material = (gaps.text(`${key}.material`) ?? 'rubber') as StopMaterial;
  const known = Object.hasOwn(STOP_EXPONENT, material);
  const exponent = known ? STOP_EXPONENT[material] : STOP_EXPONENT.rubber;
  const typed = gaps.value(`${key}.forceAtFullCrush`);
  if (gaps.at(`${key}.curve`) === undefined) {
    gaps.assumptions.push({ key: `${key}.curve`, what: 'value', rule: 'stop-curve-power' });
  }
  const fullForce = typed ?? (known ? STOP_FORCE[material] : STOP_FORCE.rubber);
  const shares = Array.from({ length: 11 }, (_, index) => index / 10);
  return {
    crush: shares.map((share) => share * fullCrush),
    force: shares.map((share) => fullForce * share ** exponent),
    origin: typed === null ? 'assumed' : 'guessed',
  };
}

/** What critical damping of a corner is reckoned from. */
export interface DampedCorner {
  /** Sprung mass on this corner, mean of both sides [kg]. */
  readonly sprungMass: number;
  /** Coil rate seen at the axle [N/m]. */
  readonly rateAtAxle: number;
  /** Shock travel ÷ axle travel. */
  readonly shockRatio: number;
}

/** Name of the setting that stands in when the file has none. */
const ESTIMATED_SETTING = 'estimated';

/** All settings of a shock; at least one. */
export function buildShockSettings(
  gaps: Gaps,
  key: string,
  corner: DampedCorner,
  readBeside: ReadBeside | undefined,
): Readonly<Record<string, ShockSetting>> {
  const names = gaps.names(key);
  if (names.length === 0) {
    gaps.assumptions.push({ key: `${key}.${ESTIMATED_SETTING}`, what: 'value', rule: 'shock-damping-ratio' });
    return {
      [ESTIMATED_SETTING]: fromDampingRatio(ESTIMATED_SETTING, USUAL_DAMPING_RATIO, corner, 'assumed'),
    };
  }
  const settings: [string, ShockSetting][] = [];
  const rule = { dimensions: ['speed', 'force'], kind: 'shock' } as const;
  for (const id of names) {
    const here = `${key}.${id}`;
    if (gaps.at(`${here}.dampingRatio`) === undefined) {
      const table = readForceTable(gaps, here, rule, readBeside);
      if (table) settings.push([id, throughZero(id, table.first, table.second)]);
      continue;
    }
    gaps.assumptions.push({ key: here, what: 'value', rule: 'shock-damping-ratio' });
    const ratio = {
      compression: gaps.value(`${here}.dampingRatio.compression`) ?? USUAL_DAMPING_RATIO.compression,
      rebound: gaps.value(`${here}.dampingRatio.rebound`) ?? USUAL_DAMPING_RATIO.rebound,
    };
    settings.push([id, fromDampingRatio(id, ratio, corner, 'guessed')]);
  }
  return Object.fromEntries(settings);
}

/** At rest a shock gives no damping force, whether or not the table has that row. */
function throughZero(id: string, speed: readonly number[], force: readonly number[]): ShockSetting {
  if (speed.includes(0)) return { id, speed, force, origin: 'measured' };
  const after = speed.findIndex((value) => value > 0);
  return {
    id,
    speed: [...speed.slice(0, after), 0, ...speed.slice(after)],
    force: [...force.slice(0, after), 0, ...force.slice(after)],
    origin: 'measured',
  };
}

/** Shaft speed from which the usual digressive shock rises at half its first slope: 10 in/s. */
const KNEE = 0.254;
const FASTEST = 3;

/**
 * Table of a shock out of shares of critical damping. At the axle c = 2ζ√(km); at the shaft, force and speed both
 * scale with the travel ratio r, so that F = c/r² · v, and beyond the knee half that slope.
 */
function fromDampingRatio(
  id: string,
  ratio: { readonly compression: number; readonly rebound: number },
  corner: DampedCorner,
  origin: ShockSetting['origin'],
): ShockSetting {
  const critical = 2 * Math.sqrt(corner.rateAtAxle * corner.sprungMass);
  const slope = (share: number) => (share * critical) / corner.shockRatio ** 2;
  const forceAt = (speed: number, share: number) =>
    slope(share) * (Math.min(speed, KNEE) + 0.5 * Math.max(0, speed - KNEE));
  return {
    id,
    speed: [-FASTEST, -KNEE, 0, KNEE, FASTEST],
    force: [
      -forceAt(FASTEST, ratio.rebound),
      -forceAt(KNEE, ratio.rebound),
      0,
      forceAt(KNEE, ratio.compression),
      forceAt(FASTEST, ratio.compression),
    ],
    origin,
  };
}
