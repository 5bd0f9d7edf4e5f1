import { describe, expect, it } from 'vitest';
import { stabilityRig } from '../../src/jobs/stability.ts';
import type { StabilityLineId, StabilityResult } from '../../src/stability/result.ts';
import { rollCentreReading } from '../../src/stability/roll-centre.ts';
import { stabilityOf } from '../../src/stability/stability.ts';
import { findingText } from '../../src/words/findings.ts';
import { remedyText } from '../../src/words/remedies.ts';
import { reading, rigOf, setupOf } from '../travel/typed-rig.ts';
import { must, ochre } from './ochre.ts';

const few = { trials: 64 };
const lineOf = (result: StabilityResult, id: StabilityLineId, place: 'rig' | 'front' | 'rear' = 'rig') =>
  result.lines.find((line) => line.id === id && line.place === place)?.figure ?? null;

/** An invented rig with a bar in front that its trail trim takes off, and softer tyres. */
const trims = () => {
  const rig = rigOf({
    setups: {
      trail: {
        front: {
          antiRollBar: 'off',
          tyrePressure: reading('setups.trail.front.tyrePressure', 90_000, 'pressure'),
        },
        rear: { tyrePressure: reading('setups.trail.rear.tyrePressure', 90_000, 'pressure') },
      },
    },
  });
  return {
    ...rig,
    front: {
      ...rig.front,
      antiRollBar: { rate: reading('front.antiRollBar.rate', [20_000, 2000], 'rollRate'), link: null },
    },
  };
};

describe('road trim and trail trim side by side', () => {
  const { comparison, stability } = must(
    stabilityRig(trims(), { setup: 'as-measured', against: 'trail', ...few }),
  );
  const change = (id: StabilityLineId, place: 'rig' | 'front' | 'rear' = 'rig') =>
    comparison!.lines.find((line) => line.id === id && line.place === place)!;

  it('the bar adds its own stiffness to its own axle and takes load transfer there', () => {
    expect(change('roll-bar', 'front')).toMatchObject({ before: { value: 0 }, after: { value: 20_000 } });
    // No bar, no line.
    expect(change('roll-bar', 'rear')).toBeUndefined();
    expect(change('load-transfer-share', 'front').change!.value).toBeGreaterThan(0.05);
    expect(change('roll-gradient').change!.value).toBeLessThan(0);
    expect(change('slope-tips').change!.value).toBeGreaterThan(0);
  });

  it('aired down it stands lower, on softer tyres', () => {
    expect(change('cg-height').change!.value).toBeGreaterThan(0);
    expect(change('roll-tyres', 'rear').change!.value).toBeGreaterThan(0);
    expect(change('ride-frequency', 'rear').change!.value).toBeGreaterThan(0);
  });

  it('a change is known better than either setup', () => {
    const { before, after, change: moved } = change('slope-tips');
    expect(before!.tolerance).toBeGreaterThanOrEqual(0);
    expect(moved!.tolerance!).toBeLessThanOrEqual(Math.hypot(before!.tolerance!, after!.tolerance!));
  });

  it('is plain data with one line of each kind, in one order', () => {
    expect(structuredClone(comparison)).toEqual(comparison);
    const keys = stability.lines.map(({ id, place, of }) => `${id} ${place} ${of}`);
    expect(new Set(keys).size).toBe(keys.length);
  });
});

describe('a setup by itself', () => {
  it('says the factor by its definition: track ÷ twice the height', () => {
    const result = stabilityOf(setupOf(rigOf()), few);
    expect(lineOf(result, 'static-stability-factor')!.value).toBeCloseTo(1.6 / (2 * 0.8), 12);
    expect(lineOf(result, 'slope-rigid')!.value).toBeCloseTo(Math.atan(1), 12);
    expect(result.rollCentres).toEqual({ front: 'assumed', rear: 'assumed' });
    const text = result.findings.map((finding) => findingText(finding, { system: 'metric' })).join('\n');
    expect(text).toContain('no certificate');
    expect(text).toContain('Roll centre front and rear is assumed');
  });

  it('does not say so of roll centres that were measured', () => {
    const rollCentres = {
      front: rollCentreReading('front', 0.5, 0.01, 'measured'),
      rear: rollCentreReading('rear', 0.55, 0.01, 'measured'),
    };
    const result = stabilityOf(setupOf(rigOf()), { ...few, rollCentres });
    expect(lineOf(result, 'roll-centre', 'rear')!.value).toBe(0.55);
    expect(result.findings.map((f) => findingText(f, { system: 'metric' })).join('')).not.toContain(
      'assumed',
    );
  });

  it('a lift lowers the factor, by what it lifts the centre', () => {
    const rig = rigOf({
      setups: {
        lifted: {
          front: { seatAndStopDrop: reading('setups.lifted.front.seatAndStopDrop', 0.08) },
          rear: { seatAndStopDrop: reading('setups.lifted.rear.seatAndStopDrop', 0.08) },
        },
      },
    });
    const { comparison } = must(stabilityRig(rig, { setup: 'lifted', against: 'as-measured', ...few }));
    const of = (id: StabilityLineId) => comparison!.lines.find((line) => line.id === id)!;
    expect(of('cg-height').change!.value).toBeCloseTo((0.08 * 1300) / 1800, 9);
    expect(of('static-stability-factor').change!.value).toBeLessThan(0);
    expect(of('slope-tips').change!.value).toBeLessThan(0);
    // Below one now: said, with what to do.
    const factor = comparison!.after.findings.find(({ code }) => code === 'stability-factor')!;
    expect(factor.severity).toBe('over');
    expect(factor.remedies.map((remedy) => remedyText(remedy, { system: 'shop' })).join()).toContain(
      'Carry what is heavy low',
    );
  });

  it('names shocks that pack down on washboard, and the rear that rides slower than the front', () => {
    const rig = rigOf({
      front: { springRate: 36_000, shockSlope: [800, 6000] },
      rear: { springRate: 20_000 },
    });
    const codes = must(stabilityRig(rig, { setup: 'as-measured', ...few })).stability.findings.map(
      ({ id }) => id,
    );
    expect(codes).toContain('stability-packs-down.front');
    expect(codes).toContain('stability-pitches.rig');
  });

  it('asks for what a setup rests on, and knows no setup that the rig has not', () => {
    expect(stabilityRig(ochre, { setup: 'nowhere' })).toMatchObject({ ok: false });
  });

  it('the demo rig stands', () => {
    const { stability } = must(stabilityRig(ochre, { setup: 'as-measured', ...few }));
    expect(lineOf(stability, 'slope-tips')!.value).toBeGreaterThan(0.3);
    expect(lineOf(stability, 'slope-tips')!.value).toBeLessThan(lineOf(stability, 'slope-rigid')!.value);
  });
});
