import type { Rig } from '@lastinch/core';
import { USUAL_CHOOSE_TRIALS } from '@lastinch/core/choose';
import { useMemo } from 'react';
import { SEED } from '../../answers.ts';
import { type ChooseDesk, requestOf } from '../../choosing.ts';
import panel from '../../design/panel.module.css';
import { useStore } from '../../store.ts';
import { useUnits } from '../../use-units.ts';
import type { Workbench } from '../../workbench.ts';
import { AskPanel } from './AskPanel.tsx';
import { ChooseResult } from './ChooseResult.tsx';
import style from './ChooseStep.module.css';

/** The best few of all that the rig file lists under `choices`, and why. */
export default function ChooseStep(props: { readonly workbench: Workbench; readonly desk: ChooseDesk }) {
  const { workbench, desk } = props;
  const rig = useStore(workbench.document, (state) => state.rig);
  return (
    <div className={style.step}>
      <h2 className={style.title}>Choose</h2>
      {rig === null ? (
        <p className={style.lead}>The rig file cannot be read yet, so there is nothing to choose from.</p>
      ) : rig.choices === null ? (
        <NoChoices />
      ) : (
        <Study workbench={workbench} desk={desk} rig={rig} />
      )}
    </div>
  );
}

function Study(props: { readonly workbench: Workbench; readonly desk: ChooseDesk; readonly rig: Rig }) {
  const { workbench, desk, rig } = props;
  const system = useUnits(workbench);
  const state = useStore(desk.state, (each) => each);
  const trials = useStore(desk.view, (view) => view.trials);
  const request = useMemo(() => requestOf(rig, trials, SEED), [rig, trials]);
  // Compared by what they say: another setup in the rig file is no other question.
  const asked = useMemo(() => JSON.stringify(request), [request]);
  const answers = useMemo(() => JSON.stringify(state.answers), [state.answers]);
  const stale = state.answers !== null && answers !== asked;
  return (
    <>
      <AskPanel desk={desk} state={state} request={request} asked={asked} stale={stale} />
      {state.answer === null ? null : (
        <div className={panel.result} data-stale={stale}>
          <ChooseResult workbench={workbench} desk={desk} answer={state.answer} system={system} />
        </div>
      )}
    </>
  );
}

const EXAMPLE = `choices:
  budget: 400
  hours: 16
  liftAtMost: 1 1/2 in
  front:
    stop:
      soft: { price: 95, hours: 1 }
    stopSpacer: { sizes: [1/2 in ± 1/32], price: 12, hours: 1 }
  drive:
    - { course: whoops, trim: trail }`;

function NoChoices() {
  return (
    <section className={panel.panel} aria-labelledby="no-choices">
      <h3 className={panel.heading} id="no-choices">
        The rig file lists nothing to choose from
      </h3>
      <p className={panel.sentence}>
        Write under <code>choices:</code> what may be changed at each end, what it costs and how long it
        takes, what must not be exceeded, and on which courses the rig has to be good. Every combination is
        then driven, in {USUAL_CHOOSE_TRIALS} rigs that your readings allow.
      </p>
      <pre className={style.example}>{EXAMPLE}</pre>
      <p className={style.about}>
        The text of the rig file stands at the end of the Measure step. Parts are named as under{' '}
        <code>parts:</code>.
      </p>
    </section>
  );
}
