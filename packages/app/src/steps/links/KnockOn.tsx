import {
  formatFigure,
  type KnockOnLine,
  type LinksMissing,
  limitOfText,
  linkLineMeaning,
  linkLineName,
  linksMissingText,
  remedyText,
  type UnitSystem,
} from '@lastinch/core';
import { useEffect } from 'react';
import panel from '../../design/panel.module.css';
import frame from '../../design/step.module.css';
import type { LinksDesk, LinksState } from '../../links.ts';
import { DataTable } from '../../parts/DataTable.tsx';
import { PairCell } from '../../parts/PairCell.tsx';
import { END_NAME } from '../../parts/place-name.ts';
import { SeverityMark } from '../../parts/SeverityMark.tsx';
import { tie } from '../../parts/tie.ts';
import { useStore } from '../../store.ts';
import type { Workbench } from '../../workbench.ts';
import style from './KnockOn.module.css';

/** A pause in typing before the list is asked for; what is under the finger is answered at once elsewhere. */
const PAUSE_MS = 250;

/** Everything that the proposal moves, the nearest to its limit first, with what can be done. */
export function KnockOn(props: {
  readonly workbench: Workbench;
  readonly desk: LinksDesk;
  readonly system: UnitSystem;
  readonly onReading: (key: string) => void;
}) {
  const { workbench, desk, system } = props;
  const rig = useStore(workbench.document, (state) => state.rig);
  const now = useStore(workbench.answers, (state) => state.now.setupId);
  const proposed = useStore(workbench.answers, (state) => state.proposed.setupId);
  const state = useStore(desk.state, (each) => each);
  useEffect(() => {
    if (rig === null) return;
    const timer = setTimeout(() => desk.ask({ rig, now, proposed }), PAUSE_MS);
    return () => clearTimeout(timer);
  }, [rig, now, proposed, desk]);

  const stale =
    state.answered !== null &&
    (state.answered.rig !== rig || state.answered.now !== now || state.answered.proposed !== proposed);
  const answer = state.answers.proposed;
  return (
    <section className={panel.panel} aria-labelledby="knock-on-title">
      <h3 className={panel.heading} id="knock-on-title">
        What the proposal knocks on to
      </h3>
      <p className={frame.about} role="status">
        {statusText(state, stale)}
      </p>
      {answer === null ? null : (
        <div className={style.lists} data-stale={stale}>
          {answer.against === null || answer.knockOn.length === 0 ? (
            <p className={panel.sentence}>
              {now === proposed
                ? 'Both setups are the same: nothing changes.'
                : 'Nothing that is followed here changes.'}
            </p>
          ) : (
            <>
              <LineTable
                caption="What changes, the nearest to its limit first"
                lines={answer.knockOn.slice(0, FIRST)}
                system={system}
              />
              {answer.knockOn.length <= FIRST ? null : (
                <details>
                  <summary className={style.summary}>
                    {answer.knockOn.length - FIRST} more that change, further from a limit
                  </summary>
                  <LineTable
                    caption="What else changes"
                    lines={answer.knockOn.slice(FIRST)}
                    system={system}
                  />
                </details>
              )}
            </>
          )}
          {answer.steady.length === 0 ? null : (
            <details>
              <summary className={style.summary}>What stays as it is ({answer.steady.length})</summary>
              <LineTable caption="What stays as it is" lines={answer.steady} system={system} />
            </details>
          )}
          <Missing missing={answer.missing} onReading={props.onReading} />
        </div>
      )}
    </section>
  );
}

/** So many lines are read at one go; the others are a step away. */
const FIRST = 12;

function statusText({ status, message }: LinksState, stale: boolean): string {
  if (status === 'broken') return message;
  if (status === 'working' || stale) return 'Working it out with all tolerances…';
  return 'With tolerance, trial by trial: what both setups have wrong in common falls out of the change.';
}

function LineTable(props: {
  readonly caption: string;
  readonly lines: readonly KnockOnLine[];
  readonly system: UnitSystem;
}) {
  const { caption, lines, system } = props;
  const say = (figure: KnockOnLine['after']): string | null =>
    figure === null ? null : tie(formatFigure(figure, { system }));
  return (
    <DataTable
      caption={caption}
      wraps
      columns={['What', 'Now and proposed', 'Limit', 'Change']}
      rows={lines.map((line) => ({
        head: linkLineName(line),
        more: <LineDetail line={line} system={system} />,
        cells: [
          <PairCell
            key="pair"
            values={{ now: say(line.before) ?? 'not known', proposed: say(line.after) ?? 'not known' }}
          />,
          <LimitCell key="limit" line={line} say={say} />,
          say(line.change) ?? '',
        ],
      }))}
    />
  );
}

function LineDetail({ line, system }: { readonly line: KnockOnLine; readonly system: UnitSystem }) {
  return (
    <details className={style.detail}>
      <summary>{line.remedies.length === 0 ? 'What it is' : 'What can be done'}</summary>
      <p>{linkLineMeaning(line.of)}</p>
      <ul className={style.remedies}>
        {line.remedies.map((remedy) => (
          <li key={`${remedy.code}.${remedy.target ?? ''}`}>{tie(remedyText(remedy, { system }))}</li>
        ))}
      </ul>
    </details>
  );
}

function LimitCell(props: {
  readonly line: KnockOnLine;
  readonly say: (figure: KnockOnLine['after']) => string | null;
}) {
  const { line, say } = props;
  if (line.limit === null) return <span className={frame.about}>none</span>;
  return (
    <span className={style.limit}>
      {line.kept === null ? null : <SeverityMark severity={line.kept} />}
      <span>{say(line.limit)}</span>
      {line.limitOf === null ? null : <span className={frame.about}>{limitOfText(line.limitOf)}</span>}
    </span>
  );
}

/** Where a part that nobody measured is typed in. */
const FIELD: Readonly<Record<LinksMissing['what'], string>> = {
  links: 'links.lower.axle.ahead',
  'spring-mounts': 'mounts.spring.axle.ahead',
  'shock-mounts': 'mounts.shock.axle.ahead',
  'stop-mounts': 'mounts.stop.axle.ahead',
  pad: 'mounts.stop.padSize',
  shaft: 'shaft.pinion.ahead',
  slip: 'shaft.slip',
  'axle-ratio': 'axle.ratio',
  hose: 'hose.axle.ahead',
  steering: 'steering.dragLink.axle.ahead',
};

function Missing(props: {
  readonly missing: readonly LinksMissing[];
  readonly onReading: (key: string) => void;
}) {
  if (props.missing.length === 0) return null;
  return (
    <div>
      <h4 className={style.small}>Not measured, so left out</h4>
      <ul className={style.missing}>
        {props.missing.map(({ end, what }) => (
          <li key={`${end}.${what}`}>
            <button
              type="button"
              className={style.reading}
              onClick={() => props.onReading(`${end}.${FIELD[what]}`)}
            >
              {END_NAME[end]} {linksMissingText(what)}
            </button>
          </li>
        ))}
      </ul>
    </div>
  );
}
