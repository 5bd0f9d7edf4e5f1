import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { sourceFiles } from './cruise.ts';
import { markdownPages } from './docs-links.ts';
import { readRoomList, surfaceOf } from './room-list.ts';

const LONGEST = 400;
const UNMERGED = /^(<{7}|>{7}) /m;
const DRAWER = /(^|\/)(utils?|helpers?|common|shared|misc|manager)(\/|\.tsx?$)/;

/**
 * Rules of layout that no linter here knows: length of a file, drawers without a name, barrels, wildcards, and marks that
 * an unfinished merge left in a file or page.
 */
export function houseFaults(root: string): string[] {
  const surfaces = new Set(
    Object.keys(readRoomList(root).packages).flatMap((name) => [...surfaceOf(root, name).values()]),
  );
  const faults: string[] = [];
  for (const file of sourceFiles(root)) {
    const text = readFileSync(join(root, file), 'utf8');
    const lines = text.split('\n').length - 1;
    if (lines > LONGEST)
      faults.push(`${file} has ${lines} lines; at most ${LONGEST}. A file is one concept.`);
    if (DRAWER.test(file)) faults.push(`${file} is a drawer without a name; call it after what is in it.`);
    if (/(^|\/)index\.tsx?$/.test(file) && !surfaces.has(file) && file.includes('/src/'))
      faults.push(
        `${file} is a barrel; import the file itself. Surfaces stand in "exports" of package.json.`,
      );
    if (surfaces.has(file) && /^export\s+\*/m.test(text))
      faults.push(`${file} exports by wildcard; a public surface names each thing.`);
  }
  for (const file of [...sourceFiles(root), ...markdownPages(root)])
    if (UNMERGED.test(readFileSync(join(root, file), 'utf8')))
      faults.push(`${file} still has the marks of a merge in it; settle what it says.`);
  return faults;
}
