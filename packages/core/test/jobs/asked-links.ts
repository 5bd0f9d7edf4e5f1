import { expect } from 'vitest';
import { linksRig } from '../../src/jobs/links.ts';
import type { KnockOnLine, LinksAnswer, LinksRequest } from '../../src/jobs/links-answer.ts';
import { readRig } from '../../src/rigfile/index.ts';
import { must } from '../travel/stories/story.ts';

/** Enough to see which lines there are; half-widths have a test of their own. */
export const FEW = { trials: 8 };

export const asked = (text: string, request: LinksRequest): LinksAnswer =>
  must(linksRig(must(readRig(text)), { ...FEW, ...request }));
export const lines = ({ knockOn, steady }: LinksAnswer): readonly KnockOnLine[] => [...knockOn, ...steady];
export const line = (answer: LinksAnswer, id: string): KnockOnLine => {
  const one = lines(answer).find((each) => each.id === id);
  expect(
    one,
    `${id} among ${lines(answer)
      .map((each) => each.id)
      .join(', ')}`,
  ).toBeDefined();
  return one!;
};
export const after = (answer: LinksAnswer, id: string): number => line(answer, id).after!.value;
export const before = (answer: LinksAnswer, id: string): number => line(answer, id).before!.value;
