import { describe, expect, it } from 'vitest';
import { missingOf, missingText, needsOf } from '../finite-elements/find-solver.ts';
import { agrees, differences, type Results, storedResults } from '../finite-elements/stored.ts';

describe('decks worked out again', () => {
  const stored = storedResults();
  const without = (name: string): Results =>
    Object.fromEntries(Object.entries(stored).filter(([key]) => key !== name));
  const changed = (name: string, factor: number): Results => {
    const kept = stored[name];
    if (kept === undefined) throw new Error(`no case ${name}`);
    return { ...stored, [name]: { ...kept, values: kept.values.map((value) => value * factor) } };
  };
  const failing = (again: Results) => differences(stored, again).filter((row) => !agrees(row));

  it('agree with themselves, and with last digits that another version moves', () => {
    expect(failing(stored)).toEqual([]);
    expect(failing(changed('plate-square-patch', 1.0005))).toEqual([]);
  });

  it('differ where one figure of one case is off by a share of 0.002', () => {
    expect(failing(changed('disc-greased', 1.002)).map(({ name }) => name)).toEqual(['disc-greased']);
  });

  it('differ where a case is missing, new, or no number', () => {
    expect(failing(without('gyroid-sheet')).map(({ fault }) => fault)).toEqual(['was not worked out again']);
    const more = { ...stored, another: { quantity: 'force', unit: 'N', values: [1] } };
    expect(failing(more).map(({ fault }) => fault)).toEqual(['is not among the stored results']);
    expect(failing(changed('column-pair', Number.NaN))).toHaveLength(1);
  });
});

it('a solver that is not there is told by name, with the package that brings it', () => {
  const missing = missingOf(needsOf({ CCX: '/nowhere/ccx', PYTHON: process.execPath }));
  expect(missing.map(({ debian }) => debian)).toContain('calculix-ccx');
  expect(missingText(missing)).toContain('CalculiX (ccx) (`/nowhere/ccx` was tried)');
});
