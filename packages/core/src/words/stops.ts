import type { Figure } from '../finding/figure.ts';
import type { Problem } from '../finding/problem.ts';
import { fromSi } from '../quantity/dimension.ts';
import { formatValue } from '../quantity/format.ts';
import type { UnitSystem } from '../quantity/quantity.ts';
import { shownUnit } from '../quantity/shown.ts';
import { atLeast, plain, sizeOf, withTolerance } from './amounts.ts';
import { problemText } from './problems.ts';
import { needle } from './speeds.ts';

type Broken = 'clearance' | 'body' | 'bracket' | 'crush';

/** A stop that was driven, as the job says it. */
interface Driven {
  readonly id: string;
  readonly isInSetup: boolean;
  readonly verdict: 'does' | 'open' | 'does-not';
  readonly broken: readonly Broken[];
  readonly near: readonly Broken[];
  readonly spare: Figure;
  readonly body: Figure;
  readonly force: Figure;
  readonly crush: Figure;
  readonly usableCrush: number;
  readonly touchesAfter: number;
}

interface Unknown {
  readonly id: string;
  readonly problems: readonly Problem[];
}

interface Limits {
  readonly body: Figure;
  readonly bracket: Figure | null;
}

/** What a stop does wrong, as the end of a sentence about it. */
export const brokenText = (broken: Broken): string =>
  ({
    clearance: 'runs past the reserve',
    body: 'hits the body too hard',
    bracket: 'loads its bracket too much',
    crush: 'is crushed further than it bears',
  })[broken];

const listed = (all: readonly string[]): string =>
  all.length < 2 ? (all[0] ?? '') : `${all.slice(0, -1).join(', ')} and ${all[all.length - 1]}`;

/**
 * What came of one stop, with its numbers: `soft does: 1/4 in ± 1/8 is left above the reserve, body 1.6 g ± 0.2 of 2.5 g …`.
 *
 * @returns two sentences at most; for a stop that could not be driven, what is missing
 */
export function candidateText(
  one: Driven | Unknown,
  { limits, system }: { readonly limits: Limits; readonly system: UnitSystem },
): string {
  if ('problems' in one)
    return `${one.id} could not be driven: ${one.problems.map((problem) => problemText(problem)).join(' ')}`;
  const { verdict, broken, near, spare, body, force, crush, usableCrush, touchesAfter } = one;
  const name = one.isInSetup ? `${one.id}, on this end now,` : one.id;
  const nearly = near.length > 0 ? `within its interval it ${listed(near.map(brokenText))}` : '';
  const says = {
    does: 'does',
    open: 'does, but not surely',
    'does-not': listed(broken.map(brokenText)),
  }[verdict];
  const left =
    spare.value < 0
      ? `${sizeOf(spare, system)} too far for reserve and flex`
      : `${withTolerance(spare, system)} left above reserve and flex`;
  const bracket = limits.bracket === null ? '' : ` of ${limitText(limits.bracket, system)}`;
  const touch =
    Math.abs(touchesAfter) < 0.0005
      ? ''
      : ` It touches ${plain(Math.abs(touchesAfter), 'length', system)} ${touchesAfter < 0 ? 'earlier' : 'later'} than the one there now.`;
  return (
    `${name} ${says}: ${left}, body ${withTolerance(body, system)} of ${limitText(limits.body, system)}, ` +
    `force ${withTolerance(force, system)}${bracket}, crush ${withTolerance(crush, system)} of ${plain(usableCrush, 'length', system)}` +
    `${nearly === '' ? '' : `; ${nearly}`}.${touch}`
  );
}

/** A range of curves of one steepness. */
interface Family {
  readonly power: number;
  readonly range: {
    readonly least: number;
    readonly most: number;
    readonly isLeastOpen: boolean;
    readonly isMostOpen: boolean;
  } | null;
  readonly below: readonly Broken[];
  readonly above: readonly Broken[];
}

const limitText = ({ value, dimension }: Figure, system: UnitSystem): string =>
  formatValue(value, dimension, { system });

/** To two digits of the unit it is shown in: `170 lb`, `22000 lb`. */
function roughForce(value: number, system: UnitSystem): string {
  const unit = shownUnit('force', system, value);
  return `${Number(fromSi(value, unit).toPrecision(2))} ${unit.name}`;
}

/** Cells of a table: least and most force at the end of the room, and why not less or more. */
export function familyText(
  { range, below, above }: Family,
  system: UnitSystem,
): { readonly least: string; readonly most: string } {
  if (range === null) return { least: 'none does', most: `it ${listed(below.map(brokenText))}` };
  const of = (value: number, isOpen: boolean, why: readonly Broken[], way: string): string => {
    const force = roughForce(value, system);
    return isOpen ? `${force} or ${way}` : `${force}; ${way} ${listed(why.map(brokenText))}`;
  };
  return {
    least: of(range.least, range.isLeastOpen, below, 'less'),
    most: of(range.most, range.isMostOpen, above, 'more'),
  };
}

/** Force goes with crush to this power: `straight`, `power 2`. */
export const steepnessText = (power: number): string => (power === 1 ? 'straight' : `power ${power}`);

interface Cures {
  readonly isOtherEndShort: boolean;
  readonly speedShare: number | null;
  readonly moreRoom: number | null;
  readonly speedShareDamped: number | null;
}

/**
 * What must change where no stop does: slower, more room, more damping, each by itself.
 *
 * @param most – what was tried at most: room [m], and the gain of damping, for example 1.2
 */
export function curesText(
  { isOtherEndShort, speedShare, moreRoom, speedShareDamped }: Cures,
  demands: readonly { readonly name: string; readonly speed: number }[],
  { system, most }: { readonly system: UnitSystem; readonly most: { room: number; damping: number } },
): readonly string[] {
  const slower = (share: number): string =>
    listed(demands.map(({ name, speed }) => `${name} at ${needle(speed * share, system)}`));
  const figure = (value: number): Figure => ({ dimension: 'length', value, tolerance: null });
  const harder = `${Math.round(100 * (most.damping - 1))} % more compression damping at this end`;
  return [
    speedShare === null
      ? 'Slower: no stop does even at a quarter of these speeds.'
      : `Slower: some stop does with ${slower(speedShare)}.`,
    moreRoom === null
      ? `More travel: ${plain(most.room, 'length', system)} more between touch and metal is not enough.`
      : `More travel: some stop does with ${atLeast(figure(moreRoom), system)} more between touch and metal (a notch, or a lift with longer coil and shock).`,
    speedShareDamped === null
      ? `Damping: with ${harder} no stop does even at a quarter of these speeds.`
      : speedShareDamped === 1
        ? `Damping: with ${harder} some stop does as asked.`
        : `Damping: ${harder} is not enough; with it some stop does with ${slower(speedShareDamped)}.`,
    ...(isOtherEndShort
      ? ['The other end runs past its own reserve there, whatever is done at this one: look at it first.']
      : []),
  ];
}
