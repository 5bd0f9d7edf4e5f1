import { couponSolids, plateFor, type Solid, type SolidRequest, solidOf, threadNamed } from '@lastinch/mesh';

export interface Shape {
  readonly name: string;
  readonly solid: Solid;
}

/** The solids that other programs are shown: all that a stop can be made of, and the one that the speed is told for. */
export function shapes(): readonly Shape[] {
  const thread = threadNamed('M10');
  if (thread === null) throw new Error('no M10');
  const nut = { kind: 'nut', thread } as const;
  const stop = (height: number, foot: number, tip: number, rest: Partial<SolidRequest> & { skin?: number }) =>
    made({
      body: {
        height,
        radius: { at: [0, height], value: [foot / 2, tip / 2] },
        bore: 0,
        skin: rest.skin ?? 0,
        density: { at: [0, height], value: [0.5, 0.3] },
      },
      cell: 0.008,
      plate: plateFor(nut),
      seat: nut,
      cap: 0,
      vents: null,
      ...rest,
    });
  const coupon = couponSolids({ densities: [0.35], diameter: 0.03, height: 0.03, cell: 0.01 });
  if (!coupon.ok) throw new Error(JSON.stringify(coupon.problems));
  return [
    { name: 'stop-60x70', solid: stop(0.07, 0.06, 0.06, {}) },
    {
      name: 'skinned-40x40',
      solid: stop(0.04, 0.04, 0.034, {
        skin: 0.0012,
        cap: 0.002,
        vents: { count: 4, diameter: 0.005 },
      }),
    },
    { name: 'coupon', solid: coupon.value[0].solid },
  ];
}

function made(request: SolidRequest): Solid {
  const solid = solidOf(request);
  if (!solid.ok) throw new Error(JSON.stringify(solid.problems));
  return solid.value;
}
