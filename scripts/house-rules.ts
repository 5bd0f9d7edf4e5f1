import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { sourceFiles } from './cruise.ts';
import { readRoomList, surfaceOf } from './room-list.ts';

const LONGEST = 400;
const DRAWER = /(^|\/)(utils?|helpers?|common|shared|misc|manager)(\/|\.tsx?$)/;

/** Rules of layout that no linter here knows: length of a file, drawers without a name, barrels, wildcards. */
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
  return faults;
}
