"""Force laws, worked out from their equations with SciPy and NumPy, or read from tables of closed forms.

Run: python3 -B validation/make/elements.py, then biome over validation/checks.
"""
import numpy as np
import scipy
from check_file import write
from scipy.integrate import quad, solve_ivp
from scipy.interpolate import PchipInterpolator
from scipy.optimize import brentq, minimize_scalar

MAKER = 'elements.py'
SCIPY = f'scipy {scipy.__version__}'
NUMPY = f'numpy {np.__version__}'
HERE = 'validation/make/elements.py'
BERG = 'Berg, Vehicle System Dynamics 30 (1998) 197'
ROUNDED = ('relative', 1e-5, 'printed to six digits')


def check(id, title, evaluator, quantity, unit, inputs, expected, tolerance, source, provenance='computed'):
    write('elements', id, title, evaluator, quantity, unit, inputs, expected, tolerance, source, provenance,
          MAKER if provenance == 'computed' else None)


# --- Friction of a press loop ---------------------------------------------------------------------------------------

def berg_path(limit, half, turns, start=0.0):
    """Force at each turning point: the branch as a differential equation in travel, whose slope is limit/half where the
    motion turns and falls with the square of the room that is left."""
    forces, x, force = [], 0.0, start
    for turn in turns:
        way = np.sign(turn - x)
        room = 1 - way * force / limit

        def slope(_, f):
            return way * (limit / half) * ((1 - way * f / limit) / room) ** 2
        force = solve_ivp(slope, [0, abs(turn - x)], [force], method='DOP853', rtol=1e-12, atol=1e-12).y[0, -1]
        forces.append(force)
        x = turn
    return forces


LIMIT, HALF = 100.0, 1e-3
TURNS = [0.004, 0.001, 0.0025, 0.0022, 0.009, -0.003, -0.002, 0.02]
check('friction-path', 'Friction branch through eight reversals', 'friction-path', 'force', 'N',
      {'limit': LIMIT, 'halfTravel': HALF, 'turns': TURNS}, berg_path(LIMIT, HALF, TURNS),
      ('absolute', 1e-7, 'tolerance of the integrator'),
      ('The branch as a differential equation in travel, integrated by SciPy', SCIPY, HERE,
       f'the law is {BERG}, from memory'))

AMPLITUDES = [0.0005, 0.001, 0.002, 0.005]
check('friction-amplitude', 'Friction branch: force at the ends of a steady loop', 'friction-amplitude', 'force', 'N',
      {'limit': LIMIT, 'halfTravel': HALF, 'amplitudes': AMPLITUDES}, [28.0776, 41.4214, 56.1553, 74.1657],
      ('relative', 2e-6, 'printed to six digits'), (BERG, '1998', 'closed form of the steady state'), 'from memory')
check('friction-amplitude-settled', 'Friction branch: force after two hundred cycles from rest', 'friction-amplitude',
      'force', 'N', {'limit': LIMIT, 'halfTravel': HALF, 'amplitudes': AMPLITUDES},
      [berg_path(LIMIT, HALF, [x, -x] * 200 + [x])[-1] for x in AMPLITUDES],
      ('relative', 1e-8, 'tolerance of the integrator; from rest it settles to this in 200 cycles'),
      ('The branch as a differential equation in travel, integrated by SciPy', SCIPY, HERE))
check('friction-energy', 'Friction branch: energy lost in a steady loop', 'friction-energy', 'energy', 'J',
      {'limit': LIMIT, 'halfTravel': HALF, 'amplitudes': AMPLITUDES},
      [0.010683, 0.0474506, 0.180539, 0.84228], ROUNDED, (BERG, '1998', 'area of the steady loop'), 'from memory')


# --- Viscous branch --------------------------------------------------------------------------------------------------

MAXWELL = {'rate': 200e3, 'damping': 500.0}
check('maxwell-moduli', 'Viscous branch at 5 Hz', 'maxwell-moduli', 'rate', 'N/m', {**MAXWELL, 'frequency': 5},
      {'storage': 1226.14, 'loss': 15611.66}, ROUNDED,
      ("Maxwell's element under a sine", 'any text on viscoelasticity', 'storage and loss modulus'), 'from memory')
check('maxwell-energy', 'Viscous branch: energy lost in a sine of 5 mm at 5 Hz', 'maxwell-energy', 'energy', 'J',
      {**MAXWELL, 'frequency': 5, 'amplitude': 0.005}, 1.22614, ROUNDED,
      ("Maxwell's element under a sine", 'any text on viscoelasticity', 'π·loss modulus·amplitude²'), 'from memory')


def maxwell_run(rate, damping, amplitude, frequency, cycles):
    w = 2 * np.pi * frequency
    run = solve_ivp(lambda t, y: [rate / damping * (amplitude * np.sin(w * t) - y[0]),
                                  rate * (amplitude * np.sin(w * t) - y[0]) * amplitude * w * np.cos(w * t)],
                    [0, cycles / frequency], [0, 0], method='DOP853', rtol=1e-11, atol=1e-14,
                    t_eval=[(cycles - 1) / frequency, cycles / frequency])
    return run.y[1, 1] - run.y[1, 0]


check('maxwell-settled', 'Viscous branch: work of the fortieth cycle from rest', 'maxwell-energy', 'energy', 'J',
      {'rate': 80e3, 'damping': 2600.0, 'frequency': 3.5, 'amplitude': 0.012}, maxwell_run(80e3, 2600.0, 0.012, 3.5, 40),
      ('relative', 1e-7, 'tolerance of the integrator'), ('SciPy solve_ivp', SCIPY, HERE))
check('combined-loop', 'Friction and viscous branch together: energy lost in a sine of 5 mm at 5 Hz', 'combined-loop',
      'energy', 'J', {'limit': LIMIT, 'halfTravel': HALF, **MAXWELL, 'frequency': 5, 'amplitude': 0.005},
      0.84228 + 1.22614, ROUNDED, (BERG + ', and Maxwell', '1998', 'parallel branches lose their sum'), 'from memory')


# --- Two readings of a stop become its branches ----------------------------------------------------------------------

def stop_case(id, title, crush, force, usable, hysteresis, factor):
    press = PchipInterpolator(crush, force)
    half = usable / 50

    def share(x, limit, turned=None):
        if turned is None:
            return limit * x / (half + x)
        f0, d = share(turned, limit), turned - x
        return f0 - d * (limit + f0) / (half * (1 + f0 / limit) + d)

    def lost(limit):
        points = [p for p in crush if 0 < p < usable] + [usable - 3 * half, half]
        back = quad(lambda x: press(x) / (1 + share(x, limit)) * (1 + share(x, limit, usable)), 0, usable,
                    points=sorted(points), epsrel=1e-11, limit=500)[0]
        return 1 - back / press.integrate(0, usable)
    limit = brentq(lambda a: lost(a) - hysteresis, 1e-6, 0.94, xtol=1e-12)
    work = press.integrate(0, usable)
    # k such that the branch at 1 m/s, c·v·(1 − exp(−k·x/(c·v))) with c = k·usable, takes (factor − 1) of the work.
    rate = brentq(lambda k: quad(lambda x: k * usable * (1 - np.exp(-x / usable)), 0, usable)[0] - (factor - 1) * work,
                  1, 1e8, xtol=1e-9)
    check(id, title, 'stop-loss', 'friction share, rate, damping', '1, N/m, N·s/m',
          {'crush': crush, 'force': force, 'usableCrush': usable, 'hysteresis': hysteresis, 'dynamicFactor': factor},
          {'limit': limit, 'rate': rate, 'damping': rate * usable},
          ('relative', 2e-4, 'ours integrates the loop in 128 even pieces, which is good to 1e-4'),
          ('Loop integrated and solved by SciPy (PchipInterpolator, quad, brentq)', SCIPY, HERE))


stop_case('stop-loss-rubber', 'A rubber stop that loses 30 % and is 25 % harder when hit', [0, .005, .010, .015, .021],
          [0, 410, 1970, 4780, 10000], 0.021, 0.30, 1.25)
stop_case('stop-loss-foam', 'A foam stop that loses 18 % and is 40 % harder when hit', [0, .02, .035, .05, .06, .07],
          [0, 350, 900, 2400, 4700, 9000], 0.07, 0.18, 1.40)


# --- Gas ---------------------------------------------------------------------------------------------------------------

GAS = {'area': np.pi * 0.0508 ** 2 / 4, 'pressure': 1e6, 'column': 0.1}
STROKES = [0.02, 0.04, 0.06, 0.08]
THERMO = ('Polytropic change of state', 'any thermodynamics text', 'p·Vⁿ constant')
for n, expected in [(1, [2584.88, 3514.96, 5375.13, 10955.6]), (1.3, [2778.06, 4131.10, 7140.70, 17882.8]),
                    (1.4, [2845.38, 4358.37, 7845.61, 21041.3])]:
    check(f'gas-force-{n}', f'Gas stop, bore 50.8 mm, 10 bar, index {n}: force', 'gas-force', 'force', 'N',
          {**GAS, 'index': n, 'strokes': STROKES}, expected, ROUNDED, THERMO, 'from memory')
check('gas-rate', 'The same at 40 mm, three indices: rate', 'gas-rate', 'rate', 'N/m',
      {**GAS, 'indices': [1, 1.3, 1.4], 'stroke': 0.04}, [62006, 93957, 106487], ROUNDED, THERMO, 'from memory')
check('gas-work', 'The same to 60 mm, three indices: work', 'gas-work', 'energy', 'J',
      {**GAS, 'indices': [1, 1.3, 1.4], 'stroke': 0.06}, [192.212, 223.087, 234.726], ROUNDED, THERMO, 'from memory')
check('gas-curve', 'The same as a press curve, index 1.3', 'gas-curve', 'force', 'N',
      {**GAS, 'index': 1.3, 'stroke': 0.085, 'at': [0.002, 0.01, 0.033, 0.05, 0.0712, 0.085]},
      [GAS['area'] * (1101325 * (0.1 / (0.1 - x)) ** 1.3 - 101325) for x in [0.002, 0.01, 0.033, 0.05, 0.0712, 0.085]],
      ('relative', 1e-3, 'what the curve promises'), (THERMO[0], NUMPY, HERE))
check('gas-warm', 'Charge of 10 bar at 20 °C when at 100 °C: absolute pressure', 'gas-warm', 'ratio', '1',
      {'pressure': 1e6, 'from': 20, 'to': 100}, 373.15 / 293.15, ('relative', 1e-12, 'rounding'),
      ('Gay-Lussac', NUMPY, 'p ∝ T at constant volume'))
check('rod-force', 'Gas force of a shock: pressure over rod area', 'rod-force', 'force', 'lbf',
      {'rods': [0.5, 0.625, 0.875, 1.0], 'pressures': [150, 200]},
      [[29, 39], [46, 61], [90, 120], [118, 157]], ('absolute', 0.55, 'table rounded to whole pounds'),
      ('Pressure times area, inches and pounds', 'table of trade notes', 'rounded by hand'), 'from memory')

VENT2 = np.pi * 1e-6
NOZZLE = ('Compressible flow through a nozzle', 'any gas dynamics text', 'choked and subcritical mass flow',
          'the choked form was read in an open reference on pressurised tanks')
check('vent-flow', 'Vent of 2 mm at 20 °C: choked from 3 bar, contracted, and 120 kPa to outside', 'vent-flow',
      'mass flow', 'kg/s', {'area': VENT2, 'temperature': 293.15,
                            'cases': [[1, 3e5, 101325], [0.62, 3e5, 101325], [1, 120e3, 101325]]},
      [2.22468e-3, 1.37930e-3, 6.61863e-4], ROUNDED, NOZZLE, 'from memory')
check('vent-critical', 'Pressure ratio at which a vent chokes', 'vent-critical', 'ratio', '1', {}, 0.528282,
      ('absolute', 5e-7, 'printed to six digits'), NOZZLE, 'from memory')
check('vent-pressure', 'Vent of 8 mm, face of 50 mm, 1 m/s, air taken as incompressible', 'vent-pressure', 'pressure', 'Pa',
      {'area': np.pi * 16e-6, 'discharge': 0.62, 'faceArea': np.pi * 0.05 ** 2 / 4, 'speed': 1}, 2389.6,
      ('relative', 1e-4, 'printed to five digits'), ('Bernoulli and a contracted jet', 'any text on fluids', 'Δp = ρ/2·w²'),
      'from memory')
check('vent-blow-down', 'Volume of 50 cm³ from 4 to 2 bar through 2 mm', 'vent-blow-down', 'time', 's',
      {'area': VENT2, 'discharge': 0.62, 'volume': 50e-6, 'temperature': 293.15, 'from': 4e5, 'to': 2e5}, 0.089580,
      ROUNDED, ('Isothermal choked blow-down', 'closed form', 'p = p₀·exp(−t/τ)'), 'from memory')


# --- Shock ---------------------------------------------------------------------------------------------------------------

check('damping-ratio', 'Corner of 370 kg on 26 N/mm: 0.25 and 0.5 of critical at 10 in/s', 'damping-ratio', 'force', 'lbf',
      {'sprungMass': 370, 'rateAtAxle': 26e3, 'ratios': [0.25, 0.5]}, [89, 177],
      ('absolute', 0.6, 'rounded to whole pounds'), ('Definition of the damping ratio', 'worked example', 'rounded by hand'),
      'from memory')
SPEED, FORCE = np.array([-2, -0.5, -0.05, 0.05, 0.5, 2]), np.array([-1900, -700, -150, 60, 320, 900])
AT = np.array([-3, -1, -0.05, -0.01, -0.004, 0, 0.0025, 0.01, 0.03, 0.05, 0.7, 2.5])
knots = np.insert(SPEED, 3, 0.0)
table = np.insert(FORCE, 3, 0.0)
carried = np.interp(AT, knots, table)
carried = np.where(AT > 2, 900 + (AT - 2) * 580 / 1.5, np.where(AT < -2, -1900 + (AT + 2) * 1200 / 1.5, carried))
check('seal-friction', 'Shock table with 45 N of seal friction', 'seal-friction', 'force', 'N',
      {'speed': SPEED, 'force': FORCE, 'friction': 45, 'at': AT}, carried + 45 * np.clip(AT / 0.01, -1, 1),
      ('absolute', 1e-9, 'straight lines: rounding'), ('NumPy interp and clip', NUMPY, HERE))
# One push by hand: through the reading, half its slope beyond 10 in/s.
V, PUSH, PULL, CHARGE, SEALS = 0.08, 780.0, 60.0, 540.0, 35.0
compression, rebound = PUSH - CHARGE - SEALS, PULL + CHARGE - SEALS
at = np.array([-1.5, -0.254, -0.08, -0.03, 0.02, 0.08, 0.254, 2])
slope = np.where(at > 0, compression, rebound) / V
check('hand-push', 'One push by hand of 780 N in and 60 N out against 540 N of gas and 35 N of seals', 'hand-push', 'force',
      'N', {'speed': V, 'push': PUSH, 'pull': PULL, 'gas': CHARGE, 'friction': SEALS, 'at': at},
      np.sign(at) * slope * (np.minimum(abs(at), 0.254) + 0.5 * np.maximum(0, abs(at) - 0.254)),
      ('absolute', 1e-8, 'straight lines: rounding'), ('Balance of forces at the shaft', NUMPY, HERE))


# --- Tyre ----------------------------------------------------------------------------------------------------------------

check('tyre-by-size', 'Tyre rate by size and pressure', 'tyre-by-size', 'rate', 'N/m',
      {'sizes': [[0.205, 0.55, 16, 220e3], [0.315, 0.75, 16, 240e3], [0.315, 0.75, 16, 100e3], [0.315, 0.70, 17, 240e3],
                 [0.315, 0.70, 17, 100e3]]}, [229.51e3, 330.10e3, 157.28e3, 333.08e3, 158.52e3],
      ('relative', 5e-5, 'printed to five digits'),
      ('Rhyne, Tire Science and Technology 33', '2005', 'regression for vertical stiffness',
       'low to medium confidence: the constants come from memory'), 'from memory')
deflection, load = [0, 0.006, 0.013, 0.021, 0.03], [0, 900, 2150, 3900, 6200]
curve = PchipInterpolator(deflection, load)
rates = [float(curve.derivative()(brentq(lambda x: curve(x) - f, 0, 0.03, xtol=1e-15))) for f in [1500, 3200, 5100]]
check('tyre-press', 'Tyre rate out of a press test at three loads', 'tyre-press', 'rate', 'N/m',
      {'deflection': deflection, 'load': load, 'at': [1500, 3200, 5100]}, rates,
      ('relative', 1e-8, 'place found to rounding'), ('SciPy PchipInterpolator, derivative and brentq', SCIPY, HERE))
check('tyre-contact', 'Chord of a circle of 0.5 m pressed in by 0.1 m, and of 0.65 by 0.02', 'tyre-contact', 'length', 'm',
      {'cases': [[0.4, 0.1], [0.63, 0.02]]}, [0.6, 0.32], ('absolute', 1e-12, 'whole-number triangles 3-4-5 and 16-63-65'),
      ('Pythagoras', 'closed form', 'chord of a circle'), 'computed')

# --- Bar -----------------------------------------------------------------------------------------------------------------

G, d, length, arm, spread, ratio = 79.3e9, 0.022, 0.86, 0.24, 0.78, 0.9
J = np.pi * d ** 4 / 32
# Straight from the twist: a tilt of one radian moves the links ratio·spread apart, twists the bar by that over the arm.
torque = G * J / length * ratio * spread / arm
check('anti-roll-bar', 'Round bar of 22 mm by its twist: rate at the axle', 'bar-rate', 'roll rate', 'N·m/rad',
      {'linkRate': G * J / (length * arm ** 2), 'linkSpread': spread, 'linkRatio': ratio}, torque / arm * ratio * spread,
      ('relative', 1e-12, 'rounding'), ('Torsion of a round bar', 'closed form', 'T = G·J·θ/L'))


# --- Ground as a tyre feels it --------------------------------------------------------------------------------------------

check('footprint-gain', 'Share of a wave that is left under a footprint of 0.2 m', 'footprint-gain', 'ratio', '1',
      {'length': 0.2, 'wavelengths': [0.3, 0.5, 1, 2, 0.2]}, [0.413497, 0.756827, 0.935489, 0.983632, 0],
      ('absolute', 5e-6, 'six digits, and a wave is stored in 32 cubic pieces'),
      ('Moving average', 'any text on signals', '|sin(πℓ/λ)/(πℓ/λ)|'), 'from memory')
H, S, START, LEN = 0.3, 2.4, 1.0, 0.25


def whoop(s):
    u = s - START
    return np.where((u > 0) & (u < 3 * S), H / 2 * (1 - np.cos(2 * np.pi * u / S)), 0.0)


at = np.array([0.8, 0.95, 1.05, 1.6, 2.2, 3.4, 4.7, 8.1, 8.15, 8.4])
mean = [quad(lambda x: float(whoop(x)), s - LEN / 2, s + LEN / 2,
             points=[p for p in [START, START + 3 * S] if s - LEN / 2 < p < s + LEN / 2] or None, epsabs=1e-13)[0] / LEN
        for s in at]
SHAPE = {'kind': 'whoops', 'height': H, 'spacing': S, 'count': 3, 'start': START, 'rightPhase': 0}
check('footprint-whoops', 'Whoops under a footprint of 0.25 m', 'footprint-height', 'height', 'm',
      {'shape': SHAPE, 'length': LEN, 'at': at}, mean,
      ('absolute', 1.5e-6, 'cubic between new samples: h⁴/384 of the fourth derivative, and its jump where the whoops begin'),
      ('SciPy quad over the formula of the whoops', SCIPY, HERE))

CAMS = {'halfLength': 0.45, 'halfHeight': 0.46, 'order': 1.8, 'spacing': 0.2}


def cam(s):
    a, b, c = CAMS['halfLength'], CAMS['halfHeight'], CAMS['order']
    height = lambda x: float(whoop(s + x)) + b * ((1 - abs(x / a) ** c) ** (1 / c) - 1)
    grid = np.linspace(-a, a, 2001)
    best = max(grid, key=height)
    found = minimize_scalar(lambda x: -height(x), bounds=(max(-a, best - 1e-3), min(a, best + 1e-3)), method='bounded',
                            options={'xatol': 1e-12})
    return height(found.x)


# Away from where a cam jumps from one whoop to the next: there the slope has a corner that a cubic rounds.
at = np.array([0.3, 0.9, 1.3, 1.9, 2.2, 2.6, 4.6, 5.0, 7.6, 8.9])
check('two-cams-whoops', 'Whoops under two cams', 'two-cams-height', 'height', 'm', {'shape': SHAPE, 'cams': CAMS, 'at': at},
      [(cam(s + 0.1) + cam(s - 0.1)) / 2 for s in at],
      ('absolute', 2e-5, 'cubic between samples 19 mm apart; corners of the slope are left out'),
      ('Highest place under each cam by SciPy minimize_scalar', SCIPY, HERE))


# --- Independent wheels --------------------------------------------------------------------------------------------------

def independent_rig():
    """Body on four wheels, each by itself: coordinates heave, pitch, roll, and four wheels; linear, nothing switches."""
    m, Iy, Ix, a, b = 1500.0, 2100.0, 420.0, 1.2, 1.4
    front = {'mass': 160.0, 'track': 1.58, 'rate': 36e3, 'ratio': 0.72, 'c': 2600.0, 'shockRatio': 0.68}
    rear = {'mass': 190.0, 'track': 1.62, 'rate': 33e3, 'ratio': 0.8, 'c': 2300.0, 'shockRatio': 0.75}
    kt, ct = 210e3, 260.0
    return m, Iy, Ix, a, b, front, rear, kt, ct


def independent_motion(times, height, length, start, speed):
    m, Iy, Ix, a, b, front, rear, kt, ct = independent_rig()
    wheels = []
    for axle, x in [(front, a), (rear, -b)]:
        for sign in [1, -1]:
            wheels.append((axle, x, sign * axle['track'] / 2))
    M = np.diag([m, Iy, Ix] + [axle['mass'] / 2 for axle, _, _ in wheels])
    K, C = np.zeros((7, 7)), np.zeros((7, 7))
    for i, (axle, x, y) in enumerate(wheels):
        row = np.zeros(7)
        row[[0, 1, 2, 3 + i]] = [-1, x, -y, 1]  # wheel travel: wheel − (heave − x·pitch + y·roll)
        K += axle['rate'] * axle['ratio'] ** 2 * np.outer(row, row)
        C += axle['c'] * axle['shockRatio'] ** 2 * np.outer(row, row)
        K[3 + i, 3 + i] += kt
        C[3 + i, 3 + i] += ct

    def ground(t, x, y):
        s = speed * t - (a - x)
        u = s - start
        if y < 0 or u <= 0:
            return 0.0, 0.0
        if u >= length:
            return height, 0.0
        return (height / 2 * (1 - np.cos(np.pi * u / length)),
                height / 2 * np.pi / length * np.sin(np.pi * u / length) * speed)

    inverse = np.linalg.inv(M)

    def rates(t, state):
        q, v = state[:7], state[7:]
        f = -K @ q - C @ v
        for i, (_, x, y) in enumerate(wheels):
            h, dh = ground(t, x, y)
            f[3 + i] += kt * h + ct * dh
        return np.concatenate([v, inverse @ f])

    breaks = sorted({0, start / speed, (start + length) / speed, (start + a + b) / speed, (start + length + a + b) / speed,
                     max(times) + 0.01})
    out, state = np.zeros((len(times), 7)), np.zeros(14)
    for t0, t1 in zip(breaks, breaks[1:]):
        run = solve_ivp(rates, [t0, t1], state, method='DOP853', rtol=1e-11, atol=1e-13, dense_output=True)
        for k, t in enumerate(times):
            if t0 <= t <= t1:
                out[k] = run.sol(t)[:7]
        state = run.y[:, -1]
    z = out[:, 3:]
    return {'heave': out[:, 0], 'pitch': out[:, 1], 'roll': out[:, 2],
            'frontHeave': (z[:, 0] + z[:, 1]) / 2, 'frontRoll': (z[:, 0] - z[:, 1]) / front['track'],
            'rearHeave': (z[:, 2] + z[:, 3]) / 2, 'rearRoll': (z[:, 2] - z[:, 3]) / rear['track']}


def axle_inputs(axle):
    return {key: axle[key] for key in ['mass', 'track', 'rate', 'ratio', 'c', 'shockRatio']}


m, Iy, Ix, a, b, front, rear, kt, ct = independent_rig()
times = [0.3, 0.4, 0.45, 0.5, 0.6, 0.75, 1.0, 1.4]
course = {'kind': 'ledge', 'side': 'left', 'height': 0.02, 'length': 0.5, 'start': 2.0}
check('independent-ledge', 'Four independent wheels over a ledge on the left', 'independent-motion', 'motion', 'm, rad',
      {'sprung': {'mass': m, 'pitchInertia': Iy, 'rollInertia': Ix, 'toFrontAxle': a, 'toRearAxle': b},
       'front': axle_inputs(front), 'rear': axle_inputs(rear), 'tyre': {'rate': kt, 'damping': ct}, 'course': course,
       'speed': 8, 'times': times},
      independent_motion(times, 0.02, 0.5, 2.0, 8.0),
      ('absolute', 2e-7, 'a hundred thousandth of the ledge: tolerance of our stepping'),
      ('Each wheel as a body of its own, by SciPy solve_ivp', SCIPY, HERE))
