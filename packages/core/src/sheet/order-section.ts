import { ENDS } from '../finding/place.ts';
import type { SheetAnswers } from './answers.ts';
import { type SheetBlock, type SheetSection, tick, warn } from './sheet.ts';
import { touchedEnds } from './work-section.ts';

/** The order of work: what is hard to undo comes after what shows whether it fits. */
export function orderSection(answers: SheetAnswers): SheetSection {
  const { setup } = answers;
  const ends = touchedEnds(answers);
  const any = (changed: (end: (typeof ENDS)[number]) => boolean): boolean => ENDS.some(changed);
  const cut = any((end) => {
    const { seatAndStopDrop, notch, links } = setup.ends[end].patch;
    return Boolean(seatAndStopDrop || notch || links);
  });
  const coil = any((end) => {
    const { spring, springSpacer, seatAndStopDrop } = setup.ends[end].patch;
    return Boolean(spring || springSpacer || seatAndStopDrop);
  });
  const blocks: readonly (SheetBlock | false)[] = [
    warn(
      'Never under a rig that stands on a jack alone. Level ground, wheels chocked, rated stands under frame and axle.',
    ),
    tick(
      'Before anything is touched: the gaps, heights and weights of the rig file once more, at the same load.',
    ),
    tick('Fuel, driver weight and pressures written down, so that it can be measured again the same way.'),
    tick('Jack and stands placed; axle held on its own; straps and shocks still on.'),
    coil && tick('Coils out, with compressors made for it, nobody in line. A squeezed coil kills.'),
    tick(
      'Axle cycled by jack through all of its travel without coils: every part that comes near is on the list.',
    ),
    cut && tick('Everything marked and tacked, not welded. Mount to mount measured, left against right.'),
    cut && tick('Axle cycled again, level and with one wheel up: the gaps of the next section.'),
    cut && tick('Welded out by a qualified person; let cool slowly; looked at, painted.'),
    ends.length > 0 &&
      tick('Bolts new where they were loosened; torqued, marked with a line across nut and bracket.'),
    tick(
      'Hoses, lines and wires: tied, no rub, slack at full droop on both locks. Brakes looked at by a qualified person.',
    ),
    coil && tick('Coils in, seated at both ends; on the ground, bounced, rolled forth and back.'),
    tick(
      'Ride height and gaps measured again and typed into the rig file: the next verdict rests on what is there.',
    ),
  ];
  return { id: 'order', title: 'Order of work', blocks: blocks.filter((block) => block !== false) };
}
