import { unzipSync } from 'fflate';
import { beforeAll, describe, expect, it } from 'vitest';
import { couponFile, couponSolids } from '../src/coupons.ts';
import { fileOf } from '../src/files.ts';
import type { SolidMesh } from '../src/solid-mesh.ts';
import { expectClosed, volumeByPrisms } from './closed-surface.ts';

const ask = { densities: [0.3, 0.5], diameter: 0.02, height: 0.02, cell: 0.01 };
let coupons: Extract<ReturnType<typeof couponSolids>, { ok: true }>['value'];
beforeAll(() => {
  const made = couponSolids(ask);
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  coupons = made.value;
});

/** Read by its own rules: header, count, records; corners that are equal to the last bit are one point. */
function readStl(bytes: Uint8Array): SolidMesh {
  const view = new DataView(bytes.buffer, bytes.byteOffset);
  const count = view.getUint32(80, true);
  expect(bytes.length).toBe(84 + 50 * count);
  const known = new Map<string, number>();
  const points: number[] = [];
  const triangles: number[] = [];
  for (let t = 0; t < count; t += 1)
    for (let corner = 0; corner < 3; corner += 1) {
      const at = 84 + 50 * t + 12 * (corner + 1);
      const xyz = [0, 4, 8].map((off) => view.getFloat32(at + off, true));
      const name = xyz.join();
      let point = known.get(name);
      if (point === undefined) {
        point = known.size;
        known.set(name, point);
        points.push(...xyz);
      }
      triangles.push(point);
    }
  return { points: Float32Array.from(points), triangles: Uint32Array.from(triangles) };
}

/** Each object of the model by what its elements say. */
function read3mf(bytes: Uint8Array): {
  files: string[];
  model: string;
  objects: { name: string; mesh: SolidMesh }[];
} {
  const files = unzipSync(bytes);
  const model = new TextDecoder().decode(files['3D/3dmodel.model']);
  const objects = [...model.matchAll(/<object id="\d+" type="model" name="([^"]*)">(.*?)<\/object>/gs)].map(
    ([, name, body]) => ({
      name,
      mesh: {
        points: Float32Array.from(
          [...body.matchAll(/<vertex x="([^"]+)" y="([^"]+)" z="([^"]+)"\/>/g)].flatMap(([, ...xyz]) =>
            xyz.map(Number),
          ),
        ),
        triangles: Uint32Array.from(
          [...body.matchAll(/<triangle v1="(\d+)" v2="(\d+)" v3="(\d+)"\/>/g)].flatMap(([, ...v]) =>
            v.map(Number),
          ),
        ),
      },
    }),
  );
  return { files: Object.keys(files), model, objects };
}

describe('an STL file', () => {
  it('read back is the same body in millimetres, closed once equal corners are one', () => {
    const { mesh } = coupons[0].solid;
    const read = readStl(fileOf('stl', 'coupon', mesh));
    expectClosed(read);
    expect(read.points.length).toBe(mesh.points.length);
    expect(volumeByPrisms(read) / (1e9 * volumeByPrisms(mesh))).toBeCloseTo(1, 5);
  });

  it('has normals of length one that point outward', () => {
    const bytes = fileOf('stl', 'coupon', coupons[0].solid.mesh);
    const view = new DataView(bytes.buffer);
    for (let at = 84; at < bytes.length; at += 5000) {
      const f = (off: number) => view.getFloat32(at + off, true);
      expect(Math.hypot(f(0), f(4), f(8))).toBeCloseTo(1, 5);
    }
    expect(new TextDecoder().decode(bytes.slice(0, 5))).not.toBe('solid');
  });
});

describe('a 3MF file', () => {
  it('is a package with its three files, unit millimetre', () => {
    const { files, model } = read3mf(fileOf('3mf', 'a stop', coupons[0].solid.mesh));
    expect(files).toEqual(['[Content_Types].xml', '_rels/.rels', '3D/3dmodel.model']);
    expect(model).toMatch(/<model unit="millimeter" xml:lang="en" xmlns="[^"]*\/core\/2015\/02">/);
  });

  it('read back is the same body in millimetres, closed', () => {
    const { mesh } = coupons[1].solid;
    const [{ mesh: read }] = read3mf(fileOf('3mf', 'a stop', mesh)).objects;
    expectClosed(read);
    expect(read.triangles).toEqual(mesh.triangles);
    read.points.forEach((x, i) => {
      expect(Math.abs(x - 1000 * mesh.points[i])).toBeLessThan(7e-6);
    });
  });

  it('keeps a title with marks and letters of any kind', () => {
    const { model } = read3mf(fileOf('3mf', 'Ø 60 <front> & "rear"', coupons[0].solid.mesh));
    expect(model).toContain('<metadata name="Title">Ø 60 &lt;front&gt; &amp; &quot;rear&quot;</metadata>');
  });

  it('is the same bytes for the same solid', () => {
    const { mesh } = coupons[0].solid;
    expect(fileOf('3mf', 'a', mesh)).toEqual(fileOf('3mf', 'a', mesh));
  });

  it('carries several coupons side by side', () => {
    const { objects, model } = read3mf(couponFile('coupons', coupons, ask.diameter));
    expect(objects.map(({ name }) => name)).toEqual(['coupon 1, 30 %', 'coupon 2, 50 %']);
    for (const { mesh } of objects) expectClosed(mesh);
    expect(model).toContain('objectid="2" transform="1 0 0 0 1 0 0 0 1 25.000 0.000 0"');
  });
});

it('coupons weigh what their density says', () => {
  const outline = Math.PI * 0.01 ** 2 * 0.02;
  for (const { density, solid } of coupons)
    expect(Math.abs(solid.figures.volume / outline / density - 1)).toBeLessThan(0.03);
});
