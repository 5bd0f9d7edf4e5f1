import type { StopVent } from '../rig/parts.ts';
import type { ValueOf } from '../rig/reading.ts';
import { VENT_HOLDS_BELOW, ventResistance } from './vent.ts';

const disc = (diameter: number): number => (Math.PI / 4) * diameter ** 2;

/**
 * A vented stop for the ride. Its air pushes with `lossFactor`·v² while it closes [N·s²/m²],
 * (ρ/2)·A³ ÷ (Cd·n·Aₒ)², and gives nothing back; `holdsTo` is the closing speed [m/s] at which the pressure reaches a tenth
 * of an atmosphere, beyond which that law is not one.
 *
 * @param of – a sampled diameter is held at half the nominal one or more, a sampled discharge between 0.3 and 1
 * @validity air at sea level and 20 °C; the air space keeps its cross-section; `vent`
 */
export function stopVentOf(vent: StopVent, of: ValueOf) {
  const [cavity, hole] = [vent.cavity, vent.hole].map((one) => disc(Math.max(of(one), one.value / 2)));
  const discharge = Math.min(1, Math.max(0.3, of(vent.discharge)));
  const resistance = ventResistance({ area: vent.count * hole, discharge }, cavity);
  return { lossFactor: resistance * cavity, holdsTo: Math.sqrt(VENT_HOLDS_BELOW / resistance) };
}
