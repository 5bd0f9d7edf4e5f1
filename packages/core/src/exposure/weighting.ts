import { filtered } from './filter.ts';
import {
  highPass,
  lowPass,
  type Response,
  responseAt,
  type Section,
  type TransferFunction,
} from './transfer.ts';

/** Frequency weightings of whole-body vibration. */
export const WEIGHTINGS = ['Wk', 'Wd', 'Wb', 'Wc', 'We', 'Wj', 'Wf'] as const;
export type Weighting = (typeof WEIGHTINGS)[number];

interface Parameters {
  /** Band limits [Hz]; both of second order with Q = 1/√2. */
  readonly band: readonly [f1: number, f2: number];
  /** Acceleration below, velocity above: f3 (null: no zero), f4, Q4. Null: none. */
  readonly transition: readonly [f3: number | null, f4: number, q4: number] | null;
  /** Upward step: f5, Q5, f6, Q6. Null: none. */
  readonly step: readonly [f5: number, q5: number, f6: number, q6: number] | null;
  readonly gain: number;
}

/**
 * @source ISO 2631-1:1997, Annex A and ISO 8041 (parameter table): read in the reference manual of a human-vibration
 * meter that prints the table; Wk, Wd and Wf also in an open source library. Wb is that of BS 6841 and ISO 2631-4.
 */
const PARAMETERS: Readonly<Record<Weighting, Parameters>> = {
  Wk: { band: [0.4, 100], transition: [12.5, 12.5, 0.63], step: [2.37, 0.91, 3.35, 0.91], gain: 1 },
  Wd: { band: [0.4, 100], transition: [2, 2, 0.63], step: null, gain: 1 },
  Wb: { band: [0.4, 100], transition: [16, 16, 0.55], step: [2.5, 0.9, 4, 0.95], gain: 1.024 },
  Wc: { band: [0.4, 100], transition: [8, 8, 0.63], step: null, gain: 1 },
  We: { band: [0.4, 100], transition: [1, 1, 0.63], step: null, gain: 1 },
  Wj: { band: [0.4, 100], transition: null, step: [3.75, 0.91, 5.32, 0.91], gain: 1 },
  Wf: { band: [0.08, 0.63], transition: [null, 0.25, 0.86], step: [0.0625, 0.8, 0.1, 0.8], gain: 1 },
};

/**
 * The transfer function of a weighting: H(s) = K · Hh · Hl · Ht · Hs with ω = 2πf and Q₁ = Q₂ = 1/√2,
 *
 *     Hh = s² ÷ (s² + ω₁/Q₁·s + ω₁²)            Hl = 1 ÷ (1 + s/(Q₂·ω₂) + (s/ω₂)²)
 *     Ht = (1 + s/ω₃) ÷ (1 + s/(Q₄·ω₄) + (s/ω₄)²)
 *     Hs = (1 + s/(Q₅·ω₅) + (s/ω₅)²) ÷ (1 + s/(Q₆·ω₆) + (s/ω₆)²) · (ω₅/ω₆)²
 *
 * @source ISO 2631-1:1997, Annex A
 */
export function weightingTransfer(weighting: Weighting): TransferFunction {
  const { band, transition, step, gain } = PARAMETERS[weighting];
  const sections = [highPass(band[0], Math.SQRT1_2), lowPass(band[1], Math.SQRT1_2)];
  if (transition) sections.push(transitionSection(...transition));
  if (step === null) return { gain, sections };
  const [f5, q5, f6, q6] = step;
  sections.push({ numerator: lowPass(f5, q5).denominator, denominator: lowPass(f6, q6).denominator });
  return { gain: gain * (f5 / f6) ** 2, sections };
}

function transitionSection(f3: number | null, f4: number, q4: number): Section {
  const lead = f3 === null ? 0 : 1 / (2 * Math.PI * f3);
  return { numerator: [1, lead, 0], denominator: lowPass(f4, q4).denominator };
}

/**
 * Gain and phase of a weighting at one frequency, from its equation. The table of the standard is this equation at
 * *nominal* third-octave centres, rounded; its Wd at 10 Hz (0.212) does not follow from it (0.2017) and is taken for a
 * misprint. So the equation is used everywhere and the table nowhere.
 *
 * @param frequency – [Hz] ≥ 0
 * @returns gain [1] and phase [rad], positive when the output leads
 */
export const weightingResponse = (weighting: Weighting, frequency: number): Response =>
  responseAt(weightingTransfer(weighting), frequency);

/**
 * Frequency-weighted acceleration.
 *
 * @param history – acceleration [m/s²], evenly sampled, at least six samples, rig at rest before the first
 * @param rate – samples a second [Hz]
 * @returns weighted acceleration at the same times [m/s²]
 * @validity right to 0.1 dB up to a fifth of the rate: see `filtered`
 */
export const weightedHistory = (history: Float64Array, rate: number, weighting: Weighting): Float64Array =>
  filtered(history, rate, weightingTransfer(weighting));
