"""Weights, springs and frequencies worked out with NumPy from first principles.

Run: python3 validation/make/statics.py, then biome over validation/checks.
"""
import numpy as np
from check_file import write

MAKER = 'statics.py'
ROUNDING = 'closed form in double precision on both sides'


def modes(ms, mu, ks, kt):
    """Undamped frequencies [Hz] of a mass on a spring on a mass on a tyre."""
    mass = np.diag([ms, mu])
    stiff = np.array([[ks, -ks], [-ks, ks + kt]])
    return np.sqrt(np.sort(np.linalg.eigvals(np.linalg.solve(mass, stiff)).real)) / (2 * np.pi)


def damping_ratio(m, k, c):
    """Damping ratio of one mass, read off its two poles: their mean decay over their geometric mean."""
    poles = np.linalg.eigvals(np.array([[0, 1], [-k / m, -c / m]]))
    return -poles.sum().real / (2 * np.sqrt(poles.prod().real))


def quarter(ms, mu, ks, kt, c):
    """A rig of four equal corners: every reading that the two-mass model of one end rests on."""
    readings = {f'measured.cornerMass.{corner}': ms + mu
                for corner in ('frontLeft', 'frontRight', 'rearLeft', 'rearRight')}
    for end in ('front', 'rear'):
        readings.update({f'{end}.axle.mass': 2 * mu, f'{end}.spring.rate': ks, f'{end}.tyre.rate': kt,
                         f'{end}.shock.slope': c})
    return readings


# Worked example with printed answers.
write('statics', 'quarter-car-textbook', 'Ride and hop frequency of the textbook quarter car', 'end-frequencies',
      'frequency', 'Hz', {'end': 'front', 'readings': quarter(317.5, 45.4, 22e3, 192e3, 0)},
      {'ride': 7.87 / (2 * np.pi), 'hop': 68.73 / (2 * np.pi)},
      ('relative', 0.002, 'the book rounds its coefficients, 4786 for 4782.9, and cuts 7.8786 to 7.87 rad/s: 0.11 %'),
      ('Barton and Fieldhouse, Automotive Chassis Engineering', '2018 (authors and year from memory)',
       'p. 209, eqs 3.81 to 3.84', 'The page was read in an online copy.'), 'read')

undamped = modes(250, 45, 16e3, 160e3)
write('statics', 'two-mass-frequencies', 'Ride and hop frequency of a common teaching car', 'end-frequencies',
      'frequency', 'Hz', {'end': 'rear', 'readings': quarter(250, 45, 16e3, 160e3, 1000)},
      {'ride': undamped[0], 'hop': undamped[1]},
      ('relative', 1e-9, f'roots of the same polynomial: {ROUNDING}'),
      ('Eigenvalues of the two-mass model (NumPy linalg.eigvals)', np.__version__, 'validation/make/statics.py'),
      'computed', MAKER)
for name, title, c in (('damping-ratio', 'Damping ratio of a common teaching car, body on its springs', 1000),
                       ('damping-ratio-strong', 'Damping ratio past critical, where nothing swings', 7000)):
    zeta = damping_ratio(250, 16e3, c)
    write('statics', name, title, 'end-damping', 'damping ratio', '1',
          {'end': 'front', 'readings': quarter(250, 45, 16e3, 160e3, c)}, {'compression': zeta, 'rebound': zeta},
          ('relative', 1e-12, ROUNDING),
          ('Poles of one mass on spring and shock (NumPy linalg.eigvals)', np.__version__,
           'validation/make/statics.py'), 'computed', MAKER)

# Weights: the moment balance as a linear system, not as the quotient that our code uses.
corner = dict(frontLeft=512.0, frontRight=498.0, rearLeft=431.0, rearRight=447.0)
L, tf, tr, uf, ur, rf, rr, h = 2.63, 1.58, 1.62, 262.0, 238.0, 0.421, 0.418, 0.83
x = dict(frontLeft=0, frontRight=0, rearLeft=L, rearRight=L)
y = dict(frontLeft=tf / 2, frontRight=-tf / 2, rearLeft=tr / 2, rearRight=-tr / 2)
total = sum(corner.values())
# Unknown masses at three places whose moments about three axes are those of the four readings.
behind, leftward = np.linalg.solve(
    np.diag([total, total]),
    [sum(m * x[k] for k, m in corner.items()), sum(m * y[k] for k, m in corner.items())])
sprung = total - uf - ur
sprung_behind = (total * behind - ur * L) / sprung
sprung_left = total * leftward / sprung
sprung_height = (total * h - uf * rf - ur * rr) / sprung
readings = {f'measured.cornerMass.{k}': m for k, m in corner.items()}
readings.update({'wheelbase': L, 'measured.cgHeight': h, 'front.track': tf, 'rear.track': tr, 'front.axle.mass': uf,
                 'rear.axle.mass': ur, 'front.tyre.radius': rf, 'rear.tyre.radius': rr})
write('statics', 'weights-moment-balance', 'Centre of gravity from four corner readings', 'weights',
      'mass, share or place', 'kg, 1, m', {'readings': readings},
      {'totalMass': total, 'sprungMass': sprung, 'frontShare': 1 - behind / L,
       'crossShare': (corner['frontLeft'] + corner['rearRight']) / total,
       'cg': {'behindFrontAxle': behind, 'left': leftward, 'height': h},
       'sprungCg': {'behindFrontAxle': sprung_behind, 'left': sprung_left, 'height': sprung_height}},
      ('relative', 1e-12, ROUNDING),
      ('Moment balance about the front axle and the centre line; axle masses taken at hub height', 'closed form',
       'validation/make/statics.py'), 'computed', MAKER)

# Spring load and settled length: Hooke, with a lever.
k, ratio, free, g = 34.5e3, 0.93, 0.412, 9.80665
spring_mass = 471.0 - 0.5 * 262.0
load = spring_mass * g / ratio
readings = {'measured.cornerMass.frontLeft': 471.0, 'measured.cornerMass.frontRight': 471.0, 'front.axle.mass': 262.0,
            'front.spring.rate': k, 'front.spring.ratio': ratio, 'front.spring.freeLength': free}
write('statics', 'settled-spring', 'Load, deflection and length of a spring that carries its corner', 'settled-spring',
      'load, deflection, length, rate', 'N, m, m, N/m', {'end': 'front', 'readings': readings},
      {'loadLeft': load, 'deflection': load / k, 'length': free - load / k, 'rateAtAxle': k * ratio ** 2},
      ('relative', 1e-12, ROUNDING),
      ("Hooke's law and virtual work: load on the spring = load at the axle ÷ travel ratio, rate at the axle = "
       'rate × ratio²', 'closed form', 'validation/make/statics.py'), 'computed', MAKER)
