import {
  type Corner,
  cornerAt,
  type End,
  type Reading,
  type Setup,
  type Side,
  type TravelResult,
} from '@lastinch/core';

/** Everything of a rig that is drawn, in plain numbers [m, rad]: no readings, no tolerances. */
export interface RigShape {
  readonly wheelbase: number;
  /** From the front axle back to the centre of gravity of what is on the springs: body heave is measured there. */
  readonly centreBehindFront: number;
  readonly ends: Readonly<Record<End, EndShape>>;
}

/** One end at ride height. Heights are above the ground, everything along the axle's travel. */
export interface EndShape {
  readonly track: number;
  readonly tyreRadius: number;
  /** Height of the underside of the frame. */
  readonly frame: number;
  /** Height of the top of the pad on the axle. */
  readonly pad: number;
  readonly stop: {
    readonly spread: number;
    readonly length: number;
    /** Solid pieces between its mount and the stop: what was put in or lowered. */
    readonly spacer: number;
    /** Travel to touch. */
    readonly freeBump: Readonly<Record<Side, number>>;
    /** Travel at which its usable crush is used up. */
    readonly fullCrush: Readonly<Record<Side, number>>;
  };
  /** Travel to the first hard contact of any kind. */
  readonly hardTravel: Readonly<Record<Side, number>>;
  readonly coil: {
    readonly spread: number;
    /** Height of the seat on the axle. */
    readonly perch: number;
    /** Height of the seat on the frame, below what was lowered or put in. */
    readonly seat: number;
    /** Solid pieces above that seat: what was put in or lowered. */
    readonly spacer: number;
    /** Droop travel after which it is loose, null when unknown. */
    readonly slack: number | null;
  };
  readonly shock: {
    readonly spread: number;
    /** Height of the lower and the upper eye. */
    readonly lower: number;
    readonly upper: number;
    /** Lean inward from upright. */
    readonly lean: number;
    /** Part of it that does not slide, as a share of its length at ride. */
    readonly bodyShare: number;
  };
  /** Travel down to the first droop limit, null when none is known. */
  readonly droop: Readonly<Record<Side, number | null>>;
}

/** Where parts sit that nobody measures: chosen for the drawing alone [m]. */
const DRAWN = {
  padAboveAxle: 0.08,
  perchAboveAxle: 0.06,
  shockBelowAxle: 0.03,
  stopPerCrush: 1.8,
  coil: 0.28,
  shock: 0.48,
  shockBodyShare: 0.58,
} as const;

/**
 * The shape of a rig in a setup, for the side and the rear drawing.
 *
 * Travels, gaps and lift are those of the travel columns, at the nominal readings, so that the drawing and the
 * figures cannot disagree. What is not measured (height of pads and perches, length of a stop or coil that nobody
 * measured) is drawn with a usual size and decides nothing.
 */
export const rigShapeOf = (setup: Setup, travel: TravelResult): RigShape => {
  const { rig } = setup;
  const wheelbase = rig.wheelbase.value;
  const sprungOn = (end: End): number =>
    rig.cornerMass[cornerAt(end, 'left')].value +
    rig.cornerMass[cornerAt(end, 'right')].value -
    rig[end].unsprungMass.value;
  const sprung = sprungOn('front') + sprungOn('rear');
  return {
    wheelbase,
    centreBehindFront: sprung > 0 ? (wheelbase * sprungOn('rear')) / sprung : wheelbase / 2,
    ends: { front: endShapeOf(setup, travel, 'front'), rear: endShapeOf(setup, travel, 'rear') },
  };
};

const endShapeOf = (setup: Setup, travel: TravelResult, end: End): EndShape => {
  const { base, patch, spring, stop } = setup.ends[end];
  const bySide = <T>(of: (corner: Corner) => T): Record<Side, T> => ({
    left: of(cornerAt(end, 'left')),
    right: of(cornerAt(end, 'right')),
  });
  const length = (reading: Reading | null | undefined, otherwise: number): number =>
    reading?.value ?? otherwise;
  const freeBump = bySide((corner) => travel.corners[corner].freeBump.value);
  const fullCrush = bySide((corner) => freeBumpAndCrush(travel, corner));
  const lift = travel.corners[cornerAt(end, 'left')].lift.value;

  const axle = base.tyre.radius.value;
  const pad = axle + DRAWN.padAboveAxle;
  const stopLength = length(stop.freeLength, stop.usableCrush.value * DRAWN.stopPerCrush);
  const baseStopLength = length(base.stop.freeLength, base.stop.usableCrush.value * DRAWN.stopPerCrush);
  const baseGap =
    (base.stopMount.gap.left.value + base.stopMount.gap.right.value) / 2 / base.stopMount.ratio.value;
  const coilLength = length(base.springRideLength, DRAWN.coil);
  const perch = axle + DRAWN.perchAboveAxle;
  // The frame stands as high as coil and stop need, whichever is more; the other hangs from a mount.
  const measuredFrame = Math.max(pad + baseGap + baseStopLength, perch + coilLength);
  const frame = Math.max(measuredFrame + lift, pad + Math.max(freeBump.left, freeBump.right) + stopLength);
  const drop = length(patch.seatAndStopDrop, 0);
  const seat = perch + coilLength + lift - drop - length(patch.springSpacer, 0);
  const shockLength = length(base.shock.rideLength, DRAWN.shock);
  const ratio = Math.min(1, base.shock.ratio.value);
  const lower = axle - DRAWN.shockBelowAxle;
  return {
    track: base.track.value,
    tyreRadius: axle,
    frame,
    pad,
    stop: {
      spread: base.stopMount.spread.value,
      length: stopLength,
      spacer: length(patch.stopSpacer, 0) + drop,
      freeBump,
      fullCrush,
    },
    hardTravel: bySide((corner) => travel.corners[corner].hardTravel.value),
    coil: {
      spread: base.springSpread.value,
      perch,
      seat,
      spacer: drop + length(patch.springSpacer, 0),
      slack: spring.freeLength === null ? null : Math.max(0, spring.freeLength.value - (seat - perch)),
    },
    shock: {
      spread: base.shock.spread.value,
      lower,
      upper: lower + shockLength * ratio + lift,
      lean: Math.acos(ratio),
      bodyShare:
        base.shock.collapsedLength === null
          ? DRAWN.shockBodyShare
          : Math.min(0.8, (base.shock.collapsedLength.value / shockLength) * 0.8),
    },
    droop: bySide((corner) => travel.corners[corner].droop[0]?.travel.value ?? null),
  };
};

const freeBumpAndCrush = (travel: TravelResult, corner: Corner): number => {
  const { freeBump, crush } = travel.corners[corner];
  return freeBump.value + crush.value;
};
