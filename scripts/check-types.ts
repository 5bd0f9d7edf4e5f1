import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';

/** Each project has its own library and type list, so that core cannot name a DOM or Node thing. */
const projects = [
  'packages/core',
  'packages/core/test',
  'packages/picture',
  'packages/picture/test',
  'packages/paper',
  'packages/paper/test',
  'packages/mesh',
  'packages/mesh/test',
  'packages/cli',
  'packages/app',
  'packages/app/test',
  '.',
];

let failed = 0;
for (const project of projects) {
  if (!existsSync(`${project}/tsconfig.json`)) throw new Error(`No tsconfig.json in ${project}`);
  const run = spawnSync(process.execPath, ['node_modules/ts7/bin/tsc', '-p', project], { stdio: 'inherit' });
  if (run.status !== 0) failed += 1;
}
console.log(
  failed === 0 ? `types: ${projects.length} projects clean` : `types: ${failed} projects with errors`,
);
process.exit(failed === 0 ? 0 : 1);
