import { describe, expect, it } from 'vitest';
import { FeltGrounds } from '../../src/jobs/felt-ground.ts';
import { FULL_CRUSHES, LIFE_SLOPES, type StopLife, stopLife } from '../../src/jobs/stop-life.ts';
import { rideModels } from '../../src/ride/from-setup.ts';
import { runRide } from '../../src/ride/run.ts';
import { resolveSetup } from '../../src/rig/setup-resolve.ts';
import { NOMINAL_DRAWS } from '../../src/stance/draws.ts';
import { lifeText } from '../../src/words/stop-life.ts';
import { must, ochre } from './ochre.ts';

const setup = must(resolveSetup(ochre, 'soft-stop-seat-down'));
const model = rideModels(setup, NOMINAL_DRAWS)(0);
const lifeOf = (name: string, speed: number): StopLife =>
  stopLife(model, setup, 'front', { name, course: ochre.courses[name].shape, speed }, new FeltGrounds());

describe('how long a stop lasts', () => {
  it('of a drop is one deep crush and smaller ones: Miner by hand', () => {
    const life = lifeOf('drop', 1);
    const grounds = new FeltGrounds();
    const run = runRide(model, grounds.of(ochre.courses.drop.shape, setup), { speed: 1, duration: 3 });
    const peak = Math.max(run.corners.frontLeft.peakCrush, run.corners.frontRight.peakCrush);
    const usable = setup.ends.front.stop.usableCrush.value;
    const deepest = LIFE_SLOPES.map((slope) => (peak / usable) ** slope);
    expect(life.pass).toBeNull();
    expect(life.hits).toBeGreaterThan(0);
    // The first crush is a whole loop; rebounds add to it, each less than the one before.
    expect(life.fullCrushes.most).toBeGreaterThan(0.99 * Math.max(...deepest));
    expect(life.fullCrushes.most).toBeLessThan(life.hits * Math.max(...deepest) * 1.01);
    expect(life.fullCrushes.least).toBeGreaterThan(0.99 * Math.min(...deepest));
    expect(life.passes.least).toBeCloseTo(FULL_CRUSHES.least / life.fullCrushes.most, 6);
    expect(life.passes.most).toBeCloseTo(FULL_CRUSHES.most / life.fullCrushes.least, 6);
  });

  it('is shorter the faster the same ground is driven', () => {
    const [slow, fast] = [lifeOf('whoops', 6.8), lifeOf('whoops', 7.4)];
    expect(fast.fullCrushes.most).toBeGreaterThan(slow.fullCrushes.most);
    expect(fast.passes.least ?? Infinity).toBeLessThan(slow.passes.least ?? Infinity);
    expect(fast.pass).toBeGreaterThan(0);
  });

  it('has no end where the stop is never touched', () => {
    const life = lifeOf('flat', 9);
    expect(life).toMatchObject({
      hits: 0,
      fullCrushes: { least: 0, most: 0 },
      passes: { least: null, most: null },
    });
    expect(lifeText(life, 'shop')).toBe('flat: the stop is not touched.');
  });

  it('is told in hits a mile, full crushes, and when to press it again', () => {
    expect(lifeText(lifeOf('whoops', 7.4), 'shop')).toMatch(
      /^whoops: [\d.]+ hits a mile, worth [\d.e-]+ to [\d.e-]+ full crushes; at 10 000 to 100 000 .* worn after .* to .*\. Press it again after .*\.$/,
    );
    expect(lifeText(lifeOf('drop', 1), 'metric')).toMatch(/^drop: [\d.]+ hits a drop, worth .* drops/);
  });
});
