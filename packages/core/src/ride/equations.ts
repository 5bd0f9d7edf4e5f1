import { heightAt, type SampledSide, slopeAt, type Track } from '../course/sampled.ts';
import { coilEnergy, coilForce } from '../elements/coil.ts';
import { droopEnergy, droopPull } from '../elements/droop-limit.ts';
import { shockForce } from '../elements/shock.ts';
import { stopEnergy, stopForce } from '../elements/stop.ts';
import { tyreEnergy, tyreForce, tyreSwitch } from '../elements/tyre.ts';
import { type MonotoneCubic, monotoneCubic } from '../numerics/monotone-cubic.ts';
import { type PiecewiseLinear, piecewiseLinear } from '../numerics/piecewise-linear.ts';
import {
  AXLE,
  COIL,
  COORDINATES,
  DISSIPATED,
  DROOP,
  GROUND_WORK,
  HEAVE,
  METAL,
  PITCH,
  ROLL,
  STOP,
  SWITCHES,
  TYRE,
} from './layout.ts';
import type { AxleModel, RideModel } from './model.ts';

/** One axle made ready for the loop: constants folded, tables built. Index 0 is left, 1 is right. */
interface EndConstants {
  /** Place of the axle ahead of the centre of gravity [m]. */
  readonly x: number;
  /** How much later the axle meets the ground than the front axle [m]. */
  readonly behindFront: number;
  readonly mass: number;
  readonly rollInertia: number;
  readonly halfTrack: number;
  readonly springStation: number;
  /** Rate at the axle, ratio²·rate [N/m], and force at ride [N]. */
  readonly springRate: number;
  readonly preload: number;
  readonly shockStation: number;
  readonly shockRatio: number;
  readonly shockTable: PiecewiseLinear;
  readonly stopStation: number;
  readonly stopRatio: number;
  readonly stopGap: readonly [number, number];
  readonly stopCurve: MonotoneCubic;
  readonly stopRateFactor: number;
  readonly metalAt: readonly [number, number];
  readonly metalRate: number;
  readonly droopAt: number;
  readonly droopRate: number;
  readonly droopRateFactor: number;
  readonly tyreLoad: number;
  readonly tyreRate: number;
  readonly tyreDamping: number;
}

/** The model over a track at a speed: derivative, switches and what can be read off a state. */
export interface Equations {
  /** 1 where a contact carries force; SWITCHES a corner. Frozen during a step, changed only at an event. */
  readonly switches: Uint8Array;
  readonly ends: readonly [EndConstants, EndConstants];
  derivative(time: number, state: Float64Array, out: Float64Array): void;
  /** Positive when the contact should carry force, at any state. */
  switchValue(index: number, time: number, state: Float64Array): number;
  /** The same from the motion of that contact alone: compression (wheel height for a tyre) and its speed. */
  switchOfMotion(index: number, time: number, position: number, speed: number): number;
  /** Compression at the station of a switch (wheel height for a tyre), or its speed or acceleration when given those. */
  motion(index: number, coordinates: Float64Array, offset: number): number;
  /** Force of stop and metal on the body at a corner [N], zero when not touched. */
  stopForceAt(corner: number, travel: number, speed: number): number;
  /** Energy held by the tyre of a corner if it carries force [J]: lost when it lets go of the ground. */
  heldByTyre(corner: number, time: number, state: Float64Array): number;
  /** Energy held in all elements, in motion and in height [J]. */
  storedEnergy(time: number, state: Float64Array): number;
  /** Height of the ground under a tyre [m]. */
  groundAt(corner: number, time: number): number;
}

function endConstants(model: RideModel, axle: AxleModel, isFront: boolean): EndConstants {
  const { mass, toFrontAxle: a, toRearAxle: b } = model.sprung;
  const preload = (mass * model.gravity * (isFront ? b : a)) / (a + b) / 2;
  return {
    x: isFront ? a : -b,
    behindFront: isFront ? 0 : a + b,
    mass: axle.mass,
    rollInertia: axle.rollInertia,
    halfTrack: axle.halfTrack,
    springStation: axle.spring.halfStation,
    springRate: axle.spring.rate * axle.spring.ratio ** 2,
    preload,
    shockStation: axle.shock.halfStation,
    shockRatio: axle.shock.ratio,
    shockTable: piecewiseLinear(axle.shock.speed, axle.shock.force),
    stopStation: axle.stop.halfStation,
    stopRatio: axle.stop.ratio,
    stopGap: [axle.stop.gap.left, axle.stop.gap.right],
    stopCurve: monotoneCubic(axle.stop.crush, axle.stop.force),
    stopRateFactor: axle.stop.rateFactor,
    metalAt: [axle.metal.atCrush.left, axle.metal.atCrush.right],
    metalRate: axle.metal.rate,
    droopAt: axle.droopLimit.at,
    droopRate: axle.droopLimit.rate,
    droopRateFactor: axle.droopLimit.rateFactor,
    tyreLoad: preload + (axle.mass * model.gravity) / 2,
    tyreRate: axle.tyre.rate,
    tyreDamping: axle.tyre.damping,
  };
}

/**
 * Equations of motion of a body (heave, pitch, roll) on two solid axles (heave, roll each), small angles, all elements
 * vertical: docs/theory/ride.md. The body's weight stands in the springs' preload, the axle's in the tyre's.
 *
 * @param speed – forward, constant [m/s] > 0
 */
export function makeEquations(model: RideModel, track: Track, speed: number): Equations {
  const { mass, rollInertia, pitchInertia } = model.sprung;
  const { gravity } = model;
  const ends = [
    endConstants(model, model.axles.front, true),
    endConstants(model, model.axles.rear, false),
  ] as const;
  const sides: readonly [SampledSide, SampledSide] = [track.left, track.right];
  const switches = new Uint8Array(4 * SWITCHES);

  /** Station of a switch, from the centre line. */
  const stationOf = (end: EndConstants, which: number): number => {
    if (which === TYRE) return end.halfTrack;
    if (which === COIL) return end.springStation;
    return which === DROOP ? end.shockStation : end.stopStation;
  };

  const derivative = (time: number, state: Float64Array, out: Float64Array): void => {
    const heave = state[HEAVE];
    const pitch = state[PITCH];
    const roll = state[ROLL];
    const heaveSpeed = state[COORDINATES + HEAVE];
    const pitchSpeed = state[COORDINATES + PITCH];
    const rollSpeed = state[COORDINATES + ROLL];
    let lift = 0;
    let pitchMoment = 0;
    let rollMoment = 0;
    let groundPower = 0;
    let lostPower = 0;

    for (let e = 0; e < 2; e += 1) {
      const end = ends[e];
      const at = AXLE + 2 * e;
      const axleHeave = state[at];
      const axleRoll = state[at + 1];
      const axleHeaveSpeed = state[COORDINATES + at];
      const axleRollSpeed = state[COORDINATES + at + 1];
      // Compression of the suspension in the middle, and how it changes along the axle.
      const closing = axleHeave - (heave - end.x * pitch);
      const closingSpeed = axleHeaveSpeed - (heaveSpeed - end.x * pitchSpeed);
      const tilt = axleRoll - roll;
      const tiltSpeed = axleRollSpeed - rollSpeed;
      const distance = speed * time - end.behindFront;
      let force = 0;
      let moment = 0;
      let tyres = 0;
      let tyreMoment = 0;

      for (let s = 0; s < 2; s += 1) {
        const sign = s === 0 ? 1 : -1;
        const base = (2 * e + s) * SWITCHES;

        if (switches[base + COIL] === 1) {
          const y = sign * end.springStation;
          const f = coilForce(end.preload, end.springRate, closing + y * tilt);
          force += f;
          moment += y * f;
        }

        const yShock = sign * end.shockStation;
        const shockSpeed = closingSpeed + yShock * tiltSpeed;
        const fShock = end.shockRatio * shockForce(end.shockTable, end.shockRatio * shockSpeed);
        force += fShock;
        moment += yShock * fShock;
        lostPower += fShock * shockSpeed;

        if (switches[base + DROOP] === 1) {
          const stretch = -end.droopAt - (closing + yShock * tilt);
          const pull = droopPull(end.droopRate, end.droopRateFactor, stretch, shockSpeed);
          force -= pull;
          moment -= yShock * pull;
          lostPower += (end.droopRate * stretch - pull) * shockSpeed;
        }

        if (switches[base + STOP] === 1) {
          const y = sign * end.stopStation;
          const crush = end.stopRatio * (closing + y * tilt) - end.stopGap[s];
          const crushSpeed = end.stopRatio * (closingSpeed + y * tiltSpeed);
          const metalCrush = switches[base + METAL] === 1 ? crush - end.metalAt[s] : 0;
          const fStop = stopForce(
            end.stopCurve,
            end.stopRateFactor,
            end.metalRate,
            crush,
            metalCrush,
            crushSpeed,
          );
          const f = end.stopRatio * fStop;
          force += f;
          moment += y * f;
          lostPower +=
            (fStop - stopForce(end.stopCurve, 0, end.metalRate, crush, metalCrush, 0)) * crushSpeed;
        }

        if (switches[base + TYRE] === 1) {
          const y = sign * end.halfTrack;
          const ground = sides[s];
          const groundSpeed = speed * slopeAt(ground, distance);
          const elastic =
            end.tyreLoad + end.tyreRate * (heightAt(ground, distance) - (axleHeave + y * axleRoll));
          const gap = groundSpeed - (axleHeaveSpeed + y * axleRollSpeed);
          const f = tyreForce(elastic, end.tyreDamping, gap);
          tyres += f;
          tyreMoment += y * f;
          groundPower += f * groundSpeed;
          lostPower += (f - elastic) * gap;
        }
      }

      lift += force;
      pitchMoment -= end.x * force;
      rollMoment += moment;
      out[at] = axleHeaveSpeed;
      out[at + 1] = axleRollSpeed;
      out[COORDINATES + at] = (tyres - force) / end.mass - gravity;
      out[COORDINATES + at + 1] = (tyreMoment - moment) / end.rollInertia;
    }

    out[HEAVE] = heaveSpeed;
    out[PITCH] = pitchSpeed;
    out[ROLL] = rollSpeed;
    out[COORDINATES + HEAVE] = lift / mass - gravity;
    out[COORDINATES + PITCH] = pitchMoment / pitchInertia;
    out[COORDINATES + ROLL] = rollMoment / rollInertia;
    out[GROUND_WORK] = groundPower;
    out[DISSIPATED] = lostPower;
  };

  const groundAt = (corner: number, time: number): number =>
    heightAt(sides[corner & 1], speed * time - ends[corner >> 1].behindFront);

  const motion = (index: number, c: Float64Array, offset: number): number => {
    const corner = Math.floor(index / SWITCHES);
    const which = index - corner * SWITCHES;
    const end = ends[corner >> 1];
    const y = (corner & 1 ? -1 : 1) * stationOf(end, which);
    const at = offset + AXLE + 2 * (corner >> 1);
    const wheel = c[at] + y * c[at + 1];
    if (which === TYRE) return wheel;
    return wheel - (c[offset + HEAVE] - end.x * c[offset + PITCH] + y * c[offset + ROLL]);
  };

  const switchOfMotion = (index: number, time: number, position: number, velocity: number): number => {
    const corner = Math.floor(index / SWITCHES);
    const end = ends[corner >> 1];
    switch (index - corner * SWITCHES) {
      case STOP:
        return end.stopRatio * position - end.stopGap[corner & 1];
      case METAL:
        return end.stopRatio * position - end.stopGap[corner & 1] - end.metalAt[corner & 1];
      case COIL:
        return coilForce(end.preload, end.springRate, position);
      case DROOP:
        return -end.droopAt - position;
      default: {
        const ground = sides[corner & 1];
        const distance = speed * time - end.behindFront;
        const elastic = end.tyreLoad + end.tyreRate * (heightAt(ground, distance) - position);
        return tyreSwitch(elastic, end.tyreDamping, speed * slopeAt(ground, distance) - velocity);
      }
    }
  };

  const switchValue = (index: number, time: number, state: Float64Array): number =>
    switchOfMotion(index, time, motion(index, state, 0), motion(index, state, COORDINATES));

  const stopForceAt = (corner: number, travel: number, velocity: number): number => {
    const end = ends[corner >> 1];
    const crush = end.stopRatio * travel - end.stopGap[corner & 1];
    if (crush <= 0) return 0;
    return stopForce(
      end.stopCurve,
      end.stopRateFactor,
      end.metalRate,
      crush,
      Math.max(0, crush - end.metalAt[corner & 1]),
      end.stopRatio * velocity,
    );
  };

  const heldByTyre = (corner: number, time: number, state: Float64Array): number => {
    const end = ends[corner >> 1];
    const wheel = motion(corner * SWITCHES + TYRE, state, 0);
    return tyreEnergy(end.tyreRate, end.tyreLoad + end.tyreRate * (groundAt(corner, time) - wheel));
  };

  const storedEnergy = (time: number, state: Float64Array): number => {
    const [heave, , , front, , rear] = state;
    const v = state.subarray(COORDINATES, 2 * COORDINATES);
    let energy =
      (mass * v[HEAVE] ** 2 + pitchInertia * v[PITCH] ** 2 + rollInertia * v[ROLL] ** 2) / 2 +
      mass * gravity * heave;
    ends.forEach((end, e) => {
      const at = AXLE + 2 * e;
      energy += (end.mass * v[at] ** 2 + end.rollInertia * v[at + 1] ** 2) / 2;
      energy += end.mass * gravity * (e === 0 ? front : rear);
    });
    for (let corner = 0; corner < 4; corner += 1) {
      const end = ends[corner >> 1];
      const base = corner * SWITCHES;
      const compression = motion(base + COIL, state, 0);
      energy += coilEnergy(end.springRate, Math.max(0, coilForce(end.preload, end.springRate, compression)));
      const crush = end.stopRatio * motion(base + STOP, state, 0) - end.stopGap[corner & 1];
      if (crush > 0)
        energy += stopEnergy(
          end.stopCurve,
          end.metalRate,
          crush,
          Math.max(0, crush - end.metalAt[corner & 1]),
        );
      const stretch = -end.droopAt - motion(base + DROOP, state, 0);
      if (stretch > 0) energy += droopEnergy(end.droopRate, stretch);
      if (switches[base + TYRE] === 1) energy += heldByTyre(corner, time, state);
    }
    return energy;
  };

  return {
    switches,
    ends,
    derivative,
    switchValue,
    switchOfMotion,
    motion,
    stopForceAt,
    heldByTyre,
    storedEnergy,
    groundAt,
  };
}
