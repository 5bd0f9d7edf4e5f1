import { cornersDown, type LiftedRig, liftedHeightWithTolerance } from '../elements/axle-lift.ts';
import type { Reading } from '../rig/reading.ts';
import type { CgLift } from '../rig/rig.ts';
import { TAPED } from './build-spring.ts';
import type { Gaps } from './gaps.ts';
import { USUAL } from './usual-value.ts';

const KEY = 'measured.cgLift';
const SCALE = { dimension: 'mass', tool: 'scale-tolerance' } as const;
/** Beyond, tan θ runs away and no gear at home goes there. */
const STEEPEST = 0.7;

/** Height of the centre of gravity: typed, or from raising one axle, or what is usual. */
export function buildCgHeight(gaps: Gaps, rig: LiftedRig): { lift: CgLift | null; cgHeight: Reading } {
  const spec = { dimension: 'length', tool: 'cg-height-tolerance' } as const;
  if (gaps.at(KEY) === undefined)
    return { lift: null, cgHeight: gaps.readingOr('measured.cgHeight', spec, USUAL.cgHeight) };
  const typed = gaps.typedReading('measured.cgHeight', spec);
  if (typed) gaps.problem('rig-inconsistent', typed.key, typed.text, `either this or ${KEY}`);
  const lift = buildLift(gaps, rig);
  if (gaps.problems.length > 0 || !liftHolds(gaps, rig, lift))
    return { lift: null, cgHeight: typed ?? gaps.derived('measured.cgHeight', 'length', 1, 0) };
  const { height, halfWidth } = liftedHeightWithTolerance(rig, lift);
  return { lift, cgHeight: gaps.derived('measured.cgHeight', 'length', height, halfWidth) };
}

function buildLift(gaps: Gaps, rig: LiftedRig): CgLift {
  const raised = gaps.text(`${KEY}.raised`);
  if (raised === undefined) gaps.missing(`${KEY}.raised`, 'front, rear');
  const down = raised === 'front' ? 'rear' : 'front';
  const free = gaps.text(`${KEY}.suspension`) === 'free';
  return {
    raised: raised === 'front' ? 'front' : 'rear',
    by: gaps.needed(`${KEY}.by`, TAPED),
    scale: { left: gaps.needed(`${KEY}.left`, SCALE), right: gaps.needed(`${KEY}.right`, SCALE) },
    tyreRadius: gaps.typedReading(`${KEY}.tyreRadius`, TAPED) ?? rig[down].tyre.radius,
    give: free
      ? gaps.readingOr(`${KEY}.give`, { dimension: 'ratio', tool: 'guess-tolerance' }, USUAL.liftGive)
      : null,
  };
}

/** The scales must gain when the other axle goes up, or the rig was held somewhere else. */
function liftHolds(gaps: Gaps, rig: LiftedRig, lift: CgLift): boolean {
  const { left, right } = lift.scale;
  const level = cornersDown(lift).reduce((sum, corner) => sum + rig.cornerMass[corner].value, 0);
  const total = Object.values(rig.cornerMass).reduce((sum, { value }) => sum + value, 0);
  const lifted = left.value + right.value;
  if (lifted <= level || lifted >= total) {
    gaps.problem(
      'rig-inconsistent',
      left.key,
      `${Math.round(lifted)} kg on both`,
      `more than the ${Math.round(level)} kg that this axle carries on level ground, less than the whole`,
    );
    return false;
  }
  if (lift.by.value > STEEPEST * rig.wheelbase.value) {
    gaps.problem('rig-inconsistent', lift.by.key, lift.by.text, 'less than seven tenths of the wheelbase');
    return false;
  }
  return true;
}
