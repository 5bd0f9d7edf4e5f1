import { describe, expect, it } from 'vitest';
import { readingsOf } from '../../src/rig/readings.ts';
import { resolveSetup, setupNames } from '../../src/rig/setup-resolve.ts';
import { must, rigOf, SMALLEST } from '../rigfile/smallest-rig.ts';

const rig = rigOf(`${SMALLEST}parts:
  stops:
    soft: { freeLength: 3 in, usableCrush: 2 in }
    spare: { usableCrush: 1 in }
  springs:
    long: { rate: 140 lb/in }
setups:
  other:
    notes: softer in front
    front: { stop: soft, spring: long, seatAndStopDrop: 1 in }
  back: { front: { stop: as-fitted } }
`);

describe('a setup', () => {
  it('of the rig as measured is always there, first, without any change', () => {
    expect(setupNames(rig)).toEqual(['as-measured', 'other', 'back']);
    const { ends } = must(resolveSetup(rig, 'as-measured'));
    expect(ends.front.stop).toBe(rig.front.stop);
    expect(ends.front.patch).toEqual({});
  });

  it('takes its parts from the shelf at the end that it names, and leaves the other end alone', () => {
    const { ends, notes } = must(resolveSetup(rig, 'other'));
    expect(notes).toBe('softer in front');
    expect(ends.front.stop.id).toBe('soft');
    expect(ends.front.spring.id).toBe('long');
    expect(ends.front.patch.seatAndStopDrop?.value).toBeCloseTo(0.0254, 12);
    expect(ends.rear.stop).toBe(rig.rear.stop);
  });

  it('may name what is on the rig now', () => {
    expect(must(resolveSetup(rig, 'back')).ends.front.stop).toBe(rig.front.stop);
  });

  it('is frozen through and through', () => {
    const setup = must(resolveSetup(rig, 'other'));
    expect(Object.isFrozen(setup.ends.front.patch.seatAndStopDrop)).toBe(true);
    expect(() => Object.assign(setup.ends.front, { stop: null })).toThrow(TypeError);
  });

  it.each(['nobody', 'constructor', '__proto__'])(
    '%s that the rig does not have is told with the ones it has',
    (name) => {
      expect(resolveSetup(rig, name)).toEqual({
        ok: false,
        problems: [
          { code: 'ask-unknown-setup', where: {}, found: name, accepted: 'as-measured, other, back' },
        ],
      });
    },
  );
});

describe('the readings of a setup', () => {
  const keysOf = (name: string) => readingsOf(must(resolveSetup(rig, name))).map(({ key }) => key);

  it('are unique by key and in a stable order', () => {
    const keys = keysOf('other');
    expect(new Set(keys).size).toBe(keys.length);
    expect(keysOf('other')).toEqual(keys);
  });

  it('hold the part chosen, the part replaced and the change, but no other part of the shelf', () => {
    const keys = keysOf('other');
    expect(keys).toContain('parts.stops.soft.usableCrush');
    expect(keys).toContain('front.stop.usableCrush');
    expect(keys).toContain('setups.other.front.seatAndStopDrop');
    expect(keys.filter((key) => key.startsWith('parts.stops.spare'))).toEqual([]);
    expect(keysOf('as-measured').filter((key) => /^(parts|setups)\./.test(key))).toEqual([]);
  });
});
