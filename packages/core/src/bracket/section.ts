/** What a cut through a beam gives against bending in the plane of the load. */
export interface Section {
  /** [m²] */
  readonly area: number;
  /** Second moment about the axis across the load, through the centroid [m⁴]. */
  readonly inertia: number;
  /** The same about the other axis [m⁴]. */
  readonly sideInertia: number;
  /** Centroid to the farther fibre, in the plane of the load and across it [m]. */
  readonly fibre: number;
  readonly sideFibre: number;
  /** Area of the walls that carry shear in the plane of the load [m²]. */
  readonly shearArea: number;
  /** Largest shear stress ÷ (force ÷ shear area): 1.5 in a solid bar, about 1 in thin walls. */
  readonly shearPeak: number;
}

/** A solid bar or a plate on edge. `depth` lies in the plane of the load [m]. */
export function barSection({ width, depth }: { readonly width: number; readonly depth: number }): Section {
  return {
    area: width * depth,
    inertia: (width * depth ** 3) / 12,
    sideInertia: (depth * width ** 3) / 12,
    fibre: depth / 2,
    sideFibre: width / 2,
    shearArea: width * depth,
    shearPeak: 1.5,
  };
}

/**
 * A rectangular tube with sharp corners; outside sizes [m].
 * @validity real corners are round: the section modulus of a cold-formed tube is some percent less
 */
export function boxSection(tube: {
  readonly width: number;
  readonly depth: number;
  readonly wall: number;
}): Section {
  const { width, depth, wall } = tube;
  const [inWidth, inDepth] = [width - 2 * wall, depth - 2 * wall];
  return {
    area: width * depth - inWidth * inDepth,
    inertia: (width * depth ** 3 - inWidth * inDepth ** 3) / 12,
    sideInertia: (depth * width ** 3 - inDepth * inWidth ** 3) / 12,
    fibre: depth / 2,
    sideFibre: width / 2,
    shearArea: 2 * wall * depth,
    shearPeak: 1.2,
  };
}

/** A round tube; outside diameter [m]. */
export function roundSection({
  diameter,
  wall,
}: {
  readonly diameter: number;
  readonly wall: number;
}): Section {
  const inside = diameter - 2 * wall;
  const inertia = (Math.PI / 64) * (diameter ** 4 - inside ** 4);
  const area = (Math.PI / 4) * (diameter ** 2 - inside ** 2);
  return {
    area,
    inertia,
    sideInertia: inertia,
    fibre: diameter / 2,
    sideFibre: diameter / 2,
    shearArea: area / 2,
    shearPeak: 1,
  };
}

/** Gusset plates in the plane of the load, on one side of a tube. */
export interface Gussets {
  readonly thickness: number;
  readonly count: number;
  /** How far they stand out of the tube at this cut, in the plane of the load [m]. */
  readonly height: number;
}

/**
 * A tube with gussets that stand out of it on one side: parallel axes about the common centroid. Across the load the
 * gussets are taken as standing at the middle, which is on the safe side; against shear only the walls of the tube count:
 * with the gussets counted too, the sag was 11 % less than finite elements gave, without 2 %.
 *
 * @param depth – of the tube, in the plane of the load [m]
 * @source parallel-axis theorem
 */
export function withGussets(tube: Section, depth: number, { thickness, count, height }: Gussets): Section {
  if (height <= 0) return tube;
  const strip = thickness * count * height;
  const stripAt = (depth + height) / 2;
  const area = tube.area + strip;
  const centre = (strip * stripAt) / area;
  const inertia =
    tube.inertia +
    tube.area * centre ** 2 +
    (thickness * count * height ** 3) / 12 +
    strip * (stripAt - centre) ** 2;
  return {
    ...tube,
    area,
    inertia,
    fibre: Math.max(depth / 2 + height - centre, depth / 2 + centre),
  };
}

/** Bending moment that a section bears for each unit of stress: I ÷ c [m³]. */
export const sectionModulus = ({ inertia, fibre }: Section): number => inertia / fibre;
