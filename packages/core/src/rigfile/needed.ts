import { z } from 'zod';
import type { Plain } from './document.ts';
import { leafInfo } from './leaf.ts';
import { unwrapped } from './options.ts';
import { schemaAt } from './shape-check.ts';

/** Parts that a rig may do without. Their readings are needed only when the part is there. */
export const OPTIONAL_PARTS: ReadonlySet<string> = new Set([
  'strap',
  'hose',
  'shaft',
  'witness',
  'gas',
  'vent',
  'bracket',
  'antiRollBar',
  'links',
  'mounts',
  'steering',
  'cgLift',
]);

/** Keys below a path without which no rig can be made. */
export function neededKeys(path: readonly string[], plain: Plain): readonly string[] {
  const here = schemaAt(path, plain);
  if (!(here instanceof z.ZodObject)) return [];
  return Object.entries(here.shape)
    .filter(([name, of]) => !OPTIONAL_PARTS.has(name) && holdsNeeded(of as z.ZodType))
    .map(([name]) => name);
}

function holdsNeeded(schema: z.ZodType): boolean {
  const here = unwrapped(schema);
  const info = leafInfo(here);
  if (info) return info.needed;
  if (here instanceof z.ZodUnion) return here.options.some((option) => holdsNeeded(option as z.ZodType));
  if (here instanceof z.ZodRecord) return holdsNeeded(here.valueType as z.ZodType);
  return here instanceof z.ZodObject && Object.values(here.shape).some((of) => holdsNeeded(of as z.ZodType));
}
