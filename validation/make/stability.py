"""Roll of a rig on a side slope by minimising its potential energy with SciPy, raising one axle by turning points in the
plane, packing down by integrating the two-mass model, and textbook examples.

Run: python3 -B validation/make/stability.py, then biome over validation/checks.
"""
import numpy as np
import scipy
from check_file import write
from scipy.integrate import solve_ivp
from scipy.interpolate import PchipInterpolator
from scipy.optimize import brentq, minimize

MAKER = 'stability.py'
G = 9.80665


# --- A rig in roll ---

def end(mass, sprung, track, spring, spread, tyre, centre, hub, bar, touches, metal, droop, g=G, station=0.44):
    load = sprung * g / 2
    both = lambda value: {'left': value, 'right': value}
    return {
        'halfTrack': track / 2, 'axleMass': mass, 'hubHeight': hub, 'rollCentre': centre, 'tyreRate': tyre,
        'tyreLoad': both(load + mass * g / 2),
        'spring': {'halfStation': spread / 2, 'rate': spring, 'load': both(load)},
        'gas': {'halfStation': 0.5, 'rate': 0, 'load': 0},
        'stop': {'halfStation': station, 'ratio': 0.95, 'touches': both(touches), 'metalAt': both(metal),
                 'crush': [0, 0.02, 0.04], 'force': [0, 2000, 9000], 'metalRate': 2e7},
        'droop': {'halfStation': 0.5, 'at': droop, 'rate': 2e6},
        'barRate': bar,
    }


def rig(front, rear, on_front, on_rear, height, left=0.0):
    """A body that stands `left` of the centre line: each axle carries its own share of that on tyres and springs."""
    model = {'sprungMass': on_front + on_rear, 'sprungLeft': left, 'sprungHeight': height,
             'rearShare': on_rear / (on_front + on_rear), 'ends': {'front': front, 'rear': rear}}
    for axle, mass in ((front, on_front), (rear, on_rear)):
        moment = mass * G * left
        for side, sign in (('left', 1), ('right', -1)):
            axle['tyreLoad'][side] += sign * moment / (2 * axle['halfTrack'])
            axle['spring']['load'][side] += sign * moment / (2 * axle['spring']['halfStation'])
    return model


def turned(angle, point):
    """A point of a body that has rolled right side down: about x forward, y left, z up."""
    c, s = np.cos(angle), np.sin(angle)
    return np.array([c * point[0] - s * point[1], s * point[0] + c * point[1]])


def energy(model, normal, right, q):
    """From points and elements one by one; up is q[1] of a point, the pull goes down and to the right."""
    phi, shares = q[0], (1 - model['rearShare'], model['rearShare'])
    total = 0.0
    hung = np.zeros(2)
    axis = 0.0
    for e, name in enumerate(('front', 'rear')):
        a = model['ends'][name]
        body, rise, roll = q[1 + e], q[3 + 2 * e], q[4 + 2 * e]
        axis += shares[e] * a['rollCentre']
        hung += shares[e] * (turned(roll, (0, a['rollCentre'])) + (0, body))
        axle = turned(roll, (0, a['hubHeight'])) + (0, rise)
        total += a['axleMass'] * (normal * axle[1] + right * axle[0])
        total += a['barRate'] * (roll - phi) ** 2 / 2
        stop = PchipInterpolator(a['stop']['crush'], a['stop']['force'])
        last = a['stop']['crush'][-1]
        for side, sign in (('left', 1), ('right', -1)):
            load = a['tyreLoad'][side] - a['tyreRate'] * (rise + sign * a['halfTrack'] * roll)
            total += max(load, 0) ** 2 / (2 * a['tyreRate'])
            pressed = lambda station: rise - body + sign * station * (roll - phi)
            coil = a['spring']['load'][side] + a['spring']['rate'] * pressed(a['spring']['halfStation'])
            total += max(coil, 0) ** 2 / (2 * a['spring']['rate'])
            stretch = max(-pressed(a['droop']['halfStation']) - a['droop']['at'], 0)
            total += a['droop']['rate'] * stretch ** 2 / 2
            at = pressed(a['stop']['halfStation'])
            crush = max(a['stop']['ratio'] * (at - a['stop']['touches'][side]), 0)
            if crush > 0:
                inside = min(crush, last)
                beyond = crush - inside
                total += stop.integrate(0, inside) + beyond * a['stop']['force'][-1] \
                    + stop.derivative()(last) * beyond ** 2 / 2
            metal = max(a['stop']['ratio'] * (at - a['stop']['metalAt'][side]), 0)
            total += a['stop']['metalRate'] * metal ** 2 / 2
    centre = hung + turned(phi, (model['sprungLeft'], model['sprungHeight'] - axis))
    return total + model['sprungMass'] * (normal * centre[1] + right * centre[0])


SCALE = np.array([1e-2, 1e-3, 1e-3, 1e-3, 1e-3, 1e-3, 1e-3])


def at_rest(model, normal, right, start):
    """Least energy downhill of `start`: coarse by BFGS, then Newton steps on numeric derivatives until it is still."""
    f = lambda u: energy(model, normal, right, u * SCALE)
    u = minimize(f, start / SCALE, method='BFGS', options={'gtol': 1e-7, 'maxiter': 500}).x
    u = minimize(f, u, method='Nelder-Mead', options={'xatol': 1e-9, 'fatol': 1e-13, 'maxiter': 4000, 'maxfev': 4000}).x
    for _ in range(8):
        n, h = len(u), 1e-3
        eye = np.eye(n) * h
        slope = np.array([(f(u + eye[i]) - f(u - eye[i])) / (2 * h) for i in range(n)])
        curve = np.array([[(f(u + eye[i] + eye[j]) - f(u + eye[i] - eye[j]) - f(u - eye[i] + eye[j])
                            + f(u - eye[i] - eye[j])) / (4 * h * h) for j in range(n)] for i in range(n)])
        u = u - np.linalg.solve(curve, slope)
    return u * SCALE


def loads(model, q):
    out = {}
    for e, name in enumerate(('front', 'rear')):
        a = model['ends'][name]
        for side, sign in (('left', 1), ('right', -1)):
            out[name + side.capitalize()] = a['tyreLoad'][side] - a['tyreRate'] * (
                q[3 + 2 * e] + sign * a['halfTrack'] * q[4 + 2 * e])
    return out


def stood(model, q):
    return {'bodyRoll': q[0], 'frontAxleRoll': q[4], 'rearAxleRoll': q[6],
            **{f'{corner} load in MN': load / 1e6 for corner, load in loads(model, q).items()}}


def follow(model, angle, steps=8):
    q = np.zeros(7)
    for k in range(1, steps + 1):
        a = angle * k / steps
        q = at_rest(model, G * np.cos(a), G * np.sin(a), q)
    return q


def first_lift(model, guess):
    """Slope at which the lighter upper tyre carries nothing."""
    base = follow(model, guess[0])

    def load(angle):
        q = at_rest(model, G * np.cos(angle), G * np.sin(angle), base)
        each = loads(model, q)
        return min(each['frontLeft'], each['rearLeft'])
    return brentq(load, *guess, xtol=1e-5)


def trail_rig():
    return rig(end(250, 720, 1.60, 30e3, 0.92, 190e3, 0.46, 0.42, 9000, 0.06, 0.11, 0.09),
               end(240, 610, 1.58, 27e3, 1.00, 170e3, 0.52, 0.42, 0, 0.05, 0.12, 0.10), 720, 610, 0.93)


def uneven_rig():
    return rig(end(260, 650, 1.66, 38e3, 1.05, 220e3, 0.36, 0.40, 0, 0.08, 0.13, 0.11),
               end(230, 700, 1.62, 34e3, 0.98, 210e3, 0.44, 0.40, 12000, 0.07, 0.12, 0.10), 650, 700, 0.88, 0.02)


for name, title, model, angle in (
        ('slope-small', 'A rig on a side slope of 6 degrees, right side down', trail_rig(), 6),
        ('slope-stops', 'A rig on a side slope of 20 degrees, lower stops pressed', trail_rig(), 20),
        ('slope-uneven', 'An uneven rig with a bar behind on a side slope of 18 degrees', uneven_rig(), 18)):
    q = follow(model, np.radians(angle))
    print(name, q, loads(model, q))
    write('stability', name, title, 'settled', 'lean and tyre load', 'rad, MN',
          {'model': model, 'slope': np.radians(angle)}, stood(model, q),
          ('absolute', 2e-6, 'derivatives by differences in the reference: moves to some 1e-7 rad, loads to 1 N'),
          ('Least potential energy (SciPy optimize.minimize, then Newton on differences)', scipy.__version__,
           'validation/make/stability.py'), 'computed', MAKER)

for name, title, model, guess in (
        ('slope-first-lift', 'Side slope at which the first upper wheel of a rig carries nothing', trail_rig(), (0.45, 0.75)),
        ('slope-first-lift-uneven', 'The same of an uneven rig', uneven_rig(), (0.45, 0.8))):
    lift = first_lift(model, guess)
    print(name, np.degrees(lift))
    write('stability', name, title, 'first-lift', 'angle', 'rad', {'model': model}, {'firstLift': lift},
          ('absolute', 2e-4, 'ours is found to 1.5e-4 rad, theirs to 1e-5'),
          ('Least potential energy (SciPy optimize.minimize) and its load followed to zero (optimize.brentq)',
           scipy.__version__, 'validation/make/stability.py'), 'computed', MAKER)

# --- A textbook car in a turn ---

a, K, g = 0.6 * 9.81, 28650.0, 9.81
split = 1556 / (1556 + 671)
stiff = dict(spring=30e3, spread=0.002, tyre=1e9, touches=5, metal=6, droop=5, g=g)
textbook = {
    'sprungMass': 1280, 'sprungLeft': 0, 'sprungHeight': 0.365 + 0.54 * 0.07 + 0.46 * 0.32, 'rearShare': 0.46,
    'ends': {'front': end(140, 1280 * 0.54, 1.46, centre=0.07, hub=0.28, bar=K * split, **stiff),
             'rear': end(180, 1280 * 0.46, 1.46, centre=0.32, hub=0.30, bar=K * (1 - split), **stiff)},
}
book = ('Barton and Fieldhouse, Automotive Chassis Engineering', '2018 (authors and year from memory)',
        'p. 174, the example before 3.18 and eq. (3.18)')
write('stability', 'load-transfer-textbook', 'Load transfer of a textbook car in a turn of 0.6 g', 'load-transfer',
      'force', 'N', {'model': textbook, 'normal': g, 'right': a}, {'front': 1556 + 195 + 158, 'rear': 671 + 760 + 218},
      ('relative', 0.002, 'the book adds three parts rounded to 1 N; its finite lean, sin and cos of it, is ours too'),
      (*book, 'That page was read in an online copy, the one with the roll stiffnesses was not: 28 650 N·m/rad is printed, '
       'its split between the axles is that of the printed roll parts, 1556 and 671 N. Expected is the sum of the printed '
       'parts: the book prints 1919 N for the front, where its own 1556 + 195 + 158 make 1909.'), 'read')
write('stability', 'roll-gradient-textbook', 'Roll gradient of the same car', 'roll-gradient', 'lean per acceleration',
      'rad/(m/s²), rad/g', {'model': textbook}, {'perAcceleration': 0.0194, 'perG': np.radians(10.9)},
      ('relative', 0.003, 'three printed digits: 0.0194 stands for 0.01941, 10.9 for 10.91'),
      (*book, 'The page was read in an online copy.'), 'read')

# --- Definition ---

for ssf in (1.1,):
    write('stability', 'factor-and-tilt', 'Tilt angle of a stiff rig by its static stability factor', 'rigid-slope',
          'angle', 'rad', {'track': 1.6, 'height': 1.6 / (2 * ssf)}, {'slope': np.arctan(ssf)},
          ('relative', 1e-12, 'closed form in double precision on both sides'),
          ('US NHTSA, rulemaking on rollover resistance, chapter V: half the track width ÷ height of the centre of gravity',
           '2000 (year from memory)', 'nhtsa.dot.gov, Rollover/Chapt05', 'The definition was read; the angle is its arctangent.'),
          'computed', MAKER)

# --- One axle raised ---


def raised(total, wheelbase, x, height, r_down, r_up, by):
    """Scales under the axle that stays down, before and after, of a stiff rig turned about its hubs."""
    base = np.sqrt(wheelbase ** 2 - (r_up - r_down) ** 2)
    level = total * (base - x) / base
    turn = np.arcsin((r_up - r_down + by) / wheelbase) - np.arcsin((r_up - r_down) / wheelbase)
    centre = turned(turn, (x, height - r_down))
    hub = turned(turn, (base, r_up - r_down))
    return level, total * (1 - centre[0] / hub[0])


for name, title, args in (
        ('axle-lift', 'Height of the centre of gravity by raising the rear 0.6 m', (2000, 2.7, 1.242, 0.75, 0.4, 0.4, 0.6)),
        ('axle-lift-unlike', 'The same with wheels of unlike size', (1840, 2.58, 1.31, 0.83, 0.41, 0.45, 0.55))):
    level, lifted = raised(*args)
    total, wheelbase, _, height, r_down, r_up, by = args
    if r_down == r_up:
        # The form that was read: h = r + (b − L·R/W)·cot θ with R on the axle that was raised.
        theta = np.arcsin(by / wheelbase)
        read = r_down + (wheelbase * (total - level) / total - wheelbase * (total - lifted) / total) / np.tan(theta)
        assert abs(read - height) < 1e-12
    write('stability', name, title, 'axle-lift', 'height', 'm',
          {'total': total, 'level': level, 'lifted': lifted, 'wheelbase': wheelbase, 'by': by, 'radiusDown': r_down,
           'radiusRaised': r_up}, {'height': height},
          ('absolute', 1e-12, 'closed form in double precision on both sides'),
          ('Method of ISO 10392: one axle raised, the other weighed; points turned in the plane', '2011',
           '6.2; validation/make/stability.py', 'An excerpt of the standard and a lecture note with the formula were read.'),
          'computed', MAKER)

# --- Packing down ---


def driven(ms, mu, k, kt, ct, bump, rebound, ratio, spacing, height, speed):
    """Mean and size of the suspension travel of the two-mass model over a sine, once it has settled."""
    omega = 2 * np.pi * speed / spacing

    def rates(t, y):
        zs, vs, zu, vu = y
        ground, slope = height / 2 * np.sin(omega * t), height / 2 * omega * np.cos(omega * t)
        v = ratio * (vu - vs)
        shock = ratio * (bump if v > 0 else rebound) * v
        force = k * (zu - zs) + shock
        return [vs, force / ms, vu, (kt * (ground - zu) + ct * (slope - vu) - force) / mu]
    period = 2 * np.pi / omega
    until = np.ceil(12 / period) * period
    run = solve_ivp(rates, (0, until), np.zeros(4), rtol=1e-9, atol=1e-11, dense_output=True, max_step=period / 40)
    t = np.linspace(until - 10 * period, until, 20001)[:-1]
    y = run.sol(t)
    travel = y[2] - y[0]
    return travel.mean(), (travel.max() - travel.min()) / 2


for name, title, args in (
        ('packing-down', 'How far a body sinks on washboard, rebound three times bump', (350, 110, 30e3, 200e3, 300, 1500, 4500, 0.9, 0.75, 0.012, 11)),
        ('packing-down-firm', 'The same with firmer bump', (420, 130, 36e3, 240e3, 200, 2500, 4000, 1.0, 0.6, 0.010, 10))):
    sinks, swing = driven(*args)
    print(name, sinks, swing)
    keys = ('sprungMass', 'unsprungMass', 'springRate', 'tyreRate', 'tyreDamping', 'bump', 'rebound', 'shockRatio',
            'spacing', 'height', 'speed')
    write('stability', name, title, 'packing-down', 'travel', 'm', dict(zip(keys, args)), {'sinks': sinks},
          ('relative', 0.05, 'harmonic balance takes the travel as one sine; a shock of two slopes adds overtones'),
          ('Two-mass model with a shock of two slopes over a sine (SciPy solve_ivp)', scipy.__version__,
           'validation/make/stability.py'), 'computed', MAKER)

# --- Flat ride ---

f, L, V, n = 1.2, 2.7, 22.35, 1.5
rear = brentq(lambda r: L / V + n / r - n / f, f, 5)
write('stability', 'flat-ride', 'Rear ride frequency for a flat ride', 'flat-ride', 'frequency', 'Hz',
      {'front': f, 'wheelbase': L, 'speed': V}, {'rear': rear},
      ('relative', 1e-10, 'root to double precision'),
      ('Both ends through their swing number 1.5 at one moment, the rear having started wheelbase ÷ speed later '
       '(SciPy optimize.brentq)', scipy.__version__, 'validation/make/stability.py',
       'That this makes a flat ride is Olley\'s rule of thumb, from memory.'), 'computed', MAKER)
