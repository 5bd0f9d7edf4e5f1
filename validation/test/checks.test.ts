import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { readChecks } from '../check-file.ts';
import { report } from '../compare.ts';
import { evaluate } from '../evaluate.ts';

const checks = readChecks();

describe.each([...new Set(checks.map((check) => check.topic))])('outside checks of %s', (topic) => {
  test.each(checks.filter((check) => check.topic === topic).map((check) => [check.title, check] as const))(
    '%s',
    (_title, check) => {
      const outcome = evaluate(check);
      expect(outcome.ok, report(outcome)).toBe(true);
    },
  );
});

test('every computed check names a script that exists', () => {
  for (const { maker } of checks)
    if (maker !== undefined)
      expect(existsSync(fileURLToPath(new URL(`../make/${maker}`, import.meta.url))), maker).toBe(true);
});
