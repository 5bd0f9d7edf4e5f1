import type { Figure } from '../finding/figure.ts';
import type { Finding, Remedy, Severity } from '../finding/finding.ts';
import type { End } from '../finding/place.ts';
import { exactly, figureOver, severityOf } from './margins.ts';
import type { Shaft } from './shaft.ts';
import {
  angleForSpeed,
  bindsAt,
  pinionAim,
  SHAFT_PRACTICE,
  speedForAngles,
  whirlSpeed,
} from './shaft-limits.ts';
import type { ShaftTravel } from './shaft-travel.ts';
import { angleOfAcceleration } from './universal-joint.ts';

/** What a driveshaft is asked for. */
export interface ShaftAsked {
  readonly shaft: Shaft;
  /** Fastest that it has to run [m/s]. */
  readonly roadSpeed: number;
  /** Speed of the shaft at that road speed [rad/s], in the order of the answers; null while tyre or axle ratio is unknown. */
  readonly shaftSpeeds: readonly number[] | null;
  /** Droop of the wheels at which the shaft can still follow (`droopThatFits`) [m]; null when none, or not worked out. */
  readonly droopThatFits: number | null;
  /** Keys of the readings behind it. */
  readonly because: readonly string[];
}

type Facts = Finding['facts'];

/**
 * What a driveshaft says: slip, joints over the travel; angles, unevenness and whirl at speed; where the pinion
 * should point.
 *
 * @param answers – `shaftOver` of the nominal geometry, then of each trial; one alone has unknown tolerances
 */
export function shaftFindings(
  end: End,
  answers: readonly ShaftTravel[],
  asked: ShaftAsked,
): readonly Finding[] {
  const make = (
    code: Finding['code'],
    severity: Severity,
    facts: Facts,
    rest: Partial<Pick<Finding, 'value' | 'limit' | 'remedies'>> & { readonly about?: string } = {},
  ): Finding => ({
    id: `${code}.${end}${rest.about ? `.${rest.about}` : ''}`,
    code,
    severity,
    place: end,
    value: rest.value,
    limit: rest.limit,
    facts,
    because: asked.because,
    remedies: rest.remedies ?? [],
  });
  return [
    ...slipFindings(answers, asked, make),
    ...jointFindings(answers, asked, make),
    ...speedFindings(answers, asked, make),
    ...aimFindings(answers, asked, make),
  ];
}

type Make = (
  code: Finding['code'],
  severity: Severity,
  facts: Facts,
  rest?: Partial<Pick<Finding, 'value' | 'limit' | 'remedies'>> & { readonly about?: string },
) => Finding;

const length = (answers: readonly ShaftTravel[], of: (travel: ShaftTravel) => number) =>
  figureOver('length', answers, of);

/** A strap is named with the droop that it has to hold, where there is one. */
const limitDroop = (droop: number | null): Remedy[] =>
  droop === null ? [] : [{ code: 'limit-droop', amount: exactly('length', droop) }];

function slipFindings(
  answers: readonly ShaftTravel[],
  { shaft, droopThatFits }: ShaftAsked,
  make: Make,
): Finding[] {
  const { slip } = shaft;
  if (!slip) return [];
  const found: Finding[] = [];
  const { engaged, leftIn: least } = SHAFT_PRACTICE;
  const swing = length(answers, (travel) => travel.swing);
  const whole = swing.value + (swing.tolerance ?? 0) + engaged;
  const remedies: Remedy[] = [
    { code: 'longer-slip', amount: exactly('length', whole) },
    ...limitDroop(droopThatFits),
  ];
  const facts = {
    swing,
    usable: exactly('length', slip.usable),
    engaged: exactly('length', engaged),
    least: exactly('length', least),
    goesIn: length(answers, ({ goesIn }) => goesIn),
    comesOut: length(answers, ({ comesOut }) => comesOut),
  };
  const spare = length(answers, (travel) => travel.slip?.spare ?? Number.NaN);
  const short = severityOf(spare);
  if (short !== 'fine')
    found.push(
      make('shaft-slip-short', short, { ...facts, spare }, { value: swing, limit: facts.usable, remedies }),
    );
  if (slip.inAtRide === null) return found;
  const leftOut = length(answers, (travel) => travel.slip?.leftOut ?? Number.NaN);
  const apart = severityOf(leftOut);
  if (apart !== 'fine')
    found.push(
      make(
        'shaft-slip-apart',
        apart,
        { ...facts, leftOut },
        { value: leftOut, limit: exactly('length', 0), remedies },
      ),
    );
  const leftIn = length(answers, (travel) => travel.slip?.leftIn ?? Number.NaN);
  const bottoms = severityOf({ ...leftIn, value: leftIn.value - least });
  if (bottoms !== 'fine')
    found.push(
      make(
        'shaft-slip-bottoms',
        leftIn.value > 0 && bottoms === 'over' ? 'unproven' : bottoms,
        { ...facts, leftIn },
        { value: leftIn, limit: facts.least, remedies: [{ code: 'shorter-shaft' }] },
      ),
    );
  return found;
}

/** A usual limit nearer than this wants the joint turned by hand even where it is kept [rad]. */
const NEAR = (8 * Math.PI) / 180;

function jointFindings(
  answers: readonly ShaftTravel[],
  { shaft, droopThatFits }: ShaftAsked,
  make: Make,
): Finding[] {
  const found: Finding[] = [];
  for (const at of ['case', 'pinion'] as const) {
    const joint = shaft[`${at}Joint`];
    const angle = figureOver('angle', answers, (travel) => travel[`${at}Angle`].value);
    const limit = exactly('angle', bindsAt(joint));
    const severity = severityOf({ ...angle, value: limit.value - angle.value });
    const facts = { joint: at, kind: joint.kind, angle, known: joint.bindsAt === null ? 'usual' : 'own' };
    const checks: Remedy[] = [{ code: 'turn-joint-by-hand' }];
    if (severity !== 'fine') {
      const remedies: Remedy[] = [...checks, ...limitDroop(droopThatFits)];
      if (joint.kind === 'single') remedies.push({ code: 'double-joint' });
      found.push(make('shaft-joint-binds', severity, facts, { about: at, value: angle, limit, remedies }));
    } else if (joint.bindsAt === null && limit.value - angle.value < NEAR) {
      found.push(
        make('shaft-joint-near', 'note', facts, { about: at, value: angle, limit, remedies: checks }),
      );
    }
    const atRide = figureOver('angle', answers, (travel) => travel.atRide[`${at}Angle`]);
    if (joint.kind === 'single' && atRide.value < SHAFT_PRACTICE.leastAngle) {
      const least = exactly('angle', SHAFT_PRACTICE.leastAngle);
      found.push(
        make(
          'shaft-joint-straight',
          'note',
          { joint: at, angle: atRide, least },
          { about: at, value: atRide, limit: least },
        ),
      );
    }
  }
  return found;
}

function speedFindings(
  answers: readonly ShaftTravel[],
  { shaft, roadSpeed, shaftSpeeds }: ShaftAsked,
  make: Make,
): Finding[] {
  if (!shaftSpeeds || !(roadSpeed > 0)) return [];
  const found: Finding[] = [];
  const speed = exactly('speed', roadSpeed);
  const running = answers.map((travel, i) => ({ travel, turns: shaftSpeeds[i] }));
  const turns = figureOver('frequency', running, (each) => each.turns / (2 * Math.PI));
  /** Road speed at which the shaft reaches a speed of its own. */
  const roadAt = (of: (travel: ShaftTravel) => number): Figure =>
    figureOver('speed', running, (each) => Math.min(FAST, (roadSpeed * of(each.travel)) / each.turns));
  const judge = (holdsTo: Figure) => severityOf({ ...holdsTo, value: holdsTo.value - roadSpeed });

  const shaken = roadAt(({ atRide }) => speedForAngles(atRide).shaft);
  const single = shaft.caseJoint.kind === 'single';
  const shake = judge(shaken);
  if (shake !== 'fine') {
    const angle = figureOver('angle', answers, ({ atRide }) => angleOfAcceleration(atRide.shaftJerk));
    const allowed = figureOver('angle', running, (each) => angleForSpeed(each.turns));
    const remedies: Remedy[] = single ? [{ code: 'double-joint' }, AIM] : [AIM];
    found.push(
      make(
        'shaft-angle-speed',
        shake,
        { angle, allowed, turns, speed, holdsTo: shaken },
        { value: angle, limit: allowed, remedies: [...remedies, { code: 'slow-down' }] },
      ),
    );
  }
  const even = roadAt(({ atRide }) => speedForAngles(atRide).pinion);
  const uneven = judge(even);
  if (uneven !== 'fine') {
    const residual = figureOver('angle', answers, ({ atRide }) => atRide.residualAngle);
    const share = figureOver('ratio', answers, ({ atRide }) => atRide.pinionUnevenness);
    found.push(
      make(
        'shaft-uneven',
        uneven,
        { residual, share, turns, speed, holdsTo: even },
        { value: even, limit: speed, remedies: [AIM, { code: 'slow-down' }] },
      ),
    );
  }
  const { tube } = shaft;
  if (tube) {
    const whirl = figureOver(
      'frequency',
      answers,
      ({ atRide }) => whirlSpeed(tube, atRide.length) / (2 * Math.PI),
    );
    const holdsTo = roadAt(({ atRide }) => SHAFT_PRACTICE.whirlShare * whirlSpeed(tube, atRide.length));
    const whirls = judge(holdsTo);
    if (whirls !== 'fine')
      found.push(
        make(
          'shaft-whirl',
          whirls,
          { whirl, turns, speed, holdsTo, share: exactly('ratio', SHAFT_PRACTICE.whirlShare) },
          { value: holdsTo, limit: speed, remedies: [{ code: 'larger-tube' }, { code: 'slow-down' }] },
        ),
      );
  }
  return found;
}

const AIM: Remedy = { code: 'turn-pinion' };
/** A straight shaft has no speed that its angles forbid; no road is faster than this [m/s]. */
const FAST = 200;
/** An aim missed by less is met, as well as a level tells it [rad]. */
const AIMED = (0.25 * Math.PI) / 180;

function aimFindings(answers: readonly ShaftTravel[], { shaft }: ShaftAsked, make: Make): Finding[] {
  const [nominal] = answers;
  if (!nominal || shaft.pinionJoint.kind !== 'single') return [];
  const { low, high } = pinionAim(shaft.caseJoint.kind, nominal.atRide);
  const slope = figureOver('angle', answers, ({ atRide }) => atRide.pinionSlope);
  if (slope.value >= low - AIMED && slope.value <= high + AIMED) return [];
  const facts = {
    slope,
    low: exactly('angle', low),
    high: exactly('angle', high),
    aim: shaft.caseJoint.kind === 'single' ? 'along' : 'at',
  };
  return [make('shaft-pinion-aim', 'note', facts, { value: slope, limit: facts.high, remedies: [AIM] })];
}
