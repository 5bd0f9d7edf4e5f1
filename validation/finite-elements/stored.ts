import { readFileSync } from 'node:fs';

/** The figures of one case: what was printed at each strain, shape or density, in their order. */
export interface Case {
  readonly quantity: string;
  readonly unit: string;
  readonly values: readonly number[];
}

export type Results = Readonly<Record<string, Case>>;

export const STORED = new URL('./results.json', import.meta.url);

export const storedResults = (): Results => JSON.parse(readFileSync(STORED, 'utf8')) as Results;

/**
 * Share of the stored value that a figure worked out again may be off. The same solver repeats its digits; another
 * version, another equation solver or another floating-point unit moves the last ones, ends of steps included. A
 * changed mesh or law moves far more than this.
 */
export const TOLERANCE = 1e-3;

export interface Difference {
  readonly name: string;
  /** What does not even have the same shape; then there is no `worst`. */
  readonly fault: string | null;
  /** Largest difference as a share of the stored value. */
  readonly worst: number;
}

/** Each stored case beside the one worked out again; a case that only one side has is a fault. */
export function differences(stored: Results, again: Results): readonly Difference[] {
  const names = [...new Set([...Object.keys(stored), ...Object.keys(again)])];
  return names.map((name) => {
    const [kept, now] = [stored[name], again[name]];
    const faulty = (fault: string) => ({ name, fault, worst: Number.POSITIVE_INFINITY });
    if (kept === undefined) return faulty('is not among the stored results');
    if (now === undefined) return faulty('was not worked out again');
    if (kept.values.length !== now.values.length)
      return faulty(`has ${now.values.length} values, ${kept.values.length} are stored`);
    const shares = kept.values.map((value, k) => Math.abs((now.values[k] ?? Number.NaN) / value - 1));
    if (!shares.every(Number.isFinite)) return faulty('has a value that is no number');
    return { name, fault: null, worst: Math.max(...shares) };
  });
}

export const agrees = ({ fault, worst }: Difference): boolean => fault === null && worst <= TOLERANCE;
