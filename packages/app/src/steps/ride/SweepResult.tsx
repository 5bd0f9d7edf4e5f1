import {
  bandsText,
  CRITERIA,
  type CriterionId,
  type CriterionSweep,
  criterionName,
  findingText,
  firstBreakText,
  formatValue,
  roughSpeed,
  type SweepAnswer,
  seatText,
  type UnitSystem,
} from '@lastinch/core';
import { useState } from 'react';
import { LANES, type Lane } from '../../answers.ts';
import panel from '../../design/panel.module.css';
import { Choice } from '../../parts/Choice.tsx';
import { DataTable } from '../../parts/DataTable.tsx';
import { PairCell, PairKey } from '../../parts/PairCell.tsx';
import { inAHundred, LANE_NAME, setupLabel } from '../../parts/place-name.ts';
import { SweepChart } from './SweepChart.tsx';

/** A sweep as a table, as a curve of one criterion over speed, and how far to trust it. */
export function SweepResult(props: {
  readonly answer: SweepAnswer;
  /** Index of each lane among the setups of the answer. */
  readonly lanes: Readonly<Record<Lane, number>>;
  readonly system: UnitSystem;
}) {
  const { answer, lanes, system } = props;
  const [chosen, setChosen] = useState<CriterionId>('clearance');
  const setupOf = (lane: Lane) => answer.setups[lanes[lane]] ?? null;
  const shown = LANES.filter((lane, k) => k === 0 || lanes[lane] !== lanes.now);
  const criterionOf = (lane: Lane, k: number): CriterionSweep | null =>
    shown.includes(lane) ? (setupOf(lane)?.criteria[k] ?? null) : null;
  const fastest = answer.speeds.at(-1) ?? 0;
  const pair = (id: string, of: (lane: Lane) => string | null) => (
    <PairCell key={id} values={{ now: of('now'), proposed: of('proposed') }} />
  );
  const drawn = CRITERIA.filter((_, k) => criterionOf('now', k)?.limit != null);
  const inView = drawn.includes(chosen) ? chosen : drawn[0];
  return (
    <>
      <PairKey
        setups={{
          now: setupLabel(setupOf('now')?.setup ?? ''),
          proposed: shown.includes('proposed') ? setupLabel(setupOf('proposed')?.setup ?? '') : null,
        }}
      />
      <DataTable
        caption={`First broken on ${answer.course}`}
        wraps
        columns={['Limit', 'First broken at', 'Within readings']}
        rows={CRITERIA.map((id, k) => {
          const said = (lane: Lane) => {
            const one = criterionOf(lane, k);
            return one === null ? null : firstBreakText(one.first, { system, fastest });
          };
          return {
            head: capital(criterionName(id)),
            note: limitText(criterionOf('now', k), system),
            cells: [
              pair('speed', (lane) => said(lane)?.speed ?? null),
              pair('within', (lane) => said(lane)?.within ?? null),
            ],
          };
        })}
      />
      {inView === undefined ? null : (
        <>
          <Choice
            label="Over speed"
            value={inView}
            options={drawn.map((id) => ({ value: id, label: capital(criterionName(id)) }))}
            onChange={(id) => setChosen(CRITERIA.find((each) => each === id) ?? 'clearance')}
          />
          <SweepChart
            answer={answer}
            criterion={CRITERIA.indexOf(inView)}
            lanes={shown.map((lane) => ({ lane, setup: lanes[lane] }))}
            system={system}
          />
        </>
      )}
      <Comparison answer={answer} lanes={lanes} />
      <section className={panel.note} aria-label="How far to trust the sweep">
        {shown.map((lane) =>
          (setupOf(lane)?.findings ?? [])
            .filter(({ code }) => code === 'sweep-holds-again' || code === 'sweep-unknown')
            .map((finding) => {
              const one = setupOf(lane)?.criteria.find(({ id }) => id === finding.facts.criterion);
              return (
                <p key={`${lane} ${finding.id}`}>
                  <strong>{LANE_NAME[lane]}:</strong> {findingText(finding, { system })}
                  {one === undefined || one.bands.length < 2
                    ? null
                    : ` In all: ${bandsText(one.bands, { system, fastest })}.`}
                </p>
              );
            }),
        )}
        <p>
          Driven every {roughSpeed(answer.step, system)}: a stretch of speeds narrower than that can be
          missed.{' '}
          {answer.trials === 0
            ? 'The ranges within your readings are still unknown.'
            : `Within readings: the range of ${answer.trials} rigs drawn from their tolerances, which covers ${Math.round(100 * answer.coverage)} in 100 of such rigs on average.`}{' '}
          {seatText(answer.seat)} A model of one road with a rigid frame: come up to a speed in steps, never
          to the limit at once.
        </p>
      </section>
    </>
  );
}

/** In how many of the same trial rigs the proposal gets faster. */
function Comparison(props: { readonly answer: SweepAnswer; readonly lanes: Readonly<Record<Lane, number>> }) {
  const { answer, lanes } = props;
  if (lanes.now === lanes.proposed) return null;
  const told = (answer.setups[lanes.proposed]?.criteria ?? []).flatMap(({ id, against }) =>
    against === null || against.faster + against.slower === 0 ? [] : [{ id, ...against }],
  );
  if (told.length === 0) return null;
  return (
    <DataTable
      caption="The same rigs in both setups: the proposed one, before it breaks"
      wraps
      columns={['Limit', 'Gets faster', 'Gets less fast']}
      rows={told.map(({ id, faster, slower }) => ({
        head: capital(criterionName(id)),
        cells: [inAHundred(faster), inAHundred(slower)],
      }))}
    />
  );
}

function limitText(one: CriterionSweep | null, system: UnitSystem): string | undefined {
  if (one?.id === 'seat-dose' && one.limit === null) return 'tell how far in a day, in the course';
  if (one === null || one.limit === null || one.id === 'metal-contact' || one.id === 'clearance')
    return undefined;
  const { value, dimension } = one.limit;
  const said =
    dimension === 'ratio' ? `${Math.round(100 * value)} %` : formatValue(value, dimension, { system });
  return one.keeps === 'above' ? `at least ${said} of the time` : `up to ${said}`;
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
