import type { AxleGeometry, Link } from '../../src/linkage/geometry.ts';

/** Invented rigs, one of each kind; never an expected value. */
const base = {
  centre: [-2.6, 0, 0.42],
  halfTrack: 0.8,
  tyreRadius: 0.42,
  struts: {
    'spring-left': { axle: [-2.6, 0.45, 0.5], body: [-2.58, 0.42, 0.82] },
    'spring-right': { axle: [-2.6, -0.45, 0.5], body: [-2.58, -0.42, 0.82] },
    'shock-left': { axle: [-2.68, 0.5, 0.38], body: [-2.75, 0.36, 0.9] },
    'shock-right': { axle: [-2.68, -0.5, 0.38], body: [-2.75, -0.36, 0.9] },
    'stop-left': { axle: [-2.6, 0.42, 0.51], body: [-2.6, 0.42, 0.59] },
    'stop-right': { axle: [-2.6, -0.42, 0.51], body: [-2.6, -0.42, 0.59] },
  },
} as const satisfies Partial<AxleGeometry>;

const pair = (
  id: string,
  axle: readonly [number, number, number],
  body: readonly [number, number, number],
): Link[] => [
  { id: `${id}-left`, axle, body },
  { id: `${id}-right`, axle: [axle[0], -axle[1], axle[2]], body: [body[0], -body[1], body[2]] },
];
const panhard: Link = { id: 'panhard', axle: [-2.72, -0.5, 0.5], body: [-2.72, 0.52, 0.56] };

export const threeLink: AxleGeometry = {
  ...base,
  kind: 'three-link',
  links: [
    ...pair('lower', [-2.62, 0.46, 0.34], [-1.62, 0.38, 0.42]),
    { id: 'upper', axle: [-2.58, -0.12, 0.62], body: [-1.78, -0.16, 0.6] },
    panhard,
  ],
};
export const fourLink: AxleGeometry = {
  ...base,
  kind: 'four-link',
  links: [
    ...pair('lower', [-2.62, 0.46, 0.34], [-1.62, 0.4, 0.42]),
    ...pair('upper', [-2.58, 0.3, 0.62], [-1.82, 0.34, 0.6]),
    panhard,
  ],
};
export const triangulated: AxleGeometry = {
  ...base,
  kind: 'triangulated',
  links: [
    ...pair('lower', [-2.62, 0.5, 0.34], [-1.62, 0.36, 0.42]),
    ...pair('upper', [-2.58, 0.08, 0.64], [-1.86, 0.42, 0.6]),
  ],
};
export const radiusArms: AxleGeometry = {
  ...base,
  kind: 'radius-arms',
  links: [...pair('arm', [-2.6, 0.45, 0.42], [-1.7, 0.4, 0.5]), panhard],
};
export const leafPair: AxleGeometry = { ...base, kind: 'leaf', links: [] };

export const KINDS = [threeLink, fourLink, triangulated, radiusArms, leafPair] as const;
