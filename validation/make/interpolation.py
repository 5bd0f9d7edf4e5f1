"""Reference values for interpolation: SciPy's PchipInterpolator and NumPy's interp.

Run: python3 validation/make/interpolation.py, then biome over validation/checks.
"""
import numpy as np
import scipy
from scipy.interpolate import PchipInterpolator
from check_file import write

MAKER = 'interpolation.py'
SCIPY = ('SciPy', scipy.__version__, 'scipy.interpolate.PchipInterpolator')
REASON = 'double precision; two orders of the same arithmetic differ by a few units in the last place'


def pchip(id, title, x, y):
    x, y = np.asarray(x, float), np.asarray(y, float)
    curve = PchipInterpolator(x, y)
    # Every knot, and five uneven places inside every interval.
    at = np.unique(np.concatenate([x] + [x[:-1] + t * np.diff(x) for t in (0.05, 0.3, 0.5, 0.77, 0.95)]))
    slopes = curve.derivative()(at)
    span, steep = np.abs(y).max(), np.abs(slopes).max()
    write('interpolation', f'pchip-{id}', f'{title}: value', 'monotone-cubic-value',
          'value of the curve', 'of the table', {'x': x, 'y': y, 'at': at}, curve(at),
          ('absolute', float(f'{span * 1e-13:.1e}'), f'1e-13 of the largest value: {REASON}'),
          SCIPY, 'computed', MAKER)
    write('interpolation', f'pchip-{id}-slope', f'{title}: slope', 'monotone-cubic-slope',
          'slope of the curve', 'of the table', {'x': x, 'y': y, 'at': at}, slopes,
          ('absolute', float(f'{steep * 1e-12:.1e}'), f'1e-12 of the steepest slope: {REASON}'),
          SCIPY, 'computed', MAKER)


pchip('even-spacing', 'Stop table with even spacing',
      [0, 0.01, 0.02, 0.03, 0.04, 0.05], [0, 500, 1500, 3500, 7500, 15000])
pchip('uneven-spacing', 'Stop table with uneven spacing',
      [0, 0.002, 0.011, 0.0125, 0.03, 0.034, 0.061, 0.07], [0, 60, 240, 300, 1500, 2100, 6800, 12000])
pchip('flat-parts', 'Table with flat parts and a step',
      [0, 1, 2, 2.5, 4, 5, 5.2, 7], [0, 0, 0, 3, 3, 3, 8, 8])
pchip('turns-back', 'Table that rises, falls and rises again',
      [-2, -1, -0.4, 0, 0.3, 1.5, 3], [-1, 2, 1.5, 1.7, -0.5, -0.6, 4])
pchip('end-rule-limits', 'Table whose end slopes are cut by the end rule',
      [0, 1, 1.2, 3, 3.1, 5], [0, 0.1, 3, 3.2, 7, 7.05])
pchip('three-points', 'Table of three points', [0, 0.3, 1], [0, 2, 2.5])
pchip('two-points', 'Table of two points is a straight line', [0.1, 0.6], [10, 250])

# Straight lines between points, end slopes carried on: the shock's table. NumPy stops at the ends, so the
# table is first lengthened along its own end slopes.
speed = np.array([-2, -1, -0.5, -0.2, -0.05, 0, 0.05, 0.2, 0.5, 1, 2], float)
force = np.array([-4600, -3000, -2000, -1100, -400, 0, 150, 420, 800, 1300, 2300], float)
low = force[0] + (force[1] - force[0]) / (speed[1] - speed[0]) * (-5 - speed[0])
high = force[-1] + (force[-1] - force[-2]) / (speed[-1] - speed[-2]) * (6 - speed[-1])
at = np.array([-4.5, -2, -1.3, -0.5, -0.31, -0.01, 0, 0.001, 0.049, 0.05, 0.11, 0.7, 1.999, 2, 3, 5.5])
write('interpolation', 'straight-shock-table', 'Shock table, straight lines with the end slopes carried on',
      'straight-value', 'force', 'N', {'x': speed, 'y': force, 'at': at},
      np.interp(at, np.r_[-5, speed, 6], np.r_[low, force, high]),
      ('absolute', 1e-9, f'1e-13 of the largest force: {REASON}'),
      ('NumPy', np.__version__, 'numpy.interp, on the table lengthened along its end slopes'), 'computed', MAKER)

# Energy under a stop's curve: SciPy's own integral of the same curve.
x, y = np.array([0, 0.01, 0.02, 0.03, 0.04, 0.05]), np.array([0, 500, 1500, 3500, 7500, 15000], float)
at = np.array([0.004, 0.01, 0.0275, 0.041, 0.05])
whole = PchipInterpolator(x, y).antiderivative()
write('interpolation', 'pchip-energy', 'Energy stored in a stop up to a given crush', 'monotone-cubic-energy',
      'energy', 'J', {'x': x, 'y': y, 'at': at}, whole(at) - whole(0),
      ('absolute', 2e-11, f'1e-13 of the largest energy: {REASON}'),
      ('SciPy', scipy.__version__, 'scipy.interpolate.PchipInterpolator.antiderivative'), 'computed', MAKER)

# A stop without a press test is a power law at eleven points: force and energy against the closed form.
for material, exponent, full, deep in (('rubber', 2.2, 12e3, 0.021), ('foam', 2.6, 9e3, 0.070)):
    share = np.arange(11) / 10
    at = deep * np.array([0.35, 0.65, 1.0])
    write('interpolation', f'power-law-{material}', f'Energy of a stop given as a power law, {material}',
          'monotone-cubic-energy', 'energy', 'J', {'x': deep * share, 'y': full * share ** exponent, 'at': at},
          full * at * (at / deep) ** exponent / (exponent + 1),
          ('relative', 0.005, 'a cubic through eleven points of a power law; its slopes are one order less exact'),
          ('Integral of F = F_full·(x/x_full)ⁿ: F_full·x_full/(n + 1)·(x/x_full)^(n + 1)', 'closed form',
           'validation/make/interpolation.py'), 'computed', MAKER)
