import type { Result } from '../finding/problem.ts';
import { whereOf } from './document.ts';
import type { Gaps } from './gaps.ts';

/** Reads a text file that the rig file names, relative to it. Whoever calls decides what may be read. */
export type ReadBeside = (path: string) => Result<string>;

/**
 * Text of the file that stands as `file` below a key.
 *
 * @returns null when none is named, or when it cannot be read; the problems are in `gaps`
 * @failure `file-not-found` where no file can be read at all, or what `readBeside` says
 */
export function readNamedFile(
  gaps: Gaps,
  key: string,
  readBeside: ReadBeside | undefined,
): { readonly file: string; readonly text: string } | null {
  const file = gaps.text(`${key}.file`);
  if (file === undefined) return null;
  const where = whereOf(gaps.document, `${key}.file`);
  if (!readBeside) {
    gaps.problems.push({
      code: 'file-not-found',
      where,
      found: file,
      accepted: 'the table written out in this file',
    });
    return null;
  }
  const content = readBeside(file);
  if (content.ok) return { file, text: content.value };
  gaps.problems.push(
    ...content.problems.map((problem) => ({ ...problem, where: { ...where, ...problem.where } })),
  );
  return null;
}
