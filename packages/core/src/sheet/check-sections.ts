import { CORNERS, cornerAt, ENDS, endOf, sideOf } from '../finding/place.ts';
import { figureOfReading } from '../stance/columns.ts';
import { PLACE_NAMES } from '../words/places.ts';
import { type SheetAnswers, written } from './answers.ts';
import { courseAt, hardestCorner } from './decision.ts';
import { type SheetBlock, type SheetReading, type SheetSection, say, tick, warn } from './sheet.ts';

/** Contacts of a corner that are looked at: what comes later than these is far away. */
const LOOKED_AT = 3;

/** What is seen and measured cold, before and again after welding. */
export function coldSection(answers: SheetAnswers): SheetSection {
  const { after } = answers.comparison;
  const gaps = CORNERS.flatMap((corner) =>
    after.travel.corners[corner].contacts.slice(0, LOOKED_AT).map(
      (contact): SheetReading => ({
        kind: 'reading',
        what: `${PLACE_NAMES[corner]}, axle raised level until it touches ${contact.name}: axle travel from ride height`,
        expected: written(contact.travel, answers),
        key: '',
      }),
    ),
  );
  const touches = CORNERS.map((corner): SheetReading => {
    const gap = `${endOf(corner)}.stop.gap.${sideOf(corner)}`;
    return {
      kind: 'reading',
      what: `${PLACE_NAMES[corner]}, at ride height: free bump until the stop touches`,
      expected: written(after.travel.corners[corner].freeBump, answers),
      key: gap,
    };
  });
  return {
    id: 'cold',
    title: 'Check cold, and again after welding',
    blocks: [
      say(
        'Without coils, on stands, nobody under the axle while it moves. Write what you read; a reading outside the interval means that model or tape is wrong: find out which.',
      ),
      ...touches,
      ...gaps,
      tick(
        'Full droop on the straps: shock not open to its own end, coil held, hose slack on both locks, shaft turned by hand a whole turn.',
      ),
      tick('One wheel up, the other down, both ways: tyre, bar, shaft, hose and exhaust clear.'),
      tick('After welding: all of it once more. Metal moves when it cools.'),
    ],
  };
}

/** The first drive, and what is looked at after it. */
export function firstDriveSection({ rides }: SheetAnswers): SheetSection {
  return {
    id: 'first-drive',
    title: 'First drive',
    blocks: [
      warn(
        'Closed or private ground with permission, helmet, belts, second vehicle, radio, first aid. Half the speed first, then up by 3 to 5 mph (5 to 10 km/h). Never alone; stop on any new noise, smell or pull.',
      ),
      tick('Cable tie or rubber ring on each shock shaft against the body of the shock at ride height.'),
      tick('Clay at the contact that comes first of each end, twice as thick as the gap that is expected.'),
      tick('Paint line across every bolt and bracket edge; witness dab on pad and stop.'),
      tick(
        `The stretch driven three times the same way${rides.length > 0 ? ', at the speeds of the card below' : ''}; marks read and set back each time.`,
      ),
      tick(
        'After 6 miles (10 km), 60 miles (100 km), then before each trip: welds, brackets, stops, bolts, hoses.',
      ),
    ],
  };
}

/** Expected marks, so that reality can contradict the model; what is read goes back into the rig file. */
export function cardSection(answers: SheetAnswers): SheetSection {
  const { rides, setup } = answers;
  const readings = rides.flatMap((ride) =>
    ENDS.flatMap((end): readonly SheetBlock[] => {
      const corner = hardestCorner(ride, [cornerAt(end, 'left'), cornerAt(end, 'right')]);
      const { peakTravel, clearance } = ride.corners[corner];
      const { shock, flex } = setup.ends[end].base;
      const ratio = shock.ratio.value;
      const marker = {
        ...peakTravel,
        value: peakTravel.value * ratio,
        tolerance: peakTravel.tolerance === null ? null : peakTravel.tolerance * ratio,
      };
      const where = `${PLACE_NAMES[corner]}, ${courseAt(ride, answers)}`;
      return [
        {
          kind: 'reading',
          what: `${where}: marker on the shock shaft, moved from its place at ride height (axle travel ${written(peakTravel, answers)})`,
          expected: written(marker, answers),
          key: `${end}.witness.passes`,
        },
        {
          kind: 'reading',
          what: `${where}: thinnest clay at the contact that comes first`,
          expected: `${written(clearance, answers)}, less what the frame gives there (up to ${written(figureOfReading(flex), answers)})`,
          key: `${end}.witness.clay`,
        },
      ];
    }),
  );
  return {
    id: 'card',
    title: 'Inspection card',
    blocks:
      rides.length === 0
        ? [say('The rig file names no course with a speed, so that no mark can be expected.')]
        : [
            say(
              'Type axle travel of each pass under witness, passes, and the thinnest clay under witness, clay, of that end: the next check holds them against the model. A marker moves by axle travel times the ratio of the shock.',
            ),
            ...readings,
          ],
  };
}
