import type { Finding } from '../finding/finding.ts';
import { CORNERS, type Corner } from '../finding/place.ts';
import type { RideAnswer } from '../jobs/protocol.ts';
import type { Verdict } from '../travel/result.ts';
import { findingText } from '../words/findings.ts';
import { PLACE_NAMES } from '../words/places.ts';
import { needle } from '../words/speeds.ts';
import { type SheetAnswers, written } from './answers.ts';
import { heading, type SheetBlock, type SheetSection, say, warn } from './sheet.ts';

const VERDICTS: Readonly<Record<Verdict, string>> = {
  pass: 'pass',
  'not-proven': 'not proven',
  fail: 'fail',
};

/** What is built, what it does for the travel of each corner and on each course, and what still stands against it. */
export function decisionSection(answers: SheetAnswers): SheetSection {
  const { setup, against, comparison, rides } = answers;
  const { gone, come, after } = comparison;
  const open = after.findings.filter(stands);
  const ridden = rides.flatMap(({ findings }) => findings.filter(stands));
  const blocks: SheetBlock[] = [
    say(`Built on this sheet: ${setup.id}. On the rig now: ${against.id}.`),
    ...(setup.notes === '' ? [] : [say(setup.notes)]),
    ...(open.length + ridden.length === 0
      ? []
      : [
          warn(
            'This setup is not proven. Read what stands against it before anything is cut; settle it or choose another.',
          ),
        ]),
    {
      kind: 'table',
      heads: ['Corner', 'now', 'as built', 'to spare now', 'to spare as built'],
      rows: CORNERS.map((corner) => verdictRow(corner, answers)),
    },
    ...told('What it cures', gone, answers),
    ...told('What it brings', come, answers),
    ...told(
      'What still stands against it',
      open.filter((one) => !come.includes(one)),
      answers,
    ),
  ];
  if (rides.length > 0)
    blocks.push(heading('What the model expects on your courses'), {
      kind: 'table',
      heads: ['Course', 'corner hit hardest', 'stop crushed', 'left to metal', 'stop force'],
      rows: rides.map((ride) => rideRow(ride, answers)),
    });
  blocks.push(...told('Beyond what you accept there, or not proven', ridden, answers));
  return { id: 'decision', title: 'What is built, and why', blocks };
}

/** Breaks a limit, or may. */
export const stands = ({ severity }: Finding): boolean => severity === 'over' || severity === 'unproven';

function verdictRow(corner: Corner, { comparison, ...answers }: SheetAnswers): readonly string[] {
  const { verdict } = comparison.corners[corner];
  const spare = (one: 'before' | 'after') => written(comparison[one].travel.corners[corner].spare, answers);
  return [
    PLACE_NAMES[corner],
    VERDICTS[verdict.before],
    VERDICTS[verdict.after],
    spare('before'),
    spare('after'),
  ];
}

function told(title: string, findings: readonly Finding[], { system }: SheetAnswers): readonly SheetBlock[] {
  if (findings.length === 0) return [];
  return [heading(title), ...findings.map((finding) => say(findingText(finding, { system })))];
}

/** The corner with the least left to metal. */
export const hardestCorner = ({ corners }: RideAnswer, among: readonly Corner[] = CORNERS): Corner =>
  among.reduce((worst, corner) =>
    corners[corner].clearance.value < corners[worst].clearance.value ? corner : worst,
  );

function rideRow(ride: RideAnswer, answers: SheetAnswers): readonly string[] {
  const corner = hardestCorner(ride);
  const { peakCrush, clearance, peakStopForce } = ride.corners[corner];
  return [
    courseAt(ride, answers),
    PLACE_NAMES[corner],
    ...[peakCrush, clearance, peakStopForce].map((figure) => written(figure, answers)),
  ];
}

/** `whoops at 20 mph`; one that is let go has no speed. */
export const courseAt = ({ course, speed }: RideAnswer, { system, setup }: SheetAnswers): string =>
  setup.rig.courses[course]?.shape.kind === 'drop' ? course : `${course} at ${needle(speed, system)}`;
