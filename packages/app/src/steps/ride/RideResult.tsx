import type { Corner, CourseSpec, RideAnswer, UnitSystem } from '@lastinch/core';
import { CORNERS } from '@lastinch/core';
import { useMemo, useState } from 'react';
import { type Answers, LANES, type Lane } from '../../answers.ts';
import panel from '../../design/panel.module.css';
import { DataTable } from '../../parts/DataTable.tsx';
import { CORNER_NAME, LANE_NAME, setupLabel } from '../../parts/place-name.ts';
import { Segments } from '../../parts/Segments.tsx';
import { curvesOf, historyTable } from './curves.ts';
import { ExposurePanel } from './ExposurePanel.tsx';
import { HistoryChart } from './HistoryChart.tsx';
import { createMoment, usePlaying } from './moment.ts';
import { PeakTable } from './PeakTable.tsx';
import { Player } from './Player.tsx';
import { RideNote } from './RideNote.tsx';
import { RideStage } from './RideStage.tsx';
import style from './RideStep.module.css';

export interface RideResultProps {
  readonly course: CourseSpec;
  readonly answers: Readonly<Record<Lane, RideAnswer | null>>;
  /** Setups and travel of both, for the drawing. */
  readonly lanes: Answers;
  /** The answers are those of before the last change; newer ones are on their way. */
  readonly stale: boolean;
  readonly corner: Corner;
  readonly system: UnitSystem;
  readonly theme: string;
  readonly onCorner: (corner: Corner) => void;
}

/** The ride as it is seen, as it is measured, and in figures. All three follow one moment. */
export function RideResult(props: RideResultProps) {
  const { answers, corner, system, stale } = props;
  const now = answers.now?.run.history ?? null;
  const proposed = answers.proposed?.run.history ?? null;
  const [moment] = useState(createMoment);
  const [playing, setPlaying] = useState(false);
  const [pace, setPace] = useState('0.5');
  const lanes = LANES.filter((lane) => answers[lane] !== null);
  const end = Math.max(0, ...lanes.map((lane) => answers[lane]?.run.time ?? 0));
  usePlaying(moment, { playing, pace: Number(pace), end, onEnd: () => setPlaying(false) });
  const curves = useMemo(() => curvesOf({ now, proposed }, corner, system), [now, proposed, corner, system]);
  if (lanes.length === 0) return null;
  return (
    <>
      <div className={style.together}>
        <section className={panel.panel} aria-labelledby="ride-seen">
          <h3 className={panel.heading} id="ride-seen">
            As it is seen from the right
          </h3>
          <div className={style.stages} data-stale={stale}>
            {lanes.map((lane) => {
              const answer = answers[lane];
              const { setup, check } = props.lanes[lane];
              return answer === null || setup === null || check === null ? null : (
                <RideStage
                  key={lane}
                  lane={lane}
                  setup={setup}
                  travel={check.travel}
                  course={props.course}
                  answer={answer}
                  moment={moment}
                />
              );
            })}
          </div>
        </section>

        <section className={style.histories} aria-labelledby="ride-histories">
          <h3 className={panel.heading} id="ride-histories">
            Over time
          </h3>
          <Segments
            label="Corner"
            options={CORNERS.map((each) => ({ value: each, label: CORNER_NAME[each] }))}
            value={corner}
            onChange={props.onCorner}
          />
          <p className={style.key}>
            {lanes.map((lane) => (
              <span key={lane} className={style.line} data-lane={lane}>
                {LANE_NAME[lane]}: {setupLabel(answers[lane]?.setup ?? '')}
              </span>
            ))}
          </p>
          <div className={style.charts} data-stale={stale}>
            {curves.map((each) => (
              <HistoryChart key={each.id} curves={each} moment={moment} theme={props.theme} />
            ))}
          </div>
          <HistoryTable curves={curves} corner={corner} />
        </section>

        <div className={style.player}>
          <Player
            moment={moment}
            end={end}
            playing={playing}
            pace={pace}
            onPlaying={setPlaying}
            onPace={setPace}
          />
        </div>
      </div>
      <PeakTable answers={answers} system={system} />
      <ExposurePanel answers={answers} system={system} />
      <RideNote answers={answers} system={system} />
    </>
  );
}

/** Made only when it is opened: it is long, and few ask for it. */
function HistoryTable(props: { readonly curves: ReturnType<typeof curvesOf>; readonly corner: Corner }) {
  const [open, setOpen] = useState(false);
  const table = useMemo(() => (open ? historyTable(props.curves) : null), [open, props.curves]);
  return (
    <details className={style.details} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>These histories as a table</summary>
      {table === null ? null : (
        <DataTable
          caption={`${CORNER_NAME[props.corner]}, over time`}
          columns={table.columns}
          rows={table.rows}
        />
      )}
    </details>
  );
}
