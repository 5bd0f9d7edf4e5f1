import { type UnitSystem, unitsOfRig } from '@lastinch/core';
import type { RigDocument } from './document/rig-document.ts';
import { useStore } from './store.ts';
import type { Workbench } from './workbench.ts';

/** Units in which figures are shown: those that were chosen, else those in which the owner typed. */
export function useUnits(workbench: Workbench): UnitSystem {
  const chosen = useStore(workbench.session, (session) => session.system);
  const typed = useStore(workbench.document, typedIn);
  return chosen ?? typed;
}

const typedIn = ({ rig }: RigDocument): UnitSystem => (rig === null ? 'shop' : unitsOfRig(rig));
