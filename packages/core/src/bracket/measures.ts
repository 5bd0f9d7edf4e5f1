import type { Bracket, BracketBolts, BracketSection, BracketStud } from '../rig/bracket.ts';
import type { ValueOf } from '../rig/reading.ts';
import { barSection, boxSection, roundSection, type Section } from './section.ts';

/** A bracket as numbers, at the nominal readings or in a trial [SI]. */
export interface BracketMeasures {
  readonly kind: Bracket['kind'];
  /** 0 for a plate. */
  readonly standoff: number;
  readonly offset: number;
  readonly section: SectionMeasures | null;
  readonly gusset: {
    readonly thickness: number;
    readonly count: number;
    readonly reach: number;
    readonly height: number;
  } | null;
  readonly plate: {
    readonly edges: readonly [number, number];
    readonly isRound: boolean;
    readonly thickness: number;
    readonly pad: number;
  } | null;
  readonly weldLeg: number | null;
  readonly bolts:
    | (Pick<BracketBolts, 'thread' | 'grade' | 'count'> & {
        readonly spread: number;
        readonly wall: number;
        readonly edge: number;
      })
    | null;
  readonly stud: (Pick<BracketStud, 'thread' | 'grade'> & { readonly engaged: number }) | null;
  readonly yield: number;
  readonly ultimate: number;
}

export type SectionMeasures =
  | { readonly shape: 'box'; readonly width: number; readonly depth: number; readonly wall: number }
  | { readonly shape: 'round'; readonly diameter: number; readonly wall: number }
  | { readonly shape: 'bar'; readonly width: number; readonly depth: number };

/** @param at – readings as they are in one trial */
export function measuresOf(bracket: Bracket, at: ValueOf): BracketMeasures {
  const { standoff, section, gusset, plate, weldLeg, bolts, stud } = bracket;
  return {
    kind: bracket.kind,
    standoff: standoff ? at(standoff) : 0,
    offset: Math.max(0, at(bracket.offset)),
    section: section && sectionMeasures(section, at),
    gusset: gusset && {
      thickness: at(gusset.thickness),
      count: gusset.count,
      reach: at(gusset.reach),
      height: at(gusset.height),
    },
    plate: plate && {
      edges: [at(plate.width), at(plate.length)],
      isRound: plate.isRound,
      thickness: at(plate.thickness),
      pad: at(plate.pad),
    },
    weldLeg: weldLeg && at(weldLeg),
    bolts: bolts && {
      thread: bolts.thread,
      grade: bolts.grade,
      count: bolts.count,
      spread: at(bolts.spread),
      wall: at(bolts.wall),
      edge: at(bolts.edge),
    },
    stud: stud && { thread: stud.thread, grade: stud.grade, engaged: at(stud.engaged) },
    yield: at(bracket.yield),
    ultimate: at(bracket.ultimate),
  };
}

function sectionMeasures(section: BracketSection, at: ValueOf): SectionMeasures {
  switch (section.shape) {
    case 'box':
      return { shape: 'box', width: at(section.width), depth: at(section.depth), wall: at(section.wall) };
    case 'round':
      return { shape: 'round', diameter: at(section.diameter), wall: at(section.wall) };
    case 'bar':
      return { shape: 'bar', width: at(section.width), depth: at(section.depth) };
  }
}

/** The cut through the bracket without gussets. */
export function sectionOf(section: SectionMeasures): Section {
  if (section.shape === 'round') return roundSection(section);
  return section.shape === 'box' ? boxSection(section) : barSection(section);
}

export const depthOf = (section: SectionMeasures): number =>
  section.shape === 'round' ? section.diameter : section.depth;
export const widthOf = (section: SectionMeasures): number =>
  section.shape === 'round' ? section.diameter : section.width;
