"""Reference values for driveshafts: yokes and crosses turned step by step in space, a hinged beam, a search for extremes.

Nothing here knows the closed forms that the program uses: each cross is only the condition that its two pins stay
square, solved from step to step; the two halves of a double joint come from the triangle of its points.

Run: python3 -B validation/make/shaft.py, then biome over validation/checks.
"""
import numpy as np
import scipy
from scipy.interpolate import CubicSpline
from scipy.linalg import eigh
from scipy.optimize import brentq, minimize_scalar
from check_file import write

MAKER = 'shaft.py'
HERE = 'validation/make/shaft.py'


def unit(v):
    return np.asarray(v, float) / np.linalg.norm(v)


def turned(v, axis, angle):
    """Rodrigues, by the matrix exponential of the cross product."""
    k = np.cross(np.eye(3), unit(axis))
    return scipy.linalg.expm(angle * -k) @ v


def square_to(axis):
    return unit(np.cross(axis, [0.31, 0.74, 0.59]))


STEPS = 720


def speeds(axes, twists):
    """Speed of the last shaft over the first, through one turn. axes: directions of drive. twists: of the far yoke of each shaft between, about it."""
    pins = [square_to(axis) for axis in axes]
    frames = [(pin, np.cross(axis, pin)) for axis, pin in zip(axes, pins)]
    at = lambda i, angle: np.cos(angle) * frames[i][0] + np.sin(angle) * frames[i][1]
    turns = np.linspace(0, 2 * np.pi, STEPS + 1)
    last = [None] * len(axes)
    out = []
    for turn in turns:
        angle = turn
        for i in range(1, len(axes)):
            driving = at(i - 1, angle)
            residual = lambda x, i=i, driving=driving: at(i, x) @ driving
            if last[i] is None:
                grid = np.linspace(0, np.pi, 40)
                values = [residual(x) for x in grid]
                k = next(k for k in range(39) if values[k] * values[k + 1] <= 0)
                found = brentq(residual, grid[k], grid[k + 1], xtol=1e-15)
            else:
                found = brentq(residual, last[i] - 0.2, last[i] + 0.2, xtol=1e-15)
            last[i] = found
            angle = found + (twists[i - 1] if i - 1 < len(twists) else 0)
        out.append(last[-1])
    curve = CubicSpline(turns, np.array(out), bc_type='not-a-knot')
    slope = curve.derivative()
    fine = np.linspace(0.5, 2 * np.pi - 0.5, 20001)
    return slope(fine)


def bend(axes):
    return [float(np.arctan2(np.linalg.norm(np.cross(a, b)), a @ b)) for a, b in zip(axes, axes[1:])]


EXACT = ('absolute', 2e-6, 'a cubic spline through 720 steps a turn is differentiated: its error is of the order of the '
         'cube of a step, 7e-7')
SOURCE = ('Crosses turned step by step, SciPy brentq', scipy.__version__, HERE)

# One joint.
for degrees in (7.3, 20, 35):
    a = np.array([1.0, 0, 0])
    s = turned(a, [0, 0.6, 0.8], np.radians(degrees))
    ratio = speeds([a, s], [])
    write('shaft', f'one-joint-{str(degrees).replace(".", "-")}', f'Speed of the output of one universal joint, {degrees}°', 'one-joint',
          'largest and smallest speed ÷ input speed', '1', {'degrees': degrees},
          {'largest': float(ratio.max()), 'smallest': float(ratio.min())}, EXACT, SOURCE, 'computed', MAKER)

# Two joints in space: bends in different planes, unequal, yokes twisted.
CASES = {
    'one-plane': ([1, 0, 0], [-1, 0, 0], [0.9, 0.0, -0.19], 0),
    'out-of-plane': ([1, 0, 0.05], [-1, 0.12, 0.02], [0.88, 0.11, -0.23], 0),
    'twisted-yokes': ([1, 0, 0.05], [-1, 0.12, 0.02], [0.88, 0.11, -0.23], 25),
    'broken-back': ([1, 0, 0.0], [1, 0.0, 0.45], [1.0, 0.0, 0.22], 0),
    'steered-away': ([1, 0.1, 0.0], [1, -0.3, 0.1], [0.8, 0.25, -0.2], -40),
}
for name, (case, pinion, along, twist) in CASES.items():
    s = unit(along)
    a, c = unit(case), unit(pinion)
    a, c = (a if a @ s > 0 else -a), (c if c @ s > 0 else -c)
    ratio = speeds([a, s, c], [np.radians(twist)])
    first, second = bend([a, s, c])
    write('shaft', f'two-joints-{name}', f'Driveshaft of two joints, {name.replace("-", " ")}', 'shaft',
          'operating angles [rad] and pinion speed ÷ case speed, largest − smallest', 'rad, 1',
          {'case': case, 'pinion': pinion, 'along': along, 'twistDegrees': twist, 'caseKind': 'single', 'evenAtDegrees': 0},
          {'caseAngle': first, 'pinionAngle': second, 'pinionUnevenness': float(ratio.max() - ratio.min())},
          ('absolute', 4e-6, 'two spline derivatives of error 7e-7 to 2e-6 each, one subtracted from the other'), SOURCE, 'computed', MAKER)

# Double joint at the case: points of the triangle first, then three crosses in a row.
def ball_for(degrees):
    """Where the ball sits, so that both crosses bend alike at an angle; half way when that is none."""
    if degrees == 0:
        return 0.5
    a, s = np.array([1.0, 0]), np.array([np.cos(np.radians(degrees)), np.sin(np.radians(degrees))])
    def difference(reach):
        t = brentq(lambda t: np.linalg.norm(t * s + reach * a) - 1, 0.01, 1, xtol=1e-15)
        coupling = t * s + reach * a
        return np.arccos(coupling @ a) - np.arccos(coupling @ s)
    return brentq(difference, 0.4, 0.7, xtol=1e-14)


for name, case, pinion, along, even in (
        ('half-way', [1, 0, 0], [0.9, 0.02, -0.21], [0.9, 0.0, -0.24], 0),
        ('even-at-20', [1, 0, 0], [0.9, 0.02, -0.21], [0.9, 0.0, -0.24], 20),
        ('steep', [1, 0, 0], [0.9, 0.0, -0.45], [0.9, 0.0, -0.45], 0)):
    a, s, c = unit(case), unit(along), unit(pinion)
    reach = ball_for(even)  # of the ball from the first cross, coupling of length 1
    first_cross = -reach * a
    gap = lambda t: np.linalg.norm(t * s - first_cross) - 1
    t = brentq(gap, 0.01, 1, xtol=1e-15)
    coupling = unit(t * s - first_cross)
    ratio = speeds([a, coupling, s, c], [0, 0, 0])
    write('shaft', f'double-joint-{name}', f'Double joint at the case, {name.replace("-", " ")}', 'shaft',
          'operating angles [rad] and pinion speed ÷ case speed, largest − smallest', 'rad, 1',
          {'case': case, 'pinion': pinion, 'along': along, 'twistDegrees': 0, 'caseKind': 'double', 'evenAtDegrees': even},
          {'caseAngle': bend([a, s])[0], 'pinionAngle': bend([s, c])[0], 'pinionUnevenness': float(ratio.max() - ratio.min())},
          ('absolute', 4e-6, 'two spline derivatives of error 7e-7 to 2e-6 each, one subtracted from the other'), SOURCE, 'computed', MAKER)

# Peak acceleration at 20° and 1500 rpm, by search.
beta, omega = np.radians(20), 1500 * np.pi / 30
speed = lambda th: omega * np.cos(beta) / (1 - np.sin(beta) ** 2 * np.cos(th) ** 2)
size = lambda th: -abs((speed(th + 1e-6) - speed(th - 1e-6)) / 2e-6 * omega)
found = minimize_scalar(size, bounds=(0.3, 1.2), method='bounded', options={'xatol': 1e-10})
write('shaft', 'peak-acceleration', 'Peak acceleration behind a joint of 20° at 1500 rpm', 'peak-acceleration',
      'largest angular acceleration of the output', 'rad/s²', {'degrees': 20, 'rpm': 1500}, float(-found.fun),
      ('relative', 1e-6, 'central difference of a smooth speed'),
      ('SciPy minimize_scalar on the speed of the output', scipy.__version__, HERE,
       'Khurmi and Gupta, Theory of Machines, print 3090 for the same joint with the usual approximation (from memory)'),
      'computed', MAKER)

# Whirl: bending of a hinged tube by finite elements.
def hinged(length, outside, wall, modulus, density, elements=24):
    inside = outside - 2 * wall
    area, second = np.pi / 4 * (outside ** 2 - inside ** 2), np.pi / 64 * (outside ** 4 - inside ** 4)
    h = length / elements
    k = modulus * second / h ** 3 * np.array([[12, 6 * h, -12, 6 * h], [6 * h, 4 * h * h, -6 * h, 2 * h * h],
                                              [-12, -6 * h, 12, -6 * h], [6 * h, 2 * h * h, -6 * h, 4 * h * h]])
    m = density * area * h / 420 * np.array([[156, 22 * h, 54, -13 * h], [22 * h, 4 * h * h, 13 * h, -3 * h * h],
                                             [54, 13 * h, 156, -22 * h], [-13 * h, -3 * h * h, -22 * h, 4 * h * h]])
    size = 2 * (elements + 1)
    K, M = np.zeros((size, size)), np.zeros((size, size))
    for e in range(elements):
        K[2 * e:2 * e + 4, 2 * e:2 * e + 4] += k
        M[2 * e:2 * e + 4, 2 * e:2 * e + 4] += m
    free = [i for i in range(size) if i not in (0, size - 2)]
    return float(np.sqrt(eigh(K[np.ix_(free, free)], M[np.ix_(free, free)], eigvals_only=True)[0]))


for name, tube in (('steel', (1.2, 0.0762, 0.0021, 206e9, 7850)), ('aluminium', (1.45, 0.1016, 0.003, 69e9, 2700))):
    length, outside, wall, modulus, density = tube
    write('shaft', f'whirl-{name}', f'Whirling speed of a hinged {name} tube', 'whirl', 'first bending frequency', 'rad/s',
          {'length': length, 'outside': outside, 'wall': wall, 'modulus': modulus, 'density': density}, hinged(*tube),
          ('relative', 1e-6, '24 cubic beam elements: relative error of the first mode about (π/24)⁴/1440, 2e-7'),
          ('Beam elements in NumPy, SciPy eigh', scipy.__version__, HERE), 'computed', MAKER)

# A printed table: second joint angle that leaves as much unevenness as 7.3° alone, 1500 rpm row.
write('shaft', 'two-joint-table', 'Second joint angle of a two-joint line, 1500 rpm row of a printed table', 'cancelling-pairs',
      'single joint as uneven as both', '°',
      {'first': list(range(10)), 'second': [7.3, 7.4, 7.6, 7.9, 8.3, 8.9, 9.5, 10.1, 10.8, 11.6]}, [7.3] * 10,
      ('absolute', 0.12, 'angles are printed to a tenth: the second by ± 0.05 at up to 1.6 times its weight, the 7.3 by ± 0.05'),
      ('Engineers Edge, design guidelines for drive shaft installation angle', 'page as stored, read 2026',
       'table "Between joint angles for two-joint system", row 1500 rpm',
       'read in an excerpt; the page refers to SAE AE-7, section 3.1.1, which was not opened'), 'read')
