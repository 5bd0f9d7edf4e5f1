import type { BatchCourse, BatchRequest, Reading, Rig, SetupPatch } from '@lastinch/core';

/** Every course is driven for this long [s]. */
export const SECONDS = 20;
const SETUPS = 100;

/** Time left at the end of every ride for the rig to settle [s]: part of the 20. */
const SETTLE = 1.5;

/**
 * 100 setups of a rig on 20 courses: what a search over parts and settings asks for. Invented; nothing rests on it but
 * the time it takes.
 *
 * @param trials – rigs over the tolerances of the readings, beside the nominal one
 */
export function question(rig: Rig, trials: number, setups = SETUPS): BatchRequest {
  const patches = Array.from({ length: setups }, (_, k) => patchOf(k));
  return {
    rig: { ...rig, setups: Object.fromEntries(patches.map((patch) => [patch.id, patch])) },
    setups: patches.map(({ id }) => id),
    courses: courses(rig.wheelbase.value),
    trials,
    seed: 1,
  };
}

/** 14 psi [Pa]. */
const USUAL_PRESSURE = 96_527;

/** Stop spacers, coil seats, added load and tyre pressures, each setup another mixture. */
function patchOf(k: number): SetupPatch {
  const id = `try-${k}`;
  const share = (n: number): number => ((k * n) % SETUPS) / SETUPS;
  const end = (which: 'front' | 'rear', turn: number) => {
    const reading = (part: string, dimension: Reading['dimension'], value: number): Reading => ({
      key: `setups.${id}.${which}.${part}`,
      dimension,
      value,
      plus: 0.01 * value,
      minus: 0.01 * value,
      origin: 'measured',
      toleranceOrigin: 'measured',
      text: '',
    });
    return {
      stopSpacer: reading('stopSpacer', 'length', 0.02 * share(7 + turn)),
      seatAndStopDrop: reading('seatAndStopDrop', 'length', 0.025 * share(13 + turn)),
      addedLoad: reading('addedLoad', 'mass', 80 * share(29 + turn)),
      tyrePressure: reading('tyrePressure', 'pressure', USUAL_PRESSURE * (0.8 + 0.4 * share(37))),
    };
  };
  return { id, notes: '', front: end('front', 0), rear: end('rear', 4) };
}

/** From a good road to whoops that use the stops, each as long as 20 s at its speed are. */
function courses(wheelbase: number): readonly BatchCourse[] {
  const lengthAt = (speed: number): number => (SECONDS - SETTLE) * speed - wheelbase;
  const road = (roughness: number, speed: number, seed: number): BatchCourse => ({
    name: `road-${roughness * 1e6}-${speed}`,
    speed,
    shape: {
      kind: 'road-class',
      roughness,
      length: lengthAt(speed),
      fadeIn: 10,
      trackWidth: 1.5,
      seed,
      mirrored: false,
    },
  });
  const whoops = (height: number, spacing: number, speed: number, rightPhase: number): BatchCourse => {
    const count = Math.floor((lengthAt(speed) - 5) / spacing);
    return {
      name: `whoops-${height}-${spacing}-${speed}`,
      speed,
      shape: { kind: 'whoops', height, spacing, count, start: lengthAt(speed) - count * spacing, rightPhase },
    };
  };
  const washboard = (height: number, spacing: number, speed: number): BatchCourse => ({
    name: `washboard-${speed}`,
    speed,
    shape: {
      kind: 'washboard',
      height,
      spacing,
      length: Math.floor((lengthAt(speed) - 5) / spacing) * spacing,
      fadeIn: 3,
      start: 5,
      rightPhase: 0,
    },
  });
  return [
    // Classes A to E of ISO 8608 at their mean: 16, 64, 256, 1024, 4096 · 10⁻⁶ m³.
    road(16e-6, 30, 1),
    road(64e-6, 25, 2),
    road(256e-6, 20, 3),
    road(1024e-6, 15, 4),
    road(4096e-6, 9, 5),
    road(4096e-6, 13, 6),
    whoops(0.1, 6, 6, 0),
    whoops(0.15, 6, 5, 0),
    whoops(0.15, 6, 8, 0),
    whoops(0.15, 6, 11, Math.PI / 2),
    whoops(0.2, 9, 7, 0),
    whoops(0.2, 9, 10, 0),
    whoops(0.25, 12, 9, Math.PI),
    whoops(0.3, 12, 7, 0),
    washboard(0.025, 0.8, 8),
    washboard(0.03, 0.9, 12),
    washboard(0.02, 0.6, 16),
    whoops(0.12, 4.5, 4, 0),
    whoops(0.12, 4.5, 6, Math.PI),
    road(16384e-6, 6, 7),
  ];
}
