import { readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { checkRooms } from '../cruise.ts';
import { houseFaults } from '../house-rules.ts';
import { readRoomList } from '../room-list.ts';
import { SmallHouse } from './small-house.ts';

const HERE = resolve(import.meta.dirname, '../..');

let house: SmallHouse;
beforeEach(() => {
  house = new SmallHouse(HERE);
});
afterEach(() => house.remove());

it('finds a sound small house clean, having read every file of it', async () => {
  const report = await checkRooms(house.root);
  expect(report.faults).toEqual([]);
  expect(report.modules).toBe(11);
  expect(report.arrows).toBeGreaterThanOrEqual(11);
});

/** What is planted, where, and the rule that must find it. */
const PLANTED: readonly [what: string, path: string, text: string, rule: string][] = [
  [
    'a room below that imports a room above',
    'packages/core/src/rig/sees-ride.ts',
    "export { ride } from '../ride/ride.ts';\n",
    'room-rig',
  ],
  [
    'the same through a type only',
    'packages/core/src/rig/sees-type.ts',
    "import type { ride } from '../ride/ride.ts';\nexport type Ride = typeof ride;\n",
    'room-rig',
  ],
  [
    'a room that imports the public surface of its own package',
    'packages/core/src/ride/sees-index.ts',
    "export { figure } from '../index.ts';\n",
    'room-ride',
  ],
  [
    'a physics room that imports the rig file',
    'packages/core/src/ride/sees-file.ts',
    "export { readRig } from '../rigfile/index.ts';\n",
    'border-rigfile',
  ],
  [
    'a picture that imports the rig file',
    'packages/picture/src/sees-file.ts',
    "export { readRig } from '@lastinch/core/rigfile';\n",
    'package-picture',
  ],
  [
    'a solid that imports a picture',
    'packages/mesh/src/sees-picture.ts',
    "export { picture } from '@lastinch/picture';\n",
    'package-mesh',
  ],
  [
    'a core that imports a solid',
    'packages/core/src/ride/sees-solid.ts',
    "export { solid } from '@lastinch/mesh';\n",
    'package-core',
  ],
  [
    'a built-in module of Node in a solid',
    'packages/mesh/src/reads.ts',
    "export { readFileSync } from 'node:fs';\n",
    'pure-mesh',
  ],
  [
    'a folder of the core that is no room',
    'packages/core/src/attic/thing.ts',
    "export { figure } from '../finding/figure.ts';\n",
    'room-unlisted',
  ],
  [
    'a built-in module of Node in the core',
    'packages/core/src/ride/reads.ts',
    "export { readFileSync } from 'node:fs';\n",
    'pure-core',
  ],
  [
    'a package that is not installed',
    'packages/core/src/ride/declares.ts',
    "export { default } from 'left-out';\n",
    'must-resolve',
  ],
  [
    'the command line that imports the workbench',
    'packages/cli/src/sees-app.ts',
    "export { App } from '../../app/src/main.tsx';\n",
    'package-cli',
  ],
  [
    'the workbench that imports the command line',
    'packages/app/src/sees-cli.tsx',
    "export { default } from '../../cli/src/main.ts';\n",
    'package-app',
  ],
  [
    'the workbench that reaches past the public surface',
    'packages/app/src/reaches.tsx',
    "export { ride } from '../../core/src/ride/ride.ts';\n",
    'package-app',
  ],
  [
    'a test that reaches into the tests of another package',
    'packages/cli/test/reaches.test.ts',
    "export { default } from '../../core/test/ride.test.ts';\n",
    'package-cli-test',
  ],
  [
    'a source file that imports a test',
    'packages/core/src/ride/sees-test.ts',
    "export { default } from '../../test/ride.test.ts';\n",
    'tests-are-leaves',
  ],
  [
    'a circle',
    'packages/core/src/finding/figure.ts',
    "import { other } from './other.ts';\nexport const figure = other;\n",
    'no-circles',
  ],
  [
    'a script that reaches past the public surface',
    'scripts/reaches.ts',
    "export { ride } from '../packages/core/src/ride/ride.ts';\n",
    'outside-sees-surfaces',
  ],
  ['an import that leads nowhere', 'scripts/lost.ts', "export { gone } from './gone.ts';\n", 'must-resolve'],
];

it.each(PLANTED)('finds %s', async (_what, path, text, rule) => {
  house.write(
    'packages/core/src/finding/other.ts',
    rule === 'no-circles'
      ? "import { figure } from './figure.ts';\nexport const other = figure;\n"
      : 'export const other = 2;\n',
  );
  house.write(path, text);
  const { faults } = await checkRooms(house.root);
  expect(faults.join('\n')).toContain(`[${rule}]`);
});

it('lets the tests of a host run the contract that is written once in the core', async () => {
  house.write('packages/core/test/crew-contract.ts', 'export const crewContract = 1;\n');
  house.write(
    'packages/cli/test/threads.test.ts',
    "export { crewContract } from '../../core/test/crew-contract.ts';\n",
  );
  expect((await checkRooms(house.root)).faults).toEqual([]);
});

it('finds a package that is installed, but not declared by the core', async () => {
  house.write('node_modules/left-out/package.json', '{ "name": "left-out", "main": "left-out.js" }');
  house.write('node_modules/left-out/left-out.js', 'module.exports = 1;\n');
  house.write('packages/core/src/ride/declares.ts', "export { default } from 'left-out';\n");
  const { faults } = await checkRooms(house.root);
  expect(faults.join('\n')).toContain('[declared-core]');
});

it('follows rooms.json: an arrow taken out of the list is refused', async () => {
  const file = join(house.root, 'rooms.json');
  const list = JSON.parse(readFileSync(file, 'utf8')) as { rooms: Record<string, { sees: string[] }> };
  const ride = list.rooms.ride;
  if (ride !== undefined) ride.sees = ride.sees.filter((name) => name !== 'rig');
  writeFileSync(file, JSON.stringify(list));
  const { faults } = await checkRooms(house.root);
  expect(faults.join('\n')).toContain('[room-ride]');
});

it('refuses a list that names a room it does not have', () => {
  const file = join(house.root, 'rooms.json');
  writeFileSync(file, readFileSync(file, 'utf8').replace('"sees": ["finding"]', '"sees": ["fnding"]'));
  expect(() => readRoomList(house.root)).toThrow(/fnding/);
});

it('calls an empty house a fault, not a success', async () => {
  house.remove();
  house.write('rooms.json', readFileSync(join(HERE, 'rooms.json'), 'utf8'));
  for (const name of ['core', 'picture', 'paper', 'mesh', 'cli', 'app'])
    house.write(`packages/${name}/package.json`, '{ "exports": {} }');
  expect((await checkRooms(house.root)).faults.join('\n')).toContain('nothing to check');
});

describe('rules of layout', () => {
  it.each([
    [
      'a file of more than 400 lines',
      'packages/core/src/ride/long.ts',
      'export {};\n'.repeat(401),
      '401 lines',
    ],
    ['a drawer', 'packages/core/src/ride/helpers.ts', 'export {};\n', 'drawer'],
    ['an unfinished merge', 'packages/core/src/ride/README.md', '<<<<<<< HEAD\n', 'marks of a merge'],
    ['a barrel', 'packages/core/src/ride/index.ts', "export { ride } from './ride.ts';\n", 'barrel'],
    [
      'a wildcard on a public surface',
      'packages/core/src/index.ts',
      "export * from './ride/ride.ts';\n",
      'wildcard',
    ],
  ])('refuse %s', (_what, path, text, said) => {
    expect(houseFaults(house.root)).toEqual([]);
    house.write(path, text);
    expect(houseFaults(house.root).join('\n')).toContain(said);
  });
});
