import type { UnitSystem } from '../quantity/quantity.ts';
import type { TyreFoot } from '../rig/tyre-feel.ts';
import { plain } from './amounts.ts';

/** Ends whose feet differ by more than this share are worth a word: one ground stands for both. */
const WORTH_SAYING = 0.15;

/** How the tyres read the ground of a ride, without a full stop: `the ground is averaged over a foot of 13 1/2 in, …`. */
export function tyreFootText({ feel, contact, used }: TyreFoot, { system }: { system: UnitSystem }): string {
  if (feel === 'point')
    return 'tyres touch the ground at a point: short sharp things are harder here than on the trail';
  // An upper bound by geometry: a tenth of an inch would pretend.
  const length = (value: number): string => plain(rounded(value, system), 'length', system);
  const { front, rear } = contact;
  const apart = Math.abs(front - rear) > WORTH_SAYING * used;
  const mean = apart ? ` (mean of ${length(front)} in front and ${length(rear)} behind)` : '';
  return feel === 'footprint'
    ? `tyres average the ground over a foot of ${length(used)}${mean}, the most that their load and rate allow`
    : `tyres roll over the ground on two cams that go with a foot of ${length(used)}${mean}, in the proportions of a passenger tyre`;
}

const ROUND = { shop: 0.0254 / 2, metric: 0.01 } as const;
const rounded = (value: number, system: UnitSystem): number =>
  Math.round(value / ROUND[system]) * ROUND[system];
