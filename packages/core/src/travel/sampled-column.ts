import { type Corner, type End, endOf, sideOf } from '../finding/place.ts';
import type { Reading } from '../rig/reading.ts';
import type { Setup } from '../rig/setup.ts';
import { type Column, columnOf } from '../stance/columns.ts';
import type { Draws } from '../stance/draws.ts';
import { type Moves, movesOf } from '../stance/moves.ts';
import { contactsOf, type SampledContact } from './contacts.ts';
import { droopOf, type SampledDroop } from './droop.ts';
import { freeBump, stopGapNeeds } from './stop-gap.ts';

/** Everything about one corner's bump travel, sampled [m, axle travel at the stop's station]. */
export interface SampledColumn {
  readonly corner: Corner;
  readonly moves: Moves;
  readonly freeBump: Column;
  readonly crush: Column;
  readonly contacts: readonly SampledContact[];
  /** travel − (free bump + crush) − allowance of each contact, in the same order. */
  readonly spares: readonly Column[];
  /** Smallest travel, and how often each contact is it. */
  readonly hard: Column;
  readonly firstCount: readonly number[];
  readonly clearance: Column;
  readonly spare: Column;
  /** Readings that went into it. */
  readonly readings: ReadonlyMap<string, Reading>;
  /** Readings without which the gap or the lift of this end is not known. */
  readonly needs: Moves['needs'];
}

/** The samples of each corner. */
export type Samples = Readonly<Record<Corner, SampledColumn>>;

/** Draws that remember what was asked for, so that blame looks nowhere else. */
export function remembering(draws: Draws): { draws: Draws; asked: Map<string, Reading> } {
  const asked = new Map<string, Reading>();
  return {
    asked,
    draws: {
      ...draws,
      of: (reading) => {
        asked.set(reading.key, reading);
        return draws.of(reading);
      },
    },
  };
}

/** What both sides of an end have in common, sampled once. */
export interface SampledEnd {
  readonly moves: Moves;
  readonly droop: readonly SampledDroop[];
  /** Readings that the moves were made from. */
  readonly readings: ReadonlyMap<string, Reading>;
  readonly needs: Moves['needs'];
}

export function sampleEnd(setup: Setup, end: End, plain: Draws): SampledEnd {
  const { draws, asked } = remembering(plain);
  const moves = movesOf(setup, end, draws);
  return {
    moves,
    droop: droopOf(setup, end, moves, plain),
    readings: asked,
    needs: [...moves.needs, ...stopGapNeeds(setup, end)],
  };
}

/**
 * Samples one corner. A contact list with nothing on it has no hard travel: reading a rig file refuses that.
 *
 * @throws when no contact at all is known: our own mistake
 */
export function sampleColumn(
  setup: Setup,
  corner: Corner,
  plain: Draws,
  shared: SampledEnd = sampleEnd(setup, endOf(corner), plain),
): SampledColumn {
  const end: End = endOf(corner);
  const side = sideOf(corner);
  const { draws, asked } = remembering(plain);
  const { base, stop } = setup.ends[end];
  const { moves, needs } = shared;
  const free = freeBump(setup, end, side, moves, draws);
  const usable = draws.of(stop.usableCrush);
  const stopRatio = draws.of(base.stopMount.ratio);
  const length = free.length;
  const crush = columnOf(length, (i) => usable[i] / stopRatio[i]);
  const contacts = contactsOf(setup, end, side, moves, draws);
  if (contacts.length === 0) throw new Error(`sampleColumn: no contact is known at ${corner}`);
  const hard = new Float64Array(length).fill(Number.POSITIVE_INFINITY);
  const spare = new Float64Array(length).fill(Number.POSITIVE_INFINITY);
  const first = new Int32Array(length);
  const spares = contacts.map(({ travel, allowance }, k) => {
    const own = new Float64Array(length);
    for (let i = 0; i < length; i += 1) {
      const left = travel[i] - free[i] - crush[i] - allowance[i];
      own[i] = left;
      if (left < spare[i]) spare[i] = left;
      if (travel[i] < hard[i]) {
        hard[i] = travel[i];
        first[i] = k;
      }
    }
    return own;
  });
  const firstCount = contacts.map(() => 0);
  for (let i = 1; i < length; i += 1) firstCount[first[i]] += 1;
  const clearance = new Float64Array(length);
  for (let i = 0; i < length; i += 1) clearance[i] = hard[i] - free[i] - crush[i];
  return {
    corner,
    moves,
    freeBump: free,
    crush,
    contacts,
    spares,
    hard,
    firstCount,
    clearance,
    spare,
    readings: new Map([...shared.readings, ...asked]),
    needs,
  };
}
