import { expect, test } from 'vitest';
import { type Check, faultsOf } from '../check-file.ts';
import { compare, report } from '../compare.ts';

const check: Check = {
  id: 'sample',
  topic: 'sample',
  title: 'two numbers',
  evaluator: 'none',
  quantity: 'length',
  unit: 'm',
  inputs: { of: 'nothing' },
  expected: { a: 2, b: [1, 0] },
  tolerance: { kind: 'absolute', value: 0.01, reason: 'for this test' },
  source: { work: 'this file', edition: 'first', place: 'top' },
  provenance: 'from memory',
};

test('a check within its tolerance passes and names the entry that is nearest to it', () => {
  const outcome = compare(check, { a: 2.005, b: [1, 0] });
  expect(outcome.ok).toBe(true);
  expect(outcome.worst.path).toBe('a');
  expect(outcome.worst.used).toBeCloseTo(0.5);
});

test('a check outside its tolerance fails and prints input, both values, difference, tolerance and source', () => {
  const outcome = compare(check, { a: 2, b: [1.02, 0] });
  expect(outcome.ok).toBe(false);
  for (const word of ['{"of":"nothing"}', 'b.0', '1.02', 'difference', '±0.01', 'for this test', 'this file'])
    expect(report(outcome)).toContain(word);
});

test.each([
  ['missing', { a: 2, b: [1] }],
  ['not a number', { a: Number.NaN, b: [1, 0] }],
  ['infinite', { a: Infinity, b: [1, 0] }],
  ['too many', { a: 2, b: [1, 0, 0] }],
  ['of another shape', 2],
])('an answer that is %s fails', (_what, ours) => {
  expect(compare(check, ours).ok).toBe(false);
});

test('a relative tolerance is a share of each expected entry, so that zero must be met exactly', () => {
  const relative: Check = { ...check, tolerance: { kind: 'relative', value: 0.01, reason: 'for this test' } };
  expect(compare(relative, { a: 2.019, b: [1.009, 0] }).ok).toBe(true);
  expect(compare(relative, { a: 2, b: [1, 1e-12] }).ok).toBe(false);
});

test('a check file without reason, source or maker is refused', () => {
  expect(faultsOf(check, 'sample', 'sample')).toEqual([]);
  const bare = { ...check, provenance: 'computed', tolerance: { kind: 'absolute', value: 1 }, source: {} };
  expect(faultsOf(bare, 'sample', 'other')).toEqual([
    "id is not the file's name",
    'tolerance.reason is empty',
    'source.work is empty',
    'source.edition is empty',
    'source.place is empty',
    'computed, but no maker is named',
  ]);
  expect(faultsOf({ ...check, expected: [] }, 'sample', 'sample')).toEqual([
    'expected is not made of finite numbers',
  ]);
});
