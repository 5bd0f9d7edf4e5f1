import {
  type AxleCurves,
  curvesOf,
  type Dimension,
  type End,
  formatValue,
  fromSi,
  poseOf,
  type ShaftState,
  shaftIn,
  shownUnit,
  type UnitSystem,
} from '@lastinch/core';
import { tie } from '../../parts/tie.ts';
import type { AxleStand, LinkedAxle, Reach } from './axle.ts';

/** Curves of an axle over bump at one roll, with what its shaft does there. */
export interface AxleFigures {
  readonly axle: LinkedAxle;
  readonly curves: AxleCurves;
  /** Null where there is no shaft, or the links do not go. */
  readonly shaft: readonly (ShaftState | null)[];
}

/** Enough while something is under the finger, and enough to look at. */
export const COARSE = 9;
export const FINE = 31;

export function figuresOver(
  axle: LinkedAxle,
  end: End,
  reach: Reach,
  roll: number,
  count: number,
): AxleFigures {
  const bumps = Float64Array.from(
    { length: count },
    (_, k) => -reach.droop + ((reach.bump + reach.droop) * k) / (count - 1),
  );
  return figuresAt(axle, end, bumps, roll);
}

export const figuresHere = (axle: LinkedAxle, end: End, { bump, roll }: AxleStand): AxleFigures =>
  figuresAt(axle, end, [bump], roll);

function figuresAt(axle: LinkedAxle, end: End, bumps: ArrayLike<number>, roll: number): AxleFigures {
  const { geometry, anti, dragLink, shaft } = axle;
  const curves = curvesOf(geometry, {
    bumps,
    rolls: [roll],
    end,
    ...(anti === undefined ? {} : { anti }),
    ...(dragLink === null ? {} : { dragLink }),
  });
  return {
    axle,
    curves,
    shaft: Array.from(bumps, (bump) => {
      if (shaft === null) return null;
      const found = poseOf(geometry, bump, roll);
      return found.status === 'reached' ? shaftIn(shaft, geometry, found.pose) : null;
    }),
  };
}

/** One thing that moves with an axle, as a curve and as a figure. */
export interface AxleQuantity {
  readonly id: string;
  readonly title: string;
  /** What the number is, and which way is positive. */
  readonly about: string;
  readonly axis: string;
  readonly dimension: Dimension;
  readonly unit?: string;
  /** Value at the k-th bump, SI; not a number where there is none. */
  readonly at: (figures: AxleFigures, k: number) => number;
  readonly isThere: (axle: LinkedAxle) => boolean;
}

const always = (): boolean => true;
const NONE = Number.NaN;
const hasShaft = ({ shaft }: LinkedAxle): boolean => shaft !== null;

/** What is followed over bump, in the order in which it is shown. */
export function quantitiesOf(end: End): readonly AxleQuantity[] {
  const rear = end === 'rear';
  return [
    {
      id: 'pinion',
      title: 'Pinion angle',
      about: 'Against level, nose up positive; without a measured shaft the turn since ride height.',
      axis: 'nose up',
      dimension: 'angle',
      at: ({ curves, shaft }, k) => shaft[k]?.pinionSlope ?? curves.pinion[k] ?? NONE,
      isThere: always,
    },
    {
      id: 'anti',
      title: rear ? 'Anti-squat' : 'Anti-dive',
      about: rear
        ? 'Share of the load transfer that the links carry when this axle does all the driving.'
        : 'Share of the load transfer that the links carry when this axle does all the braking.',
      axis: rear ? 'anti-squat' : 'anti-dive',
      dimension: 'ratio',
      unit: '%',
      at: ({ curves }, k) => (rear ? curves.antiDrive : curves.antiBrake)?.[k] ?? NONE,
      isThere: always,
    },
    {
      id: 'roll-centre',
      title: 'Roll centre',
      about: 'Above the ground under the tyres, on the centreline.',
      axis: 'above ground',
      dimension: 'length',
      at: ({ curves }, k) => curves.rollCentreHeight[k] ?? NONE,
      isThere: always,
    },
    {
      id: 'steer',
      title: 'Steer of the axle',
      about: 'Where the axle points, seen from above, to the left positive.',
      axis: 'to the left',
      dimension: 'angle',
      at: ({ curves }, k) => curves.steer[k] ?? NONE,
      isThere: always,
    },
    {
      id: 'wheel-steer',
      title: 'Bump steer',
      about: 'Where drag link and axle point the wheels with the steering wheel held, to the left positive.',
      axis: 'to the left',
      dimension: 'angle',
      at: ({ curves }, k) => curves.wheelSteer?.[k] ?? NONE,
      isThere: ({ dragLink }) => dragLink !== null,
    },
    {
      id: 'pinion-joint',
      title: 'Shaft joint at the axle',
      about: 'Angle between shaft and pinion, in space.',
      axis: 'joint angle',
      dimension: 'angle',
      at: ({ shaft }, k) => shaft[k]?.pinionAngle ?? NONE,
      isThere: hasShaft,
    },
    {
      id: 'case-joint',
      title: 'Shaft joint at the case',
      about: 'Angle between shaft and output of the case, in space.',
      axis: 'joint angle',
      dimension: 'angle',
      at: ({ shaft }, k) => shaft[k]?.caseAngle ?? NONE,
      isThere: hasShaft,
    },
  ];
}

export const shownIn = ({ dimension, unit }: AxleQuantity, system: UnitSystem) =>
  shownUnit(dimension, system, 0, unit);

/** A value as it stands in a table: angles to a tenth, shares whole, lengths as on the tape. */
export function figureText(quantity: AxleQuantity, value: number, system: UnitSystem): string {
  if (!Number.isFinite(value)) return 'out of reach';
  if (quantity.dimension === 'length') return tie(formatValue(value, 'length', { system }));
  const unit = shownIn(quantity, system);
  const places = quantity.dimension === 'angle' ? (quantity.id.endsWith('steer') ? 2 : 1) : 0;
  const text = fromSi(value, unit)
    .toFixed(places)
    .replace(/^-(0(\.0*)?)$/, '$1')
    .replace('-', '−');
  return tie(`${text} ${unit.name}`);
}

/** The instant centre in words, from the hub line and the ground; null for one so far off that links are level. */
export function instantText({ axle, curves }: AxleFigures, k: number, system: UnitSystem): string | null {
  const [x, z] = [(curves.instantX[k] ?? NONE) - axle.geometry.centre[0], curves.instantZ[k] ?? NONE];
  if (!Number.isFinite(x) || !Number.isFinite(z) || Math.abs(x) > FAR) return null;
  const length = (value: number): string => tie(formatValue(Math.abs(value), 'length', { system }));
  return `${length(x)} ${x < 0 ? 'behind' : 'ahead of'} the hub line, ${length(z)} ${z < 0 ? 'below' : 'above'} ground`;
}

/** Beyond this an instant centre says no more than that the links are level [m]. */
const FAR = 50;
