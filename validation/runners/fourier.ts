/** Fourier coefficients of a periodic record, c[k] = 1/N·Σ x[m]·exp(−2πi·km/N); length a power of two. */
export function coefficients(record: readonly number[]): { re: Float64Array; im: Float64Array } {
  const n = record.length;
  const { re, im } = transform(Float64Array.from(record), new Float64Array(n));
  return { re: re.map((value) => value / n), im: im.map((value) => value / n) };
}

/** By halves, even and odd: slow and easily seen to be right. */
function transform(re: Float64Array, im: Float64Array): { re: Float64Array; im: Float64Array } {
  const n = re.length;
  if (n === 1) return { re, im };
  const half = n / 2;
  if (!Number.isInteger(half)) throw new Error(`A record of ${n} samples is not halved evenly`);
  const even = transform(
    re.filter((_, i) => i % 2 === 0),
    im.filter((_, i) => i % 2 === 0),
  );
  const odd = transform(
    re.filter((_, i) => i % 2 === 1),
    im.filter((_, i) => i % 2 === 1),
  );
  const sum = { re: new Float64Array(n), im: new Float64Array(n) };
  for (let k = 0; k < half; k += 1) {
    const angle = (-2 * Math.PI * k) / n;
    const re2 = odd.re[k] * Math.cos(angle) - odd.im[k] * Math.sin(angle);
    const im2 = odd.re[k] * Math.sin(angle) + odd.im[k] * Math.cos(angle);
    sum.re[k] = even.re[k] + re2;
    sum.im[k] = even.im[k] + im2;
    sum.re[k + half] = even.re[k] - re2;
    sum.im[k + half] = even.im[k] - im2;
  }
  return sum;
}
