import { z } from 'zod';
import type { Plain } from './document.ts';

/** Optional and nullable say only that a key may be left out: what stands there is the schema inside. */
export function unwrapped(schema: z.ZodType): z.ZodType {
  let inner = schema;
  while (inner instanceof z.ZodOptional || inner instanceof z.ZodNullable)
    inner = inner.unwrap() as z.ZodType;
  return inner;
}

/**
 * Which alternative of a union somebody meant, judged by what he wrote: text, rows, or keys. Among several kinds of
 * keys, the one whose `kind` matches, then the one that shares most keys.
 */
export function meantOption(union: z.ZodUnion, plain: Plain): number {
  const options = union.options as readonly z.ZodType[];
  let best = 0;
  let bestScore = -1;
  options.forEach((option, index) => {
    const score = fit(unwrapped(option), plain);
    if (score > bestScore) [best, bestScore] = [index, score];
  });
  return best;
}

function fit(option: z.ZodType, plain: Plain): number {
  if (Array.isArray(plain)) return option instanceof z.ZodArray || option instanceof z.ZodTuple ? 1 : 0;
  if (typeof plain !== 'object') return option instanceof z.ZodObject || option instanceof z.ZodArray ? 0 : 1;
  if (!(option instanceof z.ZodObject)) return 0;
  const given = plain as Readonly<Record<string, Plain>>;
  let score = 1;
  for (const [name, of] of Object.entries(option.shape)) {
    if (!Object.hasOwn(given, name)) continue;
    score += of instanceof z.ZodLiteral ? (of.values.has(given[name] as string) ? 100 : 0) : 1;
  }
  return score;
}
