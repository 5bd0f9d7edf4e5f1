import { type CheckResult, CORNERS, type Corner, type UnitSystem } from '@lastinch/core';
import { columnDescription, columnScene } from '@lastinch/picture';
import { useCallback } from 'react';
import { LANES } from '../../answers.ts';
import frame from '../../design/step.module.css';
import { PairKey } from '../../parts/PairCell.tsx';
import { Picture } from '../../parts/Picture.tsx';
import { CORNER_NAME, setupLabel } from '../../parts/place-name.ts';
import { Segments } from '../../parts/Segments.tsx';
import { useStore } from '../../store.ts';
import { useUnits } from '../../use-units.ts';
import type { Workbench } from '../../workbench.ts';
import { BlameList } from './BlameList.tsx';
import { ContactTable } from './ContactTable.tsx';
import { PoseBench } from './PoseBench.tsx';
import { ProposalBench } from './ProposalBench.tsx';
import style from './TravelStep.module.css';

/** The four travel columns of both setups, what stands behind them, and the axle moved by hand. */
export default function TravelStep(props: {
  readonly workbench: Workbench;
  readonly onReading: (key: string) => void;
}) {
  const { workbench } = props;
  const answers = useStore(workbench.answers, (state) => state);
  const system = useUnits(workbench);
  const chosen = useStore(workbench.session, (state) => state.corner);
  const { now, proposed } = answers;
  const checks = LANES.flatMap((lane) => answers[lane].check ?? []);
  const corner = chosen ?? tightest(checks) ?? 'frontLeft';
  const columns = {
    now: now.check?.travel.corners[corner] ?? null,
    proposed: proposed.check?.travel.corners[corner] ?? null,
  };
  return (
    <div className={frame.step}>
      <h2 className={frame.title}>Travel</h2>
      {now.check === null || proposed.check === null ? (
        <p className={frame.lead}>
          {answers.now.problems.length + answers.proposed.problems.length > 0
            ? 'One of the two setups cannot be worked out; the line at the top says why.'
            : 'There is no rig to show yet.'}
        </p>
      ) : (
        <Columns now={now.check} proposed={proposed.check} system={system} />
      )}

      <ProposalBench workbench={workbench} />

      {checks.length === 0 ? null : (
        <section className={style.section} aria-labelledby="travel-behind">
          <h3 className={style.heading} id="travel-behind">
            Behind one column
          </h3>
          <Segments
            label="Corner"
            options={CORNERS.map((each) => ({ value: each, label: CORNER_NAME[each] }))}
            value={corner}
            onChange={(value) => workbench.choose({ corner: value })}
          />
          <PairKey setups={{ now: setupLabel(now.setupId), proposed: setupLabel(proposed.setupId) }} />
          <ContactTable columns={columns} system={system} />
          <BlameList columns={columns} onReading={props.onReading} />
        </section>
      )}

      <PoseBench answers={answers} system={system} />
    </div>
  );
}

function Columns(props: {
  readonly now: CheckResult;
  readonly proposed: CheckResult;
  readonly system: UnitSystem;
}) {
  const { now, proposed, system } = props;
  const alike = now.setup === proposed.setup;
  const draw = useCallback(
    (width: number) =>
      columnScene(proposed.travel, { width, system, ...(alike ? {} : { against: now.travel }) }),
    [now, proposed, system, alike],
  );
  return (
    <section className={style.sheet} aria-label="Travel columns">
      <p className={frame.lead}>
        {alike
          ? 'Bump travel at each corner, to one scale, from ride height up to metal.'
          : 'Bump travel at each corner, to one scale, from ride height up to metal. Left: on the rig now. Right: proposed.'}
      </p>
      <Picture
        id="columns"
        title={alike ? 'Travel columns' : `Travel columns: ${now.setup} against ${proposed.setup}`}
        description={columnDescription(proposed.travel, {
          system,
          ...(alike ? {} : { against: now.travel }),
        })}
        draw={draw}
      />
    </section>
  );
}

/** The corner with least to spare in either setup. */
function tightest(checks: readonly CheckResult[]): Corner | undefined {
  const spare = (corner: Corner): number =>
    Math.min(...checks.map((check) => check.travel.corners[corner].spare.value));
  return checks.length === 0 ? undefined : [...CORNERS].sort((a, b) => spare(a) - spare(b))[0];
}
