import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gasForce, rodArea } from '../../src/elements/gas-chamber.ts';
import { stopLoss } from '../../src/elements/stop-loss.ts';
import type { RideAnswer } from '../../src/jobs/protocol.ts';
import { rideRig } from '../../src/jobs/ride.ts';
import { rideModels } from '../../src/ride/from-setup.ts';
import type { CourseShape } from '../../src/rig/course-spec.ts';
import type { Rig } from '../../src/rig/rig.ts';
import { resolveSetup } from '../../src/rig/setup-resolve.ts';
import { drawsOf, NOMINAL_DRAWS } from '../../src/stance/draws.ts';
import { must, rigOf, rigWith, SMALLEST } from '../rigfile/smallest-rig.ts';
import { mustFinish } from './energy.ts';

const POUND = 4.4482216152605;
const INCH = 0.0254;
const LENGTHS = 'rideLength: 20 in, collapsedLength: 15 in, extendedLength: 25 in';

/** The smallest rig with more said about its front. */
const front = (text: string) => rigWith(['  spring: { rate: 160', `  ${text}\n  spring: { rate: 160`]);
const frontStop = (text: string) =>
  rigWith(['    usableCrush: 3/4 in\nrear', `    usableCrush: 3/4 in\n    ${text}\nrear`]);

const modelOf = (text: string, setup = 'as-measured') =>
  rideModels(must(resolveSetup(rigOf(text), setup)), NOMINAL_DRAWS)(0);
const frontOf = (text: string, setup?: string) => modelOf(text, setup).axles.front;

const LEDGE: CourseShape = { kind: 'ledge', side: 'left', height: 0.1, length: 0.3, start: 3 };
const WHOOPS: CourseShape = { kind: 'whoops', height: 0.2, spacing: 7, count: 3, start: 4, rightPhase: 0 };

const rode = (rig: Rig, course: CourseShape, speed: number, trials = 0): RideAnswer =>
  must(
    rideRig({
      rig,
      setup: 'as-measured',
      course,
      courseName: course.kind,
      speed,
      historyRate: 0,
      trials,
      seed: 1,
    }),
  );

describe('a rig that says nothing of gas, losses, bars and straps', () => {
  it('rides on coil, shock table, stop curve and tyre alone', () => {
    const { axles, seat } = modelOf(SMALLEST);
    expect(seat).toBeUndefined();
    for (const axle of Object.values(axles)) {
      expect(Object.keys(axle.stop).sort()).toEqual(
        ['crush', 'force', 'gap', 'halfStation', 'rateFactor', 'ratio'].sort(),
      );
      expect(Object.keys(axle.shock).sort()).toEqual(['force', 'halfStation', 'ratio', 'speed'].sort());
      expect(axle).not.toHaveProperty('antiRollRate');
      expect(axle.droopLimit.at).toBe(Infinity);
    }
  });
});

describe('what a stop loses', () => {
  it('reaches the ride as the branches that its readings become', () => {
    const text = frontStop('hysteresis: 30 %\n    dynamicFactor: 1.4');
    const { stop } = frontOf(text);
    const { crush, force, usableCrush } = rigOf(text).front.stop;
    const law = stopLoss(crush, force, {
      usableCrush: usableCrush.value,
      hysteresis: 0.3,
      dynamicFactor: 1.4,
    });
    expect(stop).toMatchObject({
      rateFactor: 0,
      friction: law.friction,
      maxwell: law.maxwell,
      force: law.force,
    });
  });

  it('loses more of a hit the more of a press it loses, and passes less of it back', () => {
    const lost = [0, 15, 30, 45].map((percent) => {
      const said =
        percent === 0 ? 'rateFactor: 0.000001 s/m' : `rateFactor: 0.000001 s/m\n    hysteresis: ${percent} %`;
      const rig = rigOf(
        frontStop(said).replace(
          '  spring: { rate: 160',
          '  shock: { settings: { free: { dampingRatio: { compression: 0.01, rebound: 0.01 } } } }\n  spring: { rate: 160',
        ),
      );
      const { run } = rode(rig, { kind: 'drop', height: 0.15 }, 1);
      expect(run.corners.frontLeft.contacts.stop).toBeGreaterThan(0);
      mustFinish(run);
      return run.energy.dissipated;
    });
    expect(lost).toEqual([...lost].sort((a, b) => a - b));
    expect(new Set(lost).size).toBe(4);
  });

  it('makes a stop with a dynamic factor push harder when it is hit', () => {
    const hit = (text: string) =>
      rode(rigOf(frontStop(text)), { kind: 'drop', height: 0.25 }, 1).corners.frontLeft;
    const [plain, dynamic] = [hit('rateFactor: 0.000001 s/m'), hit('dynamicFactor: 1.6')];
    expect(dynamic.peakCrush.value).toBeLessThan(plain.peakCrush.value);
  });
});

describe('a gas stop', () => {
  const text = frontStop(
    'gas: { rodDiameter: 30 mm, pressure: 10 bar, column: 30 mm, index: 1.3, oil: { force: 4 kN, speed: 1 m/s } }',
  );

  it('has the force of its gas at every crush and the loss of its oil', () => {
    const { stop } = frontOf(text);
    const chamber = { area: rodArea(0.03), pressure: 1e6, column: 0.03, index: 1.3 };
    stop.crush.forEach((crush, i) => {
      if (i > 0) expect(stop.force[i]).toBeCloseTo(gasForce(chamber, crush), 6);
    });
    expect(stop.oilFactor).toBeCloseTo(4000, 9);
    expect(stop).toMatchObject({ rateFactor: 0 });
  });

  it('is hit in a ride and closes the energy books', () => {
    const { run } = rode(rigOf(text), { kind: 'drop', height: 0.3 }, 1);
    expect(run.corners.frontLeft.contacts.stop).toBeGreaterThan(0);
    mustFinish(run);
  });
});

describe('a vented stop', () => {
  const vented = (vent: string) => frontStop(`rateFactor: 0.000001 s/m\n    vent: { ${vent} }`);

  it('of 50 mm with a hole of 8 mm pushes with 4.692 N more at 1 m/s, and by the square of that', () => {
    // (ρ/2)·A³ ÷ (0.62·Aₒ)², A 1963.5 mm², ρ 1.204 kg/m³: 2389.6 Pa (Bernoulli and a contracted jet, closed form).
    expect(frontOf(vented('cavity: 50 mm, hole: 8 mm')).stop.oilFactor).toBeCloseTo(4.692, 3);
    expect(frontOf(vented('cavity: 50 mm, hole: 4 mm, count: 4')).stop.oilFactor).toBeCloseTo(4.692, 3);
    expect(frontOf(vented('cavity: 50 mm, hole: 8 mm, discharge: 1')).stop.oilFactor).toBeCloseTo(
      4.692 * 0.62 ** 2,
      3,
    );
  });

  it('loses more of a hit the smaller its hole, and is crushed less', () => {
    const text = (hole: number) =>
      vented(`cavity: 50 mm, hole: ${hole} mm`).replace(
        '  spring: { rate: 160',
        '  shock: { settings: { free: { dampingRatio: { compression: 0.01, rebound: 0.01 } } } }\n  spring: { rate: 160',
      );
    const hit = (hole: number) => {
      const { run } = rode(rigOf(text(hole)), { kind: 'drop', height: 0.15 }, 1);
      expect(run.corners.frontLeft.contacts.stop).toBeGreaterThan(0);
      mustFinish(run);
      return { lost: run.energy.dissipated, crush: run.corners.frontLeft.peakCrush };
    };
    const hole = fc.double({ min: 2, max: 12, noNaN: true });
    fc.assert(
      fc.property(hole, fc.double({ min: 0.5, max: 0.85, noNaN: true }), (wide, share) => {
        const [larger, smaller] = [hit(wide), hit(Math.max(1.5, wide * share))];
        expect(smaller.lost).toBeGreaterThan(larger.lost);
        expect(smaller.crush).toBeLessThan(larger.crush);
      }),
      { seed: 9, numRuns: 8 },
    );
  });

  it('hit faster than its law holds is told, with the speed up to which it does', () => {
    const said = (hole: string, course: CourseShape = { kind: 'drop', height: 0.3 }) =>
      rode(rigOf(vented(`cavity: 50 mm, hole: ${hole}`)), course, 5, 4).findings.filter(
        ({ code }) => code === 'ride-vent-past-law',
      );
    const [finding, ...more] = said('3 mm');
    expect(more).toEqual([]);
    expect(finding).toMatchObject({ severity: 'unproven', because: expect.any(Array) });
    expect(finding.place).toMatch(/^front/);
    // 2389.6 Pa at 1 m/s through 8 mm, by the fourth power of the diameter: a tenth of an atmosphere is reached here.
    expect(finding.limit!.value).toBeCloseTo(Math.sqrt(10132.5 / (2389.6 * (8 / 3) ** 4)), 3);
    expect(finding.value!.value).toBeGreaterThan(finding.limit!.value);
    expect(said('25 mm')).toEqual([]);
    // Never touched: nothing to say, however small the hole.
    expect(said('3 mm', { kind: 'flat', length: 20 })).toEqual([]);
  });
});

describe('gas in a shock', () => {
  it('carries part of the rig and leaves it where it stood, however much of it there is', () => {
    fc.assert(
      fc.property(fc.integer({ min: 20, max: 300 }), fc.integer({ min: 12, max: 25 }), (psi, mm) => {
        const text = front(`shock: { ${LENGTHS}, gasPressure: ${psi} psi, rodDiameter: ${mm} mm }`);
        const { run } = rode(rigOf(text), { kind: 'flat', length: 20 }, 10);
        expect(run.status).toBe('finished');
        expect(Math.abs(run.body.heaveAtEnd)).toBeLessThan(1e-9);
        expect(Math.abs(run.body.pitchAtEnd)).toBeLessThan(1e-9);
      }),
      { seed: 5, numRuns: 12 },
    );
  });

  it('pushes with charge over rod and a little more, and seals turn round at rest', () => {
    const { shock } = frontOf(
      front(
        `shock: { ${LENGTHS}, gasPressure: 200 psi, rodDiameter: 7/8 in, friction: 40 N, settings: { trail: [[-1 m/s, -900 N], [0 m/s, 0 N], [1 m/s, 400 N]] } }`,
      ),
    );
    // 120 lb with the shaft out (trade notes, arithmetic), a sixth more half way in.
    expect(shock.gas!.force / POUND).toBeGreaterThan(125);
    expect(shock.gas!.force / POUND).toBeLessThan(145);
    const at = (v: number) => shock.force[shock.speed.indexOf(v)];
    expect([at(-1), at(0), at(1)]).toEqual([-940, 0, 440]);
    expect(at(0.01)).toBeCloseTo(40 + 4, 9);
  });
});

describe('the ends of a shock and a strap', () => {
  const strap = 'strap: { length: 20 in, stretch: 5 %, tightAtShock: 23 in, ratio: 0.5';
  const shock = `shock: { ${LENGTHS}, ratio: 0.9`;

  it('each act at their own place with their own rate', () => {
    const { droopLimit, shock: law } = frontOf(
      front(`${shock}, topOutRate: 1000 N/mm }\n  ${strap}, rate: 300 N/mm }`),
    );
    // Shock 5 in from open, strap tight 3 in further out than at ride.
    expect(law.ends!.openAt).toBeCloseTo((5 * INCH) / 0.9, 12);
    expect(law.ends!.rate).toBeCloseTo(1e6 * 0.9 ** 2, 6);
    expect(droopLimit.at).toBeCloseTo((3 * INCH) / 0.9, 12);
    expect(droopLimit.rate).toBeCloseTo(3e5 * (0.9 * 0.5) ** 2, 6);
  });

  it('take usual rates where nobody measured: 13 kN at full stretch, 2 MN/m on the top', () => {
    const { droopLimit, shock: law } = frontOf(front(`${shock} }\n  ${strap} }`));
    expect(droopLimit.rate).toBeCloseTo((13e3 / (0.05 * 20 * INCH)) * (0.9 * 0.5) ** 2, 6);
    expect(law.ends!.rate).toBeCloseTo(2e6 * 0.9 ** 2, 6);
  });

  it('a shorter strap comes tight earlier and is stiffer by as much', () => {
    const text = `${front(`${shock} }\n  ${strap}, rate: 300 N/mm }`)}setups:\n  short: { front: { strapLength: 19 in } }\n`;
    const [long, short] = [frontOf(text).droopLimit, frontOf(text, 'short').droopLimit];
    expect(long.at - short.at).toBeCloseTo(INCH / (0.5 * 0.9), 12);
    expect(short.rate / long.rate).toBeCloseTo(20 / 19, 12);
  });

  it('a shock whose own metal is the first hard contact is not met twice', () => {
    const bottoms = front(
      `shock: { rideLength: 18 in, collapsedLength: 15 in, extendedLength: 25 in, ratio: 1 }`,
    );
    const law = frontOf(bottoms);
    expect(law.shock.ends!.closedAt).toBe(Infinity);
    expect(law.stop.gap.left + law.metal.atCrush.left).toBeCloseTo(3 * INCH, 12);
    expect(frontOf(front(`${shock} }`)).shock.ends!.closedAt).toBeCloseTo((5 * INCH) / 0.9, 12);
  });

  it('hold the axle when the wheels leave the ground', () => {
    const { run } = rode(rigOf(front(`${shock} }\n  ${strap} }`)), WHOOPS, 12);
    expect(run.corners.frontLeft.contacts.droop).toBeGreaterThan(0);
    mustFinish(run);
  });
});

describe('an anti-roll bar', () => {
  it('has its rate at the axle, typed or by its links, and lets the rig roll less', () => {
    expect(frontOf(front('antiRollBar: { rate: 300 N*m/deg }')).antiRollRate).toBeCloseTo(
      (300 * 180) / Math.PI,
      6,
    );
    const links = 'antiRollBar: { linkRate: 40 N/mm, linkSpread: 1 m, linkRatio: 0.8 }';
    expect(frontOf(front(links)).antiRollRate).toBeCloseTo(40e3 * 0.8 ** 2, 6);
    const lean = (text: string) => rode(rigOf(text), WHOOPS_APART, 3).run.body.peakRoll;
    expect(lean(front('antiRollBar: { rate: 900 N*m/deg }'))).not.toBe(lean(SMALLEST));
  });

  it('changes nothing as long as both wheels do the same', () => {
    const ride = (text: string) => rode(rigOf(text), WHOOPS, 6).run;
    const [with_, without] = [front('antiRollBar: { rate: 900 N*m/deg }'), SMALLEST].map(ride);
    expect(with_.body).toEqual(without.body);
    expect(with_.corners).toEqual(without.corners);
  });
});

const WHOOPS_APART: CourseShape = { ...WHOOPS, height: 0.1, rightPhase: Math.PI };

describe('independent wheels', () => {
  it('have the roll inertia of two masses at the half track in every trial', () => {
    const text = SMALLEST.replace(
      'axle: { track: 60 in }',
      'axle: { kind: independent, track: 60 in ± 1, unsprungMass: 200 lb ± 20 }',
    );
    const rig = rigOf(text);
    const models = rideModels(must(resolveSetup(rig, 'as-measured')), drawsOf(rig));
    const trials = [0, 1, 2, 3].map((trial) => models(trial).axles.front);
    for (const axle of trials) expect(axle.rollInertia).toBeCloseTo(axle.mass * axle.halfTrack ** 2, 9);
    expect(new Set(trials.map(({ rollInertia }) => rollInertia)).size).toBe(4);
  });
});

describe('a shaft that goes faster than its damping is known', () => {
  const said = (shock: string) =>
    rode(rigOf(front(`shock: { settings: { trail: ${shock} } }`)), LEDGE, 5, 4).findings.filter(
      ({ code, place }) => code === 'ride-shock-past-table' && place.startsWith('front'),
    );

  it('by a push of the hand is told, with how fast it went and how far it is known', () => {
    const [finding, ...more] = said('{ handPush: { speed: 2 in/s, push: 90 lb, pull: 200 lb } }');
    expect(more).toEqual([]);
    expect(finding).toMatchObject({ severity: 'unproven', likelihood: 1 });
    expect(finding.limit!.value).toBeCloseTo(2 * INCH, 12);
    expect(finding.value!.value).toBeGreaterThan(0.5);
    expect(finding.value!.tolerance).toBeGreaterThan(0);
    expect(finding.because).toEqual(['front.shock.settings.trail']);
  });

  it('by shares of critical damping is a note, since nothing was read at all', () => {
    expect(said('{ dampingRatio: { compression: 0.3, rebound: 0.6 } }')).toMatchObject([
      { severity: 'note' },
    ]);
  });

  it('by a bench curve beyond that speed is not', () => {
    expect(said('[[-9 m/s, -9 kN], [0 m/s, 0 N], [9 m/s, 5 kN]]')).toEqual([]);
  });
});
