import { ENDS, type End } from '../finding/place.ts';
import type { Reading } from '../rig/reading.ts';
import { AS_MEASURED } from '../rig/setup.ts';
import type { EndPatch, SetupPatch } from '../rig/setup-patch.ts';
import { linkPatchOf, present } from './build-link-patch.ts';
import { TAPED } from './build-spring.ts';
import type { Gaps, ReadingSpec } from './gaps.ts';

/** The named patches of a file. That the parts they name exist is checked once the rig stands. */
export function buildSetups(gaps: Gaps): Readonly<Record<string, SetupPatch>> {
  const patches = gaps.names('setups').map((id): [string, SetupPatch] => {
    if (id === AS_MEASURED) {
      gaps.problem(
        'rig-inconsistent',
        `setups.${id}`,
        id,
        'another name: this one is the rig without any change',
      );
    }
    const [front, rear] = ENDS.map((end) => buildPatch(gaps, id, end)) as [EndPatch, EndPatch];
    return [id, { id, notes: gaps.text(`setups.${id}.notes`) ?? '', front, rear }];
  });
  return Object.fromEntries(patches);
}

function buildPatch(gaps: Gaps, id: string, end: End): EndPatch {
  const key = `setups.${id}.${end}`;
  const names = {
    stop: gaps.text(`${key}.stop`),
    spring: gaps.text(`${key}.spring`),
    shockSetting: gaps.text(`${key}.shockSetting`),
  };
  const readings: Partial<Record<ChangedReading, Reading>> = {};
  for (const name of Object.keys(CHANGED) as ChangedReading[]) {
    const reading = gaps.typedReading(`${key}.${name}`, CHANGED[name]);
    if (reading) readings[name] = reading;
  }
  const notch: Record<string, Reading> = {};
  for (const contact of gaps.names(`${key}.notch`)) {
    const reading = gaps.typedReading(`${key}.notch.${contact}`, TAPED);
    if (reading) notch[contact] = reading;
  }
  const bar = gaps.text(`${key}.antiRollBar`);
  return {
    ...present(names),
    ...(bar === 'off' || bar === 'on' ? { antiRollBar: bar } : {}),
    ...readings,
    ...(Object.keys(notch).length > 0 ? { notch } : {}),
    ...linkPatchOf(gaps, key),
  };
}

type ChangedReading = Exclude<
  keyof EndPatch,
  'stop' | 'spring' | 'shockSetting' | 'antiRollBar' | 'notch' | 'links' | 'shaft'
>;

const CHANGED: Readonly<Record<ChangedReading, ReadingSpec>> = {
  stopGap: TAPED,
  stopSpacer: TAPED,
  seatAndStopDrop: TAPED,
  springSpacer: TAPED,
  tyrePressure: { dimension: 'pressure', tool: 'gauge-tolerance' },
  addedLoad: { dimension: 'mass', tool: 'scale-tolerance' },
  strapLength: TAPED,
};
