import { readFileSync } from 'node:fs';
import { ASSUMPTION_RULES } from '@lastinch/core';
import { expect, test } from 'vitest';

test('the page of assumptions has a line for every rule, and none for a rule that is gone', () => {
  const page = readFileSync('docs/theory/assumptions.md', 'utf8');
  const listed = [...page.matchAll(/^\| `([a-z-]+)` \|/gm)].map(([, rule]) => rule);
  expect(listed.toSorted()).toEqual([...ASSUMPTION_RULES].sort());
});
