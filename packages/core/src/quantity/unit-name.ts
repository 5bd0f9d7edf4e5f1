import { DIMENSIONS, type Dimension } from '../finding/figure.ts';
import { UNITS, type Unit } from './dimension.ts';

/**
 * One spelling for the many ways to type a compound unit: `lb-ft`, `lb ft`, `lb*ft`, `lb.ft` → `lb·ft`;
 * `m/s^2`, `m/s2` → `m/s²`, `cm3` → `cm³`; `in.` → `in`; `/m` → `1/m`. The point of `^1.75` stays.
 */
const tidied = (name: string): string =>
  name
    .replace(/\.$/, '')
    .replace(/ ?\/ ?/g, '/')
    .replace(/ ?(?:[·*-]|\.(?!\d)) ?| /g, '·')
    .replace(/\^?2/g, '²')
    .replace(/\^?3/g, '³')
    .replace(/^\//, '1/');

const spellings = (unit: Unit): readonly string[] => [unit.name, ...unit.also];

/** Case carries no meaning, except in the prefix mega: `MM` is a millimetre, but `mpa` is not a megapascal. */
const isMega = (spelling: string): boolean => /^M[A-Z]/.test(spelling);

const BY_SPELLING = new Map(
  DIMENSIONS.map((dimension) => {
    const spelled = UNITS[dimension].flatMap((unit) => spellings(unit).map((each) => [each, unit] as const));
    const folded = spelled
      .filter(([each]) => !isMega(each))
      .map(([each, unit]) => [each.toLowerCase(), unit] as const);
    return [dimension, new Map([...folded, ...spelled])] as const;
  }),
);

/** The unit that a name means in a dimension, or undefined. */
export function unitNamed(name: string, dimension: Dimension): Unit | undefined {
  const known = BY_SPELLING.get(dimension);
  const spelling = tidied(name);
  return known?.get(spelling) ?? known?.get(spelling.toLowerCase());
}

/** Whether a name is a unit of anything at all: then it is the wrong kind here, not a slip of the fingers. */
export const isUnitSomewhere = (name: string): boolean =>
  DIMENSIONS.some((dimension) => unitNamed(name, dimension) !== undefined);

/** The units that are read in a dimension, for a person: `in, ft, mm, cm, m, yd, km, mi`. */
export const acceptedUnits = (dimension: Dimension): string =>
  UNITS[dimension].map(({ name }) => name || 'a number without unit').join(', ');
