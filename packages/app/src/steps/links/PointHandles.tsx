import type { UnitSystem, Vector } from '@lastinch/core';
import {
  type Box,
  type DrawnAxle,
  type LinkView,
  linkHandles,
  offPaper,
  type PaperPoint,
} from '@lastinch/picture';
import { type KeyboardEvent, type PointerEvent, useRef } from 'react';
import style from './PointHandles.module.css';
import { asMove, handleTarget, type PointTarget, STEP, targetId, targetName } from './points.ts';
import type { PointHold } from './use-drag.ts';

interface Handle {
  readonly key: string;
  readonly target: PointTarget;
  readonly side: 'left' | 'right' | null;
  readonly at: PaperPoint;
}

/**
 * What can be taken hold of in one drawing: a button over each joint of the proposal. By mouse or finger the nearest
 * joint is taken, because joints stand closer together than fingers are wide; by keyboard the arrow keys move it.
 */
export function PointHandles(props: {
  readonly axle: DrawnAxle;
  readonly view: LinkView;
  readonly bounds: Box;
  readonly hold: PointHold;
  readonly selected: string | null;
  readonly system: UnitSystem;
  /** Id of the text that says how keys move a point. */
  readonly helpId: string;
  readonly onSelect: (target: PointTarget) => void;
}) {
  const { axle, view, bounds, hold, system } = props;
  const place = useRef<HTMLDivElement>(null);
  const dragged = useRef<{
    readonly handle: Handle;
    readonly from: PaperPoint;
    readonly box: DOMRect;
  } | null>(null);
  const handles = handlesOf(axle, view);
  const wide = bounds.right - bounds.left;
  const tall = bounds.top - bounds.bottom;

  const paperAt = (event: PointerEvent, box: DOMRect): PaperPoint => {
    if (box.width === 0) return [0, 0];
    return [
      bounds.left + ((event.clientX - box.left) / box.width) * wide,
      bounds.top - ((event.clientY - box.top) / box.height) * tall,
    ];
  };
  const take = (event: PointerEvent<HTMLButtonElement>): void => {
    const box = place.current?.getBoundingClientRect();
    if (event.button !== 0 || box === undefined) return;
    const from = paperAt(event, box);
    const handle = nearest(handles, from);
    if (handle === undefined) return;
    event.preventDefault();
    event.currentTarget.setPointerCapture(event.pointerId);
    place.current?.querySelector<HTMLButtonElement>(`[data-handle="${handle.key}"]`)?.focus();
    // Asked for once: asking again in each frame would have the page laid out twice.
    dragged.current = { handle, from, box };
    props.onSelect(handle.target);
  };
  const follow = (event: PointerEvent): void => {
    const drag = dragged.current;
    if (drag === null) return;
    const [x, y] = paperAt(event, drag.box);
    const move = asMove(offPaper(view, [x - drag.from[0], y - drag.from[1]]), drag.handle.side);
    hold.move(drag.handle.target, move);
  };
  const letGo = (): void => {
    if (dragged.current === null) return;
    dragged.current = null;
    hold.drop();
  };
  const giveUp = (): void => {
    dragged.current = null;
    hold.cancel();
  };
  const press = (event: KeyboardEvent, handle: Handle): void => {
    if (event.key === 'Escape') {
      giveUp();
      return;
    }
    const way = ARROWS[event.key];
    if (way === undefined || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    const step = event.shiftKey ? STEP[system].coarse : STEP[system].fine;
    const by: Vector = asMove(offPaper(view, [way[0] * step, way[1] * step]), handle.side);
    hold.nudge(handle.target, by);
  };
  return (
    <div ref={place} className={style.layer}>
      {handles.map((handle) => (
        <button
          key={handle.key}
          type="button"
          className={style.handle}
          data-handle={handle.key}
          data-selected={targetId(handle.target) === props.selected}
          style={{
            left: `${(100 * (handle.at[0] - bounds.left)) / wide}%`,
            top: `${(100 * (bounds.top - handle.at[1])) / tall}%`,
          }}
          aria-label={`${targetName(handle.target)}${handle.side === null ? '' : `, ${handle.side}`}`}
          aria-describedby={props.helpId}
          onFocus={() => props.onSelect(handle.target)}
          onPointerDown={take}
          onPointerMove={follow}
          onPointerUp={letGo}
          onPointerCancel={giveUp}
          onKeyDown={(event) => press(event, handle)}
          onKeyUp={(event) => ARROWS[event.key] !== undefined && hold.drop()}
          onBlur={() => dragged.current === null && hold.drop()}
        />
      ))}
    </div>
  );
}

const ARROWS: Readonly<Record<string, PaperPoint>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/** One handle a point; from the side the near one of a pair stands for both. */
function handlesOf(axle: DrawnAxle, view: LinkView): readonly Handle[] {
  return linkHandles(axle, view).flatMap(({ id, at }): Handle[] => {
    const { target, side } = handleTarget(id);
    return view === 'side' && side === 'left' ? [] : [{ key: id, target, side, at }];
  });
}

const nearest = (handles: readonly Handle[], [x, y]: PaperPoint): Handle | undefined =>
  [...handles].sort((a, b) => Math.hypot(a.at[0] - x, a.at[1] - y) - Math.hypot(b.at[0] - x, b.at[1] - y))[0];
