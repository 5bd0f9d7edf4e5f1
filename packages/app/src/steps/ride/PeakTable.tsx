import { CORNERS, type Figure, formatFigure, type RideAnswer, type UnitSystem } from '@lastinch/core';
import type { Lane } from '../../answers.ts';
import { DataTable } from '../../parts/DataTable.tsx';
import { PairCell } from '../../parts/PairCell.tsx';
import { CORNER_NAME } from '../../parts/place-name.ts';
import style from './RideStep.module.css';

/** The peaks behind the charts, with their intervals; both setups in each cell. */
export function PeakTable(props: {
  readonly answers: Readonly<Record<Lane, RideAnswer | null>>;
  readonly system: UnitSystem;
}) {
  const { now, proposed } = props.answers;
  const say = (figure: Figure): string => formatFigure(figure, { system: props.system });
  const pair = (id: string, of: (answer: RideAnswer) => string) => (
    <PairCell key={id} values={{ now: now && of(now), proposed: proposed && of(proposed) }} />
  );
  return (
    <div className={style.rows}>
      <DataTable
        caption="Peaks at each corner"
        columns={['Corner', 'Stop crush', 'Clearance', 'Stop force']}
        rows={CORNERS.map((corner) => ({
          head: CORNER_NAME[corner],
          cells: [
            pair('crush', ({ corners }) => say(corners[corner].peakCrush)),
            pair('clearance', ({ corners }) => say(corners[corner].clearance)),
            pair('force', ({ corners }) => say(corners[corner].peakStopForce)),
          ],
        }))}
      />
      <DataTable
        caption="How often each was touched"
        columns={['Corner', 'Stop', 'Metal', 'Strap', 'Shock open', 'Shock closed', 'Tyre in the air']}
        rows={CORNERS.map((corner) => ({
          head: CORNER_NAME[corner],
          cells: [
            pair('stop', ({ run }) => times(run.corners[corner].contacts.stop)),
            pair('metal', ({ run }) => times(run.corners[corner].contacts.metal)),
            pair('strap', ({ run }) => times(run.corners[corner].contacts.droop)),
            pair('open', ({ run }) => times(run.corners[corner].contacts.shockOpen)),
            pair('closed', ({ run }) => times(run.corners[corner].contacts.shockClosed)),
            pair('air', ({ corners }) => percent(corners[corner].airborneShare)),
          ],
        }))}
      />
      <DataTable
        caption="Body, vertical, at its centre of gravity"
        columns={['Figure', 'Acceleration above rest']}
        rows={[
          { head: 'Greatest', cells: [pair('peak', ({ body }) => say(body.peakAcceleration))] },
          {
            head: 'R.m.s.',
            note: 'not frequency-weighted',
            cells: [pair('rms', ({ body }) => say(body.rmsAcceleration))],
          },
        ]}
      />
    </div>
  );
}

const times = (count: number): string => (count === 0 ? 'never' : `${count} ×`);
const percent = ({ value, tolerance }: Figure): string =>
  `${(100 * value).toFixed(0)} %${tolerance === null ? ' ± unknown' : ` ± ${Math.ceil(100 * tolerance)}`}`;
