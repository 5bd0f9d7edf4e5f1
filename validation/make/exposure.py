"""Weightings, doses and other measures of vibration at a seat, worked out with SciPy from their equations.

Nothing here uses the code under test: filters run as analogue transfer functions on a record sampled far more finely,
integrals by quadrature, single masses in closed form or by an ODE solver.

Run: python3 -B validation/make/exposure.py, then biome over validation/checks.
"""
import numpy as np
import scipy
from scipy import signal
from scipy.integrate import quad, solve_ivp
from check_file import write

MAKER = 'exposure.py'
SCIPY = 'scipy ' + scipy.__version__
HERE = 'validation/make/exposure.py'
ANNEX = ('ISO 2631-1:1997, Annex A: equation and parameters, evaluated with SciPy', SCIPY, 'signal.freqs',
         'parameters read in the reference manual of a human-vibration meter')
ROUNDING = 'the same equation; only rounding is left'
G = 9.80665

# --- Weightings ---
# f1, f2, f3, f4, Q4, f5, Q5, f6, Q6, K
TABLE = {
    'Wk': (0.4, 100, 12.5, 12.5, 0.63, 2.37, 0.91, 3.35, 0.91, 1),
    'Wd': (0.4, 100, 2, 2, 0.63, None, None, None, None, 1),
    'Wb': (0.4, 100, 16, 16, 0.55, 2.5, 0.9, 4, 0.95, 1.024),
    'Wc': (0.4, 100, 8, 8, 0.63, None, None, None, None, 1),
    'We': (0.4, 100, 1, 1, 0.63, None, None, None, None, 1),
    'Wj': (0.4, 100, None, None, None, 3.75, 0.91, 5.32, 0.91, 1),
    'Wf': (0.08, 0.63, None, 0.25, 0.86, 0.0625, 0.8, 0.1, 0.8, 1),
}


def weighting(name):
    f1, f2, f3, f4, q4, f5, q5, f6, q6, k = TABLE[name]
    w = lambda f: 2 * np.pi * f
    num, den = np.array([k]), np.array([1.0])

    def times(n, d):
        nonlocal num, den
        num, den = np.polymul(num, n), np.polymul(den, d)

    times([1, 0, 0], [1, w(f1) * np.sqrt(2), w(f1) ** 2])
    times([1], [1 / w(f2) ** 2, np.sqrt(2) / w(f2), 1])
    if f4:
        times([1 / w(f3), 1] if f3 else [1], [1 / w(f4) ** 2, 1 / (q4 * w(f4)), 1])
    if f5:
        times(np.array([1 / w(f5) ** 2, 1 / (q5 * w(f5)), 1]) * (f5 / f6) ** 2,
              [1 / w(f6) ** 2, 1 / (q6 * w(f6)), 1])
    return num, den


def response(name, at):
    return signal.freqs(*weighting(name), worN=2 * np.pi * np.asarray(at))[1]


AT = np.array([0.05, 0.1, 0.315, 0.5, 1, 2, 3.15, 5, 6.3, 8, 12.5, 16, 25, 40, 63, 80, 100, 160])
for name in TABLE:
    H = response(name, AT)
    write('exposure', f'gain-{name.lower()}', f'Weighting {name}: gain', 'weighting-gain', 'gain', '1',
          {'weighting': name, 'at': AT}, np.abs(H), ('relative', 1e-9, ROUNDING), ANNEX, 'computed', MAKER)
PHASES = {'Wk': [1, 6.3, 16], 'Wd': [1, 6.3, 16], 'Wb': [1, 6.3, 16], 'Wf': [0.1, 0.16, 0.3]}
for name, at in PHASES.items():
    write('exposure', f'phase-{name.lower()}', f'Weighting {name}: phase', 'weighting-phase', 'phase', 'degrees',
          {'weighting': name, 'at': at}, np.degrees(np.angle(response(name, at))), ('absolute', 1e-6, ROUNDING),
          ANNEX, 'computed', MAKER)

TENTH = ('relative', 0.0115, '0.1 dB, what the house asks of its filters from 0.5 to 80 Hz at 500 samples a second or '
         'more, and up to a fifth of any other rate')
for name, rate, at in [('Wk', 500, [0.5, 1, 2, 6.3, 16, 31.5, 50, 80]), ('Wd', 500, [0.5, 1, 2, 6.3, 16, 31.5, 50, 80]),
                       ('Wb', 500, [0.5, 5, 20, 80]), ('Wj', 500, [0.5, 5, 20, 80]), ('Wc', 500, [0.5, 8, 80]),
                       ('We', 500, [0.5, 1, 80]), ('Wf', 20, [0.1, 0.16, 0.5, 2]), ('Wk', 512, [0.5, 6.3, 80]),
                       ('Wk', 733, [0.5, 6.3, 80]), ('Wk', 8000, [0.5, 6.3, 80, 400]), ('Wk', 200, [0.5, 6.3, 16, 40]),
                       ('Wk', 100, [0.5, 6.3, 16, 20])]:
    H = response(name, at)
    inputs = {'weighting': name, 'rate': rate, 'at': at}
    write('exposure', f'filter-{name.lower()}-{rate}', f'Filter {name} at {rate} samples a second: gain for a sine',
          'filter-gain', 'gain', '1', inputs, np.abs(H), TENTH, ANNEX, 'computed', MAKER)
    if name in ('Wk', 'Wd') and rate == 500:
        at = [f for f in at if f <= 50]
        write('exposure', f'filter-{name.lower()}-{rate}-phase',
              f'Filter {name} at {rate} samples a second: phase for a sine', 'filter-phase', 'phase', 'degrees',
              {**inputs, 'at': at}, np.degrees(np.unwrap(np.angle(response(name, at)))),
              ('absolute', 0.05, 'peaks and doses need the phase; 0.05° shifts none of them by a thousandth'), ANNEX,
              'computed', MAKER)

for name in ('Wk', 'Wd', 'Wb'):
    power = lambda logf: np.abs(response(name, [np.exp(logf)])[0]) ** 2 * np.exp(logf)
    total = quad(power, np.log(1e-4), np.log(1e5), limit=400, epsabs=0, epsrel=1e-10)[0]
    write('exposure', f'noise-{name.lower()}', f'White noise of density 1 through {name}: mean square', 'noise-integral',
          'mean square', 'm²/s⁴', {'weighting': name}, total,
          ('relative', 1e-4, 'both sides integrate the same curve by different rules'),
          ('∫ |H|² df of Annex A', SCIPY, 'integrate.quad'), 'computed', MAKER)
    for rate in (1000, 500):
        write('exposure', f'noise-{name.lower()}-{rate}',
              f'White noise of density 1 through the filter {name} at {rate} samples a second', 'noise-filter',
              'mean square', 'm²/s⁴', {'weighting': name, 'rate': rate}, total,
              ('relative', 0.02, 'noise above half the rate is missing from the record'),
              ('∫ |H|² df of Annex A', SCIPY, 'integrate.quad'), 'computed', MAKER)

# --- A whole record ---
SINES = [{'size': 1.1, 'frequency': 1.37, 'phase': 0.0}, {'size': 1.6, 'frequency': 5.3, 'phase': 0.7},
         {'size': 0.9, 'frequency': 11.7, 'phase': 2.1}, {'size': 0.5, 'frequency': 27.1, 'phase': 4.0}]
PULSES = [{'size': 14.0, 'start': 3.3, 'length': 0.11}, {'size': -9.0, 'start': 6.02, 'length': 0.19}]
DURATION = 9.0


def record(t):
    # Fades in over a second, so that the record begins at rest.
    fade = np.where(t < 1, (1 - np.cos(np.pi * np.minimum(t, 1))) / 2, 1)
    a = fade * sum(s['size'] * np.sin(2 * np.pi * s['frequency'] * t + s['phase']) for s in SINES)
    for p in PULSES:
        u = (t - p['start']) / p['length']
        # sin² and not sin: no corner at either end.
        a = a + np.where((u > 0) & (u < 1), p['size'] * np.sin(np.pi * np.clip(u, 0, 1)) ** 2, 0)
    return a


FINE = 32000
t = np.arange(int(DURATION * FINE) + 1) / FINE
a = record(t)
through = lambda num, den: signal.lsim((num, den), a, t)[1]
wk = through(*weighting('Wk'))
area = lambda y: np.trapezoid(y, dx=1 / FINE)
rms = np.sqrt(area(wk ** 2) / DURATION)
upto = np.concatenate([[0], np.cumsum((wk[1:] ** 2 + wk[:-1] ** 2) / 2) / FINE])
mtvv = np.sqrt(max(upto.max() if len(upto) <= FINE else (upto[FINE:] - upto[:-FINE]).max(), upto[:FINE].max()))
fading = signal.lsim(([1], [1, 1]), wk ** 2, t)[1]
power = through(14.5 / 0.3048 * np.array([1, 44, 0]), np.polymul([1, 63], [1, 24, 750]))
w, z = 52.9, 0.224
spine = through([1], [1, 2 * z * w, w * w])
low = through(*signal.butter(4, 2 * np.pi * 30, analog=True))
write('exposure', 'whole-record', 'A record of four sines and two hits: every measure', 'record', 'as named',
      'SI', {'sines': SINES, 'pulses': PULSES, 'duration': DURATION, 'rate': 500},
      {'rms': rms, 'dose': area(wk ** 4) ** 0.25, 'peak': np.abs(wk).max(), 'crestFactor': np.abs(wk).max() / rms,
       'maximumTransient': mtvv, 'maximumTransientFading': np.sqrt(fading.max()),
       'absorbedPower': area(power ** 2) / DURATION, 'dynamicResponseIndex': w * w * spine.max() / G,
       'lowPassedPeak': np.abs(low).max(), 'timeToAction': 28800 * (0.5 / rms) ** 2,
       'timeToLimitByDose': DURATION * (21 / area(wk ** 4) ** 0.25) ** 4},
      ('relative', 2e-3, 'ours sees 500 samples a second, theirs 32000; times go with the second and fourth power'),
      ('Definitions of ISO 2631-1:1997 and others on analogue filters', SCIPY, 'signal.lsim, ' + HERE), 'computed', MAKER)

# --- Single masses ---


def dri(pulse, length):
    f = lambda s, y: [y[1], pulse(s) - 2 * z * w * y[1] - w * w * y[0]]
    first = solve_ivp(f, (0, length), [0, 0], rtol=1e-11, atol=1e-15, max_step=length / 200, dense_output=True)
    rest = solve_ivp(lambda s, y: [y[1], -2 * z * w * y[1] - w * w * y[0]], (length, length + 0.3), first.y[:, -1],
                     rtol=1e-11, atol=1e-15, max_step=1e-3, dense_output=True)
    fine = np.concatenate([first.sol(np.linspace(0, length, 20001))[0],
                           rest.sol(np.linspace(length, length + 0.3, 60001))[0]])
    return w * w * fine.max() / G


HITS = [(10, 0.05), (10, 0.1), (15, 0.03), (5, 0.2)]
write('exposure', 'dri-half-sines', 'Dynamic response index of half-sines', 'dri-half-sines', 'DRI', '1',
      {'hits': [{'size': n * G, 'length': T} for n, T in HITS], 'rate': 5000},
      [dri(lambda s, n=n, T=T: n * G * np.sin(np.pi * s / T), T) for n, T in HITS],
      ('relative', 1e-4, 'both solve the same equation; ours reads 5000 samples a second, with a corner at both ends'),
      ('ẍ + 2ζω·ẋ + ω²·x = a, ω = 52.9 rad/s, ζ = 0.224', SCIPY, 'integrate.solve_ivp'), 'computed', MAKER)
write('exposure', 'dri-step', 'Dynamic response index of a step of 1 g', 'dri-step', 'DRI', '1', {'size': G, 'rate': 5000},
      1 + np.exp(-np.pi * z / np.sqrt(1 - z * z)),
      ('relative', 1e-4, 'the top of the swing is read between samples by a parabola'),
      ('Step response of a damped swing, overshoot exp(−πζ/√(1−ζ²))', 'closed form', HERE), 'computed', MAKER)
write('exposure', 'dri-impulse-closed', 'Dynamic response index of a short hit of 1 m/s', 'dri-impulse', 'DRI', '1',
      {'speedChange': 1, 'length': 2e-4, 'rate': 100000}, w / G * np.exp(-z / np.sqrt(1 - z * z) * np.arccos(z)),
      ('relative', 1e-4, 'a hit of 0.2 ms stands for one of no length'),
      ('Impulse response of a damped swing', 'closed form', HERE), 'computed', MAKER)

# --- Absorbed power ---
AT = np.array([1, 2, 3.15, 4, 4.5, 5, 6.3, 8, 10, 16])
H = signal.freqs(14.5 * np.array([1, 44, 0]), np.polymul([1, 63], [1, 24, 750]), worN=2 * np.pi * AT)[1] / 0.3048
write('exposure', 'absorbed-power', 'Absorbed power per squared r.m.s. of a sine', 'absorbed-power', 'power',
      'W/(m/s²)²', {'at': AT, 'rate': 500, 'duration': 300}, np.abs(H) ** 2,
      ('relative', 2e-3, 'five minutes of sine hold the transient of its start'),
      ('Third-order form of the vertical model of Pradko and Lee, evaluated with SciPy', SCIPY, 'signal.freqs',
       'form found back from the bilinear coefficients of an open source library (read)'), 'computed', MAKER)
W = 2 * np.pi * AT
F1 = -0.10245e-9 * W ** 6 + 0.17583e-5 * W ** 4 - 0.44601e-2 * W ** 2 + 1
F2 = 0.12882e-7 * W ** 4 - 0.93394e-4 * W ** 2 + 0.10543
F3 = -0.45416e-9 * W ** 6 + 0.37667e-5 * W ** 4 - 0.56104e-2 * W ** 2 + 1
F4 = -0.21179e-11 * W ** 6 + 0.51728e-7 * W ** 4 - 0.17947e-3 * W ** 2 + 0.10543
K = 4.3537 * 1.356 * (F1 * F4 - F2 * F3) / (F3 ** 2 + W ** 2 * F4 ** 2)
write('exposure', 'absorbed-power-polynomial', 'Absorbed power against the other published form of the model',
      'absorbed-power', 'power', 'W/(m/s²)²', {'at': AT, 'rate': 500, 'duration': 300}, K / 0.3048 ** 2,
      ('relative', 0.26, 'two fits to the same people: up to 17 % apart below 3 Hz, 25 % at 8 Hz; shown as the '
       'uncertainty of the power'),
      ('Polynomial form of the vertical model of Pradko and Lee', '1966–1968', 'coefficients F1 to F4'), 'from memory')

# --- Low-pass ---
AT = [5, 15, 25, 30, 45, 80]
write('exposure', 'low-pass', 'Peak of a sine after the 30 Hz low-pass of four poles', 'low-passed-peak', 'gain', '1',
      {'at': AT, 'rate': 1000}, np.abs(signal.freqs(*signal.butter(4, 2 * np.pi * 30, analog=True),
                                                    worN=2 * np.pi * np.array(AT))[1]),
      ('relative', 3e-3, 'peak over a record that fades in, read between samples by a parabola; at 80 Hz twelve samples '
       'a wave'), ('Butterworth low-pass of order 4', SCIPY, 'signal.butter'), 'computed', MAKER)

# --- Running averages and doses of signals with closed forms ---
write('exposure', 'sine', 'A sine of 1 m/s² r.m.s. over 60 s: dose, estimated dose, crest factor', 'sine', 'as named',
      'SI', {'frequency': 5, 'duration': 60, 'rate': 1000},
      {'rms': 1, 'dose': 1.5 ** 0.25 * 60 ** 0.25, 'estimatedDose': 1.4 * 60 ** 0.25, 'crestFactor': np.sqrt(2)},
      ('relative', 1e-4, 'the trapezoidal rule is exact over whole waves; the crest is read by a parabola'),
      ('Mean of sin⁴ is 3/8', 'closed form', HERE), 'computed', MAKER)
write('exposure', 'burst', 'A burst of 0.5 s and 1 m/s² r.m.s.: largest running r.m.s.', 'burst', 'MTVV', 'm/s²',
      {'frequency': 10, 'length': 0.5, 'rate': 1000},
      {'linear': np.sqrt(0.5), 'exponential': np.sqrt(burst := max(
          signal.lsim(([1], [1, 1]), 2 * np.sin(2 * np.pi * 10 * (s := np.arange(50001) / 1e5)) ** 2, s)[1]))},
      ('relative', 1e-4, 'the window is integrated piece by piece'),
      ('Definition of ISO 2631-1:1997, 6.3.1: closed form (linear), signal.lsim (exponential)', SCIPY, HERE),
      'computed', MAKER)
write('exposure', 'total-value', 'Vibration total value of 1, 1, 1 m/s²', 'total-value', 'VTV', 'm/s²',
      {'foreAndAft': 1, 'sideways': 1, 'vertical': 1}, np.sqrt(2 * 1.4 ** 2 + 1), ('relative', 1e-12, ROUNDING),
      ('√(Σ k²·a²), k = 1.4 level and 1 vertical', 'closed form', HERE, 'k read in a transcription'), 'computed', MAKER)
write('exposure', 'time-to-values', 'Hours of 1.5 m/s² until 0.5 and 1.15 m/s² over eight hours', 'time-to-values', 'time',
      'h', {'counted': 1.5}, {'action': 8 / 9, 'limit': 8 * (1.15 / 1.5) ** 2}, ('relative', 1e-12, ROUNDING),
      ('A(8) = k·a·√(T/8 h) solved for T', 'closed form', HERE), 'computed', MAKER)
write('exposure', 'zone', 'Guidance zone at eight hours, by its two definitions', 'zone', 'acceleration', 'm/s²',
      {'duration': 28800},
      {'equalEnergy': {'lower': 3 * np.sqrt(600 / 28800), 'upper': 6 * np.sqrt(600 / 28800)},
       'fourthPower': {'lower': 8.5 / 1.4 / 28800 ** 0.25, 'upper': 17 / 1.4 / 28800 ** 0.25}},
      ('relative', 1e-12, ROUNDING), ('ISO 2631-1', '1997', 'Annex B'), 'from memory')

# --- ISO 2631-5:2004 ---
f0, zeta = 2.125, 0.22
SDOF = lambda f: np.abs((1 + 2j * zeta * f / f0) / (1 - (f / f0) ** 2 + 2j * zeta * f / f0))
AT = np.array([0.25, 1, 2, 2.125, 3, 5, 10])
write('exposure', 'spinal-level-mass', 'Horizontal spinal filter against the mass that it samples', 'spinal-level-gain',
      'gain', '1', {'at': AT}, SDOF(AT),
      ('relative', 0.015, 'the filter is that mass sampled at 160 Hz: its gain falls short by 1.3 % at 10 Hz'),
      ('One mass on spring and damper, shaken at its foot, 2.125 Hz, ζ = 0.22', 'closed form', HERE), 'computed', MAKER)
b, den = [0.0192752, 0.00433451, -0.0167763], [1, -1.957115, 0.963949]
write('exposure', 'spinal-level', 'Horizontal spinal filter: gain for a sine', 'spinal-level-gain', 'gain', '1', {'at': AT},
      np.abs(signal.freqz(b, den, worN=2 * np.pi * AT / 160)[1]), ('relative', 1e-5, 'sine fitted after the transient'),
      ('ISO 2631-5:2004, horizontal model, evaluated with SciPy', SCIPY, 'signal.freqz',
       'coefficients read in an open source library'), 'computed', MAKER)

ROWS = np.array([float(x) for x in '''
.00130 .01841 -.00336 .01471 .00174 .00137 .00145  -.00646 -.00565 -.00539 .01544 -.00542 .00381 .00497
-.00091 -.02073 .00708 -.00091 .00255 -.00216 .01001  .00898 -.02626 .00438 -.00595 -.00774 -.00034 .0128
.00201 .00579 .00330 -.00065 -.00459 -.00417 -.00468  .00158 .00859 .00166 .00490 -.00546 .00057 -.00797
.00361 .00490 .00452 .00079 -.00604 -.00638 -.00529  .00167 -.00098 .00743 .00795 -.01095 .00627 -.00341
-.00078 -.00261 .00771 .00600 -.00908 .00504 .00135  -.00405 -.00210 .00520 .00176 -.00465 -.00198 .00451
-.00563 .00218 -.00105 .00195 .00296 -.00190 .00306  -.00372 .00037 -.00045 -.00197 .00289 -.00448 .00216
-.31088 -.95883 -.67105 .14423 .04063 .07029 1.03300'''.split()]).reshape(13, 7)
OUT = np.array([57.96539, 52.32773, 49.78227, 53.16885, 56.02619, -27.79550, 72.34446])


def network(u):
    past_y, past_u, y = np.zeros(4), np.zeros(8), np.empty(len(u))
    for n, each in enumerate(u):
        y[n] = OUT @ np.tanh(np.concatenate([past_y, past_u, [1]]) @ ROWS) + 21.51959
        past_y, past_u = np.concatenate([[y[n]], past_y[:3]]), np.concatenate([[each], past_u[:7]])
    return y


n = np.arange(160 * 12)
half = lambda size: np.where((n >= 160) & (n <= 176), size * np.sin(np.pi * (n - 160) / 16), 0)
sine = lambda size, f: size * np.sin(2 * np.pi * f * n / 160)
LIMITS = {'rest': 0, 'up1': 1, 'up5': 5, 'down1': -1}
SWINGS = {'5 Hz 5': sine(5, 5), '5 Hz 10': sine(10, 5), '2 Hz 10': sine(10, 2)}
write('exposure', 'spinal-network', 'Vertical spinal network: steady values, swings and hits', 'spinal-network',
      'response', 'm/s²',
      {'steady': LIMITS, 'swings': [{'name': k, 'size': s, 'frequency': f} for k, s, f in
                                    [('5 Hz 5', 5, 5), ('5 Hz 10', 10, 5), ('2 Hz 10', 10, 2)]],
       'halfSines': [20, 40], 'length': 0.1},
      {'steady': {k: network(np.full(len(n), float(v)))[-1] for k, v in LIMITS.items()},
       'swings': {k: {'highest': network(u)[-640:].max(), 'lowest': network(u)[-640:].min()} for k, u in SWINGS.items()},
       'halfSines': [network(half(s)).max() for s in (20, 40)]},
      ('relative', 1e-9, ROUNDING),
      ('ISO 2631-5:2004, vertical model, evaluated with NumPy', 'numpy ' + np.__version__, HERE,
       'coefficients read in an open source library and nowhere else (single source)'), 'computed', MAKER)

u = sine(7, 3.1) + half(25) + sine(2, 9.3)
y = network(u)


def crossings_dose(y, upward):
    cuts = np.concatenate([[0], np.nonzero(np.diff(np.sign(y)))[0] + 1, [len(y)]])
    peaks = np.array([part[np.argmax(np.abs(part))] for part in np.split(y, cuts[1:-1])])
    return np.sum((peaks[peaks > 0] if upward else peaks) ** 6) ** (1 / 6)


level = signal.lfilter(b, den, u)
write('exposure', 'spinal-dose', 'Spinal doses of a record of two swings and a hit', 'spinal-dose', 'dose', 'm/s²',
      {'swings': [{'size': 7, 'frequency': 3.1}, {'size': 2, 'frequency': 9.3}], 'halfSine': 25, 'duration': 12},
      {'vertical': crossings_dose(y, True), 'level': crossings_dose(level, False)}, ('relative', 1e-9, ROUNDING),
      ('ISO 2631-5:2004, dose, evaluated with NumPy', 'numpy ' + np.__version__, HERE,
       'definition of the dose from memory'), 'computed', MAKER)
write('exposure', 'spinal-stress', 'Equivalent stress of doses 5, 5, 10 m/s²', 'spinal-stress', 'stress', 'Pa',
      {'foreAndAft': 5, 'sideways': 5, 'vertical': 10},
      1e6 * ((0.015 * 5) ** 6 + (0.035 * 5) ** 6 + (0.032 * 10) ** 6) ** (1 / 6), ('relative', 1e-12, ROUNDING),
      ('ISO 2631-5', '2004', 'equivalent static compressive stress'), 'from memory')
life = lambda s: sum((s * 240 ** (1 / 6) / (6.75 - 0.066 * (20 + i) - 0.25)) ** 6 for i in range(45)) ** (1 / 6)
write('exposure', 'spinal-factor', 'Factor R of 45 years from 20 on, 240 days a year', 'spinal-factor', 'R', '1',
      {'stresses': [0.5e6, 0.8e6], 'startAge': 20, 'daysPerYear': 240, 'years': 45}, [life(0.5), life(0.8)],
      ('relative', 1e-12, ROUNDING), ('ISO 2631-5', '2004', 'Annex A, factor R'), 'from memory')

# --- The seat's own motion ---
t = np.arange(0, 4, 1 / 200)
z0, th, ph = 0.05, 0.03, 0.02
write('exposure', 'seat-place', 'Seat 0.4 m ahead and 0.35 m left of the centre: acceleration from the motion of the point',
      'seat-place', 'acceleration', 'm/s²',
      {'heave': {'size': z0, 'frequency': 1.1}, 'pitch': {'size': th, 'frequency': 1.7}, 'roll': {'size': ph,
       'frequency': 2.3}, 'ahead': 0.4, 'left': 0.35, 'rate': 200, 'samples': [2, 57, 200, 333, 797]},
      [float(-z0 * (2.2 * np.pi) ** 2 * np.sin(2.2 * np.pi * s) + 0.4 * th * (3.4 * np.pi) ** 2 * np.sin(3.4 * np.pi * s)
             - 0.35 * ph * (4.6 * np.pi) ** 2 * np.sin(4.6 * np.pi * s)) for s in t[[2, 57, 200, 333, 797]]],
      ('absolute', 1e-4, 'differences of fourth order at 200 samples a second'),
      ('Second derivative of z − x·θ + y·φ', 'closed form', HERE), 'computed', MAKER)
