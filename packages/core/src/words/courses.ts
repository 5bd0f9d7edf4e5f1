import type { Side } from '../finding/place.ts';
import type { CourseShape } from '../rig/course-spec.ts';
import { ROAD_CLASSES } from '../rig/road-class.ts';
import { percent, plain } from './amounts.ts';
import type { WordOptions } from './findings.ts';

/** A course in a few words: `8 whoops, 6 in high, one every 20 ft 0 in`. */
export function courseText(shape: CourseShape, { system }: WordOptions): string {
  const say = (value: number): string => plain(value, 'length', system);
  const seed = ({ seed: of, mirrored = false }: { seed: number; mirrored?: boolean }): string =>
    `seed ${of}${mirrored ? ', mirrored' : ''}`;
  switch (shape.kind) {
    case 'flat':
      return `flat ground, ${say(shape.length)}`;
    case 'drop':
      return `let go ${say(shape.height)} above flat ground`;
    case 'whoops':
      return `${counted(shape.count, 'whoop')}, ${say(shape.height)} high, one every ${say(shape.spacing)}${lag(shape.rightPhase)}`;
    case 'irregular-whoops':
      return `${counted(shape.count, 'whoop')}, ${say(shape.height)} ± ${percent(shape.heightScatter)} high, one every ${say(shape.spacing)} ± ${percent(shape.spacingScatter)}${lag(shape.rightPhase)}, ${seed(shape)}`;
    case 'ledge':
      return `a ledge ${say(Math.abs(shape.height))} ${shape.height < 0 ? 'down' : 'up'} within ${say(shape.length)}${under(shape.side)}`;
    case 'ditch':
      return `a ditch ${say(shape.depth)} deep, ${say(shape.length)} from lip to lip${under(shape.side)}`;
    case 'half-round':
      return `a half-round ${say(shape.height)} high, ${say(shape.length)} long, as a wheel of ${say(shape.wheelRadius)} radius rolls over it${under(shape.side)}`;
    case 'rocks':
      return `rocks up to ${say(shape.height)} high, one every ${say(shape.spacing)} on each side, ${say(shape.length)} of them, ${seed(shape)}`;
    case 'washboard':
      return `washboard, ${say(shape.height)} high, one every ${say(shape.spacing)}, ${say(shape.length)} of it${lag(shape.rightPhase)}`;
    case 'waves':
      return `a road of ${counted(shape.waves.length, 'wave')}, ${say(shape.length)}`;
    case 'road-class':
      return `a random road ${className(shape.roughness)} of ISO 8608 (${plain(shape.roughness, 'roughness', system)}), ${say(shape.length)}, ${seed(shape)}`;
    case 'ramp-landing':
      return `a ramp ${say(shape.height)} high and ${say(shape.length)} long, ${say(shape.deck)} on ${
        shape.landingHeight > 0 ? `a landing of ${say(shape.landingLength)}` : 'the level ground'
      }`;
    case 'crest':
      return `a crest ${say(shape.height)} high, ${percent(shape.grade)} up and down, the top rounded over ${say(shape.top)}`;
    case 'profile': {
      const length = shape.distance[shape.distance.length - 1]! - shape.distance[0]!;
      return `measured ground, ${say(length)}, ${counted(shape.distance.length, 'point')}${shape.mirrored ? ', mirrored' : ''}`;
    }
  }
}

const counted = (count: number, what: string): string => `${count} ${what}${count === 1 ? '' : 's'}`;

const under = (side: Side | 'both'): string => (side === 'both' ? '' : `, under the ${side} tyres only`);

/** Full turns are no lag; half a turn has a name of its own. */
function lag(phase: number): string {
  const turn = (((phase / (2 * Math.PI)) % 1) + 1) % 1;
  if (turn === 0) return '';
  return turn === 0.5 ? ', left and right in turn' : `, the right side ${percent(turn)} of one later`;
}

/** Each class reaches from half to twice its mean. */
function className(roughness: number): string {
  const found = Object.entries(ROAD_CLASSES).find(([, mean]) => roughness < 2 * mean);
  return `of class ${found?.[0] ?? 'H'}`;
}
