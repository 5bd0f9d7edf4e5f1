import {
  type AxleLift,
  flatRearFrequency,
  heightFromLift,
  monotoneCubic,
  packDown,
  piecewiseLinear,
  pullOnSlope,
  type RollEnd,
  type RollModel,
  rigidSlope,
  rollPerG,
  settle,
  sideSlope,
} from '@lastinch/core';
import type { Runner } from '../runner.ts';
import { number } from './inputs.ts';

/** A roll model as a check file holds it: the stop's curve as its two columns. */
type Written = Omit<RollModel, 'ends'> & {
  readonly ends: Readonly<Record<'front' | 'rear', Omit<RollEnd, 'stop'> & { readonly stop: WrittenStop }>>;
};
type WrittenStop = Omit<RollEnd['stop'], 'curve'> & {
  readonly crush: readonly number[];
  readonly force: readonly number[];
};

function modelOf(input: unknown): RollModel {
  const { ends, ...body } = input as Written;
  const of = ({ stop: { crush, force, ...stop }, ...end }: Written['ends']['front']): RollEnd => ({
    ...end,
    stop: { ...stop, curve: monotoneCubic(crush, force) },
  });
  return { ...body, ends: { front: of(ends.front), rear: of(ends.rear) } };
}

/** A stiff rig alike front and rear, of which only track and height count. */
const tracked = (halfTrack: number) =>
  ({ ends: { front: { halfTrack }, rear: { halfTrack } } }) as unknown as RollModel;

/** Side slopes, turns, an axle raised, washboard. */
export const stability: Runner = {
  settled: ({ model, slope }) => {
    const rig = modelOf(model);
    // Followed from level ground, as a rig drives onto a slope.
    let state = settle(rig, pullOnSlope(0));
    for (let step = 1; step <= 8; step += 1)
      state = settle(rig, pullOnSlope((number(slope) * step) / 8), state.coordinates);
    const loads = Object.entries(state.tyreLoad).map(([corner, load]) => [
      `${corner} load in MN`,
      load / 1e6,
    ]);
    return {
      bodyRoll: state.bodyRoll,
      frontAxleRoll: state.axleRoll.front,
      rearAxleRoll: state.axleRoll.rear,
      ...Object.fromEntries(loads),
    };
  },
  'first-lift': ({ model }) => ({ firstLift: sideSlope(modelOf(model), 0.95).firstLift }),
  'load-transfer': ({ model, normal, right }) => {
    const rig = modelOf(model);
    const { tyreLoad } = settle(rig, { normal: number(normal), right: number(right) });
    return {
      front: (tyreLoad.frontRight - tyreLoad.frontLeft) / 2,
      rear: (tyreLoad.rearRight - tyreLoad.rearLeft) / 2,
    };
  },
  'roll-gradient': ({ model }) => {
    const perG = rollPerG(modelOf(model))?.bodyRoll ?? Number.NaN;
    return { perAcceleration: perG / 9.80665, perG };
  },
  'rigid-slope': ({ track, height }) => ({
    slope: rigidSlope({ share: 0.5, left: 0, height: number(height) }, tracked(number(track) / 2)),
  }),
  'axle-lift': (lift) => ({ height: heightFromLift(lift as unknown as AxleLift) }),
  'packing-down': (inputs) => {
    const of = (key: string) => number(inputs[key]);
    const packed = packDown(
      {
        sprungMass: of('sprungMass'),
        unsprungMass: of('unsprungMass'),
        springRate: of('springRate'),
        tyreRate: of('tyreRate'),
        tyreDamping: of('tyreDamping'),
        shockRatio: of('shockRatio'),
        shock: piecewiseLinear([-10, 0, 10], [-10 * of('rebound'), 0, 10 * of('bump')]),
      },
      { spacing: of('spacing'), height: of('height'), speed: of('speed') },
    );
    return { sinks: packed?.sinks ?? Number.NaN };
  },
  'flat-ride': ({ front, wheelbase, speed }) => ({
    rear: flatRearFrequency(number(front), number(wheelbase), number(speed)),
  }),
};
