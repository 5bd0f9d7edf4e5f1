/** Public surface `@lastinch/core/choose`: the best few of many candidates, and why. */

// --- What is chosen from, and what is wanted ---

export type { Judged, Objective, Report, Spread } from './choose/objectives.ts';
export { compared, comparedAll, comparedMiddles } from './choose/objectives.ts';
export type { Candidate, ChoiceAxis, ChoiceSpace, SingleStep } from './choose/space.ts';
export { candidateAt, candidateCount, changedAxes, indexOf, singleSteps } from './choose/space.ts';

// --- The search ---

export type {
  Barred,
  Judge,
  Search,
  SearchLimits,
  SearchProblem,
  Tally,
  Task,
  Trial,
  WhyEnded,
} from './choose/search.ts';
