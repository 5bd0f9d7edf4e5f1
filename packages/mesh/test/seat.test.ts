import { expect, it } from 'vitest';
import { threadNamed } from '../src/seat.ts';

it.each([
  ['M10', 'M10'],
  ['m8', 'M8'],
  ['M10x1.25', 'M10'],
  ['3/8', '3/8'],
  ['3/8-16', '3/8'],
  ['3/8-16 UNC', '3/8'],
  ['1/2"', '1/2'],
  ['1/4 in', '1/4'],
])('knows the thread %s', (text, name) => {
  expect(threadNamed(text)?.name).toBe(name);
});

it.each(['M9', 'M100', '3/7', 'ten', '', '8'])('knows no thread %s', (text) => {
  expect(threadNamed(text)).toBeNull();
});
