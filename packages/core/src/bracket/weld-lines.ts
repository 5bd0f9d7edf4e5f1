/** A straight run of fillet weld seen along the axis of the beam: y across, z in the plane of the load [m]. */
export interface WeldRun {
  readonly from: readonly [y: number, z: number];
  readonly to: readonly [y: number, z: number];
}

/** A group of runs taken as lines without width: per metre of throat. */
export interface WeldGroup {
  /** Sum of lengths [m]. */
  readonly length: number;
  readonly centre: readonly [y: number, z: number];
  /** Second moments of the lines about the axes through their centre, in the plane of the load and across it [m³]. */
  readonly unit: number;
  readonly sideUnit: number;
  /** I_y + I_z: against turning [m³]. */
  readonly polar: number;
  /** Ends of the runs, from the centre: the worst point is one of them [m]. */
  readonly corners: readonly (readonly [y: number, z: number])[];
}

/** Throat ÷ leg of a fillet weld with equal legs. */
export const THROAT = Math.SQRT1_2;

/** @source lines method: Shigley, Mechanical Engineering Design, 9th ed., table 9-1 and 9-2 (table read in a scan) */
export function weldGroup(runs: readonly WeldRun[]): WeldGroup {
  const lengths = runs.map(({ from, to }) => Math.hypot(to[0] - from[0], to[1] - from[1]));
  const length = lengths.reduce((sum, one) => sum + one, 0);
  const mean = (axis: 0 | 1): number =>
    runs.reduce((sum, { from, to }, k) => sum + (lengths[k] * (from[axis] + to[axis])) / 2, 0) / length;
  const centre = [mean(0), mean(1)] as const;
  const second = (axis: 0 | 1): number =>
    runs.reduce((sum, { from, to }, k) => {
      const [a, b] = [from[axis] - centre[axis], to[axis] - centre[axis]];
      return sum + (lengths[k] * (a * a + a * b + b * b)) / 3;
    }, 0);
  const [sideUnit, unit] = [second(0), second(1)];
  const corners = runs.flatMap(({ from, to }) =>
    [from, to].map(([y, z]) => [y - centre[0], z - centre[1]] as const),
  );
  return { length, centre, unit, sideUnit, polar: unit + sideUnit, corners };
}

/** All around a rectangle. */
export function weldedAround(width: number, depth: number): readonly WeldRun[] {
  const [y, z] = [width / 2, depth / 2];
  const corners = [
    [-y, -z],
    [y, -z],
    [y, z],
    [-y, z],
  ] as const;
  return corners.map((from, k) => ({ from, to: corners[(k + 1) % 4] }));
}

/** All around a circle, as a polygon of as many runs: its second moment is πr³ to a thousandth. */
export function weldedRound(diameter: number, count = 96): readonly WeldRun[] {
  const at = (k: number) => {
    const turn = (2 * Math.PI * k) / count;
    return [(diameter / 2) * Math.cos(turn), (diameter / 2) * Math.sin(turn)] as const;
  };
  return Array.from({ length: count }, (_, k) => ({ from: at(k), to: at(k + 1) }));
}

/** What a joint carries: force across in the plane of the load, moment about the weld, turning moment, pull along the beam. */
export interface WeldLoad {
  /** [N] */
  readonly across: number;
  /** [N·m] */
  readonly bending: number;
  readonly sideBending: number;
  readonly turning: number;
  /** [N] */
  readonly along: number;
}

/**
 * Shear stress in the throat at each end of a run [Pa]: τ′ = V/(throat·ΣL), τ″ = M·z/(throat·I_u), by turning
 * T·r/(throat·J_u) square to the radius, added as vectors. Force across is positive along z, turning from y to z; pull and
 * bending count with the sign that makes a point worse.
 *
 * @param leg – of the fillet [m]
 * @returns in the order of `corners`
 * @source Shigley, Mechanical Engineering Design, 9th ed., eqs 9-4 to 9-8 (from memory)
 */
export function weldStresses(group: WeldGroup, leg: number, load: WeldLoad): readonly number[] {
  const throat = THROAT * leg;
  const turn = load.turning / group.polar;
  return group.corners.map(([y, z]) => {
    const along =
      Math.abs(load.along) / group.length +
      Math.abs(load.bending * z) / group.unit +
      Math.abs(load.sideBending * y) / group.sideUnit;
    return Math.hypot(along, -turn * z, load.across / group.length + turn * y) / throat;
  });
}

/** The same at the worst point, whichever way it is turned. */
export function weldStress(group: WeldGroup, leg: number, load: WeldLoad): number {
  return Math.max(
    ...weldStresses(group, leg, load),
    ...weldStresses(group, leg, { ...load, turning: -load.turning }),
  );
}
