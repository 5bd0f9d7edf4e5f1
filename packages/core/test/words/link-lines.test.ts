import { describe, expect, test } from 'vitest';
import { LINK_LINES } from '../../src/finding/link-lines.ts';
import { linkLineMeaning, linkLineName } from '../../src/words/link-lines.ts';

describe('lines of the knock-on list', () => {
  test('each has a short name of its own, which fits beside its figures', () => {
    const ofRig = ['cg-height', 'static-stability-factor', 'roll-gradient', 'slope-first-lift'];
    const names = LINK_LINES.map((of) =>
      linkLineName({ of, place: ofRig.includes(of) ? 'rig' : 'front', part: '' }),
    );
    expect(new Set(names).size).toBe(names.length);
    for (const name of names) expect(name.length, name).toBeLessThanOrEqual(26);
  });

  test('each says in a sentence what it means', () => {
    for (const of of LINK_LINES) expect(linkLineMeaning(of)).toMatch(/^[A-Z].*\.$/);
  });

  test('say where they are, and which one', () => {
    expect(linkLineName({ of: 'joint-droop', place: 'rear', part: 'case' })).toBe('Rear case joint, droop');
    expect(linkLineName({ of: 'hose-slack', place: 'front', part: 'left' })).toBe('Front hose slack, left');
    expect(linkLineName({ of: 'hose-slack', place: 'front', part: '' })).toBe('Front hose slack');
    expect(linkLineName({ of: 'anti', place: 'front', part: '' })).toBe('Front anti-dive');
    expect(linkLineName({ of: 'anti', place: 'rear', part: '' })).toBe('Rear anti-squat');
    expect(linkLineName({ of: 'cg-height', place: 'rig', part: '' })).toBe('Centre of gravity');
  });
});
