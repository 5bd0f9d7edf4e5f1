import type { End, Side } from '../finding/place.ts';

/** What ended a flex, as `articulationOf` tells it. */
interface FlexEnd {
  readonly up: Side;
  readonly limits: readonly {
    readonly id: string;
    readonly name: string;
    readonly side: Side;
    readonly firstShare: number;
  }[];
  readonly pad: { readonly stands: 'whole' | 'edge' | 'off' | 'unknown' } | null;
}

/** Less often than this another limit is no news. */
const SELDOM = 0.025;

/** `ends on strap fully stretched, low side (or hose taut, about 12 in 100); stop tip part over the edge of its pad`. */
export function flexEndText({ up, limits, pad }: FlexEnd): string {
  const [first, ...others] = limits;
  if (!first || first.id === 'none')
    return 'nothing known ends it; strap, shock, coil or contacts are not measured far enough';
  const named = ({ name, side }: (typeof limits)[number]) => `${name}, ${side === up ? 'high' : 'low'} side`;
  const also = others
    .filter(({ id, firstShare }) => id !== 'none' && firstShare > SELDOM)
    .map((limit) => `${named(limit)}, about ${Math.round(100 * limit.firstShare)} in 100`);
  const or = also.length > 0 ? ` (or ${also.join('; ')})` : '';
  return `ends on ${named(first)}${or}${PADS[pad?.stands ?? 'unknown']}`;
}

const PADS = {
  whole: '; stop tip whole on its pad',
  edge: '; stop tip part over the edge of its pad',
  off: '; stop tip OFF its pad',
  unknown: '',
} as const;

/** Which tyre lifts on a ramp, or that none does. */
export const rampEndText = (lifts: End | null): string =>
  lifts === null ? 'both axles at the end of their flex, no tyre lifted' : `then a ${lifts} tyre lifts`;
