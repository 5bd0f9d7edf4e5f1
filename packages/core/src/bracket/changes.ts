import { type BracketMeasures, depthOf } from './measures.ts';

/** What could be built otherwise, one at a time. */
export const BRACKET_CHANGES = [
  'thicker-wall',
  'deeper-section',
  'add-gussets',
  'taller-gussets',
  'shorter-standoff',
  'thicker-plate',
  'larger-weld',
  'wider-bolts',
] as const;
export type BracketChange = (typeof BRACKET_CHANGES)[number];

const SIXTEENTH = 0.0254 / 16;

/** How much of each [m]: sixteenths of an inch, so that both systems show what was reckoned with. */
export const CHANGE_STEPS = {
  'thicker-wall': SIXTEENTH,
  'deeper-section': 8 * SIXTEENTH,
  'add-gussets': 3 * SIXTEENTH,
  'taller-gussets': 8 * SIXTEENTH,
  'shorter-standoff': 12 * SIXTEENTH,
  'thicker-plate': SIXTEENTH,
  'larger-weld': SIXTEENTH,
  'wider-bolts': 12 * SIXTEENTH,
} as const satisfies Readonly<Record<BracketChange, number>>;

/** The bracket with one thing built otherwise; null where it has no such thing, or no room for it. */
export function changed(bracket: BracketMeasures, change: BracketChange): BracketMeasures | null {
  const step = CHANGE_STEPS[change];
  const { section, gusset, plate, weldLeg, bolts, standoff, kind } = bracket;
  const isBeam = kind === 'tower' || kind === 'bolt-on';
  switch (change) {
    case 'thicker-wall':
      if (section === null || section.shape === 'bar') return null;
      return { ...bracket, section: { ...section, wall: section.wall + step } };
    case 'deeper-section':
      if (section === null) return null;
      return {
        ...bracket,
        section:
          section.shape === 'round'
            ? { ...section, diameter: section.diameter + step }
            : { ...section, depth: section.depth + step },
      };
    case 'add-gussets':
      if (!isBeam || section === null || gusset !== null) return null;
      return {
        ...bracket,
        gusset: { thickness: step, count: 2, reach: 0.6 * standoff, height: 0.6 * depthOf(section) },
      };
    case 'taller-gussets':
      return gusset && { ...bracket, gusset: { ...gusset, height: gusset.height + step } };
    case 'shorter-standoff':
      return isBeam && standoff > 2 * step ? { ...bracket, standoff: standoff - step } : null;
    case 'thicker-plate':
      return plate && { ...bracket, plate: { ...plate, thickness: plate.thickness + step } };
    case 'larger-weld':
      return weldLeg === null ? null : { ...bracket, weldLeg: weldLeg + step };
    case 'wider-bolts':
      return bolts && { ...bracket, bolts: { ...bolts, spread: bolts.spread + step } };
  }
}
