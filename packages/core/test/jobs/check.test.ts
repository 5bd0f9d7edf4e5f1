import { describe, expect, test } from 'vitest';
import { checkRig, worstFirst } from '../../src/jobs/check.ts';
import { compareSetups } from '../../src/jobs/compare.ts';
import type { Rig } from '../../src/rig/rig.ts';
import { type RigFacts, reading, rigOf } from '../travel/typed-rig.ts';

const facts: RigFacts = {
  front: {
    contacts: { sump: { gap: [0.105, 0.005] }, bar: { gap: [0.09, 0.003], ratio: [0.7, 0.01] } },
    gap: [0.06, 0.002],
    crush: [0.04, 0.001],
  },
  stops: { foam: { crush: 0.07 } },
  setups: {
    lower: { front: { seatAndStopDrop: reading('setups.lower.front.seatAndStopDrop', 0.02) } },
    foam: { front: { stop: 'foam' } },
  },
};
const rig: Rig = rigOf(facts);

describe('check', () => {
  test('statics and travel of a setup, findings worst first', () => {
    const result = checkRig(rig, { setup: 'as-measured' });
    if (!result.ok) throw new Error('refused');
    const { findings, travel, stance, setup } = result.value;
    expect(setup).toBe('as-measured');
    expect(stance.totalMass.value).toBe(1800);
    expect(findings[0].id).toBe('travel-fail.front');
    expect(worstFirst(findings)).toEqual(findings);
    expect(findings).toHaveLength(travel.findings.length + stance.findings.length);
  });

  test('a setup that is not there is refused with those that are', () => {
    const result = checkRig(rig, { setup: 'nonsense' });
    expect(result).toMatchObject({
      ok: false,
      problems: [{ code: 'ask-unknown-setup', found: 'nonsense', accepted: 'as-measured, lower, foam' }],
    });
  });

  test('a swap that needs a free length is asked for it', () => {
    expect(checkRig(rig, { setup: 'foam' })).toMatchObject({
      ok: false,
      problems: [
        { code: 'rig-needs-reading', where: { key: 'shelf.stops.foam.freeLength' } },
        { code: 'rig-needs-reading', where: { key: 'front.stop.freeLength' } },
      ],
    });
  });

  test('the answer is the same every time, and plain data', () => {
    const ask = () => checkRig(rig, { setup: 'lower', trials: 512, seed: 3 });
    expect(structuredClone(ask())).toEqual(ask());
  });
});

describe('two setups compared', () => {
  const result = compareSetups(rig, { setup: 'lower', against: 'as-measured' });
  if (!result.ok) throw new Error('refused');
  const { corners, come, gone } = result.value;

  test('what the change moves is known to the tolerance of the change, not of the rig', () => {
    const { hardTravel, freeBump, spare, lift } = corners.frontLeft;
    expect(hardTravel.value).toBeCloseTo(0.02, 12);
    expect(spare.value).toBeCloseTo(0.02, 12);
    expect(lift.value).toBeCloseTo(0.02, 12);
    expect(freeBump.value).toBe(0);
    expect(result.value.before.travel.corners.frontLeft.spare.tolerance).toBeGreaterThan(0.003);
    for (const figure of [hardTravel, freeBump, spare, lift]) expect(figure.tolerance).toBeLessThan(1e-12);
  });

  test('verdicts, first contacts and findings before and after', () => {
    expect(corners.frontLeft.verdict).toEqual({ before: 'fail', after: 'not-proven' });
    expect(corners.frontLeft.first).toEqual({ before: 'sump', after: 'sump' });
    expect(gone.map(({ id }) => id)).toContain('travel-fail.front');
    expect(come.map(({ id }) => id)).toContain('travel-not-proven.front');
    expect(corners.rearLeft.spare.value).toBe(0);
  });

  test('either setup can be refused', () => {
    expect(compareSetups(rig, { setup: 'lower', against: 'foam' }).ok).toBe(false);
    expect(compareSetups(rig, { setup: 'nonsense', against: 'lower' }).ok).toBe(false);
  });
});
