import { problemText } from '@lastinch/core';
import type { ChooseRequest } from '@lastinch/core/choose';
import { useEffect } from 'react';
import { type ChooseDesk, type ChooseState, isBusy } from '../../choosing.ts';
import panel from '../../design/panel.module.css';
import { Choice } from '../../parts/Choice.tsx';
import { PlainButton } from '../../parts/PlainButton.tsx';
import { useStore } from '../../store.ts';
import style from './ChooseStep.module.css';

const TRIALS = [4, 16, 64];

/** Asks for the study: it takes minutes, can be stopped, and goes on from what is there. */
export function AskPanel(props: {
  readonly desk: ChooseDesk;
  readonly state: ChooseState;
  readonly request: ChooseRequest;
  /** The request as text. */
  readonly asked: string;
  readonly stale: boolean;
}) {
  const { desk, state, request, asked, stale } = props;
  const trials = useStore(desk.view, (view) => view.trials);
  const busy = isBusy(state);

  useEffect(() => desk.look(request), [desk, request]);
  // Nobody waits for an answer to what has been changed meanwhile.
  useEffect(() => {
    if (busy && state.asked !== null && JSON.stringify(state.asked) !== asked) desk.cancel();
  }, [busy, state.asked, asked, desk]);

  const pieces = state.kept !== null && JSON.stringify(state.kept.request) === asked ? state.kept.pieces : 0;
  return (
    <section className={panel.panel} aria-labelledby="choose-ask">
      <h3 className={panel.heading} id="choose-ask">
        The best few of all that may be changed
      </h3>
      <p className={style.lead}>
        Drives every combination that the rig file lists under <code>choices</code>, each with its best
        settings for the trail and for the road, and keeps those that no other beats in all that is wanted.
        What cannot win is left out as soon as that is certain.
      </p>
      <div className={style.ask}>
        <Choice
          label="Rigs within your tolerances"
          options={TRIALS.map((count) => ({ value: String(count), label: String(count) }))}
          value={String(trials)}
          onChange={(value) => desk.view.set((view) => ({ ...view, trials: Number(value) }))}
        />
        {/* One button all the time, so that the focus stays on it. */}
        <PlainButton
          weight={busy ? 'plain' : 'strong'}
          onPress={() => {
            if (busy) desk.cancel();
            else desk.ask(request);
          }}
        >
          {busy
            ? 'Cancel'
            : pieces > 0 && (state.answer === null || stale)
              ? 'Go on'
              : state.answer === null
                ? 'Find them'
                : 'Find them again'}
        </PlainButton>
        <Progress state={state} stale={stale} pieces={pieces} />
      </div>
    </section>
  );
}

function Progress(props: { readonly state: ChooseState; readonly stale: boolean; readonly pieces: number }) {
  const { state, stale, pieces } = props;
  const { status, share } = state;
  const waits = !isBusy(state) && status !== 'done' && pieces > 0;
  return (
    <div className={panel.state} role="status">
      {status === 'working' ? <p>Driving candidates…</p> : null}
      {status === 'answering' ? <p>Putting the answer together…</p> : null}
      {isBusy(state) ? <progress className={panel.bar} max={1} value={share} aria-label="Study" /> : null}
      {status === 'cancelled' ? <p>Stopped before all was driven.</p> : null}
      {waits ? (
        <p>{pieces === 1 ? '1 piece of it is' : `${pieces} pieces of it are`} done and kept here.</p>
      ) : null}
      {status === 'refused'
        ? state.problems.map((problem) => (
            <p key={`${problem.code} ${problem.where.key ?? ''} ${problem.found}`} className={panel.broken}>
              {problemText(problem)}
            </p>
          ))
        : null}
      {status === 'broken' ? <p className={panel.broken}>{state.message}</p> : null}
      {stale && !isBusy(state) ? (
        <p className={panel.stale}>What is shown is from before the last change.</p>
      ) : null}
    </div>
  );
}
