import { expect, it } from 'vitest';
import { pathsText } from '../../src/words/paths.ts';

it('says by which ratios a ride was driven', () => {
  expect(pathsText({ front: [], rear: [] })).toContain('typed ratios');
  const all = ['spring', 'shock', 'stop'] as const;
  expect(pathsText({ front: all, rear: all })).toBe(
    'spring, shock and stop close along their measured points at both ends',
  );
  expect(pathsText({ front: ['shock'], rear: all })).toBe(
    'front shock and rear spring, shock and stop close along their measured points; front spring and stop by typed ratios, the same over all travel',
  );
});
