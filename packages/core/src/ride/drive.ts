import { tyreEnergy } from '../elements/tyre.ts';
import { contactMotion } from './contact-motion.ts';
import { stateInside } from './dense.ts';
import { accelerateAndLook, accelerateAndLookOver, accelerateOver } from './dynamics.ts';
import { findEvent } from './events.ts';
import { readGrounds, readGroundUnder } from './ground.ts';
import * as at from './layout.ts';
import { type i32, type Memory, placeAt } from './memory.ts';
import { takeInPeaks } from './peaks.ts';
import { errorRoot, nextStep, rightStep, shorterStep } from './step-control.ts';
import { end, fourth, localError, placeStages, second, third } from './stepper.ts';
import { axleOf, crushAt, curveAt, frictionGain, heldByFriction } from './stop-reading.ts';

const SHORTEST_STEP = 1e-9;

/**
 * A stop about to let go may stand, to rounding, where touched it would pull and free it would push: it switches to and
 * fro and time stands still. After so many switches in one moment the contacts are held as they are for a short step.
 */
const MOST_STILL = 4;
const HELD_STEP = 1e-5;

/** Small angles and vertical elements are no longer a fair picture beyond this (45°). */
const LARGEST_ANGLE = Math.PI / 4;

/** Takes as many steps as are asked for, or what is left of the run. */
export function takeSteps(m: Memory, count: i32): void {
  for (let k = 0; k < count && isUnderWay(m); k += 1) takeStep(m);
}

function isUnderWay(m: Memory): boolean {
  return m[at.LEFT_VALIDITY] === 0 && m[placeAt(m, at.FROM) + at.TIME] < m[at.DURATION];
}

function evaluateAndLook(m: Memory, state: i32): void {
  accelerateAndLook(m, state);
  m[at.EVALUATIONS] += 1;
}

/** Tries a step. @returns largest local error ÷ accepted error; NaN when the result is not finite */
function attempt(m: Memory, from: i32, to: i32, step: number): number {
  placeStages(m, from, to, step);
  readGrounds(m, at.SECOND);
  readGrounds(m, at.THIRD);
  readGrounds(m, at.FOURTH);
  second(m, from, step);
  accelerateOver(m, at.SECOND, at.SECOND);
  third(m, from, step);
  accelerateOver(m, at.THIRD, at.THIRD);
  fourth(m, from, step);
  accelerateOver(m, at.FOURTH, at.FOURTH);
  end(m, from, to, step);
  // The fourth stage stands at the end as well.
  accelerateAndLookOver(m, to, at.FOURTH);
  m[at.EVALUATIONS] += 4;
  return localError(m, from, to, step);
}

/**
 * Tries one step; takes it as far as the first contact that switches in it. A function of its own and not the body of
 * a loop, so that the compiler sees it often and whole.
 */
export function takeStep(m: Memory): void {
  const from = placeAt(m, at.FROM);
  const to = at.ONE_END + at.OTHER_END - from;
  if (m[at.EVENT_CONTACTS] !== 0) {
    // It waited till now, so that whoever looks at a step finds it with the contacts that were held in it.
    // Most forces begin and end at nothing, so that the end of the last step serves as the start of this one.
    if (switchContacts(m, from)) evaluateAndLook(m, from);
  }
  const time = m[from + at.TIME];
  let next = placeAt(m, at.NEXT_BREAK);
  while (m[next] <= time + SHORTEST_STEP) next += 2;
  m[at.NEXT_BREAK] = next;
  const until = m[next];
  const left = until - time;
  const planned = Math.min(m[at.PLANNED_STEP], m[next + 1]);
  // The last two steps before a break share what is left, so that none of them is a crumb.
  const even = planned >= left ? left : 2 * planned > left ? left / 2 : planned;
  const isHeld = m[at.SWITCHED_STILL] >= MOST_STILL;
  const step = isHeld ? Math.min(even, HELD_STEP) : even;
  const error = attempt(m, from, to, step);
  if (!(error <= 1)) {
    if (step <= SHORTEST_STEP) m[at.LEFT_VALIDITY] = 1;
    m[at.REJECTED] += 1;
    m[at.PLANNED_STEP] = shorterStep(step, error);
    return;
  }
  // A step cut short by a break says nothing against the longer one that was planned.
  const root = errorRoot(error);
  const grown = nextStep(step, root, m[at.LAST_ROOT]);
  m[at.LAST_ROOT] = root;
  m[at.PLANNED_STEP] = step < planned ? Math.max(grown, planned) : grown;
  if (m[at.JUST_MADE] !== 0) rememberStep(m, rightStep(step, root));

  const changed = placeAt(m, to + at.WANTED) ^ placeAt(m, at.CONTACTS_ON);
  if (changed === 0 || isHeld) {
    if (step === left) m[to + at.TIME] = until;
    accept(m, from, to, step);
  } else {
    m[at.EVENTS] += 1;
    findEvent(m, from, to, step, changed);
    const share = m[at.EVENT_SHARE];
    const taken = share * step;
    if (taken > SHORTEST_STEP) {
      if (share < 1) landInside(m, from, to, step, share);
      accept(m, from, to, taken);
    } else m[at.SWITCHED_STILL] += 1;
  }
  leaveWhenInvalid(m);
}

function accept(m: Memory, from: i32, to: i32, step: number): void {
  takeInPeaks(m, from, to, step);
  m[at.FROM] = to;
  m[at.SWITCHED_STILL] = 0;
  m[at.STEPS] += 1;
}

/**
 * Makes the end of the step a state inside it, on the cubics on which the switch was found: they are as near to the
 * motion as the step is, and a second, shorter step would cost its evaluations again.
 */
function landInside(m: Memory, from: i32, to: i32, step: number, share: number): void {
  stateInside(m, from, to, step, share, at.INSIDE);
  for (let i: i32 = 0; i < at.MOTION_SIZE; i += 1) m[to + i] = m[at.INSIDE + i];
  for (let i: i32 = at.SUMS; i < at.SUMS + at.SUMS_SIZE; i += 1) m[to + i] = m[at.INSIDE + i];
  m[to + at.TIME] = m[at.INSIDE + at.TIME];
  evaluateAndLook(m, to);
}

/**
 * Switches the contacts of an event, counts touches, and keeps what a switch leaves behind.
 * @returns whether a force or a loss may jump
 */
function switchContacts(m: Memory, state: i32): boolean {
  let jumps = false;
  const switching = placeAt(m, at.EVENT_CONTACTS);
  m[at.EVENT_CONTACTS] = 0;
  m[at.CONTACTS_ON] = placeAt(m, at.CONTACTS_ON) ^ switching;
  for (let contact: i32 = 0; contact < at.ALL_CONTACTS; contact += 1) {
    if (((switching >> contact) & 1) === 0) continue;
    const corner = contact >> 3;
    const turned = at.REVERSALS + 2 * corner;
    const isOn = ((placeAt(m, at.CONTACTS_ON) >> contact) & 1) === 1;
    if (isOn) {
      m[at.TOUCHES + contact] += 1;
      planAsLastTime(m, contact);
    }
    switch (contact & 7) {
      case at.TYRE: {
        // What a tyre holds as it lets go is lost; touched again before it is unpressed, it is held again.
        const held = heldByTyre(m, corner, state);
        m[state + at.DISSIPATED] += isOn ? -held : held;
        // Where a tyre lands its damping pushes at once; what it loses jumps as it lets go.
        jumps = true;
        break;
      }
      case at.STOP: {
        const crush = crushAt(m, corner, contactMotion(m, contact, state));
        const c = axleOf(corner);
        if (m[c + at.OIL_FACTOR] !== 0 || m[c + at.MAXWELL_RATE] !== 0 || curveAt(m, corner, 0) !== 0)
          jumps = true;
        if (m[c + at.FRICTION_LIMIT] !== 0 && m[c + at.MAXWELL_RATE] !== 0) {
          // Its face stays behind with the friction that it has: met there, both go on as they were.
          if (!isOn) m[turned + 1] = frictionGain(m, corner, crush) - 1;
          m[turned] = crush;
          const held = heldByFriction(m, corner, crush);
          m[state + at.DISSIPATED] += isOn ? held : -held;
        } else if (isOn) {
          // A stop that has not been touched yet has turned round nowhere.
          m[turned] = 0;
          m[turned + 1] = 0;
        }
        if (isOn) m[at.CONTACTS_ON] = placeAt(m, at.CONTACTS_ON) | (1 << (at.CONTACTS * corner + at.CLOSING));
        break;
      }
      case at.CLOSING: {
        const crush = crushAt(m, corner, contactMotion(m, contact, state));
        const share = frictionGain(m, corner, crush) - 1;
        m[turned] = crush;
        m[turned + 1] = share;
        break;
      }
    }
  }
  holdContacts(m, placeAt(m, at.CONTACTS_ON));
  return jumps;
}

/**
 * A contact that is made hardens the motion at once, and the step planned before it fails, often twice. What was right the
 * last time is a better plan.
 */
function planAsLastTime(m: Memory, contact: i32): void {
  const lastTime = m[at.STEP_WHEN_MADE + contact];
  if (lastTime > 0) m[at.PLANNED_STEP] = Math.min(m[at.PLANNED_STEP], lastTime);
  m[at.JUST_MADE] = placeAt(m, at.JUST_MADE) | (1 << contact);
}

function rememberStep(m: Memory, step: number): void {
  const made = placeAt(m, at.JUST_MADE);
  m[at.JUST_MADE] = 0;
  for (let contact: i32 = 0; contact < at.ALL_CONTACTS; contact += 1) {
    if (((made >> contact) & 1) === 1) m[at.STEP_WHEN_MADE + contact] = step;
  }
}

/** Makes these the contacts that carry force. */
export function holdContacts(m: Memory, contacts: i32): void {
  m[at.CONTACTS_ON] = contacts;
  for (let contact: i32 = 0; contact < at.ALL_CONTACTS; contact += 1) {
    m[at.HELD + 4 * (contact & 7) + (contact >> 3)] = (contacts >> contact) & 1;
  }
}

/**
 * Energy held by the tyre of a corner [J]. A tyre lets go a little before it is unpressed, while its damping pulls:
 * what it holds at that moment is lost, so the books ask for it at every lift-off and touch.
 */
export function heldByTyre(m: Memory, corner: i32, state: i32): number {
  const c = axleOf(corner);
  const wheel = contactMotion(m, at.CONTACTS * corner + at.TYRE, state);
  readGroundUnder(m, corner, m[state + at.TIME]);
  const rate = m[c + at.TYRE_RATE];
  return tyreEnergy(rate, m[c + at.TYRE_LOAD] + rate * (m[at.GROUND_HEIGHT] - wheel));
}

function leaveWhenInvalid(m: Memory): void {
  const state = placeAt(m, at.FROM);
  const isFair =
    Math.abs(m[state + at.PITCH]) < LARGEST_ANGLE &&
    Math.abs(m[state + at.ROLL]) < LARGEST_ANGLE &&
    Math.abs(m[state + at.HEAVE]) < Infinity;
  if (!isFair) m[at.LEFT_VALIDITY] = 1;
}
