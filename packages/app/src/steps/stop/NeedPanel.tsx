import { ENDS, type Rig, type UnitSystem } from '@lastinch/core';
import { STOP_TRIALS, type StopNeedRequest } from '@lastinch/core/stops';
import { useEffect, useMemo } from 'react';
import { LANES, SEED } from '../../answers.ts';
import panel from '../../design/panel.module.css';
import frame from '../../design/step.module.css';
import { PlainButton } from '../../parts/PlainButton.tsx';
import { END_NAME, LANE_NAME } from '../../parts/place-name.ts';
import { Segments } from '../../parts/Segments.tsx';
import { WorkState } from '../../parts/WorkState.tsx';
import type { StopDesks } from '../../stops.ts';
import { useStore } from '../../store.ts';
import { sameQuestion } from '../../work-desk.ts';
import type { Workbench } from '../../workbench.ts';
import { useAsked } from './asked.ts';
import { CoursePicker } from './CoursePicker.tsx';
import { Field } from './Field.tsx';
import { NeedResult } from './NeedResult.tsx';
import style from './StopStep.module.css';

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
  const { end, setEnd, lane, setLane, setup, demands, speed, courses, setCourses } = useAsked(
    workbench,
    forms,
    rig,
    system,
  );
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
      <p className={frame.lead}>
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
