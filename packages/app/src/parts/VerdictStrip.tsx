import type { Finding, UnitSystem } from '@lastinch/core';
import { findingText, readingName, remedyText } from '@lastinch/core';
import { memo } from 'react';
import { LANES, type Lane } from '../answers.ts';
import { inAHundred, LANE_NAME, setupLabel } from './place-name.ts';
import { SeverityMark } from './SeverityMark.tsx';
import { tie } from './tie.ts';
import style from './VerdictStrip.module.css';

export interface LaneFindings {
  readonly setupId: string;
  /** Worst first. */
  readonly findings: readonly Finding[];
}

export interface VerdictStripProps {
  readonly lanes: Readonly<Record<Lane, LaneFindings>>;
  readonly system: UnitSystem;
  /** True while the text of the rig file cannot be read whole: the verdicts are those of the last good rig. */
  readonly outdated: boolean;
  /** Leads to the reading that a finding rests on. */
  readonly onReading: (key: string) => void;
}

/** What the model says about both setups, in sentences, each of which opens into its causes and remedies. */
export const VerdictStrip = memo(function VerdictStrip(props: VerdictStripProps) {
  const same = props.lanes.now.setupId === props.lanes.proposed.setupId;
  const shown: readonly Lane[] = same ? ['now'] : [...LANES].reverse();
  return (
    <section className={style.strip} id="verdicts" aria-labelledby="verdicts-title">
      <h2 className={style.heading} id="verdicts-title">
        Verdicts
      </h2>
      {props.outdated ? <p className={style.outdated}>From the last rig that could be read whole.</p> : null}
      {shown.map((lane) => (
        <LaneVerdicts
          key={lane}
          lane={lane}
          {...props.lanes[lane]}
          system={props.system}
          onReading={props.onReading}
        />
      ))}
      <p className={style.caution}>
        Advice from your readings, not a certificate. Never under a rig on a jack alone. Brakes, steering,
        welds and raised vehicles: a qualified person, under your local rules.
      </p>
    </section>
  );
});

function LaneVerdicts(
  props: LaneFindings & {
    readonly lane: Lane;
    readonly system: UnitSystem;
    readonly onReading: (key: string) => void;
  },
) {
  // What presses is in view; where nothing does, what is fine is. The rest is one step away.
  const pressing = props.findings.filter(({ severity }) => severity === 'over' || severity === 'unproven');
  const shown = pressing.length > 0 ? pressing : props.findings.filter(({ severity }) => severity === 'fine');
  const rest = props.findings.filter((finding) => !shown.includes(finding));
  const list = (findings: readonly Finding[]) => (
    <ul className={style.list}>
      {findings.map((finding) => (
        <li key={finding.id}>
          <Verdict finding={finding} system={props.system} onReading={props.onReading} />
        </li>
      ))}
    </ul>
  );
  return (
    <section className={style.lane} data-lane={props.lane} aria-label={`Verdicts: ${LANE_NAME[props.lane]}`}>
      <h3 className={style.laneName}>
        {LANE_NAME[props.lane]} <span className={style.setup}>{setupLabel(props.setupId)}</span>
      </h3>
      {props.findings.length === 0 ? <p className={style.none}>Nothing to say yet.</p> : null}
      {list(shown)}
      {rest.length === 0 ? null : (
        <details className={style.rest}>
          <summary>{rest.length === 1 ? 'One more to know' : `${rest.length} more to know`}</summary>
          {list(rest)}
        </details>
      )}
    </section>
  );
}

function Verdict(props: {
  readonly finding: Finding;
  readonly system: UnitSystem;
  readonly onReading: (key: string) => void;
}) {
  const { finding, system } = props;
  const sentence = (
    <>
      <span className={style.tag}>
        <SeverityMark severity={finding.severity} />
      </span>
      <span className={style.sentence}>{tie(findingText(finding, { system }))}</span>
    </>
  );
  if (finding.because.length === 0 && finding.remedies.length === 0 && finding.likelihood === undefined)
    return (
      <div className={style.verdict} data-severity={finding.severity}>
        {sentence}
      </div>
    );
  return (
    <details className={style.verdict} data-severity={finding.severity}>
      <summary className={style.summary}>{sentence}</summary>
      <div className={style.inside}>
        {finding.likelihood === undefined ? null : (
          <p>Likelihood, from the tolerances of your readings: {inAHundred(finding.likelihood)}.</p>
        )}
        {finding.remedies.length === 0 ? null : (
          <>
            <h4 className={style.small}>What can be done</h4>
            <ul className={style.bullets}>
              {finding.remedies.map((remedy) => (
                <li key={`${remedy.code}.${remedy.target ?? ''}`}>{tie(remedyText(remedy, { system }))}</li>
              ))}
            </ul>
          </>
        )}
        {finding.because.length === 0 ? null : (
          <>
            <h4 className={style.small}>Rests on</h4>
            <ul className={style.readings}>
              {finding.because.map((key) => (
                <li key={key}>
                  <button type="button" className={style.reading} onClick={() => props.onReading(key)}>
                    {readingName(key)}
                  </button>
                </li>
              ))}
            </ul>
          </>
        )}
      </div>
    </details>
  );
}
