import { type End, fromSi, shownUnit, type UnitSystem } from '@lastinch/core';
import { type CurveSeries, curveScene } from '@lastinch/picture';
import { memo, useState } from 'react';
import { LANES, type Lane } from '../../answers.ts';
import panel from '../../design/panel.module.css';
import frame from '../../design/step.module.css';
import { DataTable } from '../../parts/DataTable.tsx';
import { PairCell } from '../../parts/PairCell.tsx';
import { Picture } from '../../parts/Picture.tsx';
import { LANE_NAME } from '../../parts/place-name.ts';
import { type AxleFigures, type AxleQuantity, figureText, quantitiesOf, shownIn } from './figures.ts';
import style from './LinkCurves.module.css';

export type FiguresPair = Readonly<Record<Lane, AxleFigures | null>>;

/** What moves with the axle, over bump, for both setups; the line across is where the slider stands. */
export const LinkCurves = memo(function LinkCurves(props: {
  readonly end: End;
  readonly figures: FiguresPair;
  readonly bump: number;
  readonly rollText: string;
  readonly system: UnitSystem;
}) {
  const { end, figures, bump, system } = props;
  const [open, setOpen] = useState(false);
  const there = quantitiesOf(end).filter((quantity) =>
    LANES.some((lane) => figures[lane] !== null && quantity.isThere(figures[lane].axle)),
  );
  return (
    <section className={panel.panel} aria-labelledby="link-curves-title">
      <h3 className={panel.heading} id="link-curves-title">
        Over bump and droop
      </h3>
      <p className={frame.about}>
        Droop to the left, bump to the right, axle {props.rollText}. The upright line is where the slider
        stands.
      </p>
      <div className={style.charts}>
        {there.map((quantity) => (
          <Chart key={quantity.id} quantity={quantity} figures={figures} bump={bump} system={system} />
        ))}
      </div>
      <details className={frame.behind} onToggle={(event) => setOpen(event.currentTarget.open)}>
        <summary>The same as figures</summary>
        {open ? <CurveTable quantities={there} figures={figures} system={system} /> : null}
      </details>
    </section>
  );
});

function Chart(props: {
  readonly quantity: AxleQuantity;
  readonly figures: FiguresPair;
  readonly bump: number;
  readonly system: UnitSystem;
}) {
  const { quantity, figures, bump, system } = props;
  const unit = shownIn(quantity, system);
  const length = shownUnit('length', system, 0);
  const draw = (width: number) => {
    const series = LANES.flatMap((lane): CurveSeries[] => {
      const of = figures[lane];
      if (of === null || !quantity.isThere(of.axle)) return [];
      return [
        {
          name: LANE_NAME[lane],
          role: lane === 'now' ? 'first' : 'second',
          x: Array.from(of.curves.bumps, (each) => fromSi(each, length)),
          // What is left of rounding is no curve.
          y: Array.from(of.curves.bumps, (_, k) => Math.round(fromSi(quantity.at(of, k), unit) * 1e5) / 1e5),
        },
      ];
    });
    const here = fromSi(bump, length);
    return curveScene({
      series,
      xLabel: `bump, ${length.name}`,
      yLabel: `${quantity.axis}, ${unit.name}`,
      bands: [{ axis: 'x', from: here, to: here, role: 'note' }],
      width,
      height: 190,
      zero: false,
    });
  };
  return (
    <figure className={style.chart}>
      <figcaption className={style.caption}>
        <strong className={style.title}>{quantity.title}</strong>
        <span className={frame.about}>{quantity.about}</span>
      </figcaption>
      <Picture
        id={`link-curve-${quantity.id}`}
        title={`${quantity.title} over bump`}
        description={`${quantity.about} The table below the charts holds the figures.`}
        draw={draw}
        onlyInView
      />
    </figure>
  );
}

function CurveTable(props: {
  readonly quantities: readonly AxleQuantity[];
  readonly figures: FiguresPair;
  readonly system: UnitSystem;
}) {
  const { quantities, figures, system } = props;
  const bumps = (figures.proposed ?? figures.now)?.curves.bumps;
  if (bumps === undefined) return null;
  const rows = Array.from({ length: ROWS }, (_, row) => Math.round((row * (bumps.length - 1)) / (ROWS - 1)));
  const bump: AxleQuantity = { ...BUMP, at: ({ curves }, k) => curves.bumps[k] ?? Number.NaN };
  return (
    <DataTable
      caption="What moves with the axle, over bump"
      columns={['Bump', ...quantities.map(({ title }) => title)]}
      rows={rows.map((k) => ({
        head: figureText(bump, bumps[k] ?? 0, system),
        cells: quantities.map((quantity) => {
          const of = (lane: Lane): string | null => {
            const each = figures[lane];
            return each === null || !quantity.isThere(each.axle)
              ? null
              : figureText(quantity, quantity.at(each, k), system);
          };
          return <PairCell key={quantity.id} values={{ now: of('now'), proposed: of('proposed') }} />;
        }),
      }))}
    />
  );
}

const ROWS = 9;
const BUMP: Omit<AxleQuantity, 'at'> = {
  id: 'bump',
  title: 'Bump',
  about: '',
  axis: '',
  dimension: 'length',
  isThere: () => true,
};
