import { createHash, randomBytes } from 'node:crypto';
import {
  closeSync,
  constants,
  existsSync,
  fstatSync,
  fsyncSync,
  openSync,
  readSync,
  realpathSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { basename, dirname, join, resolve, sep } from 'node:path';
import { bad, good, type Problem, type ProblemCode, type Result } from '@lastinch/core';

/** A rig file is some kilobytes. The workbench refuses at the same size. */
const LARGEST_FILE = 1_000_000;
/** A measured ground of some kilometres. */
const LARGEST_TABLE = 8_000_000;
const RIG_FILE = 'a rig file, as `lastinch new` writes it';
const LOG_FILE = 'a log of a drive: CSV or GPX';

/** Name under which text from standard input stands in messages. */
const STDIN_NAME = 'standard input';

export interface RigText {
  /** As the user wrote the path, for messages. */
  readonly file: string;
  readonly text: string;
  /** Changes whenever the bytes on disk change. */
  readonly etag: string;
}

const problem = (code: ProblemCode, file: string, found: string, accepted: string): Problem => ({
  code,
  // Where the file itself is what was found, its name stands in the sentence already.
  where: found === file ? {} : { file },
  found,
  accepted,
});

/** What the operating system said, as a problem with the file. Anything unforeseen is our own mistake and thrown. */
function refusedBySystem(error: unknown, file: string): Problem {
  const { code } = error as NodeJS.ErrnoException;
  switch (code) {
    case 'ENOENT':
    case 'ENOTDIR':
    case 'ENAMETOOLONG':
    case 'ELOOP':
    case 'ENXIO':
      return problem('file-not-found', file, file, RIG_FILE);
    case 'EISDIR':
      return problem('file-is-folder', file, file, RIG_FILE);
    case 'EACCES':
    case 'EPERM':
    case 'EROFS':
      return problem(
        'file-no-permission',
        file,
        'no permission',
        'a file that you may read, and write to save',
      );
    default:
      throw error;
  }
}

const tooLarge = (file: string, bytes: number, largest: number, atLeast = false): Problem =>
  problem(
    'file-too-large',
    file,
    `${atLeast ? 'more than ' : ''}${(bytes / 1_000_000).toFixed(1)} MB`,
    `at most ${largest / 1_000_000} MB`,
  );

/** Text of the bytes, or what is wrong with them. A byte order mark stays: saving must not change what was not edited. */
function decode(bytes: Buffer, file: string): Result<RigText> {
  if (bytes.includes(0)) return bad(problem('file-not-text', file, 'bytes of value zero', 'UTF-8 text'));
  try {
    const text = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
    return good({ file, text, etag: etagOf(bytes) });
  } catch {
    return bad(problem('file-not-text', file, 'bytes that are not UTF-8', 'UTF-8 text'));
  }
}

const etagOf = (bytes: Buffer): string =>
  `"${createHash('sha256').update(bytes).digest('hex').slice(0, 32)}"`;

/** Reads a file, never more than its size allows, whatever the path leads to (a pipe, a device without end). */
export function readTextFile(file: string, largest = LARGEST_FILE): Result<RigText> {
  let handle: number | null = null;
  try {
    handle = openSync(file, constants.O_RDONLY);
    const stat = fstatSync(handle);
    if (stat.isDirectory()) return bad(problem('file-is-folder', file, file, RIG_FILE));
    if (stat.isFile() && stat.size > largest) return bad(tooLarge(file, stat.size, largest));
    const bytes = Buffer.alloc(largest + 1);
    let length = 0;
    while (length < bytes.length) {
      const more = readSync(handle, bytes, length, bytes.length - length, null);
      if (more === 0) break;
      length += more;
    }
    if (length > largest) return bad(tooLarge(file, largest, largest, true));
    return decode(bytes.subarray(0, length), file);
  } catch (error) {
    return bad(refusedBySystem(error, file));
  } finally {
    if (handle !== null) closeSync(handle);
  }
}

async function readStdin(): Promise<Result<RigText>> {
  const parts: Buffer[] = [];
  let length = 0;
  for await (const part of process.stdin) {
    parts.push(part as Buffer);
    length += (part as Buffer).length;
    if (length > LARGEST_FILE) return bad(tooLarge(STDIN_NAME, LARGEST_FILE, LARGEST_FILE, true));
  }
  return decode(Buffer.concat(parts), STDIN_NAME);
}

/** Text of a rig file, or of standard input for `-`. */
export const readRigText = async (file: string): Promise<Result<RigText>> =>
  file === '-' ? readStdin() : readTextFile(file);

/**
 * Reads tables that a rig file names, for `readRig`: only files in the rig's own folder or below it, so that a rig
 * file from somebody else cannot ask for the rest of the disk.
 */
export function readBeside(rigFile: string): (path: string) => Result<string> {
  const folder = rigFile === '-' || rigFile === STDIN_NAME ? process.cwd() : dirname(resolve(rigFile));
  return (path) => {
    try {
      const home = realpathSync(folder);
      const real = realpathSync(resolve(home, path));
      if (!real.startsWith(home + sep))
        return bad(
          problem(
            'file-not-found',
            path,
            'a path that leaves the folder of the rig file',
            'a file beside the rig file',
          ),
        );
      const read = readTextFile(real, LARGEST_TABLE);
      return read.ok
        ? good(read.value.text)
        : bad(...read.problems.map((one) => ({ ...one, where: { ...one.where, file: path } })));
    } catch (error) {
      return bad(refusedBySystem(error, path));
    }
  };
}

/** As much of a large file as is held at once. */
const PIECE = 1 << 20;

/**
 * Reads a file of any size piece by piece; standard input for `-`. A piece is written over by the next.
 *
 * @param take – gets each piece, and how much of the whole was read with it: 0…1, not a number where nobody knows
 * @returns the name for messages
 */
export async function readPieces(
  file: string,
  take: (piece: Uint8Array, share: number) => void,
): Promise<Result<string>> {
  if (file === '-') {
    for await (const part of process.stdin) take(part as Buffer, Number.NaN);
    return good(STDIN_NAME);
  }
  let handle: number | null = null;
  try {
    handle = openSync(file, constants.O_RDONLY);
    const stat = fstatSync(handle);
    if (stat.isDirectory()) return bad(problem('file-is-folder', file, file, LOG_FILE));
    const bytes = Buffer.alloc(PIECE);
    let done = 0;
    for (let length = readSync(handle, bytes); length > 0; length = readSync(handle, bytes)) {
      done += length;
      take(bytes.subarray(0, length), stat.isFile() ? done / stat.size : Number.NaN);
    }
    return good(file);
  } catch (error) {
    const refused = refusedBySystem(error, file);
    return bad(refused.code === 'file-no-permission' ? refused : { ...refused, accepted: LOG_FILE });
  } finally {
    if (handle !== null) closeSync(handle);
  }
}

/** Writes a new file; an existing one is left alone. */
export function writeNewFile(file: string, text: string): Result<string> {
  try {
    writeFileSync(file, text, { flag: 'wx' });
    return good(file);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST')
      return bad(problem('file-exists', file, file, 'the name of a new file'));
    return bad(refusedBySystem(error, file));
  }
}

/** What stands in the way of a new file, asked before long work is done for it; null where nothing does. */
export function isTaken(file: string): Problem | null {
  if (existsSync(file)) return problem('file-exists', file, file, 'the name of a new file');
  const folder = dirname(resolve(file));
  return existsSync(folder) ? null : problem('file-not-found', folder, folder, 'a folder that there is');
}

/**
 * Writes a file of our own in one step, over whatever it held: beside it first, then renamed, so that a reader, or a kill,
 * meets the old content or the new one and never half.
 */
export function writeOver(file: string, content: string | Uint8Array): Result<string> {
  const temporary = join(dirname(resolve(file)), `.${basename(file)}.${randomBytes(6).toString('hex')}.tmp`);
  try {
    writeFileSync(temporary, content, { flag: 'wx' });
    renameSync(temporary, file);
    return good(file);
  } catch (error) {
    rmSync(temporary, { force: true });
    return bad(refusedBySystem(error, file));
  }
}

/**
 * Replaces the text of a file in one step: a reader, or a power cut, meets the old text or the new one, never half.
 * Written beside it first, then renamed; a link keeps pointing at the file it points at.
 *
 * @param knownAs – entity tag of the text that the new one was made from
 * @returns the new entity tag, or `null` when the file on disk is not that text any more: nothing was written
 */
export function replaceFile(file: string, text: string, knownAs: string): Result<string | null> {
  let temporary: string | null = null;
  try {
    const real = realpathSync(file);
    temporary = join(dirname(real), `.${basename(real)}.${randomBytes(6).toString('hex')}.tmp`);
    const bytes = Buffer.from(text, 'utf8');
    const asBefore = openSync(real, constants.O_RDWR);
    const mode = fstatSync(asBefore).mode & 0o777;
    closeSync(asBefore);
    const handle = openSync(temporary, 'wx', mode);
    try {
      writeFileSync(handle, bytes);
      fsyncSync(handle);
    } finally {
      closeSync(handle);
    }
    const now = readTextFile(real);
    if (!now.ok || now.value.etag !== knownAs) return good(null);
    renameSync(temporary, real);
    temporary = null;
    return good(etagOf(bytes));
  } catch (error) {
    return bad(refusedBySystem(error, file));
  } finally {
    if (temporary !== null) rmSync(temporary, { force: true });
  }
}
