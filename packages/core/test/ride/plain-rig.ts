import { cubicValue, monotoneCubic } from '../../src/numerics/monotone-cubic.ts';
import type { RideModel } from '../../src/ride/model.ts';
import type { CourseShape } from '../../src/rig/course-spec.ts';
import { groundAt } from '../course/ground-formulas.ts';

/**
 * The rig written down plainly from its equations (docs/theory/ride.md): one loop over four corners, every law with its
 * own max(0, …), the ground by formula. It shares nothing with the engine but the monotone curve, which has outside
 * checks of its own. State: zs, θ, φ, z and ψ of the front axle, of the rear axle, then their seven speeds.
 */
export type PlainLaw = (time: number, state: Float64Array, out: Float64Array) => void;

export const PLAIN_SIZE = 14;

/** Height of the ground is read by formula, so the right-hand side has a kink wherever a law switches. */
export function plainRig(model: RideModel, shape: CourseShape, speed: number): PlainLaw {
  const { sprung, gravity } = model;
  const wheelbase = sprung.toFrontAxle + sprung.toRearAxle;
  const curves = {
    front: monotoneCubic(model.axles.front.stop.crush, model.axles.front.stop.force),
    rear: monotoneCubic(model.axles.rear.stop.crush, model.axles.rear.stop.force),
  };
  return (time, y, out) => {
    const [zs, theta, phi] = y;
    const [vs, thetaSpeed, phiSpeed] = [y[7], y[8], y[9]];
    let bodyForce = -sprung.mass * gravity;
    let pitchMoment = 0;
    let rollMoment = 0;
    (['front', 'rear'] as const).forEach((end, e) => {
      const axle = model.axles[end];
      const xa = end === 'front' ? sprung.toFrontAxle : -sprung.toRearAxle;
      const share = end === 'front' ? sprung.toRearAxle : sprung.toFrontAxle;
      const preload = (sprung.mass * gravity * share) / wheelbase / 2;
      const [z, psi, v, psiSpeed] = [y[3 + 2 * e], y[4 + 2 * e], y[10 + 2 * e], y[11 + 2 * e]];
      let axleForce = -axle.mass * gravity;
      let axleMoment = 0;
      for (const side of ['left', 'right'] as const) {
        const s = side === 'left' ? 1 : -1;
        const press = (station: number) => z + s * station * psi - (zs - xa * theta + s * station * phi);
        const pressSpeed = (station: number) =>
          v + s * station * psiSpeed - (vs - xa * thetaSpeed + s * station * phiSpeed);
        const act = (station: number, force: number) => {
          bodyForce += force;
          pitchMoment -= xa * force;
          rollMoment += s * station * force;
          axleForce -= force;
          axleMoment -= s * station * force;
        };

        const { spring, shock, stop, metal, droopLimit, tyre } = axle;
        act(
          spring.halfStation,
          Math.max(0, preload + spring.ratio ** 2 * spring.rate * press(spring.halfStation)),
        );

        const shockSpeed = pressSpeed(shock.halfStation);
        act(shock.halfStation, shock.ratio * lookUp(shock.speed, shock.force, shock.ratio * shockSpeed));
        const stretch = Math.max(0, -droopLimit.at - press(shock.halfStation));
        act(
          shock.halfStation,
          -Math.max(0, droopLimit.rate * stretch * (1 - droopLimit.rateFactor * shockSpeed)),
        );

        const crush = stop.ratio * press(stop.halfStation) - stop.gap[side];
        const gain = Math.max(0, 1 + stop.rateFactor * stop.ratio * pressSpeed(stop.halfStation));
        const pressed =
          (crush > 0 ? cubicValue(curves[end], crush) : 0) +
          metal.rate * Math.max(0, crush - metal.atCrush[side]);
        act(stop.halfStation, stop.ratio * gain * pressed);

        const ground = groundAt(shape, side, speed * time - (end === 'front' ? 0 : wheelbase));
        const elastic =
          preload + (axle.mass * gravity) / 2 + tyre.rate * (ground.height - (z + s * axle.halfTrack * psi));
        if (elastic > 0) {
          const closing = speed * ground.slope - (v + s * axle.halfTrack * psiSpeed);
          const carried = Math.max(0, elastic + tyre.damping * closing);
          axleForce += carried;
          axleMoment += s * axle.halfTrack * carried;
        }
      }
      out[10 + 2 * e] = axleForce / axle.mass;
      out[11 + 2 * e] = axleMoment / axle.rollInertia;
    });
    out[7] = bodyForce / sprung.mass;
    out[8] = pitchMoment / sprung.pitchInertia;
    out[9] = rollMoment / sprung.rollInertia;
    for (let i = 0; i < 7; i += 1) out[i] = y[7 + i];
  };
}

function lookUp(x: readonly number[], y: readonly number[], at: number): number {
  let i = x.findIndex((value) => value > at) - 1;
  if (i === -2) i = x.length - 2;
  i = Math.max(0, Math.min(i, x.length - 2));
  return y[i] + ((y[i + 1] - y[i]) / (x[i + 1] - x[i])) * (at - x[i]);
}

/** Classic fourth-order Runge–Kutta with even steps: slow, plain, and nothing like the engine's stepper. */
export function evenly(
  law: PlainLaw,
  start: Float64Array,
  {
    duration,
    steps,
    watch,
  }: { duration: number; steps: number; watch: (y: Float64Array, t: number) => void },
): Float64Array {
  const h = duration / steps;
  const y = start.slice();
  const k = Array.from({ length: 4 }, () => new Float64Array(PLAIN_SIZE));
  const inner = new Float64Array(PLAIN_SIZE);
  for (let step = 0; step < steps; step += 1) {
    const t = step * h;
    law(t, y, k[0]);
    for (let stage = 1; stage < 4; stage += 1) {
      const part = stage === 3 ? h : h / 2;
      for (let i = 0; i < PLAIN_SIZE; i += 1) inner[i] = y[i] + part * k[stage - 1][i];
      law(t + part, inner, k[stage]);
    }
    for (let i = 0; i < PLAIN_SIZE; i += 1) {
      y[i] += (h / 6) * (k[0][i] + 2 * k[1][i] + 2 * k[2][i] + k[3][i]);
    }
    watch(y, t + h);
  }
  return y;
}
