import type { LimitOf, LinkLineId } from '../finding/link-lines.ts';
import type { Place } from '../finding/place.ts';
import type { Column } from '../stance/columns.ts';
import { LINE_RULES } from './links-limits.ts';

/** A line of one setup before it becomes a figure: nominal value first, then one a trial; not a number where there is none. */
export interface LinkColumn {
  readonly of: LinkLineId;
  readonly place: Place;
  readonly part: string;
  readonly values: Column;
  /** What it is held against, and how much room there is where all is well; null without a limit. */
  readonly limits: Column | null;
  readonly scale: number;
  readonly limitOf: LimitOf | null;
  /** Rests on a length that nobody measured. */
  readonly unsure: boolean;
}

/** A limit, and how far from it a line is where nothing needs to be thought of. */
export interface Limit {
  readonly at: number;
  readonly scale: number;
  /** Where it is not what such lines usually are held against. */
  readonly of?: LimitOf;
}

/** Takes a value of a line in a trial. */
export type Put = (of: LinkLineId, place: Place, part: string, value: number, limit?: Limit) => void;

/** Collects lines trial by trial. */
export function columnBook(length: number): {
  readonly put: (trial: number) => Put;
  readonly columns: () => readonly LinkColumn[];
} {
  const book = new Map<string, LinkColumn>();
  const blank = () => new Float64Array(length).fill(Number.NaN);
  return {
    put: (trial) => (of, place, part, value, limit) => {
      const key = `${of} ${place} ${part}`;
      let column = book.get(key);
      if (!column) {
        // What the nominal rig does not have is nobody's line.
        if (trial > 0) return;
        const held = LINE_RULES[of].keep !== null && limit ? limit : null;
        column = {
          of,
          place,
          part,
          values: blank(),
          limits: held && blank(),
          scale: held?.scale ?? 1,
          limitOf: held && (held.of ?? LINE_RULES[of].limitOf),
          unsure: false,
        };
        book.set(key, column);
      }
      column.values[trial] = value;
      if (column.limits && limit) column.limits[trial] = limit.at;
    },
    columns: () => [...book.values()],
  };
}
