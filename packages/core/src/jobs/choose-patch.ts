import type { Candidate } from '../choose/space.ts';
import { ENDS, type End } from '../finding/place.ts';
import type { Trim } from '../rig/choices.ts';
import type { Rig } from '../rig/rig.ts';
import type { EndPatch, SetupPatch } from '../rig/setup-patch.ts';
import { AS_SET, type ChoiceTable, type HardAxis, type HardOption } from './choose-table.ts';

/** What is set by hand for a trim, at each end. */
export type TrimPatch = Readonly<Record<End, EndPatch>>;

export const AS_IT_IS: TrimPatch = { front: {}, rear: {} };

/** A change that a candidate makes. */
export interface Change {
  readonly axis: HardAxis;
  readonly option: HardOption;
}

/** The hard changes of a candidate, in the order of the axes. */
export function changesOf({ hard, hasSettings }: ChoiceTable, candidate: Candidate): readonly Change[] {
  const first = hasSettings ? 1 : 0;
  return hard.flatMap((axis, k): readonly Change[] => {
    const option = axis.options[candidate[first + k]];
    return option ? [{ axis, option }] : [];
  });
}

/** Whether a candidate leaves the settings as they are. */
export const leavesSettings = ({ hasSettings }: ChoiceTable, candidate: Candidate): boolean =>
  !hasSettings || candidate[0] === AS_SET;

/** Setup that a candidate is in one trim: where he starts, the hard changes, what is set. */
export function setupPatchOf(
  rig: Rig,
  changes: readonly Change[],
  settings: TrimPatch,
  name: { readonly id: string; readonly notes: string },
): SetupPatch {
  const from = startOf(rig);
  const [front, rear] = ENDS.map((end) => {
    let patch: EndPatch = from[end];
    for (const { axis, option } of changes) {
      if (axis.end !== end) continue;
      const notch = option.patch.notch && { notch: { ...patch.notch, ...option.patch.notch } };
      patch = { ...patch, ...option.patch, ...notch };
    }
    return { ...patch, ...settings[end] };
  });
  return { ...name, front, rear };
}

function startOf({ choices, setups }: Rig): Pick<SetupPatch, End> {
  const from = choices?.from;
  return from !== undefined && Object.hasOwn(setups, from) ? setups[from] : AS_IT_IS;
}

/** Name of the setup that a candidate is in a trim, as it may stand in a rig file. */
export const setupName = (index: number, trim: Trim): string => `choice-${index + 1}-${trim}`;
