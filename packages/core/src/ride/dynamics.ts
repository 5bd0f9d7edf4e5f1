import type { Track } from '../course/sampled.ts';
import { antiRollMoment } from '../elements/anti-roll-bar.ts';
import { coilForce } from '../elements/coil.ts';
import { droopPull } from '../elements/droop-limit.ts';
import { maxwellFlow, maxwellForce, maxwellLoss } from '../elements/maxwell.ts';
import { shockForce } from '../elements/shock.ts';
import { stopElastic } from '../elements/stop.ts';
import { tyreForce, tyreSwitch } from '../elements/tyre.ts';
import * as at from './layout.ts';
import type { RideModel } from './model.ts';
import { packAxle } from './packed-axle.ts';
import type { Dynamics } from './state.ts';
import type { Accelerate } from './stepper.ts';
import { faceAt, stopAlong, UNTURNED } from './stop-reading.ts';

/**
 * Equations of motion of a body (heave, pitch, roll) on two solid axles (heave, roll each), small angles, all elements
 * vertical: docs/theory/ride.md. The body's weight stands in the springs' preload, the axle's in the tyre's.
 *
 * Within a step the contacts are held as they were at its start, and each law is its own smooth continuation; which
 * contacts the state asks for is left in `wanted`. So the stepper never integrates across a switch.
 *
 * @param speed – forward, constant [m/s] > 0
 */
export function makeDynamics(model: RideModel, track: Track, speed: number): Dynamics {
  const axles = [packAxle(model, 'front'), packAxle(model, 'rear')] as const;
  const sides = [track.left, track.right] as const;
  const grounds = sides.map(({ samples, step, origin }) => ({
    samples,
    step,
    perStep: 1 / step,
    origin,
    last: samples.length / 2 - 1,
  }));
  const { gravity } = model;
  const { seat } = model;
  const bodyMass = model.sprung.mass - (seat?.mass ?? 0);
  const perMass = 1 / bodyMass;
  /** What the springs carry at rest, per mass of the body alone: the sitter's weight with it. */
  const restingLift = seat ? (model.sprung.mass * gravity) / bodyMass : gravity;
  const perPitch = 1 / model.sprung.pitchInertia;
  const perRoll = 1 / model.sprung.rollInertia;
  const probe = new Float64Array(4 * at.PROBE);
  const hasInner = axles.some(({ maxwell }) => maxwell !== null);
  const coordinates = at.RIG_COORDINATES + (seat ? 1 : 0);

  const accelerate: Accelerate = (time, q, v, out, states) => {
    const { contacts } = dynamics;
    const heave = q[at.HEAVE];
    const pitch = q[at.PITCH];
    const roll = q[at.ROLL];
    const heaveSpeed = v[at.HEAVE];
    const pitchSpeed = v[at.PITCH];
    const rollSpeed = v[at.ROLL];
    let wanted = 0;
    let lift = 0;
    let pitchMoment = 0;
    let rollMoment = 0;
    let groundPower = 0;
    let lostPower = 0;

    for (let e = 0; e < 2; e += 1) {
      const axle = axles[e];
      const c = axle.numbers;
      const first = at.AXLE + 2 * e;
      const axleHeave = q[first];
      const axleRoll = q[first + 1];
      const axleHeaveSpeed = v[first];
      const axleRollSpeed = v[first + 1];
      // Compression of the suspension in the middle, and how it changes along the axle.
      const closing = axleHeave - (heave - c[at.X] * pitch);
      const closingSpeed = axleHeaveSpeed - (heaveSpeed - c[at.X] * pitchSpeed);
      const tilt = axleRoll - roll;
      const tiltSpeed = axleRollSpeed - rollSpeed;
      const distance = speed * time - c[at.BEHIND_FRONT];
      let force = 0;
      let moment = 0;
      let tyres = 0;
      let tyreMoment = 0;

      for (let s = 0; s < 2; s += 1) {
        const sign = 1 - 2 * s;
        const corner = 2 * e + s;
        const on = contacts >> (at.CONTACTS * corner);
        let wants = 0;

        // Each side is summed by itself and then added or taken away: an even rig on even ground stays exactly even,
        // where one long sum would roll it by its rounding, and hard whoops make much of a little roll.
        const sideTilt = sign * tilt;
        const sideTiltSpeed = sign * tiltSpeed;
        let sideForce = 0;
        let sideMoment = 0;

        const coil = coilForce(c[at.PRELOAD], c[at.SPRING_RATE], closing + c[at.SPRING_STATION] * sideTilt);
        if (coil > 0) wants |= 1 << at.COIL;
        if ((on & (1 << at.COIL)) !== 0) {
          sideForce += coil;
          sideMoment += c[at.SPRING_STATION] * coil;
        }

        const shockTravel = closing + c[at.SHOCK_STATION] * sideTilt;
        const shockSpeed = closingSpeed + c[at.SHOCK_STATION] * sideTiltSpeed;
        const ratio = c[at.SHOCK_RATIO];
        const damping = ratio * shockForce(axle.shock, ratio * shockSpeed);
        const shaft = damping + c[at.GAS_FORCE] + c[at.GAS_RATE] * shockTravel;
        sideForce += shaft;
        sideMoment += c[at.SHOCK_STATION] * shaft;
        lostPower += damping * shockSpeed;

        const stretch = -c[at.DROOP_AT] - shockTravel;
        if (stretch > 0) wants |= 1 << at.DROOP;
        if ((on & (1 << at.DROOP)) !== 0) {
          const pull = droopPull(c[at.DROOP_RATE], c[at.DROOP_RATE_FACTOR], stretch, shockSpeed);
          sideForce -= pull;
          sideMoment -= c[at.SHOCK_STATION] * pull;
          lostPower += (c[at.DROOP_RATE] * stretch - pull) * shockSpeed;
        }

        const stopTravel = closing + c[at.STOP_STATION] * sideTilt;
        const stopSpeed = closingSpeed + c[at.STOP_STATION] * sideTiltSpeed;
        const stopRatio = c[at.STOP_RATIO];
        const crush = stopRatio * stopTravel - c[at.STOP_GAP + s];
        const beyondMetal = crush - c[at.METAL_AT + s];
        if (crush > 0) wants |= 1 << at.STOP;
        if (beyondMetal > 0) wants |= 1 << at.METAL;
        const beyondOpen = -c[at.OPEN_AT] - shockTravel;
        const beyondClosed = shockTravel - c[at.CLOSED_AT];
        if (beyondOpen > 0) wants |= 1 << at.OPEN;
        if (beyondClosed > 0) wants |= 1 << at.CLOSED;
        if ((on & ((1 << at.OPEN) | (1 << at.CLOSED))) !== 0) {
          const end = c[at.SHOCK_END_RATE] * ((on & (1 << at.CLOSED)) !== 0 ? beyondClosed : -beyondOpen);
          sideForce += end;
          sideMoment += c[at.SHOCK_STATION] * end;
        }

        // Metal may stand before the stop: it is a contact of its own, and the stop's curve counts once it is touched.
        const crushSpeed = stopRatio * stopSpeed;
        const { maxwell } = axle;
        const inner = maxwell === null ? 0 : states[at.INNER + corner];
        let viscous = 0;
        if ((on & ((1 << at.STOP) | (1 << at.METAL))) !== 0) {
          const pressed = (on & (1 << at.STOP)) !== 0 ? crush : 0;
          const metalCrush = (on & (1 << at.METAL)) !== 0 ? beyondMetal : 0;
          const along = stopAlong(dynamics, corner, pressed, metalCrush, crushSpeed, inner);
          const f = stopRatio * along;
          sideForce += f;
          sideMoment += c[at.STOP_STATION] * f;
          if (maxwell !== null && pressed !== 0) viscous = maxwellForce(maxwell, pressed, inner);
          lostPower +=
            (along - stopElastic(axle.stop, c[at.METAL_RATE], pressed, metalCrush) - viscous) * crushSpeed;
          // A stop lets go where it would pull, with its face behind: only a viscous branch makes it do so.
          if (pressed > 0 && along <= 0) wants &= ~(1 << at.STOP);
        }
        if (maxwell !== null) {
          const face = (on & (1 << at.STOP)) !== 0 ? crush : faceAt(dynamics, corner, inner);
          if ((on & (1 << at.STOP)) === 0 && crush <= face) wants &= ~(1 << at.STOP);
          out[coordinates + at.INNER + corner] = maxwellFlow(maxwell, face, inner);
          lostPower += maxwellLoss(maxwell, face, inner);
        } else if (hasInner) out[coordinates + at.INNER + corner] = 0;
        if (axle.friction !== null && (on & (1 << at.STOP)) !== 0) {
          if (crushSpeed > 0) wants |= 1 << at.CLOSING;
        } else wants |= on & (1 << at.CLOSING);

        const wheel = axleHeave + c[at.HALF_TRACK] * (sign * axleRoll);
        const wheelSpeed = axleHeaveSpeed + c[at.HALF_TRACK] * (sign * axleRollSpeed);
        // The ground is read here and not through heightAt and slopeAt: both come from the same four numbers.
        const { samples, step, perStep, origin, last } = grounds[s];
        const place = (distance - origin) * perStep;
        let height = samples[0];
        let groundSpeed = 0;
        if (place > 0) {
          const piece = place < last ? place | 0 : last;
          const i = 2 * piece;
          if (piece === last) height = samples[i];
          else {
            const u = place - piece;
            const away = 1 - u;
            const rise = samples[i + 2] - samples[i];
            const m0 = step * samples[i + 1];
            const m1 = step * samples[i + 3];
            height = samples[i] + u * u * (3 - 2 * u) * rise + u * away * (away * m0 - u * m1);
            groundSpeed =
              speed * perStep * (6 * u * away * rise + away * (1 - 3 * u) * m0 + u * (3 * u - 2) * m1);
          }
        }
        const elastic = c[at.TYRE_LOAD] + c[at.TYRE_RATE] * (height - wheel);
        const approach = groundSpeed - wheelSpeed;
        if (tyreSwitch(elastic, c[at.TYRE_DAMPING], approach) > 0) wants |= 1 << at.TYRE;
        if ((on & (1 << at.TYRE)) !== 0) {
          const f = tyreForce(elastic, c[at.TYRE_DAMPING], approach);
          tyres += f;
          tyreMoment += sign * f;
          groundPower += f * groundSpeed;
          lostPower += (f - elastic) * approach;
        }

        force += sideForce;
        moment += sign * sideMoment;
        wanted |= wants << (at.CONTACTS * corner);
        const p = at.PROBE * corner;
        probe[p + at.STOP_TRAVEL] = stopTravel;
        probe[p + at.STOP_SPEED] = stopSpeed;
        probe[p + at.SHOCK_SPEED] = ratio * shockSpeed;
      }

      moment += antiRollMoment(c[at.ANTI_ROLL_RATE], tilt);
      lift += force;
      pitchMoment -= c[at.X] * force;
      rollMoment += moment;
      out[first] = (tyres - force) * c[at.PER_MASS] - gravity;
      out[first + 1] = (c[at.HALF_TRACK] * tyreMoment - moment) * c[at.PER_INERTIA];
    }

    // The seat pushes back on the body with what it needs beyond the sitter's weight, which the springs carry anyway.
    let onSeat = 0;
    if (seat !== undefined) {
      const give = heave - seat.ahead * pitch + seat.left * roll - q[at.SEAT];
      const giveSpeed = heaveSpeed - seat.ahead * pitchSpeed + seat.left * rollSpeed - v[at.SEAT];
      onSeat = seat.rate * give + seat.damping * giveSpeed;
      lostPower += seat.damping * giveSpeed * giveSpeed;
      const seatAcceleration = onSeat / seat.mass;
      out[at.SEAT] = seatAcceleration;
      out[coordinates + at.SQUARED_SEAT] = seatAcceleration * seatAcceleration;
    } else out[coordinates + at.SQUARED_SEAT] = 0;

    const heaveAcceleration = (lift - onSeat) * perMass - restingLift;
    out[at.HEAVE] = heaveAcceleration;
    out[at.PITCH] = (pitchMoment + (seat?.ahead ?? 0) * onSeat) * perPitch;
    out[at.ROLL] = (rollMoment - (seat?.left ?? 0) * onSeat) * perRoll;
    out[coordinates + at.SQUARED_ACCELERATION] = heaveAcceleration * heaveAcceleration;
    out[coordinates + at.GROUND_WORK] = groundPower;
    out[coordinates + at.DISSIPATED] = lostPower;
    dynamics.wanted = wanted;
  };

  const dynamics: Dynamics = {
    accelerate,
    contacts: 0,
    wanted: 0,
    probe,
    axles,
    sides,
    model,
    speed,
    reversals: [UNTURNED, UNTURNED, UNTURNED, UNTURNED],
    coordinates,
    sums: at.SUMS + (hasInner ? 4 : 0),
    hasInner,
  };
  return dynamics;
}
