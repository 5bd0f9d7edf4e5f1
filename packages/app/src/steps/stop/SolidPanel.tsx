import { formatValue, problemText, type UnitSystem } from '@lastinch/core';
import type { StopDesign } from '@lastinch/core/stops';
import { plateFor, type Seat, type SolidFormat, THREADS, threadNamed } from '@lastinch/mesh';
import { lazy, Suspense, useMemo } from 'react';
import panel from '../../design/panel.module.css';
import frame from '../../design/step.module.css';
import { download } from '../../keep/download.ts';
import { Choice } from '../../parts/Choice.tsx';
import { DataTable } from '../../parts/DataTable.tsx';
import { PlainButton } from '../../parts/PlainButton.tsx';
import { tie } from '../../parts/tie.ts';
import type { SolidDesk } from '../../solids.ts';
import type { PrintShape, StopDesks } from '../../stops.ts';
import { useStore } from '../../store.ts';
import { sameQuestion } from '../../work-desk.ts';
import { Field } from './Field.tsx';
import { type Forms, readOne, useTyped } from './forms.ts';
import style from './StopStep.module.css';
import { solidRequestOf } from './solid-request.ts';

const SolidView = lazy(() => import('./SolidView.tsx'));

const SEATS = [
  { value: 'none', label: 'by its face only' },
  { value: 'nut', label: 'captive nut' },
  { value: 'clearance', label: 'screw from the tip' },
  { value: 'insert', label: 'threaded insert' },
] as const;
const HINTS: Readonly<Record<string, string>> = {
  nut: 'A nut, or the head of a bolt as a stud, laid in while it prints',
  clearance: 'Through a bore that its head passes',
};
const FILES: Readonly<Record<SolidFormat, { readonly label: string; readonly type: string }>> = {
  '3mf': { label: 'Download 3MF', type: 'model/3mf' },
  stl: { label: 'Download STL', type: 'model/stl' },
};

/** The solid of a design: made in a worker, turned about, and taken to the printer. */
export function SolidPanel(props: {
  readonly desks: StopDesks;
  readonly design: StopDesign;
  readonly shape: PrintShape;
  readonly system: UnitSystem;
}) {
  const { desks, design, shape, system } = props;
  const { forms, solid: desk } = desks;
  const { seat, kind, setKind, thread, setThread, diameter, depth } = useSeat(forms);
  const request = useMemo(
    () => (seat === undefined ? null : solidRequestOf(design, shape, seat)),
    [design, shape, seat],
  );
  const state = useStore(desk.state, (each) => each);
  const busy = state.status === 'working';
  const stale = state.solidOf !== null && !sameQuestion(state.solidOf, request);
  const needed = seat === undefined || seat === null ? null : plateFor(seat);
  const isThin = needed !== null && needed > (shape.foot ?? 0) + 1e-9;
  return (
    <section className={style.part} aria-labelledby="solid-title">
      <h4 className={style.small} id="solid-title">
        The solid
      </h4>
      <div className={style.fields}>
        <Choice
          label="How its foot is held"
          value={kind}
          options={SEATS}
          hint={HINTS[kind]}
          onChange={setKind}
        />
        {kind === 'nut' || kind === 'clearance' ? (
          <Choice
            label="Thread"
            value={thread}
            options={THREADS.map(({ name }) => ({
              value: name,
              label: name.startsWith('M') ? name : `${name} in`,
            }))}
            onChange={setThread}
          />
        ) : null}
        {kind === 'insert' ? (
          <>
            <Field
              forms={forms}
              name="solid.diameter"
              label="Hole of the insert"
              placeholder="10 mm"
              hint="As its maker says"
              error={diameter.error}
            />
            <Field
              forms={forms}
              name="solid.depth"
              label="Its depth"
              placeholder="12 mm"
              error={depth.error}
            />
          </>
        ) : null}
      </div>
      {isThin ? (
        <p className={panel.sentence}>
          {tie(
            `This seat needs a solid foot of ${formatValue(needed, 'length', { system })} or more: give it above.`,
          )}
        </p>
      ) : null}
      <div className={style.ask}>
        {/* One button all the time, so that the focus stays on it. */}
        <PlainButton
          weight={busy ? 'plain' : 'strong'}
          isDisabled={!busy && request === null}
          onPress={() => {
            if (busy) desk.cancel();
            else if (request !== null) desk.make(request);
          }}
        >
          {busy ? 'Cancel' : state.solid === null ? 'Make the solid' : 'Make it again'}
        </PlainButton>
        <Progress desk={desk} stale={stale} />
      </div>
      {state.solid === null ? null : (
        <div className={panel.result} data-stale={stale}>
          <Suspense fallback={<p>Laying out the view…</p>}>
            <SolidView mesh={state.solid.mesh} label={labelOf(state.solid.figures.height, shape, system)} />
          </Suspense>
          <DataTable
            caption="What it came out as"
            wraps
            columns={['Figure', 'Value']}
            rows={figuresOf(state.solid.figures, system)}
          />
          <div className={style.choices}>
            {(['3mf', 'stl'] as const).map((format) => (
              <PlainButton
                key={format}
                isDisabled={busy || stale}
                onPress={() => {
                  void desk.file(format, 'Printed stop').then((bytes) => {
                    if (bytes !== null) download(bytes, `printed-stop.${format}`, FILES[format].type);
                  });
                }}
              >
                {FILES[format].label}
              </PlainButton>
            ))}
          </div>
          <p className={frame.about}>
            3MF says its unit, STL does not: its numbers are millimetres. Slice it with all its walls, no
            infill, no supports inside.
          </p>
        </div>
      )}
    </section>
  );
}

function Progress({ desk, stale }: { readonly desk: SolidDesk; readonly stale: boolean }) {
  const { status, share, problems, message, solid } = useStore(desk.state, (each) => each);
  return (
    <div className={panel.state} role="status">
      {status === 'working' ? (
        <>
          <p>Making the solid…</p>
          <progress className={panel.bar} max={1} value={share} aria-label="Making the solid" />
        </>
      ) : null}
      {status === 'cancelled' ? <p>Stopped before it was done.</p> : null}
      {status === 'refused'
        ? problems.map((problem) => (
            <p key={`${problem.code} ${problem.found}`} className={panel.broken}>
              {problemText(problem)}
            </p>
          ))
        : null}
      {status === 'broken' ? <p className={panel.broken}>{message}</p> : null}
      {stale && solid !== null && status !== 'working' ? (
        <p className={panel.stale}>What is shown is from before the last change.</p>
      ) : null}
    </div>
  );
}

/** Undefined while something about it is missing. */
function useSeat(forms: Forms) {
  const [kind, setKind] = useTyped(forms, 'solid.seat', 'none');
  const [thread, setThread] = useTyped(forms, 'solid.thread', 'M10');
  const [diameterText] = useTyped(forms, 'solid.diameter');
  const [depthText] = useTyped(forms, 'solid.depth');
  return useMemo(() => {
    const diameter = readOne(diameterText, 'length');
    const depth = readOne(depthText, 'length');
    const named = threadNamed(thread);
    const seat = ((): Seat | null | undefined => {
      if (kind === 'insert')
        return diameter.value === null || depth.value === null
          ? undefined
          : { kind, diameter: diameter.value, depth: depth.value };
      if (kind !== 'nut' && kind !== 'clearance') return null;
      return named === null ? undefined : { kind, thread: named };
    })();
    return { seat, kind, setKind, thread, setThread, diameter, depth };
  }, [kind, setKind, thread, setThread, diameterText, depthText]);
}

function labelOf(height: number, { diameters }: PrintShape, system: UnitSystem): string {
  const [foot, tip] = diameters.map((each) => formatValue(each, 'length', { system }));
  return `The printed stop as a solid, ${formatValue(height, 'length', { system })} high, ${foot} across at the foot and ${tip} at the tip: a wavy sheet lattice, denser where its walls are thicker.`;
}

interface Figures {
  readonly height: number;
  readonly volume: number;
  readonly worst: number;
  readonly wall: { readonly thinnest: number; readonly at: number };
  readonly triangles: number;
  readonly hollows: { readonly count: number };
}

function figuresOf({ height, volume, worst, wall, triangles, hollows }: Figures, system: UnitSystem) {
  const length = (value: number): string => tie(formatValue(value, 'length', { system }));
  const row = (head: string, cell: string) => ({ head, cells: [cell] });
  return [
    row('Height', length(height)),
    row('Filament', tie(`${(volume * 1e6).toFixed(0)} cm³`)),
    row('Density of its slices', `within ${(100 * worst).toFixed(1)} % of what was asked`),
    row('Thinnest wall', `${tie(`${(1000 * wall.thinnest).toFixed(2)} mm`)}, ${length(wall.at)} up`),
    row('Surface', `${triangles.toLocaleString('en')} triangles, closed`),
    ...(hollows.count === 0 ? [] : [row('Hollows without a way out', String(hollows.count))]),
  ];
}
