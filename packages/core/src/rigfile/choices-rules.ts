import { ENDS, type End } from '../finding/place.ts';
import type { Problem } from '../finding/problem.ts';
import { choiceNames } from '../rig/choice-names.ts';
import { TRIMS } from '../rig/choices.ts';
import type { Rig } from '../rig/rig.ts';
import type { EndPatch } from '../rig/setup-patch.ts';
import { resolvePatch, setupNames } from '../rig/setup-resolve.ts';
import { whereOf } from './document.ts';
import type { Gaps } from './gaps.ts';

/** Whatever may be chosen must be there: parts on the shelf, settings, contacts, a strap to be changed. */
export function checkChoices(gaps: Gaps, rig: Rig): void {
  const { choices } = rig;
  if (choices === null) return;
  const setups = setupNames(rig);
  if (!setups.includes(choices.from))
    gaps.problem('rig-unknown-name', 'choices.from', choices.from, setups.join(', '));
  const names = choiceNames(choices);
  choices.keep.forEach((name, k) => {
    if (!names.includes(name))
      gaps.problem(
        'rig-unknown-name',
        `choices.keep.${k}`,
        name,
        names.join(', ') || 'nothing may be changed yet',
      );
  });
  for (const end of ENDS) checkEnd(gaps, rig, end);
}

function checkEnd(gaps: Gaps, rig: Rig, end: End): void {
  const of = rig.choices?.ends[end];
  if (!of) return;
  const key = `choices.${end}`;
  const check = (at: string, patch: EndPatch): void => tryOn(gaps, rig, end, patch, `${key}.${at}`);
  for (const { id } of of.stop) check(`stop.${id}`, { stop: id });
  for (const { id } of of.spring) check(`spring.${id}`, { spring: id });
  for (const name of ['stopSpacer', 'seatAndStopDrop', 'springSpacer', 'strapLength'] as const)
    if (of[name]) check(name, { [name]: of[name].sizes[0] });
  for (const [contact, { sizes }] of Object.entries(of.notch))
    check(`notch.${contact}`, { notch: { [contact]: sizes[0] } });
  for (const trim of TRIMS) {
    const { shockSetting, tyrePressure, antiRollBar } = of.trims[trim];
    for (const [k, id] of shockSetting.entries()) check(`${trim}.shockSetting.${k}`, { shockSetting: id });
    for (const [k, at] of tyrePressure.entries()) check(`${trim}.tyrePressure.${k}`, { tyrePressure: at });
    for (const [k, bar] of antiRollBar.entries()) check(`${trim}.antiRollBar.${k}`, { antiRollBar: bar });
  }
}

/** What the rig says to one change alone, at the line where that change stands. */
function tryOn(gaps: Gaps, rig: Rig, end: End, patch: EndPatch, key: string): void {
  const own = `setups.choice.${end}.`;
  const tried = resolvePatch(rig, { id: 'choice', notes: '', front: {}, rear: {}, [end]: patch });
  if (tried.ok) return;
  for (const problem of tried.problems) {
    const at = problem.where.key ?? '';
    if (at.startsWith('setups.choice.') && !at.startsWith(own)) continue;
    const part = at.startsWith(own) ? at.slice(own.length) : null;
    // What the rig says to itself, or to a name that was refused where it stands, is told there.
    if (part !== null && (!(part.split('.')[0]! in patch) || standsRefused(gaps, end, part, problem)))
      continue;
    const where = whereOf(gaps.document, part === null && at !== '' ? at : key);
    const told = gaps.problems.some((one) => one.code === problem.code && one.where.key === where.key);
    if (!told) gaps.problems.push({ ...problem, where });
  }
}

function standsRefused(gaps: Gaps, end: End, part: string, { code, found }: Problem): boolean {
  const lists: Readonly<Record<string, string>> = {
    stop: 'parts.stops',
    spring: 'parts.springs',
    shockSetting: `${end}.shock.settings`,
  };
  const list = lists[part];
  return code === 'rig-unknown-name' && list !== undefined && gaps.at(`${list}.${found}`) !== undefined;
}
