import { cornerAt, type End, SIDES } from '../finding/place.ts';
import { type Cycle, rainflow } from '../numerics/rainflow.ts';
import type { RideModel } from '../ride/model.ts';
import type { RideRun } from '../ride/result.ts';
import { runRide } from '../ride/run.ts';
import type { MountName } from '../rig/bracket.ts';
import type { Setup } from '../rig/setup.ts';
import { durationOf, TRIAL_TOLERANCE } from './driving.ts';
import type { FeltGrounds } from './felt-ground.ts';
import { mountForces } from './mount-forces.ts';
import type { Demand } from './stop-drive.ts';

/** A peak, where it was seen, and how long the hit lasted. */
export interface Hit {
  readonly demand: string;
  /** [N]; 0 where there was none. */
  readonly force: number;
  /** Time above a twentieth of the peak [s]. */
  readonly lasted: number;
}

/** What one mount of an end saw over all demands, the worse side. */
export interface MountLoad {
  /** Without metal, and of stop and metal together while metal had a part in it. */
  readonly peak: Hit;
  readonly metal: Hit | null;
  /** Loops of the whole force in one pass of each demand. */
  readonly passes: readonly Pass[];
  /** The stop was crushed past the last point of its table: its force there is a guess. */
  readonly isPastTable: boolean;
  readonly isFinished: boolean;
}

export interface Pass {
  readonly demand: string;
  /** [m]; null for a drop. */
  readonly length: number | null;
  readonly cycles: readonly Cycle[];
}

/** Enough for a hit of 20 ms, and for the speed of a shaft between two samples. */
const RATE = 1000;
const SHARE_OF_HIT = 0.05;

export interface LoadsAsked {
  readonly setup: Setup;
  readonly mounts: readonly { readonly end: End; readonly mount: MountName }[];
  readonly demands: readonly Demand[];
  readonly grounds: FeltGrounds;
  /** Of each demand's speed; 1 when left out. */
  readonly share?: number;
  /** Whether loops are counted. */
  readonly counts: boolean;
}

/** Drives a model over all demands and keeps what its mounts saw, in the order of `mounts`. */
export function mountLoads(model: RideModel, asked: LoadsAsked): readonly MountLoad[] {
  const { setup, mounts, demands, grounds, share = 1, counts } = asked;
  const none: Hit = { demand: demands[0]?.name ?? '', force: 0, lasted: 0 };
  const loads = mounts.map(() => ({
    peak: none,
    metal: null as Hit | null,
    passes: [] as Pass[],
    isPastTable: false,
    isFinished: true,
  }));
  for (const { name, course, speed } of demands) {
    const track = grounds.of(course, setup);
    const { history, status, corners } = runRide(model, track, {
      speed: speed * share,
      duration: durationOf(track, model.sprung.toFrontAxle + model.sprung.toRearAxle, speed * share),
      historyRate: RATE,
      tolerance: TRIAL_TOLERANCE,
    });
    if (history === null) throw new Error('a history was asked for');
    for (const [k, { end, mount }] of mounts.entries()) {
      const load = loads[k];
      load.isFinished &&= status === 'finished';
      if (mount === 'stop') load.isPastTable ||= isPastTable(model, end, corners);
      let worst: Float64Array | null = null;
      for (const side of SIDES) {
        const forces = mountForces(model, history, end, side);
        const own = hitOf(forces[mount], name);
        const isWorst = worst === null || own.force > load.peak.force;
        if (own.force > load.peak.force) load.peak = own;
        const whole = mount === 'stop' ? together(forces.stop, forces.metal) : forces[mount];
        if (isWorst) worst = whole;
        if (mount !== 'stop' || !forces.metal.some((force) => force > 0)) continue;
        const metal = hitOf(whole, name);
        if (metal.force > (load.metal?.force ?? 0)) load.metal = metal;
        worst = whole;
      }
      if (counts && worst)
        load.passes.push({
          demand: name,
          length: track.initialLift > 0 ? null : track.end,
          cycles: rainflow(worst).filter(({ range }) => range > 0),
        });
    }
  }
  return loads;
}

function isPastTable({ axles }: RideModel, end: End, corners: RideRun['corners']): boolean {
  const { crush } = axles[end].stop;
  const last = crush[crush.length - 1];
  return SIDES.some((side) => corners[cornerAt(end, side)].peakCrush > last);
}

const together = (stop: Float64Array, metal: Float64Array): Float64Array =>
  stop.map((force, k) => force + metal[k]);

function hitOf(force: Float64Array, demand: string): Hit {
  let peak = 0;
  for (let k = 1; k < force.length; k += 1) if (force[k] > force[peak]) peak = k;
  const most = Math.max(0, force[peak] ?? 0);
  let [from, to] = [peak, peak];
  while (from > 0 && force[from] > SHARE_OF_HIT * most) from -= 1;
  while (to < force.length - 1 && force[to] > SHARE_OF_HIT * most) to += 1;
  return { demand, force: most, lasted: (to - from) / RATE };
}
