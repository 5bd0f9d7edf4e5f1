import { readFileSync } from 'node:fs';
import { join } from 'node:path';

/** `rooms.json`: the allowed arrows between packages, and between the rooms of the core. */
export interface RoomList {
  /** Package → packages that it may import, through their public surface only. */
  readonly packages: Readonly<Record<string, readonly string[]>>;
  /** Room that is a border → packages that may import it; no other room may. */
  readonly borders: Readonly<Record<string, readonly string[]>>;
  readonly rooms: Readonly<Record<string, Room>>;
}

export interface Room {
  readonly does: string;
  readonly sees: readonly string[];
}

/** Reads the list of a house and refuses names that are not in it, so that a misspelt arrow is not a silent hole. */
export function readRoomList(root: string): RoomList {
  const list = JSON.parse(readFileSync(join(root, 'rooms.json'), 'utf8')) as RoomList;
  const unknown: string[] = [];
  for (const [name, sees] of Object.entries(list.packages))
    for (const seen of sees) if (!(seen in list.packages)) unknown.push(`package ${name} sees ${seen}`);
  for (const [name, room] of Object.entries(list.rooms))
    for (const seen of room.sees) if (!(seen in list.rooms)) unknown.push(`room ${name} sees ${seen}`);
  for (const [name, by] of Object.entries(list.borders)) {
    if (!(name in list.rooms)) unknown.push(`border ${name}`);
    for (const one of by) if (!(one in list.packages)) unknown.push(`border ${name} seen by ${one}`);
  }
  if (unknown.length > 0) throw new Error(`rooms.json names what it does not list: ${unknown.join('; ')}`);
  return list;
}

/** The files of a package that other packages may import, from `exports` of its package.json: subpath → file. */
export function surfaceOf(root: string, name: string): ReadonlyMap<string, string> {
  const manifest = JSON.parse(readFileSync(join(root, 'packages', name, 'package.json'), 'utf8')) as {
    exports?: Record<string, string>;
  };
  return new Map(
    Object.entries(manifest.exports ?? {}).map(([subpath, file]) => [
      subpath,
      `packages/${name}/${file.replace(/^\.\//, '')}`,
    ]),
  );
}
