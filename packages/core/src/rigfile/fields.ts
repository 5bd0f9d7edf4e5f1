import { z } from 'zod';
import type { Dimension } from '../finding/figure.ts';
import type { Problem } from '../finding/problem.ts';
import type { Reading } from '../rig/reading.ts';
import type { Plain, RigDocument } from './document.ts';
import { type LeafInfo, leafInfo } from './leaf.ts';
import { isOtherWay } from './link-fields.ts';
import { OPTIONAL_PARTS } from './needed.ts';
import { meantOption, unwrapped } from './options.ts';
import { type RigReadout, readout } from './read.ts';
import type { ReadBeside } from './read-beside.ts';
import { rigFileSchema } from './schema.ts';

/** One quantity that a rig file can hold, and how it stands. */
export interface FieldState {
  /** Where it stands in the file; joined by dots it is the key of the reading. */
  readonly path: readonly string[];
  readonly dimension: Dimension;
  /** What the field is, in a few words. */
  readonly about: string;
  /** Text as typed, null when the file says nothing. */
  readonly typed: string | null;
  /** What the program goes by: typed or assumed; null when there is nothing, or it was not understood. */
  readonly reading: Reading | null;
  readonly problems: readonly Problem[];
  /** False when the program has to ask for it. */
  readonly optional: boolean;
  /** Part of the rig it belongs to, for example `measured`, `front.stop`, `setups.other-stop`. */
  readonly group: string;
}

/**
 * Every quantity of a rig file in the order of the format, typed or not; rows of tables are left out. Optional parts
 * (strap, hose, shaft, witness) are listed even when the rig has none. Contacts, shelf parts, setups and courses are
 * listed under the names that the file gives them.
 *
 * @returns empty when the text is no YAML at all or belongs to another version
 */
export function fieldsOf(text: string, readBeside?: ReadBeside): readonly FieldState[] {
  const read = readout(text, readBeside);
  if (!read.document || !read.built) return [];
  const leaves: FoundLeaf[] = [];
  collect(rigFileSchema, read.document.plain, [], leaves, read.document.plain);
  return leaves.map(({ path, info }) => fieldAt(read, read.document as RigDocument, path, info));
}

interface FoundLeaf {
  readonly path: readonly string[];
  readonly info: LeafInfo;
}

function collect(
  schema: z.ZodType,
  plain: Plain | undefined,
  path: readonly string[],
  found: FoundLeaf[],
  root: Plain,
): void {
  const here = unwrapped(schema);
  const info = leafInfo(here);
  if (info) {
    if (plain !== undefined || !(info.rare || isOtherWay(path, root))) found.push({ path, info });
    return;
  }
  if (here instanceof z.ZodUnion) {
    const option = plain === undefined ? 0 : meantOption(here, plain);
    const meant = unwrapped(here.options[option] as z.ZodType);
    if (!isTable(meant)) collect(meant, plain, path, found, root);
    return;
  }
  const inner = (name: string): Plain | undefined =>
    typeof plain === 'object' && Object.hasOwn(plain, name)
      ? (plain as Readonly<Record<string, Plain>>)[name]
      : undefined;
  // A bracket has a page of fields: they show once it was begun in the file.
  if (plain === undefined && path.includes('bracket')) return;
  if (here instanceof z.ZodObject) {
    for (const [name, of] of Object.entries(here.shape))
      collect(of as z.ZodType, inner(name), [...path, name], found, root);
    return;
  }
  if (typeof plain !== 'object') return;
  if (here instanceof z.ZodRecord || (here instanceof z.ZodArray && !isTable(here))) {
    const of = (here instanceof z.ZodRecord ? here.valueType : here.element) as z.ZodType;
    for (const name of Object.keys(plain)) collect(of, inner(name), [...path, name], found, root);
  }
}

const isTable = (schema: z.ZodType): boolean =>
  schema instanceof z.ZodArray && schema.element instanceof z.ZodTuple;

function fieldAt(
  read: RigReadout,
  document: RigDocument,
  path: readonly string[],
  info: LeafInfo,
): FieldState {
  const key = path.join('.');
  const optional = !info.needed || !partIsThere(document, path);
  const problems = read.problems.filter(({ code, where }) => {
    if (where.key === undefined) return false;
    if (where.key === key || where.key.startsWith(`${key}.`)) return true;
    // Asked for once for a whole branch: every field below that is needed shows it.
    return code === 'rig-needs-reading' && !optional && key.startsWith(`${where.key}.`);
  });
  return {
    path,
    dimension: info.dimension,
    about: info.about,
    typed: document.typed.get(key) ?? null,
    reading: read.built?.readings.get(key) ?? null,
    problems,
    optional,
    group: groupOf(path),
  };
}

function partIsThere(document: RigDocument, path: readonly string[]): boolean {
  const depth = path.findIndex((step) => OPTIONAL_PARTS.has(step));
  return depth < 0 || document.lines.has(path.slice(0, depth + 1).join('.'));
}

/** An end is shown part by part, named things each by themselves, the rest by its first key. */
function groupOf(path: readonly string[]): string {
  const [first = '', second = '', third = ''] = path;
  if (first === 'parts') return `${first}.${second}.${third}`;
  if (first === 'measured' || first === 'limits') return first;
  return path.length === 2 && first !== 'setups' && first !== 'courses' ? first : `${first}.${second}`;
}
