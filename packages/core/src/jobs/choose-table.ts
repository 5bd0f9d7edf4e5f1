import type { ChoiceSpace } from '../choose/space.ts';
import { ENDS, type End } from '../finding/place.ts';
import { HARD_CHOICES, type HardChoice } from '../rig/choice-names.ts';
import { type Choices, type SizeOptions, TRIMS, type Trim } from '../rig/choices.ts';
import type { Reading } from '../rig/reading.ts';
import type { EndPatch } from '../rig/setup-patch.ts';

/** One thing that may be done at one end, with its price and hours. */
export interface HardOption {
  /** Name of the part; empty where a length is set. */
  readonly part: string;
  readonly size: Reading | null;
  readonly patch: EndPatch;
  readonly price: number;
  /** [h] */
  readonly hours: number;
}

/** What is bolted, cut or set in lengths; option 0 leaves it as it is. */
export interface HardAxis {
  /** As `keep` of a rig file names it: `front.stop`, `front.notch.sump`. */
  readonly id: string;
  readonly end: End;
  readonly of: HardChoice | 'notch';
  /** Contact that is notched; empty for all others. */
  readonly contact: string;
  readonly options: readonly (HardOption | null)[];
}

/** What is set by hand at one end: the values to try, in the order of the file. */
export interface SoftAxis {
  readonly end: End;
  readonly patches: readonly EndPatch[];
}

/** All that may be chosen, as a space to be searched. */
export interface ChoiceTable {
  /** One an axis of the space, in its order, after the axis of the settings. */
  readonly hard: readonly HardAxis[];
  readonly soft: Readonly<Record<Trim, readonly SoftAxis[]>>;
  /** Whether the first axis is that of the settings: 0 as they are, 1 the best for each trim. */
  readonly hasSettings: boolean;
  readonly space: ChoiceSpace;
}

export const SETTINGS = 'settings';
/** Options of the settings. */
export const [AS_SET, BEST_SET] = [0, 1];

/** Lays out what the owner lists; every axis begins with leaving it as it is. */
export function choiceTable(choices: Choices): ChoiceTable {
  const hard = ENDS.flatMap((end) => hardAxes(choices, end));
  const softOf = (trim: Trim) => ENDS.flatMap((end) => softAxes(choices, end, trim));
  const soft = { trail: softOf('trail'), road: softOf('road') };
  const driven = new Set(
    [...choices.drive, ...(choices.fastest ? [choices.fastest] : [])].map(({ trim }) => trim),
  );
  const hasSettings = TRIMS.some((trim) => driven.has(trim) && soft[trim].length > 0);
  const axes = [
    ...(hasSettings ? [{ id: SETTINGS, options: 2, isOrdered: false }] : []),
    ...hard.map(({ id, options }) => ({ id, options: options.length, isOrdered: rises(options) })),
  ];
  return { hard, soft, hasSettings, space: { axes, home: axes.map(() => 0) } };
}

/** Lengths from nothing upward stand in order; a strap replaces another and does not begin at nothing. */
function rises(options: readonly (HardOption | null)[]): boolean {
  const sizes = options.map((option) => option?.size?.value ?? 0);
  return (
    options.every((option) => !option || (option.size !== null && option.patch.strapLength === undefined)) &&
    sizes.every((size, k) => k === 0 || size > sizes[k - 1])
  );
}

function hardAxes({ ends }: Choices, end: End): readonly HardAxis[] {
  const of = ends[end];
  const axes = HARD_CHOICES.flatMap((name): readonly HardAxis[] => {
    if (name === 'stop' || name === 'spring') {
      const options = of[name].map(
        ({ id, price, hours }): HardOption => ({ part: id, size: null, patch: { [name]: id }, price, hours }),
      );
      return options.length === 0
        ? []
        : [{ id: `${end}.${name}`, end, of: name, contact: '', options: [null, ...options] }];
    }
    const listed = of[name];
    if (listed === null) return [];
    const options = sized(listed, (size) => ({ [name]: size }));
    return [{ id: `${end}.${name}`, end, of: name, contact: '', options: [null, ...options] }];
  });
  const notches = Object.entries(of.notch).map(([contact, listed]): HardAxis => {
    const options = sized(listed, (size) => ({ notch: { [contact]: size } }));
    return { id: `${end}.notch.${contact}`, end, of: 'notch', contact, options: [null, ...options] };
  });
  return [...axes, ...notches];
}

const sized = (
  { sizes, price, hours }: SizeOptions,
  patch: (size: Reading) => EndPatch,
): readonly HardOption[] => sizes.map((size) => ({ part: '', size, patch: patch(size), price, hours }));

function softAxes({ ends }: Choices, end: End, trim: Trim): readonly SoftAxis[] {
  const { shockSetting, tyrePressure, antiRollBar } = ends[end].trims[trim];
  const lists: readonly (readonly EndPatch[])[] = [
    shockSetting.map((id) => ({ shockSetting: id })),
    tyrePressure.map((pressure) => ({ tyrePressure: pressure })),
    antiRollBar.map((bar) => ({ antiRollBar: bar })),
  ];
  return lists.filter((patches) => patches.length > 0).map((patches) => ({ end, patches }));
}
