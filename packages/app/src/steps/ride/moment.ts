import { useEffect, useRef } from 'react';
import { createStore, type Store } from '../../store.ts';

/** The moment of the ride that is looked at [s]. Scope: momentary. Drawings, charts and scrubber all follow it. */
export type Moment = Store<number>;

export const createMoment = (): Moment => createStore(0);

/**
 * Lets the moment run on while `playing`, at `pace` seconds of ride a second. Stops at the end.
 * Follows the frames of the screen, so it costs nothing while the page is hidden.
 */
export function usePlaying(
  moment: Moment,
  run: { readonly playing: boolean; readonly pace: number; readonly end: number; readonly onEnd: () => void },
): void {
  const latest = useRef(run);
  latest.current = run;
  const { playing } = run;
  useEffect(() => {
    if (!playing) return;
    let frame = 0;
    let before: number | null = null;
    const step = (at: number): void => {
      const { pace, end, onEnd } = latest.current;
      // A tab that was hidden wakes up with one long frame: then go on from where it was.
      const passed = before === null ? 0 : Math.min(0.1, (at - before) / 1000);
      before = at;
      const next = moment.get() + passed * pace;
      if (next >= end) {
        moment.set(() => end);
        onEnd();
        return;
      }
      moment.set(() => next);
      frame = requestAnimationFrame(step);
    };
    frame = requestAnimationFrame(step);
    return () => cancelAnimationFrame(frame);
  }, [moment, playing]);
}
