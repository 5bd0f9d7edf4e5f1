import type { Side } from '../finding/place.ts';
import type { CourseShape } from '../rig/course-spec.ts';
import { ledge } from './ledge.ts';
import { flatSide, type SampledSide, sampleSide, type Track } from './sampled.ts';
import { waveSum } from './waves.ts';
import { whoops } from './whoops.ts';

/** Samples in one whoop: the cubic is then within 3e-7 of its height, (2π/64)⁴/384. */
const PIECES_PER_WAVE = 64;

/** Samples in the shortest wave of a road: within 4e-6 of that wave's own small height. */
const PIECES_PER_SHORTEST_WAVE = 32;

/**
 * A course, sampled once.
 * @param shape – the course; parameters were checked where they were read
 */
export function sampleCourse(shape: CourseShape): Track {
  switch (shape.kind) {
    case 'flat':
      return bothSides(flatSide, { shortestFeature: Infinity, end: shape.length });
    case 'drop':
      return bothSides(flatSide, { shortestFeature: Infinity, end: 0, initialLift: shape.height });
    case 'whoops': {
      const length = shape.count * shape.spacing;
      const lag = (shape.rightPhase * shape.spacing) / (2 * Math.PI);
      const side = (which: Side): SampledSide => {
        const start = shape.start + (which === 'right' ? lag : 0);
        return sampleSide(whoops({ ...shape, start }), {
          from: start,
          to: start + length,
          pieces: Math.max(1, Math.round(shape.count * PIECES_PER_WAVE)),
          breaks: [start, start + length],
        });
      };
      return bothSides(side, {
        shortestFeature: shape.spacing / 2,
        end: shape.start + length + Math.max(0, lag),
      });
    }
    case 'ledge': {
      const side = (which: Side): SampledSide =>
        shape.side === 'both' || shape.side === which
          ? sampleSide(ledge(shape), {
              from: shape.start,
              to: shape.start + shape.length,
              pieces: PIECES_PER_WAVE / 2,
              breaks: [shape.start, shape.start + shape.length],
            })
          : flatSide();
      return bothSides(side, { shortestFeature: shape.length, end: shape.start + shape.length });
    }
    case 'waves': {
      const shortest = 1 / Math.max(...shape.waves.map((wave) => wave.n));
      const pieces = Math.max(1, Math.ceil((shape.length * PIECES_PER_SHORTEST_WAVE) / shortest));
      const side = (which: Side): SampledSide =>
        sampleSide(waveSum(shape.waves, shape.fadeIn, which), {
          from: 0,
          to: shape.length,
          pieces,
          breaks: [0, shape.fadeIn, shape.length],
        });
      return bothSides(side, { shortestFeature: shortest / 2, end: shape.length });
    }
  }
}

function bothSides(
  side: (which: Side) => SampledSide,
  rest: { shortestFeature: number; end: number; initialLift?: number },
): Track {
  return { left: side('left'), right: side('right'), initialLift: 0, ...rest };
}
