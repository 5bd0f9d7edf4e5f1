import { mergeAnswers, type Study } from '../../src/choose/merge.ts';
import { judgeScout, layOutStudy, type PartAnswer, searchPart } from '../../src/choose/parts.ts';
import type { Judge, SearchProblem } from '../../src/choose/problem.ts';

/** All answers of a study, its parts in any order. */
export function answersOf(
  problem: SearchProblem,
  judge: Judge,
  order: (parts: readonly number[]) => readonly number[] = (parts) => parts,
): PartAnswer[] {
  const layout = layOutStudy(problem);
  const scouted = layout.scouts.map((_, scout) => judgeScout(problem, layout, judge, scout));
  const parts = order(Array.from({ length: layout.parts }, (_, part) => part));
  return [...scouted, ...parts.map((part) => searchPart(problem, layout, judge, scouted, part))];
}

/** The whole study. */
export function studyOf(problem: SearchProblem, judge: Judge): Study {
  const study = mergeAnswers(problem, layOutStudy(problem), answersOf(problem, judge));
  if ('missing' in study) throw new Error(`units ${study.missing.join()} are missing`);
  return study;
}

/** Every candidate on the front, those who only stand for it as alike ones too. */
export const standing = (study: Study): number[] =>
  study.members.flatMap(({ index, alike }) => [index, ...alike]).sort((a, b) => a - b);
