import { fromSi, shownUnit, type UnitSystem } from '@lastinch/core';
import {
  type DesignedForNeed,
  designDoubtText,
  needDesignTexts,
  printedBuild,
  printedTexts,
  roughText,
  type StopDesign,
} from '@lastinch/core/stops';
import { type CurveSeries, curveScene } from '@lastinch/picture';
import { useCallback } from 'react';
import panel from '../../design/panel.module.css';
import { DataTable } from '../../parts/DataTable.tsx';
import { Picture } from '../../parts/Picture.tsx';
import { tie } from '../../parts/tie.ts';
import type { PrintShape, StopDesks } from '../../stops.ts';
import { Doubts } from './Doubts.tsx';
import { SectionView } from './SectionView.tsx';
import { SolidPanel } from './SolidPanel.tsx';
import style from './StopStep.module.css';

/** A printed stop: its curve with what print and material leave open, its density, its doubts. */
export function PrintResult(props: {
  readonly desks: StopDesks;
  readonly design: StopDesign;
  /** What it was designed for; null where nothing was driven. */
  readonly need: DesignedForNeed | null;
  readonly shape: PrintShape;
  readonly system: UnitSystem;
}) {
  const { desks, design, need, shape, system } = props;
  const draw = useCallback((width: number) => curveOf(design, need, system, width), [design, need, system]);
  const hasTarget = design.curve.some(({ wanted }) => wanted !== null);
  const rough = (value: number | null, none: string): string =>
    value === null ? none : tie(roughText(value, 'force', system));
  return (
    <>
      <figure className={style.part}>
        <Picture
          id="print-curve"
          title="The printed stop: force against crush"
          description="The curve of the design between two faint lines, within which print and material leave it. The table below holds the figures."
          draw={draw}
        />
      </figure>
      <DataTable
        caption="Force at a crush of"
        columns={['Crush', ...(hasTarget ? ['Wanted'] : []), 'Design', 'At least', 'At most']}
        rows={design.curve.slice(1).map(({ crush, wanted, force, low, high }) => ({
          head: tie(roughText(crush, 'length', system)),
          cells: [
            ...(hasTarget ? [rough(wanted, '')] : []),
            rough(force, 'closed'),
            rough(low, ''),
            rough(high, 'may close'),
          ],
        }))}
      />
      <section className={style.part} aria-labelledby="print-says-title">
        <h4 className={style.small} id="print-says-title">
          What it says
        </h4>
        <p className={panel.sentence}>{tie(`${capital(printedBuild(design.body, system))}.`)}</p>
        {[...(need === null ? [] : needDesignTexts(need, system)), ...printedTexts(design, system)].map(
          (line) => (
            <p key={line} className={panel.sentence}>
              {tie(line)}
            </p>
          ),
        )}
        <Doubts lines={design.doubts.filter((one) => one !== 'missed').map(designDoubtText)} />
      </section>
      <section className={style.part} aria-labelledby="section-title">
        <h4 className={style.small} id="section-title">
          The cut through its middle
        </h4>
        <SectionView design={design} cell={shape.cell} system={system} />
      </section>
      <SolidPanel desks={desks} design={design} shape={shape} system={system} />
    </>
  );
}

/** Shown above the highest force that matters. */
const HEADROOM = 1.25;

function curveOf(design: StopDesign, need: DesignedForNeed | null, system: UnitSystem, width: number) {
  const { curve } = design;
  const last = curve[curve.length - 1];
  const length = shownUnit('length', system, last?.crush ?? 0);
  const top = Math.max(...curve.map(({ force, wanted }) => Math.max(force ?? 0, wanted ?? 0)));
  const force = shownUnit('force', system, top);
  const x = curve.map(({ crush }) => fromSi(crush, length));
  const shown = (value: number | null): number => (value === null ? Number.NaN : fromSi(value, force));
  const series: CurveSeries[] = [
    {
      name: 'as designed, with its interval',
      role: 'first',
      x,
      y: curve.map((point) => shown(point.force)),
      spread: { low: curve.map(({ low }) => shown(low)), high: curve.map(({ high }) => shown(high)) },
    },
  ];
  if (curve.some(({ wanted }) => wanted !== null))
    series.push({ name: 'wanted', role: 'second', x, y: curve.map(({ wanted }) => shown(wanted)) });
  return curveScene({
    series,
    areas:
      need === null
        ? []
        : [
            {
              x: need.band.crush.map((c) => fromSi(c, length)),
              low: need.band.least.map(shown),
              high: need.band.most.map(shown),
              role: 'allowed',
              words: { inside: 'does' },
            },
          ],
    ...(need !== null && { most: fromSi(HEADROOM * top, force) }),
    xLabel: `crush, ${length.name}`,
    yLabel: `force, ${force.name}`,
    width,
  });
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
