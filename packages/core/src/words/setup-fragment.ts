import { ENDS, type End } from '../finding/place.ts';
import { formatFigure } from '../quantity/format.ts';
import type { UnitSystem } from '../quantity/quantity.ts';
import type { Reading } from '../rig/reading.ts';
import type { EndPatch, SetupPatch } from '../rig/setup-patch.ts';

const NAMES = ['stop', 'spring', 'shockSetting', 'antiRollBar'] as const;
const READINGS = [
  'stopGap',
  'stopSpacer',
  'seatAndStopDrop',
  'springSpacer',
  'tyrePressure',
  'addedLoad',
  'strapLength',
] as const;

/**
 * A setup as it is typed under `setups:` of a rig file; moved links and another shaft are left out, with a comment that
 * says so.
 * @param notes – one line, written as a comment
 */
export function setupFragment(patch: SetupPatch, notes: string, system: UnitSystem): readonly string[] {
  return [`  # ${notes}`, `  ${patch.id}:`, ...ENDS.flatMap((end) => endLines(end, patch[end], system))];
}

function endLines(end: End, patch: EndPatch, system: UnitSystem): readonly string[] {
  const lines = [
    ...NAMES.flatMap((name) => (patch[name] === undefined ? [] : [`${name}: ${patch[name]}`])),
    ...READINGS.flatMap((name) => {
      const reading = patch[name];
      return reading === undefined ? [] : [`${name}: ${typedAs(reading, system)}`];
    }),
    ...(patch.notch === undefined
      ? []
      : [
          'notch:',
          ...Object.entries(patch.notch).map(([contact, size]) => `  ${contact}: ${typedAs(size, system)}`),
        ]),
    ...(patch.links || patch.shaft ? ['# links and shaft as in the setup that was started from'] : []),
  ];
  return lines.length === 0 ? [] : [`    ${end}:`, ...lines.map((line) => `      ${line}`)];
}

const typedAs = (reading: Reading, system: UnitSystem): string => {
  const { text, dimension, value, plus, minus } = reading;
  return text !== ''
    ? text
    : formatFigure({ dimension, value, tolerance: Math.max(plus, minus) }, { system });
};
