import type { Bracket } from '../rig/bracket.ts';

/** What nothing here can tell of a bracket, by kind or because it was not told. */
export const NOT_CHECKED = [
  'rail-wall',
  'rail-bending',
  'weld-quality',
  'dents',
  'corrosion',
  'weld',
  'stud',
  'plate',
  'lean',
  'past-table',
  'metal',
  'turning-load',
  'prying',
  'swing',
] as const;
export type NotChecked = (typeof NOT_CHECKED)[number];

export interface LoadKnown {
  readonly isLeanUnknown: boolean;
  readonly isPastTable: boolean;
  /** A load that was thought of: nobody drove. */
  readonly isThoughtOf: boolean;
}

export function notCheckedOf(bracket: Bracket, load: LoadKnown): readonly NotChecked[] {
  const { kind, weldLeg, stud, plate, bolts, mount } = bracket;
  return NOT_CHECKED.filter((what) => {
    switch (what) {
      case 'weld':
        return weldLeg === null && (kind === 'tower' || kind === 'tube');
      case 'stud':
        return stud === null && mount === 'stop';
      case 'plate':
        return plate === null && mount === 'stop';
      case 'lean':
        return load.isLeanUnknown;
      case 'past-table':
        return load.isPastTable;
      case 'metal':
        return load.isThoughtOf && mount === 'stop';
      case 'turning-load':
        return kind === 'plate';
      case 'prying':
        return bolts !== null;
      case 'swing':
        return kind === 'plate' || kind === 'tube';
      case 'weld-quality':
        return kind !== 'bolt-on';
      default:
        return true;
    }
  });
}
