import { type Cycle, minerSum } from '../numerics/rainflow.ts';

/** Kinds of S-N line: stress along the part, or shear through a weld. */
export type StressKind = 'direct' | 'shear';

/**
 * Range that a detail bears so often, by its class: at 2·10⁶ loops it is the class itself.
 * Direct: slope 3 to 5·10⁶, slope 5 to 10⁸, then no harm. Shear: slope 5 to 10⁸, then none.
 *
 * @source EN 1993-1-9:2005, 7.1 (from memory)
 */
export function loopsToCrack(range: number, detail: number, kind: StressKind): number {
  if (range <= 0) return Number.POSITIVE_INFINITY;
  const end = 1e8;
  if (kind === 'shear') {
    const loops = 2e6 * (detail / range) ** 5;
    return loops > end ? Number.POSITIVE_INFINITY : loops;
  }
  const knee = detail * (2 / 5) ** (1 / 3);
  if (range >= knee) return 2e6 * (detail / range) ** 3;
  const loops = 5e6 * (knee / range) ** 5;
  return loops > end ? Number.POSITIVE_INFINITY : loops;
}

/** A detail: its class [Pa] and line. */
export interface Detail {
  readonly range: number;
  readonly kind: StressKind;
}

/**
 * @source EN 1993-1-9:2005, tables 8.1 and 8.5 (from memory): toe of a fillet at an attachment, root of a fillet whose throat
 * is loaded, thread of a bolt
 */
export const DETAILS = {
  'toe of a fillet weld': { range: 63e6, kind: 'direct' },
  'root of a fillet weld': { range: 36e6, kind: 'direct' },
  'bolt in tension': { range: 50e6, kind: 'direct' },
} as const satisfies Readonly<Record<string, Detail>>;
export type DetailName = keyof typeof DETAILS;

/** Range is divided by this much less of the class: safe life, grave consequence. @source EN 1993-1-9, table 3.1 (from memory) */
export const FATIGUE_FACTOR = 1.35;

/** Share of its life that one history of stress takes from a detail. */
export function crackShare(cycles: readonly Cycle[], { range, kind }: Detail): number {
  return minerSum(cycles, (stress) => loopsToCrack(stress, range / FATIGUE_FACTOR, kind));
}
