/**
 * How much the shape factor counts, k of E_c = E₀·(1 + 2kS²), and the bulk modulus [Pa] of natural rubber by its hardness.
 * @source Lindley, Engineering Design with Natural Rubber, NR Technical Bulletin, 4th ed. 1978, table of properties (from
 *   memory; two rows read in a copy)
 */
const ROWS = [
  { hardness: 30, k: 0.93, bulk: 1.0e9 },
  { hardness: 35, k: 0.89, bulk: 1.0e9 },
  { hardness: 40, k: 0.85, bulk: 1.0e9 },
  { hardness: 45, k: 0.8, bulk: 1.0e9 },
  { hardness: 50, k: 0.73, bulk: 1.03e9 },
  { hardness: 55, k: 0.64, bulk: 1.09e9 },
  { hardness: 60, k: 0.57, bulk: 1.15e9 },
  { hardness: 65, k: 0.54, bulk: 1.21e9 },
  { hardness: 70, k: 0.53, bulk: 1.27e9 },
  { hardness: 75, k: 0.52, bulk: 1.33e9 },
] as const;

/** Between the rows on straight lines, beyond them as the last one. @param hardness – IRHD, taken as Shore A */
export function filledRubber(hardness: number): { readonly k: number; readonly bulk: number } {
  const i = ROWS.findIndex((row) => row.hardness >= hardness);
  if (i === 0) return ROWS[0];
  if (i === -1) return ROWS[ROWS.length - 1];
  const [a, b] = [ROWS[i - 1], ROWS[i]];
  const t = (hardness - a.hardness) / (b.hardness - a.hardness);
  return { k: a.k + t * (b.k - a.k), bulk: a.bulk + t * (b.bulk - a.bulk) };
}
