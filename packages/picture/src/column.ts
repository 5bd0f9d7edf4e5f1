import type { TravelResult, UnitSystem } from '@lastinch/core';
import { CORNERS } from '@lastinch/core';
import { headHeight, MARGIN, type PanelColumn } from './column-head.ts';
import { columnLegend } from './column-legend.ts';
import { columnPanel, METAL } from './column-panel.ts';
import { columnShape, reachOf } from './column-parts.ts';
import { rulerFor } from './ruler.ts';
import type { Item, Scene } from './scene.ts';

export interface ColumnOptions {
  /** Width for which the picture is laid out [px]: 320 and more. */
  readonly width: number;
  readonly system: UnitSystem;
  /** The setup to compare with: its column stands to the left of each. */
  readonly against?: TravelResult;
  /** Height of the drawn travel [px], without heads and words. */
  readonly height?: number;
}

/** Panels need this much width each [px]. */
const PANEL = { single: 168, pair: 280 } as const;
const FEWEST_TICK_PIXELS = 4.5;

/**
 * The travel columns of the four corners, to one scale, from metal contact down to the end of droop.
 * Four side by side where there is room, two by two or one by one on a phone.
 *
 * @returns a scene in which heights are axle travel in heave at the stop's station [m] and widths are only layout.
 * @invariant a part of a column is as tall as it is long; ride height is one line through the columns of a row.
 */
export const columnScene = (travel: TravelResult, options: ColumnOptions): Scene => {
  const { system, against } = options;
  const width = Math.max(options.width, 320);
  const panels = CORNERS.map((corner): readonly PanelColumn[] => {
    const one = (result: TravelResult): PanelColumn => ({
      column: result.corners[corner],
      shape: columnShape(result.corners[corner]),
      setup: result.setup,
    });
    return against === undefined ? [one(travel)] : [one(against), one(travel)];
  });
  const pair = against !== undefined;
  const smallest = pair ? PANEL.pair : PANEL.single;
  const perRow = width >= 4 * smallest ? 4 : width >= 2 * smallest ? 2 : 1;
  const height = options.height ?? (perRow === 4 ? 420 : 340);

  const reach = reachOf(panels.flat().map((panel) => panel.shape));
  const u = Math.max(reach.up + reach.down, 0.01) / (height - METAL);
  const up = reach.up + METAL * u;
  const head = headHeight(pair);
  const rowHeight = up + reach.down + (head + MARGIN.top + MARGIN.bottom + 22) * u;
  const panelWidth = width / perRow;
  const ruler = rulerFor(system, FEWEST_TICK_PIXELS * u);

  const items: Item[] = [];
  panels.forEach((columns, k) => {
    const left = (k % perRow) * panelWidth;
    const ride = -Math.floor(k / perRow) * rowHeight;
    items.push(
      ...columnPanel(columns, {
        left,
        width: panelWidth,
        ride,
        up,
        down: reach.down,
        head,
        metresPerPixel: u,
        ruler,
        system,
      }),
    );
  });
  const rows = Math.ceil(panels.length / perRow);
  const bottom = -(rows - 1) * rowHeight - reach.down - MARGIN.bottom * u;
  const legend = columnLegend(
    panels.flat().map((panel) => panel.shape),
    width,
    bottom - 10 * u,
    u,
  );
  items.push(...legend.items);
  return {
    bounds: {
      left: 0,
      right: width * u,
      bottom: legend.bottom - 6 * u,
      top: up + (MARGIN.top + head + 4) * u,
    },
    items,
    layoutWidth: width,
  };
};
