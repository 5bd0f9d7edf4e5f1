import { cpSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';

/** Files of a house that keeps every rule: one line or two in each place that the rules speak of. */
const SOUND: Readonly<Record<string, string>> = {
  'packages/core/src/index.ts':
    "export { figure } from './finding/figure.ts';\nexport { ride } from './ride/ride.ts';\n",
  'packages/core/src/finding/figure.ts': 'export const figure = 1;\n',
  'packages/core/src/rig/rig.ts': "export { figure as rig } from '../finding/figure.ts';\n",
  'packages/core/src/rigfile/index.ts': "export { rig as readRig } from '../rig/rig.ts';\n",
  'packages/core/src/ride/ride.ts': "export { rig as ride } from '../rig/rig.ts';\n",
  'packages/core/test/ride.test.ts': "import { ride } from '../src/ride/ride.ts';\nexport default ride;\n",
  'packages/picture/src/index.ts':
    "import { figure } from '@lastinch/core';\nexport const picture = figure;\n",
  'packages/mesh/src/index.ts': "import { figure } from '@lastinch/core';\nexport const solid = figure;\n",
  'packages/cli/src/main.ts':
    "import { readFileSync } from 'node:fs';\nimport { readRig } from '@lastinch/core/rigfile';\nimport { picture } from '@lastinch/picture';\nexport default [readFileSync, readRig, picture];\n",
  'packages/app/src/main.tsx':
    "import { picture } from '@lastinch/picture';\nexport const App = () => picture;\n",
  'scripts/generate.ts': "import { figure } from '@lastinch/core';\nexport default figure;\n",
};

/** A small copy of this house in a temporary folder, with its real rooms.json and package manifests. */
export class SmallHouse {
  readonly root: string;

  constructor(from: string) {
    this.root = mkdtempSync(join(tmpdir(), 'small-house-'));
    cpSync(join(from, 'rooms.json'), join(this.root, 'rooms.json'));
    for (const name of ['core', 'picture', 'paper', 'mesh', 'cli', 'app']) {
      const manifest = join('packages', name, 'package.json');
      mkdirSync(dirname(join(this.root, manifest)), { recursive: true });
      cpSync(join(from, manifest), join(this.root, manifest));
    }
    mkdirSync(join(this.root, 'node_modules/@lastinch'), { recursive: true });
    for (const name of ['core', 'picture', 'mesh'])
      symlinkSync(join(this.root, 'packages', name), join(this.root, 'node_modules/@lastinch', name));
    for (const [path, text] of Object.entries(SOUND)) this.write(path, text);
  }

  write(path: string, text: string): void {
    mkdirSync(dirname(join(this.root, path)), { recursive: true });
    writeFileSync(join(this.root, path), text);
  }

  remove(): void {
    rmSync(this.root, { recursive: true, force: true });
  }
}
