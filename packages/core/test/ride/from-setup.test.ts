import { describe, expect, it } from 'vitest';
import { cubicBySlopes, cubicValue } from '../../src/numerics/monotone-cubic.ts';
import { rideModels } from '../../src/ride/from-setup.ts';
import { resolveSetup } from '../../src/rig/setup-resolve.ts';
import { drawsOf } from '../../src/stance/draws.ts';
import { travelOf } from '../../src/travel/travel.ts';
import { must, ochre } from '../jobs/ochre.ts';
import { type RigFacts, reading, rigOf } from '../travel/typed-rig.ts';

const FACTS: RigFacts = {
  corners: [500, 500, 400, 400],
  front: {
    contacts: { sump: { gap: 0.12 }, bar: { gap: 0.07, ratio: 0.5 } },
    gap: 0.06,
    gapRight: 0.065,
    stopRatio: 0.9,
    crush: 0.03,
    axleMass: 240,
    springRate: 30_000,
    springRatio: 0.95,
    tyreRate: 200_000,
    shock: { ride: 0.5, closed: 0.3, open: 0.6, ratio: 0.8 },
  },
  rear: { axleMass: 200 },
  setups: { lower: { front: { seatAndStopDrop: reading('setups.lower.front.seatAndStopDrop', 0.02) } } },
};

const modelOf = (setup: string, trial = 0) => {
  const rig = rigOf(FACTS);
  return rideModels(must(resolveSetup(rig, setup)), drawsOf(rig))(trial);
};

describe('the ride model of a rig', () => {
  const model = modelOf('as-measured');

  it('carries what is on the scales less the axles, balanced over the wheelbase', () => {
    // 1800 kg on the pads, 440 kg of axles; sprung front 760, rear 600; moments about the front: 600·2.6/1360.
    expect(model.sprung.mass).toBeCloseTo(1360, 9);
    expect(model.sprung.toFrontAxle).toBeCloseTo((600 * 2.6) / 1360, 12);
    expect(model.sprung.toFrontAxle + model.sprung.toRearAxle).toBeCloseTo(2.6, 12);
    expect([model.axles.front.mass, model.axles.rear.mass]).toEqual([240, 200]);
    expect(model.gravity).toBe(9.80665);
  });

  it('has its stations half way across and its ratios as taped', () => {
    const { front } = model.axles;
    expect(front.halfTrack).toBeCloseTo(0.8, 12);
    expect(front.spring).toMatchObject({ halfStation: 0.45, rate: 30_000, ratio: 0.95 });
    expect(front.shock).toMatchObject({ halfStation: 0.55, ratio: 0.8 });
    expect(front.stop.ratio).toBe(0.9);
    expect(front.tyre.rate).toBe(200_000);
  });

  it('has the gaps as taped along the stop, each side its own', () => {
    expect(model.axles.front.stop.gap.left).toBeCloseTo(0.06, 12);
    expect(model.axles.front.stop.gap.right).toBeCloseTo(0.065, 12);
  });

  it('has metal where the first hard contact of the corner is, seen along the stop', () => {
    // Sump at 0.12, bar at 0.07/0.5 = 0.14 of axle travel: the sump is first. Along the stop 0.9·0.12, less the gap.
    expect(model.axles.front.metal.atCrush.left).toBeCloseTo(0.9 * 0.12 - 0.06, 12);
    expect(model.axles.front.metal.atCrush.right).toBeCloseTo(0.9 * 0.12 - 0.065, 12);
  });

  it('ends its droop where the shock is open, in axle travel at the shock', () => {
    expect(model.axles.front.shock.ends?.openAt).toBeCloseTo(0.1 / 0.8, 12);
    expect(model.axles.front.shock.ends?.closedAt).toBeCloseTo(0.2 / 0.8, 12);
    expect(model.axles.front.droopLimit).toEqual({ at: Infinity, rate: 0, rateFactor: 0 });
  });

  it('keeps its gap and gains travel to metal when coil seat and stop come down together', () => {
    const lower = modelOf('lower').axles.front;
    expect(lower.stop.gap).toEqual(model.axles.front.stop.gap);
    // The body stands 20 mm higher over the axle: so much more axle travel to metal.
    expect(lower.metal.atCrush.left - model.axles.front.metal.atCrush.left).toBeCloseTo(0.9 * 0.02, 12);
  });
});

describe('the ride model and the travel column of Ochre', () => {
  it.each(['as-it-is', 'soft-stop-bolted-in', 'soft-stop-seat-down'])('say the same of %s', (id) => {
    const setup = must(resolveSetup(ochre, id));
    const model = rideModels(setup, drawsOf(ochre))(0);
    const { corners } = travelOf(setup);
    for (const end of ['front', 'rear'] as const) {
      for (const side of ['left', 'right'] as const) {
        const column = corners[`${end}${side === 'left' ? 'Left' : 'Right'}`];
        const { stop, metal } = model.axles[end];
        // The gap was taped along the stop, and the column reads it by the typed ratio; metal is where the column has it,
        // on the path that the stop's measured points make it go.
        const typed = setup.ends[end].base.stopMount.ratio.value;
        expect(stop.gap[side] / typed).toBeCloseTo(column.freeBump.value, 12);
        if (!stop.path) throw new Error('the demo lost its mounts');
        const { travel, compression, ratio } = stop.path;
        const closed = cubicValue(cubicBySlopes(travel, compression, ratio), column.hardTravel.value);
        expect(stop.gap[side] + metal.atCrush[side]).toBeCloseTo(closed, 12);
      }
    }
  });

  it('differ from trial to trial where a reading has a tolerance, and only there', () => {
    const models = rideModels(must(resolveSetup(ochre, 'as-it-is')), drawsOf(ochre));
    const trials = [1, 2, 3, 4].map(models);
    expect(new Set(trials.map((model) => model.axles.front.stop.gap.left)).size).toBe(4);
    expect(new Set(trials.map((model) => model.sprung.mass)).size).toBe(4);
    expect(new Set(trials.map((model) => model.gravity)).size).toBe(1);
    expect(models(3)).toEqual(trials[2]);
  });
});
