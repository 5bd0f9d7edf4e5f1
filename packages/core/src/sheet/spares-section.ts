import { ENDS } from '../finding/place.ts';
import { PLACE_NAMES } from '../words/places.ts';
import type { SheetAnswers } from './answers.ts';
import { type SheetSection, tick } from './sheet.ts';

/** What is carried along. Common practice, no source. */
export function sparesSection({ setup }: SheetAnswers): SheetSection {
  const stops = ENDS.map((end) => `${PLACE_NAMES[end].toLowerCase()} ${setup.ends[end].stop.id}`);
  const strap = ENDS.some((end) => setup.ends[end].base.strap);
  return {
    id: 'spares',
    title: 'Carry along',
    blocks: [
      tick(`A stop for each end (${stops.join(', ')}) with its nut.`),
      ...(strap ? [tick('A strap with its bolts.')] : []),
      tick('Shock bolts, rod-end jam nuts, joint kit and strap kit of the driveshaft, a coil isolator.'),
      tick('Brake hose, fluid, caps; fitted by whoever may.'),
      tick('Torque wrench, this sheet, marker rings, clay, tape, pressure gauge.'),
    ],
  };
}
