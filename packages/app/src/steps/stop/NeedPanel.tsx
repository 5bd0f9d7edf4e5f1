import {
  ENDS,
  type End,
  FASTEST,
  needle,
  parseQuantity,
  problemText,
  type Rig,
  SLOWEST,
  type UnitSystem,
} from '@lastinch/core';
import { type Demand, STOP_TRIALS, type StopNeedRequest } from '@lastinch/core/stops';
import { useEffect, useMemo } from 'react';
import { LANES, type Lane, SEED } from '../../answers.ts';
import panel from '../../design/panel.module.css';
import { PlainButton } from '../../parts/PlainButton.tsx';
import { END_NAME, LANE_NAME } from '../../parts/place-name.ts';
import { Segments } from '../../parts/Segments.tsx';
import { type StopDesks, sameQuestion } from '../../stops.ts';
import { useStore } from '../../store.ts';
import type { Workbench } from '../../workbench.ts';
import { CoursePicker } from './CoursePicker.tsx';
import { Field } from './Field.tsx';
import { type Forms, type Read, useTyped } from './forms.ts';
import { NeedResult } from './NeedResult.tsx';
import style from './StopStep.module.css';
import { WorkState } from './WorkState.tsx';

/** A rig that is let go goes down, not along [m/s]. */
const ANY_SPEED = 1;

/** Which stop curve one end of one setup needs over chosen courses. Asked for by hand: it takes seconds. */
export function NeedPanel(props: {
  readonly workbench: Workbench;
  readonly desks: StopDesks;
  readonly rig: Rig;
  readonly system: UnitSystem;
}) {
  const { workbench, desks, rig, system } = props;
  const { forms } = desks;
  const answers = useStore(workbench.answers, (state) => state);
  const [end, setEnd] = useTyped(forms, 'need.end', 'front') as [End, (end: string) => void];
  const [lane, setLane] = useTyped(forms, 'need.lane', 'now') as [Lane, (lane: string) => void];
  const { demands, speed, courses, setCourses } = useDemands(rig, forms, system);
  const setup = answers[lane].setup === null ? null : answers[lane].setupId;
  const question = useMemo(
    (): StopNeedRequest | null =>
      setup === null || demands === null
        ? null
        : { rig, setup, end, demands, trials: STOP_TRIALS, seed: SEED },
    [rig, setup, end, demands],
  );
  const desk = desks.need(`${end} ${setup}`);
  const state = useStore(desk.state, (each) => each);
  const busy = state.status === 'working';
  const stale = state.answers !== null && !sameQuestion(state.answers, question);

  // Nobody waits for an answer to what has been changed meanwhile.
  useEffect(() => {
    if (busy && state.asked !== null && !sameQuestion(state.asked, question)) desk.cancel();
  }, [busy, state.asked, question, desk]);

  const other = answers[lane === 'now' ? 'proposed' : 'now'].setup?.ends[end].stop.id ?? null;
  return (
    <section className={panel.panel} aria-labelledby="need-title">
      <h3 className={panel.heading} id="need-title">
        Which curve this end needs
      </h3>
      <p className={style.lead}>
        Drives simple curves of every strength over your courses, and every stop of the rig file, bolted where
        the present one stands.
      </p>
      <div className={style.choices}>
        <Segments
          label="End"
          options={ENDS.map((each) => ({ value: each, label: END_NAME[each] }))}
          value={end}
          onChange={setEnd}
        />
        <Segments
          label="Setup"
          options={LANES.map((each) => ({ value: each, label: LANE_NAME[each] }))}
          value={lane}
          onChange={setLane}
        />
      </div>
      <CoursePicker rig={rig} chosen={courses} system={system} onChange={setCourses} />
      <div className={style.ask}>
        <Field
          forms={forms}
          name="need.speed"
          label="Speed over all of them"
          placeholder="each at its own"
          error={speed.error}
        />
        {/* One button all the time, so that the focus stays on it. */}
        <PlainButton
          weight={busy ? 'plain' : 'strong'}
          isDisabled={!busy && question === null}
          onPress={() => {
            if (busy) desk.cancel();
            else if (question !== null) desk.ask(question, { byHand: true });
          }}
        >
          {busy ? 'Cancel' : state.answer === null ? 'Find the band' : 'Find it again'}
        </PlainButton>
        <WorkState state={state} stale={stale} working="Driving stops…" hasShare />
      </div>
      {state.answer === null ? null : (
        <div className={panel.result} data-stale={stale}>
          <NeedResult need={state.answer} other={other} system={system} />
        </div>
      )}
    </section>
  );
}

/** Courses and speeds that are asked about; null while something typed cannot be used or nothing is chosen. */
function useDemands(rig: Rig, forms: Forms, system: UnitSystem) {
  const known = Object.keys(rig.courses);
  const [chosen, setChosen] = useTyped(forms, 'need.courses', known[0] ?? '');
  const [text] = useTyped(forms, 'need.speed');
  const speed = useMemo(() => readSpeed(text, system), [text, system]);
  const courses = useMemo(
    () => chosen.split('\n').filter((id) => Object.hasOwn(rig.courses, id)),
    [chosen, rig],
  );
  const demands = useMemo((): readonly Demand[] | null => {
    if (speed.error !== null || courses.length === 0) return null;
    const all = courses.flatMap((id): Demand[] => {
      const course = rig.courses[id];
      const own = course?.shape.kind === 'drop' ? ANY_SPEED : (speed.value ?? course?.speed ?? null);
      return course === undefined || own === null ? [] : [{ name: id, course: course.shape, speed: own }];
    });
    return all.length === courses.length ? all : null;
  }, [rig, courses, speed]);
  const isSpeedMissing = speed.error === null && courses.length > 0 && demands === null;
  return {
    demands,
    speed: isSpeedMissing
      ? { value: null, error: 'One of these courses has no speed of its own: type one.' }
      : speed,
    courses,
    setCourses: (ids: readonly string[]) => setChosen(ids.join('\n')),
  };
}

function readSpeed(text: string, system: UnitSystem): Read<number> {
  if (text.trim() === '') return { value: null, error: null };
  const read = parseQuantity(text, 'speed');
  if (!read.ok)
    return { value: null, error: read.problems.map((one) => problemText({ ...one, where: {} })).join(' ') };
  const { value } = read.value;
  if (value >= SLOWEST && value <= FASTEST) return { value, error: null };
  const [slowest, fastest] = [SLOWEST, FASTEST].map((limit) => needle(limit, system));
  return { value: null, error: `A ride needs a speed from ${slowest} to ${fastest}.` };
}
