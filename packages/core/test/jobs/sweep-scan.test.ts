import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CRITERIA } from '../../src/jobs/sweep-criteria.ts';
import {
  BROKEN,
  HELD,
  NO_LIMIT,
  REFINED,
  type Sight,
  SweepLayout,
  scanRig,
  UNKNOWN,
} from '../../src/jobs/sweep-scan.ts';

const SCAN = { from: 2, to: 20, step: 0.5 };
const layout = new SweepLayout(SCAN);
const ALL = CRITERIA.map((_, k) => k);

/** Scans rigs whose criteria all stand as `stateAt` says, and counts how often it was looked at. */
function scanned(stateAt: (speed: number) => number, { all = true } = {}) {
  const row = new Float64Array(layout.width);
  const looked: number[] = [];
  const look = (speed: number): Sight => {
    looked.push(speed);
    return { values: ALL.map(() => speed), states: ALL.map(() => stateAt(speed)), places: ALL.map(() => 1) };
  };
  scanRig(look, layout, all, row);
  const edges = Array.from(layout.speeds, (_, i) => row[layout.edge(0, i)] ?? Number.NaN);
  const states = Array.from(layout.speeds, (_, i) => row[layout.state(0, i)]);
  return { row, edges: edges.filter((edge) => !Number.isNaN(edge)), states, looked };
}

describe('the speeds of a scan', () => {
  it('go from end to end in even steps of at most what was asked', () => {
    expect(layout.speeds[0]).toBe(2);
    expect(layout.speeds.at(-1)).toBe(20);
    expect(layout.speeds).toHaveLength(37);
    expect(new SweepLayout({ from: 2, to: 20, step: 0.7 }).speeds).toHaveLength(27);
  });

  it('are one for each mile an hour from 5 to 45 mph, though a step in m/s is never quite even', () => {
    const mph = 0.44704;
    expect(new SweepLayout({ from: 5 * mph, to: 45 * mph, step: mph }).speeds).toHaveLength(41);
  });
});

describe('a scan of a rig', () => {
  it('finds where a response that swings crosses its limit, each time', () => {
    // sin(v) > 0.5 between π/6 + 2πk and 5π/6 + 2πk: from 2 to 20 the borders are known.
    const { edges, states } = scanned((v) => (Math.sin(v) > 0.5 ? BROKEN : HELD));
    const borders = [5 / 6, 2 + 1 / 6, 2 + 5 / 6, 4 + 1 / 6, 4 + 5 / 6, 6 + 1 / 6].map((n) => n * Math.PI);
    expect(states[0]).toBe(BROKEN);
    expect(edges).toHaveLength(borders.length);
    borders.forEach((border, k) => {
      expect(Math.abs((edges[k] ?? 0) - border)).toBeLessThanOrEqual((SCAN.step * REFINED) / 2 + 1e-12);
    });
  });

  it('finds any single crossing to within what it says', () => {
    fc.assert(
      fc.property(fc.double({ min: 2.01, max: 19.99, noNaN: true }), (border) => {
        const { edges } = scanned((v) => (v < border ? HELD : BROKEN));
        return edges.length === 1 && Math.abs((edges[0] ?? 0) - border) <= (SCAN.step * REFINED) / 2 + 1e-12;
      }),
      { seed: 3, numRuns: 200 },
    );
  });

  it('misses a band narrower than its step, which is why the step is said', () => {
    const { edges } = scanned((v) => (v > 5.1 && v < 5.4 ? BROKEN : HELD));
    expect(edges).toEqual([]);
  });

  it('of a trial seeks the first crossing only', () => {
    const { edges, looked } = scanned((v) => (Math.sin(v) > 0.5 ? BROKEN : HELD), { all: false });
    expect(edges).toEqual([]);
    expect(looked).toHaveLength(37);
    const later = scanned((v) => (Math.sin(v + 2) > 0.5 ? BROKEN : HELD), { all: false });
    expect(later.edges).toHaveLength(1);
  });

  it('seeks nothing between broken and unknown, nor where there is no limit', () => {
    expect(scanned((v) => (v < 10 ? BROKEN : UNKNOWN)).edges).toEqual([]);
    expect(scanned(() => NO_LIMIT).edges).toEqual([]);
    expect(scanned((v) => (v < 10 ? HELD : UNKNOWN)).edges).toHaveLength(1);
  });

  it('keeps the place where it is first broken, and none where it never is', () => {
    const { row } = scanned((v) => (v < 10 ? HELD : BROKEN));
    expect(row[layout.place(0)]).toBe(1);
    expect(scanned(() => HELD).row[layout.place(0)]).toBeNaN();
  });
});
