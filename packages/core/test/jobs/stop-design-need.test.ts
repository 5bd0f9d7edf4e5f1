import { describe, expect, it } from 'vitest';
import { stopBand } from '../../src/jobs/stop-band.ts';
import { designForNeed } from '../../src/jobs/stop-design-need.ts';
import { powerCurve } from '../../src/jobs/stop-drive.ts';
import type { Rig } from '../../src/rig/rig.ts';
import { needDesignTexts } from '../../src/words/printed-stops.ts';
import { must, ochre } from './ochre.ts';

const demand = (speed: number) => ({ name: 'ledge', course: ochre.courses.ledge.shape, speed });
const asked = (speed = 3.6, rig: Rig = ochre) => ({
  rig,
  setup: 'as-measured',
  end: 'front' as const,
  demands: [demand(speed)],
});
const shape = {
  height: 0.09,
  diameters: [0.064, 0.064] as const,
  bore: 0,
  cell: 0.01,
  wall: 0.0008,
  material: 'tpu-85a' as const,
  trials: 8,
  seed: 1,
};

describe('a stop designed for an end of a rig', () => {
  const band = must(stopBand(asked()));
  const { design, need } = must(designForNeed(asked(), shape));

  it('follows a curve that does by itself, from the middle of a range of the band', () => {
    expect(need.least).toBeLessThan(need.full);
    expect(need.full).toBeLessThan(need.most);
    expect([...band.breaks(powerCurve(need.room, need.power, need.full))]).toEqual([]);
    const wanted = design.curve[design.curve.length - 1];
    expect(wanted.crush).toBeCloseTo(need.room, 9);
    expect(wanted.wanted).toBeCloseTo(need.full, 3);
  });

  it('is driven itself, in the middle and at both ends of its interval', () => {
    const force = (pick: 'force' | 'low' | 'high') => ({
      crush: design.curve.map(({ crush }) => crush),
      force: design.curve.map((point) => point[pick] ?? Number.NaN),
    });
    expect(need.breaks.middle).toEqual([...band.breaks(force('force'))].sort());
    expect(need.breaks.soft).toEqual([...band.breaks(force('low'))].sort());
    expect(structuredClone(need)).toEqual(need);
  });

  it('tells which curve, and by how much it leaves the band', () => {
    // A body far too hard for the band: an absurdly wide one of the harder filament with thick walls.
    const hard = must(
      designForNeed(asked(), { ...shape, diameters: [0.4, 0.4], material: 'tpu-95a', cell: 0.006 }),
    );
    expect(hard.need.outside[0]).toMatchObject({ way: 'hard' });
    expect(hard.need.outside[0].share).toBeGreaterThan(0.2);
    expect(hard.design.missed.length).toBeGreaterThan(0);
    const text = needDesignTexts(hard.need, 'metric').join(' ');
    expect(text).toContain('outside the band');
    expect(text).toContain('ledge at');
  });

  it('is none where no curve does', () => {
    const strict = {
      ...ochre,
      limits: { ...ochre.limits, bodyAcceleration: { ...ochre.limits.bodyAcceleration, value: 0.01 } },
    };
    expect(designForNeed(asked(3.6, strict), shape)).toMatchObject({
      ok: false,
      problems: [{ code: 'stop-need-none' }],
    });
  });
});
