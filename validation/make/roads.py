"""Random roads of ISO 8608 and the roughness index, worked out with NumPy and SciPy.

Run: python3 -B validation/make/roads.py, then biome over validation/checks.
"""
import numpy as np
import scipy
from scipy.integrate import quad
from scipy.linalg import expm
from scipy.special import k1
from check_file import write

MAKER = 'roads.py'
ISO = ('ISO 8608, Mechanical vibration: road surface profiles', '1995/2016', 'Gd(n) = Gd(n0)·(n/n0)^-2, n0 = 0.1 cycles/m',
       'the class means were read in a public transcription; the formula and the band from memory')
SCIPY = ('SciPy', scipy.__version__, 'validation/make/roads.py')
CENTRES = [2.0 ** k for k in range(-6, 2)]
FADE = 'fades in over the first 0.01 m only, so that the whole period of the road is there'


def road(roughness, length, seed=1, track_width=1.5):
    return {'kind': 'road-class', 'roughness': roughness, 'length': length, 'fadeIn': 0.01, 'trackWidth': track_width,
            'seed': seed, 'mirrored': False}


# Spectrum: the mean over an octave of a spectrum that falls with n^-2 is its value at the centre, for n1·n2 = nc².
for name, roughness, seed in [('A', 16e-6, 1), ('C', 256e-6, 2), ('E', 4096e-6, 3), ('H', 262144e-6, 4)]:
    mean = [roughness * (n / 0.1) ** -2 for n in CENTRES]
    write('roads', f'class-{name.lower()}-spectrum', f'Class {name} road: spectral density by octaves, 0.016 to 2 cycles/m',
          'octave-spectrum', 'spectral density of the height', 'm³',
          {'shape': road(roughness, 8192, seed), 'centres': CENTRES, 'step': 1 / 16}, {'left': mean, 'right': mean},
          ('relative', 0.01, 'lines lie 1/8192 cycles/m apart: the lowest octave has ninety, of which those at its ends '
           f'belong to it in part; the road {FADE}'), ISO, 'computed', MAKER)

# Root mean square over the band of the standard.
roughnesses = [16e-6 * 4 ** k for k in range(8)]
rms = [1000 * np.sqrt(g * 0.1 ** 2 * (1 / 0.011 - 1 / 2.83)) for g in roughnesses]
write('roads', 'class-rms', 'Classes A to H: root mean square height', 'rms-height', 'root mean square', 'mm',
      {'shape': road(0, 1024), 'roughnesses': roughnesses, 'step': 1 / 16}, rms,
      ('relative', 1e-4, f'integral of the spectrum over 0.011 to 2.83 cycles/m; the road {FADE}'),
      ('Closed form: integral of the spectrum of ISO 8608', 'NumPy ' + np.__version__, 'validation/make/roads.py'), 'computed', MAKER)

# Coherence: the function itself, by quadrature of the plane spectrum, and of a sampled road.
width = 1.5
at = [0.011, 0.02, 0.05, 0.1, 0.2, 0.4, 0.8]


def across(n):
    kx = 2 * np.pi * n
    whole = quad(lambda ky: (kx ** 2 + ky ** 2) ** -1.5, 0, np.inf)[0]
    return quad(lambda ky: (kx ** 2 + ky ** 2) ** -1.5, 0, np.inf, weight='cos', wvar=width, epsabs=1e-11 / kx ** 2)[0] / whole


write('roads', 'isotropic-coherence', 'Coherence of two tracks 1.5 m apart on ground alike in every direction', 'track-coherence',
      'coherence', '1', {'at': at, 'trackWidth': width}, [across(n) for n in at],
      ('absolute', 1e-8, 'oscillating integral of the plane spectrum to infinity, about nine digits'),
      ('Cosine transform of the plane spectrum (kx² + ky²)^(-3/2) by QUADPACK in SciPy', scipy.__version__,
       'validation/make/roads.py'), 'computed', MAKER)
at = [0, 1e-6, 0.001, 0.011, 0.1, 0.3, 1, 2.83]
write('roads', 'bessel-coherence', 'Coherence of two tracks 1.5 m apart: x·K1(x)', 'track-coherence', 'coherence', '1',
      {'at': at, 'trackWidth': width}, [1 if n == 0 else 2 * np.pi * n * width * k1(2 * np.pi * n * width) for n in at],
      ('absolute', 1e-14, 'rounding'), SCIPY[:2] + ('scipy.special.k1',), 'computed', MAKER)

for id, width, seed in [('coherence-of-road', 1.5, 1), ('coherence-of-close-tracks', 0.4, 5)]:
    gamma = []
    for n in CENTRES:
        lo, hi = n / np.sqrt(2), n * np.sqrt(2)
        top = quad(lambda v: 2 * np.pi * width * k1(2 * np.pi * v * width) / v, lo, hi)[0]
        gamma.append(top / (1 / lo - 1 / hi))
    write('roads', id, f'Random road, tracks {width} m apart: coherence by octaves', 'octave-coherence', 'coherence', '1',
          {'shape': road(256e-6, 16384, seed, width), 'centres': CENTRES, 'step': 1 / 16}, gamma,
          ('absolute', 0.03, 'scatter of the phases: √((1 − γ²)/2) ÷ √(lines in the octave) is at most 0.018, there where '
           'γ is small in an octave of 725 lines, and less than 0.01 elsewhere'),
          SCIPY[:2] + ('scipy.special.k1, averaged over each octave by scipy.integrate.quad',), 'computed', MAKER)

# The reference quarter car of the roughness index.
A = np.array([[0, 1, 0, 0], [-63.3, -6, 63.3, 6], [0, 0, 0, 1], [63.3 / .15, 6 / .15, -(653 + 63.3) / .15, -6 / .15]])
b = np.array([0, 0, 0, 653 / .15])
for step, id in [(0.05, '5-cm'), (0.5, '50-cm')]:
    S = expm(A * step / (80 / 3.6))
    P = np.linalg.solve(A, (S - np.eye(4)) @ b)
    write('roads', f'iri-input-{id}', f'Roughness index: input column for a step of {step} m', 'iri-input', 'input column', '1 and 1/s',
          {'step': step}, P, ('relative', 1e-9, 'rounding, where the column is a small difference'),
          SCIPY[:2] + ('scipy.linalg.expm',), 'computed', MAKER)


def gain(wavelength):
    s = 2j * np.pi * (80 / 3.6) / wavelength
    z = np.linalg.solve(s * np.eye(4) - A, b)
    return abs(z[0] - z[2])


wavelengths = [1, 2, 2.4, 3, 5, 7, 10, 15, 20, 30, 50, 100]
iri = [1000 * 4 * gain(w) * 0.001 / w for w in wavelengths]
write('roads', 'iri-sines', 'Roughness index of sines of 1 mm amplitude, without the moving average', 'iri-of-sines', 'IRI', 'm/km',
      {'wavelengths': wavelengths, 'amplitude': 0.001, 'step': 0.01, 'base': 0, 'waves': 200}, iri,
      ('relative', 0.005, 'mean of |sine| over a hundred waves by samples, and a profile straight between them'),
      ('Closed form 4·G·amplitude/wavelength, G from the transfer function by NumPy', np.__version__,
       'validation/make/roads.py'), 'computed', MAKER)
write('roads', 'iri-sines-averaged', 'Roughness index of sines of 1 mm amplitude, slopes averaged over 250 mm', 'iri-of-sines', 'IRI',
      'm/km', {'wavelengths': wavelengths, 'amplitude': 0.001, 'step': 0.01, 'base': 0.25, 'waves': 200},
      [each * abs(np.sinc(0.25 / w)) for each, w in zip(iri, wavelengths)],
      ('relative', 0.005, 'mean of |sine| over a hundred waves by samples, and a profile straight between them'),
      ('Closed form 4·G·amplitude/wavelength times sinc(0.25 m/wavelength), G by NumPy', np.__version__,
       'validation/make/roads.py'), 'computed', MAKER)


# Class to roughness index, end to end: random road, quarter car, mean.
def expected_iri(roughness, base):
    square = quad(lambda n: gain(1 / n) ** 2 * np.sinc(base * n) ** 2 * (2 * np.pi * 0.1) ** 2 * roughness, 0.011, 2.83,
                  limit=400)[0]
    return 1000 * np.sqrt(2 / np.pi) * np.sqrt(square)


roughnesses = [16e-6, 256e-6, 4096e-6]
for base, id, title in [(0, 'iri-of-classes', 'without the moving average'), (0.25, 'iri-of-classes-averaged', 'as by the rule')]:
    write('roads', id, f'Random roads of class A, C and E, 10 km: roughness index {title}', 'iri-of-roads', 'IRI', 'm/km',
          {'shape': road(0, 10000, 7), 'roughnesses': roughnesses, 'step': 0.05, 'base': base},
          [{'left': expected_iri(g, base), 'right': expected_iri(g, base)} for g in roughnesses],
          ('relative', 0.03, 'scatter of the mean over 10 km of one random road; samples 5 cm apart'),
          ('Gaussian road of the spectrum of ISO 8608 through the transfer function of the reference quarter car, NumPy',
           np.__version__, 'validation/make/roads.py'), 'computed', MAKER)
