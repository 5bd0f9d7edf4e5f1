import { describe, expect, it } from 'vitest';
import { nominal } from '../../src/rig/reading.ts';
import { drawsOf, firstTrials } from '../../src/stance/draws.ts';
import { ochre } from '../jobs/ochre.ts';

describe('the first trials of some draws', () => {
  const whole = drawsOf(ochre, { trials: 128, seed: 3 });
  const few = firstTrials(whole, 5);
  const readings = [ochre.wheelbase, ochre.front.spring.rate, ochre.rear.stop.usableCrush];

  it('are the same sampled rigs, and no others', () => {
    expect(few.trials).toBe(5);
    for (const reading of readings) {
      expect([...few.of(reading)]).toEqual([...whole.of(reading)].slice(0, 6));
      expect([...few.scores(reading)]).toEqual([...whole.scores(reading)].slice(0, 5));
      for (let trial = 0; trial <= 5; trial += 1)
        expect(few.trial(trial)(reading)).toBe(whole.trial(trial)(reading));
    }
  });

  it('begin with the rig as it was read', () => {
    for (const reading of readings) expect(few.trial(0)(reading)).toBe(nominal(reading));
  });
});
