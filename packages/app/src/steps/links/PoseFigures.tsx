import type { End, UnitSystem } from '@lastinch/core';
import { memo } from 'react';
import { LANES, type Lane } from '../../answers.ts';
import { DataTable } from '../../parts/DataTable.tsx';
import { PairCell } from '../../parts/PairCell.tsx';
import { figureText, instantText, quantitiesOf } from './figures.ts';
import type { FiguresPair } from './LinkCurves.tsx';

/** What the drawings show, in figures, at the pose of the sliders. */
export const PoseFigures = memo(function PoseFigures(props: {
  readonly end: End;
  readonly figures: FiguresPair;
  readonly where: string;
  readonly system: UnitSystem;
}) {
  const { end, figures, where, system } = props;
  const instant = (lane: Lane): string | null => {
    const of = figures[lane];
    return of === null ? null : (instantText(of, 0, system) ?? 'far off: the links lie level');
  };
  return (
    <DataTable
      caption={where}
      wraps
      columns={['What', 'There']}
      rows={[
        {
          head: 'Instant centre',
          note: 'seen from the side',
          cells: [<PairCell key="instant" values={{ now: instant('now'), proposed: instant('proposed') }} />],
        },
        ...quantitiesOf(end)
          .filter((quantity) =>
            LANES.some((lane) => figures[lane] !== null && quantity.isThere(figures[lane].axle)),
          )
          .map((quantity) => {
            const of = (lane: Lane): string | null => {
              const each = figures[lane];
              return each === null || !quantity.isThere(each.axle)
                ? null
                : figureText(quantity, quantity.at(each, 0), system);
            };
            return {
              head: quantity.title,
              cells: [<PairCell key={quantity.id} values={{ now: of('now'), proposed: of('proposed') }} />],
            };
          }),
      ]}
    />
  );
});
