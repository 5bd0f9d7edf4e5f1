import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** A number, or numbers with names or in order, nested as deep as needed. */
export type Values = number | readonly Values[] | { readonly [name: string]: Values };

/** How a check's expected values became known to us. */
export const PROVENANCES = ['read', 'computed', 'from memory'] as const;
export type Provenance = (typeof PROVENANCES)[number];

export const TOLERANCE_KINDS = ['relative', 'absolute'] as const;

/** One outside check, as it stands in `checks/<topic>/<id>.json`. */
export interface Check {
  readonly id: string;
  readonly topic: string;
  readonly title: string;
  /** Which evaluator of `runners/<topic>.ts` answers it. */
  readonly evaluator: string;
  readonly quantity: string;
  readonly unit: string;
  readonly inputs: Readonly<Record<string, unknown>>;
  readonly expected: Values;
  /** `relative` is a share of each expected entry, `absolute` is in the unit of the check. */
  readonly tolerance: {
    readonly kind: (typeof TOLERANCE_KINDS)[number];
    readonly value: number;
    readonly reason: string;
  };
  readonly source: {
    readonly work: string;
    readonly edition: string;
    readonly place: string;
    /** What was really opened, when it was not the work itself. */
    readonly note?: string;
  };
  readonly provenance: Provenance;
  /** Script in `make/` that computed the expected values. */
  readonly maker?: string;
}

const text = (value: unknown): value is string => typeof value === 'string' && value.trim() !== '';
const record = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

function isValues(value: unknown): value is Values {
  if (typeof value === 'number') return Number.isFinite(value);
  if (Array.isArray(value)) return value.length > 0 && value.every(isValues);
  return record(value) && Object.keys(value).length > 0 && Object.values(value).every(isValues);
}

/** Every rule of the format that this text breaks; empty when it is a sound check. */
export function faultsOf(json: unknown, topic: string, id: string): readonly string[] {
  if (!record(json)) return ['is not an object'];
  const faults: string[] = [];
  for (const key of ['title', 'evaluator', 'quantity', 'unit'])
    if (!text(json[key])) faults.push(`${key} is empty`);
  if (json.id !== id) faults.push(`id is not the file's name`);
  if (json.topic !== topic) faults.push(`topic is not the folder's name`);
  if (!record(json.inputs)) faults.push('inputs is not an object');
  if (!isValues(json.expected)) faults.push('expected is not made of finite numbers');

  const tolerance = record(json.tolerance) ? json.tolerance : {};
  if (!TOLERANCE_KINDS.includes(tolerance.kind as 'relative')) faults.push('tolerance.kind is unknown');
  if (!(typeof tolerance.value === 'number' && tolerance.value >= 0))
    faults.push('tolerance.value is no number');
  if (!text(tolerance.reason)) faults.push('tolerance.reason is empty');

  const source = record(json.source) ? json.source : {};
  for (const key of ['work', 'edition', 'place'])
    if (!text(source[key])) faults.push(`source.${key} is empty`);
  if (!PROVENANCES.includes(json.provenance as Provenance)) faults.push('provenance is unknown');
  if (json.provenance === 'computed' && !text(json.maker)) faults.push('computed, but no maker is named');
  return faults;
}

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));

/** All checks on disk, by topic and id. Throws on a file that breaks the format: it is our own mistake. */
export function readChecks(): readonly Check[] {
  const checks: Check[] = [];
  for (const topic of readdirSync(here('./checks')).sort()) {
    for (const file of readdirSync(here(`./checks/${topic}`)).sort()) {
      const id = file.replace(/\.json$/, '');
      const json: unknown = JSON.parse(readFileSync(here(`./checks/${topic}/${file}`), 'utf8'));
      const faults = faultsOf(json, topic, id);
      if (faults.length > 0) throw new Error(`validation/checks/${topic}/${file}: ${faults.join('; ')}`);
      checks.push(json as Check);
    }
  }
  return checks;
}
