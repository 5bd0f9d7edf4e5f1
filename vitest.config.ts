import { defineConfig } from 'vitest/config';

const unit = (name: string, root: string) => ({
  test: { name, root, include: ['test/**/*.test.ts'], exclude: ['**/browser/**', '**/dist/**'] },
});

export default defineConfig({
  test: {
    projects: [
      unit('core', 'packages/core'),
      unit('picture', 'packages/picture'),
      unit('cli', 'packages/cli'),
      { test: { name: 'app', root: 'packages/app', include: ['test/unit/**/*.test.{ts,tsx}'] } },
      {
        test: {
          name: 'house',
          root: '.',
          include: ['scripts/test/**/*.test.ts', 'validation/test/**/*.test.ts'],
        },
      },
      {
        test: {
          name: 'browser',
          root: 'packages/app',
          include: ['test/browser/**/*.test.ts'],
          testTimeout: 60_000,
          hookTimeout: 60_000,
          fileParallelism: false,
        },
      },
    ],
  },
});
