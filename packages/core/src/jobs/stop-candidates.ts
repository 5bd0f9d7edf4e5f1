import type { Dimension, Figure } from '../finding/figure.ts';
import { type End, SIDES } from '../finding/place.ts';
import type { Problem } from '../finding/problem.ts';
import { rideModels } from '../ride/from-setup.ts';
import type { RideModel } from '../ride/model.ts';
import type { Rig } from '../rig/rig.ts';
import type { Setup } from '../rig/setup.ts';
import { AS_FITTED, resolveSetup } from '../rig/setup-resolve.ts';
import { travelNeeds } from '../travel/travel.ts';
import { drawsToDrive } from './driving.ts';
import type { FeltGrounds } from './felt-ground.ts';
import {
  type Broken,
  brokenBy,
  type Demand,
  driveStop,
  type StopCurve,
  type StopWorst,
} from './stop-drive.ts';

/** `does`: within the owner's limits, interval and all; `open`: nominally only; `does-not`: not even nominally. */
export type StopVerdict = 'does' | 'open' | 'does-not';

/** A stop of the rig, bolted where the present one stands and driven. */
export interface StopCandidate {
  /** Name on the shelf, or `as-fitted`. */
  readonly id: string;
  /** On the end in the setup that was asked about. */
  readonly isInSetup: boolean;
  readonly verdict: StopVerdict;
  /** What it breaks nominally. */
  readonly broken: readonly Broken[];
  /** What its interval reaches without breaking it nominally. */
  readonly near: readonly Broken[];
  /** Worst over all demands. */
  readonly spare: Figure;
  readonly body: Figure;
  readonly force: Figure;
  readonly crush: Figure;
  readonly usableCrush: number;
  /** How much later than the present stop it touches, along the stop [m]; below zero earlier. */
  readonly touchesAfter: number;
  /** What it gives in a slow press: force over its own crush. */
  readonly curve: StopCurve;
}

/** One that cannot be driven, and why. */
export interface UnknownCandidate {
  readonly id: string;
  readonly problems: readonly Problem[];
}

export interface CandidatesAsked {
  readonly rig: Rig;
  readonly setup: Setup;
  readonly end: End;
  readonly demands: readonly Demand[];
  readonly trials: number;
  readonly seed: number;
  readonly grounds: FeltGrounds;
}

/**
 * Every stop that the rig knows, in place of the present one in the same mount: a longer one touches earlier by as much.
 *
 * @returns one entry a stop; the one on the end comes first
 */
export function stopCandidates(
  asked: CandidatesAsked,
  onProgress?: (share: number) => void,
): readonly (StopCandidate | UnknownCandidate)[] {
  const { rig, setup, end } = asked;
  const present = setup.ends[end].stop.id;
  const ids = [...new Set([present, AS_FITTED, ...Object.keys(rig.shelf.stops)])];
  return ids.map((id, i) => {
    const one = candidateOf(id, asked, (share) => onProgress?.((i + share) / ids.length));
    onProgress?.((i + 1) / ids.length);
    return one;
  });
}

function candidateOf(
  id: string,
  { rig, setup, end, demands, trials, seed, grounds }: CandidatesAsked,
  onProgress: (share: number) => void,
): StopCandidate | UnknownCandidate {
  const resolved = withStopOf(rig, setup, end, id);
  if (!resolved.ok) return { id, problems: resolved.problems };
  const fitted = resolved.value;
  const needs = travelNeeds(fitted);
  if (needs.length > 0) return { id, problems: needs };
  const draws = drawsToDrive(rig, { trials, seed });
  const modelOf = rideModels(fitted, draws);
  const driven: StopWorst[] = [];
  for (let trial = 0; trial <= trials; trial += 1) {
    driven.push(driveStop(modelOf(trial), fitted, end, demands, { grounds }));
    onProgress((trial + 1) / (trials + 1));
  }
  const [nominal, ...others] = driven;
  const figure = (dimension: Dimension, of: (worst: StopWorst) => number): Figure => ({
    dimension,
    value: of(nominal),
    tolerance: halfWidth(driven, others, of),
  });
  const stop = fitted.ends[end].stop;
  const figures = {
    spare: figure('length', (worst) => worst.spare),
    body: figure('acceleration', (worst) => worst.body),
    force: figure('force', (worst) => worst.force),
    crush: figure('length', (worst) => worst.crush),
  };
  const usable = stop.usableCrush.value;
  const broken = new Set(brokenBy(nominal, fitted));
  if (nominal.crush > usable) broken.add('crush');
  const farEnd = (figure: Figure): number => figure.value + (figure.tolerance ?? 0);
  const far = {
    ...nominal,
    spare: figures.spare.value - (figures.spare.tolerance ?? 0),
    body: farEnd(figures.body),
    force: farEnd(figures.force),
  };
  const reached = [...brokenBy(far, fitted), ...(farEnd(figures.crush) > usable ? (['crush'] as const) : [])];
  const near = reached.filter((what) => !broken.has(what)).sort();
  const isKnown = Object.values(figures).every(({ tolerance }) => tolerance !== null);
  const isSure = near.length === 0 && isKnown;
  const verdict: StopVerdict = broken.size > 0 ? 'does-not' : isSure ? 'does' : 'open';
  return {
    id,
    isInSetup: id === setup.ends[end].stop.id,
    verdict,
    broken: [...broken].sort(),
    near,
    ...figures,
    usableCrush: usable,
    touchesAfter: touchOf(modelOf(0), end) - touchOf(rideModels(setup, draws)(0), end),
    curve: { crush: stop.crush, force: stop.force },
  };
}

/** 95 % half-width as `spreadOf`; null with fewer than two trials or where a run was given up. */
function halfWidth(
  all: readonly StopWorst[],
  others: readonly StopWorst[],
  of: (worst: StopWorst) => number,
): number | null {
  if (others.length < 2 || all.some(({ isFinished }) => !isFinished)) return null;
  const squares = others.reduce((sum, one) => sum + (of(one) - of(all[0])) ** 2, 0);
  return 2 * Math.sqrt(squares / others.length);
}

/** Least gap of the two sides, along the stop [m]. */
const touchOf = (model: RideModel, end: End): number =>
  Math.min(...SIDES.map((side) => model.axles[end].stop.gap[side]));

/** The setup with another stop at one end. */
function withStopOf(rig: Rig, setup: Setup, end: End, stop: string) {
  if (setup.ends[end].stop.id === stop) return { ok: true, value: setup } as const;
  const patch = Object.hasOwn(rig.setups, setup.id)
    ? rig.setups[setup.id]
    : { id: setup.id, notes: '', front: {}, rear: {} };
  const changed = { ...patch, [end]: { ...patch[end], stop } };
  return resolveSetup({ ...rig, setups: { ...rig.setups, [setup.id]: changed } }, setup.id);
}
