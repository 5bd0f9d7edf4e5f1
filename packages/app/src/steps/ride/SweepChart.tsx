import {
  type CriterionSweep,
  criterionName,
  fromSi,
  type SweepAnswer,
  shownUnit,
  type UnitSystem,
} from '@lastinch/core';
import { type CurveSeries, curveScene } from '@lastinch/picture';
import { useCallback } from 'react';
import type { Lane } from '../../answers.ts';
import { Picture } from '../../parts/Picture.tsx';
import { LANE_NAME } from '../../parts/place-name.ts';

/** What the figure of each criterion is, on the axis of its chart. */
const AXIS: Readonly<Record<CriterionSweep['id'], string>> = {
  'metal-contact': 'left to metal',
  clearance: 'left over',
  'body-shock': 'acceleration',
  'seat-shock': 'acceleration',
  'absorbed-power': 'power',
  'seat-dose': 'dose of a day',
  'bracket-load': 'force',
  'tyre-contact': 'share of time',
};

/** One criterion over speed, for both setups, with the range of the trials and the limit. */
export function SweepChart(props: {
  readonly answer: SweepAnswer;
  /** Index among the criteria. */
  readonly criterion: number;
  readonly lanes: readonly { readonly lane: Lane; readonly setup: number }[];
  readonly system: UnitSystem;
}) {
  const { answer, criterion, lanes, system } = props;
  const draw = useCallback(
    (width: number) => {
      const one = answer.setups[0]?.criteria[criterion];
      if (one === undefined) throw new Error('a chart of a criterion that is not there');
      const speedUnit = shownUnit('speed', system, 0);
      const unit = shownUnit(one.dimension, system, 0);
      const shown = (value: number): number => fromSi(value, unit);
      const x = answer.speeds.map((speed) => fromSi(speed, speedUnit));
      const series = lanes.flatMap(({ lane, setup }): CurveSeries[] => {
        const of = answer.setups[setup]?.criteria[criterion];
        if (of === undefined) return [];
        const end = (which: 'low' | 'high') => of.spread.map((ends) => shown(ends?.[which] ?? Number.NaN));
        return [
          {
            name: LANE_NAME[lane],
            role: lane === 'now' ? 'first' : 'second',
            x,
            y: of.values.map(shown),
            spread: { low: end('low'), high: end('high') },
          },
        ];
      });
      const limit = one.limit === null ? null : shown(one.limit.value);
      return curveScene({
        series,
        xLabel: `speed, ${speedUnit.name}`,
        yLabel: unit.name === '' ? AXIS[one.id] : `${AXIS[one.id]}, ${unit.name}`,
        bands: limit === null ? [] : [{ axis: 'y', from: limit, to: limit, role: 'limit', label: 'limit' }],
        width,
      });
    },
    [answer, criterion, lanes, system],
  );
  const id = answer.setups[0]?.criteria[criterion]?.id ?? 'clearance';
  return (
    <Picture
      id="sweep-chart"
      title={`${criterionName(id)} over speed on ${answer.course}`}
      description="Both setups over speed, each with the range within the readings as two faint lines, and the limit. The table above holds the figures."
      draw={draw}
    />
  );
}
