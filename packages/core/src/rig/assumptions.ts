/**
 * A value or a tolerance that the program filled in. Shown wherever it matters, with how to measure it.
 * The bands come from `docs/theory/assumptions.md`, each with its source or `common practice, no source`.
 */
export interface Assumption {
  /** Key of the reading. */
  readonly key: string;
  /** What was assumed: the value itself, or only its tolerance. */
  readonly what: 'value' | 'tolerance';
  /** Which rule filled it, for example `tape-tolerance`; `words/` has the sentence and how to measure. */
  readonly rule: AssumptionRule;
}

export const ASSUMPTION_RULES = [
  // tolerances by the tool that is normally used
  'tape-tolerance',
  'scale-tolerance',
  'press-rate-tolerance',
  'press-crush-tolerance',
  'ratio-tolerance',
  'guess-tolerance',
  'unsprung-tolerance',
  'cg-height-tolerance',
  'gauge-tolerance',
  'drill-tolerance',
  'marker-tolerance',
  'clay-tolerance',
  'under-rig-tolerance',
  'level-tolerance',
  'gauge-plate-tolerance',
  // values
  'contact-ratio-one',
  'stop-ratio-one',
  'spring-ratio-one',
  'shock-ratio-upright',
  'spread-share-of-track',
  'unsprung-share',
  'axle-roll-inertia',
  'body-inertia',
  'cg-height',
  'flex-boxed-frame',
  'coil-reserve',
  'shock-reserve',
  'shock-droop-reserve',
  'stop-rate-factor',
  'stop-curve-power',
  'tyre-rate',
  'tyre-damping',
  'tyre-radius',
  'metal-rate',
  'reserve',
  'seat-limit',
  'strap-stretch',
  'strap-ratio-one',
  'bar-ratio-one',
  'no-rate-factor',
  'gas-index',
  'gas-column',
  'vent-discharge',
  'shock-gas-rise',
  'shock-hand-push',
  'tyre-rate-by-size',
  'unsprung-share-independent',
  'independent-roll-inertia',
  'shock-damping-ratio',
  'driver-mass',
  'driver-on-seat',
  'seat-place',
  'seat-frequency',
  'seat-damping-ratio',
  'case-level',
  'bracket-yield',
  'bracket-ultimate',
  'bracket-offset',
  'bracket-factor',
  'cg-lift-free-suspension',
] as const;
export type AssumptionRule = (typeof ASSUMPTION_RULES)[number];
