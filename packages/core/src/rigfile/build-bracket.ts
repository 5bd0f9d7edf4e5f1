import type { End } from '../finding/place.ts';
import {
  BRACKET_KINDS,
  type Bracket,
  type BracketKind,
  type BracketPlate,
  type BracketSection,
  type Brackets,
  MOUNT_NAMES,
  type MountName,
} from '../rig/bracket.ts';
import type { Reading } from '../rig/reading.ts';
import { BOLT_GRADES, type BoltGrade, THREAD_NAMES, type ThreadName } from '../rig/thread.ts';
import { TAPED } from './build-spring.ts';
import type { Gaps, ReadingSpec } from './gaps.ts';
import { USUAL } from './usual-value.ts';

const GAUGED: ReadingSpec = { dimension: 'length', tool: 'gauge-plate-tolerance' };
const STRENGTH: ReadingSpec = { dimension: 'pressure', tool: 'guess-tolerance' };

/** What carries each mount of an end on the frame. */
export function buildBrackets(gaps: Gaps, end: End): Brackets {
  return Object.fromEntries(
    MOUNT_NAMES.map((mount) => {
      const key = `${end}.bracket.${mount}`;
      return [mount, gaps.at(key) === undefined ? null : buildBracket(gaps, key, mount)];
    }),
  ) as Record<MountName, Bracket | null>;
}

function buildBracket(gaps: Gaps, key: string, mount: MountName): Bracket {
  const kind = choice<BracketKind>(gaps, `${key}.kind`, BRACKET_KINDS, 'tower');
  const isPlate = kind === 'plate';
  const has = (part: string): boolean => gaps.at(`${key}.${part}`) !== undefined;
  const yielding = gaps.readingOr(`${key}.yield`, STRENGTH, USUAL.bracketYield);
  const ultimate = gaps.readingOr(`${key}.ultimate`, STRENGTH, {
    ...USUAL.bracketUltimate,
    value: Math.max(USUAL.bracketUltimate.value, 1.1 * yielding.value),
  });
  if (ultimate.text !== '' && ultimate.value <= yielding.value)
    gaps.problem('rig-inconsistent', ultimate.key, ultimate.text, 'more than the yield strength');
  return {
    mount,
    kind,
    standoff: isPlate ? null : gaps.needed(`${key}.standoff`, TAPED),
    offset: gaps.readingOr(`${key}.offset`, TAPED, USUAL.bracketOffset),
    section: isPlate ? null : buildSection(gaps, `${key}.section`),
    gusset: has('gusset') ? buildGusset(gaps, `${key}.gusset`) : null,
    plate: isPlate || has('plate') ? buildPlate(gaps, `${key}.plate`) : null,
    weldLeg: has('weld') ? gaps.needed(`${key}.weld.leg`, GAUGED) : null,
    bolts: kind === 'bolt-on' || has('bolts') ? buildBolts(gaps, `${key}.bolts`) : null,
    stud: has('stud')
      ? {
          ...screw(gaps, `${key}.stud`),
          engaged: gaps.needed(`${key}.stud.engaged`, TAPED),
        }
      : null,
    yield: yielding,
    ultimate,
  };
}

function choice<T extends string>(gaps: Gaps, key: string, all: readonly T[], usual: T): T {
  const typed = gaps.text(key);
  return all.find((each) => each === typed) ?? usual;
}

const numberOr = (gaps: Gaps, key: string, usual: number): number => {
  const typed = gaps.at(key);
  return typeof typed === 'number' ? typed : usual;
};

function buildSection(gaps: Gaps, key: string): BracketSection {
  const wall = gaps.typedReading(`${key}.wall`, GAUGED);
  const within = (outside: Reading) => {
    if (wall && outside.text !== '' && 2 * wall.value >= outside.value)
      gaps.problem('rig-inconsistent', wall.key, wall.text, `less than half of ${outside.text}`);
  };
  if (gaps.at(`${key}.diameter`) !== undefined) {
    for (const other of ['width', 'depth'])
      if (gaps.at(`${key}.${other}`) !== undefined)
        gaps.problem(
          'rig-inconsistent',
          `${key}.${other}`,
          gaps.text(`${key}.${other}`) ?? '',
          `either this or ${key}.diameter`,
        );
    const diameter = gaps.needed(`${key}.diameter`, GAUGED);
    within(diameter);
    return { shape: 'round', diameter, wall: wall ?? gaps.needed(`${key}.wall`, GAUGED) };
  }
  const [width, depth] = [gaps.needed(`${key}.width`, GAUGED), gaps.needed(`${key}.depth`, GAUGED)];
  if (!wall) return { shape: 'bar', width, depth };
  within(width);
  within(depth);
  return { shape: 'box', width, depth, wall };
}

const buildGusset = (gaps: Gaps, key: string) => ({
  thickness: gaps.needed(`${key}.thickness`, GAUGED),
  count: numberOr(gaps, `${key}.count`, 2),
  reach: gaps.needed(`${key}.reach`, TAPED),
  height: gaps.needed(`${key}.height`, TAPED),
});

function buildPlate(gaps: Gaps, key: string): BracketPlate {
  const isRound = gaps.at(`${key}.diameter`) !== undefined;
  const width = gaps.needed(isRound ? `${key}.diameter` : `${key}.width`, TAPED);
  const length = isRound ? width : gaps.needed(`${key}.length`, TAPED);
  const pad = gaps.needed(`${key}.pad`, TAPED);
  const short = Math.min(width.value, length.value);
  if (pad.text !== '' && width.text !== '' && length.text !== '' && pad.value >= short)
    gaps.problem('rig-inconsistent', pad.key, pad.text, 'less than the plate between its edges');
  return { width, length, isRound, thickness: gaps.needed(`${key}.thickness`, GAUGED), pad };
}

function screw(gaps: Gaps, key: string): { readonly thread: ThreadName; readonly grade: BoltGrade } {
  if (gaps.at(`${key}.thread`) === undefined) gaps.ask(`${key}.thread`, THREAD_NAMES.join(', '));
  return {
    thread: choice<ThreadName>(gaps, `${key}.thread`, THREAD_NAMES, 'M10'),
    grade: choice<BoltGrade>(gaps, `${key}.grade`, BOLT_GRADES, '8.8'),
  };
}

const buildBolts = (gaps: Gaps, key: string) => ({
  ...screw(gaps, key),
  count: numberOr(gaps, `${key}.count`, 4),
  spread: gaps.needed(`${key}.spread`, TAPED),
  wall: gaps.needed(`${key}.wall`, GAUGED),
  edge: gaps.needed(`${key}.edge`, TAPED),
});
