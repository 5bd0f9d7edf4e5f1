/**
 * Air through a small hole in a hollow stop.
 *
 * @source compressible flow through a nozzle, any gas dynamics text (from memory); the choked form was read in an open
 *   reference on pressurised tanks
 */
const HEAT_RATIO = 1.4;
/** Gas constant of air [J/(kg·K)]. */
const GAS_CONSTANT = 287.05;
const CHOKED_FACTOR = Math.sqrt(
  (HEAT_RATIO / GAS_CONSTANT) * (2 / (HEAT_RATIO + 1)) ** ((HEAT_RATIO + 1) / (HEAT_RATIO - 1)),
);

/** Downstream ÷ upstream pressure at and below which the hole is choked. */
export const CRITICAL_RATIO = (2 / (HEAT_RATIO + 1)) ** (HEAT_RATIO / (HEAT_RATIO - 1));

export interface Vent {
  /** Of the hole [m²]. */
  readonly area: number;
  /** Contraction of the jet: about 0.62 for a sharp edge, 1 for a rounded one. */
  readonly discharge: number;
}

/**
 * Mass flow [kg/s]: ṁ = Cd·A·p₁/√T · √(2γ/((γ−1)R)·(r^{2/γ} − r^{(γ+1)/γ})), r = p₂/p₁ held at the critical ratio.
 *
 * @param upstream – absolute [Pa]
 * @param downstream – absolute [Pa], at most upstream
 * @param temperature – upstream, absolute [K]
 */
export function ventFlow(
  { area, discharge }: Vent,
  upstream: number,
  downstream: number,
  temperature: number,
): number {
  const ratio = Math.max(downstream / upstream, CRITICAL_RATIO);
  if (ratio >= 1) return 0;
  const gain = (2 * HEAT_RATIO) / ((HEAT_RATIO - 1) * GAS_CONSTANT);
  const shape = ratio ** (2 / HEAT_RATIO) - ratio ** ((HEAT_RATIO + 1) / HEAT_RATIO);
  return ((discharge * area * upstream) / Math.sqrt(temperature)) * Math.sqrt(gain * shape);
}

/** Density of air at 20 °C and one atmosphere [kg/m³]. */
const AIR_DENSITY = 1.204;

/**
 * Pressure up to which air may be taken as incompressible: 0.1 of an atmosphere [Pa]. There steady compressible flow
 * (`ventFlow`, air no warmer inside) asks for 29 % more pressure than the law: as much as a discharge of ± 0.1 leaves open.
 */
export const VENT_HOLDS_BELOW = 0.1 * 101_325;

/**
 * Pressure over a vent ÷ square of the speed at which a face of `faceArea` closes, air taken as incompressible
 * [Pa·s²/m²]: (ρ/2)·(A ÷ (Cd·Aₒ))².
 */
export const ventResistance = ({ area, discharge }: Vent, faceArea: number): number =>
  (AIR_DENSITY / 2) * (faceArea / (discharge * area)) ** 2;

/**
 * Pressure over a vent while a face of `faceArea` closes at `speed`, air taken as incompressible [Pa]:
 * Δp = (ρ/2)·(A·v ÷ (Cd·Aₒ))². The force is Δp·faceArea, a loss ∝ v².
 *
 * @returns null where it does not hold: from 0.1 of an atmosphere the air's give counts, use `ventFlow`
 */
export function ventPressure(vent: Vent, faceArea: number, speed: number): number | null {
  const pressure = ventResistance(vent, faceArea) * speed ** 2;
  return pressure < VENT_HOLDS_BELOW ? pressure : null;
}

/**
 * Time in which a closed volume empties from one absolute pressure to another through a choked vent at constant
 * temperature [s]: τ·ln(p₁/p₂), τ = V ÷ (Cd·A·K·R·√T).
 *
 * @validity while choked: `to` at least the outside pressure ÷ 0.528
 */
export function blowDownTime(
  { area, discharge }: Vent,
  { volume, from, to, temperature }: { volume: number; from: number; to: number; temperature: number },
): number {
  const time = volume / (discharge * area * CHOKED_FACTOR * GAS_CONSTANT * Math.sqrt(temperature));
  return time * Math.log(from / to);
}

/**
 * Pressure above that outside at which a vent lets out as much air as a face of `faceArea` sweeps at a steady `speed`
 * [Pa]: ṁ(p) = ρ(p)·A·v, air no warmer than outside.
 *
 * @param outside – absolute [Pa]
 * @param temperature – absolute [K]
 * @returns null where the hole is choked before: then more pressure lets out no more volume, and the air is as good as
 *   shut in
 * @validity slow against the time that the pressure needs to come up; an upper bound for one short stroke
 */
export function steadyVentPressure(
  vent: Vent,
  faceArea: number,
  speed: number,
  { outside, temperature }: { readonly outside: number; readonly temperature: number },
): number | null {
  const sweeps = faceArea * speed;
  const lets = (inside: number): number =>
    (ventFlow(vent, inside, outside, temperature) * GAS_CONSTANT * temperature) / inside;
  let [low, high] = [outside, outside / CRITICAL_RATIO];
  if (lets(high) < sweeps) return null;
  for (let k = 0; k < 100 && high - low > 1e-12 * high; k += 1) {
    const middle = (low + high) / 2;
    if (lets(middle) < sweeps) low = middle;
    else high = middle;
  }
  return high - outside;
}
