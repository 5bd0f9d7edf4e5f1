import { rigWith } from './smallest-rig.ts';

/** Links of a front axle as somebody types them. Invented. */
export const THREE_LINK = `  links:
    kind: three-link
    lower:
      axle: { behind: 2 in, spread: 38 in, belowTube: 2 1/2 in }
      frame: { behind: 36 in, spread: 31 in, belowRail: 1 in }
    upper:
      axle: { behind: 1 in, right: 8 in, aboveTube: 6 in }
      frame: { behind: 31 in, right: 9 in, aboveFloor: 25 in }
    panhard:
      axle: { ahead: 4 in, right: 20 in, aboveTube: 4 in }
      frame: { ahead: 4 in, left: 17 in, aboveTube: 5 in }
`;

/** Everything else about an end that can be pointed at. */
export const POINTS = `  mounts:
    spring:
      axle: { ahead: 0 in, aboveTube: 3 in }
      frame: { ahead: 0 in, spread: 33 in, aboveFloor: 31 1/2 in }
    shock:
      axle: { behind: 4 in, spread: 40 in, belowTube: 1 in }
      frame: { behind: 6 in, spread: 34 in, aboveFloor: 36 in }
    stop:
      axle: { ahead: 1 in, spread: 36 in, aboveTube: 3 in }
      frame: { ahead: 1 in, spread: 36 in, aboveTube: 5 in }
      padSize: 2 1/2 in
      tipSize: 1 1/2 in
  shaft:
    pinion: { behind: 10 in, left: 2 in, aboveTube: 1 in }
    case: { behind: 44 in, left: 4 in, aboveFloor: 25 in }
    pinionAngle: 6 deg
    slip: 4 in
    caseJoint: double
  hose:
    axle: { behind: 3 in, spread: 50 in, aboveTube: 2 in }
    frame: { behind: 8 in, spread: 32 in, aboveFloor: 30 in }
    freeLength: 26 in
    steers: true
    tieTo: lower
  steering:
    dragLink:
      axle: { ahead: 6 in, right: 24 in, aboveTube: 3 in }
      frame: { ahead: 8 in, left: 15 in, aboveTube: 4 in }
    armLength: 6 in
    kingpinSpread: 54 in
    caster: 6 deg
    lock: 35 deg
`;

export const RAIL = '  railHeight: 22 in\n';

/** The smallest rig with this said about its front end. */
export const frontWith = (text: string): string =>
  rigWith(['  spring: { rate: 160', `${text}  spring: { rate: 160`]);

/** Some of the text changed; each piece must be there. */
export function changed(text: string, ...changes: readonly (readonly [from: string, to: string])[]): string {
  return changes.reduce((all, [from, to]) => {
    if (!all.includes(from)) throw new Error(`nothing reads "${from}"`);
    return all.replace(from, () => to);
  }, text);
}

export const LINKED = frontWith(RAIL + THREE_LINK + POINTS);
