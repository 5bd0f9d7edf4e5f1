import {
  blockForce,
  bondedModulus,
  cellGasStress,
  columnAt,
  columnPressed,
  confinedNeoHookeanLaw,
  equivalentRange,
  errorFunctionModulus,
  gentModulus,
  indenterModulus,
  isotonic,
  type LatticeMaterial,
  type Layer,
  type LayerLaw,
  latticeLaw,
  leastSquares,
  linearLaw,
  lockingLaw,
  mooneyRivlinStress,
  neoHookeanLaw,
  rainflow,
  relativeModulus,
  type Structure,
  shoreDModulus,
  slicesOf,
} from '@lastinch/core';
import type { Runner } from '../runner.ts';
import { number, numbers, text } from './inputs.ts';

type Inputs = Readonly<Record<string, unknown>>;

const MPA = 1e6;
const AREA = Math.PI * 0.025 ** 2;

const RELATIONS: Readonly<Record<string, (hardness: number) => number>> = {
  gent: gentModulus,
  indenter: (hardness) => indenterModulus(hardness, 'shore-a'),
  'error-function': errorFunctionModulus,
  'shore-d': shoreDModulus,
};

const bulk = (value: unknown): number => (value === null ? Number.POSITIVE_INFINITY : number(value));

const FOAM: Omit<LatticeMaterial, 'solidModulus'> = {
  structure: 'open-foam',
  densityPower: 0,
  softening: 0,
  closing: 0,
};

/** A law of one slice; `open-foam` is taken at small strain only, as its closed form is. */
function lawOf({ law, solidModulus, locksAt, bulkModulus }: Inputs, modulus: number): LayerLaw {
  switch (text(law)) {
    case 'linear':
      return linearLaw(modulus);
    case 'neo-hookean':
      return neoHookeanLaw(modulus);
    case 'locking':
      return lockingLaw(modulus, number(locksAt));
    case 'confined':
      return confinedNeoHookeanLaw(modulus, number(bulkModulus));
    case 'open-foam': {
      const foam = latticeLaw({ ...FOAM, solidModulus: number(solidModulus) }, modulus);
      return linearLaw(foam.slope(0));
    }
    default:
      throw new Error(`A check asks for an unknown law ${text(law)}`);
  }
}

const between = (value: unknown, share: number): number => {
  const [from, to] = numbers(value);
  return from + (to - from) * share;
};

function layersOf({ layers, body }: Inputs): readonly Layer[] {
  if (Array.isArray(layers))
    return layers.map((layer: Inputs) => ({
      height: number(layer.height),
      area: AREA,
      law: lawOf(layer, number(layer.modulus)),
    }));
  const graded = body as Inputs;
  const height = number(graded.height);
  const along = graded.density ?? graded.modulus;
  return slicesOf(
    {
      height,
      areaAt: (z) => (graded.radius ? Math.PI * between(graded.radius, z / height) ** 2 : AREA),
      lawAt: (z) => lawOf(graded, between(along, z / height)),
    },
    number(graded.count),
  );
}

const misra = ({ x, y }: Inputs, start: readonly number[]) => {
  const [at, readings] = [numbers(x), numbers(y)];
  return leastSquares(([a, b]) => at.map((v, i) => readings[i] - a * (1 - Math.exp(-b * v))), start);
};

const starts = (value: unknown): number[][] => {
  if (!Array.isArray(value)) throw new Error('A check gives no starts');
  return value.map(numbers);
};

/** Stops: hardness, blocks, cells, graded columns, press readings, loops. */
export const stops: Runner = {
  hardness: ({ relation, hardness }) =>
    numbers(hardness).map((shore) => RELATIONS[text(relation)](shore) / MPA),
  'bonded-modulus': ({ modulus, k, bulkModulus, shapes }) =>
    numbers(shapes).map((shape) => bondedModulus(number(modulus), shape, number(k), bulk(bulkModulus))),
  'block-force': (inputs) =>
    numbers(inputs.strains).map((strain) =>
      blockForce(
        {
          height: number(inputs.height),
          diameter: number(inputs.diameter),
          bore: 0,
          ends: text(inputs.ends) === 'greased' ? 'greased' : 'bonded',
        },
        number(inputs.modulus),
        number(inputs.k),
        bulk(inputs.bulkModulus),
        strain,
      ),
    ),
  'mooney-rivlin': ({ c1, c2, strains }) =>
    numbers(strains).map((strain) => mooneyRivlinStress(number(c1), number(c2), strain)),
  'relative-modulus': ({ structure, densities }) =>
    numbers(densities).map((density) => relativeModulus(text(structure) as Structure, density)),
  'cell-gas': ({ pressure, density, strains }) =>
    numbers(strains).map((strain) => cellGasStress(number(pressure), strain, number(density))),
  column: (inputs) => numbers(inputs.forces).map((force) => 1e3 * columnAt(layersOf(inputs), force).crush),
  'column-pressed': (inputs) =>
    numbers(inputs.crushes).map((crush) => columnPressed(layersOf(inputs), crush).force),
  isotonic: ({ values, weights }) => [...isotonic(numbers(values), numbers(weights))],
  rainflow: ({ history }) => rainflow(numbers(history)).map(({ range, mean, count }) => [range, mean, count]),
  'equivalent-range': ({ history, slopes }) =>
    numbers(slopes).map((slope) => equivalentRange(rainflow(numbers(history)), slope)),
  'fit-misra': (inputs) => starts(inputs.starts).map((start) => [...misra(inputs, start).parameters]),
  'fit-misra-deviation': (inputs) => {
    const { covariance } = misra(inputs, starts(inputs.starts)[0]);
    if (covariance === null) throw new Error('A fit told no deviations');
    return [Math.sqrt(covariance[0]), Math.sqrt(covariance[3])];
  },
};
