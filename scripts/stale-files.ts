import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { GeneratedPage } from './generated-pages.ts';

/** Pages whose committed text is not what the code makes of them now, with the text that it should be. */
export function staleFiles(root: string, pages: readonly GeneratedPage[]): { file: string; text: string }[] {
  return pages.flatMap(({ file, make }) => {
    const path = join(root, file);
    const before = existsSync(path) ? readFileSync(path, 'utf8') : null;
    const text = make(root, before);
    return text === before ? [] : [{ file, text }];
  });
}
