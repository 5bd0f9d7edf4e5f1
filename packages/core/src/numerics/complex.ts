/** A complex number. For the making of filters, not for an inner loop: each operation makes a new one. */
export interface Complex {
  readonly re: number;
  readonly im: number;
}

export const complex = (re: number, im = 0): Complex => ({ re, im });

export const sum = (a: Complex, b: Complex): Complex => ({ re: a.re + b.re, im: a.im + b.im });

export const product = (a: Complex, b: Complex): Complex => ({
  re: a.re * b.re - a.im * b.im,
  im: a.re * b.im + a.im * b.re,
});

export const scaled = (factor: number, a: Complex): Complex => ({ re: factor * a.re, im: factor * a.im });

export function quotient(a: Complex, b: Complex): Complex {
  const size = b.re * b.re + b.im * b.im;
  return { re: (a.re * b.re + a.im * b.im) / size, im: (a.im * b.re - a.re * b.im) / size };
}

export function exponential({ re, im }: Complex): Complex {
  const size = Math.exp(re);
  return { re: size * Math.cos(im), im: size * Math.sin(im) };
}

export const modulus = ({ re, im }: Complex): number => Math.hypot(re, im);

/** c₀ + c₁·x + c₂·x² + … */
export function polynomialAt(coefficients: readonly number[], x: Complex): Complex {
  let value = complex(0);
  for (let k = coefficients.length - 1; k >= 0; k -= 1)
    value = sum(product(value, x), complex(coefficients[k]));
  return value;
}
