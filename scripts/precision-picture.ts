import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type CurveSeries, curveScene, svgOf } from '@lastinch/picture';
import type { Name } from '../bench/ride/contestants.ts';
import type { Results } from '../bench/ride/report.ts';

const RESULTS = 'bench/results/ride.json';
/** SciPy is left out: it would only push the others together. */
const SHOWN: readonly (readonly [Name, string])[] = [
  ['ours', 'ours'],
  ['cRk4', 'RK4 in C'],
  ['cvode', 'CVODE, best of BDF and Adams'],
];

/** Work against precision of the ride engine and its rivals, out of the last kept run of `npm run bench:ride -- --keep`. */
export function precisionPicture(root: string): string {
  const { precision, cases } = JSON.parse(readFileSync(join(root, RESULTS), 'utf8')) as Results;
  const series = SHOWN.map(([name, label]): CurveSeries => {
    const known = precision.flatMap(({ error, speed }) => {
      const value = speed[name];
      return value === null ? [] : [[Math.log10(error), Math.log10(value)] as const];
    });
    return { name: label, x: known.map(([x]) => x), y: known.map(([, y]) => y), points: true };
  });
  const scene = curveScene({
    series,
    xLabel: 'error in peak crush and r.m.s. acceleration, as a power of ten',
    yLabel: 'simulated seconds a second, as a power of ten',
    bands: [{ axis: 'x', from: -3, to: -3, role: 'note', label: '0.1 %' }],
    width: 720,
    height: 360,
    zero: false,
  });
  return `${svgOf(scene, {
    title: 'Work against precision: speed of the ride engine and its rivals against the error allowed',
    description: `Geometric mean over ${cases.length} rides of the best simulated seconds a second within an error, from 3 % to 0.001 %.`,
    idPrefix: 'precision',
  })}\n`;
}
