import type { Figure } from '../finding/figure.ts';
import type { End } from '../finding/place.ts';
import type { Setup } from '../rig/setup.ts';
import { columnOf, figureOf } from '../stance/columns.ts';
import type { Draws } from '../stance/draws.ts';

/** A strap that catches in time. */
export interface ShorterStrap {
  /** Free length [m]. */
  readonly length: number;
  /** Axle droop given up against the strap of the setup, both tight and not yet stretched [m]. */
  readonly droopLost: number;
  /** Shock travel left at full stretch [m]. */
  readonly left: Figure;
}

/**
 * The longest strap of the same webbing that, fully stretched, still leaves the shock its reserve and the uncertainty:
 *
 *     open − tight − (new − old + stretch·new) ÷ ratio − reserve ≥ u
 *
 * @returns null without a strap, without an open length, or when no length is short enough
 * @source rule T20 of SPEC.md
 */
export function shorterStrap(setup: Setup, end: End, draws: Draws): ShorterStrap | null {
  const { base, patch } = setup.ends[end];
  const { strap } = base;
  if (!strap || !base.shock.extendedLength) return null;
  const open = draws.of(base.shock.extendedLength);
  const tight = draws.of(strap.tightAtShock);
  const stretch = draws.of(strap.stretch);
  const ratio = draws.of(strap.ratio);
  const reserve = draws.of(base.shockDroopReserve);
  const fitted = draws.of(strap.length);
  const now = patch.strapLength?.value ?? fitted[0];
  // What was taped is where the fitted strap comes tight: its own length error stays in, the new one is cut exactly.
  const left = (length: number, i: number) =>
    open[i] - tight[i] - (length - fitted[i] + stretch[i] * length) / ratio[i];
  let length = now;
  for (let step = 0; step < 8; step += 1) {
    const over = figureOf(
      'length',
      columnOf(open.length, (i) => left(length, i) - reserve[i]),
    );
    const missing = (over.tolerance ?? 0) - over.value;
    if (Math.abs(missing) < 1e-7) break;
    length -= (missing * ratio[0]) / (1 + stretch[0]);
  }
  if (!(length > 0)) return null;
  return {
    length,
    droopLost: (now - length) / (ratio[0] * base.shock.ratio.value),
    left: figureOf(
      'length',
      columnOf(open.length, (i) => left(length, i)),
    ),
  };
}
