import {
  type CourseSpec,
  parseSpeedRange,
  problemText,
  type Result,
  type Rig,
  type SpeedRange,
  sweepProblems,
  type UnitSystem,
  usualStep,
} from '@lastinch/core';
import { useEffect, useMemo } from 'react';
import { LANES, type Lane } from '../../answers.ts';
import panel from '../../design/panel.module.css';
import frame from '../../design/step.module.css';
import { PlainButton } from '../../parts/PlainButton.tsx';
import { TypedField } from '../../parts/TypedField.tsx';
import { useStore } from '../../store.ts';
import { isBusy, type SweepDesk, type SweepQuestion, type SweepState } from '../../sweep-state.ts';
import style from './SweepPanel.module.css';
import { SweepResult } from './SweepResult.tsx';

export interface SweepPanelProps {
  readonly sweeps: SweepDesk;
  readonly rig: Rig;
  readonly course: CourseSpec;
  /** The setups that can be ridden. */
  readonly setups: Readonly<Record<Lane, string | null>>;
  /** Range of speeds as typed. */
  readonly text: string;
  readonly system: UnitSystem;
  readonly onText: (text: string) => void;
}

/** How fast both setups may go over the course before each limit is broken. Asked for by hand: it takes seconds. */
export function SweepPanel(props: SweepPanelProps) {
  const { sweeps, rig, course, text, system } = props;
  const { now, proposed } = props.setups;
  const state = useStore(sweeps.sweep, (each) => each);
  const range = useMemo(() => rangeOf(text, course), [text, course]);
  const question = useMemo(
    () => questionOf(rig, course, { now, proposed }, range),
    [rig, course, now, proposed, range],
  );
  const stale = state.answers !== null && !sameQuestion(state.answers, question);
  const busy = isBusy(state);

  // Nobody waits for an answer to what has been changed meanwhile.
  useEffect(() => {
    if (busy && state.asked !== null && !sameQuestion(state.asked, question)) sweeps.cancel();
  }, [busy, state.asked, question, sweeps]);

  const shown = state.answer?.course === course.id ? state.answer : null;
  return (
    <section className={panel.panel} aria-labelledby="sweep-title">
      <h3 className={panel.heading} id="sweep-title">
        How fast may it go
      </h3>
      <p className={frame.lead}>
        Drives both setups at every speed of a range, and again with other rigs that your readings allow, and
        tells where each limit is first broken.
      </p>
      <div className={style.ask}>
        <TypedField
          label="Speeds"
          name="sweep"
          text={text}
          placeholder="5..45 mph"
          error={range.ok ? null : range.problems.map(problemText).join(' ')}
          onType={props.onText}
          onLeave={() => undefined}
        />
        {/* One button all the time, so that the focus stays on it. */}
        <PlainButton
          weight={busy ? 'plain' : 'strong'}
          isDisabled={!busy && question === null}
          onPress={() => {
            if (busy) sweeps.cancel();
            else if (question !== null) sweeps.ask(question);
          }}
        >
          {busy ? 'Cancel' : state.answer === null ? 'Find the limits' : 'Find them again'}
        </PlainButton>
        <Progress state={state} stale={stale} />
      </div>
      {shown === null || state.answers === null ? null : (
        <div className={panel.result} data-stale={stale}>
          <SweepResult answer={shown} lanes={lanesOf(state.answers.setups)} system={system} />
        </div>
      )}
    </section>
  );
}

function Progress({ state, stale }: { readonly state: SweepState; readonly stale: boolean }) {
  const { status, share } = state;
  return (
    <div className={`${panel.state} ${style.state}`} role="status">
      {status === 'scanning' ? <p>Driving both setups as measured…</p> : null}
      {status === 'sharpening' ? <p>Now over the tolerances of your readings…</p> : null}
      {isBusy(state) ? <progress className={panel.bar} max={1} value={share} aria-label="Sweep" /> : null}
      {status === 'cancelled' ? <p>Stopped before all was driven.</p> : null}
      {status === 'broken' ? <p className={panel.broken}>{state.message}</p> : null}
      {stale ? <p className={panel.stale}>What is shown is from before the last change.</p> : null}
    </div>
  );
}

function rangeOf(text: string, course: CourseSpec): Result<SpeedRange> {
  const range = parseSpeedRange(text);
  if (!range.ok) return range;
  const { from, to } = range.value;
  const problems = sweepProblems({
    course: course.shape,
    courseName: course.id,
    from,
    to,
    step: usualStep(from, to),
  });
  const first = problems[0];
  return first === undefined ? range : { ok: false, problems: [{ ...first, where: {}, found: text.trim() }] };
}

function questionOf(
  rig: Rig,
  course: CourseSpec,
  { now, proposed }: Readonly<Record<Lane, string | null>>,
  range: Result<SpeedRange>,
): SweepQuestion | null {
  const setups = [...new Set([now, proposed])].filter((setup) => setup !== null);
  if (!range.ok || setups.length === 0) return null;
  const { from, to } = range.value;
  return {
    rig,
    setups,
    course: course.shape,
    courseName: course.id,
    wantedSpeed: course.speed,
    distancePerDay: course.perDay,
    from,
    to,
    step: usualStep(from, to),
  };
}

/** A rig and a course are immutable values, so the same object is the same question. */
const sameQuestion = (a: SweepQuestion, b: SweepQuestion | null): boolean =>
  b !== null &&
  a.rig === b.rig &&
  a.course === b.course &&
  a.from === b.from &&
  a.to === b.to &&
  a.setups.join('\n') === b.setups.join('\n');

/** Where in the answer each lane stands; both in the same place when they are the same setup. */
const lanesOf = (setups: readonly string[]): Readonly<Record<Lane, number>> =>
  Object.fromEntries(LANES.map((lane, k) => [lane, Math.min(k, setups.length - 1)])) as Record<Lane, number>;
