import { AS_MEASURED, ENDS, type Reading, type Rig, type SetupPatch } from '@lastinch/core';
import type { RigEdit } from '../../document/rig-document.ts';

/** A name that no setup of the rig has: `proposal-1`, `proposal-2`, … */
export function freeName(rig: Rig): string {
  for (let number = 1; ; number += 1) {
    const name = `proposal-${number}`;
    if (name !== AS_MEASURED && rig.setups[name] === undefined) return name;
  }
}

/** The edits that write a setup under a new name with the texts of an old one; without one, an empty setup. */
export function copyOfSetup(patch: SetupPatch | undefined, name: string): readonly RigEdit[] {
  return patch === undefined
    ? [{ path: ['setups', name, 'notes'], text: 'Made in the workbench.' }]
    : setupEdits(patch, name, `Copied from ${patch.id}.`);
}

/** The edits that write a setup under a name, with the texts of its readings as they were typed. */
export const setupEdits = (patch: SetupPatch, name: string, notes: string): readonly RigEdit[] => [
  { path: ['setups', name, 'notes'], text: notes },
  ...ENDS.flatMap((end) => editsOf(patch[end], ['setups', name, end])),
];

function editsOf(patch: object, path: readonly string[]): readonly RigEdit[] {
  return Object.entries(patch).flatMap(([key, value]: [string, unknown]): readonly RigEdit[] => {
    const here = [...path, key];
    if (typeof value === 'string') return [{ path: here, text: value }];
    if (isReading(value)) return [{ path: here, text: value.text }];
    return typeof value === 'object' && value !== null ? editsOf(value, here) : [];
  });
}

const isReading = (value: unknown): value is Reading =>
  typeof value === 'object' && value !== null && 'text' in value && 'toleranceOrigin' in value;
