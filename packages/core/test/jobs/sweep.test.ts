import { describe, expect, it } from 'vitest';
import { CORNERS, ENDS, endOf } from '../../src/finding/place.ts';
import { rideRig } from '../../src/jobs/ride.ts';
import { sweepRig } from '../../src/jobs/sweep.ts';
import type { SweepAnswer } from '../../src/jobs/sweep-answer.ts';
import type { SweepRequest } from '../../src/jobs/sweep-bench.ts';
import { CRITERIA, type CriterionId } from '../../src/jobs/sweep-criteria.ts';
import type { Reading } from '../../src/rig/reading.ts';
import type { Limits, Rig } from '../../src/rig/rig.ts';
import { asked, must, ochre } from './ochre.ts';

/** Ochre over its ledge: short runs. */
function question(change: Partial<SweepRequest> = {}): SweepRequest {
  return {
    rig: ochre,
    setups: ['as-it-is'],
    course: ochre.courses.ledge.shape,
    courseName: 'ledge',
    wantedSpeed: null,
    from: 2,
    to: 10,
    step: 2,
    trials: 0,
    seed: 1,
    ...change,
  };
}

const swept = (change: Partial<SweepRequest> = {}): SweepAnswer => must(sweepRig(question(change)));
const criterion = (answer: SweepAnswer, id: CriterionId, setup = 0) =>
  answer.setups[setup].criteria[CRITERIA.indexOf(id)];

const choice = (key: string, dimension: Reading['dimension'], value: number): Reading => ({
  key,
  dimension,
  value,
  plus: 0,
  minus: 0,
  origin: 'measured',
  toleranceOrigin: 'measured',
  text: String(value),
});
const limited = (limits: Partial<Limits>): Rig => ({ ...ochre, limits: { ...ochre.limits, ...limits } });

describe('a sweep that cannot be driven', () => {
  it.each([
    ['reversed', { from: 10, to: 2 }, 'ask-sweep-range'],
    ['empty', { from: 5, to: 5 }, 'ask-sweep-range'],
    ['from a standstill', { from: 0 }, 'ask-sweep-range'],
    ['backwards', { from: -3 }, 'ask-sweep-range'],
    ['faster than any rig', { to: 400 }, 'ask-sweep-range'],
    ['from nowhere', { from: Number.NaN }, 'ask-sweep-range'],
    ['without a step', { step: 0 }, 'ask-sweep-step'],
    ['with a step backwards', { step: -1 }, 'ask-sweep-step'],
    ['with a step beyond its range', { step: 8.1 }, 'ask-sweep-step'],
    ['in steps without end', { step: 1e-6 }, 'ask-sweep-step'],
    ['of a fall', { course: ochre.courses.drop.shape, courseName: 'drop' }, 'ask-sweep-no-speed'],
    ['of a setup that is not there', { setups: ['softer'] }, 'ask-unknown-setup'],
  ] as const)('%s', (_, change, code) => {
    expect(sweepRig(question(change))).toMatchObject({ ok: false, problems: [{ code }] });
  });
});

describe('the speed at which a criterion is first broken', () => {
  it('is where single rides on both sides of it say so', () => {
    const answer = swept({ from: 2, to: 12, step: 1, tyres: 'point' });
    for (const id of ['clearance', 'body-shock'] as const) {
      const { first } = criterion(answer, id);
      expect(first.kind, id).toBe('broken');
      const broken = (speed: number): boolean => {
        const ride = must(
          rideRig({
            ...asked({ courseName: 'ledge', course: ochre.courses.ledge.shape, speed, trials: 0 }),
            tyres: 'point',
          }),
        );
        if (id === 'body-shock') return ride.run.body.peakAcceleration > ochre.limits.bodyAcceleration.value;
        return CORNERS.some(
          (corner) =>
            ride.run.corners[corner].clearance < ochre[endOf(corner)].flex.value + ochre.limits.reserve.value,
        );
      };
      expect(broken((first.speed ?? 0) - answer.refined * 1.01), `${id} below`).toBe(false);
      expect(broken((first.speed ?? 0) + answer.refined * 1.01), `${id} above`).toBe(true);
    }
  });

  it('is none on flat ground, at any speed', () => {
    const flat = { course: { kind: 'flat', length: 5 }, courseName: 'flat' } as const;
    const answer = swept({ ...flat, distancePerDay: 1e5, trials: 3 });
    for (const { id, first, bands, brokenShare } of answer.setups[0].criteria) {
      expect(first.kind, id).toBe(id === 'bracket-load' ? 'no-limit' : 'never');
      expect(bands).toEqual([]);
      expect(brokenShare?.every((share) => share === 0)).toBe(true);
      if (id !== 'bracket-load') expect(first.neverShare).toBe(1);
    }
    expect(answer.setups[0].findings.map(({ code }) => code)).toEqual([
      'sweep-no-limit',
      ...Array.from({ length: 7 }, () => 'sweep-held'),
    ]);
  });

  it('is not told for a dose of a day while nobody says how far such ground is driven', () => {
    expect(criterion(swept(), 'seat-dose').first.kind).toBe('no-limit');
    const [short, long] = [100, 1e5].map((distancePerDay) =>
      criterion(swept({ distancePerDay }), 'seat-dose'),
    );
    // The dose goes with the fourth root of the distance.
    short.values.forEach((value, i) => {
      expect(long.values[i] / value).toBeCloseTo(1000 ** 0.25, 9);
    });
    expect(short.limit?.value).toBe(9.1);
  });

  it('is the slowest one asked where nothing is ever allowed, and that counts as over', () => {
    const answer = swept({
      rig: limited({ bracketForce: choice('limits.bracketForce', 'force', 1) }),
      from: 4,
    });
    expect(criterion(answer, 'bracket-load').first).toMatchObject({ kind: 'broken-at-once', speed: 4 });
    expect(answer.setups[0].findings[0]).toMatchObject({ code: 'sweep-broken-at-once', severity: 'over' });
  });

  it.each([
    ['bracket-load', { bracketForce: choice('limits.bracketForce', 'force', 1e6) }, 'never'],
    ['tyre-contact', { tyreContact: choice('limits.tyreContact', 'ratio', 1) }, 'broken'],
    ['absorbed-power', { absorbedPower: choice('limits.absorbedPower', 'power', 2.5) }, 'broken'],
    ['seat-shock', { seatShock: choice('limits.seatShock', 'acceleration', 8) }, 'broken'],
    ['seat-dose', { seatDose: choice('limits.seatDose', 'vibrationDose', 400) }, 'never'],
  ] as const)('holds %s against the limit that its owner gave', (id, limits, kind) => {
    const answer = swept({ rig: limited(limits), to: 14, distancePerDay: 1000 });
    const one = criterion(answer, id);
    expect(one.limit?.value).toBe(Object.values(limits)[0]?.value);
    expect(one.first.kind).toBe(kind);
  });

  it('cannot be told where the model gave up before, and is told where it was broken already', () => {
    // A ledge that nobody drives over: the run is given up on the way.
    const wall = { kind: 'ledge', side: 'left', height: 3, length: 0.3, start: 2 } as const;
    const answer = swept({ course: wall, courseName: 'wall', from: 9, to: 10, step: 1 });
    const tyres = criterion(answer, 'tyre-contact');
    expect(tyres.first.kind).toBe('unknown');
    expect(tyres.values.every(Number.isNaN)).toBe(true);
    expect(tyres.bands).toEqual([{ kind: 'unknown', from: 9, to: 10 }]);
    expect(criterion(answer, 'body-shock').first.kind).toBe('broken-at-once');
    const { findings } = answer.setups[0];
    expect(findings.find(({ id }) => id === 'sweep-unknown.tyre-contact')?.severity).toBe('unproven');
  });
});

describe('the trials of a sweep', () => {
  const answer = swept({ setups: ['as-it-is', 'soft-stop-seat-down'], trials: 3, wantedSpeed: 3 });

  it('put a range about the first break, and say how much it covers', () => {
    expect(answer.coverage).toBeCloseTo(0.5, 12);
    for (const { criteria } of answer.setups)
      for (const { first, brokenShare, spread } of criteria) {
        if (first.kind === 'no-limit') continue;
        expect(first.trials?.low).toBeLessThanOrEqual(first.trials?.high ?? 0);
        expect(brokenShare).toHaveLength(answer.speeds.length);
        expect(spread).toHaveLength(answer.speeds.length);
        for (const ends of spread) if (ends) expect(ends.low).toBeLessThanOrEqual(ends.high);
      }
  });

  it('are the same rigs in both setups, and both sides of the comparison agree', () => {
    const [asked, beside] = answer.setups;
    asked.criteria.forEach(({ id, against }, k) => {
      const other = beside.criteria[k].against;
      if (id === 'bracket-load' || id === 'seat-dose') {
        expect([against, other]).toEqual([null, null]);
        return;
      }
      expect(against?.faster, id).toBe(other?.slower);
      expect(against?.slower, id).toBe(other?.faster);
      expect((against?.faster ?? 0) + (against?.slower ?? 0)).toBeLessThanOrEqual(1);
    });
  });

  it('leave the nominal rig as it is without them', () => {
    const alone = swept({ setups: ['as-it-is'], wantedSpeed: 3 });
    expect(alone.coverage).toBe(0);
    alone.setups[0].criteria.forEach((one, k) => {
      const withTrials = answer.setups[0].criteria[k];
      expect(one.first.trials).toBeNull();
      expect(one.first.speed).toBe(withTrials.first.speed);
      expect(one.values).toEqual(withTrials.values);
      expect(one.bands).toEqual(withTrials.bands);
    });
  });

  it('hold the clearance against what must stay free in that trial', () => {
    // With flex known to nobody the range of what is left is wider than that of the clearance itself.
    const wide = { ...ochre.front.flex, plus: 0.02, minus: 0.01 };
    const rig: Rig = {
      ...ochre,
      ...Object.fromEntries(ENDS.map((end) => [end, { ...ochre[end], flex: wide }])),
    };
    const of = (id: CriterionId) => {
      const ends = criterion(swept({ rig, trials: 3, from: 3, to: 4, step: 1 }), id).spread[0];
      return (ends?.high ?? 0) - (ends?.low ?? 0);
    };
    expect(of('clearance')).not.toBeCloseTo(of('metal-contact'), 4);
  });

  it('survive being sent to another thread', () => {
    expect(structuredClone(answer)).toEqual(answer);
  });
});

describe('what a sweep says', () => {
  const severities = (wantedSpeed: number | null) =>
    swept({ wantedSpeed }).setups[0].findings.filter(({ code }) => code === 'sweep-broken');

  it('counts against the rig only where its owner wants to drive', () => {
    for (const finding of severities(9)) expect(finding.severity, finding.id).toBe('over');
    for (const finding of severities(null)) expect(finding.severity, finding.id).toBe('note');
    expect(severities(9).length).toBeGreaterThan(0);
    // Without trials nothing is known of how much sooner it may break.
    for (const finding of severities(2)) expect(finding.severity, finding.id).toBe('unproven');
  });

  it('rests on the readings behind the limit', () => {
    const { findings } = swept().setups[0];
    const clearance = findings.find(({ id }) => id.endsWith('.clearance'));
    expect(clearance?.because).toEqual(['front.flex', 'rear.flex', 'limits.reserve']);
  });
});
