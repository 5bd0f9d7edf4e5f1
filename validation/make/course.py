"""Heights and slopes of courses, worked out with NumPy from their formulas.

Run: python3 -B validation/make/course.py, then biome over validation/checks.
"""
import numpy as np
from check_file import write

MAKER = 'course.py'
SOURCE = 'Terrain formulas of the ride-case/1 model, evaluated with NumPy'
ROUNDING = 'the ground is stored in 64 cubic pieces a wave; a cubic through value and slope is off by h⁴/384 of the ' \
           'fourth derivative, 2.4e-7 of the half height'


def ground(id, title, shape, at, left, right, left_slope, right_slope, height, shortest):
    bound = 4e-7 * height
    write('course', id, f'{title}: height', 'height', 'height', 'm', {'shape': shape, 'at': at},
          {'left': left, 'right': right}, ('absolute', float(f'{bound:.1e}'), ROUNDING),
          (SOURCE, 'numpy ' + np.__version__, 'validation/make/course.py'), 'computed', MAKER)
    slope = 2e-5 * height * 2 * np.pi / shortest
    write('course', f'{id}-slope', f'{title}: slope', 'slope', 'slope', '1', {'shape': shape, 'at': at},
          {'left': left_slope, 'right': right_slope},
          ('absolute', float(f'{slope:.1e}'), 'slope of the same cubic: one order less, about h³/(72√3) of the fourth '
           'derivative'), (SOURCE, 'numpy ' + np.__version__, 'validation/make/course.py'), 'computed', MAKER)


# Whoops, the right track lagging by a third of a wave.
H, S, N, start, phase = 0.35, 5.2, 4, 3.0, 2 * np.pi / 3
at = np.array([0, 2.9, 3.0, 3.4, 4.3, 5.6, 5.601, 8.2, 11.77, 19.0, 23.79, 23.81, 24.5, 25.53, 26.0])


def whoop(s, lag):
    u = s - start - lag * S / (2 * np.pi)
    inside = (u > 0) & (u < N * S)
    k = 2 * np.pi / S
    return np.where(inside, H / 2 * (1 - np.cos(k * u)), 0), np.where(inside, H / 2 * k * np.sin(k * u), 0)


(left, left_slope), (right, right_slope) = whoop(at, 0), whoop(at, phase)
ground('whoops', 'Whoops with the right track a third of a wave behind',
       {'kind': 'whoops', 'height': H, 'spacing': S, 'count': N, 'start': start, 'rightPhase': phase}, at,
       left, right, left_slope, right_slope, H, S)

# Ledge on the left only.
H, L, start = 0.18, 0.25, 6.0
at = np.array([0, 5.99, 6.0, 6.01, 6.1, 6.125, 6.2, 6.249, 6.25, 6.3, 10])
u = at - start
on = (u > 0) & (u < L)
left = np.where(u >= L, H, np.where(on, H / 2 * (1 - np.cos(np.pi * u / L)), 0))
slope = np.where(on, H / 2 * np.pi / L * np.sin(np.pi * u / L), 0)
ground('ledge', 'Ledge under the left tyres', {'kind': 'ledge', 'side': 'left', 'height': H, 'length': L, 'start': start},
       at, left, 0 * at, slope, 0 * at, H, 2 * L)

# A road of three sines that fades in.
waves = [{'n': 0.08, 'common': 0.06, 'commonPhase': 0.4, 'own': 0.01, 'leftPhase': 1.1, 'rightPhase': 2.9},
         {'n': 0.31, 'common': 0.02, 'commonPhase': 5.1, 'own': 0.008, 'leftPhase': 0.2, 'rightPhase': 4.0},
         {'n': 0.9, 'common': 0.004, 'commonPhase': 2.2, 'own': 0.003, 'leftPhase': 3.3, 'rightPhase': 0.7}]
fade = 8.0
at = np.array([0, 0.5, 2.2, 4, 7.99, 8, 8.01, 11.3, 20.25, 33.333, 39.9])


def road(s, side):
    c = np.minimum(s / fade, 1)
    g = c ** 3 * (10 - 15 * c + 6 * c ** 2)
    dg = np.where(c < 1, (30 * c ** 2 - 60 * c ** 3 + 30 * c ** 4) / fade, 0)
    f = sum(w['common'] * np.sin(2 * np.pi * w['n'] * s + w['commonPhase'])
            + w['own'] * np.sin(2 * np.pi * w['n'] * s + w[side]) for w in waves)
    df = sum(2 * np.pi * w['n'] * (w['common'] * np.cos(2 * np.pi * w['n'] * s + w['commonPhase'])
                                   + w['own'] * np.cos(2 * np.pi * w['n'] * s + w[side])) for w in waves)
    return g * f, dg * f + g * df


(left, left_slope), (right, right_slope) = road(at, 'leftPhase'), road(at, 'rightPhase')
ground('waves', 'Road of three sines that fades in', {'kind': 'waves', 'waves': waves, 'fadeIn': fade, 'length': 40}, at,
       left, right, left_slope, right_slope, 0.07, 1 / 0.9)
