/**
 * Renews the compiled ride kernel when its source has changed; with --check only says so. Before everything else that is
 * generated: pages are made by driving over it.
 */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { kernelBytesFile } from './bytes.ts';

const FILE = 'packages/core/src/ride/kernel-bytes.ts';

const before = existsSync(FILE) ? readFileSync(FILE, 'utf8') : null;
const text = kernelBytesFile(process.cwd(), before);
const isStale = text !== before;
if (isStale && process.argv.includes('--check')) {
  console.error(`${FILE} is stale: run \`npm run generate\` and commit it.`);
  process.exit(1);
}
if (isStale) {
  writeFileSync(FILE, text);
  console.log(`written: ${FILE}`);
}
