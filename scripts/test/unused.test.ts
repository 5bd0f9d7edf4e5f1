import { spawnSync } from 'node:child_process';
import { cpSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { SmallHouse } from './small-house.ts';

const HERE = resolve(import.meta.dirname, '../..');

let house: SmallHouse;
beforeEach(() => {
  house = new SmallHouse(HERE);
  cpSync(join(HERE, 'knip.json'), join(house.root, 'knip.json'));
  house.write('package.json', '{ "name": "small", "private": true, "workspaces": ["packages/*"] }');
});
afterEach(() => house.remove());

const unused = (): string =>
  spawnSync(process.execPath, [join(HERE, 'node_modules/knip/bin/knip.js'), '--no-progress'], {
    cwd: house.root,
    encoding: 'utf8',
  }).stdout;

it('the check for unused code finds an export and a file that nobody imports', () => {
  const path = join(house.root, 'packages/core/src/finding/figure.ts');
  writeFileSync(path, 'export const figure = 1;\nexport const nobodyWantsMe = 2;\n');
  house.write('packages/core/src/ride/left-behind.ts', 'export const left = 1;\n');
  const said = unused();
  expect(said).toMatch(/nobodyWantsMe\s+packages\/core\/src\/finding\/figure\.ts/);
  expect(said).toContain('packages/core/src/ride/left-behind.ts');
});
