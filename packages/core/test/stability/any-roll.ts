import fc from 'fast-check';
import { monotoneCubic } from '../../src/numerics/monotone-cubic.ts';
import type { RollEnd, RollModel } from '../../src/stability/roll-model.ts';

export interface EndFacts {
  readonly mass?: number;
  readonly sprung?: number;
  readonly track?: number;
  readonly springRate?: number;
  readonly spread?: number;
  readonly tyreRate?: number;
  readonly rollCentre?: number;
  readonly hub?: number;
  readonly bar?: number;
  readonly touches?: number;
  readonly droop?: number;
}

const G = 9.80665;

/** One end of an invented rig, the same left and right. Stops far away unless a test brings them near. */
export function rollEnd(facts: EndFacts = {}): RollEnd {
  const {
    mass = 250,
    sprung = 700,
    track = 1.6,
    springRate = 30_000,
    spread = 0.9,
    tyreRate = 200_000,
  } = facts;
  const load = (sprung * G) / 2;
  const touches = facts.touches ?? 10;
  return {
    halfTrack: track / 2,
    axleMass: mass,
    hubHeight: facts.hub ?? 0.42,
    rollCentre: facts.rollCentre ?? 0.42,
    tyreRate,
    tyreLoad: { left: load + (mass * G) / 2, right: load + (mass * G) / 2 },
    spring: { halfStation: spread / 2, rate: springRate, load: { left: load, right: load } },
    gas: { halfStation: 0.5, rate: 0, load: 0 },
    stop: {
      halfStation: 0.44,
      ratio: 1,
      touches: { left: touches, right: touches },
      metalAt: { left: touches + 0.05, right: touches + 0.05 },
      curve: monotoneCubic([0, 0.02, 0.04], [0, 2000, 9000]),
      metalRate: 2e7,
    },
    droop: { halfStation: 0.5, at: facts.droop ?? 10, rate: 2e6 },
    barRate: facts.bar ?? 0,
  };
}

export function rollRig(
  facts: { front?: EndFacts; rear?: EndFacts; sprungHeight?: number; sprungLeft?: number } = {},
): RollModel {
  const [front, rear] = [facts.front ?? {}, facts.rear ?? {}];
  const [onFront, onRear] = [front.sprung ?? 700, rear.sprung ?? 700];
  return {
    sprungMass: onFront + onRear,
    sprungLeft: facts.sprungLeft ?? 0,
    sprungHeight: facts.sprungHeight ?? 0.95,
    rearShare: onRear / (onFront + onRear),
    ends: { front: rollEnd(front), rear: rollEnd(rear) },
  };
}

/** Height of the centre of the whole above the ground [m]. */
export const heightOf = ({ sprungMass, sprungHeight, ends: { front, rear } }: RollModel): number =>
  (sprungMass * sprungHeight + front.axleMass * front.hubHeight + rear.axleMass * rear.hubHeight) /
  (sprungMass + front.axleMass + rear.axleMass);

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const anyEnd = fc.record({
  mass: between(120, 320),
  sprung: between(450, 950),
  track: between(1.35, 1.85),
  springRate: between(18_000, 60_000),
  spread: between(0.7, 1.2),
  tyreRate: between(90_000, 350_000),
  rollCentre: between(0.1, 0.7),
  hub: between(0.36, 0.5),
  bar: between(0, 30_000),
  touches: between(0.03, 0.12),
  droop: between(0.06, 0.16),
});

/** Invented rigs that differ front to rear and are the same left and right. */
export const anyRollRig = fc
  .record({ front: anyEnd, rear: anyEnd, sprungHeight: between(0.7, 1.1) })
  .map((facts) => rollRig(facts));
