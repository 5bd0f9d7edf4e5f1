import { describe, expect, it } from 'vitest';
import { plateFor, type Seat, threadNamed } from '../src/seat.ts';
import { solidOf } from '../src/solid.ts';
import type { SolidRequest } from '../src/solid-request.ts';
import { counted, expectClosed, volumeByPrisms } from './closed-surface.ts';

const thread = threadNamed('M6');
if (thread === null) throw new Error('no M6');
const NUT: Seat = { kind: 'nut', thread };
const SMALL: SolidRequest = {
  body: {
    height: 0.03,
    radius: { at: [0, 0.03], value: [0.015, 0.013] },
    bore: 0,
    skin: 0,
    density: { at: [0, 0.03], value: [0.55, 0.3] },
  },
  cell: 0.008,
  plate: 0.003,
  seat: null,
  cap: 0,
  vents: null,
};
const with_ = (body: Partial<SolidRequest['body']>, rest: Partial<SolidRequest> = {}): SolidRequest => ({
  ...SMALL,
  ...rest,
  body: { ...SMALL.body, ...body },
});
const made = (request: SolidRequest) => {
  const solid = solidOf(request);
  if (!solid.ok) throw new Error(JSON.stringify(solid.problems));
  return solid.value;
};

describe('the solid of a printed stop', () => {
  it.each<[string, SolidRequest]>([
    ['on a bare plate', SMALL],
    ['with a bore', with_({ bore: 0.004 })],
    ['with a captive nut and a cap', with_({}, { seat: NUT, plate: plateFor(NUT), cap: 0.002 })],
    [
      'with a screw from the tip',
      with_(
        { bore: 0.0063, radius: { at: [0, 0.03], value: [0.016, 0.016] } },
        { seat: { kind: 'clearance', thread }, plate: 0.006 },
      ),
    ],
    ['with an insert', with_({}, { seat: { kind: 'insert', diameter: 0.008, depth: 0.0095 }, plate: 0.012 })],
    [
      'with skin, cap and vents',
      with_({ skin: 0.0012 }, { cap: 0.002, vents: { count: 4, diameter: 0.005 } }),
    ],
    [
      'stepped',
      with_({
        radius: { at: [0, 0.0145, 0.0155, 0.03], value: [0.018, 0.018, 0.013, 0.013] },
      }),
    ],
  ])('%s is one closed body', (_what, request) => {
    const { mesh, figures } = made(request);
    expectClosed(mesh);
    expect(volumeByPrisms(mesh) / figures.volume).toBeCloseTo(1, 4);
    expect(figures.hollows.count).toBe(0);
  });

  it('stands on zero and keeps within its outline', () => {
    const { mesh, figures } = made(with_({}, { seat: NUT, plate: plateFor(NUT), cap: 0.002 }));
    let [low, high, wide] = [1, 0, 0];
    for (let i = 0; i < mesh.points.length; i += 3) {
      low = Math.min(low, mesh.points[i + 2]);
      high = Math.max(high, mesh.points[i + 2]);
      wide = Math.max(wide, Math.hypot(mesh.points[i], mesh.points[i + 1]));
    }
    expect(Math.abs(low)).toBeLessThan(5e-5);
    expect(Math.abs(high - figures.height)).toBeLessThan(5e-5);
    expect(wide).toBeLessThan(0.015 + 1e-4);
    expect(figures.height).toBeCloseTo(0.03 + plateFor(NUT) + 0.002, 9);
  });

  it('tells of hollows where a skin without vents closes all sides', () => {
    const closed = with_({ skin: 0.0012 }, { cap: 0.002 });
    // Both labyrinths of the gyroid, each shut in.
    const { figures } = made(closed);
    expect(figures.hollows.count).toBe(2);
    const inside = Math.PI * 0.0128 ** 2 * 0.03 * (1 - 0.42);
    expect(figures.hollows.volume / inside).toBeGreaterThan(0.8);
    expect(figures.hollows.volume / inside).toBeLessThan(1.1);
    const vented = made({ ...closed, vents: { count: 4, diameter: 0.005 } });
    expect(vented.figures.hollows.count).toBe(0);
  });

  it('holds each slice to its density within 3 %, from a tight foot to a loose tip', () => {
    const wide = made(
      with_(
        {
          height: 0.04,
          radius: { at: [0, 0.04], value: [0.025, 0.025] },
          density: { at: [0, 0.04], value: [0.6, 0.28] },
        },
        { cell: 0.008 },
      ),
    );
    expect(wide.figures.slices).toHaveLength(5);
    for (const { asked, made: share } of wide.figures.slices)
      expect(Math.abs(share / asked - 1)).toBeLessThan(0.03);
  });

  it('leaves a hexagon for the nut: the plate misses its volume', () => {
    const plate = plateFor(NUT);
    const body = { density: { at: [0], value: [0.5] }, radius: { at: [0], value: [0.015] } };
    const held = made(with_(body, { seat: NUT, plate })).figures.volume;
    const bare = made(with_(body, { plate })).figures.volume;
    const [flats, high] = [10e-3 + 0.4e-3, 5.2e-3 + 0.4e-3];
    const hexagon = (Math.sqrt(3) / 2) * flats ** 2 * high;
    const hole = Math.PI * 3.3e-3 ** 2 * (plate - high);
    expect((bare - held) / (hexagon + hole)).toBeCloseTo(1, 1);
  });

  it('says how far it is, never falling back', () => {
    const shares: number[] = [];
    solidOf(SMALL, (share) => shares.push(share));
    expect(shares.length).toBeGreaterThan(10);
    expect([...shares].sort((a, b) => a - b)).toEqual(shares);
    expect(shares[shares.length - 1]).toBe(1);
  });

  it('is the same each time', () => {
    expect(counted(made(SMALL).mesh)).toEqual(counted(made(SMALL).mesh));
  });
});

describe('no solid is made', () => {
  it.each<[string, SolidRequest, string]>([
    ['of no height', with_({ height: 0 }), 'stop-shape'],
    ['denser than the lattice goes', with_({ density: { at: [0], value: [0.9] } }), 'stop-shape'],
    ['with a bore as wide as itself', with_({ bore: 0.013 }), 'stop-shape'],
    ['with vents in no skin', with_({}, { vents: { count: 4, diameter: 0.004 } }), 'stop-shape'],
    [
      'with more vents than girth',
      with_({ skin: 0.001 }, { vents: { count: 24, diameter: 0.004 } }),
      'stop-shape',
    ],
    ['with a plate too thin for its nut', with_({}, { seat: NUT, plate: 0.004 }), 'stop-solid-seat'],
    [
      'with a screw that no bore lets through',
      with_({}, { seat: { kind: 'clearance', thread }, plate: 0.006 }),
      'stop-solid-seat',
    ],
    [
      'with an insert of no size',
      with_({}, { seat: { kind: 'insert', diameter: 0, depth: 0.01 }, plate: 0.02 }),
      'stop-solid-seat',
    ],
    ['of countless cells', with_({}, { cell: 0.0008 }), 'stop-solid-cells'],
    [
      'that falls apart',
      with_(
        { height: 0.04, radius: { at: [0], value: [0.0035] }, density: { at: [0], value: [0.05] } },
        { cell: 0.04, plate: 0 },
      ),
      'stop-solid-parts',
    ],
  ])('%s', (_what, request, code) => {
    const answer = solidOf(request);
    expect(answer.ok).toBe(false);
    if (!answer.ok) expect(answer.problems.map((one) => one.code)).toContain(code);
  });
});
