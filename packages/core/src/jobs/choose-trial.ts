import type { Report, Spread } from '../choose/objectives.ts';
import type { Trial } from '../choose/problem.ts';
import type { Candidate } from '../choose/space.ts';
import { rideModels } from '../ride/from-setup.ts';
import type { RideModel } from '../ride/model.ts';
import type { DrivenCourse, Trim } from '../rig/choices.ts';
import type { Setup } from '../rig/setup.ts';
import { type Pass, squaresOf } from './choose-drive.ts';
import { type Climber, climb, climbNear, type Fastest, quickCriteria } from './choose-fastest.ts';
import { exactly, shareSpread, spreadAbout, type Want } from './choose-objectives.ts';
import { AS_IT_IS, leavesSettings, type TrimPatch } from './choose-patch.ts';
import { bestSettings, leastOf } from './choose-settings.ts';
import { TRIALS_A_STAGE, trimsOf, tumblesName } from './choose-stages.ts';
import type { Known, WaysOfJudging } from './choose-ways.ts';
import { criteriaOf } from './sweep-criteria.ts';

/** A trim of a candidate as it is driven. */
export interface DrivenTrim {
  readonly trim: Trim;
  readonly settings: TrimPatch;
  readonly setup: Setup;
  readonly modelOf: (trial: number) => RideModel;
  /** One a course of the trim, in the order of `drive`, at the nominal readings. */
  readonly passes: readonly Pass[];
}

/** One candidate on its way through the stages of `stagesOf`. */
export class CandidateTrial implements Trial {
  readonly known: Known;
  readonly trims: DrivenTrim[] = [];
  fastest: Fastest | null = null;
  readonly #judge: WaysOfJudging;
  readonly #candidate: Candidate;
  readonly #steps: (() => Report)[];
  #drives: readonly ((trial: number) => Pass)[] | null = null;
  /** Trials in which something was not kept clear; one that tumbles does not keep it. */
  #shorts = 0;
  #step = 0;

  constructor(judge: WaysOfJudging, candidate: Candidate) {
    this.#judge = judge;
    this.#candidate = candidate;
    this.known = judge.know(candidate);
    const { trials } = judge.draws;
    this.#steps = [
      ...trimsOf(judge.choices).map((trim) => () => this.#driveTrim(trim)),
      ...(judge.choices.fastest ? [() => this.#climb()] : []),
      ...Array.from({ length: Math.ceil(trials / TRIALS_A_STAGE) }, (_, k) => () => {
        const to = Math.min(trials, (k + 1) * TRIALS_A_STAGE);
        for (let trial = k * TRIALS_A_STAGE + 1; trial <= to; trial += 1) this.#driveTrial(trial);
        return this.#bound();
      }),
      () => this.#checkLimits(),
      () => this.#finish(),
    ];
  }

  next(): Report {
    const step = this.#steps[this.#step];
    this.#step += 1;
    return step();
  }

  #driveTrim(trim: Trim): Report {
    const { table, draws } = this.#judge;
    const courses = this.#coursesIn(trim);
    const made = new Map<TrimPatch, Omit<DrivenTrim, 'passes'>>();
    const drive = (settings: TrimPatch): readonly Pass[] => {
      const setup = this.#judge.setupOf(this.known.changes, settings);
      const driven = { trim, settings, setup, modelOf: rideModels(setup, draws) };
      made.set(settings, driven);
      return courses.map((one) => this.#judge.pass(driven, one, 0));
    };
    const { settings, passes } = leavesSettings(table, this.#candidate)
      ? { settings: AS_IT_IS, passes: drive(AS_IT_IS) }
      : bestSettings(table.soft[trim], drive);
    const chosen = made.get(settings);
    if (chosen === undefined) throw new Error('a setting was chosen that was not driven');
    this.trims.push({ ...chosen, passes });
    const tumbles = courses.filter((_, k) => !passes[k].isFinished);
    if (tumbles.length > 0)
      return { kind: 'barred', by: [...new Set(tumbles.map(({ course }) => tumblesName(course)))] };
    return this.#bound();
  }

  #climb(): Report {
    const course = this.#judge.choices.fastest;
    if (course === null) throw new Error('nobody asked for a speed');
    this.fastest = climb(this.#climber(0), course);
    return this.#bound();
  }

  #climber(trial: number): Climber {
    const course = this.#judge.choices.fastest;
    const driven = this.trims.find(({ trim }) => trim === course?.trim);
    if (course === null || driven === undefined) throw new Error('the course of the speed has no trim');
    const { setup, modelOf } = driven;
    return {
      model: modelOf(trial),
      track: this.#judge.grounds.of(course.course, setup),
      criteria: quickCriteria(criteriaOf(setup, this.#judge.draws, null)),
      trial,
    };
  }

  #checkLimits(): Report {
    const by = this.#judge.brokenLimits(this.known.changes);
    return by.length > 0 ? { kind: 'barred', by } : this.#bound();
  }

  /**
   * Drives a trial, the course with the least to spare first, until one course does not keep clear: more cannot make
   * it worse. The others follow when the candidate gets to its end.
   */
  #driveTrial(trial: number): void {
    for (const drive of this.#orders()) {
      const pass = drive(trial);
      if (pass.spare < 0 || !pass.isFinished) {
        this.#shorts += 1;
        return;
      }
    }
  }

  /** All courses, the tightest first. */
  #orders(): readonly ((trial: number) => Pass)[] {
    this.#drives ??= this.trims
      .flatMap((driven) =>
        this.#coursesIn(driven.trim).map((one, k) => {
          const passes = new Map<number, Pass>();
          const drive = (trial: number): Pass => {
            const known = passes.get(trial) ?? this.#judge.pass(driven, one, trial);
            passes.set(trial, known);
            return known;
          };
          return { drive, spare: driven.passes[k].spare };
        }),
      )
      .sort((a, b) => a.spare - b.spare)
      .map(({ drive }) => drive);
    return this.#drives;
  }

  #coursesIn(trim: Trim): readonly DrivenCourse[] {
    return this.#judge.choices.drive.filter((driven) => driven.trim === trim);
  }

  #bound(): Report {
    const passes = this.trims.flatMap((one) => one.passes);
    const { trials } = this.#judge.draws;
    const atLeast = this.#judge.atLeast(this.known, {
      harshness: Math.sqrt(squaresOf(passes) / this.#judge.daySeconds),
      short: this.#shorts / trials,
      ...(this.fastest && { speed: this.fastest.speed }),
    });
    return { kind: 'bound', atLeast };
  }

  #finish(): Report {
    const { wants, draws, choices } = this.#judge;
    const { trials } = draws;
    const nominal = this.trims.flatMap(({ passes }) => passes);
    const shaking = (passes: readonly Pass[]) => Math.sqrt(squaresOf(passes) / this.#judge.daySeconds);
    const driven = Array.from({ length: trials }, (_, k) => this.#orders().map((drive) => drive(k + 1)));
    const shakings = driven.map(shaking);
    const shorts = driven.map((passes) => (isShort(passes) ? 1 : 0));
    const speeds = Array.from({ length: trials }, (_, k) => this.#speedIn(k + 1));
    const { lift, price, hours } = this.known;
    const fastest = this.fastest;
    const step =
      fastest === null ? 0 : ((fastest.broken ?? fastest.speed) - (fastest.held ?? fastest.speed)) / 2;
    const speed = spreadAbout(
      -(fastest?.speed ?? 0),
      speeds.map((one) => -one),
    );
    const spreads: Readonly<Record<Want, Spread>> = {
      lift: spreadAbout(lift[0], [...lift.slice(1)]),
      harshness: spreadAbout(shaking(nominal), shakings),
      short: shareSpread(this.#shorts, trials),
      // The speed was found between two that were tried: half of that step is not known either.
      speed: { low: speed.low - step, middle: speed.middle, high: speed.high + step },
      price: exactly(price),
      hours: exactly(hours),
    };
    const inTrial = (k: number): Readonly<Record<Want, number>> => ({
      lift: lift[k + 1],
      harshness: shakings[k],
      short: shorts[k],
      speed: choices.fastest ? -speeds[k] : 0,
      price,
      hours,
    });
    return {
      kind: 'judged',
      objectives: wants.map((want) => spreads[want]),
      samples: speeds.flatMap((_, k) => {
        const values = inTrial(k);
        return wants.map((want) => values[want]);
      }),
    };
  }

  #speedIn(trial: number): number {
    const course = this.#judge.choices.fastest;
    if (course === null || this.fastest === null) return 0;
    return climbNear(this.#climber(trial), course, this.fastest).speed;
  }
}

const isShort = (passes: readonly Pass[]): boolean =>
  leastOf(passes) < 0 || passes.some(({ isFinished }) => !isFinished);

/** A candidate as far as the nominal readings tell, whatever it breaks. */
export function nominalTrial(judge: WaysOfJudging, candidate: Candidate): CandidateTrial {
  const trial = new CandidateTrial(judge, candidate);
  const steps = trimsOf(judge.choices).length + (judge.choices.fastest ? 1 : 0);
  for (let k = 0; k < steps; k += 1) trial.next();
  return trial;
}
