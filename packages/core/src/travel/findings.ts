import type { Finding } from '../finding/finding.ts';
import { CORNERS, type Corner } from '../finding/place.ts';
import type { TravelColumn } from './result.ts';

/** What the travel columns of a setup say: the verdict of each corner. */
export function travelFindings(corners: Readonly<Record<Corner, TravelColumn>>): readonly Finding[] {
  return CORNERS.map((corner): Finding => {
    const { verdict, spare, contacts, probability, blame, clearance, hardTravel, freeBump, crush } =
      corners[corner];
    return {
      id: `travel-${verdict}.${corner}`,
      code: `travel-${verdict}`,
      severity: verdict === 'pass' ? 'fine' : verdict === 'fail' ? 'over' : 'unproven',
      place: corner,
      value: spare,
      limit: { dimension: 'length', value: spare.tolerance ?? 0, tolerance: 0 },
      likelihood: probability.spareBelowZero,
      facts: { contact: contacts[0].name, spare, clearance, hardTravel, freeBump, crush },
      because: blame.map(({ key }) => key),
      remedies: [],
    };
  });
}
