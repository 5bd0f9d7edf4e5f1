import { stateInside } from './dense.ts';
import { accelerate } from './dynamics.ts';
import * as at from './layout.ts';
import type { i32, Memory } from './memory.ts';
import type { ShakeRecord } from './result.ts';

/** Writes what shakes a seat, and nothing else: fast enough to be on in every trial. */
export interface ShakeRecorder {
  /** Takes in a step, the contacts being those that were held in it. */
  afterStep(m: Memory, from: i32, to: i32): void;
  finish(): ShakeRecord;
}

/**
 * @param rate – samples a second, > 0
 * @param duration – longest time recorded [s]
 */
export function makeShakeRecorder(rate: number, duration: number, hasSeat: boolean): ShakeRecorder {
  const capacity = Math.floor(duration * rate + 1e-9) + 1;
  const heave = new Float64Array(capacity);
  const pitch = new Float64Array(capacity);
  const roll = new Float64Array(capacity);
  const sitter = hasSeat ? new Float64Array(capacity) : null;
  let count = 0;
  return {
    afterStep(m, from, to) {
      const time = m[from + at.TIME];
      const step = m[to + at.TIME] - time;
      while (count < capacity && count / rate <= time + step + 1e-12) {
        const share = Math.min(1, Math.max(0, (count / rate - time) / step));
        stateInside(m, from, to, step, share, at.INSIDE);
        accelerate(m, at.INSIDE);
        const acceleration = at.INSIDE + at.ACCELERATION;
        heave[count] = m[acceleration + at.HEAVE];
        pitch[count] = m[acceleration + at.PITCH];
        roll[count] = m[acceleration + at.ROLL];
        if (sitter !== null) sitter[count] = m[acceleration + at.SEAT];
        count += 1;
      }
    },
    finish: () => ({
      rate,
      heave: heave.slice(0, count),
      pitch: pitch.slice(0, count),
      roll: roll.slice(0, count),
      sitter: sitter?.slice(0, count) ?? null,
    }),
  };
}
