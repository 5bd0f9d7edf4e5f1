import { chmodSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { findBrowser } from '../find-browser.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'find-browser-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const program = (name: string, mode = 0o755): string => {
  const path = join(folder, name);
  writeFileSync(path, '#!/bin/sh\n');
  chmodSync(path, mode);
  return path;
};

it('takes the browser that CHROMIUM names before one on the path', () => {
  const named = program('mine');
  program('chromium');
  expect(findBrowser({ CHROMIUM: named, PATH: folder })).toBe(named);
});

it('finds one on the path by its usual names', () => {
  const found = program('chromium-browser');
  expect(findBrowser({ PATH: folder })).toBe(found);
});

it('does not fall back when CHROMIUM leads nowhere', () => {
  program('chromium');
  expect(findBrowser({ CHROMIUM: join(folder, 'gone'), PATH: folder })).toBeNull();
});

it('passes over a file that cannot be run', () => {
  program('chromium', 0o644);
  const real = program('google-chrome');
  expect(findBrowser({ PATH: folder })).toBe(real);
});
