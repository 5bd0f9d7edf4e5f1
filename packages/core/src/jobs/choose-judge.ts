import type { Report } from '../choose/objectives.ts';
import type { Judge, Trial } from '../choose/problem.ts';
import type { Candidate } from '../choose/space.ts';
import { ENDS } from '../finding/place.ts';
import type { RideModel } from '../ride/model.ts';
import type { Choices, DrivenCourse } from '../rig/choices.ts';
import type { Rig } from '../rig/rig.ts';
import type { Setup } from '../rig/setup.ts';
import { resolvePatch } from '../rig/setup-resolve.ts';
import { type Draws, drawsOf } from '../stance/draws.ts';
import { movesOf } from '../stance/moves.ts';
import { ChoiceGrounds, keepIn, type Pass, passOver, secondsOf } from './choose-drive.ts';
import { brokenLimits, type LimitRooms, limitRooms } from './choose-limits.ts';
import { type Want, wantsOf } from './choose-objectives.ts';
import { AS_IT_IS, type Change, changesOf, setupPatchOf, type TrimPatch } from './choose-patch.ts';
import { keepName } from './choose-stages.ts';
import type { ChoiceTable } from './choose-table.ts';
import { CandidateTrial } from './choose-trial.ts';
import type { Known, WaysOfJudging } from './choose-ways.ts';

/** What is judged, with how many trials. */
export interface JudgeAsk {
  readonly rig: Rig;
  readonly choices: Choices;
  readonly table: ChoiceTable;
  readonly trials: number;
  readonly seed: number;
}

/**
 * Judges candidates of a rig, stage by stage: what is known without driving, then each trim driven at the nominal
 * readings, the speed on the course named for it, hoses and shafts, and at last the trials.
 *
 * @invariant every bound is one: what is known without driving is exact; shaking is a root of a sum over courses of
 * which some are driven; a probability that is counted has the hits so far; a speed, when known, is exact
 */
export class ChoiceJudge implements Judge, WaysOfJudging {
  readonly rig: Rig;
  readonly choices: Choices;
  readonly table: ChoiceTable;
  readonly draws: Draws;
  readonly grounds: ChoiceGrounds;
  readonly wants: readonly Want[];
  readonly seed: number;
  /** Time on all courses of a day [s]: of those without a distance once over, at the nominal readings of the rig. */
  readonly daySeconds: number;
  #roomsNow: LimitRooms | null = null;
  readonly #rooms = new Map<string, LimitRooms>();

  constructor({ rig, choices, table, trials, seed }: JudgeAsk) {
    this.rig = rig;
    this.choices = choices;
    this.table = table;
    this.seed = seed;
    this.draws = drawsOf(rig, { trials, seed });
    this.grounds = new ChoiceGrounds(rig);
    this.wants = wantsOf(choices.fastest !== null);
    this.daySeconds = choices.drive.reduce((sum, one) => sum + secondsOf(rig, one, this.grounds), 0);
  }

  /** Exact lift, price and hours; nothing is known yet of what has to be driven. */
  bound(candidate: Candidate): Report {
    const known = this.know(candidate);
    const by = this.#forbidden(known);
    if (by.length > 0) return { kind: 'barred', by };
    return { kind: 'bound', atLeast: this.atLeast(known, {}) };
  }

  open(candidate: Candidate): Trial {
    return new CandidateTrial(this, candidate);
  }

  know(candidate: Candidate): Known {
    const changes = changesOf(this.table, candidate);
    const setup = this.setupOf(changes, AS_IT_IS);
    const [front, rear] = ENDS.map((end) => movesOf(setup, end, this.draws).height);
    return {
      changes,
      lift: front.map((height, i) => Math.max(height, rear[i])),
      price: changes.reduce((sum, { option }) => sum + option.price, 0),
      hours: changes.reduce((sum, { option }) => sum + option.hours, 0),
    };
  }

  setupOf(changes: readonly Change[], settings: TrimPatch): Setup {
    const patch = setupPatchOf(this.rig, changes, settings, { id: 'candidate', notes: '' });
    const resolved = resolvePatch(this.rig, patch);
    if (!resolved.ok) throw new Error(`a candidate cannot be: ${JSON.stringify(resolved.problems)}`);
    return resolved.value;
  }

  /** Drives a candidate in a trim over one of the courses, in one trial. */
  pass(
    { setup, modelOf }: { readonly setup: Setup; readonly modelOf: (trial: number) => RideModel },
    one: DrivenCourse,
    trial: number,
  ): Pass {
    return passOver(modelOf(trial), this.grounds.of(one.course, setup), {
      speed: one.speed,
      seconds: secondsOf(this.rig, one, this.grounds),
      keep: keepIn(setup, this.draws, trial),
    });
  }

  /** No middle comes out below these: the least of what is not known is zero, the fastest the end of the range. */
  atLeast(
    known: Known,
    { harshness = 0, short = 0, speed = this.choices.fastest?.to ?? 0 }: Partial<Record<Want, number>>,
  ): number[] {
    const of: Readonly<Record<Want, number>> = {
      lift: known.lift[0],
      harshness,
      short,
      speed: -speed,
      price: known.price,
      hours: known.hours,
    };
    return this.wants.map((want) => of[want]);
  }

  /** Hoses, shafts and pads that the changes break; the present ones may be as they are. Settings reach none of them. */
  brokenLimits(changes: readonly Change[]): readonly string[] {
    this.#roomsNow ??= this.#roomsOf([]);
    return brokenLimits(this.#roomsOf(changes), this.#roomsNow);
  }

  #roomsOf(changes: readonly Change[]): LimitRooms {
    const setup = this.setupOf(changes, AS_IT_IS);
    const key = JSON.stringify(changes.map(({ axis, option }) => [axis.id, option.part, option.size?.value]));
    const rooms = this.#rooms.get(key) ?? limitRooms(setup, this.choices.fastest?.to ?? USUAL_SPEED);
    this.#rooms.set(key, rooms);
    return rooms;
  }

  #forbidden({ changes, lift, price, hours }: Known): readonly string[] {
    const { budget, hours: most, liftAtMost, keep } = this.choices;
    return [
      ...(budget !== null && price > budget ? ['budget'] : []),
      ...(most !== null && hours > most + ROUNDING ? ['hours'] : []),
      ...(liftAtMost !== null && lift[0] > liftAtMost + ROUNDING ? ['lift'] : []),
      ...changes.flatMap(({ axis }) => (keep.includes(axis.id) ? [keepName(axis.id)] : [])),
    ];
  }
}

/** Sums of halves and of inches leave a hair. */
const ROUNDING = 1e-9;
const USUAL_SPEED = 80 / 3.6;
