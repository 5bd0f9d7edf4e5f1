import { problemText, type Result, type Rig, type UnitSystem } from '@lastinch/core';
import { estimatedStop, estimateFragment } from '@lastinch/core/rigfile';
import {
  type EstimateEnds,
  parseBulkDensity,
  parseHardness,
  type StopEstimateRequest,
} from '@lastinch/core/stops';
import { useEffect, useMemo } from 'react';
import panel from '../../design/panel.module.css';
import frame from '../../design/step.module.css';
import { Choice } from '../../parts/Choice.tsx';
import { Segments } from '../../parts/Segments.tsx';
import { WorkState } from '../../parts/WorkState.tsx';
import type { StopDesks } from '../../stops.ts';
import { useStore } from '../../store.ts';
import { sameQuestion } from '../../work-desk.ts';
import type { Workbench } from '../../workbench.ts';
import { Field } from './Field.tsx';
import { type Forms, type Read, readList, readOne, useTyped } from './forms.ts';
import { KindResult } from './KindResult.tsx';
import step from './StopStep.module.css';
import { ToShelf } from './ToShelf.tsx';

const PAUSE_MS = 250;

type Kind = StopEstimateRequest['kind'];
const KINDS: readonly { readonly value: Kind; readonly label: string }[] = [
  { value: 'rubber', label: 'Rubber' },
  { value: 'polyurethane', label: 'Polyurethane' },
  { value: 'foam', label: 'Foam' },
  { value: 'gas', label: 'Gas' },
];
const ENDS: readonly { readonly value: EstimateEnds; readonly label: string }[] = [
  { value: 'dry', label: 'dry: somewhere between' },
  { value: 'bonded', label: 'bonded to plates' },
  { value: 'greased', label: 'greased' },
];

/** Force against crush of a stop that nobody pressed, as a band. */
export function KindPanel(props: {
  readonly workbench: Workbench;
  readonly desks: StopDesks;
  readonly rig: Rig | null;
  readonly system: UnitSystem;
}) {
  const { workbench, desks, rig, system } = props;
  const { forms } = desks;
  const [kind, setKind] = useTyped(forms, 'kind.kind', 'rubber') as [Kind, (kind: string) => void];
  const [ends, setEnds] = useTyped(forms, 'kind.ends', 'dry');
  const block = useBlock(forms, kind, ends);
  const gas = useGas(forms);
  const question = kind === 'gas' ? gas.question : block.question;
  const { estimate: desk } = desks;
  const state = useStore(desk.state, (each) => each);
  useEffect(() => {
    if (question === null) return;
    const timer = setTimeout(() => desk.ask(question), PAUSE_MS);
    return () => clearTimeout(timer);
  }, [question, desk]);
  const stale = state.answers !== null && !sameQuestion(state.answers, question);
  const { answer, answers } = state;
  return (
    <section className={panel.panel} aria-labelledby="kind-title">
      <h3 className={panel.heading} id="kind-title">
        By its kind, where nothing was pressed
      </h3>
      <p className={frame.lead}>
        A band, and a wide one: hardness tells stiffness to a factor of two, the weight of a foam even less.
        Press it when you can.
      </p>
      <Segments label="Kind" options={KINDS} value={kind} onChange={setKind} />
      {kind === 'gas' ? (
        <div className={step.fields}>
          <Field
            forms={forms}
            name="kind.rod"
            label="Rod diameter"
            placeholder="1.375 in"
            error={gas.rod.error}
          />
          <Field
            forms={forms}
            name="kind.pressure"
            label="Charge, rod out"
            placeholder="100 psi"
            hint="By gauge"
            error={gas.pressure.error}
          />
          <Field
            forms={forms}
            name="kind.column"
            label="Gas column"
            placeholder="65 mm"
            hint="Gas volume ÷ rod area, rod out"
            error={gas.column.error}
          />
          <Field
            forms={forms}
            name="kind.stroke"
            label="Stroke"
            placeholder="50 mm"
            error={gas.stroke.error}
          />
        </div>
      ) : (
        <div className={step.fields}>
          {kind === 'foam' ? (
            <Field
              forms={forms}
              name="kind.density"
              label="Density"
              placeholder="480 kg/m3"
              hint="Weight ÷ volume"
              error={block.density.error}
            />
          ) : (
            <Field
              forms={forms}
              name="kind.hardness"
              label="Hardness"
              placeholder="60 A"
              hint="Shore A or D"
              error={block.hardness.error}
            />
          )}
          <Field
            forms={forms}
            name="kind.heights"
            label="Height"
            placeholder="60 mm"
            hint="Stepped: 40 mm, 20 mm"
            error={block.heights.error}
          />
          <Field
            forms={forms}
            name="kind.diameters"
            label="Diameter"
            placeholder="50 mm"
            hint="As many as heights"
            error={block.diameters.error}
          />
          <Field
            forms={forms}
            name="kind.bores"
            label="Bore"
            placeholder="none"
            hint="As many as heights"
            error={block.bores.error}
          />
          {kind === 'foam' ? null : <Choice label="Ends" value={ends} options={ENDS} onChange={setEnds} />}
        </div>
      )}
      <WorkState state={state} stale={stale} working="Working it out…" />
      {answer === null || answers === null ? null : (
        <div className={panel.result} data-stale={stale}>
          <KindResult estimate={answer} system={system} />
          <ToShelf
            workbench={workbench}
            forms={forms}
            rig={rig}
            field="kind.name"
            usual={`estimated-${answer.kind}`}
            notes={`Estimated, not pressed. ${kind === 'gas' ? 'Gas stop, by its chamber.' : block.said}`}
            fragmentOf={(name) =>
              estimateFragment(estimatedStop(answers, answer, { name, from: 'an estimate' }), system)
            }
            disabled={stale}
          />
        </div>
      )}
    </section>
  );
}

const all = (reads: readonly Read<unknown>[]): boolean => reads.every(({ value }) => value !== null);

function useBlock(forms: Forms, kind: Kind, ends: string) {
  const [hardnessText] = useTyped(forms, 'kind.hardness');
  const [densityText] = useTyped(forms, 'kind.density');
  const [heightText] = useTyped(forms, 'kind.heights');
  const [diameterText] = useTyped(forms, 'kind.diameters');
  const [boreText] = useTyped(forms, 'kind.bores');
  return useMemo(() => {
    const hardness = readBy(parseHardness, hardnessText);
    const density = readBy(parseBulkDensity, densityText);
    const heights = readList(heightText, 'length');
    const count = heights.value?.length ?? 0;
    const each = (text: string) => asMany(readList(text, 'length'), count);
    const diameters = each(diameterText);
    const bores =
      boreText.trim() === '' ? { value: (heights.value ?? []).map(() => 0), error: null } : each(boreText);
    const held = ENDS.find(({ value }) => value === ends)?.value ?? 'dry';
    const steps = (heights.value ?? []).map((height, i) => ({
      height,
      diameter: diameters.value?.[i] ?? 0,
      bore: bores.value?.[i] ?? 0,
    }));
    const question = !all([heights, diameters, bores])
      ? null
      : kind === 'foam'
        ? density.value === null
          ? null
          : { kind, density: density.value, solid: null, steps }
        : kind === 'gas' || hardness.value === null
          ? null
          : { kind, hardness: hardness.value, steps, ends: held };
    const what = kind === 'foam' ? `Foam of ${densityText.trim()}` : hardnessText.trim();
    const rests = kind === 'foam' ? '' : `, ends ${held}`;
    const said = `${what}, ${heightText.trim()} high, ${diameterText.trim()} across${rests}.`;
    return { hardness, density, heights, diameters, bores, question, said };
  }, [hardnessText, densityText, heightText, diameterText, boreText, kind, ends]);
}

function asMany(read: Read<readonly number[]>, count: number): Read<readonly number[]> {
  if (read.value === null || count === 0 || read.value.length === count) return read;
  return { value: null, error: `As many as heights: ${count}, from end to end.` };
}

/** What was typed, by a reader of the core; nothing typed is no mistake. */
function readBy<Value>(parse: (text: string) => Result<Value>, text: string): Read<Value> {
  if (text.trim() === '') return { value: null, error: null };
  const read = parse(text);
  return read.ok
    ? { value: read.value, error: null }
    : { value: null, error: read.problems.map((one) => problemText({ ...one, where: {} })).join(' ') };
}

function useGas(forms: Forms) {
  const [rodText] = useTyped(forms, 'kind.rod');
  const [pressureText] = useTyped(forms, 'kind.pressure');
  const [columnText] = useTyped(forms, 'kind.column');
  const [strokeText] = useTyped(forms, 'kind.stroke');
  return useMemo(() => {
    const rod = readOne(rodText, 'length');
    const pressure = readOne(pressureText, 'pressure');
    const column = readOne(columnText, 'length');
    const stroke = readOne(strokeText, 'length');
    const question: StopEstimateRequest | null =
      rod.value === null || pressure.value === null || column.value === null || stroke.value === null
        ? null
        : {
            kind: 'gas',
            rodDiameter: rod.value,
            pressure: pressure.value,
            column: column.value,
            stroke: stroke.value,
          };
    return { rod, pressure, column, stroke, question };
  }, [rodText, pressureText, columnText, strokeText]);
}
