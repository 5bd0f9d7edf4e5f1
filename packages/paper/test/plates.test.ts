import {
  gussetPlate,
  outlineArea,
  type Plate,
  padPlate,
  plateCut,
  standoffPlate,
  topPlate,
} from '@lastinch/core/plates';
import DxfParser, { type ICircleEntity, type ILineEntity, type ILwpolylineEntity } from 'dxf-parser';
import { describe, expect, it } from 'vitest';
import { DXF_LAYERS, fitsPaper, plateDxf, plateSvg, plateTemplate } from '../src/index.ts';

const bolts = { diameter: 0.01, along: 0.07, across: 0.05, slot: 0.016 };
const PLATES: Readonly<Record<string, Plate>> = {
  'a top plate': topPlate({ length: 0.1, width: 0.08, thickness: 0.006, radius: 0.01 }, 0.012, bolts),
  'a gusset': gussetPlate({ foot: 0.1, height: 0.15, thickness: 0.006, toe: 0.006, relief: 0.012 }),
  'a standoff': standoffPlate(
    { length: 0.1, web: 0.08, flange: 0.04, thickness: 0.005, insideRadius: 0.006 },
    0.012,
  ),
  'a round pad': padPlate({ length: 0.08, width: 0.08, thickness: 0.01, radius: 0.04 }, 0.01),
};
const KERF = 0.0012;

/** Area of a closed polyline with bulges, as its reader gives it [mm²]: chords, and caps of a circle over each. */
function areaOf({ vertices }: ILwpolylineEntity): number {
  return vertices.reduce((sum, { x, y, bulge = 0 }, k) => {
    const next = vertices[(k + 1) % vertices.length]!;
    const angle = 4 * Math.atan(bulge);
    const chord = Math.hypot(next.x - x, next.y - y);
    const radius = angle === 0 ? 0 : chord / (2 * Math.sin(Math.abs(angle) / 2));
    const cap = (radius ** 2 * (Math.abs(angle) - Math.sin(Math.abs(angle)))) / 2;
    return sum + (x * next.y - next.x * y) / 2 + Math.sign(angle) * cap;
  }, 0);
}

describe.each(Object.entries(PLATES))('the DXF of %s, opened by another reader', (_name, plate) => {
  const { outside, holes } = plateCut(plate, KERF);
  const read = new DxfParser().parseSync(plateDxf(plate, KERF));
  const on = (layer: string) => read?.entities.filter((entity) => entity.layer === layer) ?? [];

  it('has millimetres set as its unit', () => {
    // DXF reference: $INSUNITS 4 is millimetres, $MEASUREMENT 1 is metric.
    expect(read?.header.$INSUNITS).toBe(4);
    expect(read?.header.$MEASUREMENT).toBe(1);
  });

  it('has one closed contour outside, of the area that the cut has', () => {
    const [contour, ...more] = on(DXF_LAYERS.outside) as ILwpolylineEntity[];
    expect(more).toEqual([]);
    expect(contour).toMatchObject({ type: 'LWPOLYLINE', shape: true });
    // Coordinates are written to a micrometre.
    expect(Math.abs(areaOf(contour!) - outlineArea(outside) * 1e6)).toBeLessThan(1);
  });

  it('has every hole on a layer of its own, where it belongs', () => {
    const found = on(DXF_LAYERS.holes);
    expect(found).toHaveLength(holes.length);
    for (const [k, hole] of holes.entries()) {
      if (hole.kind === 'round') {
        const { center, radius } = found[k] as ICircleEntity;
        expect([center.x, center.y, radius].map((mm) => mm / 1000)).toEqual(
          [hole.x, hole.y, hole.radius].map((metres) => expect.closeTo(metres, 6)),
        );
      } else
        expect(
          Math.abs(areaOf(found[k] as ILwpolylineEntity) - outlineArea(hole.outline) * 1e6),
        ).toBeLessThan(0.2);
    }
  });

  it('has its bend lines', () => {
    const lines = on(DXF_LAYERS.bends) as ILineEntity[];
    expect(lines.map(({ vertices }) => vertices[0]!.y / 1000)).toEqual(
      plate.bends.map(({ y1 }) => expect.closeTo(y1, 6)),
    );
  });
});

describe('a plate on paper', () => {
  const gusset = PLATES['a gusset']!;

  it('is drawn in true scale: as many millimetres as units', () => {
    for (const plate of Object.values(PLATES)) {
      const [, width, height, box] =
        plateSvg(plate, 0, 'x').match(/width="([\d.]+)mm" height="([\d.]+)mm" viewBox="([^"]+)"/) ?? [];
      expect(box?.split(' ').slice(2)).toEqual([width, height]);
    }
    // Two millimetres of white on each side.
    expect(plateSvg(gusset, 0, 'x')).toMatch(/width="104mm" height="154mm"/);
  });

  it('comes with bars to hold a rule against, at the size of the drawing', () => {
    const { source, pictures } = plateTemplate(gusset, 'a4', 'A "gusset"', ['One hole.']);
    expect(source).toMatch(/line\(length: 100mm[\s\S]*line\(length: 4in/);
    expect(source).toContain('width: 104mm, height: 154mm');
    expect(source).toContain('"A \\"gusset\\""');
    expect(pictures).toHaveLength(1);
  });

  it('is refused where it is larger than the sheet', () => {
    expect(fitsPaper(gusset, 'a4')).toBe(true);
    expect(
      fitsPaper(topPlate({ length: 0.25, width: 0.1, thickness: 0.006, radius: 0 }, 0, null), 'a4'),
    ).toBe(false);
  });
});
