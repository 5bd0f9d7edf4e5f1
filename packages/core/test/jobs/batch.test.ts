import { describe, expect, it } from 'vitest';
import { CORNERS } from '../../src/finding/place.ts';
import { type BatchAnswer, batchFold } from '../../src/jobs/batch.ts';
import { type BatchRequest, batchBench } from '../../src/jobs/batch-bench.ts';
import { rowsOf } from '../../src/jobs/work.ts';
import { asked, must, ochre, rode } from './ochre.ts';

const ledge = { name: 'ledge', shape: ochre.courses.ledge.shape, speed: 4 };
const request = (change: Partial<BatchRequest> = {}): BatchRequest => ({
  rig: ochre,
  setups: ['as-it-is'],
  courses: [ledge],
  trials: 4,
  seed: 1,
  ...change,
});

function batched(change: Partial<BatchRequest> = {}): BatchAnswer {
  const of = request(change);
  const bench = must(batchBench(of));
  const fold = batchFold(of);
  const rows = rowsOf(bench, 0, bench.units);
  for (let unit = 0; unit < bench.units; unit += 1) fold.take(rows, unit * bench.width);
  return fold.finish();
}

describe('a batch', () => {
  it('gives a setup-course the figures that a ride gives it, to the last bit', () => {
    const setups = ['as-it-is', 'soft-stop-bolted-in'];
    const courses = [ledge, { ...ledge, speed: 7 }];
    const { results } = batched({ setups, courses });
    expect(results.map(({ setup, speed }) => [setup, speed])).toEqual(
      setups.flatMap((setup) => courses.map(({ speed }) => [setup, speed])),
    );
    for (const one of results) {
      const ride = rode(
        asked({ setup: one.setup, courseName: 'ledge', course: ledge.shape, speed: one.speed, trials: 4 }),
      );
      for (const corner of CORNERS) {
        const { metalContacts, ...figures } = one.corners[corner];
        const { peakTravel: _, ...ridden } = ride.corners[corner];
        expect(figures).toEqual(ridden);
        expect(metalContacts).toBe(ride.run.corners[corner].contacts.metal);
      }
      expect(one.body).toEqual(ride.body);
      expect(one.status).toBe(ride.run.status);
    }
  });

  it('has no intervals without trials, and says nothing of metal within the readings', () => {
    const [one] = batched({ trials: 0 }).results;
    expect(one.corners.frontLeft.clearance.tolerance).toBeNull();
    expect(one.metalShare).toBeNull();
    expect(one.unfinished).toBe(0);
  });

  it('counts the trials that were given up, and then knows no interval', () => {
    const wall = { kind: 'ledge', side: 'left', height: 3, length: 0.3, start: 2 } as const;
    const [one] = batched({ courses: [{ name: 'wall', shape: wall, speed: 9 }] }).results;
    expect(one.status).toBe('left-validity');
    expect(one.unfinished).toBe(4);
    expect(one.body.rmsAcceleration.tolerance).toBeNull();
    expect(one.metalShare).toBe(1);
  });

  it('drives each course until it is over, slow ones for longer: that is what a unit costs', () => {
    const bench = must(batchBench(request({ courses: [ledge, { ...ledge, speed: 2 }], trials: 0 })));
    const [fast, slow] = [bench.cost(0), bench.cost(1)];
    expect(slow - 1.5).toBeCloseTo(2 * (fast - 1.5), 10);
  });

  it.each([
    [{ setups: ['as-it-is', 'softer'] }, ['ask-unknown-setup']],
    [{ courses: [{ ...ledge, speed: 0 }] }, ['ask-speed-absurd']],
    [
      { setups: ['softer'], courses: [{ ...ledge, speed: Number.NaN }] },
      ['ask-unknown-setup', 'ask-speed-absurd'],
    ],
  ] as const)('says all that is wrong with %j', (change, codes) => {
    const bench = batchBench(request(change));
    if (bench.ok) throw new Error('accepted');
    expect(bench.problems.map(({ code }) => code)).toEqual(codes);
  });
});
