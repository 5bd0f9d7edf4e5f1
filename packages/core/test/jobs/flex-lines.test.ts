import { describe, expect, it } from 'vitest';
import type { FindingCode } from '../../src/finding/codes.ts';
import type { Finding } from '../../src/finding/finding.ts';
import { linksRig } from '../../src/jobs/links.ts';
import type { KnockOnLine, LinksAnswer, LinksRequest } from '../../src/jobs/links-answer.ts';
import type { AntiRollBar } from '../../src/rig/parts.ts';
import { readRig } from '../../src/rigfile/index.ts';
import { findingText } from '../../src/words/findings.ts';
import { flexEndText } from '../../src/words/flexes.ts';
import { remedyText } from '../../src/words/remedies.ts';
import { changed, LINKED } from '../rigfile/linked-rig.ts';
import { type EndFacts, reading, rigOf } from '../travel/typed-rig.ts';
import { must, ochre } from './ochre.ts';

const FEW = { trials: 16 };
/** Contacts far away, coils that stay held, a stop of 100 N/mm. */
const WIDE: EndFacts = {
  contacts: { sump: { gap: 0.5 } },
  coil: { free: 0.9, ride: 0.5 },
  springRate: 40_000,
  gap: 0.06,
  crush: 0.04,
  curve: { crush: [0, 0.02, 0.04], force: [0, 2000, 4000] },
};
const asked = (
  front: EndFacts,
  setups: NonNullable<Parameters<typeof rigOf>[0]>['setups'] = {},
  bar: AntiRollBar | null = null,
  request: LinksRequest = { setup: 'as-measured' },
): LinksAnswer => {
  const rig = rigOf({ front, setups });
  return must(linksRig({ ...rig, front: { ...rig.front, antiRollBar: bar } }, { ...FEW, ...request }));
};
const lineOf = ({ knockOn, steady }: LinksAnswer, id: string): KnockOnLine | undefined =>
  [...knockOn, ...steady].find((line) => line.id === id);
const said = ({ findings }: LinksAnswer, code: FindingCode): readonly Finding[] =>
  findings.filter((finding) => finding.code === code);

/** Roll and heave where the stop is used up: the stop lifts the body by K·c ÷ (2·k), a·sin φ = gap + c + that. */
const AT_STOP = { sine: (0.1 + 4000 / 80_000) / 0.44, heave: -4000 / 80_000 };

describe('a flex that ends on what should not end it', () => {
  it('tyre on body: as much too early as it is passed where the stop would end it, a·sin φ + h − gap', () => {
    const answer = asked({ ...WIDE, contacts: { guard: { gap: 0.12, spread: 1.5 } } });
    const short = 0.75 * AT_STOP.sine + AT_STOP.heave - 0.12;
    const [finding, ...more] = said(answer, 'flex-on-body');
    expect(more).toEqual([]);
    expect(finding).toMatchObject({ severity: 'over', likelihood: 1, because: ['front.contacts.guard.gap'] });
    expect(finding!.value!.value).toBeCloseTo(-short, 4);
    const notch = finding!.remedies.find(({ code }) => code === 'notch-contact')!;
    expect(notch).toMatchObject({ target: 'guard' });
    expect(notch.amount!.value).toBeCloseTo(short, 4);
    const line = lineOf(answer, 'flex-clear.front')!;
    expect(line).toMatchObject({ kept: 'over', limitOf: 'owner', limit: { value: 0 } });
    expect(line.after!.value).toBeCloseTo(-short, 4);
    expect(line.findings).toEqual(['flex-on-body']);
    expect(line.remedies.map(({ code }) => code)).toEqual(['notch-contact', 'stop-sooner-in-flex']);
    // The stop pushes already: h = −K·(a·sin φ − g) ÷ (2·k + K).
    const share = 100_000 / 180_000;
    const sine = (0.12 - 0.06 * share) / (0.75 - 0.44 * share);
    expect(lineOf(answer, 'flex-angle.front')!.after!.value).toBeCloseTo(Math.asin(sine), 4);
  });

  it('nothing is said once the same tyre has way to spare there', () => {
    const clear = 0.75 * AT_STOP.sine + AT_STOP.heave + 0.02;
    const answer = asked({ ...WIDE, contacts: { guard: { gap: [clear, 0.002], spread: 1.5 } } });
    expect(answer.findings.filter(({ code }) => code === 'flex-on-body')).toEqual([]);
    expect(lineOf(answer, 'flex-clear.front')).toMatchObject({ kept: 'fine' });
    expect(lineOf(answer, 'flex-clear.front')!.room!.value).toBeCloseTo(0.02, 4);
    expect(lineOf(answer, 'flex-angle.front')!.after!.value).toBeCloseTo(Math.asin(AT_STOP.sine), 4);
  });

  it('a gap that may be either is open, with its chance', () => {
    const even = 0.75 * AT_STOP.sine + AT_STOP.heave;
    const answer = asked({ ...WIDE, contacts: { guard: { gap: [even, 0.01], spread: 1.5 } } });
    const [finding] = said(answer, 'flex-on-body');
    expect(finding).toMatchObject({ severity: 'unproven' });
    expect(finding!.likelihood).toBeGreaterThan(0.2);
    expect(finding!.likelihood).toBeLessThan(0.8);
    expect(findingText(finding!, { system: 'metric' })).toContain('flex may end on guard');
  });

  it('a shock that is open before the strap is stretched: over, and the strap that spares it', () => {
    // Strap: 0.4 × 1.08 at a shock of 0.5 + 0.15; open at 0.6.
    const strap = { length: 0.4, stretch: 0.08, tight: 0.65 };
    const answer = asked({ ...WIDE, gap: 0.4, strap, shock: { ride: 0.5, open: 0.6 } });
    const [finding] = said(answer, 'flex-on-shock');
    expect(finding).toMatchObject({ severity: 'over' });
    expect(findingText(finding!, { system: 'metric' })).toContain('Level, the strap may spare it');
    const way = finding!.remedies.find(({ code }) => code === 'strap-in-flex')!.amount!;
    // Wheels stand 0.8 out, shocks 0.55: 0.1 of shock are 0.8 · 0.1 ÷ 0.55 of wheel.
    expect(way.value).toBeCloseTo((0.8 * 0.1) / 0.55, 4);
    expect(lineOf(answer, 'flex-clear.front')!.findings).toContain('flex-on-shock');
  });

  it('without a strap the open shock is a note, and no limit', () => {
    const answer = asked({ ...WIDE, shock: { ride: 0.5, open: 0.6 } });
    expect(said(answer, 'flex-on-shock')).toMatchObject([{ severity: 'note', facts: { strap: 'none' } }]);
    expect(lineOf(answer, 'flex-clear.front')).toMatchObject({ kept: 'fine' });
  });

  it('a hose that is taut first sends its owner to a qualified person', () => {
    const strap = { length: 0.4, stretch: 0.08, tight: 0.6 };
    const answer = asked({ ...WIDE, strap, shock: { ride: 0.5 }, hose: { free: 0.5, apart: 0.53 } });
    const [finding] = said(answer, 'flex-on-hose');
    expect(finding).toMatchObject({ severity: 'over' });
    expect(findingText(finding!, { system: 'shop' })).toMatch(/qualified under your local rules/);
    expect(finding!.remedies.map(({ code }) => code)).toEqual([
      'longer-hose',
      'inspect-hose',
      'strap-in-flex',
    ]);
    for (const remedy of finding!.remedies)
      expect(remedyText(remedy, { system: 'metric' })).not.toMatch(/NaN|undefined/);
  });

  it('a shaft and a solid shock have words of their own', () => {
    const shaft = asked({ ...WIDE, shaft: 0.01 });
    expect(said(shaft, 'flex-on-shaft')).toMatchObject([{ severity: 'over' }]);
    // In the middle the axle goes down by its heave alone.
    expect(said(shaft, 'flex-on-shaft')[0]!.value!.value).toBeCloseTo(0.01 + AT_STOP.heave, 4);
    const solid = asked({ ...WIDE, shock: { ride: 0.5, closed: 0.45 } });
    expect(said(solid, 'flex-on-solid')).toMatchObject([{ severity: 'over' }]);
  });
});

describe('what is not known', () => {
  it('has no figures where nothing known ends the flex', () => {
    const stopless = { ...WIDE, gap: 2, contacts: { sump: { gap: 3 } }, springRate: 1000 };
    const answer = asked(stopless);
    expect(answer.articulation.after.flex.frontLeft.limits[0]).toMatchObject({ id: 'none' });
    expect(flexEndText(answer.articulation.after.flex.frontLeft)).toMatch(/^nothing known ends it/);
    for (const id of ['flex-angle.front', 'flex-up.front', 'flex-clear.front', 'ramp-index.rig'])
      expect(lineOf(answer, id), id).toBeUndefined();
    expect(answer.articulation.after.ramps.frontLeft.ends).toBe(false);
  });

  it('is told once where a tip is off its pad over the whole travel', () => {
    const moved = changed(LINKED, [
      'frame: { ahead: 1 in, spread: 36 in, aboveTube: 5 in }',
      'frame: { ahead: 4 in, spread: 36 in, aboveTube: 5 in }',
    ]);
    const answer = must(linksRig(must(readRig(moved)), { setup: 'as-measured', ...FEW }));
    expect(answer.articulation.after.flex.frontLeft.pad).toMatchObject({ stands: 'off' });
    expect(said(answer, 'links-stop-off-pad')).toHaveLength(1);
    expect(said(answer, 'flex-off-pad')).toEqual([]);
  });
});

describe('a bar that is taken off', () => {
  const bar: AntiRollBar = {
    rate: reading('front.antiRollBar.rate', 12_000, 'rollRate'),
    link: null,
  };
  it('gives the low tyre back what it took: K·φ ÷ track', () => {
    const answer = asked(
      { ...WIDE, gap: 0.4, shock: { ride: 0.5, open: 0.6 } },
      { trail: { front: { antiRollBar: 'off' } } },
      bar,
      { setup: 'trail' },
    );
    const roll = Math.asin(0.1 / 0.55);
    expect(lineOf(answer, 'flex-tyre-load.front')!.change!.value).toBeCloseTo((12_000 * roll) / 1.6, 1);
    // Contacts end the flex with the bar as without it.
    expect(lineOf(answer, 'flex-angle.front')!.change!.value).toBeCloseTo(0, 6);
  });
});

describe('road trim and trail trim of the demo rig, side by side', () => {
  const answer = must(linksRig(ochre, { setup: 'trail-trim', against: 'road-trim', trials: 32 }));
  const moved = (id: string) => answer.knockOn.find((line) => line.id === id);

  it('has every line of stability and road manners that a trim moves', () => {
    const ids = answer.knockOn.map(({ id }) => id);
    expect(ids).toEqual(
      expect.arrayContaining([
        'static-stability-factor.rig',
        'slope-first-lift.rig',
        'slope-tips.rig',
        'roll-stiffness.rig',
        'roll-bar.front',
        'roll-tyres.front',
        'roll-tyres.rear',
        'roll-gradient.rig',
        'load-transfer-share.front',
        'load-transfer-share.rear',
        'ride-frequency.front',
        'hop-frequency.rear',
        'damping-rebound.front',
        'flat-ride-ratio.rig',
        'washboard-sinks.front',
        'washboard-swing.rear',
        'flex-tyre-load.front',
      ]),
    );
    expect(answer.steady.map(({ id }) => id)).toEqual(
      expect.arrayContaining([
        'roll-springs.front',
        'roll-springs.rear',
        'flex-angle.front',
        'ramp-index.rig',
      ]),
    );
  });

  it('goes the way that a bar, firmer shocks and air go', () => {
    expect(moved('roll-bar.front')).toMatchObject({ after: { value: 0 } });
    expect(moved('roll-gradient.rig')!.change!.value).toBeGreaterThan(0);
    expect(moved('load-transfer-share.front')!.change!.value).toBeLessThan(0);
    expect(moved('washboard-sinks.front')!.change!.value).toBeLessThan(0);
    expect(moved('flex-tyre-load.front')!.change!.value).toBeGreaterThan(0);
  });

  it('has stiffness by element that makes up the whole: parts in parallel, tyres below them', () => {
    const value = (id: string, side: 'before' | 'after') => lineOf(answer, id)?.[side]?.value ?? 0;
    for (const side of ['before', 'after'] as const)
      for (const end of ['front', 'rear']) {
        const parts = ['springs', 'gas', 'bar'].reduce(
          (sum, part) => sum + value(`roll-${part}.${end}`, side),
          0,
        );
        const tyres = value(`roll-tyres.${end}`, side);
        expect(value(`roll-stiffness.${end}`, side)).toBeCloseTo(1 / (1 / parts + 1 / tyres), 3);
      }
  });
});
