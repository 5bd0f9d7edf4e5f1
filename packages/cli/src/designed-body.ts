import { bad, good, type Result } from '@lastinch/core';
import type { PressedStop } from '@lastinch/core/stops';

type PrintedBody = PressedStop['body'];

const SCHEMA = 'lastinch/stop-design/1';

/**
 * The printed body in the output of `stop design --json`.
 *
 * @failure `rig-wrong-shape` with the file and what is missing
 */
export function designedBody(text: string, file: string): Result<PrintedBody> {
  const refuse = (found: string): Result<PrintedBody> =>
    bad({
      code: 'rig-wrong-shape',
      where: { file },
      found,
      accepted: 'the output of lastinch stop design --json, unchanged',
    });
  let read: unknown;
  try {
    read = JSON.parse(text);
  } catch {
    return refuse('text that is not JSON');
  }
  const { schema, body } = isRecord(read) ? read : { schema: null, body: null };
  if (schema !== SCHEMA) return refuse(`a schema of ${String(schema).slice(0, 40)}`);
  if (!isRecord(body)) return refuse('no body');
  const { height, bore, skin, foot = 0, cap = 0, radius, density } = body;
  const isSize = (value: unknown): value is number => typeof value === 'number' && value >= 0;
  if (!(isSize(height) && height > 0 && isSize(bore) && isSize(skin) && isSize(foot) && isSize(cap)))
    return refuse('a body without its sizes');
  if (!isAlong(radius, height) || !isAlong(density, height))
    return refuse('a body without its outline or density');
  if (!density.value.every((rho) => rho > 0 && rho < 1)) return refuse('densities that are no shares');
  return good({ height, bore, skin, foot, cap, radius, density });
}

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Two rows of numbers as long as each other; heights rise from 0 to the body's. */
function isAlong(value: unknown, height: number): value is PrintedBody['density'] {
  if (!isRecord(value)) return false;
  const { at, value: values } = value;
  const isRow = (row: unknown): row is number[] => Array.isArray(row) && row.every(Number.isFinite);
  if (!isRow(at) || !isRow(values) || at.length !== values.length || at.length < 2) return false;
  return at.every((z, i) => z >= 0 && z <= height * (1 + 1e-9) && (i === 0 || z > (at[i - 1] ?? z)));
}
