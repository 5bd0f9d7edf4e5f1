import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import {
  editRig,
  estimatedStop,
  estimateFragment,
  pressedStop,
  readRig,
  shelfEdits,
  stopFragment,
} from '../../src/rigfile/index.ts';
import { estimateStop } from '../../src/stops.ts';

const OCHRE = readFileSync(join(import.meta.dirname, '../../../../examples/ochre/ochre.rig.yaml'), 'utf8');

/** Invented. */
const fit = {
  crush: [0, 0.01, 0.02, 0.04],
  force: [0, 300, 900, 4000],
  usableCrush: { value: 0.04, tolerance: 0.001 },
  hysteresis: 0.3,
  isLossAbsurd: false,
  dynamicFactor: { value: 1.25, tolerance: 0.15 },
};

const rigWith = (fragment: string, notes: string, text = OCHRE) => {
  const edited = editRig(text, shelfEdits(fragment, notes));
  if (!edited.ok) throw new Error(JSON.stringify(edited.problems));
  const read = readRig(edited.value, { file: 'ochre.rig.yaml' });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return { text: edited.value, rig: read.value };
};

describe('a stop put on the shelf of a rig file', () => {
  it('stands beside those that are there, with its curve, and every other line stays', () => {
    const stop = pressedStop(fit, { name: 'pressed-1', file: 'press.csv', freeLength: 0.1 });
    const { text, rig } = rigWith(stopFragment(stop, 'metric'), 'Pressed: press.csv.');
    const shelf = rig.shelf.stops;
    expect(Object.keys(shelf)).toEqual(['soft', 'pressed-1']);
    expect(shelf['pressed-1']?.crush).toEqual(fit.crush.map((c) => expect.closeTo(c, 6)));
    expect(shelf['pressed-1']?.force).toEqual(fit.force.map((f) => expect.closeTo(f, 3)));
    expect(shelf['pressed-1']?.origin).toBe('measured');
    expect(text).toContain('notes: "Pressed: press.csv."');
    const kept = new Set(text.split('\n'));
    for (const line of OCHRE.split('\n')) expect(kept.has(line), line).toBe(true);
  });

  it('makes the shelf where the file has none yet', () => {
    const from = OCHRE.indexOf('parts:');
    const to = OCHRE.indexOf('setups:');
    const bare = `${OCHRE.slice(0, from)}${OCHRE.slice(to)}`;
    const stop = pressedStop(fit, { name: 'soft', file: 'press.csv', freeLength: null });
    expect(Object.keys(rigWith(stopFragment(stop, 'shop'), 'x', bare).rig.shelf.stops)).toEqual(['soft']);
  });

  it('leaves out a loss that no stop has', () => {
    const stop = pressedStop({ ...fit, isLossAbsurd: true }, { name: 'odd', file: 'f', freeLength: null });
    expect(stop.hysteresis).toBeNull();
  });

  it('writes an estimate as a guess by the middle of its band, never as measured', () => {
    const asked = {
      kind: 'rubber',
      hardness: { value: 60, scale: 'shore-a' },
      steps: [{ height: 0.06, diameter: 0.05, bore: 0 }],
      ends: 'dry',
    } as const;
    const found = estimateStop(asked);
    if (!found.ok) throw new Error('it can be');
    const { least, most, usableCrush, crush } = found.value;
    const stop = estimatedStop(asked, found.value, { name: 'block', from: 'x' });
    if (stop.kind === 'gas') throw new Error('a block');
    const k = crush.findIndex((c) => c >= usableCrush.value);
    expect(stop.force.value).toBeGreaterThan((least[k - 1]! + most[k - 1]!) / 2);
    expect(stop.force.value).toBeLessThan((least[k]! + most[k]!) / 2);
    expect(stop.force.value + stop.force.tolerance).toBeLessThanOrEqual(most[k]!);
    const { rig } = rigWith(estimateFragment(stop, 'metric'), 'Estimated.');
    expect(rig.shelf.stops.block?.origin).toBe('guessed');
  });
});
