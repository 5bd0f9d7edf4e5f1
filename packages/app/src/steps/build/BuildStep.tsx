import { PAPER_SIZES, type PaperSize, sheetHtml } from '@lastinch/paper';
import { useState } from 'react';
import { comparedSetups } from '../../answers.ts';
import panel from '../../design/panel.module.css';
import { download } from '../../keep/download.ts';
import { PlainButton } from '../../parts/PlainButton.tsx';
import { Segments } from '../../parts/Segments.tsx';
import { WorkState } from '../../parts/WorkState.tsx';
import type { SheetDesk } from '../../sheets.ts';
import { useStore } from '../../store.ts';
import { useUnits } from '../../use-units.ts';
import { sameQuestion } from '../../work-desk.ts';
import type { Workbench } from '../../workbench.ts';
import style from './BuildStep.module.css';
import { SheetView } from './SheetView.tsx';

const PAPERS = Object.keys(PAPER_SIZES).map((size) => ({
  value: size as PaperSize,
  label: size === 'a4' ? 'A4' : 'Letter',
}));

/** The sheet for the bench: written for the proposed setup against what is on the rig, to be read, printed, taken along. */
export default function BuildStep(props: { readonly workbench: Workbench; readonly desk: SheetDesk }) {
  const { workbench, desk } = props;
  const rig = useStore(workbench.document, (state) => state.rig);
  const session = useStore(workbench.session, (state) => state);
  const state = useStore(desk.state, (now) => now);
  const system = useUnits(workbench);
  const [paper, setPaper] = useState<PaperSize>(system === 'metric' ? 'a4' : 'letter');
  if (rig === null) return <p>The rig file cannot be read yet, so there is nothing to build.</p>;
  const { now, proposed } = comparedSetups(rig, session);
  const question = { rig, setup: proposed, against: now, system };
  const { answer, answers, status } = state;
  const stale = answers !== null && !sameQuestion(answers, question);
  const busy = status === 'working';
  return (
    <div className={style.step}>
      <div className={style.ask}>
        <h2 className={style.title}>Build</h2>
        <p className={style.lead}>
          One document for the bench: why, travel before and after, what is cut and bolted, hoses and shaft,
          the order of work, what to check, and the marks that are expected. Written for {proposed}, against{' '}
          {now}.
        </p>
        <div className={style.buttons}>
          {busy ? (
            <PlainButton onPress={desk.cancel}>Stop</PlainButton>
          ) : (
            <PlainButton weight="strong" onPress={() => desk.ask(question, { byHand: true })}>
              {answer === null ? 'Write the sheet' : 'Write it again'}
            </PlainButton>
          )}
          <WorkState state={state} stale={stale} working="Driving every course of the file…" hasShare />
        </div>
        {answer === null ? null : (
          <div className={style.buttons}>
            <Segments label="Paper" options={PAPERS} value={paper} onChange={setPaper} />
            <PlainButton
              onPress={() =>
                download(
                  new TextEncoder().encode(sheetHtml(answer, paper)),
                  `build-${answer.setup}.html`,
                  'text/html',
                )
              }
            >
              Take it along (HTML)
            </PlainButton>
            <PlainButton onPress={() => window.print()}>Print, or save as PDF</PlainButton>
          </div>
        )}
      </div>
      {answer === null ? null : (
        <div className={panel.result} data-stale={stale}>
          <SheetView sheet={answer} />
        </div>
      )}
    </div>
  );
}
