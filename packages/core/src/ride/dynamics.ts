import { antiRollMoment } from '../elements/anti-roll-bar.ts';
import { coilForce } from '../elements/coil.ts';
import { droopPull } from '../elements/droop-limit.ts';
import { oilForce } from '../elements/gas-chamber.ts';
import { springPull } from '../elements/maxwell.ts';
import { closingGain, stopSum } from '../elements/stop.ts';
import { tyreForce, tyreSwitch } from '../elements/tyre.ts';
import { readGrounds } from './ground.ts';
import * as at from './layout.ts';
import { type i32, type Memory, placeAt } from './memory.ts';
import { faceAt, frictionGain, metAgain, viscousAlong } from './stop-reading.ts';
import { cubicAt, followOnSide, linearAt } from './tables.ts';

/**
 * Equations of motion of a body (heave, pitch, roll) on two solid axles (heave, roll each), small angles, all elements
 * vertical: docs/theory/ride.md. The body's weight stands in the springs' preload, the axle's in the tyre's.
 *
 * Within a step the contacts are held as they were at its start, and each law is its own smooth continuation; which
 * contacts the state asks for is left in its `WANTED`. So the stepper never integrates across a switch.
 *
 * @param state – place of a state: positions, speeds, inner displacements and time are read; accelerations and rates of the
 *   first-order states are written
 */
export function accelerate(m: Memory, state: i32): void {
  readGrounds(m, state);
  accelerateOver(m, state, state);
}

/** The same at an end of a step, where the state is looked at as well: its probes and wanted contacts are left in it. */
export function accelerateAndLook(m: Memory, state: i32): void {
  readGrounds(m, state);
  accelerateAndLookOver(m, state, state);
}

/**
 * The same over ground that was read before: all of a step's at its start, so that no evaluation waits for it.
 * @param over – place of a state at the same time, whose ground was read
 */
export function accelerateOver(m: Memory, state: i32, over: i32): void {
  if (m[at.IS_PLAIN] !== 0) plainly(m, state, over);
  else furnished(m, state, over);
}

export function accelerateAndLookOver(m: Memory, state: i32, over: i32): void {
  if (m[at.IS_PLAIN] !== 0) plainlyAndLook(m, state, over);
  else furnishedAndLook(m, state, over);
}

function plainly(m: Memory, state: i32, over: i32): void {
  equations(m, state, over, false, true);
}

function plainlyAndLook(m: Memory, state: i32, over: i32): void {
  equations(m, state, over, true, true);
}

function furnished(m: Memory, state: i32, over: i32): void {
  equations(m, state, over, false, false);
}

function furnishedAndLook(m: Memory, state: i32, over: i32): void {
  equations(m, state, over, true, false);
}

/**
 * @inline in the compiled kernel, so that the stages of a step carry nothing of the looking, and rigs without gas, paths,
 * ends of the shock, friction, oil and viscous branches nothing of those.
 */
function equations(m: Memory, state: i32, over: i32, looks: boolean, isPlain: boolean): void {
  const contacts = placeAt(m, at.CONTACTS_ON);
  const hasInner = !isPlain && m[at.HAS_INNER] !== 0;
  const v = state + at.SPEED;
  const out = state + at.ACCELERATION;
  const heave = m[state + at.HEAVE];
  const pitch = m[state + at.PITCH];
  const roll = m[state + at.ROLL];
  const heaveSpeed = m[v + at.HEAVE];
  const pitchSpeed = m[v + at.PITCH];
  const rollSpeed = m[v + at.ROLL];
  const gravity = m[at.GRAVITY];
  let wanted: i32 = 0;
  let lift: number = 0;
  let pitchMoment: number = 0;
  let rollMoment: number = 0;
  let groundPower: number = 0;
  let lostPower: number = 0;

  for (let e: i32 = 0; e < 2; e += 1) {
    const c = at.FRONT + e * at.AXLE_SIZE;
    const first = at.AXLE + 2 * e;
    const axleHeave = m[state + first];
    const axleRoll = m[state + first + 1];
    const axleHeaveSpeed = m[v + first];
    const axleRollSpeed = m[v + first + 1];
    // Compression of the suspension in the middle, and how it changes along the axle.
    const hasPaths = !isPlain && m[c + at.HAS_PATHS] !== 0;
    const hasFriction = !isPlain && m[c + at.FRICTION_LIMIT] !== 0;
    const hasOil = !isPlain && m[c + at.OIL_FACTOR] !== 0;
    const springStation = m[c + at.SPRING_STATION];
    const shockStation = m[c + at.SHOCK_STATION];
    const stopStation = m[c + at.STOP_STATION];
    const halfTrack = m[c + at.HALF_TRACK];
    const x = m[c + at.X];
    const closing = axleHeave - (heave - x * pitch);
    const closingSpeed = axleHeaveSpeed - (heaveSpeed - x * pitchSpeed);
    const tilt = axleRoll - roll;
    const tiltSpeed = axleRollSpeed - rollSpeed;
    /** Contacts that carry force on one of its sides. */
    const either = (contacts >> (2 * at.CONTACTS * e)) | (contacts >> (2 * at.CONTACTS * e + at.CONTACTS));
    let force: number = 0;
    let moment: number = 0;
    let tyres: number = 0;
    let tyreMoment: number = 0;

    // Each side is summed by itself and then added or taken away: an even rig on even ground stays exactly even, where
    // one long sum would roll it by its rounding, and hard whoops make much of a little roll.
    for (let s: i32 = 0; s < 2; s += 1) {
      const sign = m[at.SIGN + s];
      const corner = 2 * e + s;
      const sideTilt = sign * tilt;
      const sideTiltSpeed = sign * tiltSpeed;
      const shockTravel = closing + shockStation * sideTilt;
      const stopTravel = closing + stopStation * sideTilt;
      // How far each has closed, in axle travel at its ratio of ride height, and what its ratio is of that.
      let springAlong = closing + springStation * sideTilt;
      let shockAlong = shockTravel;
      let stopGone = stopTravel;
      let springLever: number = 1;
      let ratio = m[c + at.SHOCK_RATIO];
      let shockLever: number = 1;
      let stopRatio = m[c + at.STOP_RATIO];
      if (hasPaths) {
        springAlong = followOnSide(m, placeAt(m, c + at.SPRING_PATH), springAlong, s);
        springLever = m[at.SIDE_LEVER + s];
        shockAlong = followOnSide(m, placeAt(m, c + at.SHOCK_PATH), shockAlong, s);
        shockLever = m[at.SIDE_LEVER + s];
        ratio *= shockLever;
        stopGone = followOnSide(m, placeAt(m, c + at.STOP_PATH), stopGone, s);
        stopRatio *= m[at.SIDE_LEVER + s];
      }
      const coil = coilForce(m[c + at.PRELOAD], m[c + at.SPRING_RATE], springAlong);
      let springPush = m[at.HELD_COIL + corner] * coil;
      if (hasPaths) springPush *= springLever;
      let sideForce = springPush;
      let sideMoment = springStation * springPush;

      const shockSpeed = closingSpeed + shockStation * sideTiltSpeed;
      const damping = ratio * linearAt(m, placeAt(m, c + at.SHOCK_TABLE), ratio * shockSpeed);
      let shaft = damping;
      if (!isPlain) shaft += shockLever * (m[c + at.GAS_FORCE] + m[c + at.GAS_RATE] * shockAlong);
      sideForce += shaft;
      sideMoment += shockStation * shaft;
      let sideLoss = damping * shockSpeed;

      const stretch = -m[c + at.DROOP_AT] - shockTravel;
      if ((either & (1 << at.DROOP)) !== 0) {
        if (m[at.HELD_DROOP + corner] !== 0) {
          const pull = droopPull(m[c + at.DROOP_RATE], m[c + at.DROOP_RATE_FACTOR], stretch, shockSpeed);
          sideForce -= pull;
          sideMoment -= shockStation * pull;
          sideLoss += (m[c + at.DROOP_RATE] * stretch - pull) * shockSpeed;
        }
      }
      const beyondOpen = -m[c + at.OPEN_AT] - shockTravel;
      const beyondClosed = shockTravel - m[c + at.CLOSED_AT];
      if (!isPlain && (either & ((1 << at.OPEN) | (1 << at.CLOSED))) !== 0) {
        if (m[at.HELD_OPEN + corner] !== 0 || m[at.HELD_CLOSED + corner] !== 0) {
          const beyond = m[at.HELD_CLOSED + corner] !== 0 ? beyondClosed : -beyondOpen;
          const push = m[c + at.SHOCK_END_RATE] * beyond;
          sideForce += push;
          sideMoment += shockStation * push;
        }
      }

      const stopSpeed = closingSpeed + stopStation * sideTiltSpeed;
      const crush = m[c + at.STOP_RATIO] * stopGone - m[c + at.STOP_GAP + s];
      const beyondMetal = crush - m[c + at.METAL_AT + s];
      // Metal may stand before the stop: it is a contact of its own, and the stop's curve counts once it is touched.
      const crushSpeed = stopRatio * stopSpeed;
      const isTouched = m[at.HELD_STOP + corner] !== 0;
      let isMet = crush > 0;
      let along: number = 0;
      let inner: number = 0;
      if (hasInner) inner = m[state + at.INNER + corner];
      if ((either & ((1 << at.STOP) | (1 << at.METAL))) !== 0) {
        if (isTouched || m[at.HELD_METAL + corner] !== 0) {
          const pressed: number = isTouched ? crush : 0;
          const metal: number = m[at.HELD_METAL + corner] !== 0 ? m[c + at.METAL_RATE] * beyondMetal : 0;
          const curve = cubicAt(m, placeAt(m, c + at.STOP_TABLE), pressed);
          let viscous: number = 0;
          if (hasInner) viscous = viscousAlong(m, corner, pressed, inner);
          let friction: number = 1;
          if (hasFriction) friction = frictionGain(m, corner, pressed);
          let oil: number = 0;
          if (hasOil) oil = pressed !== 0 ? oilForce(m[c + at.OIL_FACTOR], crushSpeed) : 0;
          const gain = closingGain(m[c + at.STOP_RATE_FACTOR], crushSpeed);
          along = stopSum(friction, curve, metal, gain, viscous, oil);
          sideForce += stopRatio * along;
          sideMoment += stopStation * (stopRatio * along);
          sideLoss += (along - (curve + metal + viscous)) * crushSpeed;
          // A stop lets go where it would pull, with its face behind: only a viscous branch makes it do so.
          if (pressed > 0 && along <= 0) isMet = false;
        }
      }
      if (hasInner) {
        const face: number = isTouched ? crush : faceAt(m, corner, inner);
        if (!isTouched) isMet = metAgain(m, corner, crush, face, crushSpeed, inner) > 0;
        const pull = springPull(m[c + at.MAXWELL_RATE], face, inner);
        const flow = pull / m[c + at.MAXWELL_DAMPING];
        m[state + at.INNER_RATE + corner] = flow;
        sideLoss += pull * flow;
      }

      const rise = m[over + at.RISE_UNDER + corner];
      const wheel = axleHeave + halfTrack * (sign * axleRoll);
      const approach = rise - (axleHeaveSpeed + halfTrack * (sign * axleRollSpeed));
      const elastic =
        m[c + at.TYRE_LOAD] + m[c + at.TYRE_RATE] * (m[over + at.HEIGHT_UNDER + corner] - wheel);
      const carries = m[at.HELD_TYRE + corner];
      const push = carries * tyreForce(elastic, m[c + at.TYRE_DAMPING], approach);
      sideLoss += carries * ((push - elastic) * approach);

      force += sideForce;
      moment += sign * sideMoment;
      tyres += push;
      tyreMoment += sign * push;
      groundPower += push * rise;
      lostPower += sideLoss;

      if (looks) {
        wanted |= bitWhere(isMet, corner, at.STOP);
        wanted |= bitWhere(beyondMetal > 0, corner, at.METAL);
        wanted |= bitWhere(coil > 0, corner, at.COIL);
        wanted |= bitWhere(stretch > 0, corner, at.DROOP);
        wanted |= bitWhere(tyreSwitch(elastic, m[c + at.TYRE_DAMPING], approach) > 0, corner, at.TYRE);
        if (!isPlain) {
          wanted |= bitWhere(beyondOpen > 0, corner, at.OPEN);
          wanted |= bitWhere(beyondClosed > 0, corner, at.CLOSED);
        }
        let isClosing = m[at.HELD_CLOSING + corner] !== 0;
        if (hasFriction && isTouched) isClosing = crushSpeed > 0;
        wanted |= bitWhere(isClosing, corner, at.CLOSING);
        m[state + at.STOP_TRAVEL + corner] = stopTravel;
        m[state + at.STOP_SPEED + corner] = stopSpeed;
        m[state + at.SHOCK_SPEED + corner] = ratio * shockSpeed;
        m[state + at.STOP_FORCE + corner] = Math.max(0, along);
      }
    }

    moment += antiRollMoment(m[c + at.ANTI_ROLL_RATE], tilt);
    lift += force;
    pitchMoment -= x * force;
    rollMoment += moment;
    m[out + first] = (tyres - force) * m[c + at.PER_MASS] - gravity;
    m[out + first + 1] = (halfTrack * tyreMoment - moment) * m[c + at.PER_INERTIA];
  }

  // The seat pushes back on the body with what it needs beyond the sitter's weight, which the springs carry anyway.
  const sitter = m[at.SEAT_MASS];
  if (sitter !== 0) {
    const ahead = m[at.SEAT_AHEAD];
    const left = m[at.SEAT_LEFT];
    const give = heave - ahead * pitch + left * roll - m[state + at.SEAT];
    const giveSpeed = heaveSpeed - ahead * pitchSpeed + left * rollSpeed - m[v + at.SEAT];
    const damping = m[at.SEAT_DAMPING] * giveSpeed;
    const onSeat = m[at.SEAT_RATE] * give + damping;
    lostPower += damping * giveSpeed;
    const seatAcceleration = onSeat / sitter;
    m[out + at.SEAT] = seatAcceleration;
    m[state + at.SQUARED_SEAT + at.RATE] = seatAcceleration * seatAcceleration;
    lift -= onSeat;
    pitchMoment += ahead * onSeat;
    rollMoment -= left * onSeat;
  }

  const heaveAcceleration = lift * m[at.PER_BODY_MASS] - m[at.RESTING_LIFT];
  m[out + at.HEAVE] = heaveAcceleration;
  m[out + at.PITCH] = pitchMoment * m[at.PER_PITCH_INERTIA];
  m[out + at.ROLL] = rollMoment * m[at.PER_ROLL_INERTIA];
  m[state + at.SQUARED_ACCELERATION + at.RATE] = heaveAcceleration * heaveAcceleration;
  m[state + at.GROUND_WORK + at.RATE] = groundPower;
  m[state + at.DISSIPATED + at.RATE] = lostPower;
  if (looks) m[state + at.WANTED] = wanted;
}

/** The bit of a contact of a corner where it holds, else nothing. */
export function bitWhere(holds: boolean, corner: i32, which: i32): i32 {
  return holds ? 1 << (at.CONTACTS * corner + which) : 0;
}
