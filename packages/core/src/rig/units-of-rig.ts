import type { UnitSystem } from '../quantity/quantity.ts';
import { readingsOf } from './readings.ts';
import type { Rig } from './rig.ts';
import { AS_MEASURED } from './setup.ts';
import { resolveSetup } from './setup-resolve.ts';

/** The units its owner typed most lengths in: answers come back in the units of the tape that was used. */
export function unitsOfRig(rig: Rig): UnitSystem {
  const setup = resolveSetup(rig, AS_MEASURED);
  if (!setup.ok) return 'shop';
  const typed = readingsOf(setup.value).filter((one) => one.dimension === 'length' && one.text !== '');
  const metric = typed.filter((one) => /\d\s*(mm|cm|m)\b/.test(one.text)).length;
  return metric * 2 > typed.length ? 'metric' : 'shop';
}
