import type { SampledSide } from '../course/sampled.ts';
import type { Reversal } from '../elements/stop-friction.ts';
import type { RideModel } from './model.ts';
import type { PackedAxle } from './packed-axle.ts';
import type { Accelerate } from './stepper.ts';

/** The rig over a track at a speed. */
export interface Dynamics {
  readonly accelerate: Accelerate;
  /** Contacts that carry force, as bits of `layout.ts`. Held during a step, changed only at an event. */
  contacts: number;
  /** Contacts that should carry force at the last state given to `accelerate`. */
  wanted: number;
  /** PROBE numbers a corner at that state. */
  readonly probe: Float64Array;
  readonly axles: readonly [PackedAxle, PackedAxle];
  readonly sides: readonly [SampledSide, SampledSide];
  readonly model: RideModel;
  readonly speed: number;
  /** Where each touched stop last turned round; of no account without friction. */
  readonly reversals: Reversal[];
  /** Coordinates in all: the seat's is there when somebody sits. */
  readonly coordinates: number;
  /** First-order states in all, and whether the stops have inner displacements among them. */
  readonly sums: number;
  readonly hasInner: boolean;
}
