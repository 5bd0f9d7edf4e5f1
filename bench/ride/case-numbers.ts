import { type SampledSide, sampleCourse } from '@lastinch/core';
import type { RideCase } from '../../validation/ride-case/read.ts';

/** A case as plain numbers for the C and Python rivals, in the order that `read_model` in model.c reads. */
export function caseNumbers({ model, course, speed, duration, initialLift }: RideCase): string {
  const { sprung, axles, gravity } = model;
  const lines: (readonly number[])[] = [
    [sprung.mass, sprung.rollInertia, sprung.pitchInertia, sprung.toFrontAxle, sprung.toRearAxle],
    [gravity, speed, duration, initialLift],
  ];
  for (const axle of [axles.front, axles.rear]) {
    const { spring, shock, stop, metal, droopLimit, tyre } = axle;
    lines.push(
      [axle.mass, axle.rollInertia, axle.halfTrack, spring.halfStation, spring.rate, shock.halfStation],
      [stop.halfStation, stop.gap.left, stop.gap.right, metal.atCrush.left, metal.atCrush.right],
      [stop.rateFactor, metal.rate, droopLimit.at, droopLimit.rate, droopLimit.rateFactor],
      [tyre.rate, tyre.damping],
      ...[shock.speed, shock.force, stop.crush, stop.force].map((table) => [table.length, ...table]),
    );
  }
  const track = sampleCourse(course);
  for (const side of [track.left, track.right]) lines.push(groundNumbers(side));
  return lines.map((line) => line.map(text).join(' ')).join('\n');
}

const groundNumbers = ({ origin, step, samples }: SampledSide): readonly number[] => [
  origin,
  step,
  samples.length / 2,
  ...samples,
];

/** C's scanf and Python's float both read these. */
const text = (value: number): string => (Number.isFinite(value) ? String(value) : value > 0 ? 'inf' : '-inf');
