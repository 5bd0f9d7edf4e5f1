import { ENDS } from '../finding/place.ts';
import { cubicIntegral, cubicSlope, cubicValue } from '../numerics/monotone-cubic.ts';
import type { RollEnd, RollModel } from './roll-model.ts';

/** Coordinates of a rig in roll: of the body, then of each axle. */
export const BODY_ROLL = 0;
/** Rise of the body over each axle [m]. */
export const BODY_RISE = 1;
/** First of two of each axle: its rise [m] and its roll [rad]. */
export const AXLE = 3;
export const COORDINATES = 7;

/** What pulls at every mass: along the normal of the ground and along it, to the right [m/s²]. */
export interface Pull {
  readonly normal: number;
  readonly right: number;
}

/** Potential energy with its slopes and their slopes, made once and written over. */
export interface Balance {
  energy: number;
  readonly slope: Float64Array;
  /** Row-major, symmetric. */
  readonly curvature: Float64Array;
}

export const newBalance = (): Balance => ({
  energy: 0,
  slope: new Float64Array(COORDINATES),
  curvature: new Float64Array(COORDINATES ** 2),
});

/**
 * Energy of a rig in roll, φ of the body and ψ of each axle (right side down), rises Z of the body over each axle and z of
 * the axle. The links let the body turn about the roll centre of each axle, at height e on it; λ is the share of the
 * sprung mass on each axle, d its height over the roll axis, y its place left of the centre line:
 *
 *     body:  up Σ λ(Z + e·cos ψ) + y·sin φ + d·cos φ,   left −Σ λ·e·sin ψ + y·cos φ − d·sin φ
 *     axle:  up z + r·cos ψ,   left −r·sin ψ
 *     pressed at station s:  u = z − Z ± s·(ψ − φ);   tyre: load − rate·(z ± w·ψ), never less than nothing
 *
 * Springs, gas, stops with the metal behind them, droop limits and tyres are functions of u alone, a bar of ψ − φ. So
 * every element is exact in these coordinates, and only the weights carry sines and cosines.
 *
 * @param q – coordinates, in the order of this file
 * @invariant slope is the derivative of energy, curvature that of slope
 * @validity tyres stay where they stand sideways; links lean so little that elements act straight up
 * @source virtual work
 */
export function balanceAt(model: RollModel, pull: Pull, q: Float64Array, out: Balance): void {
  out.slope.fill(0);
  out.curvature.fill(0);
  out.energy = 0;
  const { sprungMass: mass, sprungLeft: y, sprungHeight, rearShare } = model;
  const { normal, right } = pull;
  const axisHeight = (1 - rearShare) * model.ends.front.rollCentre + rearShare * model.ends.rear.rollCentre;
  const d = sprungHeight - axisHeight;
  const phi = q[BODY_ROLL];
  const [sinPhi, cosPhi] = [Math.sin(phi), Math.cos(phi)];
  out.energy += mass * (normal * (y * sinPhi + d * cosPhi) + right * (y * cosPhi - d * sinPhi));
  out.slope[BODY_ROLL] += mass * (normal * (y * cosPhi - d * sinPhi) - right * (y * sinPhi + d * cosPhi));
  out.curvature[0] += mass * (-normal * (y * sinPhi + d * cosPhi) - right * (y * cosPhi - d * sinPhi));
  for (let e = 0; e < 2; e += 1) {
    const end = model.ends[ENDS[e]];
    const share = e === 0 ? 1 - rearShare : rearShare;
    addWeights(end, mass * share, pull, q, e, out);
    for (let side = 0; side < 2; side += 1) {
      addTyre(end, side, q, e, out);
      addSuspension(end, side, q, e, out);
    }
    addBar(end.barRate, q, e, out);
  }
}

function addWeights(
  end: RollEnd,
  sprung: number,
  { normal, right }: Pull,
  q: Float64Array,
  e: number,
  out: Balance,
) {
  const body = BODY_RISE + e;
  const rise = AXLE + 2 * e;
  const roll = rise + 1;
  const lever = sprung * end.rollCentre + end.axleMass * end.hubHeight;
  const [sin, cos] = [Math.sin(q[roll]), Math.cos(q[roll])];
  out.energy +=
    normal * (sprung * q[body] + end.axleMass * q[rise] + lever * (cos - 1)) - right * lever * sin;
  out.slope[body] += normal * sprung;
  out.slope[rise] += normal * end.axleMass;
  out.slope[roll] += -lever * (normal * sin + right * cos);
  out.curvature[COORDINATES * roll + roll] += lever * (right * sin - normal * cos);
}

function addTyre(
  { halfTrack, tyreRate, tyreLoad }: RollEnd,
  side: number,
  q: Float64Array,
  e: number,
  out: Balance,
) {
  const rise = AXLE + 2 * e;
  const arm = side === 0 ? halfTrack : -halfTrack;
  const load = (side === 0 ? tyreLoad.left : tyreLoad.right) - tyreRate * (q[rise] + arm * q[rise + 1]);
  if (load <= 0) return;
  out.energy += (load * load) / (2 * tyreRate);
  out.slope[rise] -= load;
  out.slope[rise + 1] -= arm * load;
  out.curvature[COORDINATES * rise + rise] += tyreRate;
  out.curvature[COORDINATES * rise + rise + 1] += tyreRate * arm;
  out.curvature[COORDINATES * (rise + 1) + rise] += tyreRate * arm;
  out.curvature[COORDINATES * (rise + 1) + rise + 1] += tyreRate * arm * arm;
}

function addSuspension(end: RollEnd, side: number, q: Float64Array, e: number, out: Balance) {
  const rise = AXLE + 2 * e;
  const sign = side === 0 ? 1 : -1;
  const { spring, gas, stop, droop } = end;
  const pressed = (station: number) =>
    q[rise] - q[BODY_RISE + e] + sign * station * (q[rise + 1] - q[BODY_ROLL]);

  const coil =
    (side === 0 ? spring.load.left : spring.load.right) + spring.rate * pressed(spring.halfStation);
  if (coil > 0) add((coil * coil) / (2 * spring.rate), coil, spring.rate, sign * spring.halfStation, e, out);

  const atShock = pressed(gas.halfStation);
  if (gas.load !== 0)
    add(
      gas.load * atShock + (gas.rate * atShock * atShock) / 2,
      gas.load + gas.rate * atShock,
      gas.rate,
      sign * gas.halfStation,
      e,
      out,
    );

  const stretch = -pressed(droop.halfStation) - droop.at;
  if (stretch > 0)
    add(
      (droop.rate * stretch * stretch) / 2,
      -droop.rate * stretch,
      droop.rate,
      sign * droop.halfStation,
      e,
      out,
    );

  const atStop = pressed(stop.halfStation);
  const [touches, metalAt] =
    side === 0 ? [stop.touches.left, stop.metalAt.left] : [stop.touches.right, stop.metalAt.right];
  const crush = stop.ratio * (atStop - touches);
  if (crush > 0)
    add(
      cubicIntegral(stop.curve, crush),
      stop.ratio * cubicValue(stop.curve, crush),
      stop.ratio ** 2 * cubicSlope(stop.curve, crush),
      sign * stop.halfStation,
      e,
      out,
    );
  const metal = stop.ratio * (atStop - metalAt);
  if (metal > 0)
    add(
      (stop.metalRate * metal * metal) / 2,
      stop.ratio * stop.metalRate * metal,
      stop.ratio ** 2 * stop.metalRate,
      sign * stop.halfStation,
      e,
      out,
    );
}

/** One element between axle and body at a station: force pushes the body up and the axle down. */
function add(energy: number, force: number, rate: number, arm: number, e: number, out: Balance) {
  out.energy += energy;
  const body = BODY_RISE + e;
  const rise = AXLE + 2 * e;
  const roll = rise + 1;
  const places = [rise, roll, body, BODY_ROLL];
  const levers = [1, arm, -1, -arm];
  for (let i = 0; i < 4; i += 1) {
    out.slope[places[i]] += force * levers[i];
    for (let k = 0; k < 4; k += 1)
      out.curvature[COORDINATES * places[i] + places[k]] += rate * levers[i] * levers[k];
  }
}

function addBar(rate: number, q: Float64Array, e: number, out: Balance) {
  if (rate === 0) return;
  const roll = AXLE + 2 * e + 1;
  const tilt = q[roll] - q[BODY_ROLL];
  out.energy += (rate * tilt * tilt) / 2;
  out.slope[roll] += rate * tilt;
  out.slope[BODY_ROLL] -= rate * tilt;
  out.curvature[COORDINATES * roll + roll] += rate;
  out.curvature[BODY_ROLL] += rate;
  out.curvature[COORDINATES * roll + BODY_ROLL] -= rate;
  out.curvature[COORDINATES * BODY_ROLL + roll] -= rate;
}
