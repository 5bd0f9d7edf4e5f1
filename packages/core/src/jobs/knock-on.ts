import type { Dimension, Figure } from '../finding/figure.ts';
import type { Finding, Remedy, Severity } from '../finding/finding.ts';
import { LINK_LINES, type LimitOf, type LinkLineId } from '../finding/link-lines.ts';
import { ENDS, type Place } from '../finding/place.ts';
import { severityOf } from '../linkage/margins.ts';
import { type Column, columnOf, figureOf } from '../stance/columns.ts';
import type { LinkColumn } from './link-columns.ts';
import type { KnockOnLine } from './links-answer.ts';
import { LINE_RULES } from './links-limits.ts';

/** A line of two setups before its limit and what can be done are looked at. */
export interface PairedLine {
  readonly of: LinkLineId;
  readonly place: Place;
  readonly part: string;
  readonly before: Figure | null;
  readonly after: Figure | null;
  readonly change: Figure | null;
  readonly limit: Figure | null;
  readonly limitOf: LimitOf | null;
  readonly room: Figure | null;
  /** Room where all is well; its share that is gone is what the list is sorted by. */
  readonly scale: number;
}

/** Lines of two setups side by side; `before` null looks at one alone. */
export function paired(
  before: readonly LinkColumn[] | null,
  after: readonly LinkColumn[],
): readonly PairedLine[] {
  const keyOf = ({ of, place, part }: LinkColumn) => `${of} ${place} ${part}`;
  const from = new Map((before ?? []).map((column) => [keyOf(column), column]));
  const to = new Map(after.map((column) => [keyOf(column), column]));
  return [...new Set([...from.keys(), ...to.keys()])].flatMap((key): readonly PairedLine[] => {
    const [a, b] = [from.get(key) ?? null, to.get(key) ?? null];
    const one = b ?? a;
    if (!one) return [];
    const { of, place, part } = one;
    const limits = b?.limits ?? null;
    return [
      {
        of,
        place,
        part,
        before: a && figureOfColumn(a, a.values),
        after: b && figureOfColumn(b, b.values),
        change:
          a && b
            ? figureOfColumn(
                { ...b, unsure: a.unsure || b.unsure },
                columnOf(b.values.length, (i) => b.values[i] - a.values[i]),
              )
            : null,
        limit: b && limits && figureOfColumn(b, limits),
        limitOf: b?.limitOf ?? null,
        room: b && limits && figureOfColumn(b, roomOf(b, limits)),
        scale: one.scale,
      },
    ];
  });
}

const roomOf = ({ of, values }: LinkColumn, limits: Column): Column => {
  const sense = LINE_RULES[of].keep === 'below' ? -1 : 1;
  return columnOf(values.length, (i) => sense * (values[i] - limits[i]));
};

/** Null where the nominal rig has none; without tolerance where some trial has none or a length was never measured. */
function figureOfColumn({ of, unsure }: LinkColumn, column: Column): Figure | null {
  if (!Number.isFinite(column[0])) return null;
  const { dimension } = LINE_RULES[of];
  const { value, tolerance } = figureOf(dimension, column);
  const known = tolerance !== null && Number.isFinite(tolerance) && !unsure;
  return { dimension, value: clean(value), tolerance: known ? clean(tolerance) : null };
}

/** What rounding makes of nothing, in every unit. */
const NOTHING = 1e-12;
const clean = (value: number): number => (Math.abs(value) < NOTHING ? 0 : value);

/**
 * The knock-on list: lines with what is left to their limits, what the findings say and what can be done; the nearest
 * to its limit first, then those without a limit in the order of `LINK_LINES`.
 *
 *     used = 1 − room ÷ (room where all is well)
 */
export function knockOnLines(
  lines: readonly PairedLine[],
  findings: readonly Finding[],
): readonly KnockOnLine[] {
  return lines.map((line) => knockOnLine(line, findings)).sort(nearestFirst);
}

function knockOnLine(
  { of, place, part, before, after, change, limit, limitOf, room, scale }: PairedLine,
  findings: readonly Finding[],
): KnockOnLine {
  const rule = LINE_RULES[of];
  const own = findings.filter((finding) => speaksOf(finding, { of, place, part }));
  const kept = room && keptBy(room, limitOf);
  const said = own.filter(({ severity }) => severity !== 'fine').flatMap(({ remedies }) => remedies);
  const needed = kept === null ? Math.abs(after?.value ?? 0) > rule.worth : kept !== 'fine';
  const usual: readonly Remedy[] = needed ? rule.remedies.map((code): Remedy => ({ code })) : [];
  return {
    id: [of, place, part].filter((step) => step !== '').join('.'),
    of,
    place,
    part,
    before,
    after,
    change,
    limit,
    limitOf,
    room,
    used: room && 1 - room.value / scale,
    kept,
    findings: [...new Set(own.map(({ code }) => code))],
    remedies: unique(said.length > 0 ? said : usual),
  };
}

/** A rule of thumb breaks nothing: beyond it there is no proof, and no more. */
function keptBy(room: Figure, limitOf: LimitOf | null): Severity {
  const severity = severityOf(room);
  return severity === 'over' && limitOf === 'practice' ? 'unproven' : severity;
}

function speaksOf(
  { code, place, id }: Finding,
  line: { readonly of: LinkLineId; readonly place: Place; readonly part: string },
): boolean {
  if (!LINE_RULES[line.of].findings.includes(code)) return false;
  // A finding of one corner speaks of the line of its end.
  if (place !== line.place && !place.startsWith(line.place)) return false;
  const about = id.slice(`${code}.${place}`.length + 1);
  return line.part === '' || about === '' || about.split(' ')[0] === line.part;
}

function unique(remedies: readonly Remedy[]): readonly Remedy[] {
  return [...new Map(remedies.map((remedy) => [JSON.stringify(remedy), remedy])).values()];
}

const PLACES: readonly Place[] = ['rig', ...ENDS];

function nearestFirst(a: KnockOnLine, b: KnockOnLine): number {
  if (a.used !== null || b.used !== null) {
    const difference = (b.used ?? Number.NEGATIVE_INFINITY) - (a.used ?? Number.NEGATIVE_INFINITY);
    if (difference !== 0) return difference;
  }
  return (
    LINK_LINES.indexOf(a.of) - LINK_LINES.indexOf(b.of) || PLACES.indexOf(a.place) - PLACES.indexOf(b.place)
  );
}

/** Less than anybody reads off a tape, a level or a scale. */
const SEEN: Readonly<Partial<Record<Dimension, number>>> = {
  length: 2e-4,
  angle: 3e-4,
  ratio: 1e-3,
  speed: 0.05,
};
/** Of all else, this share of its value. */
const SEEN_SHARE = 1e-3;

/** Whether a line is another one after the change: its value, or that it is there at all. */
export function changes({ before, after, change }: KnockOnLine): boolean {
  if (before === null || after === null) return before !== after;
  if (change === null) return before.value !== after.value;
  const seen = SEEN[change.dimension] ?? SEEN_SHARE * Math.abs(before.value);
  return Math.abs(change.value) > seen || (change.tolerance ?? 0) > seen;
}
