import {
  AS_MEASURED,
  type CheckResult,
  checkRig,
  ENDS,
  type Problem,
  type Rig,
  resolveSetup,
  type Setup,
  setupNames,
} from '@lastinch/core';

/** Which of the two compared setups: the one on the rig now, or the one proposed. */
export const LANES = ['now', 'proposed'] as const;
export type Lane = (typeof LANES)[number];

/** What is known about one of the two setups. */
export interface LaneAnswer {
  readonly setupId: string;
  readonly setup: Setup | null;
  readonly check: CheckResult | null;
  /** Why there is no answer, for example because the setup names a stop that is not on the shelf. */
  readonly problems: readonly Problem[];
}

export type Answers = Readonly<Record<Lane, LaneAnswer>>;

/** Trials that fit into a frame while somebody types; the figures that stay come from all of them. */
export const QUICK_TRIALS = 512;
/** Seed of every sampled answer, so that the same readings give the same figures. */
export const SEED = 1;

export const NO_ANSWER: LaneAnswer = { setupId: AS_MEASURED, setup: null, check: null, problems: [] };

/** The setups that are compared: those chosen, else the rig as measured against the last one that changes something. */
export function comparedSetups(
  rig: Rig,
  chosen: { readonly now: string | null; readonly proposed: string | null },
): Readonly<Record<Lane, string>> {
  const names = setupNames(rig);
  const known = (name: string | null): name is string => name !== null && names.includes(name);
  const now = known(chosen.now) ? chosen.now : AS_MEASURED;
  const proposed = known(chosen.proposed)
    ? chosen.proposed
    : (names.findLast((name) => name !== now && changesSomething(rig, name)) ?? AS_MEASURED);
  return { now, proposed };
}

const changesSomething = (rig: Rig, name: string): boolean => {
  const patch = rig.setups[name];
  return patch !== undefined && ENDS.some((end) => Object.keys(patch[end]).length > 0);
};

/** Both setups; the same answer twice when they are the same setup. `trials` left out: all of them. */
export function answersFor(
  rig: Rig,
  { now, proposed }: Readonly<Record<Lane, string>>,
  trials?: number,
): Answers {
  const first = answerFor(rig, now, trials);
  return { now: first, proposed: proposed === now ? first : answerFor(rig, proposed, trials) };
}

function answerFor(rig: Rig, setupId: string, trials: number | undefined): LaneAnswer {
  const setup = resolveSetup(rig, setupId);
  if (!setup.ok) return { setupId, setup: null, check: null, problems: setup.problems };
  const check = checkRig(rig, { setup: setupId, trials, seed: SEED });
  return check.ok
    ? { setupId, setup: setup.value, check: check.value, problems: [] }
    : { setupId, setup: setup.value, check: null, problems: check.problems };
}
