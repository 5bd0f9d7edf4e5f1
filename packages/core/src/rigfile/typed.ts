import { z } from 'zod';
import type { Problem } from '../finding/problem.ts';
import { parseQuantity } from '../quantity/parse.ts';
import type { Quantity } from '../quantity/quantity.ts';
import { type Plain, type RigDocument, whereOf } from './document.ts';
import { type LeafInfo, leafInfo } from './leaf.ts';
import { meantOption, unwrapped } from './options.ts';
import { rigFileSchema } from './schema.ts';

/** Every quantity of a file by dotted path, and what is wrong with the others. */
export interface TypedQuantities {
  readonly good: ReadonlyMap<string, Quantity>;
  /** Paths of all quantities that were typed, good or not. */
  readonly paths: ReadonlySet<string>;
  readonly problems: readonly Problem[];
}

/** Reads every quantity of the file in one pass, along the schema. */
export function typedQuantities(document: RigDocument): TypedQuantities {
  const good = new Map<string, Quantity>();
  const paths = new Set<string>();
  const problems: Problem[] = [];
  const readLeaf = (info: LeafInfo, path: string): void => {
    paths.add(path);
    const where = whereOf(document, path);
    const outcome = parseQuantity(document.typed.get(path) ?? '', info.dimension, where);
    if (!outcome.ok) {
      problems.push(...outcome.problems);
      return;
    }
    const fault = signFault(outcome.value, info);
    if (fault) problems.push({ ...fault, where, found: outcome.value.text });
    else good.set(path, outcome.value);
  };
  walk(rigFileSchema, document.plain, '', readLeaf);
  return { good, paths, problems };
}

type LeafReader = (info: LeafInfo, path: string) => void;

function walk(schema: z.ZodType, plain: Plain, path: string, readLeaf: LeafReader): void {
  const here = unwrapped(schema);
  const info = leafInfo(here);
  if (info) {
    if (typeof plain === 'string' || typeof plain === 'number') readLeaf(info, path);
    return;
  }
  if (here instanceof z.ZodUnion) {
    walk(here.options[meantOption(here, plain)] as z.ZodType, plain, path, readLeaf);
    return;
  }
  if (typeof plain !== 'object') return;
  for (const [name, value] of Object.entries(plain) as [string, Plain][]) {
    const inner = childSchema(here, name);
    if (inner) walk(inner, value, path === '' ? name : `${path}.${name}`, readLeaf);
  }
}

function childSchema(schema: z.ZodType, name: string): z.ZodType | undefined {
  if (schema instanceof z.ZodObject) {
    return Object.hasOwn(schema.shape, name) ? (schema.shape[name] as z.ZodType) : undefined;
  }
  if (schema instanceof z.ZodRecord) return schema.valueType as z.ZodType;
  if (schema instanceof z.ZodArray) return schema.element as z.ZodType;
  if (schema instanceof z.ZodTuple) return schema.def.items[Number(name)] as z.ZodType | undefined;
  return undefined;
}

/** A well formed quantity may still be one that cannot be: a negative mass, a travel ratio of zero. */
function signFault(quantity: Quantity, info: LeafInfo): Pick<Problem, 'code' | 'accepted'> | null {
  const { value } = quantity;
  if (info.exact && (quantity.plus !== null || quantity.minus !== null)) {
    return { code: 'rig-wrong-shape', accepted: 'a value without tolerance' };
  }
  if (info.sign === 'any') return null;
  if (value < 0) {
    return { code: 'rig-negative', accepted: info.sign === 'positive' ? 'more than zero' : 'zero or more' };
  }
  if (info.sign === 'notNegative') return null;
  if (value === 0 && info.dimension === 'ratio')
    return { code: 'rig-ratio-zero', accepted: 'more than zero' };
  if (value === 0) return { code: 'rig-negative', accepted: 'more than zero' };
  if (quantity.minus !== null && quantity.minus >= value) {
    return { code: 'quantity-tolerance-crossed', accepted: 'a tolerance smaller than the value' };
  }
  return null;
}
