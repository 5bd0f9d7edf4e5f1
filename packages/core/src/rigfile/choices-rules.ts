import { ENDS, type End } from '../finding/place.ts';
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
    // One that was refused for its shape stands in the file and has its problem already.
    if (problem.code === 'rig-unknown-name' && stands(gaps, end, patch, problem.found)) continue;
    const isOwn = problem.where.key?.startsWith(own) ?? false;
    const where = whereOf(gaps.document, isOwn ? key : (problem.where.key ?? key));
    const told = gaps.problems.some(({ code, where: at }) => code === problem.code && at.key === where.key);
    if (!told) gaps.problems.push({ ...problem, where });
  }
}

function stands(gaps: Gaps, end: End, patch: EndPatch, name: string): boolean {
  const place =
    'stop' in patch ? 'parts.stops' : 'spring' in patch ? 'parts.springs' : `${end}.shock.settings`;
  return gaps.at(`${place}.${name}`) !== undefined;
}
