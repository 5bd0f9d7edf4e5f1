/** Amplitude of a sine of known frequency in a record, by least squares on sine, cosine and mean. */
export function amplitudeAt(record: readonly number[], times: readonly number[], frequency: number): number {
  const rows = times.map((t) => {
    const phase = 2 * Math.PI * frequency * t;
    return [Math.sin(phase), Math.cos(phase), 1];
  });
  const [sine, cosine] = leastSquares(rows, record);
  return Math.hypot(sine, cosine);
}

/**
 * Poles of a motion made of two damped swings, from evenly spaced samples of it (Prony 1795): the recursion
 * x[k+4] = a3·x[k+3] + … + a0·x[k] is fitted, its roots are exp(pole·step).
 */
export function twoSwings(
  records: readonly (readonly number[])[],
  step: number,
): { ride: Swing; hop: Swing } {
  const rows: number[][] = [];
  const next: number[] = [];
  for (const record of records)
    for (let k = 0; k + 4 < record.length; k += 1) {
      rows.push(record.slice(k, k + 4));
      next.push(record[k + 4]);
    }
  const swings = quarticRoots(leastSquares(rows, next))
    .filter(({ im }) => im > 0)
    .map(({ re, im }): Swing => {
      const growth = Math.log(Math.hypot(re, im)) / step;
      const turn = Math.atan2(im, re) / step;
      const speed = Math.hypot(growth, turn);
      return { frequency: speed / (2 * Math.PI), damping: -growth / speed };
    })
    .sort((a, b) => a.frequency - b.frequency);
  if (swings.length !== 2) throw new Error(`Expected two swings in the record, found ${swings.length}`);
  return { ride: swings[0], hop: swings[1] };
}

export interface Swing {
  /** |pole| ÷ 2π [Hz]. */
  readonly frequency: number;
  readonly damping: number;
}

interface Complex {
  readonly re: number;
  readonly im: number;
}

/** Roots of x⁴ = a0 + a1·x + a2·x² + a3·x³, all at once (Durand and Kerner). */
function quarticRoots([a0, a1, a2, a3]: readonly number[]): Complex[] {
  const times = (p: Complex, q: Complex): Complex => ({
    re: p.re * q.re - p.im * q.im,
    im: p.re * q.im + p.im * q.re,
  });
  const minus = (p: Complex, q: Complex): Complex => ({ re: p.re - q.re, im: p.im - q.im });
  const over = (p: Complex, q: Complex): Complex => {
    const size = q.re * q.re + q.im * q.im;
    return { re: (p.re * q.re + p.im * q.im) / size, im: (p.im * q.re - p.re * q.im) / size };
  };
  const value = (x: Complex): Complex =>
    [-a3, -a2, -a1, -a0].reduce<Complex>(
      (sum, a) => {
        const product = times(sum, x);
        return { re: product.re + a, im: product.im };
      },
      { re: 1, im: 0 },
    );
  let roots: Complex[] = [0, 1, 2, 3].map((k) => ({
    re: Math.cos(0.4 + k * 1.6),
    im: Math.sin(0.4 + k * 1.6),
  }));
  for (let round = 0; round < 500; round += 1)
    roots = roots.map((root, i) => {
      const others = roots.filter((_, j) => j !== i).map((other) => minus(root, other));
      return minus(root, over(value(root), others.reduce(times)));
    });
  return roots;
}

/** Least squares by Householder's reflections: the normal equations would lose half the digits. */
function leastSquares(rows: readonly (readonly number[])[], right: readonly number[]): number[] {
  const a = rows.map((row, i) => [...row, right[i]]);
  const columns = rows[0].length;
  for (let j = 0; j < columns; j += 1) {
    const norm = Math.hypot(...a.slice(j).map((row) => row[j]));
    const head = a[j][j] > 0 ? a[j][j] + norm : a[j][j] - norm;
    const mirror = a.map((row, i) => (i < j ? 0 : i === j ? head : row[j]));
    const size = mirror.reduce((sum, value) => sum + value * value, 0);
    for (let k = j; k <= columns; k += 1) {
      const along = a.reduce((sum, row, i) => sum + mirror[i] * row[k], 0);
      for (let i = j; i < a.length; i += 1) a[i][k] -= (2 * along * mirror[i]) / size;
    }
  }
  const solution = new Array<number>(columns).fill(0);
  for (let j = columns - 1; j >= 0; j -= 1) {
    let rest = a[j][columns];
    for (let k = j + 1; k < columns; k += 1) rest -= a[j][k] * solution[k];
    solution[j] = rest / a[j][j];
  }
  return solution;
}
