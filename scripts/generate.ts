/**
 * `npm run generate`: writes every file of this house that is made from its code.
 * `npm run check:generated` (--check) writes nothing and fails when one is stale or a link in the docs leads nowhere.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { brokenLinks } from './docs-links.ts';
import { generatedPages } from './generated-pages.ts';
import { staleFiles } from './stale-files.ts';

const root = process.cwd();
const checkOnly = process.argv.includes('--check');
const stale = staleFiles(root, generatedPages);
if (!checkOnly)
  for (const { file, text } of stale) {
    mkdirSync(dirname(join(root, file)), { recursive: true });
    writeFileSync(join(root, file), text);
  }

const broken = brokenLinks(root);
for (const fault of broken) console.error(fault);
if (checkOnly) {
  for (const { file } of stale) console.error(`${file} is stale: run \`npm run generate\` and commit it.`);
} else if (stale.length > 0) console.log(`written: ${stale.map(({ file }) => file).join(', ')}`);
const fine = broken.length === 0 && (!checkOnly || stale.length === 0);
if (fine)
  console.log(`generated: ${generatedPages.length} files up to date, every link in the docs leads somewhere`);
process.exit(fine ? 0 : 1);
