import { ENDS } from '../finding/place.ts';
import type { Setup, SetupEnd } from '../rig/setup.ts';
import { resolveSetup } from '../rig/setup-resolve.ts';
import { figureOfReading } from '../stance/columns.ts';
import { PLACE_NAMES } from '../words/places.ts';
import { type SheetAnswers, written } from './answers.ts';
import { type SheetSection, say } from './sheet.ts';

/** Shocks, tyres and bars as built, and in every setup of the file that only sets them: the trims. */
export function settingsSection(answers: SheetAnswers): SheetSection {
  const shown = [answers.setup, ...trimsOf(answers.setup)];
  return {
    id: 'settings',
    title: 'Settings, trail and road',
    blocks: [
      {
        kind: 'table',
        heads: ['', ...shown.map(({ id }, k) => (k === 0 ? `${id}, as built` : id))],
        rows: ENDS.flatMap((end) => rowsOf(shown, (setup) => setup.ends[end], PLACE_NAMES[end], answers)),
      },
      say(
        'Set pressures cold. After a change of setting, one thing at a time, and the same stretch driven again.',
      ),
    ],
  };
}

/** Setups that change nothing but what is set by hand. */
function trimsOf({ id, rig }: Setup): readonly Setup[] {
  const BY_HAND = new Set(['shockSetting', 'tyrePressure', 'antiRollBar']);
  return Object.entries(rig.setups).flatMap(([name, { front, rear }]) => {
    const changed = [...Object.keys(front), ...Object.keys(rear)];
    if (name === id || changed.length === 0 || !changed.every((key) => BY_HAND.has(key))) return [];
    const setup = resolveSetup(rig, name);
    return setup.ok ? [setup.value] : [];
  });
}

function rowsOf(
  setups: readonly Setup[],
  endOf: (setup: Setup) => SetupEnd,
  place: string,
  answers: SheetAnswers,
): readonly (readonly string[])[] {
  const row = (name: string, of: (end: SetupEnd) => string): readonly string[] => [
    `${place}: ${name}`,
    ...setups.map((setup) => of(endOf(setup))),
  ];
  return [
    row('shocks', ({ shockSetting, base }) => shockSetting.id || base.shock.setting || 'one setting'),
    row('tyres', ({ patch, base }) => {
      const pressure = patch.tyrePressure ?? base.tyre.pressure;
      return pressure ? written(figureOfReading(pressure), answers) : 'not measured';
    }),
    row('anti-roll bar', ({ antiRollBar, base }) =>
      base.antiRollBar ? (antiRollBar ? 'on' : 'off') : 'none',
    ),
  ];
}
