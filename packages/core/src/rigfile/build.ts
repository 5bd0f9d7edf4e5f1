import { CORNERS, type Corner, ENDS } from '../finding/place.ts';
import type { Problem } from '../finding/problem.ts';
import { deepFreeze } from '../rig/freeze.ts';
import type { Reading } from '../rig/reading.ts';
import type { Rig } from '../rig/rig.ts';
import { resolveSetup } from '../rig/setup-resolve.ts';
import { buildCgHeight } from './build-cg-lift.ts';
import { buildChoices } from './build-choices.ts';
import { buildCourses } from './build-courses.ts';
import { buildDriver } from './build-driver.ts';
import { buildEnd } from './build-end.ts';
import { buildSetups } from './build-setups.ts';
import { buildSpring, TAPED } from './build-spring.ts';
import { buildStop } from './build-stop.ts';
import { checkChoices } from './choices-rules.ts';
import { type RigDocument, whereOf } from './document.ts';
import { Gaps } from './gaps.ts';
import type { ReadBeside } from './read-beside.ts';
import type { TypedQuantities } from './typed.ts';
import { bodyPitchInertia, bodyRollInertia, USUAL } from './usual-value.ts';

/** What was made of a file. The rig is good only when no problem was found, here or before. */
export interface BuiltRig {
  readonly rig: Rig;
  readonly problems: readonly Problem[];
  /** Every reading that was typed or assumed, by key. */
  readonly readings: ReadonlyMap<string, Reading>;
}

const INERTIA = { dimension: 'inertia', tool: 'guess-tolerance' } as const;

/** Builds the strict rig out of the typed quantities: fills gaps by marked assumptions, asks for what cannot be. */
export function buildRig(document: RigDocument, typed: TypedQuantities, readBeside?: ReadBeside): BuiltRig {
  const gaps = new Gaps(document, typed);
  const cornerMass = Object.fromEntries(
    CORNERS.map((corner) => [
      corner,
      gaps.needed(`measured.weights.${corner}`, { dimension: 'mass', tool: 'scale-tolerance' }),
    ]),
  ) as Record<Corner, Reading>;
  const wheelbase = gaps.needed('measured.wheelbase', TAPED);
  const front = buildEnd(gaps, 'front', cornerMass, readBeside);
  const rear = buildEnd(gaps, 'rear', cornerMass, readBeside);
  const frontSprung = cornerMass.frontLeft.value + cornerMass.frontRight.value - front.unsprungMass.value;
  const rearSprung = cornerMass.rearLeft.value + cornerMass.rearRight.value - rear.unsprungMass.value;
  const sprung = frontSprung + rearSprung;
  const toFrontAxle = (wheelbase.value * rearSprung) / sprung;
  const toRearAxle = (wheelbase.value * frontSprung) / sprung;
  const track = (front.track.value + rear.track.value) / 2;
  const rollInertia = gaps.readingOr('measured.rollInertia', INERTIA, bodyRollInertia(sprung, track));
  const { lift, cgHeight } = buildCgHeight(gaps, { wheelbase, cornerMass, front, rear });
  const courses = buildCourses(gaps, { trackWidth: track, wheelRadius: front.tyre.radius.value, readBeside });
  const rig: Rig = {
    name: gaps.text('rig.name') ?? 'Rig without a name',
    notes: gaps.text('rig.notes') ?? '',
    wheelbase,
    cornerMass,
    cgHeight,
    rollInertia,
    pitchInertia: gaps.readingOr(
      'measured.pitchInertia',
      INERTIA,
      bodyPitchInertia(sprung, toFrontAxle, toRearAxle),
    ),
    front,
    rear,
    shelf: {
      stops: Object.fromEntries(
        gaps.names('parts.stops').map((id) => [id, buildStop(gaps, `parts.stops.${id}`, id, readBeside)]),
      ),
      springs: Object.fromEntries(
        gaps.names('parts.springs').map((id) => [id, buildSpring(gaps, `parts.springs.${id}`, id)]),
      ),
    },
    setups: buildSetups(gaps),
    courses,
    limits: {
      reserve: gaps.readingOr('limits.reserve', { dimension: 'length', tool: 'choice' }, USUAL.reserve),
      bodyAcceleration: gaps.readingOr(
        'limits.bodyAcceleration',
        { dimension: 'acceleration', tool: 'choice' },
        USUAL.bodyAcceleration,
      ),
      bracketForce: gaps.typedReading('limits.bracketForce', { dimension: 'force', tool: 'choice' }),
      bracketFactor: bracketFactor(gaps),
      absorbedPower: gaps.typedReading('limits.absorbedPower', { dimension: 'power', tool: 'choice' }),
      seatShock: gaps.typedReading('limits.seatShock', { dimension: 'acceleration', tool: 'choice' }),
      seatDose: gaps.typedReading('limits.seatDose', { dimension: 'vibrationDose', tool: 'choice' }),
      tyreContact: typedShare(gaps, 'limits.tyreContact'),
    },
    choices: buildChoices(gaps, courses),
    driver: buildDriver(gaps, { wheelbase, track, sprungMass: sprung, rollInertia }),
    assumptions: gaps.assumptions,
    cgLift: lift,
  };
  for (const id of Object.keys(rig.setups)) {
    const setup = resolveSetup(rig, id);
    if (setup.ok) continue;
    gaps.problems.push(
      ...setup.problems
        .filter((problem) => !isToldElsewhere(gaps, problem))
        .map((problem) => ({ ...problem, where: whereOf(document, problem.where.key ?? '') })),
    );
  }
  checkChoices(gaps, rig);
  return { rig: deepFreeze(rig), problems: gaps.problems, readings: gaps.readings };
}

/** A shock setting that stands in the file but was refused has its problem already: nobody mistook its name. */
function isToldElsewhere(gaps: Gaps, { code, where, found }: Problem): boolean {
  const end = ENDS.find((each) => where.key?.endsWith(`.${each}.shockSetting`));
  return (
    code === 'rig-unknown-name' &&
    end !== undefined &&
    gaps.at(`${end}.shock.settings.${found}`) !== undefined
  );
}

/** A part of a whole that its owner chose, or null. */
function typedShare(gaps: Gaps, key: string): Reading | null {
  const share = gaps.typedReading(key, { dimension: 'ratio', tool: 'choice' });
  if (share !== null && share.value > 1)
    gaps.problems.push({
      code: 'quantity-out-of-range',
      where: whereOf(gaps.document, key),
      found: share.text,
      accepted: 'a share of the time, up to 100 %',
    });
  return share;
}

/** Asked for, or assumed, only where there is a bracket to want it of. */
function bracketFactor(gaps: Gaps): Reading | null {
  const spec = { dimension: 'ratio', tool: 'choice' } as const;
  const key = 'limits.bracketFactor';
  if (ENDS.some((end) => gaps.at(`${end}.bracket`) !== undefined))
    return gaps.readingOr(key, spec, USUAL.bracketFactor);
  return gaps.typedReading(key, spec);
}
