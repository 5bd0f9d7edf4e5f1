"""Reference values for slack hoses: the elastica by shooting, and by SciPy's elliptic integrals.

Run: python3 -B validation/make/hoses.py, then biome over validation/checks.
"""
import numpy as np
import scipy
from scipy.integrate import solve_ivp
from scipy.optimize import brentq, fsolve
from scipy.special import ellipe, ellipk
from check_file import write

MAKER = 'hoses.py'
HERE = 'validation/make/hoses.py'


def free_bow(length, distance):
    """Half of a springy line, hinged at its end: θ'' = −p·sin θ from the middle (θ = 0, bent by κ) to the end (κ = 0)."""
    def half(kappa, p):
        run = solve_ivp(lambda s, y: [y[1], -p * np.sin(y[0]), np.cos(y[0])], (0, length / 2), [0, kappa, 0],
                        rtol=1e-12, atol=1e-13)
        return run.y[1, -1], run.y[2, -1] - distance / 2
    m = brentq(lambda m: 2 * ellipe(m) / ellipk(m) - 1 - distance / length, 1e-9, 0.83)
    scale = 2 * ellipk(m) / length
    kappa, p = fsolve(lambda x: half(*x), [1.02 * 2 * np.sqrt(m) * scale, 0.99 * scale ** 2], xtol=1e-12)
    return 1 / kappa


LENGTH = 0.4
DISTANCES = [0.38, 0.30, 0.20, 0.05]
write('hoses', 'free-bow', 'Tightest bend of a springy hose that is free at its ends', 'free-radius', 'radius at its middle', 'm',
      {'length': LENGTH, 'distances': DISTANCES}, [float(free_bow(LENGTH, each)) for each in DISTANCES],
      ('relative', 1e-7, 'integrated at rtol 1e-12 and shot to 1e-12'),
      ('Elastica integrated and shot, SciPy solve_ivp and fsolve', scipy.__version__, HERE), 'computed', MAKER)
arc = lambda c: brentq(lambda r: 2 * r * np.sin(LENGTH / (2 * r)) - c, LENGTH / (2 * np.pi) * 1.000001, 50, xtol=1e-14)
radii = [float(arc(each)) for each in DISTANCES]
write('hoses', 'arc', 'Slack hose as an arc of a circle', 'arc', 'radius and sag', 'm', {'length': LENGTH, 'distances': DISTANCES},
      {'radius': radii, 'sag': [r * (1 - np.cos(LENGTH / (2 * r))) for r in radii]},
      ('relative', 1e-9, 'root of the chord found to 1e-14'),
      ('Chord of an arc, SciPy brentq', scipy.__version__, HERE), 'computed', MAKER)
