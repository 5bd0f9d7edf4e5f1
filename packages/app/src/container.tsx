import { AS_MEASURED, CORNERS, setupNames, worstFirst } from '@lastinch/core';
import { lazy, Suspense, useCallback, useDeferredValue, useEffect, useMemo } from 'react';
import type { Lane, LaneAnswer } from './answers.ts';
import type { ChooseDesk } from './choosing.ts';
import style from './container.module.css';
import { isSaved } from './document/rig-document.ts';
import type { LinksDesk } from './links.ts';
import { MiniColumns } from './parts/MiniColumns.tsx';
import { type LaneSummary, SetupBar } from './parts/SetupBar.tsx';
import { StatusLine } from './parts/StatusLine.tsx';
import { StepNav } from './parts/StepNav.tsx';
import { TopBar } from './parts/TopBar.tsx';
import { VerdictStrip } from './parts/VerdictStrip.tsx';
import type { RideDesk, Rides } from './rides.ts';
import { stepOfAddress } from './session.ts';
import type { SheetDesk } from './sheets.ts';
import { focusReading, MeasureStep } from './steps/measure/MeasureStep.tsx';
import { placeOf } from './steps/measure/places.ts';
import { stepStates } from './steps/step-states.ts';
import type { StopDesks } from './stops.ts';
import { sameMembers, useStore } from './store.ts';
import type { SweepDesk } from './sweep-state.ts';
import { useUnits } from './use-units.ts';
import type { Workbench } from './workbench.ts';

const TravelStep = lazy(() => import('./steps/travel/TravelStep.tsx'));
const LinksStep = lazy(() => import('./steps/links/LinksStep.tsx'));
const RideStep = lazy(() => import('./steps/ride/RideStep.tsx'));
const StopStep = lazy(() => import('./steps/stop/StopStep.tsx'));
const ChooseStep = lazy(() => import('./steps/choose/ChooseStep.tsx'));
const BuildStep = lazy(() => import('./steps/build/BuildStep.tsx'));

/** Joins what is known to what is shown. Everything below takes plain values and commands. */
export function Container(props: {
  readonly workbench: Workbench;
  readonly desk: RideDesk;
  readonly sweeps: SweepDesk;
  readonly links: LinksDesk;
  readonly stops: StopDesks;
  readonly choices: ChooseDesk;
  readonly sheets: SheetDesk;
}) {
  const { workbench, desk, sweeps, links, stops, choices, sheets } = props;
  const step = useStore(workbench.session, (session) => session.step);
  useTheme(workbench);
  useAddress(workbench);
  useKeys(workbench);

  const toReading = useCallback((key: string) => leadTo(workbench, key), [workbench]);

  return (
    <div className={style.bench} data-step={step}>
      <button type="button" className={style.skip} onClick={skipToStep}>
        Skip to the step
      </button>
      <div className={style.top}>
        <Head workbench={workbench} />
      </div>
      <div className={style.setups}>
        <Setups workbench={workbench} />
        <div className={style.ruler} aria-hidden="true" />
      </div>
      <div className={style.rail}>
        <Steps workbench={workbench} desk={desk} choices={choices} sheets={sheets} />
      </div>
      <main className={style.main} id="step" tabIndex={-1}>
        <Suspense fallback={<p className={style.waiting}>Laying out the step…</p>}>
          {step === 'measure' ? <MeasureStep workbench={workbench} /> : null}
          {step === 'travel' ? <TravelStep workbench={workbench} onReading={toReading} /> : null}
          {step === 'links' ? <LinksStep workbench={workbench} desk={links} onReading={toReading} /> : null}
          {step === 'ride' ? <RideStep workbench={workbench} desk={desk} sweeps={sweeps} /> : null}
          {step === 'stop' ? <StopStep workbench={workbench} desks={stops} /> : null}
          {step === 'choose' ? <ChooseStep workbench={workbench} desk={choices} /> : null}
          {step === 'build' ? <BuildStep workbench={workbench} desk={sheets} /> : null}
        </Suspense>
      </main>
      <aside className={style.aside} aria-label="Verdicts on both setups">
        <div className={style.beside}>
          {step === 'measure' ? <Columns workbench={workbench} /> : null}
          <Verdicts workbench={workbench} desk={desk} links={links} onReading={toReading} />
        </div>
      </aside>
    </div>
  );
}

function Head({ workbench }: { readonly workbench: Workbench }) {
  const document = useStore(workbench.document, (state) => state);
  const system = useUnits(workbench);
  const theme = useStore(workbench.session, (state) => state.theme);
  const filing = useStore(workbench.filing, (state) => state);
  return (
    <>
      <TopBar
        rigName={document.rig?.name ?? 'A rig that cannot be read yet'}
        fileName={document.fileName}
        saved={isSaved(document)}
        demo={document.savedText === null}
        busy={filing.busy}
        undoLabel={document.history.past.at(-1)?.label ?? null}
        redoLabel={document.history.future[0]?.label ?? null}
        system={system}
        theme={theme}
        onUndo={workbench.undo}
        onRedo={workbench.redo}
        onOpen={() => void workbench.open()}
        onSave={() => void workbench.save()}
        onSaveElsewhere={() => void workbench.saveElsewhere()}
        onSystem={(chosen) => workbench.choose({ system: chosen })}
        onTheme={(chosen) => workbench.choose({ theme: chosen })}
      />
      <StatusLine
        problems={document.problems}
        refused={document.refused}
        lastGoodInView={document.rig !== null && !document.rigIsCurrent}
        notice={filing.notice}
        onDismiss={workbench.dismissNotice}
        onTakeFromDisk={() => void workbench.takeFromDisk()}
        onSaveElsewhere={() => void workbench.saveElsewhere()}
      />
    </>
  );
}

function Setups({ workbench }: { readonly workbench: Workbench }) {
  const rig = useStore(workbench.document, (state) => state.rig);
  const answers = useStore(workbench.answers, (state) => state);
  return (
    <SetupBar
      setups={rig === null ? [AS_MEASURED] : setupNames(rig)}
      lanes={{ now: summaryOf(answers.now), proposed: summaryOf(answers.proposed) }}
      onChoose={(lane: Lane, setupId) => workbench.choose({ [lane]: setupId })}
    />
  );
}

function Steps(props: {
  readonly workbench: Workbench;
  readonly desk: RideDesk;
  readonly choices: ChooseDesk;
  readonly sheets: SheetDesk;
}) {
  const { workbench, desk, choices, sheets } = props;
  const document = useStore(workbench.document, (state) => state);
  const answers = useStore(workbench.answers, (state) => state);
  const course = useStore(desk.rides, ({ now, proposed }) => (proposed.answer ?? now.answer)?.course ?? null);
  const standing = useStore(choices.state, ({ answer }) => answer?.members.length ?? null);
  const written = useStore(sheets.state, ({ answer }) => answer?.setup ?? null);
  const current = useStore(workbench.session, (session) => session.step);
  return <StepNav steps={stepStates(document, answers, { course, standing, written })} current={current} />;
}

function Columns({ workbench }: { readonly workbench: Workbench }) {
  const now = useStore(workbench.answers, (state) => state.now.check);
  const proposed = useStore(workbench.answers, (state) => state.proposed.check);
  const system = useUnits(workbench);
  return (
    <section className={style.columns} aria-labelledby="columns-title">
      <h2 className={style.columnsTitle} id="columns-title">
        To spare at full crush
      </h2>
      <MiniColumns checks={{ now, proposed }} system={system} />
    </section>
  );
}

function Verdicts(props: {
  readonly workbench: Workbench;
  readonly desk: RideDesk;
  readonly links: LinksDesk;
  readonly onReading: (key: string) => void;
}) {
  // The columns come first; the sentences may follow a frame later.
  const answers = useDeferredValue(useStore(props.workbench.answers, (state) => state));
  const outdated = useStore(props.workbench.document, (state) => !state.rigIsCurrent);
  const rides = useStore(props.desk.rides, findingsOfRides, sameMembers);
  const linked = useStore(props.links.state, (state) => state.answers);
  const system = useUnits(props.workbench);
  const lanes = useMemo(() => {
    const findings = (lane: Lane) => {
      const { check, setupId } = answers[lane];
      const ride = rides[lane]?.setup === setupId ? rides[lane].findings : [];
      // Links speak of travel too: what was said once is not said again.
      const known = new Set(check?.findings.map(({ id }) => id));
      const links = linked[lane]?.setup === setupId ? linked[lane].findings : [];
      const more = links.filter(({ id }) => !known.has(id));
      return { setupId, findings: worstFirst([...(check?.findings ?? []), ...more, ...ride]) };
    };
    return { now: findings('now'), proposed: findings('proposed') };
  }, [answers, rides, linked]);
  return <VerdictStrip lanes={lanes} system={system} outdated={outdated} onReading={props.onReading} />;
}

/** The answers that hold the findings of both rides; how far a newer one is does not matter here. */
const findingsOfRides = ({ now, proposed }: Rides) => ({ now: now.answer, proposed: proposed.answer });

/** Leads to the field of a reading: in the Measure step, or in the proposal of the Travel step. */
function leadTo(workbench: Workbench, key: string): void {
  const place = placeOf(key);
  const [first, setup] = key.split('.');
  const step = place === null ? 'travel' : 'measure';
  window.location.hash = step;
  workbench.choose({
    step,
    ...(place === null ? {} : { place, onlyOpen: false }),
    ...(first === 'setups' && setup !== undefined ? { proposed: setup } : {}),
  });
  // The field is there after the step has been drawn.
  requestAnimationFrame(() => requestAnimationFrame(() => focusReading(key)));
}

const VERDICT_RANK = { fail: 0, 'not-proven': 1, pass: 2 } as const;

function summaryOf(answer: LaneAnswer): LaneSummary {
  const columns = answer.check?.travel.corners;
  if (columns === undefined) return { setupId: answer.setupId, worst: null };
  const verdict = CORNERS.map((corner) => columns[corner].verdict).sort(
    (a, b) => VERDICT_RANK[a] - VERDICT_RANK[b],
  )[0];
  if (verdict === undefined) return { setupId: answer.setupId, worst: null };
  const corners = CORNERS.filter((corner) => columns[corner].verdict === verdict);
  return { setupId: answer.setupId, worst: { verdict, corners } };
}

function skipToStep(): void {
  document.getElementById('step')?.focus();
}

function useTheme(workbench: Workbench): void {
  const theme = useStore(workbench.session, (session) => session.theme);
  useEffect(() => {
    if (theme === 'auto') delete document.documentElement.dataset.theme;
    else document.documentElement.dataset.theme = theme;
  }, [theme]);
}

/** The address names the step, so that back and forward of the browser move between steps. */
function useAddress(workbench: Workbench): void {
  useEffect(() => {
    const follow = (): void => {
      const step = stepOfAddress();
      if (step !== null) workbench.choose({ step });
    };
    window.addEventListener('hashchange', follow);
    return () => window.removeEventListener('hashchange', follow);
  }, [workbench]);
}

/** Undo, redo and save by keyboard, also while a field has the focus: there is one history, not one a field. */
function useKeys(workbench: Workbench): void {
  useEffect(() => {
    const press = (event: KeyboardEvent): void => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
      const key = event.key.toLowerCase();
      const command =
        key === 'z' && !event.shiftKey
          ? workbench.undo
          : (key === 'z' && event.shiftKey) || key === 'y'
            ? workbench.redo
            : key === 's'
              ? () => void workbench.save()
              : null;
      if (command === null) return;
      event.preventDefault();
      command();
    };
    window.addEventListener('keydown', press);
    return () => window.removeEventListener('keydown', press);
  }, [workbench]);
}
