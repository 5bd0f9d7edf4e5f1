import type { Dimension } from '../finding/figure.ts';
import type { Side } from '../finding/place.ts';
import { acceptedUnits } from '../quantity/unit-name.ts';
import type { CourseShape, CourseSpec, Wave } from '../rig/course-spec.ts';
import { ROAD_CLASSES, type RoadClass } from '../rig/road-class.ts';
import { buildProfile } from './build-profile.ts';
import { courseFaults } from './course-rules.ts';
import type { Gaps } from './gaps.ts';
import type { ReadBeside } from './read-beside.ts';

/** What the ground takes from the rig when the file says nothing. */
export interface CourseSurroundings {
  /** Tyre centre to tyre centre, mean of both axles [m]. */
  readonly trackWidth: number;
  /** Of the front tyres [m]. */
  readonly wheelRadius: number;
  readonly readBeside: ReadBeside | undefined;
}

/** Lengths that stand in when the file says nothing [m]. */
const USUAL = { start: 5, roadFade: 20, profileFade: 10, lip: 0.3048 };
const USUAL_SEED = 1;

/** A fade that nobody typed takes at most this share of the ground. */
const MOST_FADE = 1 / 4;

/** The courses of a file. */
export function buildCourses(
  gaps: Gaps,
  surroundings: CourseSurroundings,
): Readonly<Record<string, CourseSpec>> {
  const courses = gaps.names('courses').flatMap((id): [string, CourseSpec][] => {
    const key = `courses.${id}`;
    const typed = typedCourse(gaps, key);
    const shape = buildShape(typed, surroundings);
    if (shape === null) return [];
    if (typed.isSound()) {
      for (const { name, accepted } of courseFaults(shape, (name) => typed.text(name))) {
        gaps.problem('rig-course-impossible', `${key}.${name}`, typed.text(name) ?? '', accepted);
      }
    }
    const [speed, perDay] = ['speed', 'perDay'].map((name) => gaps.value(`${key}.${name}`));
    return [[id, { id, shape, speed, perDay, notes: gaps.text(`${key}.notes`) ?? '' }]];
  });
  return Object.fromEntries(courses);
}

/** What the file says of one course. */
interface TypedCourse {
  readonly gaps: Gaps;
  readonly key: string;
  text(name: string): string | undefined;
  /** A value that must be there; 0 stands in for it when it is not, and its problem is told. */
  need(name: string, dimension: Dimension): number;
  /** A value, or what is usual. */
  or(name: string, usual: number): number;
  whole(name: string, usual?: number): number;
  /** False when something is missing or was refused, and has its problem already. */
  isSound(): boolean;
}

function typedCourse(gaps: Gaps, key: string): TypedCourse {
  let sound = true;
  const value = (name: string): number | null => {
    const found = gaps.value(`${key}.${name}`);
    if (found === null && gaps.at(`${key}.${name}`) !== undefined) sound = false;
    return found;
  };
  return {
    gaps,
    key,
    text: (name) => gaps.text(`${key}.${name}`),
    need(name, dimension) {
      if (gaps.at(`${key}.${name}`) === undefined) {
        sound = false;
        gaps.missing(`${key}.${name}`, acceptedUnits(dimension));
      }
      return value(name) ?? 0;
    },
    or: (name, usual) => value(name) ?? usual,
    whole(name, usual) {
      const found = Number(gaps.text(`${key}.${name}`) ?? usual);
      if (!Number.isInteger(found)) sound = false;
      return found;
    },
    isSound: () => sound,
  };
}

function buildShape(typed: TypedCourse, surroundings: CourseSurroundings): CourseShape | null {
  const { gaps, key } = typed;
  const length = (name: string): number => typed.need(name, 'length');
  const start = (): number => typed.or('start', USUAL.start);
  const side = () => (typed.text('side') ?? 'both') as Side | 'both';
  const mirrored = (): boolean => gaps.at(`${key}.mirrored`) === true;
  const kind = typed.text('kind') as CourseShape['kind'] | undefined;
  switch (kind) {
    case 'flat':
      return { kind, length: length('length') };
    case 'whoops':
      return {
        kind,
        height: length('height'),
        spacing: length('spacing'),
        count: typed.whole('count'),
        start: start(),
        rightPhase: typed.or('rightPhase', 0),
      };
    case 'irregular-whoops':
      return {
        kind,
        height: length('height'),
        spacing: length('spacing'),
        heightScatter: typed.or('heightScatter', 0),
        spacingScatter: typed.or('spacingScatter', 0),
        count: typed.whole('count'),
        start: start(),
        rightPhase: typed.or('rightPhase', 0),
        seed: typed.whole('seed', USUAL_SEED),
      };
    case 'ledge':
      return { kind, side: side(), height: length('height'), length: length('length'), start: start() };
    case 'ditch':
      return {
        kind,
        side: side(),
        depth: length('depth'),
        length: length('length'),
        bottom: typed.or('bottom', 0),
        start: start(),
        rightLag: typed.or('rightLag', 0),
      };
    case 'half-round': {
      const height = length('height');
      return {
        kind,
        side: side(),
        height,
        length: typed.or('length', 2 * height),
        wheelRadius: typed.or('wheelRadius', surroundings.wheelRadius),
        start: start(),
        rightLag: typed.or('rightLag', 0),
      };
    }
    case 'rocks':
      return {
        kind,
        height: length('height'),
        rockLength: length('rockLength'),
        spacing: length('spacing'),
        length: length('length'),
        start: start(),
        seed: typed.whole('seed', USUAL_SEED),
        mirrored: mirrored(),
      };
    case 'washboard': {
      const spacing = length('spacing');
      const whole = length('length');
      return {
        kind,
        height: length('height'),
        spacing,
        length: whole,
        fadeIn: typed.or('fadeIn', Math.min(2 * spacing, MOST_FADE * whole)),
        start: start(),
        rightPhase: typed.or('rightPhase', 0),
      };
    }
    case 'waves':
      return { kind, waves: buildWaves(typed), fadeIn: length('fadeIn'), length: length('length') };
    case 'road-class': {
      const whole = length('length');
      return {
        kind,
        roughness: roughnessOf(typed),
        length: whole,
        fadeIn: typed.or('fadeIn', Math.min(USUAL.roadFade, MOST_FADE * whole)),
        trackWidth: typed.or('trackWidth', surroundings.trackWidth),
        seed: typed.whole('seed', USUAL_SEED),
        mirrored: mirrored(),
      };
    }
    case 'ramp-landing': {
      const landingHeight = typed.or('landingHeight', 0);
      return {
        kind,
        height: length('height'),
        length: length('length'),
        lip: typed.or('lip', USUAL.lip),
        deck: length('deck'),
        landingHeight,
        landingLength: landingHeight > 0 ? length('landingLength') : typed.or('landingLength', 0),
        start: start(),
      };
    }
    case 'crest': {
      const top = length('top');
      return {
        kind,
        height: length('height'),
        grade: typed.need('grade', 'ratio'),
        top,
        foot: typed.or('foot', top),
        start: start(),
      };
    }
    case 'profile': {
      const points = buildProfile(gaps, `${key}.points`, surroundings.readBeside);
      if (points === null) return null;
      const whole = points.distance[points.distance.length - 1]! - points.distance[0]!;
      const fadeIn = typed.or('fadeIn', Math.min(USUAL.profileFade, MOST_FADE * whole));
      return { kind, ...points, fadeIn, mirrored: mirrored() };
    }
    case 'drop':
      return { kind, height: length('height') };
    default:
      return null;
  }
}

function buildWaves(typed: TypedCourse): readonly Wave[] {
  const waves = typed.gaps.at(`${typed.key}.waves`);
  const count = Array.isArray(waves) ? waves.length : 0;
  return Array.from({ length: count }, (_, index): Wave => {
    const at = (name: string) => typed.or(`waves.${index}.${name}`, 0);
    return {
      n: typed.need(`waves.${index}.n`, 'wavenumber'),
      common: typed.need(`waves.${index}.common`, 'length'),
      commonPhase: at('commonPhase'),
      own: at('own'),
      leftPhase: at('leftPhase'),
      rightPhase: at('rightPhase'),
    };
  });
}

/** Of the class, or as typed [m³]: one of both must be there, and only one. */
function roughnessOf(typed: TypedCourse): number {
  const name = typed.text('class');
  const given = typed.text('roughness');
  if (name === undefined) {
    if (given !== undefined) return typed.or('roughness', 0);
    typed.gaps.missing(`${typed.key}.class`, `${Object.keys(ROAD_CLASSES).join(', ')}, or a roughness`);
    return 0;
  }
  if (given !== undefined)
    typed.gaps.problem(
      'rig-course-impossible',
      `${typed.key}.roughness`,
      given,
      'a class or a roughness, not both',
    );
  return ROAD_CLASSES[name as RoadClass] ?? 0;
}
