/**
 * `npm run -s bench:links`: all curves of one axle over 61 bump × 21 roll poses, warm, on one core, for each kind of
 * linkage. The rigs are the invented ones of `validation/checks/links`.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type AxleGeometry, type CurveOptions, curvesOf } from '@lastinch/core';

const TARGET = 30;
const ROUNDS = 100;
const checks = join(import.meta.dirname, '../../validation/checks/links');
const rigOf = (kind: string): AxleGeometry =>
  JSON.parse(readFileSync(join(checks, `pose-${kind}.json`), 'utf8')).inputs.geometry;
const grid = (most: number, count: number) =>
  Float64Array.from({ length: count }, (_, i) => -most + (2 * most * i) / (count - 1));
const options: CurveOptions = {
  bumps: grid(0.15, 61),
  rolls: grid(0.25, 21),
  end: 'front',
  anti: { wheelbase: 2.6, cgHeight: 0.75, driveShare: 1, brakeShare: 0.6 },
  dragLink: { body: [-2.75, 0.42, 0.6], axle: [-2.75, -0.6, 0.52], arm: -0.15 },
};

console.log('all curves of one axle, 61 × 21 poses, six struts, drag link; warm, one core [ms]');
console.log('kind             best  median  target');
for (const kind of ['three-link', 'four-link', 'triangulated', 'radius-arms']) {
  const rig = rigOf(kind);
  for (let round = 0; round < 10; round += 1) curvesOf(rig, options);
  const times = Array.from({ length: ROUNDS }, () => {
    const start = performance.now();
    curvesOf(rig, options);
    return performance.now() - start;
  }).sort((a, b) => a - b);
  const shown = (time: number) => time.toFixed(1).padStart(7);
  console.log(`${kind.padEnd(13)}${shown(times[0])} ${shown(times[ROUNDS / 2])} ${shown(TARGET)}`);
}
