import { cosineRise, level, type Stretch } from './stretch.ts';

/** A ditch from lip to lip: half a cosine down, a level bottom, half a cosine up. */
export function ditch({
  depth,
  length,
  bottom,
}: {
  readonly depth: number;
  readonly length: number;
  readonly bottom: number;
}): readonly Stretch[] {
  const bank = (length - bottom) / 2;
  return [cosineRise(bank, -depth), level(bottom), cosineRise(bank, depth)];
}
