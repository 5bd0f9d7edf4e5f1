import type { LinkageKind, LinkName } from '../rig/linkage.ts';

/** Links of each kind, in the order of every answer. */
export const LINKS_OF_KIND: Readonly<Record<LinkageKind, readonly LinkName[]>> = {
  'three-link': ['lower', 'upper', 'panhard'],
  'four-link': ['lower', 'upper', 'panhard'],
  triangulated: ['lower', 'upper'],
  'radius-arms': ['arm', 'panhard'],
  leaf: [],
};

/** Which of them stand alone; the others are pairs, typed once. Before a kind is typed, all that may. */
export const SINGLE_LINKS: Readonly<Record<string, readonly string[]>> = {
  '': ['panhard'],
  'three-link': ['upper', 'panhard'],
  'four-link': ['panhard'],
  triangulated: ['panhard'],
  'radius-arms': ['panhard'],
  leaf: ['panhard'],
};
