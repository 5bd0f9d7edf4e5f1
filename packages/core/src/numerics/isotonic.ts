/**
 * The rising sequence nearest to noisy values, by least squares: values out of order are pooled and share their mean.
 *
 * @param weights – one a value, > 0; all alike when left out
 * @source pool adjacent violators: Ayer et al., Ann. Math. Stat. 26 (1955) 641; checked against SciPy
 */
export function isotonic(values: ArrayLike<number>, weights?: ArrayLike<number>): Float64Array {
  const mean: number[] = [];
  const weight: number[] = [];
  const count: number[] = [];
  for (let i = 0; i < values.length; i += 1) {
    mean.push(values[i]);
    weight.push(weights?.[i] ?? 1);
    count.push(1);
    while (mean.length > 1 && mean[mean.length - 2] >= mean[mean.length - 1]) {
      const last = mean.length - 1;
      const both = weight[last - 1] + weight[last];
      mean[last - 1] = (mean[last - 1] * weight[last - 1] + mean[last] * weight[last]) / both;
      weight[last - 1] = both;
      count[last - 1] += count[last];
      mean.pop();
      weight.pop();
      count.pop();
    }
  }
  const rising = new Float64Array(values.length);
  let i = 0;
  mean.forEach((value, k) => {
    rising.fill(value, i, i + count[k]);
    i += count[k];
  });
  return rising;
}
