import { openDocument } from './document.ts';
import type { RigFileEdit } from './edit.ts';

/**
 * What puts a fragment with a stop under `parts.stops` of a rig file that has others there already: one edit a value, so
 * that everything else in the file stays as it is. Comments of the fragment are not taken over; `notes` says instead
 * where the stop comes from.
 *
 * @param fragment – as `stopFragment` or `estimateFragment` write it
 */
export function shelfEdits(fragment: string, notes: string): readonly RigFileEdit[] {
  const { document } = openDocument(fragment);
  if (document === null) throw new Error('a fragment of our own making is YAML');
  const edits = [...document.typed].map(([key, text]) => ({ path: key.split('.'), text }));
  const at = edits[0]?.path.slice(0, 3) ?? [];
  return [{ path: [...at, 'notes'], text: notes }, ...edits];
}
