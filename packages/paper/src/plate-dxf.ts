import { type HoleCut, type Outline, type Plate, plateCut } from '@lastinch/core/plates';
import { Colors, DxfWriter, LWPolylineFlags, point2d, point3d, Units } from '@tarikjabiri/dxf';
import { millimetres } from './plate-path.ts';

/** Layers of the drawing: what is cut first, what last, what is only marked. */
export const DXF_LAYERS = { holes: 'HOLES', outside: 'OUTSIDE', bends: 'BEND' } as const;

/**
 * A plate as DXF in true scale, millimetres set as its unit: closed contours with true arcs, holes and bends on layers of their
 * own so that a cutter does them in the right order.
 *
 * @param kerf – width of the cut [m]; 0 leaves it to the machine
 */
export function plateDxf(plate: Plate, kerf: number): string {
  const { outside, holes } = plateCut(plate, kerf);
  const dxf = new DxfWriter();
  dxf.setUnits(Units.Millimeters);
  // Metric drawing: $MEASUREMENT of the DXF reference.
  dxf.setVariable('$MEASUREMENT', { 70: 1 });
  dxf.addLayer(DXF_LAYERS.holes, Colors.Red);
  dxf.addLayer(DXF_LAYERS.outside, Colors.White);
  dxf.addLayer(DXF_LAYERS.bends, Colors.Cyan);
  for (const hole of holes) addHole(dxf, hole);
  addOutline(dxf, outside, DXF_LAYERS.outside);
  for (const { x1, y1, x2, y2 } of plate.bends)
    dxf.addLine(point3d(millimetres(x1), millimetres(y1)), point3d(millimetres(x2), millimetres(y2)), {
      layerName: DXF_LAYERS.bends,
    });
  return dxf.stringify();
}

function addHole(dxf: DxfWriter, hole: HoleCut): void {
  if (hole.kind === 'slot') addOutline(dxf, hole.outline, DXF_LAYERS.holes);
  else
    dxf.addCircle(point3d(millimetres(hole.x), millimetres(hole.y)), millimetres(hole.radius), {
      layerName: DXF_LAYERS.holes,
    });
}

const addOutline = (dxf: DxfWriter, outline: Outline, layerName: string): void => {
  dxf.addLWPolyline(
    outline.map(({ x, y, bulge }) => ({ point: point2d(millimetres(x), millimetres(y)), bulge })),
    { flags: LWPolylineFlags.Closed, layerName },
  );
};
