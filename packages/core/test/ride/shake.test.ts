import { describe, expect, it } from 'vitest';
import { sampleCourse } from '../../src/course/track.ts';
import { runRide } from '../../src/ride/run.ts';
import { mustFinish } from './energy.ts';
import { unevenRig } from './invented-rigs.ts';

const track = sampleCourse({
  kind: 'whoops',
  height: 0.26,
  spacing: 4.5,
  count: 3,
  start: 1,
  rightPhase: 0.6,
});
const sitting = { ...unevenRig, seat: { mass: 60, rate: 4e4, damping: 900, ahead: -0.2, left: 0.35 } };
const options = { speed: 9, duration: 2 };

describe('the record of what shakes a seat', () => {
  it.each([
    ['without a sitter', unevenRig],
    ['with a sitter', sitting],
  ])('is what the history says, %s', (_, model) => {
    const run = mustFinish(runRide(model, track, { ...options, historyRate: 1000, shakeRate: 1000 }));
    const { shake, history } = run;
    expect(shake?.rate).toBe(1000);
    expect(shake?.heave).toEqual(history?.bodyAcceleration);
    expect(shake?.pitch).toEqual(history?.pitchAcceleration);
    expect(shake?.roll).toEqual(history?.rollAcceleration);
    expect(shake?.sitter).toEqual(history?.seatAcceleration);
  });

  it('is null unless it is asked for, and changes nothing else of a run', () => {
    const plain = mustFinish(runRide(unevenRig, track, options));
    const recorded = mustFinish(runRide(unevenRig, track, { ...options, shakeRate: 1000 }));
    expect(plain.shake).toBeNull();
    // Each sample asks for the acceleration once more; steps and figures are the same.
    const { evaluations, ...counters } = recorded.counters;
    expect(plain.counters).toMatchObject(counters);
    expect(evaluations).toBe(plain.counters.evaluations);
    expect({ ...recorded, shake: null }).toEqual(plain);
  });
});
