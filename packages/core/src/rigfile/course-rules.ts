import { formatValue } from '../quantity/format.ts';
import type { CourseShape } from '../rig/course-spec.ts';

/** A parameter that makes no ground together with the others. */
export interface CourseFault {
  readonly name: string;
  readonly accepted: string;
}

/** Beyond this somebody mistook a unit, and the samples would fill the memory [m]. */
const LONGEST = 20_000;
/** Waves, whoops or rocks one behind the other. */
const MOST_FEATURES = 50_000;
/** Waves of a sum, each over the whole road: a second of work. */
const MOST_WAVE_LENGTHS = 10_000_000;
/** A scatter of all of it would leave nothing. */
const MOST_SCATTER = 0.9;
/** Steeper than this is a wall [rise ÷ run]. */
const STEEPEST = 1;

/**
 * Rules between the parameters of a course; what a single parameter must be stands in the schema.
 * @param typed – text of a parameter as typed, to answer in its units
 */
export function courseFaults(
  shape: CourseShape,
  typed: (name: string) => string | undefined,
): readonly CourseFault[] {
  const faults: CourseFault[] = [];
  const say = (name: string, value: number): string =>
    formatValue(value, 'length', { system: /m\b/.test(typed(name) ?? '') ? 'metric' : 'shop' });
  const must = (holds: boolean, name: string, accepted: string): void => {
    // The words are made only when they are needed; a course is read at every keystroke.
    if (!holds) faults.push({ name, accepted });
  };
  const below = (name: string, value: number, other: string, limit: number): void =>
    must(value < limit, name, `less than ${say(name, limit)}, the ${other}`);
  const atMost = (name: string, value: number, limit: number): void =>
    must(value <= limit, name, `at most ${say(name, limit)}`);
  /** The right track must not begin before the start line. */
  const lag = (name: string, start: number, by: number): void =>
    must(start + by >= 0, name, 'a lag that leaves the right track behind the start of the course');

  switch (shape.kind) {
    case 'flat':
      atMost('length', shape.length, LONGEST);
      break;
    case 'whoops':
      below('height', shape.height, 'spacing', shape.spacing);
      atMost('spacing', shape.spacing, LONGEST / shape.count);
      lag('rightPhase', shape.start, (shape.rightPhase * shape.spacing) / (2 * Math.PI));
      break;
    case 'irregular-whoops':
      must(shape.heightScatter <= MOST_SCATTER, 'heightScatter', 'at most 90 %');
      must(shape.spacingScatter <= MOST_SCATTER, 'spacingScatter', 'at most 90 %');
      below(
        'height',
        shape.height * (1 + shape.heightScatter),
        'shortest spacing, with the highest crest',
        shape.spacing * (1 - shape.spacingScatter),
      );
      atMost('spacing', shape.spacing, LONGEST / shape.count);
      lag('rightPhase', shape.start, (shape.rightPhase * shape.spacing) / (2 * Math.PI));
      break;
    case 'ledge':
      atMost('length', shape.length, LONGEST);
      break;
    case 'ditch':
      below('bottom', shape.bottom, 'length from lip to lip', shape.length);
      below('depth', shape.depth, 'length from lip to lip', shape.length);
      atMost('length', shape.length, LONGEST);
      lag('rightLag', shape.start, shape.rightLag);
      break;
    case 'half-round':
      must(
        shape.length >= 2 * shape.height,
        'length',
        `at least ${say('length', 2 * shape.height)}, twice the height`,
      );
      atMost('length', shape.length, LONGEST);
      lag('rightLag', shape.start, shape.rightLag);
      break;
    case 'rocks':
      below('height', shape.height, 'length of the longest rock', shape.rockLength);
      below('rockLength', shape.rockLength, 'spacing', shape.spacing);
      must(shape.length >= shape.spacing, 'length', `at least ${say('length', shape.spacing)}, one spacing`);
      atMost('length', shape.length, Math.min(LONGEST, MOST_FEATURES * shape.rockLength));
      break;
    case 'washboard':
      below('height', shape.height, 'spacing', shape.spacing);
      must(shape.length >= shape.spacing, 'length', `at least ${say('length', shape.spacing)}, one spacing`);
      atMost('length', shape.length, Math.min(LONGEST, MOST_FEATURES * shape.spacing));
      atMost('fadeIn', shape.fadeIn, shape.length / 2);
      lag('rightPhase', shape.start, (shape.rightPhase * shape.spacing) / (2 * Math.PI));
      break;
    case 'waves': {
      const quickest = Math.max(...shape.waves.map(({ n }) => n));
      const most = Math.min(MOST_FEATURES, MOST_WAVE_LENGTHS / shape.waves.length) / quickest;
      atMost('fadeIn', shape.fadeIn, shape.length);
      atMost('length', shape.length, Math.min(LONGEST, most));
      break;
    }
    case 'road-class':
      atMost('fadeIn', shape.fadeIn, shape.length);
      atMost('length', shape.length, LONGEST);
      break;
    case 'ramp-landing':
      below('height', shape.height, 'length of the ramp', shape.length);
      below('lip', shape.lip, 'length of the ramp', shape.length);
      atMost('length', shape.length, LONGEST);
      atMost('deck', shape.deck, LONGEST);
      atMost('landingLength', shape.landingLength, LONGEST);
      if (shape.landingHeight > 0) {
        // Steep enough to slide down, and room for both roundings.
        const least = Math.max(2 * shape.lip, shape.landingHeight / STEEPEST + shape.lip);
        must(shape.landingLength >= least, 'landingLength', `at least ${say('landingLength', least)}`);
      }
      break;
    case 'crest': {
      const least = shape.grade * (shape.foot / 2 + shape.top / 4);
      must(shape.grade <= STEEPEST, 'grade', 'at most 100 %');
      must(
        shape.height >= least,
        'height',
        `at least ${say('height', least)}, which foot and top gain at this grade`,
      );
      atMost('height', shape.height, (LONGEST * shape.grade) / 2);
      break;
    }
    case 'profile': {
      const length = shape.distance[shape.distance.length - 1]! - shape.distance[0]!;
      must(length <= LONGEST, 'points', `at most ${say('points', LONGEST)} from first to last point`);
      atMost('fadeIn', shape.fadeIn, length);
      break;
    }
    case 'drop':
      break;
  }
  return faults;
}
