import { ENDS } from '../finding/place.ts';
import { good, type Result } from '../finding/problem.ts';
import { BRACKET_TRIALS, checkBrackets } from '../jobs/bracket.ts';
import type { BracketsAnswer } from '../jobs/bracket-answer.ts';
import { compareSetups } from '../jobs/compare.ts';
import { linksRig } from '../jobs/links.ts';
import type { RideAnswer } from '../jobs/protocol.ts';
import { rideRig } from '../jobs/ride.ts';
import type { UnitSystem } from '../quantity/quantity.ts';
import type { CourseSpec } from '../rig/course-spec.ts';
import type { Rig } from '../rig/rig.ts';
import { AS_MEASURED } from '../rig/setup.ts';
import { resolveSetup } from '../rig/setup-resolve.ts';
import type { SheetAnswers } from './answers.ts';
import { assumedSection } from './assumed-section.ts';
import { bracketsSection } from './brackets-section.ts';
import { cautionsSection } from './cautions-section.ts';
import { cardSection, coldSection, firstDriveSection } from './check-sections.ts';
import { decisionSection } from './decision.ts';
import { linesSection } from './lines-section.ts';
import { orderSection } from './order-section.ts';
import { settingsSection } from './settings-section.ts';
import type { Sheet, SheetSection } from './sheet.ts';
import { sparesSection } from './spares-section.ts';
import { travelSection } from './travel-section.ts';
import { workSection } from './work-section.ts';

export interface SheetRequest {
  readonly rig: Rig;
  /** The setup that is built. */
  readonly setup: string;
  /** The setup that is on the rig now; the rig as measured when left out. */
  readonly against?: string;
  /** Names of courses that are driven; all of the file that have a speed, and drops, when left out. */
  readonly courses?: readonly string[];
  readonly system: UnitSystem;
  /** Runs over the measurement tolerances behind each interval of a ride. */
  readonly trials?: number;
  readonly seed?: number;
}

/** Share of the work that the rides are; the rest are brackets. */
const RIDES = 0.8;
/** Enough runs that an interval holds 95 %. */
const TRIALS = 64;
/** A drop has no speed of its own; the ride asks for one all the same [m/s]. */
const ANY_SPEED = 1;

const SECTIONS: readonly ((answers: SheetAnswers) => SheetSection)[] = [
  decisionSection,
  travelSection,
  workSection,
  bracketsSection,
  linesSection,
  settingsSection,
  orderSection,
  coldSection,
  firstDriveSection,
  cardSection,
  sparesSection,
  assumedSection,
  cautionsSection,
];

/**
 * The build sheet of a setup: checks it against what is on the rig, drives it over the courses of the file, and writes
 * down what is to be done, in which order, and which readings are to be expected.
 *
 * @param onProgress – share of the work done, 0…1, never falling
 * @failure what `compareSetups`, `linksRig` and `rideRig` say
 */
export function sheetOfRig(request: SheetRequest, onProgress?: (share: number) => void): Result<Sheet> {
  const answers = sheetAnswers(request, onProgress);
  if (!answers.ok) return answers;
  const { setup, against } = answers.value;
  return good({
    rig: request.rig.name,
    setup: setup.id,
    against: against.id,
    system: request.system,
    sections: SECTIONS.map((section) => section(answers.value)),
  });
}

function sheetAnswers(request: SheetRequest, onProgress?: (share: number) => void): Result<SheetAnswers> {
  const { rig, system, against: now = AS_MEASURED, trials = TRIALS, seed = 1 } = request;
  const setup = resolveSetup(rig, request.setup);
  if (!setup.ok) return setup;
  const against = resolveSetup(rig, now);
  if (!against.ok) return against;
  const comparison = compareSetups(rig, { setup: setup.value.id, against: now });
  if (!comparison.ok) return comparison;
  const links = linksRig(rig, { setup: setup.value.id, against: now });
  if (!links.ok) return links;
  const driven = drivenCourses(request);
  const rides: RideAnswer[] = [];
  for (const [k, { id, shape, speed }] of driven.entries()) {
    const ride = rideRig(
      {
        rig,
        setup: setup.value.id,
        course: shape,
        courseName: id,
        speed: speed ?? ANY_SPEED,
        historyRate: 0,
        trials,
        seed,
      },
      (share) => onProgress?.((RIDES * (k + share)) / driven.length),
    );
    if (!ride.ok) return ride;
    rides.push(ride.value);
  }
  const brackets = bracketsOf(request, driven, (share) => onProgress?.(RIDES + (1 - RIDES) * share));
  if (!brackets.ok) return brackets;
  onProgress?.(1);
  return good({
    setup: setup.value,
    against: against.value,
    comparison: comparison.value,
    links: links.value,
    rides,
    brackets: brackets.value,
    system,
  });
}

/** The brackets of the file under the same courses; null where it tells of none, or nothing is driven. */
function bracketsOf(
  { rig, setup, seed = 1 }: SheetRequest,
  driven: readonly CourseSpec[],
  onProgress: (share: number) => void,
): Result<BracketsAnswer | null> {
  const told = ENDS.some((end) => Object.values(rig[end].brackets).some((bracket) => bracket !== null));
  if (!told || driven.length === 0) return good(null);
  const demands = driven.map(({ id, shape, speed }) => ({
    name: id,
    course: shape,
    speed: speed ?? ANY_SPEED,
  }));
  return checkBrackets({ rig, setup, demands, trials: BRACKET_TRIALS, seed, force: null }, onProgress);
}

function drivenCourses({ rig, courses }: SheetRequest): readonly CourseSpec[] {
  return Object.values(rig.courses).filter(({ id, shape, speed }) =>
    courses ? courses.includes(id) : shape.kind === 'drop' || (speed !== null && shape.kind !== 'flat'),
  );
}
