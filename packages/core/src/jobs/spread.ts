import type { RideRun } from '../ride/result.ts';

/**
 * 95 % half-width of a figure about its nominal value: twice the root mean square deviation of the trials (k = 2).
 * A few dozen trials cannot show a 2.5 % tail, so the quantile is not read from them.
 *
 * @returns null with fewer than two trials, or where one left the model's validity: it has no figure, and with it left out
 *   the spread would be that of the survivors
 */
export function spreadOf(
  runs: readonly RideRun[],
  run: RideRun,
  of: (one: RideRun) => number,
): number | null {
  if (runs.length < 2 || runs.some(({ status }) => status !== 'finished')) return null;
  const centre = of(run);
  const squares = runs.reduce((sum, one) => sum + (of(one) - centre) ** 2, 0);
  return 2 * Math.sqrt(squares / runs.length);
}
