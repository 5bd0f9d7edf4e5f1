import type { End, Setup, UnitSystem, Vector } from '@lastinch/core';
import { useCallback, useEffect, useRef, useState } from 'react';
import { flushSync } from 'react-dom';
import { movedTotal, type PointTarget } from './points.ts';

/** A point under the finger or the keys: how far it is moved in all, before any of it is written down. */
export interface HeldPoint {
  readonly target: PointTarget;
  /** Moved in all, against the rig as measured [m]. */
  readonly total: Vector;
}

export interface PointHold {
  readonly held: HeldPoint | null;
  /** Moves the point by so much from where it was when it was taken hold of; drawn with the next frame. */
  move(target: PointTarget, by: Vector): void;
  /** Moves it on from where it is now. */
  nudge(target: PointTarget, by: Vector): void;
  /** Writes down where it is. */
  drop(): void;
  /** Lets it spring back. */
  cancel(): void;
}

/**
 * Holds a point while it moves. A pointer may report many times a frame: only the last of them is worked out, with the
 * next frame, and the file is written once, when the point is let go.
 */
export function usePointHold(
  setup: Setup | null,
  end: End,
  system: UnitSystem,
  onDrop: (held: HeldPoint) => void,
): PointHold {
  const [held, setHeld] = useState<HeldPoint | null>(null);
  const latest = useRef<{ readonly target: PointTarget; readonly by: Vector } | null>(null);
  const frame = useRef<number | null>(null);

  const totalOf = useCallback(
    (target: PointTarget, by: Vector): HeldPoint | null =>
      setup === null ? null : { target, total: movedTotal(setup, end, target, by, system) },
    [setup, end, system],
  );
  const stop = useCallback(() => {
    if (frame.current !== null) cancelAnimationFrame(frame.current);
    frame.current = null;
  }, []);
  const move = useCallback(
    (target: PointTarget, by: Vector) => {
      latest.current = { target, by };
      frame.current ??= requestAnimationFrame(() => {
        frame.current = null;
        const now = latest.current;
        // Drawn within this frame, not the one after.
        if (now !== null) flushSync(() => setHeld(totalOf(now.target, now.by)));
      });
    },
    [totalOf],
  );
  const nudge = useCallback(
    (target: PointTarget, by: Vector) => {
      const now = latest.current;
      const from: Vector = now === null ? [0, 0, 0] : now.by;
      move(target, [from[0] + by[0], from[1] + by[1], from[2] + by[2]]);
    },
    [move],
  );
  const cancel = useCallback(() => {
    stop();
    latest.current = null;
    setHeld(null);
  }, [stop]);
  const drop = useCallback(() => {
    const now = latest.current;
    const last = now === null ? null : totalOf(now.target, now.by);
    cancel();
    if (last !== null) onDrop(last);
  }, [totalOf, cancel, onDrop]);
  useEffect(() => stop, [stop]);
  return { held, move, nudge, drop, cancel };
}
