/** Public surface `@lastinch/core/choose`: the best few of many candidates, and why. */

// --- What is chosen from, and what is wanted ---

export type { Judged, Objective, Report, Spread } from './choose/objectives.ts';
export { compared, comparedMiddles } from './choose/objectives.ts';
export type { Candidate, ChoiceAxis, ChoiceSpace, SingleStep } from './choose/space.ts';
export { candidateAt, candidateCount, changedAxes, indexOf, singleSteps } from './choose/space.ts';

// --- What is searched, and who judges ---

export type { Judge, SearchLimits, SearchProblem, Trial } from './choose/problem.ts';
export { isExhaustive, USUAL_LIMITS } from './choose/problem.ts';
export type { Search, Task, WhyEnded } from './choose/search.ts';
export { startSearch } from './choose/start.ts';
export type { Tally } from './choose/tally.ts';

// --- A study in parts ---

export type { Member, MergeTrouble, Study } from './choose/merge.ts';
export { mergeAnswers } from './choose/merge.ts';
export { packAnswer, packedWidth, unpackAnswer } from './choose/pack.ts';
export type { PartAnswer, StudyLayout } from './choose/parts.ts';
export { judgeScout, layOutStudy, searchPart } from './choose/parts.ts';
export { shortlist } from './choose/shortlist.ts';

// --- Why each stands where it does ---

export type { Comparison, Difference } from './choose/compare.ts';
export { comparisonOf } from './choose/compare.ts';
export type { Deciding, RankHeld } from './choose/rank.ts';
export { decidingInputs, ranksHeld } from './choose/rank.ts';
export type { Limited, MemberReasons, Reason } from './choose/reasons.ts';
export { reasonsOf } from './choose/reasons.ts';

// --- Fronts by themselves ---

export { FrontArchive } from './choose/archive.ts';
export { beats, type Point } from './choose/dominance.ts';
export { hypervolume } from './choose/hypervolume.ts';
export { frontOf, layersOf } from './choose/pareto.ts';

// --- The choices of a rig ---

export type {
  ChooseAnswer,
  ChooseTally,
  ChosenChange,
  ChosenMember,
  ChosenRide,
  ChosenSetting,
  ChosenSetup,
  ChosenTrim,
  MemberWhy,
  WhyComparison,
  WhyDifference,
  WhyReason,
} from './jobs/choose-answer.ts';
export type { BrokenBy, Fastest } from './jobs/choose-fastest.ts';
export type { Want } from './jobs/choose-objectives.ts';
export { WANT_RULES, WANTS } from './jobs/choose-objectives.ts';
export type { PartsFile } from './jobs/choose-parts-file.ts';
export { otherStudies, partsFile, readPartsFile } from './jobs/choose-parts-file.ts';
export type { ChooseOptions, PartAnswers } from './jobs/choose-start.ts';
export { chooseAnswer, startChoose } from './jobs/choose-start.ts';
export type { ChooseRequest, ChooseStudy } from './jobs/choose-study.ts';
export { openStudy, USUAL_CHOOSE_TRIALS } from './jobs/choose-study.ts';
export type { Choices, DrivenCourse, Effort, EndChoices, FastestCourse, Trim } from './rig/choices.ts';
export { TRIMS } from './rig/choices.ts';

// --- In words ---

export { whyShortTexts, whyTexts } from './words/choice-reasons.ts';
export {
  changesText,
  changeText,
  constraintText,
  fastestText,
  moneyText,
  settingsText,
  stageText,
  WANT_MEANINGS,
  WANT_NAMES,
  WHY_ENDED,
  wantCell,
  wantHead,
  wantText,
} from './words/choices.ts';
export { setupFragment } from './words/setup-fragment.ts';
