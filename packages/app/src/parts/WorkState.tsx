import { problemText } from '@lastinch/core';
import panel from '../design/panel.module.css';
import type { WorkState as State } from '../work-desk.ts';

/** How a question stands: beside the fields that ask it. */
export function WorkState<Question, Answer>(props: {
  readonly state: State<Question, Answer>;
  readonly stale: boolean;
  /** What is done meanwhile: `Driving stops…`. */
  readonly working: string;
  readonly hasShare?: boolean;
}) {
  const { state, stale, working } = props;
  const { status, problems, message, share } = state;
  return (
    <div className={panel.state} role="status">
      {status === 'working' ? <p>{working}</p> : null}
      {status === 'working' && props.hasShare === true ? (
        <progress className={panel.bar} max={1} value={share} aria-label={working} />
      ) : null}
      {status === 'cancelled' ? <p>Stopped before it was done.</p> : null}
      {status === 'refused'
        ? problems.map((problem) => (
            <p key={`${problem.code} ${problem.where.line ?? ''}`} className={panel.broken}>
              {problemText(problem)}
            </p>
          ))
        : null}
      {status === 'broken' ? <p className={panel.broken}>{message}</p> : null}
      {stale && state.answer !== null && status !== 'working' ? (
        <p className={panel.stale}>What is shown is from before the last change.</p>
      ) : null}
    </div>
  );
}
