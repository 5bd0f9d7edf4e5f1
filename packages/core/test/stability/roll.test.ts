import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ENDS } from '../../src/finding/place.ts';
import { balanceAt, COORDINATES, newBalance } from '../../src/stability/roll-energy.ts';
import { mirrored, type RollModel } from '../../src/stability/roll-model.ts';
import { rollPerG, rollStiffness, stopTouchesAt } from '../../src/stability/roll-rates.ts';
import { settle } from '../../src/stability/settle.ts';
import { pullOnSlope, rigidSlope, sideSlope } from '../../src/stability/side-slope.ts';
import { anyRollRig, heightOf, rollRig } from './any-roll.ts';

const G = 9.80665;
const seeded = { seed: 11, numRuns: 60 };
const steepest = (model: RollModel) => rigidSlope({ share: 0.5, left: 0, height: heightOf(model) }, model);
const tilted = (model: RollModel) => sideSlope(model, 0.9);

describe('the energy of a rig in roll', () => {
  test('its slope is its derivative, its curvature that of the slope', () => {
    const anyPose = fc.array(fc.double({ min: -0.12, max: 0.12, noNaN: true }), {
      minLength: COORDINATES,
      maxLength: COORDINATES,
    });
    let compared = 0;
    fc.assert(
      fc.property(anyRollRig, anyPose, (model, pose) => {
        const pull = pullOnSlope(0.3);
        const at = (q: Float64Array) => {
          const out = newBalance();
          balanceAt(model, pull, q, out);
          return out;
        };
        const q = Float64Array.from(pose);
        const here = at(q);
        const step = 1e-6;
        for (let i = 0; i < COORDINATES; i += 1) {
          const [up, down] = [q.slice(), q.slice()];
          up[i] += step;
          down[i] -= step;
          const [above, below] = [at(up), at(down)];
          const scale = Math.max(1e4, Math.abs(here.slope[i]));
          expect(Math.abs((above.energy - below.energy) / (2 * step) - here.slope[i]) / scale).toBeLessThan(
            2e-3,
          );
          for (let k = 0; k < COORDINATES; k += 1) {
            const numeric = (above.slope[k] - below.slope[k]) / (2 * step);
            const own = here.curvature[COORDINATES * i + k];
            const entry = COORDINATES * i + k;
            const scaleOfCurve = Math.max(1e4, Math.abs(own));
            // Something touches within a step of here: no slope of the slope.
            if (Math.abs(above.curvature[entry] - below.curvature[entry]) > 1e-3 * scaleOfCurve) continue;
            compared += 1;
            expect(Math.abs(numeric - own) / scaleOfCurve).toBeLessThan(2e-3);
          }
        }
      }),
      seeded,
    );
    // Where the curve of a stop bends fast, a step sees two slopes: few are left out for that.
    expect(compared).toBeGreaterThan(0.9 * seeded.numRuns * COORDINATES ** 2);
  });

  test('a rig at rest on level ground stays as it is, each tyre with the load that the scales read', () => {
    fc.assert(
      fc.property(anyRollRig, (model) => {
        const { status, bodyRoll, tyreLoad } = settle(model, pullOnSlope(0));
        if (status === 'tips') return;
        expect(Math.abs(bodyRoll)).toBeLessThan(1e-9);
        expect(tyreLoad.frontLeft).toBeCloseTo(model.ends.front.tyreLoad.left, 4);
      }),
      seeded,
    );
  });
});

describe('a side slope', () => {
  test('tips a rig that gives nowhere where its centre stands over the lower tyres', () => {
    // A coil cannot pull: without an end of droop the body would tip over its lower coil.
    const stiff = { springRate: 1e9, tyreRate: 1e10, droop: 1e-6 };
    const model = rollRig({ front: stiff, rear: stiff });
    const rigid = steepest(model);
    // tan α = track ÷ (2·height): the definition of the static stability factor.
    expect(Math.tan(rigid)).toBeCloseTo(1.6 / (2 * heightOf(model)), 12);
    const { tips, firstLift } = tilted(model);
    expect(tips).toBeCloseTo(rigid, 3);
    expect(firstLift).toBeCloseTo(rigid, 3);
  });

  test('tips a rig on springs and tyres before one that gives nowhere, after its first wheel', () => {
    fc.assert(
      fc.property(anyRollRig, (model) => {
        const { firstLift, tips, lean } = tilted(model);
        expect(firstLift).toBeLessThanOrEqual(tips + 2e-4);
        expect(tips).toBeGreaterThan(0);
        expect(lean).toBeGreaterThanOrEqual(0);
      }),
      { ...seeded, numRuns: 40 },
    );
  });

  test('is the same to both sides for a rig that is the same left and right', () => {
    fc.assert(
      fc.property(anyRollRig, (model) => {
        expect(tilted(mirrored(model))).toEqual(tilted(model));
      }),
      { ...seeded, numRuns: 15 },
    );
  });

  test('is worse to the heavy side', () => {
    const load = (left: number, right: number) => ({ left, right });
    const even = rollRig();
    const model: RollModel = {
      ...even,
      sprungLeft: 0.03,
      ends: Object.fromEntries(
        ENDS.map((end) => {
          const of = even.ends[end];
          const moment = 700 * G * 0.03;
          return [
            end,
            {
              ...of,
              tyreLoad: load(of.tyreLoad.left + moment / 1.6, of.tyreLoad.right - moment / 1.6),
              spring: {
                ...of.spring,
                load: load(of.spring.load.left + moment / 0.9, of.spring.load.right - moment / 0.9),
              },
            },
          ];
        }),
      ) as RollModel['ends'],
    };
    expect(settle(model, pullOnSlope(0)).bodyRoll).toBeCloseTo(0, 9);
    expect(tilted(mirrored(model)).tips).toBeLessThan(tilted(model).tips);
  });

  test('a higher centre tips sooner; stiffer springs tip later', () => {
    expect(tilted(rollRig({ sprungHeight: 1.05 })).tips).toBeLessThan(tilted(rollRig()).tips);
    const stiffer = { springRate: 45_000 };
    expect(tilted(rollRig({ front: stiffer, rear: stiffer })).tips).toBeGreaterThan(tilted(rollRig()).tips);
  });

  test('stops that come in and a bar hold the body up', () => {
    const near = { touches: 0.03 };
    const barred = { bar: 20_000 };
    const plain = tilted(rollRig());
    expect(tilted(rollRig({ front: near, rear: near })).tips).toBeGreaterThan(plain.tips);
    expect(tilted(rollRig({ front: barred, rear: barred })).tips).toBeGreaterThan(plain.tips);
  });

  test('a rig whose springs cannot hold its height does not stand', () => {
    const soft = { springRate: 5_000, spread: 0.4 };
    expect(rollPerG(rollRig({ front: soft, rear: soft, sprungHeight: 1.4 }))).toBeNull();
  });
});

describe('roll stiffness and what a turn does', () => {
  test('springs, bar and tyres by their stations, side by side and one after the other', () => {
    const { springs, bar, tyres, suspension, whole } = rollStiffness(
      rollRig({ front: { bar: 8000 } }).ends.front,
    );
    expect(springs).toBeCloseTo(30_000 * 2 * 0.45 ** 2, 9);
    expect(tyres).toBeCloseTo(200_000 * 2 * 0.8 ** 2, 9);
    expect(bar).toBe(8000);
    expect(1 / whole).toBeCloseTo(1 / suspension + 1 / tyres, 12);
  });

  test('with stiff tyres the roll gradient is m·d ÷ (K − m·g·d)', () => {
    const stiff = { tyreRate: 1e12, spread: 1.1, bar: 15_000 };
    const model = rollRig({ front: { ...stiff, rollCentre: 0.35 }, rear: { ...stiff, rollCentre: 0.45 } });
    const d = 0.95 - 0.4;
    const K = 2 * (30_000 * 2 * 0.55 ** 2 + 15_000);
    expect(rollPerG(model)!.bodyRoll / ((1400 * d * G) / (K - 1400 * G * d))).toBeCloseTo(1, 6);
  });

  test('the load transfer of both ends together is that of the whole: m·a·h over the track, plus what the lean shifts', () => {
    const stiff = { tyreRate: 1e12 };
    const model = rollRig({ front: { ...stiff, bar: 9000 }, rear: stiff });
    const { bodyRoll, ends } = rollPerG(model)!;
    const d = 0.95 - 0.42;
    const moment = 1900 * G * heightOf(model) + 1400 * G * d * bodyRoll;
    expect(((ends.front.loadTransfer + ends.rear.loadTransfer) * 1.6) / moment).toBeCloseTo(1, 6);
  });

  test('a bar takes load transfer to its own axle and lessens the lean', () => {
    fc.assert(
      fc.property(anyRollRig, (model) => {
        const plain = rollPerG(model);
        const barred = rollPerG({
          ...model,
          ends: { ...model.ends, front: { ...model.ends.front, barRate: model.ends.front.barRate + 10_000 } },
        });
        if (!plain || !barred) return;
        const share = ({ ends }: typeof plain) =>
          ends.front.loadTransfer / (ends.front.loadTransfer + ends.rear.loadTransfer);
        expect(share(barred)).toBeGreaterThan(share(plain));
        expect(barred.bodyRoll).toBeLessThan(plain.bodyRoll);
      }),
      seeded,
    );
  });

  test('small motion is the beginning of the large: a hundredth of a g leans as the gradient says', () => {
    fc.assert(
      fc.property(anyRollRig, (model) => {
        const per = rollPerG(model);
        if (!per || per.bodyRoll > 0.5) return;
        const { bodyRoll } = settle(model, { normal: G, right: 0.01 * G });
        expect(bodyRoll / (0.01 * per.bodyRoll)).toBeCloseTo(1, 2);
      }),
      seeded,
    );
  });

  test('the stop of the outer side touches when the lean has used its gap up', () => {
    const model = rollRig({ front: { touches: 0.04 } });
    const tilt = rollPerG(model)!.ends.front.tilt;
    const touch = stopTouchesAt(model.ends.front, tilt);
    const state = settle(model, { normal: G, right: touch });
    const lean = state.bodyRoll - state.axleRoll.front;
    // Small motion against large: to 2 % of the gap.
    expect(Math.abs(lean * 0.44 - 0.04)).toBeLessThan(0.0008);
  });
});
