import type { Motion, ShelfProblem } from './problem.ts';

const GRAVITY = 9.80665;

/** A mass dropped on a spring that it is not tied to, without loss: parabola, sine, parabola, for ever the same. */
export const bouncingMass: ShelfProblem = (() => {
  const height = 0.1;
  const omega = 30;
  const sag = GRAVITY / omega ** 2;
  const fall = Math.sqrt((2 * height) / GRAVITY);
  const arrival = GRAVITY * fall;
  // In contact q = −sag + R·cos(ω·(t − lowest) + π): the mass touches again where q = 0.
  const swing = Math.hypot(sag, arrival / omega);
  const halfContact = (Math.PI - Math.acos(sag / swing)) / omega;
  const period = 2 * (fall + halfContact);
  const inPeriod = (s: number): Motion => {
    if (s < fall) return { position: [height - (GRAVITY * s * s) / 2], speed: [-GRAVITY * s] };
    if (s < fall + 2 * halfContact) {
      const phase = omega * (s - fall - halfContact);
      return {
        position: [-sag - swing * Math.cos(phase)],
        speed: [omega * swing * Math.sin(phase)],
      };
    }
    const left = period - s;
    return { position: [height - (GRAVITY * left * left) / 2], speed: [GRAVITY * left] };
  };
  return {
    name: 'bouncing mass',
    position: [height],
    speed: [0],
    duration: 2.4 * period,
    switches: [0, 1, 2].flatMap((k) => [
      k * period + fall,
      ...(k < 2 ? [k * period + fall + 2 * halfContact] : []),
    ]),
    size: omega ** 2 * swing,
    accelerate(_time, position, _speed, out, passed) {
      const isOn = passed === undefined ? position[0] < 0 : passed % 2 === 1;
      out[0] = -GRAVITY - (isOn ? omega ** 2 * position[0] : 0);
    },
    exact: (t) => inPeriod(t % period),
  };
})();

/** Crush of a straight stop that a free mass runs into: a half sine, then it leaves as fast as it came. */
export const stopTouch: ShelfProblem = (() => {
  const gap = 0.05;
  const arrival = 1.5;
  const omega = Math.sqrt(4e5 / 350);
  const touch = gap / arrival;
  const leave = touch + Math.PI / omega;
  return {
    name: 'mass on a stop',
    position: [-gap],
    speed: [arrival],
    duration: leave + 0.03,
    switches: [touch, leave],
    size: omega * arrival,
    accelerate(_time, position, _speed, out, passed) {
      const isOn = passed === undefined ? position[0] > 0 : passed === 1;
      out[0] = isOn ? -(omega ** 2) * position[0] : 0;
    },
    exact(t) {
      if (t < touch) return { position: [-gap + arrival * t], speed: [arrival] };
      if (t < leave) {
        const phase = omega * (t - touch);
        return { position: [(arrival / omega) * Math.sin(phase)], speed: [arrival * Math.cos(phase)] };
      }
      return { position: [-arrival * (t - leave)], speed: [-arrival] };
    },
  };
})();

/** The same stop with metal behind it, fifty times as stiff: three sines that meet in value and slope. */
export const stiffMetal: ShelfProblem = (() => {
  const arrival = 2.5;
  const mass = 350;
  const [soft, metal] = [4e5, 2e7];
  const metalAt = 0.04;
  const omega = Math.sqrt(soft / mass);
  const stiff = Math.sqrt((soft + metal) / mass);
  const reach = Math.asin((metalAt * omega) / arrival) / omega;
  const speedThere = arrival * Math.cos(omega * reach);
  // On metal: centre where both forces would balance, swing from value and slope at the touch.
  const centre = (metal * metalAt) / (soft + metal);
  const swing = Math.hypot(metalAt - centre, speedThere / stiff);
  const lead = Math.atan2(metalAt - centre, speedThere / stiff);
  const onMetal = (Math.PI - 2 * lead) / stiff;
  const end = 2 * reach + onMetal;
  const rising = (t: number): Motion => ({
    position: [(arrival / omega) * Math.sin(omega * t)],
    speed: [arrival * Math.cos(omega * t)],
  });
  return {
    name: 'metal behind a stop',
    position: [0],
    speed: [arrival],
    duration: end,
    switches: [reach, reach + onMetal],
    size: stiff ** 2 * swing,
    accelerate(_time, position, _speed, out, passed) {
      const crush = passed === undefined ? Math.max(0, position[0]) : position[0];
      const isMet = passed === undefined ? crush > metalAt : passed === 1;
      out[0] = -(soft * crush + (isMet ? metal * (crush - metalAt) : 0)) / mass;
    },
    exact(t) {
      if (t < reach) return rising(t);
      if (t < reach + onMetal) {
        const phase = stiff * (t - reach) + lead;
        return {
          position: [centre + swing * Math.sin(phase)],
          speed: [stiff * swing * Math.cos(phase)],
        };
      }
      const back = rising(end - t);
      return { position: back.position, speed: [-back.speed[0]] };
    },
  };
})();
