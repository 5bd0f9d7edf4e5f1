import type { UnitSystem } from '@lastinch/core';
import {
  type ChooseAnswer,
  type ChosenSetup,
  changesText,
  fastestText,
  settingsText,
  whyTexts,
} from '@lastinch/core/choose';

/** The answer of `choose --json`: `lastinch/choose/1`. SI numbers, prices and hours as typed; words beside them. */
export function chooseJson(answer: ChooseAnswer, system: UnitSystem) {
  const setup = (one: ChosenSetup) => ({
    ...one,
    text: {
      changes: changesText(one.changes, system),
      settings: one.trims.map(({ trim, settings }) => ({ trim, text: settingsText(settings, system) })),
      fastest: one.fastest && fastestText(one.fastest, system),
    },
  });
  const nameOf = (index: number): string =>
    index === answer.doNothing?.index
      ? 'doing nothing'
      : index === answer.onlySettings?.index
        ? 'only setting'
        : `candidate ${index}`;
  const { members, doNothing, onlySettings, singles, ...rest } = answer;
  return {
    schema: 'lastinch/choose/1',
    units: 'SI',
    ...rest,
    members: members.map((one) => ({
      ...setup(one),
      why: { ...one.why, text: whyTexts(one.why, { system, money: answer.money, nameOf }) },
    })),
    doNothing: doNothing && setup(doNothing),
    onlySettings: onlySettings && setup(onlySettings),
    singles: singles.map(setup),
  };
}
