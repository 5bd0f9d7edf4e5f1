import { formatValue, fromSi, shownUnit, type UnitSystem } from '@lastinch/core';
import {
  doubtText,
  fitRows,
  LOSS_ABSURD,
  roughText,
  type StopFit,
  type StopFitRequest,
} from '@lastinch/core/stops';
import { curveScene } from '@lastinch/picture';
import { useCallback } from 'react';
import frame from '../../design/step.module.css';
import { DataTable } from '../../parts/DataTable.tsx';
import { Picture } from '../../parts/Picture.tsx';
import { tie } from '../../parts/tie.ts';
import { Doubts } from './Doubts.tsx';
import style from './StopStep.module.css';

/** What a press test says: readings and curve, figures, doubts. */
export function PressResult(props: {
  readonly fit: StopFit;
  readonly readings: StopFitRequest;
  readonly system: UnitSystem;
}) {
  const { fit, readings, system } = props;
  const draw = useCallback(
    (width: number) => {
      const top = fit.force[fit.force.length - 1] ?? 0;
      const length = shownUnit('length', system, fit.crush[fit.crush.length - 1] ?? 0);
      const force = shownUnit('force', system, top);
      const usable = fromSi(fit.usableCrush.value, length);
      const inForce = (of: (newtons: number) => number) => fit.force.map((one) => fromSi(of(one), force));
      return curveScene({
        series: [
          {
            name: 'the curve, ± its interval',
            role: 'first',
            x: fit.crush.map((c) => fromSi(c, length)),
            y: inForce((one) => one),
            spread: {
              low: inForce((one) => Math.max(0, one - fit.tolerance)),
              high: inForce((one) => one + fit.tolerance),
            },
          },
          {
            name: 'readings, down and back',
            role: 'third',
            points: true,
            x: readings.travel.map((at) => fromSi(at - fit.touch.value, length)),
            y: readings.force.map((one) => fromSi(one - fit.offset.value, force)),
          },
        ],
        bands: [{ axis: 'x', from: usable, to: usable, role: 'note', label: 'usable crush' }],
        xLabel: `crush, ${length.name}`,
        yLabel: `force, ${force.name}`,
        width,
      });
    },
    [fit, readings, system],
  );
  return (
    <>
      <figure className={style.part}>
        <Picture
          id="press-curve"
          title="The press test: force against crush"
          description="The readings with the offset of the gauge taken out, and the curve through the way down with its interval. The table below holds the curve."
          draw={draw}
        />
      </figure>
      <DataTable
        caption="What it says"
        wraps
        columns={['Figure', 'Value']}
        rows={fitRows(fit, system).map(({ name, text }) => ({ head: name, cells: [tie(text)] }))}
      />
      <Doubts lines={[...fit.doubts.map(doubtText), ...(fit.isLossAbsurd ? [LOSS_ABSURD] : [])]} />
      <details className={frame.behind}>
        <summary>The curve as figures</summary>
        <DataTable
          caption="The curve"
          columns={['Crush', 'Force']}
          rows={fit.crush.map((c, i) => ({
            head: tie(formatValue(c, 'length', { system })),
            cells: [tie(roughText(fit.force[i] ?? 0, 'force', system))],
          }))}
        />
      </details>
    </>
  );
}
