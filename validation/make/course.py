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

# --- Shapes put together of stretches, the shortest in 64 pieces. Where two meet within a piece, the cubic through both
# its ends is off by at most 0.01615·step² of the step in curvature, and its slope by step/12 of it: worked out by trying
# every place of the joint and every place in the piece.


def joint(step, curvature):
    """Bounds of height and slope, and why."""
    return (float(f'{step ** 2 / 60 * curvature:.1e}'), float(f'{step / 12 * curvature:.1e}'),
            f'curvature steps by {curvature:.2g} /m within a piece of {1000 * step:.2g} mm: at most step²/60 of it')


def pieced(id, title, shape, at, sides, bound, slope_bound, reason, source='Geometry of the shape, evaluated with NumPy'):
    where = (source, 'numpy ' + np.__version__, 'validation/make/course.py')
    values = {side: [float(f(s)[0]) for s in at] for side, f in sides.items()}
    slopes = {side: [float(f(s)[1]) for s in at] for side, f in sides.items()}
    write('course', id, f'{title}: height', 'height', 'height', 'm', {'shape': shape, 'at': at}, values,
          ('absolute', bound, reason), where, 'computed', MAKER)
    write('course', f'{id}-slope', f'{title}: slope', 'slope', 'slope', '1', {'shape': shape, 'at': at}, slopes,
          ('absolute', slope_bound, 'slope of the same cubic, one order less'), where, 'computed', MAKER)


def flat(s):
    return 0.0, 0.0


# Ditch crossed at an angle: the right tyres meet it 0.6 m later.
D, L, B, start, lag = 0.45, 3.2, 0.9, 4.0, 0.6


def ditch(s):
    u = s - start
    bank = (L - B) / 2
    if u <= 0 or u >= L:
        return flat(s)
    v = min(u, L - u)
    if v >= bank:
        return -D, 0.0
    slope = -D / 2 * np.pi / bank * np.sin(np.pi * v / bank)
    return -D * np.sin(np.pi * v / bank / 2) ** 2, slope if u < L / 2 else -slope


pieced('ditch', 'Ditch crossed at an angle',
       {'kind': 'ditch', 'side': 'both', 'depth': D, 'length': L, 'bottom': B, 'start': start, 'rightLag': lag},
       [0, 3.9, 4.0, 4.3, 4.6, 5.0, 5.149, 5.3, 5.9, 6.05, 6.4, 7.1, 7.21, 7.5, 7.79, 8.0],
       {'left': ditch, 'right': lambda s: ditch(s - lag)}, *joint(B / 64, D / 2 * (2 * np.pi / (L - B)) ** 2))

# Half-round of half a log, and a round-topped speed ramp of the street, each under a rigid wheel.
for id, title, H, C, r in [('half-round', 'Half a log of 0.2 m under a wheel of 0.42 m', 0.2, 0.4, 0.42),
                           ('half-round-ramp', 'Round-topped street ramp of 0.1 m by 3.7 m', 0.1, 3.7, 0.42)]:
    R = C * C / (8 * H) + H / 2
    arm, deep = R + r, R - H + r
    reach = np.sqrt(arm ** 2 - deep ** 2)
    start = 2.0

    def round_top(s):
        """Height of the wheel by trying every point of the arc: the wheel rests on the one that lifts it most."""
        angle = np.linspace(-np.arcsin(C / 2 / R), np.arcsin(C / 2 / R), 400001)
        x, z = R * np.sin(angle), R * np.cos(angle) - (R - H)
        u = s - start - reach
        near = np.abs(x - u) < r
        lifted = max(0.0, np.max(z[near] + np.sqrt(r * r - (x[near] - u) ** 2) - r)) if near.any() else 0.0
        inside = abs(u) < reach
        return lifted, -u / (lifted + deep) if inside else 0.0

    at = [start + reach * f for f in (-0.5, -0.001, 0.01, 0.2, 0.55, 0.9, 1.0, 1.1, 1.53, 1.97, 2.001, 2.6)]
    pieced(id, title, {'kind': 'half-round', 'side': 'left', 'height': H, 'length': C, 'wheelRadius': r, 'start': start,
                       'rightLag': 0}, at, {'left': round_top, 'right': flat}, 2e-7, 4e-5,
           'arc by 400 001 points, and 128 cubic pieces',
           'Rigid wheel rested on the points of the arc, tried one by one with NumPy')

# Crest: parabolas of the top and of either foot, straight flanks.
H, G, T, F, start = 3.0, 0.28, 7.0, 4.0, 5.0
flank = H / G - F / 2 - T / 4
whole = 2 * (F + flank) + T


def crest(s):
    u = s - start
    if u <= 0 or u >= whole:
        return flat(s)
    v = min(u, whole - u)
    turn = 1 if u < whole / 2 else -1
    if v < F:
        return G * v * v / (2 * F), turn * G * v / F
    if v < F + flank:
        return G * (v - F / 2), turn * G
    w = v - F - flank
    return G * (F / 2 + flank) + G * w - G * w * w / T, turn * (G - 2 * G * w / T)


pieced('crest', 'Crest', {'kind': 'crest', 'height': H, 'grade': G, 'top': T, 'foot': F, 'start': start},
       [0, 4.99, 5.0, 6.3, 8.9, 9.1, 12, 15.9, 16.2, 18, 19.46, 19.5, 21, 22.9, 23.1, 27, 30, 31.2, 33.9, 34.2],
       {'left': crest, 'right': crest}, *joint(min(F, flank) / 64, 2 * G / T))

# Ramp that throws, deck, landing.
H, L, lip, deck, HL, LL, start = 1.1, 5.5, 0.4, 6.0, 0.8, 7.0, 3.0
up, down = 2 * H / L, HL / (LL - lip)


def ramp(s):
    u = s - start
    if u <= 0:
        return flat(s)
    if u < L - lip:
        return up * u * u / (2 * (L - lip)), up * u / (L - lip)
    if u < L:
        return H - up * (L - u) ** 2 / (2 * lip), up * (L - u) / lip
    u -= L
    if u < deck:
        k = np.pi / deck
        return H + (HL - H) * np.sin(k * u / 2) ** 2, (HL - H) / 2 * k * np.sin(k * u)
    u -= deck
    if u < lip:
        return HL - down * u * u / (2 * lip), -down * u / lip
    if u < LL - lip:
        return HL - down * (u - lip / 2), -down
    if u < LL:
        return down * (LL - u) ** 2 / (2 * lip), -down * (LL - u) / lip
    return flat(s)


pieced('ramp-landing', 'Ramp, deck and landing',
       {'kind': 'ramp-landing', 'height': H, 'length': L, 'lip': lip, 'deck': deck, 'landingHeight': HL, 'landingLength': LL,
        'start': start},
       [0, 3, 4.2, 7.9, 8.09, 8.11, 8.3, 8.5, 9.7, 11.4, 14.4, 14.6, 14.89, 14.95, 18.2, 21.05, 21.2, 21.49, 21.6, 25],
       {'left': ramp, 'right': ramp}, *joint(lip / 64, up / lip + up / (L - lip)))

# Washboard, the right side a quarter of a wave behind.
H, S, L, fade, start, phase = 0.035, 0.65, 26.0, 3.0, 4.0, np.pi / 2


def washboard(s, lag=0.0):
    u = s - lag - start
    if u <= 0 or u >= L:
        return flat(s)

    def gain(v):
        c = min(v / fade, 1)
        return 10 * c ** 3 - 15 * c ** 4 + 6 * c ** 5, (30 * c ** 2 - 60 * c ** 3 + 30 * c ** 4) / fade if c < 1 else 0
    (g, dg), (e, de) = gain(u), gain(L - u)
    k = 2 * np.pi / S
    f, df = H / 2 * np.sin(k * u), H / 2 * k * np.cos(k * u)
    return g * e * f, g * e * df + (dg * e - g * de) * f


pieced('washboard', 'Washboard, the right side a quarter of a wave behind',
       {'kind': 'washboard', 'height': H, 'spacing': S, 'length': L, 'fadeIn': fade, 'start': start, 'rightPhase': phase},
       [0, 4.0, 4.5, 5.2, 6.9, 7.05, 11.33, 17.171, 25.0, 27.3, 28.8, 29.9, 30.0, 30.1, 31],
       {'left': washboard, 'right': lambda s: washboard(s, S / 4)}, 1.4e-8, 2e-5,
       '64 cubic pieces a wave; h⁴/384 of the fourth derivative is 2.4e-7 of the half height, and the fade adds a part')

# Measured ground: uneven points, monotone cubic by SciPy, from the mean of both first points.
distance = [12.0, 12.3, 12.9, 13.0, 13.5, 14.25, 15.0, 15.2, 16.1, 17.0, 17.4, 18.0]
left_points = [3.02, 3.04, 3.15, 3.22, 3.2, 3.08, 3.06, 3.06, 2.94, 2.99, 3.05, 3.04]
right_points = [3.0, 3.0, 3.02, 3.09, 3.11, 3.0, 2.97, 2.9, 2.88, 2.98, 3.0, 3.01]
fade = 0.5


def track(points):
    from scipy.interpolate import PchipInterpolator
    curve = PchipInterpolator(distance, points)
    slope = curve.derivative()

    def ground(s):
        if s >= distance[-1] - distance[0]:
            return curve(distance[-1]) - 3.01, 0.0
        c = min(max(s, 0) / fade, 1)
        g, dg = 10 * c ** 3 - 15 * c ** 4 + 6 * c ** 5, (30 * c ** 2 - 60 * c ** 3 + 30 * c ** 4) / fade if c < 1 else 0
        h = curve(distance[0] + s) - 3.01
        return g * h, g * slope(distance[0] + s) + dg * h
    return ground


def joints(points):
    from scipy.interpolate import PchipInterpolator
    curvature = PchipInterpolator(distance, points).derivative(2)
    return max(abs(curvature(x + 1e-9) - curvature(x - 1e-9)) for x in distance[1:-1])


steepest_joint = max(joints(left_points), joints(right_points))
pieced('profile', 'Measured ground of uneven points, faded in over half a metre',
       {'kind': 'profile', 'distance': distance, 'left': left_points, 'right': right_points, 'fadeIn': fade, 'mirrored': False},
       [0, 0.1, 0.3, 0.5, 0.77, 0.9, 0.95, 1.0, 1.2, 2.0, 2.6, 3.1, 3.2, 4.0, 4.4, 5.1, 5.4, 5.7, 6.0, 7.0],
       {'left': track(left_points), 'right': track(right_points)}, *joint(0.01, steepest_joint),
       'SciPy PchipInterpolator, faded in by the quintic')
