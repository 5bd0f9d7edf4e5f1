/**
 * `npm run validate:mesh`: shows solids of ours to programs of others. Says of each program whether it ran; ends with 1
 * where one disagrees, with 2 where none is installed. `-- --all` also ends with 2 where any is missing.
 */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileOf } from '@lastinch/mesh';
import { PROGRAMS, type Shown } from './programs.ts';
import { shapes } from './shapes.ts';

const folder = mkdtempSync(join(tmpdir(), 'lastinch-solids-'));
let [ran, missing, wrong] = [0, 0, 0];
try {
  const shown = shapes().map(({ name, solid: { mesh, figures } }): Shown => {
    const [stl, threeMf] = [join(folder, `${name}.stl`), join(folder, `${name}.3mf`)];
    writeFileSync(stl, fileOf('stl', name, mesh));
    writeFileSync(threeMf, fileOf('3mf', name, mesh));
    return { name, stl, threeMf, triangles: figures.triangles, volume: 1e9 * figures.volume };
  });
  for (const { name, volume, triangles } of shown)
    console.log(`${name}: ours ${triangles} triangles, ${Math.round(volume)} mm³`);
  for (const program of PROGRAMS) {
    const show = program.start(folder);
    if (show === null) {
      missing += 1;
      console.log(`NOT RUN  ${program.name}: ${program.get}`);
      continue;
    }
    ran += 1;
    for (const each of shown) {
      const { said, fine } = show(each);
      if (!fine) wrong += 1;
      console.log(`${fine ? 'agrees ' : 'DIFFERS'}  ${program.name}, ${each.name}: ${said}`);
    }
  }
} finally {
  rmSync(folder, { recursive: true, force: true });
}
console.log(`${ran} programs ran, ${missing} did not, ${wrong} differences`);
process.exitCode = wrong > 0 ? 1 : ran === 0 || (missing > 0 && process.argv.includes('--all')) ? 2 : 0;
