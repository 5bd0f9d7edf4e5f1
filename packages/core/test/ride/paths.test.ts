import { describe, expect, it } from 'vitest';
import { sampleCourse } from '../../src/course/track.ts';
import type { AxleModel, ElementPath, RideModel } from '../../src/ride/model.ts';
import { runRide } from '../../src/ride/run.ts';
import type { CourseShape } from '../../src/rig/course-spec.ts';
import { mustFinish } from './energy.ts';
import { fourfoldRig, unevenRig } from './invented-rigs.ts';

/** s = r·z + b·z²/2 with exact slopes: an element whose ratio grows with bump by b a metre. */
const bent = (ratio: number, growth: number): ElementPath => {
  const travel = Array.from({ length: 11 }, (_, k) => (k - 5) * 0.05);
  return {
    travel,
    compression: travel.map((z) => ratio * z + (growth * z * z) / 2),
    ratio: travel.map((z) => ratio + growth * z),
  };
};

const withPaths = (
  model: RideModel,
  growth: Readonly<Record<'spring' | 'shock' | 'stop', number>>,
): RideModel => {
  const change = (axle: AxleModel): AxleModel => ({
    ...axle,
    spring: { ...axle.spring, path: bent(axle.spring.ratio, growth.spring) },
    shock: {
      ...axle.shock,
      gas: { force: 400, rate: 800 },
      path: bent(axle.shock.ratio, growth.shock),
    },
    stop: { ...axle.stop, path: bent(axle.stop.ratio, growth.stop) },
  });
  return { ...model, axles: { front: change(model.axles.front), rear: change(model.axles.rear) } };
};

const LEDGE: CourseShape = { kind: 'ledge', side: 'left', height: 0.15, length: 0.4, start: 1 };
const DROP: CourseShape = { kind: 'drop', height: 0.35 };
const drive = (model: RideModel, shape: CourseShape) =>
  mustFinish(runRide(model, sampleCourse(shape), { speed: 6, duration: 2.5, historyRate: 0 }));

describe('elements that follow a path', () => {
  it('with a straight one ride as with its ratio', () => {
    const straight = withPaths(unevenRig, { spring: 0, shock: 0, stop: 0 });
    const plain = {
      ...straight,
      axles: {
        front: unpathed(straight.axles.front),
        rear: unpathed(straight.axles.rear),
      },
    };
    for (const shape of [LEDGE, DROP]) {
      const [along, by] = [drive(straight, shape), drive(plain, shape)];
      expect(along.corners.frontLeft.peakCrush).toBeCloseTo(by.corners.frontLeft.peakCrush, 6);
      expect(along.corners.rearRight.clearance).toBeCloseTo(by.corners.rearRight.clearance, 6);
      expect(along.body.rmsAcceleration / by.body.rmsAcceleration).toBeCloseTo(1, 4);
    }
  });

  it.each([
    ['spring', { spring: 1.2, shock: 0, stop: 0 }],
    ['shock', { spring: 0, shock: -1.5, stop: 0 }],
    ['stop', { spring: 0, shock: 0, stop: 1.4 }],
    ['all three', { spring: 0.8, shock: 1, stop: -1 }],
  ])('keep the energy books over ledge and drop: %s', (_, growth) => {
    for (const shape of [LEDGE, DROP]) {
      const run = drive(withPaths(unevenRig, growth), shape);
      expect(run.energy.relativeResidual).toBeLessThan(2e-3);
    }
  });

  it('are at rest at ride height, whatever their path', () => {
    const run = drive(withPaths(unevenRig, { spring: 1, shock: -1, stop: 1 }), { kind: 'flat', length: 10 });
    expect(run.body.peakAcceleration).toBeLessThan(1e-9);
  });

  /**
   * Small heave about ride height on a load L that the coil carries at ratio r: force r(z)·(L/r + k·s(z)), so its rate is
   * k·r² + L·r′/r. Closed form: body and axle alike at four corners, so the heave of both is two masses on two springs.
   */
  it('swing with the rate that the growing ratio adds under load', () => {
    const growth = 1.5;
    const { front } = fourfoldRig.axles;
    const quiet: AxleModel = {
      ...front,
      spring: { ...front.spring, path: bent(front.spring.ratio, growth) },
      shock: { ...front.shock, speed: [-1, 0, 1], force: [0, 0, 0] },
      tyre: { ...front.tyre, damping: 0 },
    };
    const model: RideModel = { ...fourfoldRig, axles: { front: quiet, rear: quiet } };
    const load = (model.sprung.mass * model.gravity) / 4;
    const { rate, ratio } = front.spring;
    const suspension = 4 * (rate * ratio ** 2 + (load * growth) / ratio);
    const tyres = 4 * front.tyre.rate;
    const [body, axles] = [model.sprung.mass, 2 * front.mass];
    // Eigenvalues of two masses: slow one is the body's.
    const a = suspension / body + (suspension + tyres) / axles;
    const b = (suspension * tyres) / (body * axles);
    const slow = Math.sqrt((a - Math.sqrt(a * a - 4 * b)) / 2);
    const run = mustFinish(
      runRide(model, sampleCourse({ kind: 'drop', height: 1e-5 }), {
        speed: 1,
        duration: 8,
        historyRate: 200,
        tolerance: 1e-8,
      }),
    );
    const { history } = run;
    if (!history) throw new Error('no history');
    const heave = Array.from({ length: history.count }, (_, k) => history.coordinates[7 * k]);
    const crossings = heave.flatMap((z, k) => {
      const before = heave[k - 1];
      return k > 0 && before > 0 && z <= 0 ? [(k - 1 + before / (before - z)) / history.rate] : [];
    });
    const last = crossings[crossings.length - 1];
    const period = (last - crossings[0]) / (crossings.length - 1);
    expect((2 * Math.PI) / period / slow).toBeCloseTo(1, 2);
  });
});

function unpathed(axle: AxleModel): AxleModel {
  const { path: _s, ...spring } = axle.spring;
  const { path: _h, ...shock } = axle.shock;
  const { path: _t, ...stop } = axle.stop;
  return { ...axle, spring, shock, stop };
}
