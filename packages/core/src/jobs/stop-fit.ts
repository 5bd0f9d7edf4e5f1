import { MOST_HYSTERESIS } from '../elements/stop-loss.ts';
import type { Figure } from '../finding/figure.ts';
import { bad, good, type Problem, type Result } from '../finding/problem.ts';
import { LEAST_READINGS, type PressDoubt, pressCurve } from '../stopdesign/press-test.ts';

/** What a stop is made of, as far as the usual numbers differ by it. */
export const STOP_MATERIALS = ['rubber', 'polyurethane', 'foam'] as const;
export type StopMaterialName = (typeof STOP_MATERIALS)[number];

export interface StopFitRequest {
  /** In the order they were read: down, and back up when that was read too [m], [N]. */
  readonly travel: readonly number[];
  readonly force: readonly number[];
  /** Line of each in its file; null where there is none. */
  readonly line: readonly number[] | null;
  readonly file: string;
  /** How fine the gauge reads, and the most it can show [N]; null when not told. */
  readonly resolution: number | null;
  readonly fullScale: number | null;
  readonly material: StopMaterialName | null;
}

/** A press test read. */
export interface StopFit {
  /** From touch, rising [m], [N]. */
  readonly crush: readonly number[];
  readonly force: readonly number[];
  /** 95 % half-width of the force anywhere on the curve [N]. */
  readonly tolerance: number;
  readonly offset: Figure;
  /** Press travel at touch. */
  readonly touch: Figure;
  readonly usableCrush: Figure;
  /** Lost ÷ put in; null without a way back. */
  readonly hysteresis: number | null;
  /** More than a stop may lose in a rig file. */
  readonly isLossAbsurd: boolean;
  /** Work held at the usable crush [J]. */
  readonly energy: number;
  /** Work of a hit at 1 m/s ÷ work of the slow press: assumed from the material; null when that was not told. */
  readonly dynamicFactor: { readonly value: number; readonly tolerance: number } | null;
  readonly doubts: readonly PressDoubt[];
}

/**
 * Usual dynamic factors: middle and half of the band.
 * @source trade notes of this house, from memory; common practice
 */
const DYNAMIC: Readonly<Record<StopMaterialName, { value: number; tolerance: number }>> = {
  rubber: { value: 1.3, tolerance: 0.2 },
  polyurethane: { value: 1.9, tolerance: 0.6 },
  foam: { value: 1.25, tolerance: 0.15 },
};

/** What a stop is ever crushed by [m]. */
const MOST_CRUSH = 0.3;
const LEAST_CRUSH = 0.001;
/** A way back within a stroke of more than this share of the whole travel is a second stroke. */
const BACKWARD = 0.03;

/**
 * The curve of a press test with what is doubtful about it.
 *
 * @failure `stop-press-too-short`, `stop-press-strokes` (travel that turns more than once), `stop-press-sign` (pressing
 *   counts as negative), `stop-press-units` (a stiffness that no stop has: mostly a mix-up of units)
 */
export function fitStop(request: StopFitRequest): Result<StopFit> {
  const { travel, force, file } = request;
  const refuse = (code: Problem['code'], at: number | null, found: string, accepted: string) => {
    const line = at === null ? undefined : request.line?.[at];
    return bad({ code, where: { file, ...(line !== undefined && { line }) }, found, accepted });
  };
  const short = 'a reading before touch and eight or more after it, three at the least';
  if (travel.length <= LEAST_READINGS) return refuse('stop-press-too-short', null, `${travel.length}`, short);
  const wrongWay = signFault(travel, force);
  if (wrongWay !== null)
    return refuse(
      'stop-press-sign',
      wrongWay.at,
      wrongWay.found,
      'travel into the stop and force both growing from about zero',
    );
  const turn = secondTurn(travel);
  if (turn !== null)
    return refuse(
      'stop-press-strokes',
      turn,
      `${(travel[turn] * 1000).toFixed(1)} mm`,
      'one stroke down and, if it was read, its way back; leave out the strokes before',
    );
  const inOrder = sorted(travel, force);
  const curve = pressCurve({ ...inOrder, resolution: request.resolution, fullScale: request.fullScale });
  if (curve === null || curve.crush.length < LEAST_READINGS)
    return refuse('stop-press-too-short', null, `${curve?.crush.length ?? 0} that rise`, short);
  const deep = curve.crush[curve.crush.length - 1];
  const rate = curve.force[curve.force.length - 1] / deep / 1000;
  const isAbsurd = curve.doubts.includes('very-stiff') || curve.doubts.includes('very-soft');
  if (isAbsurd || deep > MOST_CRUSH || deep < LEAST_CRUSH)
    return refuse(
      'stop-press-units',
      null,
      `${rate.toPrecision(3)} N/mm over ${(1000 * deep).toPrecision(3)} mm`,
      '5 N/mm to 20 kN/mm over 1 to 300 mm: look at the units of both columns',
    );
  const early = hiddenStart(curve.crush, curve.force);
  const touchTolerance = Math.hypot(curve.touchTolerance, early);
  const { crush, hysteresis } = curve;
  return good({
    crush,
    force: curve.force,
    tolerance: curve.tolerance,
    offset: { dimension: 'force', value: curve.offset, tolerance: curve.tolerance },
    touch: { dimension: 'length', value: curve.touch, tolerance: touchTolerance },
    usableCrush: {
      dimension: 'length',
      value: curve.usableCrush,
      tolerance: usableTolerance(touchTolerance, crush),
    },
    hysteresis,
    isLossAbsurd: hysteresis !== null && hysteresis > MOST_HYSTERESIS,
    energy: workTo(curve, curve.usableCrush),
    dynamicFactor: request.material === null ? null : DYNAMIC[request.material],
    doubts: curve.doubts,
  });
}

/**
 * How much earlier than the curve begins the stop may have been touched [m]: the start of a soft stop drowns in the noise of
 * the gauge. The shift at which force against crush is nearest to a power law, up to a fifth of the crush.
 */
function hiddenStart(crush: readonly number[], force: readonly number[]): number {
  const deep = crush[crush.length - 1];
  const full = force[force.length - 1];
  const seen = crush.map((c, i) => ({ c, f: force[i] })).filter(({ f }) => f > full / 50);
  if (seen.length < 4) return 0;
  const misfit = (shift: number): number => {
    const x = seen.map(({ c }) => Math.log(c + shift));
    const y = seen.map(({ f }) => Math.log(f));
    const [mx, my] = [x, y].map((all) => all.reduce((sum, v) => sum + v, 0) / all.length);
    const sxx = x.reduce((sum, v) => sum + (v - mx) ** 2, 0);
    const slope = x.reduce((sum, v, i) => sum + (v - mx) * (y[i] - my), 0) / sxx;
    return y.reduce((sum, v, i) => sum + (v - my - slope * (x[i] - mx)) ** 2, 0);
  };
  const shifts = Array.from({ length: 41 }, (_, k) => (k / 200) * deep);
  const errors = shifts.map(misfit);
  return shifts[errors.indexOf(Math.min(...errors))];
}

/** Half a step of the press is the least that a usable crush is unsure by, and no more than a fifth of it. */
function usableTolerance(touch: number, crush: readonly number[]): number {
  const deep = crush[crush.length - 1];
  const step = deep / (crush.length - 1) / 2;
  return Math.min(Math.max(Math.hypot(touch, step), 0.0002), deep / 5);
}

/** Trapezes under the curve [J]. */
function workTo(
  { crush, force }: { crush: readonly number[]; force: readonly number[] },
  end: number,
): number {
  let work = 0;
  for (let i = 1; i < crush.length && crush[i] <= end * (1 + 1e-12); i += 1)
    work += ((force[i] + force[i - 1]) / 2) * (crush[i] - crush[i - 1]);
  return work;
}

/** A press that counts the other way round: the largest reading by size is below zero, or the travel only falls. */
function signFault(travel: readonly number[], force: readonly number[]) {
  const worst = force.reduce((best, f, i) => (Math.abs(f) > Math.abs(force[best]) ? i : best), 0);
  if (force[worst] < 0) return { at: worst, found: `${force[worst].toFixed(0)} N` };
  const far = Math.max(...travel);
  // Pressed deepest first: nothing was read on the way down.
  if (travel[0] === far && Math.min(...travel) < far)
    return { at: 0, found: `${(travel[0] * 1000).toFixed(1)} mm` };
  return null;
}

/** Where travel turns a second time; null when it goes down once and at most back once. Jitter does not count. */
function secondTurn(travel: readonly number[]): number | null {
  const span = Math.max(...travel) - Math.min(...travel);
  const deepest = travel.indexOf(Math.max(...travel));
  let far = travel[0];
  for (let i = 1; i <= deepest; i += 1) {
    far = Math.max(far, travel[i]);
    if (far - travel[i] > BACKWARD * span) return i;
  }
  let near = travel[deepest];
  for (let i = deepest + 1; i < travel.length; i += 1) {
    near = Math.min(near, travel[i]);
    if (travel[i] - near > BACKWARD * span) return i;
  }
  return null;
}

/** Jitter of the travel taken out: rising to the deepest reading, falling after it. */
function sorted(travel: readonly number[], force: readonly number[]) {
  const deepest = travel.indexOf(Math.max(...travel));
  const all = travel.map((at, i) => ({ at, force: force[i], i }));
  const down = all.filter(({ i }) => i <= deepest).sort((a, b) => a.at - b.at || a.i - b.i);
  const back = all.filter(({ i }) => i > deepest).sort((a, b) => b.at - a.at || a.i - b.i);
  const ordered = [...down, ...back];
  return { travel: ordered.map(({ at }) => at), force: ordered.map((one) => one.force) };
}
