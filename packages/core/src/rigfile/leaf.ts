import { z } from 'zod';
import type { Dimension } from '../finding/figure.ts';

// The page runs under a policy that forbids eval, which zod would probe for. Must precede the first schema.
z.config({ jitless: true });

/** What a typed value must be apart from well formed. */
export type Sign = 'positive' | 'notNegative' | 'any';

/** What the schema cannot say by itself about a quantity; never part of the published JSON Schema. */
export interface LeafInfo {
  readonly dimension: Dimension;
  readonly sign: Sign;
  /** Parameters of the ground are chosen, not measured: no tolerance. */
  readonly exact: boolean;
  /** No sound estimate exists: it is asked for. */
  readonly needed: boolean;
  /** Another way to say what a neighbour says: shown only where it was typed. */
  readonly rare: boolean;
  readonly about: string;
}

const leaves = z.registry<LeafInfo>();

export const leafInfo = (schema: z.ZodType): LeafInfo | undefined => leaves.get(schema);

/** Examples that the published schema shows for each dimension. */
const EXAMPLES: Readonly<Record<Dimension, readonly string[]>> = {
  length: ['4 1/8 in ± 1/16', '105 mm'],
  mass: ['980 lb', '445 kg ± 2'],
  force: ['150 lb', '2.7 kN'],
  rate: ['180 lb/in', '31.5 N/mm'],
  damping: ['400 N*s/m'],
  pressure: ['14 psi', '95 kPa'],
  speed: ['30 mph', '10 in/s'],
  acceleration: ['2.5 g'],
  angle: ['180 deg'],
  time: ['2 s'],
  frequency: ['1.3 Hz'],
  inertia: ['1900 kg*m^2'],
  energy: ['300 J'],
  stiffnessOverSpeed: ['0.2 s/m'],
  wavenumber: ['0.2 1/m'],
  power: ['6 W'],
  vibrationDose: ['9.1 m/s^1.75'],
  roughness: ['256 cm^3'],
  rollRate: ['300 N*m/deg'],
  ratio: ['0.94 ± 0.02', '8 %'],
};

interface LeafOptions {
  readonly sign?: Sign;
  readonly exact?: boolean;
  readonly needed?: boolean;
  readonly rare?: boolean;
}

/** A quantity as text with its unit. A ratio may also stand as a bare number. */
export function quantity(dimension: Dimension, about: string, options: LeafOptions = {}) {
  const text = dimension === 'ratio' ? z.union([z.string(), z.number()]) : z.string();
  const leaf = text.meta({ description: about, examples: [...EXAMPLES[dimension]] });
  const { sign = 'positive', exact = false, needed = false, rare = false } = options;
  leaves.add(leaf, { dimension, sign, exact, needed, rare, about });
  return leaf.nullish();
}

/** The same for both sides, or one for each. */
export function sided(dimension: Dimension, about: string, options: LeafOptions = {}) {
  const both = quantity(dimension, about, options).unwrap().unwrap();
  const apart = z.strictObject({
    left: quantity(dimension, `${about}, left side`, options),
    right: quantity(dimension, `${about}, right side`, options),
  });
  return z.union([both, apart]).nullish();
}

/** Pairs in rows, each cell with its unit, or a CSV file beside the rig file. */
export function table(first: Dimension, second: Dimension, about: string) {
  const cell = (dimension: Dimension) =>
    quantity(dimension, dimension, { sign: 'any', exact: true }).unwrap().unwrap();
  return z.array(z.tuple([cell(first), cell(second)])).meta({ description: about });
}

export const besideFile = z.strictObject({
  file: z.string().min(1).meta({ description: 'CSV file beside this one' }),
});

/** Names that the owner gives: letters, digits, - and _. */
const NAME = /^[\p{L}\p{N}][\p{L}\p{N}_-]*$/u;
export const NAME_ACCEPTED = 'a name of letters, digits, - and _';

export const named = <T extends z.ZodType>(of: T) => z.record(z.string().regex(NAME), of);
