import type { Side } from '../finding/place.ts';
import type { CourseShape } from '../rig/course-spec.ts';
import { crest } from './crest.ts';
import { ditch } from './ditch.ts';
import { reach, sampleHalfRound } from './half-round.ts';
import { irregularWhoops, shortestWhoop } from './irregular-whoops.ts';
import { ledge } from './ledge.ts';
import { measuredGround, smallestSpacing } from './profile.ts';
import { rampLanding } from './ramp-landing.ts';
import { classRoad, SHORTEST_WAVE } from './road-class.ts';
import { rocks, SMALLEST_LENGTH } from './rocks.ts';
import { flatSide, type HeightAndSlope, type SampledSide, sampleSide, type Track } from './sampled.ts';
import { type Stretch, sampleChain } from './stretch.ts';
import { washboard, wavesIn } from './washboard.ts';
import { sampleWaves } from './waves.ts';
import { whoops } from './whoops.ts';

/** Samples in one whoop: the cubic is then within 3e-7 of its height, (2π/64)⁴/384. */
const PIECES_PER_WAVE = 64;

/** Samples in the shortest wave of a road: within 4e-6 of that wave's own small height. */
const PIECES_PER_SHORTEST_WAVE = 32;

/** Shortest feature of a measured ground whose points lie closer together [m]: no tyre feels less. */
const FELT = 0.02;

/**
 * A course, sampled once.
 * @param shape – the course; parameters were checked where they were read
 */
export function sampleCourse(shape: CourseShape): Track {
  switch (shape.kind) {
    case 'flat':
      return alike(flatSide(), { shortestFeature: Infinity, end: shape.length });
    case 'drop':
      return alike(flatSide(), { shortestFeature: Infinity, end: 0, initialLift: shape.height });
    case 'whoops': {
      const length = shape.count * shape.spacing;
      const pieces = Math.max(1, Math.round(shape.count * PIECES_PER_WAVE));
      const side = sampled(whoops(shape), shape.start, length, pieces);
      return withLag(side, lagOf(shape), { shortestFeature: shape.spacing / 2 });
    }
    case 'irregular-whoops':
      return withLag(irregularWhoops(shape), lagOf(shape), { shortestFeature: shortestWhoop(shape) / 2 });
    case 'washboard': {
      const waves = wavesIn(shape);
      const side = sampled(washboard(shape), shape.start, waves * shape.spacing, waves * PIECES_PER_WAVE);
      return withLag(side, lagOf(shape), { shortestFeature: shape.spacing / 2 });
    }
    case 'ledge': {
      const side = sampled(ledge(shape), shape.start, shape.length, PIECES_PER_WAVE / 2);
      return onSide(shape.side, side, 0, { shortestFeature: shape.length });
    }
    case 'ditch': {
      const side = sampleChain(ditch(shape), shape.start);
      return onSide(shape.side, side, shape.rightLag, {
        shortestFeature: (shape.length - shape.bottom) / 2,
      });
    }
    case 'half-round': {
      const side = sampleHalfRound(shape, shape.start);
      return onSide(shape.side, side, shape.rightLag, { shortestFeature: reach(shape) });
    }
    case 'ramp-landing':
      return ofStretches(rampLanding(shape), shape.start, shape.lip);
    case 'crest':
      return ofStretches(crest(shape), shape.start, Math.min(shape.foot, shape.top / 2));
    case 'rocks': {
      const [left, right] = [rocks(shape, 'left'), rocks(shape, 'right')];
      const shortestFeature = (SMALLEST_LENGTH * shape.rockLength) / 2;
      const rest = { shortestFeature, end: shape.start + shape.length, initialLift: 0 };
      return shape.mirrored ? { left: right, right: left, ...rest } : { left, right, ...rest };
    }
    case 'waves': {
      const shortest = 1 / Math.max(...shape.waves.map((wave) => wave.n));
      const pieces = Math.max(1, Math.ceil((shape.length * PIECES_PER_SHORTEST_WAVE) / shortest));
      const samples = sampleWaves(shape, pieces);
      const side = (which: Side): SampledSide => ({
        origin: 0,
        step: shape.length / pieces,
        samples: samples[which],
        breaks: [0, shape.fadeIn, shape.length],
      });
      const rest = { shortestFeature: shortest / 2, end: shape.length, initialLift: 0 };
      return { left: side('left'), right: side('right'), ...rest };
    }
    case 'road-class': {
      const sides = classRoad(shape);
      return { ...sides, shortestFeature: SHORTEST_WAVE / 2, end: endOf(sides.left), initialLift: 0 };
    }
    case 'profile': {
      const { distance } = shape;
      const end = distance[distance.length - 1]! - distance[0]!;
      const shortestFeature = Math.max(FELT, smallestSpacing(distance));
      return { ...measuredGround(shape), shortestFeature, end, initialLift: 0 };
    }
  }
}

const sampled = (law: HeightAndSlope, from: number, length: number, pieces: number): SampledSide =>
  sampleSide(law, { from, to: from + length, pieces, breaks: [from, from + length] });

function ofStretches(stretches: readonly Stretch[], start: number, shortestFeature: number): Track {
  const side = sampleChain(stretches, start);
  return alike(side, { shortestFeature, end: endOf(side) });
}

function alike(
  side: SampledSide,
  rest: { readonly shortestFeature: number; readonly end: number; readonly initialLift?: number },
): Track {
  return { left: side, right: side, initialLift: 0, ...rest };
}

/** Distance by which the right track lags [m]. */
const lagOf = ({ rightPhase, spacing }: { readonly rightPhase: number; readonly spacing: number }): number =>
  (rightPhase * spacing) / (2 * Math.PI);

const endOf = ({ origin, step, samples }: SampledSide): number => origin + step * (samples.length / 2 - 1);

/** The same ground under both sides, on the right this much later. */
function withLag(left: SampledSide, lag: number, { shortestFeature }: { shortestFeature: number }): Track {
  const right = later(left, lag);
  return { left, right, shortestFeature, end: Math.max(endOf(left), endOf(right)), initialLift: 0 };
}

/** The same samples, read as standing further on. */
const later = (side: SampledSide, lag: number): SampledSide =>
  lag === 0
    ? side
    : { ...side, origin: side.origin + lag, breaks: side.breaks.map((distance) => distance + lag) };

function onSide(
  which: Side | 'both',
  side: SampledSide,
  rightLag: number,
  rest: { readonly shortestFeature: number },
): Track {
  if (which === 'both') return withLag(side, rightLag, rest);
  const flat = flatSide();
  const end = endOf(side);
  return which === 'left'
    ? { left: side, right: flat, end, initialLift: 0, ...rest }
    : { left: flat, right: later(side, rightLag), end: end + rightLag, initialLift: 0, ...rest };
}
