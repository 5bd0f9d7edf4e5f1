import { arcOf, type HoleCut, type Outline, type Plate } from '@lastinch/core/plates';

/** Millimetres, to a micrometre: what drawings of plates are written in. */
export const millimetres = (metres: number): number => Number((metres * 1000).toFixed(3));

/** An outline as path data of an SVG whose y points down [mm]. */
export function pathData(outline: Outline): string {
  const at = ({ x, y }: { x: number; y: number }): string => `${millimetres(x)} ${millimetres(-y)}`;
  const parts = outline.map((point, k) => {
    const next = outline[(k + 1) % outline.length]!;
    if (point.bulge === 0) return `L${at(next)}`;
    const { radius, angle } = arcOf(Math.hypot(next.x - point.x, next.y - point.y), point.bulge);
    const r = millimetres(radius);
    return `A${r} ${r} 0 ${Math.abs(angle) > Math.PI ? 1 : 0} ${angle > 0 ? 0 : 1} ${at(next)}`;
  });
  return `M${at(outline[0]!)}${parts.join('')}Z`;
}

/** The box round a plate, its cut included [mm]: arcs of rounded corners stay within the corners that they round. */
export function boxOf(
  { corners }: Plate,
  kerf: number,
): Record<'left' | 'bottom' | 'width' | 'height', number> {
  const span = (of: 'x' | 'y'): readonly [number, number] => {
    const all = corners.map((corner) => corner[of]);
    return [millimetres(Math.min(...all) - kerf / 2), millimetres(Math.max(...all) + kerf / 2)];
  };
  const [[left, right], [bottom, top]] = [span('x'), span('y')];
  return { left, bottom, width: right - left, height: top - bottom };
}

export const holeTag = (hole: HoleCut): string =>
  hole.kind === 'round'
    ? `<circle cx="${millimetres(hole.x)}" cy="${millimetres(-hole.y)}" r="${millimetres(hole.radius)}"/>`
    : `<path d="${pathData(hole.outline)}"/>`;
