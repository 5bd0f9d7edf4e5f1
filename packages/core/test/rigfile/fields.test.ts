import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readingsOf } from '../../src/rig/readings.ts';
import { resolveSetup } from '../../src/rig/setup-resolve.ts';
import { fieldsOf } from '../../src/rigfile/index.ts';
import { must, rigOf, rigWith, SMALLEST } from './smallest-rig.ts';

const OCHRE = readFileSync(new URL('../../../../examples/ochre/ochre.rig.yaml', import.meta.url), 'utf8');
const field = (text: string, key: string) => fieldsOf(text).find(({ path }) => path.join('.') === key);

describe('the fields of the Measure step', () => {
  it('hold every reading of the rig, under its key, once', () => {
    for (const text of [OCHRE, SMALLEST]) {
      const keys = fieldsOf(text).map(({ path }) => path.join('.'));
      expect(new Set(keys).size).toBe(keys.length);
      for (const name of ['as-measured', ...Object.keys(rigOf(text).setups)]) {
        for (const { key } of readingsOf(must(resolveSetup(rigOf(text), name)))) expect(keys).toContain(key);
      }
    }
  });

  it('show what was typed, what was assumed, and what is missing', () => {
    expect(field(OCHRE, 'front.stop.gap')).toMatchObject({
      typed: '2 1/2 in ± 1/16',
      group: 'front.stop',
      dimension: 'length',
      optional: false,
      problems: [],
    });
    expect(field(OCHRE, 'measured.cgHeight')).toMatchObject({
      typed: null,
      optional: true,
      group: 'measured',
    });
    expect(field(OCHRE, 'measured.cgHeight')?.reading?.origin).toBe('assumed');
    const without = rigWith(['    usableCrush: 3/4 in\n', '']);
    expect(field(without, 'front.stop.usableCrush')).toMatchObject({
      typed: null,
      reading: null,
      optional: false,
    });
    expect(field(without, 'front.stop.usableCrush')?.problems[0]?.code).toBe('rig-needs-reading');
  });

  it('show the typed text with its problem when it cannot be read', () => {
    const text = rigWith(['wheelbase: 100 in', 'wheelbase: 100']);
    expect(field(text, 'measured.wheelbase')).toMatchObject({ typed: '100', reading: null });
    expect(field(text, 'measured.wheelbase')?.problems.map(({ code }) => code)).toEqual([
      'quantity-unit-missing',
    ]);
  });

  it('need the length of a strap only where there is a strap', () => {
    expect(field(OCHRE, 'front.strap.length')?.optional).toBe(true);
    expect(field(OCHRE, 'rear.strap.length')?.optional).toBe(false);
  });

  it('still stand when a whole end is missing, each saying that it is asked for', () => {
    const text = 'schema: 1\n';
    expect(field(text, 'front.stop.gap')?.problems.map(({ where }) => where.key)).toEqual(['front']);
    expect(field(text, 'front.tyre.pressure')?.problems).toEqual([]);
  });

  it('are none when the text is no rig file', () => {
    expect(fieldsOf('[')).toEqual([]);
    expect(fieldsOf('schema: 7\n')).toEqual([]);
  });
});
