import type { Problem } from '../../finding/problem.ts';
import { type RigDocument, shorten, whereOf } from '../document.ts';

/** Version of the format that this program reads and writes. */
const CURRENT_SCHEMA = 1;

/**
 * Checks the version before anything else is read. There is one version yet; when there are two, an older file is
 * brought forward here, step by step, on the tree with its comments.
 *
 * @failure `rig-schema-from-the-future` for a newer file, which an older program must never rewrite;
 * `rig-schema-version` when it is missing or not a version
 */
export function versionProblem(document: RigDocument): Problem | null {
  const { plain } = document;
  const version = typeof plain === 'object' && 'schema' in plain ? plain.schema : undefined;
  if (version === CURRENT_SCHEMA) return null;
  const future = typeof version === 'number' && Number.isInteger(version) && version > CURRENT_SCHEMA;
  return {
    code: future ? 'rig-schema-from-the-future' : 'rig-schema-version',
    where: whereOf(document, 'schema'),
    found: shorten(document.typed.get('schema') ?? ''),
    accepted: `schema: ${CURRENT_SCHEMA}`,
  };
}
