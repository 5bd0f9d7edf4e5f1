import { z } from 'zod';
import { rigFileSchema } from './schema.ts';

/**
 * The shape of a rig file as JSON Schema 2020-12, for editors: key names, descriptions, examples.
 * What a quantity may say (units, tolerance, sign) goes beyond it and is checked when the file is read.
 */
export function rigJsonSchema(): object {
  const schema = z.toJSONSchema(rigFileSchema, { target: 'draft-2020-12', io: 'input', reused: 'ref' });
  return { title: 'Lastinch rig file, schema 1', ...schema };
}
