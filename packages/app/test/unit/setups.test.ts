import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { AS_MEASURED, gapsAt, type Rig, resolveSetup } from '@lastinch/core';
import { describe, expect, it } from 'vitest';
import { answersFor, comparedSetups } from '../../src/answers.ts';
import { editDocument, openDocument } from '../../src/document/rig-document.ts';
import { copyOfSetup, freeName } from '../../src/steps/travel/new-proposal.ts';
import { reachOf, sideInWords } from '../../src/steps/travel/pose-words.ts';

const OCHRE = readFileSync(join(import.meta.dirname, '../../../../examples/ochre/ochre.rig.yaml'), 'utf8');
const document = openDocument(OCHRE, 'ochre.rig.yaml', OCHRE);
const rig = document.rig as Rig;
const setup = (id: string) => {
  const resolved = resolveSetup(rig, id);
  if (!resolved.ok) throw new Error(id);
  return resolved.value;
};

describe('the two compared setups', () => {
  it('are the rig as measured and the last one that changes something', () => {
    expect(comparedSetups(rig, { now: null, proposed: null })).toEqual({
      now: AS_MEASURED,
      proposed: 'soft-stop-seat-down',
    });
  });

  it('are those that were chosen, as long as the rig has them', () => {
    const chosen = { now: 'as-it-is', proposed: 'gone' };
    expect(comparedSetups(rig, chosen)).toEqual({ now: 'as-it-is', proposed: 'soft-stop-seat-down' });
  });

  it('are answered once when they are the same', () => {
    const { now, proposed } = answersFor(rig, { now: AS_MEASURED, proposed: AS_MEASURED }, 64);
    expect(proposed).toBe(now);
  });
});

describe('a new proposal', () => {
  it('changes exactly what the one changes that it was copied from', () => {
    const name = freeName(rig);
    const edited = editDocument(document, copyOfSetup(rig.setups['soft-stop-seat-down'], name), {
      label: name,
      gesture: null,
    });
    expect(edited.problems).toEqual([]);
    const copy = edited.rig?.setups[name];
    expect(copy?.front.stop).toBe('soft');
    expect(copy?.front.seatAndStopDrop?.text).toBe('1 in ± 1/32');
    expect(copy?.rear).toEqual({});
    expect(edited.rig?.setups['soft-stop-seat-down']).toEqual(rig.setups['soft-stop-seat-down']);
  });

  it('can start from nothing, under a name that is free', () => {
    const first = editDocument(document, copyOfSetup(undefined, freeName(rig)), { label: '', gesture: null });
    expect(first.rig?.setups['proposal-1']).toMatchObject({ front: {}, rear: {} });
    expect(freeName(first.rig as Rig)).toBe('proposal-2');
  });
});

describe('an axle moved by hand', () => {
  it('can be moved a little past metal and past the first droop limit, and no further', () => {
    const { bump, droop } = reachOf([setup(AS_MEASURED)], 'front');
    const beyond = gapsAt(setup(AS_MEASURED), 'front', { heave: bump, roll: 0 }).left;
    expect(Math.min(...beyond.contacts.map(({ left }) => left))).toBeLessThan(0);
    expect(Math.min(...beyond.contacts.map(({ left }) => left))).toBeGreaterThan(-0.03);
    const hanging = gapsAt(setup(AS_MEASURED), 'front', { heave: -droop, roll: 0 }).left;
    expect(Math.min(...hanging.droop.map(({ left }) => left))).toBeLessThan(0);
  });

  it('says free, crushed, used up and hit as it goes up', () => {
    const length = (metres: number): string => `${Math.round(Math.abs(metres) * 1000)} mm`;
    const at = (heave: number) =>
      sideInWords(gapsAt(setup(AS_MEASURED), 'front', { heave, roll: 0 }).left, length);
    expect(at(0).stop).toBe('64 mm free');
    expect(at(0.07).stop).toMatch(/^crushed \d+ mm$/);
    expect(at(0.09).stop).toMatch(/used up$/);
    expect(at(0.09).contact).toMatch(/^differential to sump: \d+ mm$/);
    expect(at(0.12).contact).toBe('differential to sump: HIT');
    expect(at(-0.13).droop).toMatch(/PAST IT$/);
  });
});
