import type { Side } from '../../src/finding/place.ts';
import type { CourseShape, Wave } from '../../src/rig/course-spec.ts';

/**
 * The ground by the formulas of `ride-case/1`, evaluated plainly at one place: what the sampled ground is held against.
 * Slopes are worked out by hand here, apart from the code under test; a test holds them against differences.
 */
export interface Ground {
  readonly height: number;
  readonly slope: number;
}

const LEVEL: Ground = { height: 0, slope: 0 };

export function groundAt(shape: CourseShape, side: Side, s: number): Ground {
  switch (shape.kind) {
    case 'flat':
    case 'drop':
      return LEVEL;
    case 'whoops': {
      const late = side === 'right' ? (shape.rightPhase * shape.spacing) / (2 * Math.PI) : 0;
      const u = s - shape.start - late;
      if (u <= 0 || u >= shape.count * shape.spacing) return LEVEL;
      const angle = (2 * Math.PI * u) / shape.spacing;
      return {
        height: shape.height * Math.sin(angle / 2) ** 2,
        slope: ((Math.PI * shape.height) / shape.spacing) * Math.sin(angle),
      };
    }
    case 'ledge': {
      if (shape.side !== 'both' && shape.side !== side) return LEVEL;
      const u = s - shape.start;
      if (u <= 0) return LEVEL;
      if (u >= shape.length) return { height: shape.height, slope: 0 };
      return {
        height: shape.height * Math.sin((Math.PI * u) / shape.length / 2) ** 2,
        slope: ((Math.PI * shape.height) / shape.length / 2) * Math.sin((Math.PI * u) / shape.length),
      };
    }
    case 'waves':
      return waves(shape.waves, shape.fadeIn, side, s);
    default:
      throw new Error(`ride-case/1 has no ${shape.kind}`);
  }
}

function waves(list: readonly Wave[], fadeIn: number, side: Side, s: number): Ground {
  if (s <= 0) return LEVEL;
  const c = Math.min(s / fadeIn, 1);
  const gain = 10 * c ** 3 - 15 * c ** 4 + 6 * c ** 5;
  const gainSlope = (30 * c ** 2 - 60 * c ** 3 + 30 * c ** 4) / fadeIn;
  let sum = 0;
  let sumSlope = 0;
  for (const { n, common, commonPhase, own, leftPhase, rightPhase } of list) {
    const phase = side === 'left' ? leftPhase : rightPhase;
    sum += common * Math.sin(2 * Math.PI * n * s + commonPhase) + own * Math.sin(2 * Math.PI * n * s + phase);
    sumSlope +=
      2 *
      Math.PI *
      n *
      (common * Math.cos(2 * Math.PI * n * s + commonPhase) + own * Math.cos(2 * Math.PI * n * s + phase));
  }
  return { height: gain * sum, slope: gain * sumSlope + gainSlope * sum };
}
