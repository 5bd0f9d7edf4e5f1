import { ENDS, type End } from '../finding/place.ts';
import type { Setup } from '../rig/setup.ts';
import { NOMINAL_DRAWS } from '../stance/draws.ts';
import type { LinkColumn } from './link-columns.ts';
import { LINE_RULES } from './links-limits.ts';
import { setupLinks } from './setup-links.ts';
import { travelColumns } from './travel-columns.ts';

/** What pulls tight, binds or comes apart when an axle goes as far as it can. */
export const HARD_LIMITS = ['hose', 'shaft', 'pad'] as const;
export type HardLimit = (typeof HARD_LIMITS)[number];
export type LimitBroken = `${HardLimit}.${End}`;

export const LIMITS: readonly LimitBroken[] = ENDS.flatMap((end) =>
  HARD_LIMITS.map((limit): LimitBroken => `${limit}.${end}`),
);

/** Room to each limit at the nominal readings; only those of which enough was measured. */
export type LimitRooms = ReadonlyMap<LimitBroken, number>;

/** Rules of thumb break nothing: of a hose the slack itself counts, of a shaft what its maker says. */
const PARTS: Readonly<Partial<Record<LinkColumn['of'], HardLimit>>> = {
  'hose-slack': 'hose',
  'joint-bump': 'shaft',
  'joint-droop': 'shaft',
  'joint-most': 'shaft',
  'slip-swing': 'shaft',
  'slip-left-out': 'shaft',
  'stop-off-pad': 'pad',
};

/**
 * Least room to hose, shaft and strike pad of a setup at the nominal readings, in the unit of each line over the room
 * where all is well: below zero the limit is broken. From tape alone where links were not measured.
 *
 * @param speed – at which shafts turn [m/s]: no limit here rests on it
 */
export function limitRooms(setup: Setup, speed: number): LimitRooms {
  const links = setupLinks(setup, NOMINAL_DRAWS, speed);
  const rooms = new Map<LimitBroken, number>();
  for (const column of [...travelColumns(setup, NOMINAL_DRAWS), ...(links.ok ? links.value.columns : [])]) {
    const part = PARTS[column.of];
    const room = roomOf(column);
    if (part === undefined || room === null || !ENDS.some((end) => end === column.place)) continue;
    const name = `${part}.${column.place as End}` as const;
    rooms.set(name, Math.min(rooms.get(name) ?? Number.POSITIVE_INFINITY, room));
  }
  return rooms;
}

function roomOf({ of, values, limits, limitOf, scale }: LinkColumn): number | null {
  // A hose needs slack by practice, but only a taut one tears.
  if (of === 'hose-slack') return values[0] / scale;
  if (limits === null || limitOf === 'practice') return null;
  const sense = LINE_RULES[of].keep === 'below' ? -1 : 1;
  const room = (sense * (values[0] - limits[0])) / scale;
  return Number.isFinite(room) ? room : null;
}

/** Limits that a setup breaks and the one it is held against does not, or breaks less. */
export function brokenLimits(rooms: LimitRooms, before: LimitRooms): readonly LimitBroken[] {
  return LIMITS.filter((limit) => {
    const room = rooms.get(limit);
    return room !== undefined && room < 0 && room < Math.min(0, before.get(limit) ?? 0);
  });
}
