/** How the recent past is averaged: all of the last τ alike, or fading with time constant τ. */
export type RunningWindow = 'linear' | 'exponential';

/** Time constant of the running r.m.s. [s]. @source ISO 2631-1:1997, 6.3.1 (from memory) */
const TIME_CONSTANT = 1;

/**
 * Running r.m.s. of weighted acceleration, at rest before the first sample:
 *
 *     linear        a(t)² = 1/τ · ∫ from t−τ to t of a_w² dt
 *     exponential   a(t)² = 1/τ · ∫ from −∞ to t of a_w²·e^((t′−t)/τ) dt′
 *
 * @param weighted – [m/s²], evenly sampled
 * @param rate – samples a second [Hz]
 * @returns [m/s²] at the same times
 * @source ISO 2631-1:1997, 6.3.1 (from memory), τ = 1 s
 */
export const runningRms = (weighted: Float64Array, rate: number, window: RunningWindow): Float64Array =>
  window === 'linear' ? evenWindow(weighted, rate) : fadingWindow(weighted, rate);

/** Maximum transient vibration value: the largest running r.m.s. [m/s²]. */
export function maximumTransient(weighted: Float64Array, rate: number, window: RunningWindow): number {
  const running = runningRms(weighted, rate, window);
  let largest = 0;
  for (const value of running) if (value > largest) largest = value;
  return largest;
}

function evenWindow(weighted: Float64Array, rate: number): Float64Array {
  const squares = weighted.map((value) => value * value);
  const upTo = new Float64Array(squares.length);
  for (let n = 1; n < squares.length; n += 1)
    upTo[n] = upTo[n - 1] + (squares[n - 1] + squares[n]) / 2 / rate;
  const back = TIME_CONSTANT * rate;
  return upTo.map((total, n) => {
    const from = n - back;
    if (from <= 0) return Math.sqrt(total / TIME_CONSTANT);
    const whole = Math.floor(from);
    const part = from - whole;
    const slope = (squares[whole + 1] ?? 0) - squares[whole];
    const before = upTo[whole] + (part * (squares[whole] + (part * slope) / 2)) / rate;
    return Math.sqrt(Math.max(0, total - before) / TIME_CONSTANT);
  });
}

/** Exact for squares that go in straight lines between samples. */
function fadingWindow(weighted: Float64Array, rate: number): Float64Array {
  const z = 1 / (TIME_CONSTANT * rate);
  const kept = Math.exp(-z);
  const newer = 1 - -Math.expm1(-z) / z;
  const older = -Math.expm1(-z) - newer;
  const running = new Float64Array(weighted.length);
  let square = 0;
  for (let n = 1; n < weighted.length; n += 1) {
    square = kept * square + older * weighted[n - 1] ** 2 + newer * weighted[n] ** 2;
    running[n] = Math.sqrt(square);
  }
  return running;
}
