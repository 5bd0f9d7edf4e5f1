import type { UnitSystem } from '@lastinch/core';
import { type LogAnswer, logDoubtText, logUseLines } from '@lastinch/core/trail';

/** The answer of `log --json`: `lastinch/log/1`, SI. */
export const logJson = (answers: readonly LogAnswer[], system: UnitSystem) => ({
  schema: 'lastinch/log/1',
  units: 'SI',
  logs: answers.map(({ doubts, use, began, ...answer }) => ({
    ...answer,
    began: began === null ? null : new Date(1000 * began).toISOString(),
    use: { ...use, text: logUseLines(use) },
    doubts: doubts.map((doubt) => ({ ...doubt, text: logDoubtText(doubt, system) })),
  })),
});
