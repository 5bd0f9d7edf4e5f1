import type { Dimension, End, EndPatch, Rig } from '@lastinch/core';

/** One thing that a proposal can change at one end. */
export type PatchField =
  | {
      readonly kind: 'typed';
      readonly key: keyof EndPatch;
      readonly label: string;
      readonly about: string;
      readonly dimension: Dimension;
    }
  | {
      readonly kind: 'part';
      readonly key: keyof EndPatch;
      readonly label: string;
      readonly choices: readonly string[];
    };

const typed = (key: keyof EndPatch, label: string, dimension: Dimension, about: string): PatchField => ({
  kind: 'typed',
  key,
  label,
  dimension,
  about,
});

/** What can be changed at an end of this rig: parts that are on its shelf, and what can be cut, packed or set. */
export function patchFieldsOf(rig: Rig, end: End): readonly PatchField[] {
  const part = (key: keyof EndPatch, label: string, choices: readonly string[]): readonly PatchField[] =>
    choices.length === 0 ? [] : [{ kind: 'part', key, label, choices }];
  const axle = rig[end];
  const settings = Object.keys(axle.shock.settings);
  return [
    ...part('stop', 'Bump stop', Object.keys(rig.shelf.stops)),
    ...part('spring', 'Spring', Object.keys(rig.shelf.springs)),
    ...part('shockSetting', 'Shock setting', settings.length > 1 ? settings : []),
    typed('seatAndStopDrop', 'Seat and stop lowered', 'length', 'Coil seat and stop together, on the frame'),
    typed('stopSpacer', 'Stop spacer', 'length', 'Solid piece behind the stop or under its pad'),
    typed('springSpacer', 'Spring spacer', 'length', 'On the same coil; coil bind comes nearer'),
    typed('stopGap', 'Stop gap set to', 'length', 'Instead of the gap that follows from the lengths'),
    ...(axle.strap === null
      ? []
      : [typed('strapLength', 'Strap length', 'length', 'Free length of the new strap')]),
    typed('addedLoad', 'Load added', 'mass', 'On this end, above the springs'),
    typed('tyrePressure', 'Tyre pressure', 'pressure', 'Changes the tyre, not the gaps'),
  ];
}
