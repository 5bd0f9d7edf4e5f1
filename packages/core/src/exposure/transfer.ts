import { type Complex, complex, modulus, polynomialAt, product, quotient } from '../numerics/complex.ts';

/** One factor of a transfer function: (n₀ + n₁·s + n₂·s²) ÷ (d₀ + d₁·s + d₂·s²), s in rad/s. */
export interface Section {
  readonly numerator: readonly [number, number, number];
  readonly denominator: readonly [number, number, number];
}

/** What a linear filter does to a steady sine: gain · Π sections at s = 2πi·frequency. */
export interface TransferFunction {
  readonly gain: number;
  readonly sections: readonly Section[];
}

/** Amplitude out ÷ in, and lead of the output [rad], counted through all turns. */
export interface Response {
  readonly gain: number;
  readonly phase: number;
}

/** @param frequency – [Hz] ≥ 0 */
export function responseAt(transfer: TransferFunction, frequency: number): Response {
  const s = complex(0, 2 * Math.PI * frequency);
  let { gain } = transfer;
  let phase = 0;
  for (const { numerator, denominator } of transfer.sections) {
    const value = quotient(polynomialAt(numerator, s), polynomialAt(denominator, s));
    gain *= modulus(value);
    phase += Math.atan2(value.im, value.re);
  }
  return { gain, phase };
}

/**
 * One mode of a filter: its state follows ẋ = pole·x + residue·input. The output is the sum of all x, where a mode
 * with `im` above zero stands for itself and its conjugate: twice the real part.
 */
export interface Mode {
  readonly pole: Complex;
  readonly residue: Complex;
}

/**
 * The transfer function as a sum of modes: H(s) = Σ residue ÷ (s − pole).
 *
 * @returns real modes and one of each conjugate pair
 * @throws when a pole is double or on the unstable side, or when the output follows the input without delay:
 * no filter of this room does, so it is our own mistake
 * @source partial fractions, any text on linear systems
 */
export function modesOf(transfer: TransferFunction): readonly Mode[] {
  const { sections } = transfer;
  const order = (side: keyof Section): number =>
    sections.reduce((total, section) => total + degree(section[side]), 0);
  if (order('numerator') >= order('denominator'))
    throw new Error('modesOf: the output does not lag the input');
  return sections.flatMap((section, i) =>
    polesOf(section).map((pole) => {
      let above = complex(transfer.gain);
      let below = slopeAt(section.denominator, pole);
      for (const [j, other] of sections.entries()) {
        above = product(above, polynomialAt(other.numerator, pole));
        if (j !== i) below = product(below, polynomialAt(other.denominator, pole));
      }
      if (!(pole.re < 0 && modulus(below) > 0)) throw new Error('modesOf: a pole is double or unstable');
      return { pole, residue: quotient(above, below) };
    }),
  );
}

function degree(coefficients: readonly number[]): number {
  let k = coefficients.length - 1;
  while (k > 0 && coefficients[k] === 0) k -= 1;
  return k;
}

const slopeAt = ([, c1, c2]: Section['denominator'], s: Complex): Complex => ({
  re: c1 + 2 * c2 * s.re,
  im: 2 * c2 * s.im,
});

/** Roots of the denominator with im ≥ 0. */
function polesOf({ denominator }: Section): readonly Complex[] {
  const [c0, c1, c2] = denominator;
  if (c2 === 0) return c1 === 0 ? [] : [complex(-c0 / c1)];
  const middle = -c1 / (2 * c2);
  const square = middle * middle - c0 / c2;
  if (square < 0) return [complex(middle, Math.sqrt(-square))];
  const half = Math.sqrt(square);
  return [complex(middle - half), complex(middle + half)];
}

/** One swing: ω² ÷ (s² + ω/Q·s + ω²), a low-pass of second order. */
export const lowPass = (frequency: number, quality: number): Section => {
  const w = 2 * Math.PI * frequency;
  return { numerator: [1, 0, 0], denominator: [1, 1 / (quality * w), 1 / (w * w)] };
};

/** s² ÷ (s² + ω/Q·s + ω²), a high-pass of second order. */
export const highPass = (frequency: number, quality: number): Section => {
  const w = 2 * Math.PI * frequency;
  return { numerator: [0, 0, 1], denominator: [w * w, w / quality, 1] };
};
