import {
  CORNERS,
  type Corner,
  type CourseSpec,
  FASTEST,
  needle,
  parseQuantity,
  problemText,
  type RideAnswer,
  type Rig,
  SLOWEST,
  type UnitSystem,
} from '@lastinch/core';
import type { FieldState } from '@lastinch/core/rigfile';
import { useEffect, useMemo } from 'react';
import { LANES, type Lane } from '../../answers.ts';
import frame from '../../design/step.module.css';
import { Choice } from '../../parts/Choice.tsx';
import { TypedField } from '../../parts/TypedField.tsx';
import type { RideDesk, RideQuestion, Rides } from '../../rides.ts';
import { sameMembers, useStore } from '../../store.ts';
import type { SweepDesk } from '../../sweep-state.ts';
import { useUnits } from '../../use-units.ts';
import type { Workbench } from '../../workbench.ts';
import { CourseFields } from './CourseFields.tsx';
import { RideResult } from './RideResult.tsx';
import { RideState } from './RideState.tsx';
import style from './RideStep.module.css';
import { SweepPanel } from './SweepPanel.tsx';

/** What most people want to know first. */
const USUAL_SWEEP = { shop: '5..45 mph', metric: '8..72 km/h' } as const;

/** A pause in typing before a ride is asked for; the older one is stopped anyway. */
const PAUSE_MS = 250;

/** Course and speed, and what both setups do on it. */
export default function RideStep(props: {
  readonly workbench: Workbench;
  readonly desk: RideDesk;
  readonly sweeps: SweepDesk;
}) {
  const { workbench, desk, sweeps } = props;
  const rig = useStore(workbench.document, (state) => state.rig);
  const session = useStore(workbench.session, (state) => state);
  const answers = useStore(workbench.answers, (state) => state);
  // Progress comes many times a second and is nobody's business here.
  const ridden = useStore(desk.rides, riddenIn, sameMembers);

  const course = rig === null ? null : courseOf(rig, session.course);
  const system = useUnits(workbench);
  const courseSpeed = useStore(workbench.document, ({ fields }) => speedIn(fields, course?.id));
  const typedSpeed = session.speedText ?? courseSpeed;
  const speed = useMemo(() => parseQuantity(typedSpeed, 'speed'), [typedSpeed]);
  const isDrop = course?.shape.kind === 'drop';
  const speedValue = isDrop ? 1 : speed.ok && isDrivable(speed.value.value) ? speed.value.value : null;
  // Only which setups can be ridden decides what is asked; new figures of the same setups do not.
  const nowId = answers.now.setup === null ? null : answers.now.setupId;
  const proposedId = answers.proposed.setup === null ? null : answers.proposed.setupId;

  useEffect(() => {
    if (rig === null || course === null || speedValue === null) return;
    const question = (setup: string | null): RideQuestion | null =>
      setup === null
        ? null
        : {
            rig,
            setup,
            course: course.shape,
            courseName: course.id,
            speed: speedValue,
            distancePerDay: course.perDay,
          };
    const timer = setTimeout(
      () => desk.ask({ now: question(nowId), proposed: question(proposedId) }),
      PAUSE_MS,
    );
    return () => clearTimeout(timer);
  }, [rig, course, speedValue, nowId, proposedId, desk]);

  if (rig === null || course === null)
    return (
      <div className={frame.step}>
        <h2 className={frame.title}>Ride</h2>
        <p className={frame.lead}>
          {rig === null
            ? 'The rig file cannot be read yet, so there is nothing to ride.'
            : 'This rig file has no courses. Add one under “courses:” in the file.'}
        </p>
      </div>
    );

  const shown = shownAnswers(ridden, course.id);
  const stale =
    isStale(ridden.nowQuestion, rig, answers.now.setupId, course, speedValue) ||
    isStale(ridden.proposedQuestion, rig, answers.proposed.setupId, course, speedValue);
  return (
    <div className={frame.step}>
      <h2 className={frame.title}>Ride</h2>
      <div className={style.ask}>
        <Choice
          label="Course"
          value={course.id}
          options={Object.keys(rig.courses).map((id) => ({ value: id, label: id }))}
          hint={course.notes === '' ? undefined : course.notes}
          onChange={(id) => workbench.choose({ course: id, speedText: null })}
        />
        {isDrop ? (
          <p className={frame.lead}>Let go above flat ground: speed has no effect.</p>
        ) : (
          <TypedField
            label="Speed"
            text={typedSpeed}
            placeholder="30 mph"
            error={speedError(speed, speedValue, system)}
            onType={(text) => workbench.choose({ speedText: text })}
            onLeave={() => undefined}
          />
        )}
        <RideState desk={desk} />
      </div>
      <CourseFields workbench={workbench} course={course.id} system={system} />
      <RideResult
        key={course.id}
        course={course}
        answers={shown}
        lanes={answers}
        stale={stale}
        corner={session.corner ?? worstCorner(shown)}
        system={system}
        theme={session.theme}
        onCorner={(corner) => workbench.choose({ corner })}
      />
      {isDrop ? null : (
        <SweepPanel
          sweeps={sweeps}
          rig={rig}
          course={course}
          setups={{ now: nowId, proposed: proposedId }}
          text={session.sweepText ?? USUAL_SWEEP[system]}
          system={system}
          onText={(text) => workbench.choose({ sweepText: text })}
        />
      )}
    </div>
  );
}

function courseOf(rig: Rig, chosen: string | null): CourseSpec | null {
  const first = Object.keys(rig.courses)[0];
  return (
    (chosen === null ? undefined : rig.courses[chosen]) ??
    (first === undefined ? null : (rig.courses[first] ?? null))
  );
}

/** The speed of a course as its owner typed it. */
const speedIn = (fields: readonly FieldState[], course: string | undefined): string =>
  fields.find(({ path }) => path.join('.') === `courses.${course}.speed`)?.typed ?? '';

function speedError(
  speed: ReturnType<typeof parseQuantity>,
  value: number | null,
  system: UnitSystem,
): string | null {
  if (!speed.ok) return speed.problems.map(problemText).join(' ');
  if (value !== null) return null;
  const [slowest, fastest] = [SLOWEST, FASTEST].map((limit) => needle(limit, system));
  return `A ride needs a speed from ${slowest} to ${fastest}.`;
}

const isDrivable = (speed: number): boolean => speed >= SLOWEST && speed <= FASTEST;

/** Both answers and what they answer, without how far a newer one is. */
const riddenIn = ({ now, proposed }: Rides) => ({
  now: now.answer,
  nowQuestion: now.answers,
  proposed: proposed.answer,
  proposedQuestion: proposed.answers,
});

/** Answers on the course in view; those of another course are not shown under its name. */
function shownAnswers(
  ridden: Readonly<Record<Lane, RideAnswer | null>>,
  course: string,
): Readonly<Record<Lane, RideAnswer | null>> {
  const of = (lane: Lane): RideAnswer | null => (ridden[lane]?.course === course ? ridden[lane] : null);
  return { now: of('now'), proposed: of('proposed') };
}

const isStale = (
  question: RideQuestion | null,
  rig: Rig,
  setup: string,
  course: CourseSpec,
  speed: number | null,
): boolean =>
  question !== null &&
  (question.rig !== rig ||
    question.setup !== setup ||
    question.course !== course.shape ||
    question.speed !== speed);

/** The corner with the least clearance in either setup: where a person wants to look first. */
function worstCorner(answers: Readonly<Record<Lane, RideAnswer | null>>): Corner {
  const clearance = (corner: Corner): number =>
    Math.min(
      ...LANES.map((lane) => answers[lane]?.run.corners[corner].clearance ?? Number.POSITIVE_INFINITY),
    );
  return [...CORNERS].sort((a, b) => clearance(a) - clearance(b))[0] ?? 'frontLeft';
}
