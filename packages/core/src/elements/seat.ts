import type { Driver } from '../rig/driver.ts';
import type { ValueOf } from '../rig/reading.ts';

/** What rests on a seat, and the seat under it, linear about sitting still. */
export interface SeatUnder {
  /** [kg] */
  readonly mass: number;
  /** [N/m] */
  readonly rate: number;
  /** [N·s/m] */
  readonly damping: number;
}

/**
 * A driver on his seat as one mass on a spring and a damper, m = share·mass, c = 2·ζ·√(k·m), and k from what was read:
 *
 *     typed, or m·g ÷ sag, or m·(2π·f)²
 *
 * @param gravity – [m/s²]
 * @validity one stiffness for every depth: foam is stiffer the deeper it is pressed, so that the sag of a thick cushion
 *   reads softer than it is about the place where he sits. He is one lump, belts and backrest hold nothing.
 * @source mass on a spring; that about three quarters of a sitter rest on the seat is common practice, no source
 */
export function seatUnder({ mass, onSeat, cushion }: Driver, of: ValueOf, gravity: number): SeatUnder {
  const seated = of(onSeat) * of(mass);
  const rate = rateUnder(cushion, seated, of, gravity);
  return { mass: seated, rate, damping: 2 * of(cushion.dampingRatio) * Math.sqrt(rate * seated) };
}

function rateUnder(
  { rate, sag, frequency }: Driver['cushion'],
  seated: number,
  of: ValueOf,
  gravity: number,
): number {
  if (rate) return of(rate);
  if (sag) return (seated * gravity) / of(sag);
  if (frequency) return seated * (2 * Math.PI * of(frequency)) ** 2;
  throw new Error('seatUnder: a cushion has a rate, a sag or a frequency');
}
