import { useEffect, useRef } from 'react';
import uPlot from 'uplot';
import 'uplot/dist/uPlot.min.css';
import { LANES, type Lane } from '../../answers.ts';
import { useWidth } from '../../parts/Picture.tsx';
import { LANE_NAME } from '../../parts/place-name.ts';
import { useStore } from '../../store.ts';
import style from './HistoryChart.module.css';
import type { Moment } from './moment.ts';

/** One quantity over time, for both setups, in the unit in which it is shown. */
export interface HistoryCurves {
  readonly id: string;
  readonly title: string;
  /** Says what up means and what the limit is, for everyone. */
  readonly about: string;
  readonly unitName: string;
  /** Samples a second. */
  readonly rate: number;
  /** Values in `unitName`; null when that setup has not been ridden. */
  readonly values: Readonly<Record<Lane, Float64Array | null>>;
  /** How one value is written, with its unit. */
  readonly write: (shown: number) => string;
}

const HEIGHT = 190;

/**
 * A history on the screen: drawn solid for the setup on the rig now, dashed for the one proposed. Its cursor is the
 * moment of the ride; pointing into it moves the moment, and the scrubber moves its cursor.
 */
export function HistoryChart(props: {
  readonly curves: HistoryCurves;
  readonly moment: Moment;
  readonly theme: string;
}) {
  const { curves, moment, theme } = props;
  const place = useRef<HTMLDivElement>(null);
  const width = useWidth(place);
  const chart = useRef<uPlot | null>(null);

  const known = width !== null && width > 0;

  // biome-ignore lint/correctness/useExhaustiveDependencies: another theme has other tones and is drawn anew.
  useEffect(() => {
    const element = place.current;
    if (element === null || !known) return;
    const drawn = new uPlot(
      optionsOf(element, (time) => moment.set(() => time)),
      [[], [], []],
      element,
    );
    chart.current = drawn;
    const follow = (): void => drawn.setCursor({ left: drawn.valToPos(moment.get(), 'x'), top: 0 }, false);
    const stop = moment.subscribe(follow);
    return () => {
      stop();
      drawn.destroy();
      chart.current = null;
    };
  }, [moment, theme, known]);

  // biome-ignore lint/correctness/useExhaustiveDependencies: a chart that was made anew needs its data again.
  useEffect(() => {
    const drawn = chart.current;
    if (drawn === null) return;
    drawn.setData(dataOf(curves));
    drawn.setCursor({ left: drawn.valToPos(moment.get(), 'x'), top: 0 }, false);
  }, [curves, moment, theme, known]);

  useEffect(() => {
    if (width !== null && width > 0) chart.current?.setSize({ width, height: HEIGHT });
  }, [width]);

  return (
    <figure
      className={style.figure}
      aria-labelledby={`${curves.id}-title`}
      aria-describedby={`${curves.id}-about`}
    >
      <figcaption className={style.caption}>
        <span className={style.title} id={`${curves.id}-title`}>
          {curves.title} <span className={style.unit}>[{curves.unitName}]</span>
        </span>
        <Readout curves={curves} moment={moment} />
        <span className={style.about} id={`${curves.id}-about`}>
          {curves.about}
        </span>
      </figcaption>
      <div ref={place} className={style.plot} aria-hidden="true" />
    </figure>
  );
}

/** The values under the cursor. */
function Readout({ curves, moment }: { readonly curves: HistoryCurves; readonly moment: Moment }) {
  const time = useStore(moment, (now) => now);
  return (
    <span className={style.readout}>
      {LANES.map((lane) => {
        const values = curves.values[lane];
        if (values === null) return null;
        const value = values[Math.min(values.length - 1, Math.round(time * curves.rate))];
        return (
          <span key={lane} data-lane={lane} className={style.value}>
            <span className={style.hidden}>{LANE_NAME[lane]}: </span>
            {value === undefined ? '' : curves.write(value)}
          </span>
        );
      })}
    </span>
  );
}

function dataOf(curves: HistoryCurves): uPlot.AlignedData {
  const count = Math.max(...LANES.map((lane) => curves.values[lane]?.length ?? 0));
  const times = Float64Array.from({ length: count }, (_, k) => k / curves.rate);
  const column = (lane: Lane): Float64Array | (number | null)[] => {
    const values = curves.values[lane];
    if (values !== null && values.length === count) return values;
    return Array.from({ length: count }, (_, k) => values?.[k] ?? null);
  };
  return [times, column('now'), column('proposed')];
}

function optionsOf(probe: HTMLElement, onPoint: (time: number) => void): uPlot.Options {
  const tone = toneReader(probe);
  const axis: uPlot.Axis = {
    stroke: tone('--ink-soft'),
    grid: { stroke: tone('--rule'), width: 1 },
    ticks: { show: false },
    font: `12px ${getComputedStyle(probe).fontFamily}`,
    gap: 4,
  };
  const line: uPlot.Series = { points: { show: false } };
  return {
    width: probe.clientWidth,
    height: HEIGHT,
    legend: { show: false },
    padding: [8, 8, 0, 0],
    scales: { x: { time: false } },
    series: [
      {},
      { ...line, label: LANE_NAME.now, stroke: tone('--now'), width: 1.6 },
      { ...line, label: LANE_NAME.proposed, stroke: tone('--proposed'), width: 1.8, dash: [7, 4] },
    ],
    axes: [
      { ...axis, values: (_, ticks) => ticks.map((tick) => `${tick} s`), size: 28 },
      { ...axis, size: 52 },
    ],
    cursor: { y: false, points: { show: false }, drag: { x: false, y: false } },
    hooks: {
      setCursor: [
        (drawn) => {
          const { left } = drawn.cursor;
          if (left !== undefined && left >= 0) onPoint(Math.max(0, drawn.posToVal(left, 'x')));
        },
      ],
    },
  };
}

/** The tone that a custom property has here and now, as the canvas needs it. */
function toneReader(probe: HTMLElement): (property: string) => string {
  return (property) => {
    const swatch = document.createElement('span');
    swatch.style.color = `var(${property})`;
    probe.append(swatch);
    const { color } = getComputedStyle(swatch);
    swatch.remove();
    return color;
  };
}
