import { chmodSync, cpSync, existsSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { build, defineConfig, type InlineConfig, type Plugin } from 'vite';

const here = import.meta.dirname;

/** The built workbench travels with the command line, so that `lastinch open` works from an installed package. */
function takeWorkbench(): Plugin {
  let target = '';
  return {
    name: 'lastinch-take-workbench',
    configResolved: (config) => {
      target = resolve(config.root, config.build.outDir);
    },
    writeBundle: () => {
      const built = join(here, '../app/dist');
      if (existsSync(built)) cpSync(built, join(target, 'workbench'), { recursive: true });
      chmodSync(join(target, 'lastinch.js'), 0o755);
    },
  };
}

const THREADS = [
  ['work-thread.ts', 'lastinch-worker.js'],
  ['mesh-thread.ts', 'lastinch-mesh.js'],
] as const;

/** What runs in worker threads is a file of its own, so that starting one reads no more than it needs. */
function buildWorker(): Plugin {
  let target = '';
  return {
    name: 'lastinch-build-worker',
    configResolved: (config) => {
      target = resolve(config.root, config.build.outDir);
    },
    closeBundle: async () => {
      for (const [entry, file] of THREADS)
        await build({ ...oneFile(`src/hosts/${entry}`, file, target), logLevel: 'warn' });
    },
  };
}

/** Native code cannot be bundled; only `sheet` asks for it, and says so where it is not installed. */
const TYPESETTER = '@myriaddreamin/typst-ts-node-compiler';

/** One file that runs on Node alone: everything that is not built into Node is bundled, but for the typesetter. */
const oneFile = (entry: string, file: string, outDir: string): InlineConfig => ({
  root: here,
  configFile: false,
  ssr: { noExternal: true, external: [TYPESETTER], target: 'node' },
  build: {
    ssr: entry,
    target: 'node20',
    outDir,
    emptyOutDir: false,
    minify: false,
    rolldownOptions: { output: { entryFileNames: file, format: 'es', codeSplitting: false } },
  },
});

const program = oneFile('src/main.ts', 'lastinch.js', 'dist');

export default defineConfig({
  ...program,
  plugins: [takeWorkbench(), buildWorker()],
  build: {
    ...program.build,
    emptyOutDir: true,
    rolldownOptions: {
      output: {
        entryFileNames: 'lastinch.js',
        format: 'es',
        codeSplitting: false,
        banner: '#!/usr/bin/env node',
      },
    },
  },
});
