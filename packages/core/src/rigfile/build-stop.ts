import { HIT_SPEED, MOST_HYSTERESIS } from '../elements/stop-loss.ts';
import type { Stop } from '../rig/parts.ts';
import type { Reading } from '../rig/reading.ts';
import { buildGasStop } from './build-gas-stop.ts';
import { TAPED } from './build-spring.ts';
import { buildVent } from './build-vent.ts';
import { readForceTable } from './force-table.ts';
import type { Gaps } from './gaps.ts';
import type { ReadBeside } from './read-beside.ts';
import { STOP_EXPONENT, STOP_FORCE, type StopMaterial, USUAL } from './usual-value.ts';

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
  const hysteresis = gaps.typedReading(`${key}.hysteresis`, SHARE);
  if (hysteresis && hysteresis.value > MOST_HYSTERESIS)
    gaps.problem('rig-inconsistent', hysteresis.key, hysteresis.text, `at most ${100 * MOST_HYSTERESIS} %`);
  const dynamicFactor = gaps.typedReading(`${key}.dynamicFactor`, SHARE);
  if (dynamicFactor && dynamicFactor.value < 1)
    gaps.problem('rig-inconsistent', dynamicFactor.key, dynamicFactor.text, '1 or more');
  const gas = gaps.at(`${key}.gas`) === undefined ? null : buildGasStop(gaps, key, usableCrush);
  // Beside gas it is refused already.
  const vent = gas ? null : buildVent(gaps, `${key}.vent`);
  const shared = {
    id,
    freeLength,
    usableCrush,
    rateFactor: rateFactorOf(gaps, key, dynamicFactor, gas !== null),
    hysteresis,
    dynamicFactor,
    vent,
  };
  if (gas) return { ...shared, ...gas };
  const rule = { dimensions: ['length', 'force'], kind: 'stop' } as const;
  const table = readForceTable(gaps, `${key}.curve`, rule, readBeside);
  if (table) return { ...shared, gas, crush: table.first, force: table.second, origin: 'measured' };
  return { ...shared, gas, ...powerCurve(gaps, key, usableCrush.value) };
}

const SHARE = { dimension: 'ratio', tool: 'press-crush-tolerance' } as const;

/**
 * How much harder it is when hit is said once: by the rate factor, or by the dynamic factor, or by the oil of a gas stop.
 * Beside one of the other two a rate factor that nobody typed is none.
 */
function rateFactorOf(gaps: Gaps, key: string, dynamicFactor: Reading | null, gas: boolean): Reading {
  const spec = { dimension: 'stiffnessOverSpeed', tool: 'guess-tolerance' } as const;
  const typed = gaps.typedReading(`${key}.rateFactor`, spec);
  if (typed && dynamicFactor) {
    gaps.problem(
      'rig-inconsistent',
      dynamicFactor.key,
      dynamicFactor.text,
      `either this, at ${HIT_SPEED} m/s, or ${key}.rateFactor`,
    );
  }
  const usual = dynamicFactor || gas ? USUAL.noRateFactor : USUAL.stopRateFactor;
  return gaps.readingOr(`${key}.rateFactor`, spec, usual);
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
