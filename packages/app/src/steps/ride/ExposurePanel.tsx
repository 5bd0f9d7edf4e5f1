import { exposureNotes, exposureRows, findingText, type RideAnswer, type UnitSystem } from '@lastinch/core';
import { LANES, type Lane } from '../../answers.ts';
import panel from '../../design/panel.module.css';
import { DataTable } from '../../parts/DataTable.tsx';
import { PairCell, PairKey } from '../../parts/PairCell.tsx';
import { LANE_NAME, setupLabel } from '../../parts/place-name.ts';

/** What the seat takes on this ride in both setups: what it means, the figures, and whose seat it is. */
export function ExposurePanel(props: {
  readonly answers: Readonly<Record<Lane, RideAnswer | null>>;
  readonly system: UnitSystem;
}) {
  const { answers, system } = props;
  const lanes = LANES.filter((lane) => answers[lane] !== null);
  const rowsOf = (lane: Lane) => {
    const answer = answers[lane];
    return answer === null ? [] : exposureRows(answer.exposure, { system, speed: answer.speed });
  };
  const rows = { now: rowsOf('now'), proposed: rowsOf('proposed') };
  const listed = rows.now.length > 0 ? rows.now : rows.proposed;
  const textOf = (lane: Lane, id: string) => rows[lane].find((row) => row.id === id)?.text ?? null;
  const first = answers.now ?? answers.proposed;
  if (first === null) return null;
  const nameOf = (lane: Lane) => {
    const answer = answers[lane];
    return answer === null ? null : setupLabel(answer.setup);
  };
  return (
    <section className={panel.panel} aria-labelledby="exposure-title">
      <h3 className={panel.heading} id="exposure-title">
        What the seat takes
      </h3>
      {lanes.flatMap((lane) =>
        (answers[lane]?.findings ?? [])
          .filter(({ code }) => code.startsWith('exposure-'))
          .map((finding) => (
            <p key={`${lane} ${finding.id}`} className={panel.sentence}>
              <strong>{LANE_NAME[lane]}:</strong> {findingText(finding, { system })}
            </p>
          )),
      )}
      <PairKey setups={{ now: nameOf('now'), proposed: nameOf('proposed') }} />
      <DataTable
        caption={`At the seat, on ${first.course}`}
        wraps
        columns={['Measure', 'Up and down']}
        rows={listed.map(({ id, name, note }) => ({
          head: name,
          note: note === '' ? undefined : note,
          cells: [
            <PairCell key={id} values={{ now: textOf('now', id), proposed: textOf('proposed', id) }} />,
          ],
        }))}
      />
      <section className={panel.note} aria-label="About the seat">
        {exposureNotes(first.exposure, system).map((note) => (
          <p key={note}>{note}</p>
        ))}
      </section>
    </section>
  );
}
