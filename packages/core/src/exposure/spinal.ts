import { bad, good, type Result } from '../finding/problem.ts';
import { resampled } from './resample.ts';
import { HIDDEN, OFFSET, OUTPUT } from './spinal-network.ts';

/** The rate for which the model's coefficients hold [Hz]. */
export const SPINAL_RATE = 160;

/** The only edition whose model is public enough to be built. */
export const SPINAL_EDITIONS = ['2004'] as const;
export type SpinalEdition = (typeof SPINAL_EDITIONS)[number];

/**
 * Which edition of ISO 2631-5 is asked for.
 *
 * @failure `ask-option` for 2018: its model for severe shocks is supplied as software only, and the one for lesser
 * shocks is not published openly, so neither can be built or checked here
 */
export function spinalEdition(text: string, key = 'edition'): Result<SpinalEdition> {
  const edition = SPINAL_EDITIONS.find((each) => each === text.trim());
  if (edition !== undefined) return good(edition);
  return bad({
    code: 'ask-option',
    where: { key },
    found: text,
    accepted: `${SPINAL_EDITIONS.join(', ')}; the model of the 2018 edition is not public and cannot be worked out here`,
  });
}

/**
 * Response of the lumbar spine to fore-and-aft or sideways acceleration:
 * y[t] = 0.0192752·u[t] + 0.00433451·u[t−1] − 0.0167763·u[t−2] + 1.957115·y[t−1] − 0.963949·y[t−2],
 * a mass on a spring with 2.125 Hz and ζ = 0.22, sampled.
 *
 * @param history – acceleration of the seat [m/s²] at `SPINAL_RATE`, at rest before
 * @returns [m/s²] at the same times
 * @source ISO 2631-5:2004; coefficients read in an open source library, and confirmed: the poles are those of the
 * sampled mass
 */
export function horizontalSpinalResponse(history: Float64Array): Float64Array {
  const response = new Float64Array(history.length);
  let [u1, u2, y1, y2] = [0, 0, 0, 0];
  for (let t = 0; t < history.length; t += 1) {
    const u = history[t];
    const y = 0.0192752 * u + 0.00433451 * u1 - 0.0167763 * u2 + 1.957115 * y1 - 0.963949 * y2;
    response[t] = y;
    [u2, u1, y2, y1] = [u1, u, y1, y];
  }
  return response;
}

/**
 * Response of the lumbar spine to vertical acceleration, by the network of `spinal-network.ts`:
 * y[t] = Σ Wⱼ·tanh(Σ w·(y[t−1…t−4], u[t−1…t−8]) + bias) + offset.
 *
 * @param history – vertical acceleration of the seat above rest [m/s²], up positive, at `SPINAL_RATE`
 * @returns [m/s²]; −0.02 at rest
 * @validity accelerations of −20 to 40 m/s² (from memory); strongly nonlinear, a fit. **Single source.**
 * @source ISO 2631-5:2004; see spinal-network.ts
 */
export function verticalSpinalResponse(history: Float64Array): Float64Array {
  const response = new Float64Array(history.length);
  const bias = HIDDEN[12];
  for (let t = 0; t < history.length; t += 1) {
    let y = OFFSET;
    for (let j = 0; j < OUTPUT.length; j += 1) {
      let drive = bias[j];
      for (let k = 1; k <= 4 && k <= t; k += 1) drive += HIDDEN[k - 1][j] * response[t - k];
      for (let k = 1; k <= 8 && k <= t; k += 1) drive += HIDDEN[k + 3][j] * history[t - k];
      y += OUTPUT[j] * Math.tanh(drive);
    }
    response[t] = y;
  }
  return response;
}

/**
 * Acceleration dose of a response: D = (Σ Aᵢ⁶)^(1/6), Aᵢ the largest value between two zero crossings.
 *
 * @param counted – both ways, or only upward: those that press the spine together
 * @returns [m/s²] ≥ 0
 * @source ISO 2631-5:2004 (from memory)
 */
export function accelerationDose(response: Float64Array, counted: 'both' | 'upward'): number {
  let total = 0;
  let peak = 0;
  for (let t = 0; t <= response.length; t += 1) {
    const value = t < response.length ? response[t] : -peak;
    if (value * peak < 0 || t === response.length) {
      if (peak > 0 || counted === 'both') total += peak ** 6;
      peak = 0;
    }
    if (Math.abs(value) > Math.abs(peak)) peak = value;
  }
  return total ** (1 / 6);
}

/** Compressive stress for each m/s² of dose [Pa/(m/s²)]. @source ISO 2631-5:2004 (from memory) */
const STRESS_PER_DOSE = { foreAndAft: 15_000, sideways: 35_000, vertical: 32_000 };

/** Doses of the directions that are known [m/s²]. */
export interface SpinalDoses {
  readonly foreAndAft: number;
  readonly sideways: number;
  readonly vertical: number;
}

/**
 * Equivalent static compressive stress: S = [Σ (mₖ·Dₖ)⁶]^(1/6).
 *
 * @returns [Pa]
 * @source ISO 2631-5:2004 (from memory)
 */
export const equivalentStress = (doses: SpinalDoses): number =>
  ((STRESS_PER_DOSE.foreAndAft * doses.foreAndAft) ** 6 +
    (STRESS_PER_DOSE.sideways * doses.sideways) ** 6 +
    (STRESS_PER_DOSE.vertical * doses.vertical) ** 6) **
  (1 / 6);

/** Dose or stress of a day, from that of a record: × (t_day ÷ t_record)^(1/6). */
export const perDay = (ofRecord: number, recorded: number, drivenPerDay: number): number =>
  ofRecord * (drivenPerDay / recorded) ** (1 / 6);

/** A working life, as the standard reckons it. */
export interface WorkingLife {
  /** Age at its start [years]. */
  readonly startAge: number;
  readonly daysPerYear: number;
  readonly years: number;
}

/**
 * Factor R of a working life: R = [Σ (S·N^(1/6) ÷ (S_u,i − c))⁶]^(1/6), S_u,i = 6.75 − 0.066·(b + i) MPa,
 * c = 0.25 MPa, i = 0 … n − 1. A number of the standard, and no statement about anybody's back.
 *
 * @param dailyStress – S [Pa]
 * @source ISO 2631-5:2004, Annex A (from memory; agrees with its companions S = 0.5 ↔ R = 0.8, 0.8 ↔ 1.2 MPa)
 */
export function workingLifeFactor(
  dailyStress: number,
  { startAge, daysPerYear, years }: WorkingLife,
): number {
  let total = 0;
  for (let i = 0; i < years; i += 1) {
    const strength = 6.75e6 - 0.066e6 * (startAge + i);
    total += ((dailyStress * daysPerYear ** (1 / 6)) / (strength - 0.25e6)) ** 6;
  }
  return total ** (1 / 6);
}

/** What a record does to the spine by the model of 2004. */
export interface SpinalResponse {
  readonly edition: SpinalEdition;
  /** Dose of each direction [m/s²]; null when that direction was not recorded. */
  readonly vertical: number;
  readonly foreAndAft: number | null;
  readonly sideways: number | null;
  /** Stress of the directions that are known [Pa]: of the record, and of a day of such driving. */
  readonly stress: number;
  readonly stressPerDay: number | null;
  /** The vertical model rests on one source only. */
  readonly singleSource: true;
}

/**
 * @param rate – of all histories [Hz], at least `SPINAL_RATE`
 * @param drivenPerDay – [s]; null when not said
 */
export function spinalResponse(
  histories: {
    readonly vertical: Float64Array;
    readonly foreAndAft?: Float64Array;
    readonly sideways?: Float64Array;
  },
  rate: number,
  drivenPerDay: number | null,
): SpinalResponse {
  const level = (history: Float64Array | undefined): number | null =>
    history === undefined
      ? null
      : accelerationDose(horizontalSpinalResponse(resampled(history, rate, SPINAL_RATE)), 'both');
  const vertical = accelerationDose(
    verticalSpinalResponse(resampled(histories.vertical, rate, SPINAL_RATE)),
    'upward',
  );
  const foreAndAft = level(histories.foreAndAft);
  const sideways = level(histories.sideways);
  const stress = equivalentStress({ vertical, foreAndAft: foreAndAft ?? 0, sideways: sideways ?? 0 });
  const recorded = (histories.vertical.length - 1) / rate;
  return {
    edition: '2004',
    vertical,
    foreAndAft,
    sideways,
    stress,
    stressPerDay: drivenPerDay === null ? null : perDay(stress, recorded, drivenPerDay),
    singleSource: true,
  };
}
