import { ENDS } from '../finding/place.ts';
import { type KnownPaths, PATH_ELEMENTS, type PathElement } from '../rig/known-paths.ts';

const NAMES: Readonly<Record<PathElement, string>> = { spring: 'spring', shock: 'shock', stop: 'stop' };

/** By which ratios a ride was driven, without a full stop: `front spring and shock close along their measured points, …`. */
export function pathsText(known: KnownPaths): string {
  const ends = ENDS.filter((end) => known[end].length > 0);
  if (ends.length === 0)
    return 'links and mounts were not measured: spring, shock and stop keep their typed ratios over all travel';
  const isAll = ENDS.every((end) => known[end].length === PATH_ELEMENTS.length);
  if (isAll) return 'spring, shock and stop close along their measured points at both ends';
  const along = ends.map((end) => `${end} ${list(known[end].map((element) => NAMES[element]))}`);
  const typed = ENDS.flatMap((end): readonly string[] => {
    const left = PATH_ELEMENTS.filter((element) => !known[end].includes(element));
    return left.length > 0 ? [`${end} ${list(left.map((element) => NAMES[element]))}`] : [];
  });
  return `${list(along)} close along their measured points; ${list(typed)} by typed ratios, the same over all travel`;
}

function list(names: readonly string[]): string {
  if (names.length < 2) return names.join('');
  return `${names.slice(0, -1).join(', ')} and ${names[names.length - 1]}`;
}
