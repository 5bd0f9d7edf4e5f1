import { describe, expect, it } from 'vitest';
import { seatUnder } from '../../src/elements/seat.ts';
import { rideModels } from '../../src/ride/from-setup.ts';
import { nominal } from '../../src/rig/reading.ts';
import { resolveSetup } from '../../src/rig/setup-resolve.ts';
import { fieldsOf } from '../../src/rigfile/index.ts';
import { NOMINAL_DRAWS } from '../../src/stance/draws.ts';
import { must, problemsOf, rigOf, SMALLEST } from './smallest-rig.ts';

const GRAVITY = 9.80665;
const withDriver = (text: string) => `${SMALLEST}driver: ${text}\n`;
const modelOf = (text: string) =>
  rideModels(must(resolveSetup(rigOf(text), 'as-measured')), NOMINAL_DRAWS)(0);

describe('the driver of a rig', () => {
  it('is nobody where the file says nothing, and the body rides as it did', () => {
    expect(rigOf(SMALLEST).driver).toBeNull();
    expect(modelOf(SMALLEST)).not.toHaveProperty('seat');
  });

  it('left empty is filled, each gap marked', () => {
    const { driver, assumptions } = rigOf(withDriver('{}'));
    expect(driver!.mass).toMatchObject({ value: 85, origin: 'assumed' });
    expect(driver!.cushion).toMatchObject({ sag: null, rate: null, frequency: { value: 4 } });
    expect(assumptions.filter(({ key }) => key.startsWith('driver')).map(({ rule }) => rule)).toEqual([
      'driver-mass',
      'driver-on-seat',
      'seat-place',
      'seat-place',
      'seat-frequency',
      'seat-damping-ratio',
    ]);
  });

  it('sits where he was taped, on what rests on the seat, and stays aboard in the weights', () => {
    const plain = modelOf(SMALLEST);
    const seated = modelOf(
      withDriver(
        '{ mass: 80 kg, onSeat: 0.75, seat: { behindFrontAxle: 1500 mm, left: 400 mm, sag: 1 in } }',
      ),
    );
    expect(seated.sprung.mass).toBe(plain.sprung.mass);
    expect(seated.axles).toEqual(plain.axles);
    expect(seated.seat!.mass).toBeCloseTo(60, 12);
    expect(seated.seat!.ahead).toBeCloseTo(plain.sprung.toFrontAxle - 1.5, 12);
    // Huygens and Steiner: he alone has m·d² about the centre of gravity.
    const { rollInertia, pitchInertia } = plain.sprung;
    expect(rollInertia - seated.sprung.rollInertia).toBeCloseTo(60 * 0.4 ** 2, 9);
    expect(pitchInertia - seated.sprung.pitchInertia).toBeCloseTo(60 * seated.seat!.ahead ** 2, 9);
  });

  it('says by sag, by rate and by frequency the same seat', () => {
    const seat = (text: string) =>
      seatUnder(rigOf(withDriver(`{ mass: 80 kg, onSeat: 1, seat: { ${text} } }`)).driver!, nominal, GRAVITY);
    // A mass that sags by s on a spring swings at √(g/s)/2π: 25 mm, 3.152 Hz; and k = m·g/s.
    const bySag = seat('sag: 25 mm, dampingRatio: 0.2');
    expect(bySag.rate).toBeCloseTo((80 * GRAVITY) / 0.025, 6);
    const frequency = Math.sqrt(GRAVITY / 0.025) / (2 * Math.PI);
    expect(seat(`frequency: ${frequency} Hz, dampingRatio: 0.2`).rate).toBeCloseTo(bySag.rate, 4);
    expect(seat(`rate: ${bySag.rate / 1000} N/mm, dampingRatio: 0.2`).damping).toBeCloseTo(bySag.damping, 6);
    // ζ = c ÷ (2·m·ω)
    expect(bySag.damping / (2 * 80 * 2 * Math.PI * frequency)).toBeCloseTo(0.2, 12);
  });

  it('cannot be said in two ways, nor be where no driver is', () => {
    const found = (text: string) =>
      problemsOf(withDriver(text)).map(({ where, found: typed }) => [where.key, typed]);
    expect(found('{ seat: { sag: 1 in, rate: 30 N/mm } }')).toEqual([['driver.seat.rate', '30 N/mm']]);
    expect(found('{ onSeat: 1.2 }')).toEqual([['driver.onSeat', '1.2']]);
    expect(found('{ mass: 1600 kg }')).toEqual([['driver.mass', '1600 kg']]);
    expect(found('{ seat: { behindFrontAxle: 3 m } }')).toEqual([['driver.seat.behindFrontAxle', '3 m']]);
    expect(found('{ seat: { left: 1 m } }')).toEqual([['driver.seat.left', '1 m']]);
    expect(found('{ seat: { left: -400 mm } }')).toEqual([]);
  });

  it('has fields of his own in the Measure step, whether he is there or not', () => {
    const groups = fieldsOf(SMALLEST).filter(({ path }) => path[0] === 'driver');
    expect(groups.map(({ path }) => path.slice(1).join('.'))).toEqual([
      'mass',
      'onSeat',
      'seat.behindFrontAxle',
      'seat.left',
      'seat.sag',
      'seat.rate',
      'seat.frequency',
      'seat.dampingRatio',
    ]);
    expect(groups.every(({ optional, problems }) => optional && problems.length === 0)).toBe(true);
  });
});
