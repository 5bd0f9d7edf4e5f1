import type { Rig, SetupPatch } from '@lastinch/core';
import type { RigEdit } from '../../document/rig-document.ts';
import type { Workbench } from '../../workbench.ts';
import { setupEdits } from '../travel/new-proposal.ts';

/** A name under which the setup stands already with the same contents, or a free one: `choice-7-trail`, `…-2`. */
function placeFor(rig: Rig, patch: SetupPatch): { readonly name: string; readonly isThere: boolean } {
  const wanted = contentsOf(patch);
  for (let number = 1; ; number += 1) {
    const name = number === 1 ? patch.id : `${patch.id}-${number}`;
    const there = rig.setups[name];
    if (there === undefined) return { name, isThere: false };
    if (contentsOf(there) === wanted) return { name, isThere: true };
  }
}

/** What a setup changes, without its name and notes. */
const contentsOf = (patch: SetupPatch): string =>
  JSON.stringify(
    [...setupEdits(patch, 'x', '')]
      .filter(({ path }: RigEdit) => path.length > 3)
      .sort((a, b) => byPath(a, b)),
  );

const byPath = (a: RigEdit, b: RigEdit): number => (a.path.join('.') < b.path.join('.') ? -1 : 1);

/** Writes a setup into the rig file, unless it stands there already, and makes it the proposed one everywhere. */
export function propose(workbench: Workbench, patch: SetupPatch): void {
  const { rig } = workbench.document.get();
  if (rig === null) return;
  const { name, isThere } = placeFor(rig, patch);
  if (!isThere)
    workbench.edit(setupEdits(patch, name, patch.notes), { label: `setup ${name}`, gesture: null });
  workbench.choose({ proposed: name });
}
