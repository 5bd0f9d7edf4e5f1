import type { Judged, Spread } from '../choose/objectives.ts';
import { candidateAt } from '../choose/space.ts';
import type { Figure } from '../finding/figure.ts';
import { CORNERS, ENDS } from '../finding/place.ts';
import { travelOf } from '../travel/travel.ts';
import type { ChosenChange, ChosenSetting, ChosenSetup, ChosenTrim } from './choose-answer.ts';
import { secondsOf } from './choose-drive.ts';
import { WANT_RULES, type Want } from './choose-objectives.ts';
import { type Change, leavesSettings, setupName, setupPatchOf, type TrimPatch } from './choose-patch.ts';
import type { ChooseStudy } from './choose-study.ts';
import type { CandidateTrial, DrivenTrim } from './choose-trial.ts';
import { nominalTrial } from './choose-trial.ts';

/** Trials of the travel column: enough for its verdict, which the first screen of the rig gives with more. */
const COLUMN_TRIALS = 512;

/** A judged candidate in full: what it changes, how it is set and driven in each trim, at the nominal readings. */
export function chosenSetup(study: ChooseStudy, judged: Judged, isOnFront: boolean): ChosenSetup {
  const { table, judge } = study;
  const candidate = candidateAt(table.space, judged.index);
  const trial = nominalTrial(judge, candidate);
  return {
    index: judged.index,
    changes: trial.known.changes.map(chosenChange),
    settings: leavesSettings(table, candidate) ? 'as-they-are' : 'best',
    trims: trial.trims.map((driven) => chosenTrim(study, trial, driven, judged.index)),
    wants: wantsOf(judge.wants, judged.objectives),
    fastest: trial.fastest,
    isOnFront,
  };
}

/** Turned back to what is asked for: a speed is a speed. */
function wantsOf(wants: readonly Want[], spreads: readonly Spread[]): ChosenSetup['wants'] {
  return Object.fromEntries(
    wants.map((want, k): [Want, Spread] => {
      const { low, middle, high } = spreads[k];
      return [want, WANT_RULES[want].sign === 1 ? spreads[k] : { low: -high, middle: -middle, high: -low }];
    }),
  );
}

function chosenChange({ axis, option }: Change): ChosenChange {
  const { size } = option;
  return {
    id: axis.id,
    end: axis.end,
    of: axis.of,
    part: option.part,
    contact: axis.contact,
    size: size && { dimension: 'length', value: size.value, tolerance: Math.max(size.plus, size.minus) },
    price: option.price,
    hours: option.hours,
  };
}

function chosenTrim(
  { judge, choices, request }: ChooseStudy,
  { known }: CandidateTrial,
  { trim, settings, setup, passes }: DrivenTrim,
  index: number,
): ChosenTrim {
  const courses = choices.drive.filter((one) => one.trim === trim);
  const { corners } = travelOf(setup, { trials: COLUMN_TRIALS, seed: request.seed });
  const worst = CORNERS.reduce((a, b) => (roomOf(corners[b].spare) < roomOf(corners[a].spare) ? b : a));
  return {
    trim,
    settings: chosenSettings(settings),
    patch: setupPatchOf(judge.rig, known.changes, settings, { id: setupName(index, trim), notes: '' }),
    rides: passes.map(({ spare, corner, shaking, body }, k) => ({
      course: courses[k].course,
      speed: courses[k].speed,
      seconds: secondsOf(judge.rig, courses[k], judge.grounds),
      spare,
      corner,
      shaking,
      body,
    })),
    column: { corner: worst, spare: corners[worst].spare, verdict: corners[worst].verdict },
  };
}

function chosenSettings(settings: TrimPatch): readonly ChosenSetting[] {
  return ENDS.flatMap((end) => {
    const { shockSetting, tyrePressure, antiRollBar } = settings[end];
    const named = (of: ChosenSetting['of'], name: string | undefined): readonly ChosenSetting[] =>
      name === undefined ? [] : [{ end, of, name, pressure: null }];
    const pressure = tyrePressure && {
      dimension: 'pressure' as const,
      value: tyrePressure.value,
      tolerance: Math.max(tyrePressure.plus, tyrePressure.minus),
    };
    return [
      ...named('shockSetting', shockSetting),
      ...(pressure ? [{ end, of: 'tyrePressure' as const, name: '', pressure }] : []),
      ...named('antiRollBar', antiRollBar),
    ];
  });
}

const roomOf = ({ value, tolerance }: Figure): number => value - (tolerance ?? 0);
