import type { Figure } from '../finding/figure.ts';
import type { End } from '../finding/place.ts';
import { good, type Result } from '../finding/problem.ts';
import type { Rig } from '../rig/rig.ts';
import { stopBand } from './stop-band.ts';
import { type StopCandidate, stopCandidates, type UnknownCandidate } from './stop-candidates.ts';
import { curesOf, type StopCures } from './stop-cures.ts';
import type { Demand } from './stop-drive.ts';
import type { StopFamily } from './stop-family.ts';
import { type StopLife, stopLife } from './stop-life.ts';

export interface StopNeedRequest {
  readonly rig: Rig;
  readonly setup: string;
  readonly end: End;
  readonly demands: readonly Demand[];
  /** Rigs over the measurement tolerances that each candidate is driven with, beside the nominal one. */
  readonly trials: number;
  readonly seed: number;
}

/** As many rigs as a ride takes: a half-width is then good to about 15 %. */
export const STOP_TRIALS = 24;

/** The band of stop curves that one end of a rig needs. */
export interface StopNeed {
  readonly rig: string;
  readonly setup: string;
  readonly end: End;
  readonly demands: readonly { readonly name: string; readonly speed: number }[];
  /** Crush from touch to where the reserve and the flex allowance begin [m]. */
  readonly room: number;
  /** What a stop has to keep. */
  readonly limits: { readonly body: Figure; readonly bracket: Figure | null; readonly keep: Figure };
  /** Places of the band [m], and the least and the most force there of all curves that will do [N]; empty when none. */
  readonly crush: readonly number[];
  readonly least: readonly number[];
  readonly most: readonly number[];
  readonly families: readonly StopFamily[];
  /** Null where some stop does as asked. */
  readonly cures: StopCures | null;
  /** Every stop of the rig; the one on the end in this setup first. */
  readonly candidates: readonly (StopCandidate | UnknownCandidate)[];
  /** How each demand uses up the stop that is on the end in this setup. */
  readonly life: readonly StopLife[];
}

/**
 * Which stop curves an end needs so that every demand is met: kept above reserve and flex allowance, within what the
 * owner accepts at the body and at the bracket. Each curve is driven over each course; nothing is estimated.
 *
 * A curve inside the band need not do by itself, since the band covers curves of several shapes: drive a candidate to
 * know. A curve that lies below the band everywhere runs past the reserve, one above it everywhere hits too hard.
 *
 * @param onProgress – share of the work done, 0…1, never falling
 * @validity the band at nominal readings; curves without loss beyond the stop's rate factor; the other end keeps its stop.
 *   Candidates have their own loss, and an interval by trials.
 * @failure as `rideRig`; `stop-no-room` when reserve and flex leave nothing to crush
 */
export function stopNeed(request: StopNeedRequest, onProgress?: (share: number) => void): Result<StopNeed> {
  const { rig, end, demands, trials, seed } = request;
  const found = stopBand(request, (share) => onProgress?.(0.4 * share));
  if (!found.ok) return found;
  const { model, setup, grounds, room, families, crush, least, most } = found.value;
  const cures = crush.length > 0 ? null : curesOf(model, setup, end, demands, { room, grounds });
  onProgress?.(0.6);
  const candidates = stopCandidates({ rig, setup, end, demands, trials, seed, grounds }, (share) =>
    onProgress?.(0.6 + 0.4 * share),
  );
  const { bodyAcceleration, bracketForce, reserve } = rig.limits;
  const flex = setup.ends[end].base.flex;
  return good({
    rig: rig.name,
    setup: setup.id,
    end,
    demands: demands.map(({ name, speed }) => ({ name, speed })),
    room,
    limits: {
      body: { dimension: 'acceleration', value: bodyAcceleration.value, tolerance: 0 },
      bracket: bracketForce && { dimension: 'force', value: bracketForce.value, tolerance: 0 },
      keep: { dimension: 'length', value: flex.value + reserve.value, tolerance: 0 },
    },
    crush,
    least,
    most,
    families,
    cures,
    candidates,
    life: demands.map((demand) => stopLife(model, setup, end, demand, grounds)),
  });
}
