import { readFileSync } from 'node:fs';
import {
  type CourseShape,
  heightAt,
  iriOf,
  iriStep,
  type Side,
  sampleCourse,
  trackCoherence,
} from '@lastinch/core';
import type { Runner } from '../runner.ts';
import { coefficients } from './fourier.ts';
import { number, numbers, text } from './inputs.ts';

/** Heights of both sides at even places, read as the ride reads them; the last place is left out. */
function heights(shape: unknown, step: number): Record<Side, number[]> {
  const track = sampleCourse(shape as CourseShape);
  const count = Math.round(track.end / step);
  const side = (which: Side) => Array.from({ length: count }, (_, i) => heightAt(track[which], i * step));
  return { left: side('left'), right: side('right') };
}

/** One-sided spectral density and real cross density of both sides, averaged over octaves about the centres. */
function octaves(shape: unknown, centres: readonly number[], step: number) {
  const { left, right } = heights(shape, step);
  const period = left.length * step;
  const [a, b] = [coefficients(left), coefficients(right)];
  return centres.map((centre) => {
    const [from, to] = [centre * Math.SQRT1_2 * period, centre * Math.SQRT2 * period];
    const sums = { left: 0, right: 0, cross: 0 };
    // A line stands for the band of half a line either way; the lines at the ends belong to the octave in part.
    for (let k = Math.ceil(from - 0.5); k - 0.5 < to; k += 1) {
      const share = Math.min(k + 0.5, to) - Math.max(k - 0.5, from);
      sums.left += share * 2 * (a.re[k] ** 2 + a.im[k] ** 2);
      sums.right += share * 2 * (b.re[k] ** 2 + b.im[k] ** 2);
      sums.cross += share * 2 * (a.re[k] * b.re[k] + a.im[k] * b.im[k]);
    }
    const width = (to - from) / period;
    return { left: sums.left / width, right: sums.right / width, cross: sums.cross / width };
  });
}

const rms = (values: readonly number[]): number =>
  Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / values.length);

/** Elevations of a file of `validation/data`, second column. */
const elevations = (file: string): number[] =>
  readFileSync(new URL(`../data/${file}`, import.meta.url), 'utf8')
    .trim()
    .split('\n')
    .map((line) => Number(line.trim().split(/\s+/)[1]));

const perKilometre = (values: readonly number[]): number[] => values.map((value) => 1000 * value);

/** Random roads of a class, and the roughness index. */
export const roads: Runner = {
  'octave-spectrum': ({ shape, centres, step }) => {
    const bands = octaves(shape, numbers(centres), number(step));
    return { left: bands.map(({ left }) => left), right: bands.map(({ right }) => right) };
  },
  'octave-coherence': ({ shape, centres, step }) =>
    octaves(shape, numbers(centres), number(step)).map(
      ({ left, right, cross }) => cross / Math.sqrt(left * right),
    ),
  'rms-height': ({ shape, roughnesses, step }) =>
    numbers(roughnesses).map((roughness) =>
      rms(heights({ ...(shape as object), roughness }, number(step)).left.map((height) => 1000 * height)),
    ),
  'track-coherence': ({ at, trackWidth }) => numbers(at).map((n) => trackCoherence(n, number(trackWidth))),

  'iri-transition': ({ step }) => {
    const { transition, input } = iriStep(number(step));
    return { transition, input: input.slice(1) };
  },
  'iri-input': ({ step }) => iriStep(number(step)).input,
  'iri-of-file': ({ file, step, segment }) =>
    perKilometre(
      iriOf(elevations(text(file)), number(step), segment === null ? {} : { segment: number(segment) }),
    ),
  'iri-of-sines': ({ wavelengths, amplitude, step, base, waves }) =>
    numbers(wavelengths).map((wavelength) => {
      const length = Math.ceil(number(waves) * wavelength);
      const profile = Array.from(
        { length: Math.round((length + number(base)) / number(step)) + 1 },
        (_, i) => number(amplitude) * Math.sin((2 * Math.PI * i * number(step)) / wavelength),
      );
      // The first half is left for the car to forget how it began.
      return 1000 * iriOf(profile, number(step), { base: number(base), segment: length / 2 })[1];
    }),
  'iri-sum-of-triangle': ({ step, base, until }) => {
    const places = numbers(until);
    const count = Math.round(Math.max(...places) / number(step));
    const profile = Array.from({ length: count + 1 }, (_, i) => {
      const x = i * number(step);
      return x < 1 ? 0 : x < 3 ? (x - 1) / 1000 : x < 5 ? (5 - x) / 1000 : 0;
    });
    const each = iriOf(profile, number(step), { base: number(base), segment: number(step) });
    return places.map((place) =>
      each
        .slice(0, Math.round(place / number(step)))
        .reduce((sum, value) => sum + 1000 * value * number(step), 0),
    );
  },
  'iri-of-roads': ({ shape, roughnesses, step, base }) =>
    numbers(roughnesses).map((roughness) => {
      const { left, right } = heights({ ...(shape as object), roughness }, number(step));
      const [a, b] = [left, right].map((side) => iriOf(side, number(step), { base: number(base) })[0]);
      return { left: 1000 * a, right: 1000 * b };
    }),
};
