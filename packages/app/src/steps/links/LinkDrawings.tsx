import { type End, formatValue, type UnitSystem } from '@lastinch/core';
import {
  type Box,
  type DrawnAxle,
  LINK_VIEWS,
  type LinkView,
  linkBounds,
  linkScene,
} from '@lastinch/picture';
import { useMemo, useState } from 'react';
import { Picture } from '../../parts/Picture.tsx';
import { PlainButton } from '../../parts/PlainButton.tsx';
import { LANE_NAME } from '../../parts/place-name.ts';
import type { Reach } from './axle.ts';
import style from './LinkDrawings.module.css';
import { PointHandles } from './PointHandles.tsx';
import type { PointTarget } from './points.ts';
import type { PointHold } from './use-drag.ts';

const VIEW_NAME: Readonly<Record<LinkView, string>> = { side: 'Side', rear: 'Rear', top: 'Top' };
const VIEW_ABOUT: Readonly<Record<LinkView, string>> = {
  side: 'from the right',
  rear: 'from behind',
  top: 'from above, front to the right',
};

/** A stretch to read the scale by. */
const SCALE: Readonly<Record<UnitSystem, number>> = { shop: 0.254, metric: 0.2 };

/** One axle from three sides, both setups in each, to scale; one drawing is large, because fingers are not. */
export function LinkDrawings(props: {
  readonly end: End;
  /** As they stand in the pose; the first is on the rig now. */
  readonly axles: readonly DrawnAxle[];
  /** As they stand at rest and without what is under the finger: they decide what is visible. */
  readonly resting: readonly DrawnAxle[];
  /** How far the sliders go. */
  readonly reach: Reach;
  /** The one whose points can be moved; null when there is no proposal. */
  readonly movable: DrawnAxle | null;
  readonly hold: PointHold;
  readonly selected: string | null;
  readonly system: UnitSystem;
  readonly helpId: string;
  readonly description: string;
  readonly onSelect: (target: PointTarget) => void;
}) {
  const { end, axles, resting, movable, system } = props;
  const { bump, droop } = props.reach;
  const [large, setLarge] = useState<LinkView>('side');
  const views = [large, ...LINK_VIEWS.filter((view) => view !== large)];
  const bounds = useMemo(
    () =>
      Object.fromEntries(
        LINK_VIEWS.map((view) => [view, linkBounds(resting, view, { bump, droop })]),
      ) as Record<LinkView, Box>,
    [resting, bump, droop],
  );
  const scale = {
    length: SCALE[system],
    text: formatValue(SCALE[system], 'length', { system }),
  };
  return (
    <div className={style.drawings}>
      <div className={style.views}>
        {views.map((view) => (
          <figure key={view} className={style.view} data-large={view === large}>
            <figcaption className={style.caption}>
              <span>
                <strong>{VIEW_NAME[view]}</strong> {VIEW_ABOUT[view]}
              </span>
              {view === large ? null : (
                <PlainButton
                  weight="quiet"
                  aria-label={`Larger: ${VIEW_NAME[view].toLowerCase()}`}
                  onPress={() => setLarge(view)}
                >
                  Larger
                </PlainButton>
              )}
            </figcaption>
            <div className={style.paper}>
              <Picture
                id={`links-${view}`}
                title={`${end === 'front' ? 'Front' : 'Rear'} axle with its links, ${VIEW_ABOUT[view]}`}
                description={props.description}
                draw={(width) => linkScene(axles, { view, width, bounds: bounds[view], scale })}
              />
              {movable === null ? null : (
                <PointHandles
                  axle={movable}
                  view={view}
                  bounds={bounds[view]}
                  hold={props.hold}
                  selected={props.selected}
                  system={system}
                  helpId={props.helpId}
                  onSelect={props.onSelect}
                />
              )}
            </div>
          </figure>
        ))}
      </div>
      <ul className={style.key}>
        <li>
          <svg viewBox="0 0 44 12" aria-hidden="true" className={style.sample} data-lane="now">
            <path d="M2 6H42" />
            <circle cx="22" cy="6" r="4" />
          </svg>
          {LANE_NAME.now}
        </li>
        <li>
          <svg viewBox="0 0 44 12" aria-hidden="true" className={style.sample} data-lane="proposed">
            <path d="M2 6H42" />
            <rect x="18" y="2" width="8" height="8" />
          </svg>
          {LANE_NAME.proposed}
        </li>
        <li>
          <svg viewBox="0 0 44 12" aria-hidden="true" className={style.sample}>
            <circle cx="10" cy="6" r="4" />
            <circle cx="10" cy="6" r="1.6" className={style.dot} />
            <circle cx="32" cy="6" r="4" />
          </svg>
          with a dot: joint on the axle; open: joint on the frame
        </li>
        <li>
          <svg viewBox="0 0 44 12" aria-hidden="true" className={style.sample}>
            <circle cx="22" cy="6" r="3" />
            <path d="M17 6H27M22 1V11" />
          </svg>
          instant centre and roll centre
        </li>
      </ul>
    </div>
  );
}
