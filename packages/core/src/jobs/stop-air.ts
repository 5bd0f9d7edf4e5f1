import { ATMOSPHERE } from '../elements/gas-chamber.ts';
import { steadyVentPressure } from '../elements/vent.ts';
import { pressedWithAir } from '../stopdesign/body-air.ts';
import { airVolume } from '../stopdesign/printed-body.ts';
import type { OnePrint, Pressed } from './print-spread.ts';

/** Round holes through the skin. */
export interface VentHoles {
  readonly count: number;
  /** [m] */
  readonly diameter: number;
}

/** What air in a skin adds to a stop at the end of its crush. */
export interface StopAir {
  /** At rest [m³]. */
  readonly volume: number;
  /** Force of shut air, pressed slowly and hit [N]; null where all of it would be squeezed out. */
  readonly slow: number | null;
  readonly hit: number | null;
  /**
   * Through the vents at `VENT_SPEED` [N], never more than shut air hit; `choked` where they let out less than is swept, so
   * that the air is as good as shut in; null without vents.
   */
  readonly vented: number | 'choked' | null;
}

/** Speed of a hit for which vents are told [m/s]: that of the usual dynamic factors. */
export const VENT_SPEED = 1;
/** A round hole with sharp edges. */
const DISCHARGE = 0.62;
const WARM = 293.15;

/**
 * Air in a skinned print: shut in, slowly (isothermal) and hit (adiabatic), and let out through vents at a steady speed.
 *
 * @param end – crush [m]
 */
export function stopAir(
  { body }: OnePrint,
  { layers, stateAt }: Pressed,
  { end, vents }: { readonly end: number; readonly vents: VentHoles | null },
): StopAir {
  const volume = airVolume(body);
  const walls = stateAt(end);
  const shut = (index: number): number | null => {
    const { state, pressure } = pressedWithAir(layers, walls.crush, { volume, index });
    return Number.isFinite(pressure) ? state.force - walls.force : null;
  };
  const hit = shut(1.4);
  if (vents === null) return { volume, slow: shut(1), hit, vented: null };
  // What the tip pushes in a straight body; in a tapered one the mean over its slices.
  const face = volumeSwept(layers, walls) / walls.crush;
  const area = vents.count * (Math.PI / 4) * vents.diameter ** 2;
  const pressure = steadyVentPressure({ area, discharge: DISCHARGE }, face, VENT_SPEED, {
    outside: ATMOSPHERE,
    temperature: WARM,
  });
  const force = pressure === null ? null : pressure * face;
  const isShut = force === null || (hit !== null && force > hit);
  return { volume, slow: shut(1), hit, vented: isShut ? 'choked' : force };
}

const volumeSwept = (layers: Pressed['layers'], { strain }: { readonly strain: Float64Array }): number =>
  layers.reduce((sum, { height, area }, i) => sum + height * area * strain[i], 0);
