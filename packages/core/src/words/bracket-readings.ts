import { MOUNT_NAMES } from '../rig/bracket.ts';

const PARTS: Readonly<Record<string, string>> = {
  standoff: 'standoff',
  offset: 'load beside the middle',
  'section.width': 'width of the section',
  'section.depth': 'depth of the section',
  'section.diameter': 'diameter of the tube',
  'section.wall': 'wall of the section',
  'gusset.thickness': 'thickness of the gussets',
  'gusset.reach': 'reach of the gussets',
  'gusset.height': 'height of the gussets',
  'plate.width': 'width of the plate',
  'plate.length': 'length of the plate',
  'plate.diameter': 'diameter of the plate',
  'plate.thickness': 'thickness of the plate',
  'plate.pad': 'pad on the plate',
  'weld.leg': 'weld leg',
  'bolts.spread': 'distance between the rows of bolts',
  'bolts.wall': 'wall under the bolts',
  'bolts.edge': 'edge distance of the bolts',
  'stud.engaged': 'thread of the stud in its nut',
  yield: 'yield strength',
  ultimate: 'breaking strength',
};

/** Names of what was read of brackets, below an end. */
export const BRACKET_READINGS: Readonly<Record<string, string>> = Object.fromEntries(
  MOUNT_NAMES.flatMap((mount) =>
    Object.entries(PARTS).map(([part, name]) => [
      `bracket.${mount}.${part}`,
      `${name} of the ${mount}'s bracket`,
    ]),
  ),
);
