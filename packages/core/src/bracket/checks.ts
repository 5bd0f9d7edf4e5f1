import { THREADS } from '../rig/thread.ts';
import { boltBearing } from './bearing.ts';
import { type BeamAnswer, bendCantilever } from './cantilever.ts';
import { pressedAside, strutLoad } from './column.ts';
import { DETAILS, type Detail, type DetailName } from './fatigue.ts';
import { type BracketMeasures, depthOf, sectionOf, widthOf } from './measures.ts';
import { rectanglePlateUnderPatch, roundPlateUnderPatch } from './plate.ts';
import { type Section, withGussets } from './section.ts';
import { BOLT_CLASSES, boltUse, SHEAR_SHARE, stressArea, stripAreas } from './thread.ts';
import { twistStress } from './twist.ts';
import { type WeldRun, weldedAround, weldedRound, weldGroup, weldStress } from './weld-lines.ts';

/** What can give way, each by a formula of its own. */
export const BRACKET_PARTS = [
  'beam-bending',
  'beam-shear',
  'strut-buckling',
  'strut-bending',
  'plate-bending',
  'weld',
  'bolts',
  'bolt-bearing',
  'stud-shear',
  'stud-strip',
] as const;
export type BracketPart = (typeof BRACKET_PARTS)[number];

/** Force on a bracket: along the load line, and beside it (lean) [N]. */
export interface BracketLoad {
  readonly force: number;
  readonly sideways: number;
}

/** One way to give way. */
export interface BracketCheck {
  readonly part: BracketPart;
  /** Bears ÷ carries: against yield or proof; below 1 it gives. */
  readonly factor: number;
  /** Stress or force that it carries, and that it bears; null where only their ratio has a meaning. */
  readonly carries: number | null;
  readonly bears: number | null;
  readonly in: 'pressure' | 'force';
  /** Factor that is enough; null: what the owner wants. */
  readonly needs: number | null;
  /** Detail by which it cracks under loads that come again, and its stress; null where none is known. */
  readonly cracks: { readonly name: DetailName; readonly detail: Detail; readonly stress: number } | null;
}

/** Young's modulus and Poisson's ratio of any steel. @source common practice, no source */
export const STEEL = { modulus: 205e9, poisson: 0.3 } as const;
/** Yield in shear ÷ yield in tension. @source von Mises */
const SHEAR_YIELD = 1 / Math.sqrt(3);
/** A tube that stands on the frame with its other end free. */
const FREE_END = 2;
const STRESS = { in: 'pressure', needs: null } as const;

/**
 * All ways in which a bracket can give way, as far as it was told, under one load.
 *
 * @returns one entry a way; factors grow with 1/load but for a strut, whose bow grows faster
 * @validity static strength at the first yield; local dents of thin walls and of the rail are not in it
 */
export function bracketChecks(bracket: BracketMeasures, load: BracketLoad): readonly BracketCheck[] {
  const { kind, plate } = bracket;
  return [
    ...(kind === 'tube' ? strutChecks(bracket, load) : []),
    ...(kind === 'tower' || kind === 'bolt-on' ? beamChecks(bracket, load) : []),
    ...(plate ? [plateCheck(plate, bracket, load)] : []),
    ...weldChecks(bracket, load),
    ...boltChecks(bracket, load),
    ...studChecks(bracket, load),
  ];
}

const by = (part: BracketPart, carries: number, bears: number, cracks: BracketCheck['cracks'] = null) => ({
  part,
  factor: bears / carries,
  carries,
  bears,
  ...STRESS,
  cracks,
});

const cracksAt = (name: DetailName, stress: number) => ({ name, detail: DETAILS[name], stress });

/** Section at a distance from the load line, gussets and all. */
export function sectionAlong({ section, gusset, standoff }: BracketMeasures): (x: number) => Section {
  if (section === null) throw new Error('a beam has a section');
  const tube = sectionOf(section);
  return (x) => {
    const along = x - (standoff - (gusset?.reach ?? 0));
    if (gusset === null || along <= 0) return tube;
    return withGussets(tube, depthOf(section), { ...gusset, height: (gusset.height * along) / gusset.reach });
  };
}

/** How the beam of a bracket bends under a force; null where it is none. */
export function bentBy(bracket: BracketMeasures, force: number): BeamAnswer | null {
  const { kind, section, standoff, gusset } = bracket;
  if (section === null || kind === 'tube' || kind === 'plate') return null;
  return bendCantilever(
    {
      length: standoff,
      sectionAt: sectionAlong(bracket),
      breaks: gusset ? [standoff - gusset.reach] : [],
      modulus: STEEL.modulus,
    },
    force,
  );
}

function beamChecks(bracket: BracketMeasures, { force, sideways }: BracketLoad): readonly BracketCheck[] {
  const { section, standoff, offset } = bracket;
  const bent = bentBy(bracket, force);
  if (section === null || bent === null) return [];
  const tube = sectionOf(section);
  const side = (sideways * standoff * tube.sideFibre) / tube.sideInertia;
  const twist = twistStress(section, force * offset);
  const bending = Math.hypot(bent.peakStress + side, Math.sqrt(3) * twist);
  const shear = (tube.shearPeak * force) / tube.shearArea + twist;
  return [
    by('beam-bending', bending, bracket.yield, cracksAt('toe of a fillet weld', bent.rootStress + side)),
    by('beam-shear', shear, SHEAR_YIELD * bracket.yield),
  ];
}

function strutChecks(bracket: BracketMeasures, { force, sideways }: BracketLoad): readonly BracketCheck[] {
  if (bracket.section === null) return [];
  const strut = {
    section: sectionOf(bracket.section),
    length: bracket.standoff,
    fixity: FREE_END,
    modulus: STEEL.modulus,
    yield: bracket.yield,
  };
  const { critical } = strutLoad(strut);
  const stress = pressedAside(strut, { force, aside: bracket.offset, sideways });
  return [
    {
      part: 'strut-buckling',
      factor: critical / force,
      carries: force,
      bears: critical,
      in: 'force',
      needs: null,
      cracks: null,
    },
    by('strut-bending', stress, bracket.yield, cracksAt('toe of a fillet weld', stress)),
  ];
}

function plateCheck(
  { edges, isRound, thickness, pad }: NonNullable<BracketMeasures['plate']>,
  { yield: strength }: BracketMeasures,
  { force }: BracketLoad,
): BracketCheck {
  const sheet = { thickness, ...STEEL };
  const { centreStress, edgeStress } = isRound
    ? roundPlateUnderPatch(sheet, edges[0] / 2, pad / 2, force)
    : rectanglePlateUnderPatch(sheet, edges, pad / 2, force);
  const stress = Math.max(centreStress, edgeStress);
  return by('plate-bending', stress, strength, cracksAt('toe of a fillet weld', edgeStress));
}

function weldRuns({ section, gusset }: BracketMeasures): readonly WeldRun[] {
  if (section === null) return [];
  if (section.shape === 'round') return weldedRound(section.diameter);
  const around = weldedAround(widthOf(section), depthOf(section));
  if (gusset === null) return around;
  // Both sides of each gusset, below the section.
  const top = -depthOf(section) / 2;
  const runs = Array.from({ length: 2 * gusset.count }, (_, k): WeldRun => {
    const y = ((k % 2 === 0 ? -1 : 1) * widthOf(section)) / 2;
    return { from: [y, top], to: [y, top - gusset.height] };
  });
  return [...around, ...runs];
}

function weldChecks(bracket: BracketMeasures, { force, sideways }: BracketLoad): readonly BracketCheck[] {
  const { weldLeg, kind, standoff, offset } = bracket;
  const runs = weldRuns(bracket);
  if (weldLeg === null || runs.length === 0) return [];
  const isStrut = kind === 'tube';
  const stress = weldStress(weldGroup(runs), weldLeg, {
    across: isStrut ? sideways : force,
    along: isStrut ? force : 0,
    bending: isStrut ? force * offset + sideways * standoff : force * standoff,
    sideBending: isStrut ? 0 : sideways * standoff,
    turning: isStrut ? 0 : force * offset,
  });
  return [by('weld', stress, SHEAR_YIELD * bracket.yield, cracksAt('root of a fillet weld', stress))];
}

/** Rows above and below share the moment, all bolts the shear. */
function boltChecks(
  { bolts, ultimate, standoff }: BracketMeasures,
  { force, sideways }: BracketLoad,
): readonly BracketCheck[] {
  if (bolts === null) return [];
  const size = THREADS[bolts.thread];
  const { proof, ultimate: breaks } = BOLT_CLASSES[bolts.grade];
  const area = stressArea(size, size.form);
  const tension = (force * standoff) / bolts.spread / Math.max(1, bolts.count / 2);
  const shear = Math.hypot(force, sideways) / bolts.count;
  const use = boltUse({ tension, shear }, { tension: proof * area, shear: SHEAR_SHARE * proof * area });
  const bears = boltBearing({
    boltDiameter: size.diameter,
    holeDiameter: size.diameter + 0.001,
    wall: bolts.wall,
    edge: bolts.edge,
    wallUltimate: ultimate,
    boltUltimate: breaks,
  });
  return [
    {
      part: 'bolts',
      factor: 1 / Math.sqrt(use),
      carries: tension,
      bears: proof * area,
      in: 'force',
      needs: null,
      cracks: cracksAt('bolt in tension', tension / area),
    },
    {
      part: 'bolt-bearing',
      factor: bears / shear,
      carries: shear,
      bears,
      in: 'force',
      needs: null,
      cracks: null,
    },
  ];
}

/** A stop presses its foot on the bracket: its stud takes what is beside the load, and must not strip its nut. */
function studChecks({ stud, yield: strength }: BracketMeasures, load: BracketLoad): readonly BracketCheck[] {
  if (stud === null) return [];
  const size = THREADS[stud.thread];
  const { proof } = BOLT_CLASSES[stud.grade];
  const area = stressArea(size, size.form);
  // The tip rubs on its pad, beside the lean: it cannot push harder than it slides.
  const shear = load.sideways + FRICTION * load.force;
  const strip = stripAreas(size, stud.engaged);
  const held = SHEAR_YIELD * Math.min(strip.nut * strength, strip.bolt * proof);
  const pull = proof * area;
  const nut = { carries: pull, bears: held, in: 'force', needs: 1, cracks: null } as const;
  return [
    by('stud-shear', shear / area, SHEAR_SHARE * proof),
    { part: 'stud-strip', factor: held / pull, ...nut },
  ];
}

/** Rubber or polyurethane on a steel pad, dusty: common practice, no source. */
const FRICTION = 0.3;
