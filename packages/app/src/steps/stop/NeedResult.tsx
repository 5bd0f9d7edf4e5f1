import { formatValue, fromSi, needle, type Severity, shownUnit, type UnitSystem } from '@lastinch/core';
import {
  candidateText,
  curesText,
  DAMPING_GAIN,
  familyText,
  LOOK_AT_STOPS,
  lifeText,
  MOST_ROOM,
  NEED_TRUST,
  NO_CURVE_DOES,
  roomText,
  type StopNeed,
  type StopVerdict,
  steepnessText,
} from '@lastinch/core/stops';
import { stopBandScene, stopLetter } from '@lastinch/picture';
import { useCallback } from 'react';
import panel from '../../design/panel.module.css';
import frame from '../../design/step.module.css';
import { DataTable } from '../../parts/DataTable.tsx';
import { Picture } from '../../parts/Picture.tsx';
import { END_NAME, setupLabel } from '../../parts/place-name.ts';
import { SeverityMark } from '../../parts/SeverityMark.tsx';
import { tie } from '../../parts/tie.ts';
import style from './StopStep.module.css';

const SEVERITY: Readonly<Record<StopVerdict, Severity>> = {
  does: 'fine',
  open: 'unproven',
  'does-not': 'over',
};

/** The band, the stops over it, and what they mean. */
export function NeedResult(props: {
  readonly need: StopNeed;
  /** Stop of the other setup on this end. */
  readonly other: string | null;
  readonly system: UnitSystem;
}) {
  const { need, other, system } = props;
  const draw = useCallback(
    (width: number) => stopBandScene({ need, other, system, width, height: width < 480 ? 320 : 380 }),
    [need, other, system],
  );
  const over = need.demands.map(({ name, speed }) => `${name} at ${needle(speed, system)}`).join(', ');
  const driven = need.candidates.filter((one) => 'verdict' in one);
  return (
    <>
      <p className={panel.sentence}>
        {tie(`${END_NAME[need.end]}, ${setupLabel(need.setup)}, over ${over}. ${roomText(need, system)}`)}
      </p>
      <figure className={style.part}>
        <Picture
          id="stop-band"
          title={`Stop curves that the ${need.end} needs`}
          description="Force against crush. Shaded: curves that do. The tables below hold the figures."
          draw={draw}
        />
        <figcaption className={frame.about}>
          {need.crush.length > 0
            ? 'Shaded: curves that do run in here. A curve below it runs past the reserve, one above it hits too hard. '
            : 'No curve does, so nothing is shaded. '}
          Slow press; crush counts from where the present stop touches.
        </figcaption>
      </figure>
      {need.cures === null ? null : (
        <section className={style.part} aria-labelledby="cures-title">
          <h4 className={style.small} id="cures-title">
            No stop does
          </h4>
          <p className={panel.sentence}>{NO_CURVE_DOES}</p>
          <ul className={style.bullets}>
            {curesText(need.cures, need.demands, {
              system,
              most: { room: MOST_ROOM, damping: DAMPING_GAIN },
            }).map((line) => (
              <li key={line}>{tie(line)}</li>
            ))}
          </ul>
        </section>
      )}
      <section className={style.part} aria-labelledby="stops-title">
        <h4 className={style.small} id="stops-title">
          The stops of this rig
        </h4>
        <ul>
          {need.candidates.map((one) => (
            <li key={one.id} className={style.stop}>
              {'verdict' in one ? (
                <SeverityMark severity={SEVERITY[one.verdict]} />
              ) : (
                <SeverityMark severity="note" />
              )}
              <span>
                {'verdict' in one ? <strong>{stopLetter(driven.indexOf(one))} </strong> : null}
                {tie(candidateText(one, { limits: need.limits, system }))}
              </span>
            </li>
          ))}
        </ul>
      </section>
      {need.cures === null ? (
        <DataTable
          caption="Force at the end of the room, by how the curve rises"
          wraps
          columns={['Curve', 'At least', 'At most']}
          rows={need.families.map((family) => {
            const { least, most } = familyText(family, system);
            return { head: capital(steepnessText(family.power)), cells: [tie(least), tie(most)] };
          })}
        />
      ) : null}
      <details className={frame.behind}>
        <summary>The curves as figures</summary>
        <CurveTables need={need} system={system} />
      </details>
      <section className={style.part} aria-labelledby="life-title">
        <h4 className={style.small} id="life-title">
          How long the stop lasts that is on it
        </h4>
        {[...need.life.map((one) => lifeText(one, system)), LOOK_AT_STOPS].map((line) => (
          <p key={line} className={panel.sentence}>
            {tie(line)}
          </p>
        ))}
      </section>
      <section className={panel.note} aria-label="How far to trust this">
        {NEED_TRUST.map((line) => (
          <p key={line}>{line}</p>
        ))}
      </section>
    </>
  );
}

/** What the chart shows, to be read. */
function CurveTables({ need, system }: { readonly need: StopNeed; readonly system: UnitSystem }) {
  const rough = (value: number): string => {
    const unit = shownUnit('force', system, value);
    return tie(`${Number(fromSi(value, unit).toPrecision(3))} ${unit.name}`);
  };
  const length = (value: number): string => tie(formatValue(value, 'length', { system }));
  const driven = need.candidates.filter((one) => 'verdict' in one);
  return (
    <div className={style.part}>
      {need.crush.length === 0 ? null : (
        <DataTable
          caption="The band"
          columns={['Crush', 'Least force', 'Most force']}
          rows={need.crush.flatMap((c, i) =>
            i % 3 === 0
              ? [{ head: length(c), cells: [rough(need.least[i] ?? 0), rough(need.most[i] ?? 0)] }]
              : [],
          )}
        />
      )}
      {driven.map(({ id, curve }, k) => (
        <DataTable
          key={id}
          caption={`${stopLetter(k)} ${id}, from where it touches itself`}
          columns={['Crush', 'Force']}
          rows={curve.crush.map((c, i) => ({ head: length(c), cells: [rough(curve.force[i] ?? 0)] }))}
        />
      ))}
    </div>
  );
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
