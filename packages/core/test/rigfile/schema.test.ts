import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { readRig, rigJsonSchema, starterRig } from '../../src/rigfile/index.ts';
import { FAULTS_OF_NAMES } from './faults-of-names.ts';
import { SMALLEST } from './smallest-rig.ts';

const example = (name: string) =>
  readFileSync(new URL(`../../../../examples/ochre/${name}`, import.meta.url), 'utf8');

describe('the published JSON Schema', () => {
  const validate = new Ajv2020({ strict: true, allowUnionTypes: true }).compile(rigJsonSchema());

  it.each([
    ['the starter', starterRig()],
    ['the smallest rig', SMALLEST],
    ['Ochre', example('ochre.rig.yaml')],
    ['Ochre in metric', example('ochre-metric.rig.yaml')],
  ])('accepts %s, read by a validator that is not ours', (_name, text) => {
    expect(validate(parse(text)), JSON.stringify(validate.errors)).toBe(true);
  });

  it('refuses every misspelt key and wrong shape that we refuse', () => {
    const faults = FAULTS_OF_NAMES.filter(
      // Tolerance is a matter of what a quantity says, not of shape.
      ([what, , code]) => /^rig-(key-unknown|wrong-shape)$/.test(code) && !what.includes('tolerance'),
    );
    expect(faults.length).toBeGreaterThan(4);
    for (const [what, text] of faults) {
      expect(readRig(text).ok, what).toBe(false);
      expect(validate(parse(text)), what).toBe(false);
    }
  });
});
