"""Reference motions of linear rigs: matrix exponential, transfer functions and a general solver (SciPy).

A rig is linear here when no tyre leaves the ground and no stop, strap or coil end is met; the checks keep it so.
Run: python3 -B validation/make/ride.py, then biome over validation/checks.
"""
import numpy as np
import scipy
from scipy.integrate import solve_ivp
from scipy.linalg import expm
from check_file import write

MAKER = 'ride.py'
G = 9.80665
PLACE = 'validation/make/ride.py'


def car(ms, mu, ks, kt, c, a=1.3, b=1.3, half=0.8, iy=None, ix=None, ia=None, spring=0.45, shock=0.55):
    """A whole rig whose every corner is the given quarter car. Inertias do not matter in heave."""
    axle = {'mass': 2 * mu, 'rollInertia': ia or 2 * mu * 0.5 ** 2, 'halfTrack': half, 'springStation': spring,
            'springRate': ks, 'shockStation': shock, 'shockSlope': c, 'tyreRate': kt, 'tyreDamping': 0}
    return {'sprung': {'mass': 4 * ms, 'rollInertia': ix or 4 * ms * 0.6 ** 2, 'pitchInertia': iy or 4 * ms * a * b,
                       'toFrontAxle': a, 'toRearAxle': b}, 'front': dict(axle), 'rear': dict(axle)}


def quarter_state(ms, mu, ks, kt, c):
    return np.array([[0, 0, 1, 0], [0, 0, 0, 1],
                     [-ks / ms, ks / ms, -c / ms, c / ms],
                     [ks / mu, -(ks + kt) / mu, c / mu, -c / mu]])


def gains(ms, mu, ks, kt, c, f):
    """Complex amplitudes of body and axle over a ground of amplitude one."""
    w = 2 * np.pi * f
    z = 1j * w * c + ks
    matrix = np.array([[-w * w * ms + z, -z], [-z, -w * w * mu + z + kt]])
    body, axle = np.linalg.solve(matrix, [0, kt])
    return {'body': abs(body), 'suspension': abs(axle - body), 'tyre': abs(1 - axle)}


BOOK = (317.5, 45.4, 22e3, 192e3)
TEACHING = (250, 45, 16e3, 160e3, 1000)

# Free decay: the whole rig is let go a little above rest, tyres still loaded.
times = [0.05, 0.1, 0.2, 0.35, 0.5, 0.75, 1.0, 1.5, 2.0]
for id, title, params, lift in (('decay-teaching-car', 'Free decay of a common teaching car', TEACHING, 0.004),
                                ('decay-undamped', 'Free vibration without damping, textbook quarter car',
                                 (*BOOK, 0), 0.004)):
    A = quarter_state(*params)
    start = np.array([lift, lift, 0, 0])
    states = [expm(A * t) @ start for t in times]
    write('ride', id, title, 'free-heave', 'heave of body and axle', 'm',
          {'model': car(*params), 'lift': lift, 'times': times},
          {'body': [s[0] for s in states], 'axle': [s[1] for s in states]},
          ('absolute', 4e-8, 'a hundred-thousandth of the lift: accuracy asked of the stepper'),
          ('Matrix exponential of the two-mass model (SciPy linalg.expm)', scipy.__version__, PLACE), 'computed', MAKER)

# Frequency and damping of the two modes, read off our free decay by fitting the sum of two damped swings.
poles = np.linalg.eigvals(quarter_state(*TEACHING))
poles = sorted((p for p in poles if p.imag > 0), key=abs)
write('ride', 'decay-poles', 'Frequency and damping ratio of both modes, read off a free decay', 'decay-poles',
      'frequency and damping ratio', 'Hz, 1', {'model': car(*TEACHING), 'lift': 0.004, 'step': 0.02, 'count': 60},
      {'rideFrequency': abs(poles[0]) / 2 / np.pi, 'rideDamping': -poles[0].real / abs(poles[0]),
       'hopFrequency': abs(poles[1]) / 2 / np.pi, 'hopDamping': -poles[1].real / abs(poles[1])},
      ('relative', 1e-4, 'the fit through 60 samples of a decay magnifies the stepper\'s error'),
      ('Eigenvalues of the two-mass model (NumPy linalg.eigvals)', np.__version__, PLACE), 'computed', MAKER)
write('ride', 'textbook-modes', 'Frequencies of the textbook quarter car, read off a free vibration', 'decay-frequencies',
      'frequency', 'Hz', {'model': car(*BOOK, 0), 'lift': 0.004, 'step': 0.02, 'count': 60},
      {'rideFrequency': 7.87 / 2 / np.pi, 'hopFrequency': 68.73 / 2 / np.pi},
      ('relative', 0.002, 'the book rounds its coefficients, 4786 for 4782.9, and cuts 7.8786 to 7.87 rad/s: 0.11 %'),
      ('Barton and Fieldhouse, Automotive Chassis Engineering', '2018 (authors and year from memory)',
       'p. 209, eqs 3.81 to 3.84', 'The page was read in an online copy.'), 'read')

# Transfer functions: a sine road whose wave fits between the axles, so that both ends see the same ground.
for f in (0.5, 1.0, 1.5, 2.0, 5.0, 10.0, 15.0):
    write('ride', f'gain-{f:g}-hz', f'Motion over a sine road at {f:g} Hz', 'sine-gains',
          'amplitude over amplitude of the ground', '1',
          {'model': car(*TEACHING), 'frequency': f, 'amplitude': 0.004 if f <= 2 else 0.001, 'settle': 12, 'periods': 6},
          gains(*TEACHING, f),
          ('relative', 2e-4, 'what is left of the start after twelve seconds, and the accuracy asked of the stepper'),
          ('Transfer functions of the two-mass model (NumPy linalg.solve)', np.__version__, PLACE), 'computed', MAKER)

# Invariant points: the body at the axle's tyre frequency, whatever spring and shock are fitted.
ms, mu, _, kt, _ = TEACHING
f_body, f_rattle = np.sqrt(kt / mu) / 2 / np.pi, np.sqrt(kt / (ms + mu)) / 2 / np.pi
for c, ks in ((300, 16e3), (1000, 16e3), (4000, 16e3), (1000, 40e3)):
    params = (ms, mu, ks, kt, c)
    write('ride', f'invariant-body-c{c}-k{ks / 1000:g}', f'Body at its invariant point, shock {c} N·s/m, spring '
          f'{ks / 1000:g} kN/m', 'sine-gain-body', 'amplitude over amplitude of the ground', '1',
          {'model': car(*params), 'frequency': f_body, 'amplitude': 0.001, 'settle': 12, 'periods': 10}, mu / ms,
          ('relative', 5e-4, 'what is left of the start after settling, and the accuracy asked of the stepper'),
          ('Hedrick and Butsuen, Invariant properties of automotive suspensions', '1990',
           'body acceleration at ω² = kt/mu: |zs/zr| = mu/ms',
           'The statement is known from memory; it was checked by calculation.'), 'from memory')
    write('ride', f'invariant-rattle-c{c}-k{ks / 1000:g}', f'Suspension travel at its invariant point, shock {c} N·s/m, '
          f'spring {ks / 1000:g} kN/m', 'sine-gain-suspension', 'amplitude over amplitude of the ground', '1',
          {'model': car(*params), 'frequency': f_rattle, 'amplitude': 0.001, 'settle': 12, 'periods': 10},
          (ms + mu) / ms,
          ('relative', 5e-4, 'what is left of the start after settling, and the accuracy asked of the stepper'),
          ('Hedrick and Butsuen, Invariant properties of automotive suspensions', '1990',
           'suspension travel at ω² = kt/(ms + mu): |zs − zu|/zr = (ms + mu)/ms',
           'The statement is known from memory; it was checked by calculation.'), 'from memory')

# Free fall: while every tyre is off the ground, the common centre of gravity falls as any stone, whatever the
# springs do to axles and body meanwhile.
model = car(362.5, 116.25, 31e3, 230e3, 2000)
lift = 1.0
hang = [0.05, 0.1, 0.2, 0.3, 0.35]
write('ride', 'free-fall', 'Common centre of gravity while no tyre touches', 'common-heave', 'height above rest', 'm',
      {'model': model, 'lift': lift, 'times': hang}, [lift - G * t * t / 2 for t in hang],
      ('absolute', 1e-9, 'a parabola, which a fourth-order stepper follows to rounding'),
      ("Newton: z = h − g·t²/2 with g = 9.80665 m/s²", 'closed form', PLACE), 'computed', MAKER)

# All seven coordinates: an uneven linear rig over a ledge under its left tyres, by a general solver.
uneven = {'sprung': {'mass': 1450.0, 'rollInertia': 520.0, 'pitchInertia': 1750.0, 'toFrontAxle': 1.25,
                     'toRearAxle': 1.35},
          'front': {'mass': 240.0, 'rollInertia': 62.0, 'halfTrack': 0.8, 'springStation': 0.46, 'springRate': 30e3,
                    'shockStation': 0.55, 'shockSlope': 1800.0, 'tyreRate': 230e3, 'tyreDamping': 400.0},
          'rear': {'mass': 225.0, 'rollInertia': 58.0, 'halfTrack': 0.82, 'springStation': 0.48, 'springRate': 32e3,
                   'shockStation': 0.56, 'shockSlope': 2100.0, 'tyreRate': 210e3, 'tyreDamping': 300.0}}
speed, height, length, start = 6.0, 0.012, 0.5, 1.0


def assembled(m):
    """Mass, stiffness, damping and tyre matrices in (zs, θ, φ, zf, ψf, zr, ψr), from the energies."""
    s = m['sprung']
    M = np.diag([s['mass'], s['pitchInertia'], s['rollInertia'], m['front']['mass'], m['front']['rollInertia'],
                 m['rear']['mass'], m['rear']['rollInertia']])
    K, C, T, D = np.zeros((7, 7)), np.zeros((7, 7)), [], []
    for end, x, at in (('front', s['toFrontAxle'], 3), ('rear', -s['toRearAxle'], 5)):
        axle = m[end]
        for side in (1, -1):
            def row(y):
                r = np.zeros(7)
                r[at], r[at + 1] = 1, y
                return r

            def relative(y):
                return row(y) - np.array([1, -x, y, 0, 0, 0, 0])
            spring = relative(side * axle['springStation'])
            shock = relative(side * axle['shockStation'])
            tyre = row(side * axle['halfTrack'])
            K += axle['springRate'] * np.outer(spring, spring) + axle['tyreRate'] * np.outer(tyre, tyre)
            C += axle['shockSlope'] * np.outer(shock, shock) + axle['tyreDamping'] * np.outer(tyre, tyre)
            T.append(axle['tyreRate'] * tyre)
            D.append(axle['tyreDamping'] * tyre)
    return M, K, C, np.array(T), np.array(D)


M, K, C, T, D = assembled(uneven)
delay = [0, 0, (1.25 + 1.35) / speed, (1.25 + 1.35) / speed]


def ledge(s):
    u = s - start
    if u <= 0:
        return 0.0, 0.0
    if u >= length:
        return height, 0.0
    return height / 2 * (1 - np.cos(np.pi * u / length)), height / 2 * np.pi / length * np.sin(np.pi * u / length)


def rate(t, state):
    force = -K @ state[:7] - C @ state[7:]
    for corner, late in enumerate(delay):
        if corner % 2 == 0:
            h, slope = ledge(speed * (t - late))
            force = force + T[corner] * h + D[corner] * speed * slope
    return np.r_[state[7:], np.linalg.solve(M, force)]


at = [0.2, 0.25, 0.3, 0.4, 0.55, 0.65, 0.75, 0.9, 1.2, 1.6, 2.0]
solution = solve_ivp(rate, (0, 2), np.zeros(14), method='DOP853', rtol=1e-11, atol=1e-14, max_step=2e-3, t_eval=at)
names = ['heave', 'pitch', 'roll', 'frontHeave', 'frontRoll', 'rearHeave', 'rearRoll']
write('ride', 'uneven-ledge', 'All seven coordinates of an uneven rig over a ledge on the left', 'coordinates',
      'heave, pitch, roll', 'm, rad',
      {'model': uneven, 'course': {'kind': 'ledge', 'side': 'left', 'height': height, 'length': length, 'start': start},
       'speed': speed, 'times': at}, {name: solution.y[i] for i, name in enumerate(names)},
      ('absolute', 1e-7, 'a hundred-thousandth of the ledge: accuracy asked of the stepper'),
      ('SciPy solve_ivp, DOP853, rtol 1e-11, on matrices assembled from the energies of springs, shocks and tyres',
       scipy.__version__, PLACE), 'computed', MAKER)

# A body whose radius of gyration makes both ends decouple: what the front axle meets does not move the rear end until
# the rear axle meets it, and the front end is a quarter car of its own.
ms, mu, ks, kt, c = TEACHING
a, b = 1.1, 1.5
step_height, step_length, step_start, step_speed = 0.01, 0.6, 0.6, 4.0
model = car(*TEACHING, a=a, b=b, iy=4 * ms * a * b)
front_mass = 4 * ms * b / (a + b) / 2
A = quarter_state(front_mass, mu, ks, kt, c)


def front_end(t, z):
    u = step_speed * t - step_start
    h = 0 if u <= 0 else step_height if u >= step_length else step_height / 2 * (1 - np.cos(np.pi * u / step_length))
    return A @ z + np.array([0, 0, 0, kt / mu * h])


at = [0.2, 0.25, 0.3, 0.4, 0.5, 0.6, 0.7, 0.75]
solution = solve_ivp(front_end, (0, 0.8), np.zeros(4), method='DOP853', rtol=1e-11, atol=1e-14, max_step=1e-3, t_eval=at)
write('ride', 'decoupled-ends', 'Ends that do not feel each other (k² = a·b)', 'ends', 'rise of the body over each axle',
      'm', {'model': model, 'course': {'kind': 'ledge', 'side': 'both', 'height': step_height, 'length': step_length,
                                       'start': step_start}, 'speed': step_speed, 'times': at},
      {'front': solution.y[0], 'rear': [0.0] * len(at)},
      ('absolute', 1e-7, 'a hundred-thousandth of the ledge: accuracy asked of the stepper'),
      ('Decoupling of the half car when the dynamic index k²/(a·b) is one; front end by SciPy solve_ivp, DOP853',
       scipy.__version__, PLACE), 'computed', MAKER)
