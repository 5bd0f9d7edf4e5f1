import { fileOpen, fileSave } from 'browser-fs-access';
import { fetchServedRig, putServedRig } from './served-rig.ts';

/** Where the document came from, and so where saving puts it. */
export type Home =
  /** Served by the command line; saved there under the file's own entity tag. */
  | { readonly kind: 'served'; readonly etag: string }
  /** A file that the browser may write again. */
  | { readonly kind: 'file'; readonly handle: FileSystemFileHandle }
  /** No place yet: the demo, or a browser that can only download. */
  | { readonly kind: 'nowhere' };

export interface OpenedFile {
  readonly name: string;
  readonly text: string;
  readonly home: Home;
}

export type SaveOutcome =
  | { readonly kind: 'saved'; readonly home: Home; readonly name: string }
  | { readonly kind: 'given-up' }
  | { readonly kind: 'changed-on-disk' }
  | { readonly kind: 'failed'; readonly because: string };

const RIG_FILE = {
  description: 'Rig file',
  mimeTypes: ['application/yaml'],
  extensions: ['.yaml', '.yml'],
  id: 'rig',
};

/** Largest file read, as in the command line: a rig file is some kilobytes. */
const LARGEST_FILE = 1_000_000;

/** The rig with which this page was opened, or null when there is none and the demo is shown. */
export async function openServed(): Promise<OpenedFile | null> {
  const served = await fetchServedRig();
  return served === null
    ? null
    : { name: served.name, text: served.text, home: { kind: 'served', etag: served.etag } };
}

/** Lets a person choose a file. Null when he changed his mind; a sentence when the file cannot be a rig. */
export async function openFile(): Promise<OpenedFile | { readonly refused: string } | null> {
  try {
    const file = await fileOpen(RIG_FILE);
    if (file.size > LARGEST_FILE)
      return {
        refused: `${file.name} has ${Math.round(file.size / 1000)} kB; a rig file has at most 1000 kB.`,
      };
    const home: Home =
      file.handle === undefined ? { kind: 'nowhere' } : { kind: 'file', handle: file.handle };
    return { name: file.name, text: await file.text(), home };
  } catch (error) {
    if (isChangeOfMind(error)) return null;
    return { refused: `The file could not be read: ${sentenceOf(error)}` };
  }
}

/** Saves where the document lives; asks for a place, or downloads, when it lives nowhere. */
export async function saveFile(text: string, name: string, home: Home): Promise<SaveOutcome> {
  if (home.kind === 'served') {
    const put = await putServedRig(text, home.etag);
    return put.kind === 'saved' ? { kind: 'saved', home: { kind: 'served', etag: put.etag }, name } : put;
  }
  return saveCopy(text, name, home.kind === 'file' ? home.handle : null);
}

/** Saves to a file that is asked for when no handle is given. */
export async function saveCopy(
  text: string,
  name: string,
  handle: FileSystemFileHandle | null,
): Promise<SaveOutcome> {
  try {
    const written = await fileSave(
      new Blob([text], { type: 'application/yaml' }),
      { ...RIG_FILE, fileName: name },
      handle,
    );
    const home: Home = written === null ? { kind: 'nowhere' } : { kind: 'file', handle: written };
    return { kind: 'saved', home, name: written?.name ?? name };
  } catch (error) {
    if (isChangeOfMind(error)) return { kind: 'given-up' };
    return { kind: 'failed', because: sentenceOf(error) };
  }
}

/** Asks before the page is closed with unsaved changes. The wording is the browser's own. */
export function warnBeforeLeaving(wouldLose: () => boolean): void {
  window.addEventListener('beforeunload', (event) => {
    if (wouldLose()) event.preventDefault();
  });
}

const isChangeOfMind = (error: unknown): boolean =>
  error instanceof DOMException && error.name === 'AbortError';
const sentenceOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));
