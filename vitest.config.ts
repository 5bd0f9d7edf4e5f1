import { defineConfig } from 'vitest/config';

/** How long a test may hang, not how fast it has to be: a busy machine must not fail one. */
const HANGS = { testTimeout: 120_000, hookTimeout: 120_000 };

const unit = (name: string, root: string) => ({
  test: { name, root, include: ['test/**/*.test.ts'], exclude: ['**/browser/**', '**/dist/**'], ...HANGS },
});

export default defineConfig({
  test: {
    projects: [
      unit('core', 'packages/core'),
      unit('picture', 'packages/picture'),
      unit('paper', 'packages/paper'),
      unit('mesh', 'packages/mesh'),
      unit('cli', 'packages/cli'),
      { test: { name: 'app', root: 'packages/app', include: ['test/unit/**/*.test.{ts,tsx}'], ...HANGS } },
      {
        test: {
          name: 'house',
          root: '.',
          include: ['scripts/test/**/*.test.ts', 'validation/test/**/*.test.ts'],
          ...HANGS,
        },
      },
      {
        test: {
          name: 'browser',
          root: 'packages/app',
          include: ['test/browser/**/*.test.ts'],
          ...HANGS,
          fileParallelism: false,
        },
      },
    ],
  },
});
