import { type Problem, problemText, type Rig, type UnitSystem } from '@lastinch/core';
import { pressedStop, readPressFile, stopFragment } from '@lastinch/core/rigfile';
import { STOP_MATERIALS, type StopFitRequest, type StopMaterialName } from '@lastinch/core/stops';
import { type DragEvent, useEffect, useMemo, useState } from 'react';
import panel from '../../design/panel.module.css';
import frame from '../../design/step.module.css';
import { Choice } from '../../parts/Choice.tsx';
import { PlainButton } from '../../parts/PlainButton.tsx';
import { WorkState } from '../../parts/WorkState.tsx';
import type { StopDesks } from '../../stops.ts';
import { useStore } from '../../store.ts';
import { sameQuestion } from '../../work-desk.ts';
import type { Workbench } from '../../workbench.ts';
import { Field } from './Field.tsx';
import { readOne, useTyped } from './forms.ts';
import style from './PressPanel.module.css';
import { PressResult } from './PressResult.tsx';
import { ReadingTable } from './ReadingTable.tsx';
import { shelfNameOf } from './readings.ts';
import step from './StopStep.module.css';
import { ToShelf } from './ToShelf.tsx';

/** A pause in typing before it is read; the answer takes a moment. */
const PAUSE_MS = 250;
/** A press test is some hundred lines; more than this is another file. */
const LARGEST_FILE = 2_000_000;
const NO_MATERIAL = '';

/** A press test, from a file or typed, made into a stop. */
export function PressPanel(props: {
  readonly workbench: Workbench;
  readonly desks: StopDesks;
  readonly rig: Rig | null;
  readonly system: UnitSystem;
}) {
  const { workbench, desks, rig, system } = props;
  const { forms } = desks;
  const [text, setText] = useTyped(forms, 'press.text');
  const [file, setFile] = useTyped(forms, 'press.file', 'readings');
  const [material, setMaterial] = useTyped(forms, 'press.material');
  const typed = usePressFields(desks);
  const [refused, setRefused] = useState<string | null>(null);
  const { columns, ram, step: gaugeStep, end: gaugeEnd, length } = typed;
  const read = useMemo(
    () =>
      text.trim() === ''
        ? null
        : readPressFile(text, { file, columns: columns.trim() === '' ? null : columns, ram: ram.value }),
    [text, file, columns, ram],
  );
  const problems: readonly Problem[] = read === null || read.ok ? [] : read.problems;
  const isTyped = [ram, gaugeStep, gaugeEnd].every(({ error }) => error === null);
  const question = useMemo((): StopFitRequest | null => {
    if (read === null || !read.ok || !isTyped) return null;
    return {
      ...read.value,
      file,
      resolution: gaugeStep.value,
      fullScale: gaugeEnd.value,
      material: STOP_MATERIALS.find((one) => one === material) ?? null,
    };
  }, [read, file, isTyped, gaugeStep, gaugeEnd, material]);
  const { fit: desk } = desks;
  const state = useStore(desk.state, (each) => each);
  useEffect(() => {
    if (question === null) return;
    const timer = setTimeout(() => desk.ask(question), PAUSE_MS);
    return () => clearTimeout(timer);
  }, [question, desk]);
  const stale = state.answers !== null && !sameQuestion(state.answers, question);
  const fit = state.answer;
  const pressed = fit?.crush[fit.crush.length - 1] ?? 0;
  const isTooShort = length.value !== null && length.value <= pressed;

  const take = async (given: File | undefined): Promise<void> => {
    if (given === undefined) return;
    if (given.size > LARGEST_FILE) {
      setRefused(`${given.name} has ${Math.round(given.size / 1000)} kB; a press test has at most 2000 kB.`);
      return;
    }
    setRefused(null);
    setText((await given.text()).trimEnd());
    setFile(given.name);
    forms.set((all) => ({ ...all, 'press.name': shelfNameOf(given.name) }));
  };
  const drop = (event: DragEvent): void => {
    event.preventDefault();
    void take(event.dataTransfer.files[0]);
  };
  return (
    <section
      className={panel.panel}
      aria-labelledby="press-title"
      onDragOver={(event) => event.preventDefault()}
      onDrop={drop}
    >
      <h3 className={panel.heading} id="press-title">
        From a press test
      </h3>
      <p className={frame.lead}>
        Travel of the press and what its gauge showed, from before touch to the deepest and, if you read it,
        back. Three strokes first to settle the stop, then 5 mm steps, ten seconds each.
      </p>
      <div className={style.file}>
        <label className={style.label}>
          A CSV of it: choose one, or drop it here
          <input
            type="file"
            accept=".csv,.tsv,.txt,text/csv,text/plain"
            className={style.chooser}
            onChange={(event) => {
              void take(event.target.files?.[0]);
              event.target.value = '';
            }}
          />
        </label>
        {text === '' ? null : (
          <PlainButton
            onPress={() => {
              setText('');
              setFile('readings');
            }}
          >
            Clear the readings
          </PlainButton>
        )}
      </div>
      {refused === null ? null : (
        <p className={panel.broken} role="alert">
          {refused}
        </p>
      )}
      <div className={style.sides}>
        <div className={style.readings}>
          <ReadingTable
            caption="Readings, in the order they were read"
            columns={['Travel of the press', 'Gauge']}
            example={['12 mm', '340 N']}
            text={text}
            wrong={new Set(problems.flatMap(({ where }) => where.line ?? []))}
            onChange={setText}
          />
        </div>
        <div className={step.fields}>
          <Field
            forms={forms}
            name="press.columns"
            label="Units of both columns"
            placeholder="mm, N"
            hint="Where the cells have none"
            error={null}
          />
          <Field
            forms={forms}
            name="press.ram"
            label="Ram of the press"
            placeholder="2 in"
            hint="Where the gauge reads pressure"
            error={ram.error}
          />
          <Field
            forms={forms}
            name="press.step"
            label="Gauge reads as fine as"
            placeholder="50 N"
            error={gaugeStep.error}
          />
          <Field
            forms={forms}
            name="press.end"
            label="Gauge reads as far as"
            placeholder="20 kN"
            error={gaugeEnd.error}
          />
          <Field
            forms={forms}
            name="press.length"
            label="Free length of the stop"
            placeholder="100 mm"
            error={isTooShort && !stale ? 'More than the stop was pressed.' : length.error}
          />
          <Choice
            label="Made of"
            value={material}
            options={[
              { value: NO_MATERIAL, label: 'not told' },
              ...STOP_MATERIALS.map((each: StopMaterialName) => ({ value: each, label: each })),
            ]}
            hint="For what a hit adds"
            onChange={setMaterial}
          />
        </div>
      </div>
      {problems.map((problem) => (
        <p key={`${problem.code} ${problem.where.line}`} className={panel.broken}>
          {problemText(problem)}
        </p>
      ))}
      <WorkState state={state} stale={stale} working="Reading the press test…" />
      {fit === null || state.answers === null ? null : (
        <div className={panel.result} data-stale={stale}>
          <PressResult fit={fit} readings={state.answers} system={system} />
          <ToShelf
            workbench={workbench}
            forms={forms}
            rig={rig}
            field="press.name"
            usual="pressed"
            notes={`Pressed: ${file}.`}
            fragmentOf={(name) =>
              stopFragment(pressedStop(fit, { name, file, freeLength: length.value }), system)
            }
            disabled={stale || isTooShort || length.error !== null}
          />
        </div>
      )}
    </section>
  );
}

function usePressFields({ forms }: StopDesks) {
  const [columns] = useTyped(forms, 'press.columns');
  const [ram] = useTyped(forms, 'press.ram');
  const [gaugeStep] = useTyped(forms, 'press.step');
  const [gaugeEnd] = useTyped(forms, 'press.end');
  const [length] = useTyped(forms, 'press.length');
  return useMemo(
    () => ({
      columns,
      ram: readOne(ram, 'length'),
      step: readOne(gaugeStep, 'force'),
      end: readOne(gaugeEnd, 'force'),
      length: readOne(length, 'length'),
    }),
    [columns, ram, gaugeStep, gaugeEnd, length],
  );
}
