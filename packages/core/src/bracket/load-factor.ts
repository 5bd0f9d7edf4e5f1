/** How a load comes on: a rectangle, a rise that stays, half a sine, falling from the first, rising and falling. */
export type PulseShape = 'rectangle' | 'ramp' | 'half-sine' | 'falling' | 'triangle';

/** Time in periods of the body, deflection in that of the load at rest. */
interface Motion {
  readonly at: (time: number) => number;
  /** Speed ÷ 2π. */
  readonly speedAt: (time: number) => number;
}

const TURN = 2 * Math.PI;

/** Under a load that grows by `slope` a period from a time on. */
const growing = (from: number, slope: number): Motion => ({
  at: (time) => (time <= from ? 0 : slope * (time - from - Math.sin(TURN * (time - from)) / TURN)),
  speedAt: (time) => (time <= from ? 0 : (slope * (1 - Math.cos(TURN * (time - from)))) / TURN),
});

/** Under a load that is there at once. */
const suddenly: Motion = {
  at: (time) => 1 - Math.cos(TURN * time),
  speedAt: (time) => Math.sin(TURN * time),
};

const together = (...motions: readonly Motion[]): Motion => ({
  at: (time) => motions.reduce((sum, motion) => sum + motion.at(time), 0),
  speedAt: (time) => motions.reduce((sum, motion) => sum + motion.speedAt(time), 0),
});

function halfSine(share: number): Motion {
  const ratio = 1 / (2 * share);
  if (Math.abs(ratio - 1) < 1e-6)
    return {
      at: (time) => (Math.sin(TURN * time) - TURN * time * Math.cos(TURN * time)) / 2,
      speedAt: (time) => (TURN * time * Math.sin(TURN * time)) / 2,
    };
  const over = 1 - ratio ** 2;
  return {
    at: (time) => (Math.sin(TURN * ratio * time) - ratio * Math.sin(TURN * time)) / over,
    speedAt: (time) => (ratio * (Math.cos(TURN * ratio * time) - Math.cos(TURN * time))) / over,
  };
}

const MOTIONS: Readonly<Record<'half-sine' | 'falling' | 'triangle', (share: number) => Motion>> = {
  'half-sine': halfSine,
  falling: (share) => together(suddenly, growing(0, -1 / share)),
  triangle: (share) => together(growing(0, 2 / share), growing(share / 2, -4 / share)),
};

/**
 * Largest deflection of an undamped body on a spring ÷ that of the same load at rest: 0 … 2.
 * Short against the period a bracket hardly feels a pulse, long it feels it once; in between more than once.
 *
 * @param share – duration of the pulse, or of the rise, ÷ period of the body, > 0
 * @validity one degree of freedom, no damping
 * @source Biggs, Introduction to Structural Dynamics, 1964, ch. 2; Clough and Penzien, Dynamics of Structures (both from
 *   memory): rectangle 2·sin(πs) below a half, ramp 1 + |sin(πs)|/πs; of the others the closed motion is searched
 */
export function loadFactor(shape: PulseShape, share: number): number {
  if (shape === 'rectangle') return share >= 0.5 ? 2 : 2 * Math.sin(Math.PI * share);
  if (shape === 'ramp') return 1 + Math.abs(Math.sin(Math.PI * share)) / (Math.PI * share);
  const { at, speedAt } = MOTIONS[shape](share);
  const count = Math.max(400, Math.ceil(400 * share));
  // Afterwards it swings freely.
  let peak = Math.hypot(at(share), speedAt(share));
  for (let k = 0; k <= count; k += 1) peak = Math.max(peak, at((share * k) / count));
  return peak;
}

/** A weight that falls on a spring presses it so many times deeper than when set down: 1 + √(1 + 2h/δ). */
export const dropFactor = (heightPerRest: number): number => 1 + Math.sqrt(1 + 2 * heightPerRest);

/** Force of a mass that runs into a linear spring: v·√(k·m) [N]. */
export const impactForce = (speed: number, rate: number, mass: number): number =>
  speed * Math.sqrt(rate * mass);
