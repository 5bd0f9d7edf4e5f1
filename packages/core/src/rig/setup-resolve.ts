import type { End } from '../finding/place.ts';
import type { Problem, Result } from '../finding/problem.ts';
import { deepFreeze } from './freeze.ts';
import type { LinkName } from './linkage.ts';
import type { AxleEnd, Rig } from './rig.ts';
import { AS_MEASURED, type Setup, type SetupEnd } from './setup.ts';
import type { EndPatch, SetupPatch } from './setup-patch.ts';

/** Name of the spring and the stop that are on the rig now, usable in a setup like a part from the shelf. */
export const AS_FITTED = 'as-fitted';

/** Names of the setups of a rig in the order of the file; the rig as measured comes first and is always there. */
export const setupNames = (rig: Rig): readonly string[] => [
  AS_MEASURED,
  ...Object.keys(rig.setups).filter((name) => name !== AS_MEASURED),
];

/**
 * Makes the choices of a setup: looks up the parts from the shelf and the shock setting. What the changes move is
 * worked out in `travel/`.
 *
 * @param setupId – a name of `setupNames(rig)`
 * @returns The frozen setup.
 * @failure `ask-unknown-setup`; `rig-unknown-name` for a part, contact or setting that the rig does not have;
 * `rig-needs-reading` and `rig-inconsistent` where a change acts on something that was never measured.
 */
export function resolveSetup(rig: Rig, setupId: string): Result<Setup> {
  const patch = own(rig.setups, setupId);
  if (!patch && setupId !== AS_MEASURED) {
    const accepted = setupNames(rig).join(', ');
    return { ok: false, problems: [{ code: 'ask-unknown-setup', where: {}, found: setupId, accepted }] };
  }
  return resolvePatch(rig, patch ?? { id: setupId, notes: '', front: {}, rear: {} });
}

/**
 * The same for a patch that stands in no rig file.
 * @failure as `resolveSetup`, under the keys that it would have there
 */
export function resolvePatch(rig: Rig, patch: SetupPatch): Result<Setup> {
  const { id, notes } = patch;
  const problems: Problem[] = [];
  const ends = {
    front: resolveEnd(rig, 'front', patch.front, `setups.${id}.front`, problems),
    rear: resolveEnd(rig, 'rear', patch.rear, `setups.${id}.rear`, problems),
  };
  if (problems.length > 0) return { ok: false, problems };
  return { ok: true, value: deepFreeze({ id, notes, rig, ends }) };
}

function resolveEnd(rig: Rig, end: End, patch: EndPatch, key: string, problems: Problem[]): SetupEnd {
  const base = rig[end];
  const pick = <T>(
    name: string | undefined,
    choices: Readonly<Record<string, T>>,
    part: string,
  ): T | undefined => {
    if (name === undefined) return undefined;
    const chosen = own(choices, name);
    if (chosen === undefined) problems.push(unknownName(`${key}.${part}`, name, Object.keys(choices)));
    return chosen;
  };
  const spring = pick(patch.spring, { [AS_FITTED]: base.spring, ...rig.shelf.springs }, 'spring');
  const stop = pick(patch.stop, { [AS_FITTED]: base.stop, ...rig.shelf.stops }, 'stop');
  const setting = pick(patch.shockSetting ?? base.shock.setting, base.shock.settings, 'shockSetting');
  checkTargets(base, patch, key, problems);
  return {
    base,
    patch,
    spring: spring ?? base.spring,
    stop: stop ?? base.stop,
    antiRollBar: patch.antiRollBar === 'off' ? null : base.antiRollBar,
    shockSetting: setting ?? { id: '', speed: [], force: [], origin: 'assumed' },
  };
}

/** Changes that act on something must find it on the rig. */
function checkTargets(base: AxleEnd, patch: EndPatch, key: string, problems: Problem[]): void {
  const contacts = base.contacts.map((contact) => contact.id);
  for (const id of Object.keys(patch.notch ?? {})) {
    if (!contacts.includes(id)) problems.push(unknownName(`${key}.notch.${id}`, id, contacts));
  }
  checkPoints(base, patch, key, problems);
  if (patch.strapLength && !base.strap) {
    problems.push({
      code: 'rig-inconsistent',
      where: { key: `${key}.strapLength` },
      found: patch.strapLength.text,
      accepted: `a strap at this end: ${base.end}.strap`,
    });
  }
  if (patch.antiRollBar && !base.antiRollBar) {
    problems.push({
      code: 'rig-inconsistent',
      where: { key: `${key}.antiRollBar` },
      found: patch.antiRollBar,
      accepted: `an anti-roll bar at this end: ${base.end}.antiRollBar`,
    });
  }
  if (patch.tyrePressure && !base.tyre.pressure) {
    problems.push({
      code: 'rig-needs-reading',
      where: { key: `${base.end}.tyre.pressure` },
      found: '',
      accepted: '28 psi, 190 kPa',
    });
  }
  if (patch.tyrePressure && patch.tyrePressure.value <= 0) {
    problems.push({
      code: 'rig-negative',
      where: { key: `${key}.tyrePressure` },
      found: patch.tyrePressure.text,
      accepted: 'more than zero',
    });
  }
}

function checkPoints({ end, points }: AxleEnd, patch: EndPatch, key: string, problems: Problem[]): void {
  const names = [...new Set(points.linkage?.links.map(({ name }) => name))];
  for (const name of Object.keys(patch.links ?? {}) as LinkName[])
    if (!names.includes(name)) problems.push(unknownName(`${key}.links.${name}`, name, names));
  if (!patch.shaft || points.driveline) return;
  const accepted = '{ ahead: 12 in, left: 1 in, aboveFloor: 18 in }';
  problems.push({ code: 'rig-needs-reading', where: { key: `${end}.shaft.pinion` }, found: '', accepted });
}

const unknownName = (key: string, found: string, names: readonly string[]): Problem => ({
  code: 'rig-unknown-name',
  where: { key },
  found,
  accepted: names.length > 0 ? names.join(', ') : 'nothing is listed there yet',
});

/** Names come from a file: `constructor` is not a setup. */
const own = <T>(record: Readonly<Record<string, T>>, name: string): T | undefined =>
  Object.hasOwn(record, name) ? record[name] : undefined;
