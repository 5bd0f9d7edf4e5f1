import { latticeLaw } from '@lastinch/core';
import {
  closingStrain,
  designStop,
  heldFactor,
  leastFoam,
  mostFoam,
  pressedWithAir,
  type StopDesign,
  steadyVentPressure,
  tubeFoldingStress,
  wrinklingStress,
} from '@lastinch/core/stops';
import type { Runner } from '../runner.ts';
import { number, numbers, text } from './inputs.ts';

type Inputs = Readonly<Record<string, unknown>>;

const rows = (value: unknown): number[][] => {
  if (!Array.isArray(value)) throw new Error('A check gives no rows');
  return value.map(numbers);
};

const ends = (count: number): 0 | 1 | 2 => (count === 0 ? 0 : count === 1 ? 1 : 2);

const foam = (kind: unknown) => (text(kind) === 'least' ? leastFoam : mostFoam);

function designed({ height, diameter, density }: Inputs): StopDesign {
  const answer = designStop({
    height: number(height),
    diameters: [number(diameter), number(diameter)],
    bore: 0,
    cell: 0.01,
    wall: 0.0008,
    material: 'tpu-85a',
    target: null,
    density: numbers(density),
    trials: 2,
    seed: 1,
  });
  if (!answer.ok) throw new Error(JSON.stringify(answer.problems));
  return answer.value;
}

/** Printed stops: skin, held ends, air, foam, and whole designs. */
export const printedStops: Runner = {
  'tube-folding': ({ tubes }) => rows(tubes).map(([e, t, r, nu]) => tubeFoldingStress(e, t, r, nu)),
  wrinkling: ({ sheets }) => rows(sheets).map(([e, c, nuc, nus]) => wrinklingStress(e, c, nuc, nus)),
  'held-ends': ({ bodies }) => rows(bodies).map(([nu, r, h, count]) => heldFactor(nu, r, h, ends(count))),
  'vent-steady': ({ vents }) =>
    rows(vents).map(([hole, discharge, face, speed]) => {
      const vent = { area: (Math.PI / 4) * hole * hole, discharge };
      const pressure = steadyVentPressure(vent, face, speed, { outside: 101_325, temperature: 293.15 });
      if (pressure === null) throw new Error('A check asks for a choked vent');
      return pressure;
    }),
  'shut-air': ({ density, index, strains }) => {
    const [rho, height, area] = [number(density), 0.05, 0.002];
    const law = latticeLaw(
      { structure: 'sheet-gyroid', solidModulus: 20e6, densityPower: 0, softening: 2, closing: 1.2 },
      rho,
    );
    const air = { volume: area * height * (1 - rho), index: number(index) };
    return numbers(strains).map((e) => pressedWithAir([{ height, area, law }], e * height, air).pressure);
  },
  'foam-modulus': ({ kind, solidModulus, densities }) =>
    numbers(densities).map((rho) => foam(kind)(number(solidModulus), rho).slope(0) / number(solidModulus)),
  'foam-stress': ({ kind, solidModulus, density, strains }) =>
    numbers(strains).map((e) => foam(kind)(number(solidModulus), number(density)).stress(e)),
  'closing-strain': ({ densities }) => numbers(densities).map(closingStrain),
  'printed-design': (inputs) =>
    designed(inputs)
      .curve.slice(1)
      .map(({ force }) => force ?? Number.NaN),
  'printed-energy': (inputs) => [designed(inputs).energy],
};
