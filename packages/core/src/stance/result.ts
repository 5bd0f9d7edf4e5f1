import type { Figure } from '../finding/figure.ts';
import type { Finding } from '../finding/finding.ts';
import type { Corner, End } from '../finding/place.ts';

/** Statics of a setup, all with tolerance. */
export interface StanceResult {
  readonly setup: string;
  readonly totalMass: Figure;
  readonly sprungMass: Figure;
  readonly sprungCornerMass: Readonly<Record<Corner, Figure>>;
  /** Share of the total on the front axle, 0…1. */
  readonly frontShare: Figure;
  /** (FL + RR) ÷ total, 0…1. */
  readonly crossShare: Figure;
  /**
   * Centre of gravity of the whole rig: behind the front axle, left of the centre line, above the ground [m], as high
   * as the setup lifts it.
   */
  readonly cg: { readonly behindFrontAxle: Figure; readonly left: Figure; readonly height: Figure };
  /** Centre of gravity of the sprung mass. */
  readonly sprungCg: { readonly behindFrontAxle: Figure; readonly left: Figure; readonly height: Figure };
  readonly ends: Readonly<Record<End, EndStance>>;
  readonly findings: readonly Finding[];
}

export interface EndStance {
  /** Load on each spring at ride [N]. */
  readonly springLoad: Readonly<Record<'left' | 'right', Figure>>;
  /** load ÷ rate: compression from free length at ride [m]. */
  readonly settledDeflection: Figure;
  /** free length − settled deflection [m], null when the free length is unknown. */
  readonly settledLength: Figure | null;
  /** Coil rate seen at the axle in heave, both sides together ÷ 2 [N/m]. */
  readonly rateAtAxle: Figure;
  /** Sprung mass over this end on its springs (and tyres in series) [Hz]. */
  readonly rideFrequency: Figure;
  /** Axle on its tyres [Hz]. */
  readonly hopFrequency: Figure;
  /**
   * Shock slope next to rest, at the axle, over critical damping of the sprung mass on its springs, 2·√(k·m): what
   * `dampingRatio` of a setting means in the rig file. The tyre plays no part in it.
   */
  readonly dampingRatio: { readonly compression: Figure; readonly rebound: Figure };
}
