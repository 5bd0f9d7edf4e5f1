/**
 * Fourier sum of N complex coefficients at N even places, in place: z[m] = Σₖ c[k]·exp(2πi·k·m/N), without a factor.
 * Iterative radix 2 (Cooley and Tukey, Math. Comp. 19 (1965) 297).
 *
 * @param re – real parts in order of k; afterwards those of z. Length a power of two
 * @param im – imaginary parts, same length
 * @throws on any other length: our own mistake
 */
export function fourierSum(re: Float64Array, im: Float64Array): void {
  const n = re.length;
  if (n < 1 || (n & (n - 1)) !== 0 || im.length !== n)
    throw new Error('fourierSum: length is no power of two');
  reverseBits(re, im);
  const cosine = new Float64Array(n / 2);
  const sine = new Float64Array(n / 2);
  for (let k = 0; k < n / 2; k += 1) {
    cosine[k] = Math.cos((2 * Math.PI * k) / n);
    sine[k] = Math.sin((2 * Math.PI * k) / n);
  }
  for (let half = 1; half < n; half *= 2) {
    const stride = n / (2 * half);
    for (let first = 0; first < n; first += 2 * half) {
      for (let k = 0; k < half; k += 1) {
        const a = first + k;
        const b = a + half;
        const c = cosine[k * stride];
        const s = sine[k * stride];
        const turnedRe = re[b] * c - im[b] * s;
        const turnedIm = re[b] * s + im[b] * c;
        re[b] = re[a] - turnedRe;
        im[b] = im[a] - turnedIm;
        re[a] += turnedRe;
        im[a] += turnedIm;
      }
    }
  }
}

function reverseBits(re: Float64Array, im: Float64Array): void {
  const n = re.length;
  for (let i = 1, j = 0; i < n; i += 1) {
    let bit = n >> 1;
    while (j & bit) {
      j ^= bit;
      bit >>= 1;
    }
    j ^= bit;
    if (i >= j) continue;
    const real = re[i];
    const imaginary = im[i];
    re[i] = re[j];
    im[i] = im[j];
    re[j] = real;
    im[j] = imaginary;
  }
}
