import { z } from 'zod';
import type { Problem } from '../finding/problem.ts';
import { type Plain, type RigDocument, shorten, whereOf } from './document.ts';
import { NAME_ACCEPTED } from './leaf.ts';
import { knownFor, nearest } from './nearest.ts';
import { meantOption, unwrapped } from './options.ts';
import { rigFileSchema } from './schema.ts';
import { COURSE_KINDS } from './schema-course.ts';

type Issue = z.core.$ZodIssue;

/**
 * Checks keys and shapes against the schema; quantities themselves are left to `typed.ts`.
 *
 * @param quantityPaths – dotted paths where a quantity stands: text or number there is not a matter of shape
 * @failure `rig-key-unknown` with the nearest known key first, `rig-key-missing`, `rig-wrong-shape`
 */
export function shapeProblems(document: RigDocument, quantityPaths: ReadonlySet<string>): readonly Problem[] {
  const outcome = rigFileSchema.safeParse(document.plain);
  if (outcome.success) return [];
  return outcome.error.issues
    .flatMap((issue) => settleUnions(issue, [], document.plain))
    .flatMap(({ issue, path }) => problemsOf(document, issue, path, quantityPaths));
}

interface Placed {
  readonly issue: Issue;
  readonly path: readonly string[];
}

const steps = (path: readonly PropertyKey[]): string[] => path.map(String);

/** Of a union that did not match, keep only what is wrong with the alternative that was meant. */
function settleUnions(issue: Issue, above: readonly string[], plain: Plain): Placed[] {
  const path = [...above, ...steps(issue.path)];
  if (issue.code !== 'invalid_union' || issue.errors.length === 0) return [{ issue, path }];
  const union = descend(rigFileSchema, path, plain);
  const value = plainAt(plain, path);
  const option = union instanceof z.ZodUnion && value !== undefined ? meantOption(union, value) : 0;
  return (issue.errors[option] ?? []).flatMap((inner) => settleUnions(inner, path, plain));
}

function problemsOf(
  document: RigDocument,
  issue: Issue,
  path: readonly string[],
  quantityPaths: ReadonlySet<string>,
): Problem[] {
  const key = path.join('.');
  const found = foundAt(document, path);
  const wrong = (accepted: string): Problem[] => [
    { code: 'rig-wrong-shape', where: whereOf(document, key), found: shorten(found ?? ''), accepted },
  ];
  switch (issue.code) {
    case 'unrecognized_keys': {
      const known = knownKeys(path, document.plain);
      return issue.keys.map((name) => ({
        code: 'rig-key-unknown',
        where: whereOf(document, [...path, name].join('.')),
        found: shorten(name),
        accepted: acceptedKeys(name, known),
      }));
    }
    case 'invalid_key':
      return wrong(NAME_ACCEPTED).map((problem) => ({ ...problem, found: shorten(path.at(-1) ?? '') }));
    case 'invalid_type':
      if (quantityPaths.has(key)) return [];
      if (found === null) {
        return [{ code: 'rig-key-missing', where: whereOf(document, key), found: '', accepted: key }];
      }
      return wrong(SHAPES[issue.expected] ?? issue.expected);
    case 'invalid_value':
      if (found === null) {
        return [
          {
            code: 'rig-key-missing',
            where: whereOf(document, key),
            found: '',
            accepted: choices(issue.values),
          },
        ];
      }
      return wrong(choices(issue.values));
    case 'invalid_union':
      // The only union told apart by a key is the kind of course.
      if (found !== null) return wrong(COURSE_KINDS.join(', '));
      return [
        {
          code: 'rig-key-missing',
          where: whereOf(document, key),
          found: '',
          accepted: COURSE_KINDS.join(', '),
        },
      ];
    case 'too_small':
      return wrong(`at least ${String(issue.minimum)}`);
    case 'too_big':
      return wrong(`at most ${String(issue.maximum)}`);
    default:
      return wrong(issue.message);
  }
}

const SHAPES: Readonly<Record<string, string>> = {
  object: 'keys with values below it',
  record: 'names with values below it',
  string: 'text',
  int: 'a whole number',
  number: 'a number',
  boolean: 'true or false',
  array: 'a list of rows',
  tuple: 'a pair: [first, second]',
};

const choices = (values: readonly unknown[]): string => values.map(String).join(', ');

const acceptedKeys = (name: string, known: readonly string[]): string =>
  nearest(name, known) === null ? known.join(', ') : knownFor(name, known);

/** What stands at a path, in a few characters; null when nothing does. */
function foundAt(document: RigDocument, path: readonly string[]): string | null {
  const typed = document.typed.get(path.join('.'));
  if (typed !== undefined) return typed;
  const plain = plainAt(document.plain, path);
  if (plain === undefined) return null;
  if (Array.isArray(plain)) return `a list of ${plain.length}`;
  return typeof plain === 'object' ? `keys ${Object.keys(plain).join(', ')}` : String(plain);
}

function plainAt(plain: Plain, path: readonly string[]): Plain | undefined {
  let here: Plain | undefined = plain;
  for (const step of path) {
    if (typeof here !== 'object' || !Object.hasOwn(here, step)) return undefined;
    here = (here as Readonly<Record<string, Plain>>)[step];
  }
  return here;
}

/** Schema that applies at a path, following the alternatives that were meant. */
function descend(root: z.ZodType, path: readonly string[], plain: Plain): z.ZodType | null {
  let here = unwrapped(root);
  let value: Plain | undefined = plain;
  for (const step of path) {
    if (here instanceof z.ZodUnion)
      here = unwrapped(here.options[meantOption(here, value ?? {})] as z.ZodType);
    if (here instanceof z.ZodObject) here = here.shape[step] as z.ZodType;
    else if (here instanceof z.ZodRecord) here = here.valueType as z.ZodType;
    else if (here instanceof z.ZodArray) here = here.element as z.ZodType;
    else if (here instanceof z.ZodTuple) here = here.def.items[Number(step)] as z.ZodType;
    else return null;
    if (!here) return null;
    here = unwrapped(here);
    if (typeof value === 'object') value = (value as Readonly<Record<string, Plain>>)[step];
  }
  return here;
}

/** Schema of what stands, or could stand, at a path. */
export function schemaAt(path: readonly string[], plain: Plain): z.ZodType | null {
  const here = descend(rigFileSchema, path, plain);
  if (!(here instanceof z.ZodUnion)) return here;
  return unwrapped(here.options[meantOption(here, plainAt(plain, path) ?? {})] as z.ZodType);
}

function knownKeys(path: readonly string[], plain: Plain): readonly string[] {
  const here = schemaAt(path, plain);
  return here instanceof z.ZodObject ? Object.keys(here.shape) : [];
}
