import { chmodSync, cpSync, existsSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { defineConfig, type Plugin } from 'vite';

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

/** One file that runs on Node alone: everything that is not built into Node is bundled. */
export default defineConfig({
  root: here,
  plugins: [takeWorkbench()],
  ssr: { noExternal: true, target: 'node' },
  build: {
    ssr: 'src/main.ts',
    target: 'node20',
    outDir: 'dist',
    emptyOutDir: true,
    minify: false,
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
