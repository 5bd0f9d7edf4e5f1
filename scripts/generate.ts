/**
 * `npm run generate`: writes every file of this house that is made from its code.
 * `npm run check:generated` (--check) writes nothing and fails when one is stale or a link in the docs leads nowhere.
 */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { brokenLinks } from './docs-links.ts';
import { generatedPages } from './generated-pages.ts';

const root = process.cwd();
const checkOnly = process.argv.includes('--check');
const stale: string[] = [];

for (const page of generatedPages) {
  const path = join(root, page.file);
  const before = existsSync(path) ? readFileSync(path, 'utf8') : null;
  const after = page.make(root, before);
  if (after === before) continue;
  stale.push(page.file);
  if (checkOnly) continue;
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, after);
}

const broken = brokenLinks(root);
for (const fault of broken) console.error(fault);
if (checkOnly) {
  for (const file of stale) console.error(`${file} is stale: run \`npm run generate\` and commit it.`);
} else if (stale.length > 0) console.log(`written: ${stale.join(', ')}`);
const fine = broken.length === 0 && (!checkOnly || stale.length === 0);
if (fine)
  console.log(`generated: ${generatedPages.length} files up to date, every link in the docs leads somewhere`);
process.exit(fine ? 0 : 1);
