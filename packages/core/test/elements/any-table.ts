import fc from 'fast-check';

/** Force tables as a press or a dynamometer could give them. Invented: no expectation rests on the numbers. */

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

export interface Table {
  readonly x: readonly number[];
  readonly y: readonly number[];
}

/** Force against crush: from zero, rising. */
export const anyStop: fc.Arbitrary<Table> = fc
  .array(fc.tuple(between(0.002, 0.02), between(20, 6000)), { minLength: 1, maxLength: 8 })
  .map((rows) => {
    const x = [0];
    const y = [0];
    for (const [crush, force] of rows) {
      x.push(x[x.length - 1] + crush);
      y.push(y[y.length - 1] + force);
    }
    return { x, y };
  });

/** Force against speed: through zero, never falling, so that it always opposes motion. */
export const anyShock: fc.Arbitrary<Table> = fc
  .tuple(
    fc.array(fc.tuple(between(0.05, 1), between(0, 1500)), { minLength: 1, maxLength: 5 }),
    fc.array(fc.tuple(between(0.05, 1), between(0, 1500)), { minLength: 1, maxLength: 5 }),
  )
  .map(([rebound, compression]) => {
    const half = (rows: readonly (readonly [number, number])[]) => {
      let speed = 0;
      let force = 0;
      return rows.map(([v, f]): [number, number] => {
        speed += v;
        force += f;
        return [speed, force];
      });
    };
    const points = [
      ...half(rebound)
        .reverse()
        .map(([v, f]) => [-v, -f]),
      [0, 0],
      ...half(compression),
    ];
    return { x: points.map(([v]) => v), y: points.map(([, f]) => f) };
  });
