/**
 * The rig file that the command line serves beside this page (`lastinch open FILE`).
 * GET gives the text with `X-Rig-Name` and `ETag`; PUT with `If-Match` writes it, and refuses with 412 when the
 * file on disk is no longer the one that was read.
 */
const ADDRESS = 'rig';

export interface ServedRig {
  readonly name: string;
  readonly text: string;
  readonly etag: string;
}

/** Null when this page was not opened by the command line: a static server has no rig. */
export async function fetchServedRig(): Promise<ServedRig | null> {
  const answer = await fetch(ADDRESS, { cache: 'no-store' }).catch(() => null);
  if (answer === null || !answer.ok) return null;
  const name = answer.headers.get('X-Rig-Name');
  const etag = answer.headers.get('ETag');
  if (name === null || etag === null) return null;
  return { name: decodeURIComponent(name), text: await answer.text(), etag };
}

export type PutOutcome =
  | { readonly kind: 'saved'; readonly etag: string }
  /** Somebody else wrote the file meanwhile. Nothing was overwritten. */
  | { readonly kind: 'changed-on-disk' }
  | { readonly kind: 'failed'; readonly because: string };

export async function putServedRig(text: string, etag: string): Promise<PutOutcome> {
  const answer = await fetch(ADDRESS, {
    method: 'PUT',
    body: text,
    headers: { 'If-Match': etag, 'Content-Type': 'application/yaml; charset=utf-8' },
  }).catch(() => null);
  if (answer === null)
    return {
      kind: 'failed',
      because: 'The terminal that serves this page does not answer. Is it still running?',
    };
  if (answer.status === 412) return { kind: 'changed-on-disk' };
  const written = answer.headers.get('ETag');
  if (!answer.ok || written === null)
    return { kind: 'failed', because: (await answer.text()).slice(0, 300) || `Answer ${answer.status}` };
  return { kind: 'saved', etag: written };
}
