import { slackLoop } from '@lastinch/core';
import type { Runner } from '../runner.ts';
import { number, numbers } from './inputs.ts';

/** The bow of a slack hose. */
export const hoses: Runner = {
  'free-radius': ({ length, distances }) =>
    numbers(distances).map((distance) => slackLoop(number(length), distance).freeRadius),
  arc: ({ length, distances }) => {
    const loops = numbers(distances).map((distance) => slackLoop(number(length), distance));
    return { radius: loops.map(({ arcRadius }) => arcRadius), sag: loops.map(({ arcSag }) => arcSag) };
  },
};
