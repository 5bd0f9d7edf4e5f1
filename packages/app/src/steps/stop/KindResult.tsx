import { formatValue, fromSi, shownUnit, type UnitSystem } from '@lastinch/core';
import { estimateDoubtText, estimateLines, roughText, type StopEstimate } from '@lastinch/core/stops';
import { curveScene } from '@lastinch/picture';
import { useCallback } from 'react';
import panel from '../../design/panel.module.css';
import frame from '../../design/step.module.css';
import { DataTable } from '../../parts/DataTable.tsx';
import { Picture } from '../../parts/Picture.tsx';
import { tie } from '../../parts/tie.ts';
import { Doubts } from './Doubts.tsx';
import style from './StopStep.module.css';

/** The band of an estimate, its figures and its doubts. */
export function KindResult(props: { readonly estimate: StopEstimate; readonly system: UnitSystem }) {
  const { estimate, system } = props;
  const { crush, least, middle, most, usableCrush } = estimate;
  const draw = useCallback(
    (width: number) => {
      const length = shownUnit('length', system, crush[crush.length - 1] ?? 0);
      const force = shownUnit('force', system, most[most.length - 1] ?? 0);
      const inForce = (all: readonly number[]) => all.map((one) => fromSi(one, force));
      const x = crush.map((c) => fromSi(c, length));
      const usable = fromSi(usableCrush.value, length);
      return curveScene({
        series: [{ name: 'middle of the band', role: 'first', x, y: inForce(middle) }],
        areas: [{ x, low: inForce(least), high: inForce(most), role: 'body' }],
        bands: [{ axis: 'x', from: usable, to: usable, role: 'note', label: 'usable crush' }],
        xLabel: `crush, ${length.name}`,
        yLabel: `force, ${force.name}`,
        width,
      });
    },
    [crush, least, middle, most, usableCrush, system],
  );
  const rough = (value: number | undefined): string => tie(roughText(value ?? 0, 'force', system));
  return (
    <>
      <figure className={style.part}>
        <Picture
          id="kind-band"
          title="The estimate: force against crush"
          description="Shaded from the least to the most force; the line is the middle. The table below holds the figures."
          draw={draw}
        />
        <figcaption className={frame.about}>Shaded from the least to the most that it may be.</figcaption>
      </figure>
      {estimateLines(estimate, system).map((line) => (
        <p key={line} className={panel.sentence}>
          {tie(line)}
        </p>
      ))}
      <Doubts lines={estimate.doubts.map(estimateDoubtText)} />
      <DataTable
        caption="Force at a crush of"
        columns={['Crush', 'Least', 'Middle', 'Most']}
        rows={crush.flatMap((c, i) =>
          i > 0 && i % 3 === 0
            ? [
                {
                  head: tie(formatValue(c, 'length', { system })),
                  cells: [least, middle, most].map((each) => rough(each[i])),
                },
              ]
            : [],
        )}
      />
    </>
  );
}
