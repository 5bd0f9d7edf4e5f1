"""Axles flexed to their first contact, and the ramp, by least potential energy with SciPy.

Ours balances forces at each roll; here the heave is that of least energy, and the moment is the slope of that energy.
Run: python3 -B validation/make/flex.py, then biome over validation/checks.
"""
import numpy as np
from check_file import write
from scipy.interpolate import PchipInterpolator
from scipy.optimize import brentq, minimize_scalar

MAKER = 'flex.py'
GRAVITY = 9.80665
FILL = {'spring.rate': 30e3, 'spring.spread': 0.9, 'shock.spread': 1.1, 'stop.gap': 0.06, 'stop.spread': 0.88,
        'stop.usableCrush': 0.04, 'track': 1.6}
SOURCE = ('SciPy', '1.17.1', 'optimize.minimize_scalar, optimize.brentq')
TOLERANCE = ('absolute', 2e-5, 'least energy is flat: its place is found to about 1e-6 m, so an angle to some 1e-6 rad')


class Axle:
    """Coils that cannot pull, stops on both sides; the side that goes up is the positive one."""

    def __init__(self, **given):
        self.of = {**FILL, **given}
        free, ride = given.get('spring.freeLength'), given.get('spring.rideLength')
        self.loose = free - ride if free else 10.0
        crush = self.of['stop.usableCrush']
        inside = PchipInterpolator([0, crush / 2, crush], [0, 2000, 9000]).antiderivative()
        # Past its table a stop only goes on pushing: no answer here lies there.
        self.stop = lambda by: inside(min(by, crush)) + 9000 * max(0.0, by - crush) + 1e6 * max(0.0, by - crush) ** 2

    def energy(self, heave, roll):
        total = 0.0
        for way in (1, -1):
            z = heave + way * self.of['spring.spread'] / 2 * np.sin(roll)
            rate = self.of['spring.rate']
            total += rate * z * z / 2 if z > -self.loose else rate * self.loose * (-z - self.loose / 2)
            crush = heave + way * self.of['stop.spread'] / 2 * np.sin(roll) - self.of['stop.gap']
            total += self.stop(crush) if crush > 0 else 0.0
        return total

    def least(self, roll):
        found = minimize_scalar(lambda heave: self.energy(heave, roll), bounds=(-0.3, 0.3), method='bounded',
                                options={'xatol': 1e-13})
        return found.x, found.fun

    def heave(self, roll):
        return self.least(roll)[0]

    def moment(self, roll, step=1e-4):
        return (self.least(roll + step)[1] - self.least(roll - step)[1]) / (2 * step)

    def droop_at(self, spread, roll):
        return -(self.heave(roll) - spread / 2 * np.sin(roll))

    def until_shock_open(self):
        left = self.of['shock.extendedLength'] - self.of['shock.rideLength']
        return brentq(lambda roll: self.droop_at(self.of['shock.spread'], roll) - left, 0.01, 0.5, xtol=1e-12)

    def until_stop_used(self):
        end = self.of['stop.gap'] + self.of['stop.usableCrush']
        return brentq(lambda roll: self.heave(roll) + self.of['stop.spread'] / 2 * np.sin(roll) - end, 0.05, 0.5,
                      xtol=1e-12)

    def wheels(self, roll):
        half = self.of['track'] / 2 * np.sin(roll)
        return {'angle': roll, 'bump': self.heave(roll) + half, 'droop': half - self.heave(roll)}


def readings(**ends):
    return {f'{end}.{key}': value for end, given in ends.items() for key, value in given.items()}


# Without lengths a coil goes loose where its load ends; these never do.
HELD = {'spring.freeLength': 1.3, 'spring.rideLength': 0.3}
FAR = {'contacts.sump.gap': 0.5, **HELD}
OPEN = {**FAR, 'shock.rideLength': 0.5, 'shock.extendedLength': 0.6, 'stop.gap': 0.4}
axle = Axle(**OPEN)
write('flex', 'shock-open', 'Axle rolled until the low shock is open', 'flex', 'roll of the axle, travel of its wheels',
      'rad, m', {'end': 'front', 'readings': readings(front=OPEN)}, axle.wheels(axle.until_shock_open()), TOLERANCE,
      SOURCE, 'computed', MAKER)

LOOSE = {**FAR, 'shock.rideLength': 0.5, 'shock.extendedLength': 0.66, 'stop.gap': 0.4, 'spring.freeLength': 0.38,
         'spring.rideLength': 0.3}
axle = Axle(**LOOSE)
write('flex', 'coil-loose', 'The same, its low coil loose before', 'flex', 'roll of the axle, travel of its wheels',
      'rad, m', {'end': 'front', 'readings': readings(front=LOOSE)}, axle.wheels(axle.until_shock_open()), TOLERANCE,
      SOURCE, 'computed', MAKER)

USED = {**FAR, 'spring.rate': 60e3}
HEAVY = {'measured.cornerMass.rearLeft': 1500, 'measured.cornerMass.rearRight': 1500}
axle = Axle(**USED)
write('flex', 'stop-used-up', 'Axle rolled until its stop is crushed to the limit', 'flex',
      'roll of the axle, travel of its wheels', 'rad, m', {'end': 'rear', 'readings': {**readings(rear=USED), **HEAVY}},
      axle.wheels(axle.until_stop_used()), TOLERANCE, SOURCE, 'computed', MAKER)

STIFF = {**FAR, 'spring.rate': 90e3, 'stop.gap': 0.4}
front, rear = Axle(**STIFF), Axle(**{**STIFF, 'spring.rate': 70e3})
lifting = 420 * GRAVITY * 1.6
twist = sum(brentq(lambda roll: one.moment(roll) - lifting, 0.01, 0.6, xtol=1e-12) for one in (front, rear))
write('flex', 'ramp', 'Ramp of 20 degrees until the lighter low tyre lifts', 'ramp', 'twist, ramp index over 1000',
      'rad, 1', {'readings': readings(front=STIFF, rear={**STIFF, 'spring.rate': 70e3})},
      {'twist': twist, 'index': 1.6 * np.sin(twist) / np.sin(np.radians(20)) / 2.6}, TOLERANCE, SOURCE, 'computed', MAKER)
