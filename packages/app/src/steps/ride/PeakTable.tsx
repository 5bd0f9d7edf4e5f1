import { CORNERS, type Figure, formatFigure, type RideAnswer, type UnitSystem } from '@lastinch/core';
import { LANES, type Lane } from '../../answers.ts';
import { DataTable } from '../../parts/DataTable.tsx';
import { CORNER_NAME, LANE_NAME } from '../../parts/place-name.ts';

/** The peaks behind the charts, with their intervals; both setups in each row. */
export function PeakTable(props: {
  readonly answers: Readonly<Record<Lane, RideAnswer | null>>;
  readonly system: UnitSystem;
}) {
  const { answers, system } = props;
  const lanes = LANES.filter((lane) => answers[lane] !== null);
  const row = (head: string, note: string, figure: (answer: RideAnswer) => Figure | string) => ({
    head,
    note,
    cells: lanes.map((lane) => {
      const answer = answers[lane];
      if (answer === null) return '';
      const found = figure(answer);
      return typeof found === 'string' ? found : formatFigure(found, { system });
    }),
  });
  const rows = [
    ...CORNERS.flatMap((corner) => {
      const name = CORNER_NAME[corner];
      return [
        row(`${name}: stop crush`, 'greatest', ({ corners }) => corners[corner].peakCrush),
        row(`${name}: clearance`, 'least', ({ corners }) => corners[corner].clearance),
        row(`${name}: stop force`, 'greatest, with metal', ({ corners }) => corners[corner].peakStopForce),
        row(`${name}: times touched`, 'stop, metal, droop limit', ({ run }) => {
          const { stop, metal, droop } = run.corners[corner].contacts;
          return `${stop}, ${metal}, ${droop}`;
        }),
        row(`${name}: tyre off the ground`, 'share of the time', ({ corners }) =>
          percent(corners[corner].airborneShare),
        ),
      ];
    }),
    row('Body: acceleration', 'greatest, above rest', ({ body }) => body.peakAcceleration),
    row('Body: acceleration', 'r.m.s., not frequency-weighted', ({ body }) => body.rmsAcceleration),
  ];
  return (
    <DataTable
      caption="Peaks of the ride"
      columns={['Figure', ...lanes.map((lane) => LANE_NAME[lane])]}
      rows={rows.map((each) => ({ ...each, head: each.head }))}
    />
  );
}

const percent = ({ value, tolerance }: Figure): string =>
  `${(100 * value).toFixed(0)} %${tolerance === null ? '' : ` ± ${Math.ceil(100 * tolerance)}`}`;
