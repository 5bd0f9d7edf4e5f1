import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { editDocument, openDocument, type RigDocument } from '../../src/document/rig-document.ts';
import { keyOf } from '../../src/steps/measure/contact-key.ts';
import { statusOf } from '../../src/steps/measure/field-status.ts';
import { groupsOf, labelOf, PLACES, placeOf } from '../../src/steps/measure/places.ts';
import { sidesEdits, sidesOf } from '../../src/steps/measure/sides.ts';

const OCHRE = readFileSync(join(import.meta.dirname, '../../../../examples/ochre/ochre.rig.yaml'), 'utf8');
const document = openDocument(OCHRE, 'ochre.rig.yaml', OCHRE);
const fieldOf = (state: RigDocument, key: string) => {
  const field = state.fields.find(({ path }) => path.join('.') === key);
  if (field === undefined) throw new Error(`no field ${key}`);
  return field;
};
const typed = (key: string, text: string | null): RigDocument =>
  editDocument(document, [{ path: key.split('.'), text }], { label: key, gesture: null });

describe('readings in their places', () => {
  it('shows each reading of the rig in exactly one place, and each with a label', () => {
    const shown = PLACES.flatMap((place) =>
      groupsOf(document.fields, place, new Map()).flatMap(({ fields }) => fields),
    );
    const elsewhere = document.fields.filter(({ path }) => placeOf(path.join('.')) === null);
    expect(new Set(shown).size).toBe(shown.length);
    expect(shown.length + elsewhere.length).toBe(document.fields.length);
    expect(new Set(elsewhere.map(({ path }) => path[0]))).toEqual(new Set(['setups', 'courses', 'choices']));
    for (const { path } of shown) expect(labelOf(path), path.join('.')).toMatch(/^[A-Z]/);
  });

  it('begins with the contacts, then the stop, because they decide', () => {
    const titles = groupsOf(document.fields, 'front', new Map([['sump', 'differential to sump']])).map(
      ({ title }) => title,
    );
    expect(titles.slice(0, 4)).toEqual([
      'Contact: differential to sump',
      'Contact: track-bar',
      'Contact: tyre-guard',
      'Bump stop',
    ]);
  });

  it('folds away a part that the rig has not', () => {
    const strap = (place: 'front' | 'rear') =>
      groupsOf(document.fields, place, new Map()).find(({ id }) => id === 'strap')?.absent;
    expect(strap('front')).toBe(true);
    expect(strap('rear')).toBe(false);
  });
});

describe('how a reading stands', () => {
  it.each([
    ['front.stop.gap', '2 1/2 in ± 1/16', 'measured'],
    ['front.stop.gap', '2 1/2 in', 'tolerance-assumed'],
    ['front.stop.gap', '~ 2 1/2 in', 'guessed'],
    ['front.stop.gap', '2 1/2', 'problem'],
    ['front.stop.gap', null, 'needed'],
    ['measured.cgHeight', null, 'assumed'],
    ['front.strap.length', null, 'absent'],
  ])('%s typed as %s is %s', (key, text, status) => {
    expect(statusOf(fieldOf(typed(key, text), key))).toBe(status);
  });
});

describe('a reading for each side', () => {
  it('begins with the one there was on both, and keeps the one it is taken back to', () => {
    const one = fieldOf(document, 'front.stop.gap');
    expect(sidesOf(one)).toBe('both');
    const apart = editDocument(document, sidesEdits(one, 'both'), { label: '', gesture: null });
    expect(apart.problems).toEqual([]);
    expect(fieldOf(apart, 'front.stop.gap.left').typed).toBe('2 1/2 in ± 1/16');
    const right = fieldOf(apart, 'front.stop.gap.right');
    expect(sidesOf(right)).toBe('apart');
    const again = editDocument(apart, sidesEdits(right, 'apart'), { label: '', gesture: null });
    expect(fieldOf(again, 'front.stop.gap').typed).toBe('2 1/2 in ± 1/16');
    expect(again.problems).toEqual([]);
  });

  it('is offered for gaps only', () => {
    expect(sidesOf(fieldOf(document, 'front.spring.rate'))).toBeNull();
  });
});

describe('a new contact', () => {
  it('gets a key of letters, digits and hyphens out of its name', () => {
    expect(keyOf('  Tie rod → sump ')).toBe('tie-rod-sump');
    expect(keyOf('Rückwand 2')).toBe('rückwand-2');
    expect(keyOf(' !? ')).toBe('');
  });
});
