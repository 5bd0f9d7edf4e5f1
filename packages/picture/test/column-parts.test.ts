import { CORNERS } from '@lastinch/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { columnShape } from '../src/column-parts.ts';
import { anyTravel, SEED } from './sample/any-travel.ts';
import { failing, inventedColumn, working } from './sample/travel.ts';

const INCH = 0.0254;

describe('a travel column cut into parts', () => {
  it('adds up to hard travel where the crushed stop stays clear', () => {
    for (const corner of CORNERS) {
      const column = working.corners[corner];
      const shape = columnShape(column);
      expect(shape.overlap).toBeNull();
      const above = shape.parts.filter((part) => part.id !== 'droop');
      expect(above[0]?.from).toBe(0);
      for (let k = 1; k < above.length; k += 1) expect(above[k]!.from).toBe(above[k - 1]!.to);
      const sum = above.reduce((total, part) => total + (part.to - part.from), 0);
      expect(sum).toBeCloseTo(column.hardTravel.value, 12);
    }
  });

  it('keeps flex and reserve free below a body contact, the own reserve below a coil that goes solid first', () => {
    expect(columnShape(working.corners.frontLeft).parts.map((part) => part.name)).toEqual([
      'droop to strap',
      'free bump',
      'stop crush',
      'to spare',
      'reserve',
      'flex',
    ]);
    expect(columnShape(working.corners.rearLeft).parts.map((part) => part.name)).toEqual([
      'droop to shock',
      'free bump',
      'stop crush',
      'to spare',
      'coil reserve',
    ]);
  });

  it('shows as overlap what a stop that is too long takes of the space that must stay free', () => {
    const { overlap } = columnShape(failing.corners.frontRight);
    // 2 1/2 in + 1 11/16 in crush against 4 1/8 in less 1/2 in
    expect(overlap!.from / INCH).toBeCloseTo(4.125 - 0.5, 9);
    expect(overlap!.to / INCH).toBeCloseTo(2.5 + 1.6875, 9);
  });

  it('names the contact that leaves least when it is not the first one', () => {
    const column = inventedColumn('frontLeft', {
      free: 2,
      crush: 1,
      flex: 1,
      reserve: 0.5,
      contacts: [
        { id: 'coil', name: 'coil solid', kind: 'coil', travel: 4 },
        { id: 'sump', name: 'housing to sump', kind: 'body', travel: 4.25 },
      ],
      droop: [],
      tolerance: 0.1,
    });
    // coil: 4 − 3 − 1/4 = 3/4; sump: 4 1/4 − 3 − 1 1/2 = −1/4
    expect(columnShape(column).first?.id).toBe('coil');
    expect(columnShape(column).tightest?.id).toBe('sump');
  });

  it('takes the uncertainty of full crush from gap and crush together, and says unknown when one is', () => {
    const at = (id: string, column = working.corners.frontLeft) =>
      columnShape(column).boundaries.find((boundary) => boundary.id === id);
    const { freeBump, crush } = working.corners.frontLeft;
    expect(at('fullCrush')?.tolerance).toBeCloseTo(
      Math.sqrt(freeBump.tolerance! ** 2 + crush.tolerance! ** 2),
      12,
    );
    expect(at('fullCrush', failing.corners.rearRight)?.tolerance).toBeNull();
    expect(at('ride')).toMatchObject({ at: 0, tolerance: 0 });
  });

  it('never loses a piece: what is drawn above ride height covers hard travel or full crush, whichever is more', () => {
    fc.assert(
      fc.property(anyTravel, (travel) => {
        for (const corner of CORNERS) {
          const column = travel.corners[corner];
          const { parts, overlap } = columnShape(column);
          const above = parts.filter((part) => part.id !== 'droop').map(({ from, to }) => ({ from, to }));
          const reach = Math.max(...above.map(({ to }) => to), 0);
          const full = column.freeBump.value + column.crush.value;
          expect(reach).toBeCloseTo(Math.max(column.hardTravel.value, full), 9);
          let covered = Math.min(0, column.freeBump.value);
          for (const { from, to } of above.sort((a, b) => a.from - b.from)) {
            expect(from).toBeLessThanOrEqual(covered + 1e-9);
            covered = Math.max(covered, to);
          }
          if (overlap !== null) expect(overlap.to).toBeGreaterThan(overlap.from - 1e-12);
        }
      }),
      { seed: SEED, numRuns: 200 },
    );
  });
});
