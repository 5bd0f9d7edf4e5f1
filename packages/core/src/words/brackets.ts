import type { UnitSystem } from '../quantity/quantity.ts';
import { plain } from './amounts.ts';
import { way } from './ways.ts';

/** `the bracket of the stop`. */
export const bracketName = (mount: string): string => `the bracket of the ${mount}`;

/** What gives way, in the words of a shop. */
export const BRACKET_PART_NAMES: Readonly<Record<string, string>> = {
  'beam-bending': 'bending at the root',
  'beam-shear': 'shear of its walls',
  'strut-buckling': 'buckling of the tube',
  'strut-bending': 'the tube pressed beside its axis',
  'plate-bending': 'bending of the plate',
  weld: 'the weld',
  bolts: 'the bolts',
  'bolt-bearing': 'the wall under the bolts',
  'stud-shear': 'the stud in shear',
  'stud-strip': 'the thread in the captive nut',
};

/** What was not looked at. */
export const NOT_CHECKED_TEXTS: Readonly<Record<string, string>> = {
  'rail-wall': 'crush and tearing of the rail wall behind it',
  'rail-bending': 'bending and twist of the rail or tube that carries it',
  'weld-quality': 'whether the weld is sound: fusion, undercut, steel softened by heat',
  dents: 'dents of thin walls under the pad',
  corrosion: 'rust, old cracks and earlier repairs',
  weld: 'its weld, of which nothing was told',
  stud: 'the stud of the stop, of which nothing was told',
  plate: 'the plate under the stop, of which nothing was told',
  lean: 'a push from the side: nothing is known of the lean, so none was counted',
  'past-table': 'the force of the stop past the last point of its table, where it is a guess',
  metal: 'the case of metal on metal, since nothing was driven',
  'turning-load': 'a load beside the middle of the plate',
  prying: 'prying of the bolted flange and how tight the bolts are',
  swing: 'how far it swings under a hit',
};

/** A change that could be built, as an order. */
export function bracketChangeText(change: string, step: number, system: UnitSystem): string {
  const by = plain(step, 'length', system);
  const orders: Readonly<Record<string, string>> = {
    'thicker-wall': `Wall thicker by ${by}`,
    'deeper-section': `Section deeper by ${by}`,
    'add-gussets': `Two gussets of ${by}, in the plane of the load`,
    'taller-gussets': `Gussets taller by ${by} at the rail`,
    'shorter-standoff': `Load line closer to the rail by ${by}`,
    'thicker-plate': `Plate thicker by ${by}`,
    'larger-weld': `Weld leg larger by ${by}`,
    'wider-bolts': `Rows of bolts farther apart by ${by}`,
  };
  return orders[change] ?? 'Build it stronger';
}

interface Life {
  readonly demand: string;
  readonly part: string;
  readonly detail: string;
  readonly pass: number | null;
  readonly loops: number;
  readonly passes: { readonly least: number | null; readonly most: number | null };
}

/** More than anybody drives [m]. */
const FOR_EVER = 1e8;

/** When it cracks, by Miner's sum, with the detail that was taken. */
export function crackText({ demand, part, detail, pass, loops, passes }: Life, system: UnitSystem): string {
  const where = `${demand}: ${loops} ${loops === 1 ? 'loop' : 'loops'} a pass; ${BRACKET_PART_NAMES[part] ?? part}, ${detail}`;
  const far = (count: number | null): string =>
    count === null || count * (pass ?? 1) > FOR_EVER
      ? 'more than anybody drives'
      : `${Number(count.toPrecision(2))} passes${pass === null ? '' : ` (${way(count * pass, system)})`}`;
  return `${where}, cracks after ${far(passes.least)}, class less its factor, to ${far(passes.most)}, class alone.`;
}

/** Said under every answer about brackets. */
export const BRACKET_CAUTIONS: readonly string[] = [
  'A factor of safety here is a formula on your readings, not a certificate and not a test. Welds on frame and axle are for qualified people, and the law and the inspection where you drive decide whether a bracket may be made or moved at all.',
  'Look at welds and the rail beside them for cracks after the first drive, and before every trip; a bracket that bent once is scrap.',
];
