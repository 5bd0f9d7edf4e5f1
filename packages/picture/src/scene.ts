import type { Role } from './role.ts';

/**
 * A picture as data: plain, readonly, survives structuredClone. Lengths are metres on the thing drawn, x to the
 * right and y up; in a chart, which draws no thing, they are pixels. Text and stroke widths are always in pixels of
 * the drawn picture, because they must stay legible at any scale.
 */
export interface Scene {
  /** What is visible. */
  readonly bounds: Box;
  /** Drawn in this order, later over earlier. */
  readonly items: readonly Item[];
  /** Width in pixels for which words were placed. Drawn at another width, the words keep their share of it. */
  readonly layoutWidth: number;
}

export interface Box {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

/** `strong` is a heavier line, `faint` a lighter one (the far side, a ghost, a guess). */
export type Weight = 'strong' | 'plain' | 'faint';

interface Drawn {
  readonly role: Role;
  readonly weight?: Weight;
  readonly dashed?: boolean;
  /** Stable name that a page may use to find the item again, for example `frontLeft.crush`. */
  readonly name?: string;
}

export interface LineItem extends Drawn {
  readonly kind: 'line';
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
}

/** Points as x0, y0, x1, y1, … in one array, because histories and ground lines are long. */
export interface PolylineItem extends Drawn {
  readonly kind: 'polyline';
  readonly points: ArrayLike<number>;
}

export interface PolygonItem extends Drawn {
  readonly kind: 'polygon';
  readonly points: ArrayLike<number>;
}

/** Closed rings, each as x0, y0, x1, y1, …: what lies within an odd number of them is filled. */
export interface RegionItem extends Drawn {
  readonly kind: 'region';
  readonly rings: readonly ArrayLike<number>[];
}

export interface RectItem extends Drawn {
  readonly kind: 'rect';
  /** Lower left corner. */
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  /** Corner radius [m]. */
  readonly round?: number;
  /** Turned about its own centre [rad], anticlockwise on the paper. */
  readonly turn?: number;
}

export interface CircleItem extends Drawn {
  readonly kind: 'circle';
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

/** Part of a circle from one angle to the other [rad], anticlockwise from the x axis. */
export interface ArcItem extends Drawn {
  readonly kind: 'arc';
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  readonly from: number;
  readonly to: number;
}

export interface TextItem extends Drawn {
  readonly kind: 'text';
  readonly x: number;
  /** Middle of the line of text. */
  readonly y: number;
  readonly text: string;
  /** Height of the font [px at layoutWidth]. */
  readonly size: number;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly bold?: boolean;
  /** On a rim of paper, so that it can be read where lines pass behind it. */
  readonly rimmed?: boolean;
  /** Turned by a quarter anticlockwise: the label of a vertical axis. */
  readonly upright?: boolean;
}

/** A dimension line with an arrow at both ends; its label is a text item beside it. */
export interface DimensionItem extends Drawn {
  readonly kind: 'dimension';
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
}

/** A boundary at y that is only known to lie between y − minus and y + plus with 95 % coverage. */
export interface BandItem extends Drawn {
  readonly kind: 'band';
  readonly x: number;
  readonly width: number;
  readonly y: number;
  readonly plus: number;
  readonly minus: number;
}

export type Item =
  | LineItem
  | PolylineItem
  | PolygonItem
  | RegionItem
  | RectItem
  | CircleItem
  | ArcItem
  | TextItem
  | DimensionItem
  | BandItem;

/** Metres on the thing for one pixel of the picture at its layout width. */
export const metresPerPixel = (scene: Scene): number =>
  (scene.bounds.right - scene.bounds.left) / scene.layoutWidth;

/** Height in pixels of a scene drawn at this width. */
export const heightAt = (scene: Scene, width: number): number =>
  ((scene.bounds.top - scene.bounds.bottom) / (scene.bounds.right - scene.bounds.left)) * width;
