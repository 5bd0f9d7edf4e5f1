import type { Check, Values } from './check-file.ts';

/** One number of a check, ours against theirs. */
export interface Entry {
  /** Path inside `expected`, empty when it is a single number. */
  readonly path: string;
  readonly ours: number;
  readonly expected: number;
  readonly allowed: number;
  /** |ours − expected| ÷ allowed; 0 when both are equal, infinite when ours is no number. */
  readonly used: number;
}

/** A check after it was answered. */
export interface Outcome {
  readonly check: Check;
  readonly entries: readonly Entry[];
  /** The entry that uses up most of its tolerance. */
  readonly worst: Entry;
  readonly ok: boolean;
}

/**
 * Compares entry by entry. A missing, extra or non-finite entry of ours is a miss, never skipped.
 * @invariant `ok` is true only when every expected entry has its own and none is over.
 */
export function compare(check: Check, ours: Values): Outcome {
  const theirs = flatten(check.expected);
  const mine = flatten(ours);
  const entries: Entry[] = [];
  for (const [path, expected] of theirs) {
    const value = mine.get(path) ?? Number.NaN;
    const { kind, value: tolerance } = check.tolerance;
    const allowed = kind === 'relative' ? tolerance * Math.abs(expected) : tolerance;
    const difference = Math.abs(value - expected);
    const used = difference === 0 ? 0 : Number.isFinite(difference) ? difference / allowed : Infinity;
    entries.push({ path, ours: value, expected, allowed, used });
  }
  for (const path of mine.keys())
    if (!theirs.has(path))
      entries.push({
        path,
        ours: mine.get(path) ?? Number.NaN,
        expected: Number.NaN,
        allowed: 0,
        used: Infinity,
      });
  const worst = entries.reduce((a, b) => (b.used > a.used ? b : a));
  return { check, entries, worst, ok: worst.used <= 1 };
}

function flatten(values: Values, path = '', into = new Map<string, number>()): Map<string, number> {
  if (typeof values === 'number') into.set(path, values);
  else
    for (const [key, value] of Object.entries(values))
      flatten(value, path === '' ? key : `${path}.${key}`, into);
  return into;
}

/** What a failing check prints: input, ours, expected, difference, tolerance, source. */
export function report({ check, worst }: Outcome): string {
  const { source, tolerance } = check;
  return [
    `${check.topic}/${check.id}: ${check.title}`,
    `  input       ${JSON.stringify(check.inputs).slice(0, 400)}`,
    `  entry       ${worst.path || check.quantity} [${check.unit}]`,
    `  ours        ${worst.ours}`,
    `  expected    ${worst.expected}`,
    `  difference  ${worst.ours - worst.expected}`,
    `  tolerance   ±${worst.allowed} (${tolerance.kind} ${tolerance.value}: ${tolerance.reason})`,
    `  source      ${source.work}, ${source.edition}, ${source.place} (${check.provenance})`,
  ].join('\n');
}
