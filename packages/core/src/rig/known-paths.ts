import type { End } from '../finding/place.ts';

export const PATH_ELEMENTS = ['spring', 'shock', 'stop'] as const;
export type PathElement = (typeof PATH_ELEMENTS)[number];

/** Which elements of an end close along their measured points; for the others the typed ratio holds over all travel. */
export type KnownPaths = Readonly<Record<End, readonly PathElement[]>>;
