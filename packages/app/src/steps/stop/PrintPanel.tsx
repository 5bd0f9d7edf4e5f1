import { PLACE_NAMES, type Rig, type UnitSystem } from '@lastinch/core';
import type { StopDesignRequest } from '@lastinch/core/stops';
import { useEffect, useMemo } from 'react';
import panel from '../../design/panel.module.css';
import frame from '../../design/step.module.css';
import { PlainButton } from '../../parts/PlainButton.tsx';
import { setupLabel } from '../../parts/place-name.ts';
import { Segments } from '../../parts/Segments.tsx';
import { WorkState } from '../../parts/WorkState.tsx';
import type { ForNeedQuestion, PrintShape, StopDesks } from '../../stops.ts';
import { useStore } from '../../store.ts';
import { sameQuestion } from '../../work-desk.ts';
import type { Workbench } from '../../workbench.ts';
import { useAsked } from './asked.ts';
import { Field } from './Field.tsx';
import { readList, useTyped } from './forms.ts';
import { PrintFields, useTypedShape } from './PrintFields.tsx';
import { PrintResult } from './PrintResult.tsx';
import { ReadingTable } from './ReadingTable.tsx';
import step from './StopStep.module.css';
import { readTarget } from './targets.ts';

const PAUSE_MS = 400;

const SOURCES = [
  { value: 'band', label: 'What this end needs' },
  { value: 'typed', label: 'A typed curve' },
  { value: 'density', label: 'Given densities' },
] as const;
type Source = (typeof SOURCES)[number]['value'];

/** A printed stop of graded density: for an end of the rig, from a wanted curve, or from given densities. */
export function PrintPanel(props: {
  readonly workbench: Workbench;
  readonly desks: StopDesks;
  readonly rig: Rig | null;
  readonly system: UnitSystem;
}) {
  const { desks, system } = props;
  const { forms } = desks;
  const [source, setSource] = useTyped(forms, 'print.source', 'band') as [Source, (source: string) => void];
  const shape = useTypedShape(forms);
  return (
    <section className={panel.panel} aria-labelledby="print-title">
      <h3 className={panel.heading} id="print-title">
        A stop to print
      </h3>
      <p className={frame.lead}>
        A lattice of one thin curved sheet, denser where it has to be harder, printed in a soft filament. Give
        its shape, and what it has to do.
      </p>
      <PrintFields forms={forms} shape={shape} />
      <Segments label="What it has to do" options={SOURCES} value={source} onChange={setSource} />
      {source === 'band' ? <ForNeed {...props} shape={shape.whole} /> : null}
      {source === 'typed' ? <ByCurve desks={desks} shape={shape.whole} system={system} /> : null}
      {source === 'density' ? <ByDensity desks={desks} shape={shape.whole} system={system} /> : null}
    </section>
  );
}

/** For the end and the courses of the first page. Asked for by hand: it takes seconds. */
function ForNeed(props: {
  readonly workbench: Workbench;
  readonly desks: StopDesks;
  readonly rig: Rig | null;
  readonly shape: PrintShape | null;
  readonly system: UnitSystem;
}) {
  const { workbench, desks, rig, shape, system } = props;
  const { end, setup, demands } = useAsked(workbench, desks.forms, rig, system);
  const question = useMemo(
    (): ForNeedQuestion | null =>
      rig === null || setup === null || demands === null || shape === null
        ? null
        : { rig, setup, end, demands, shape },
    [rig, setup, end, demands, shape],
  );
  const { forNeed: desk } = desks;
  const state = useStore(desk.state, (each) => each);
  const busy = state.status === 'working';
  const stale = state.answers !== null && !sameQuestion(state.answers, question);

  // Nobody waits for an answer to what has been changed meanwhile.
  useEffect(() => {
    if (busy && state.asked !== null && !sameQuestion(state.asked, question)) desk.cancel();
  }, [busy, state.asked, question, desk]);

  const over = demands?.map(({ name }) => name).join(', ') ?? '';
  return (
    <>
      <p className={panel.sentence}>
        {over === ''
          ? 'Choose courses under “Which it needs” first.'
          : `${PLACE_NAMES[end]}, ${setupLabel(setup ?? '')}, over ${over}, as chosen under “Which it needs”.`}
      </p>
      <div className={step.ask}>
        {/* One button all the time, so that the focus stays on it. */}
        <PlainButton
          weight={busy ? 'plain' : 'strong'}
          isDisabled={!busy && question === null}
          onPress={() => {
            if (busy) desk.cancel();
            else if (question !== null) desk.ask(question, { byHand: true });
          }}
        >
          {busy ? 'Cancel' : state.answer === null ? 'Design it' : 'Design it again'}
        </PlainButton>
        <WorkState state={state} stale={stale} working="Looking for its densities…" hasShare />
      </div>
      {state.answer === null || state.answers === null ? null : (
        <div className={panel.result} data-stale={stale}>
          <PrintResult
            desks={desks}
            design={state.answer.design}
            need={state.answer.need}
            shape={state.answers.shape}
            system={system}
          />
        </div>
      )}
    </>
  );
}

interface ByHand {
  readonly desks: StopDesks;
  readonly shape: PrintShape | null;
  readonly system: UnitSystem;
}

function ByCurve({ desks, shape, system }: ByHand) {
  const [text, setText] = useTyped(desks.forms, 'print.curve');
  const typed = useMemo(() => readTarget(text), [text]);
  const question = useMemo(
    () => (shape === null || typed.value === null ? null : { ...shape, target: typed.value, density: null }),
    [shape, typed],
  );
  return (
    <>
      <ReadingTable
        caption="The wanted curve, from zero, both rising"
        columns={['Crush', 'Force']}
        example={['0 mm', '0 N']}
        text={text}
        wrong={new Set(typed.wrong)}
        onChange={setText}
      />
      {typed.error === null ? null : <p className={panel.broken}>{typed.error}</p>}
      <Designed desks={desks} question={question} system={system} />
    </>
  );
}

function ByDensity({ desks, shape, system }: ByHand) {
  const [text] = useTyped(desks.forms, 'print.density');
  const densities = useMemo(() => readList(text, 'ratio'), [text]);
  const question = useMemo(
    () =>
      shape === null || densities.value === null
        ? null
        : { ...shape, target: null, density: densities.value },
    [shape, densities],
  );
  return (
    <>
      <div className={step.fields}>
        <Field
          forms={desks.forms}
          name="print.density"
          label="Densities"
          placeholder="50 %, 30 %"
          hint="From foot to tip, as many as you like"
          error={densities.error}
        />
      </div>
      <Designed desks={desks} question={question} system={system} />
    </>
  );
}

/** What comes of a question that is complete, asked as soon as somebody pauses. */
function Designed(props: {
  readonly desks: StopDesks;
  readonly question: StopDesignRequest | null;
  readonly system: UnitSystem;
}) {
  const { desks, question, system } = props;
  const { design: desk } = desks;
  const state = useStore(desk.state, (each) => each);
  useEffect(() => {
    if (question === null) return;
    const timer = setTimeout(() => desk.ask(question), PAUSE_MS);
    return () => clearTimeout(timer);
  }, [question, desk]);
  const stale = state.answers !== null && !sameQuestion(state.answers, question);
  return (
    <>
      <WorkState state={state} stale={stale} working="Working out densities…" />
      {state.answer === null || state.answers === null ? null : (
        <div className={panel.result} data-stale={stale}>
          <PrintResult
            desks={desks}
            design={state.answer}
            need={null}
            shape={state.answers}
            system={system}
          />
        </div>
      )}
    </>
  );
}
