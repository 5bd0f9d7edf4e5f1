import type { End } from '../finding/place.ts';
import type { Problem } from '../finding/problem.ts';
import type { Setup } from '../rig/setup.ts';
import { type Column, columnOf } from './columns.ts';
import type { Draws } from './draws.ts';
import { STANDARD_GRAVITY } from './gravity.ts';
import { measuredSpringLoad, settledLength } from './springs.ts';

/**
 * What a setup moves at one end, sampled [m, axle travel unless it says otherwise]: how high the body then stands.
 * Which of these acts on which contact is `travel/SPEC.md`, rules T1–T12; nothing else in the program may decide it.
 */
export interface Moves {
  /** Height gained by a spacer on the coil or by another coil: opens the stop's gap too. */
  readonly springLift: Column;
  /** Height gained by lowering coil seat and stop together: leaves the stop's gap. */
  readonly drop: Column;
  /** Height lost to added load. */
  readonly sag: Column;
  /** springLift + drop − sag. */
  readonly height: Column;
  /** Coil length at ride height in this setup, along the coil; null when no length of it is known. */
  readonly coilLength: Column | null;
  /** Readings without which a move cannot be worked out; it is then taken as none, and nothing here is sure. */
  readonly needs: readonly Problem[];
}

/** Works out the moves of one end. */
export function movesOf(setup: Setup, end: End, draws: Draws): Moves {
  const { base, patch, spring } = setup.ends[end];
  const length = draws.trials + 1;
  const none = new Float64Array(length);
  const ratio = draws.of(base.springRatio);
  const needs: Problem[] = [];

  const spacer = patch.springSpacer && draws.of(patch.springSpacer);
  const sag = patch.addedLoad ? sagUnder(draws.of(patch.addedLoad), draws.of(spring.rate), ratio) : none;
  const drop = patch.seatAndStopDrop ? draws.of(patch.seatAndStopDrop) : none;

  const measuredLength = base.springRideLength && draws.of(base.springRideLength);
  let before = measuredLength;
  let longer: Column = none;
  const otherCoil = spring.rate.key !== base.spring.rate.key;
  if (otherCoil || !before) {
    const load = measuredSpringLoad(setup, end, draws);
    const settledBefore = settledLength(base.spring, load, draws);
    before ??= settledBefore;
    if (otherCoil) {
      // The difference of two worked-out lengths forgets what weights and rates have wrong in common.
      const from = settledBefore ?? before;
      const to = settledLength(spring, load, draws);
      if (from && to) longer = columnOf(length, (i) => to[i] - from[i]);
      if (!to) needs.push(need(`${partKey(spring.rate.key)}.freeLength`, spring.id));
      if (!from) needs.push(need(`${partKey(base.spring.rate.key)}.freeLength`, spring.id));
    }
  }
  const springLift =
    spacer || otherCoil ? columnOf(length, (i) => ((spacer ? spacer[i] : 0) + longer[i]) / ratio[i]) : none;
  const coil = before;
  return {
    springLift,
    drop,
    sag,
    height: columnOf(length, (i) => springLift[i] + drop[i] - sag[i]),
    coilLength: coil && columnOf(length, (i) => coil[i] + longer[i] - sag[i] * ratio[i]),
    needs,
  };
}

/** Half the load on each spring: Δ = m·g ÷ (2·rate·ratio²). */
function sagUnder(load: Column, rate: Column, ratio: Column): Column {
  return columnOf(load.length, (i) => (load[i] * STANDARD_GRAVITY) / (2 * rate[i] * ratio[i] * ratio[i]));
}

/** `shelf.springs.soft.rate` → `shelf.springs.soft`. */
export const partKey = (readingKey: string): string => readingKey.slice(0, readingKey.lastIndexOf('.'));

/** Asks for a length that only a tape can give. */
export const need = (key: string, found: string): Problem => ({
  code: 'rig-needs-reading',
  where: { key },
  found,
  accepted: '12 1/2 in ± 1/16, 318 mm',
});
