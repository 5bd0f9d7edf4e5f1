"""Checks of solids: densities and walls of a gyroid sheet, and volumes of whole stops by counting points. Nothing of
this knows triangles: a point is solid or it is not."""
import numpy as np
from scipy.optimize import brentq

from check_file import write

NUMPY = f'NumPy {np.__version__}'
HERE = 'validation/make/solids.py'
MAKER = 'solids.py'


def level(x, y, z):
    return np.sin(x) * np.cos(y) + np.sin(y) * np.cos(z) + np.sin(z) * np.cos(x)


def check(id, title, evaluator, quantity, unit, inputs, expected, tolerance, source):
    write('solids', id, title, evaluator, quantity, unit, inputs, expected, tolerance, source, 'computed', MAKER)


# --- The sheet in one cell ------------------------------------------------------------------------------------------

N = 256
# Unevenly shifted, so that the mirror images of the sheet are not counted at the same places again.
px, py, pz = (2 * np.pi * (np.arange(N) + shift) / N for shift in (0.31, 0.57, 0.83))
LEVELS = np.sort(np.abs(level(px[:, None, None], py[None, :, None], pz[None, None, :])).ravel())


def density(t):
    return np.searchsorted(LEVELS, t, side='right') / LEVELS.size


def half_level(rho):
    return np.interp(rho * LEVELS.size, np.arange(LEVELS.size) + 0.5, LEVELS)


GRID = ('Points of a cell counted by NumPy', NUMPY, f'{HERE}, {N}³ points')
T = [0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1.0, 1.1, 1.2, 1.3, 1.4, 1.5]
check('sheet-density', 'Gyroid sheet: share of its cell by half level', 'sheet-density', 'relative density', '1',
      {'levels': T}, [density(t) for t in T], ('absolute', 3e-4, 'of the counting: surface points ÷ all points'), GRID)
R = [0.05, 0.1, 0.15, 0.2, 0.25, 0.3, 0.4, 0.5, 0.6, 0.7]
check('sheet-level', 'Gyroid sheet: half level of a density', 'sheet-level', 'half level', '1', {'densities': R},
      [half_level(r) for r in R], ('absolute', 6e-4, 'of the counting, by the slope of the density'), GRID)

rng = np.random.default_rng(11)
points = rng.uniform(0, 2 * np.pi, (40000, 3))
for _ in range(40):
    x, y, z = points.T
    slope = np.stack([np.cos(x) * np.cos(y) - np.sin(z) * np.sin(x), np.cos(y) * np.cos(z) - np.sin(x) * np.sin(y),
                      np.cos(z) * np.cos(x) - np.sin(y) * np.sin(z)], 1)
    points = points - (level(x, y, z) / (slope ** 2).sum(1).clip(0.1))[:, None] * slope
good = np.abs(level(*points.T)) < 1e-12
points, normal = points[good], (slope / np.linalg.norm(slope, axis=1)[:, None])[good]


def thinnest(rho):
    """Least length of a straight line across the sheet, square to its middle surface."""
    t = half_level(rho)
    low, high = np.zeros(len(points)), np.zeros(len(points))
    for sign, into in ((1, high), (-1, low)):
        a, b = np.zeros(len(points)), np.full(len(points), 1.5)
        for _ in range(50):
            m = (a + b) / 2
            inside = np.abs(level(*(points + sign * m[:, None] * normal).T)) < t
            a, b = np.where(inside, m, a), np.where(inside, b, m)
        into[:] = a
    return (low + high).min() / (2 * np.pi)


W = [0.1, 0.2, 0.3, 0.4, 0.5]
check('sheet-wall', 'Gyroid sheet: thinnest wall ÷ cell', 'sheet-wall', 'thinnest wall', 'cell', {'densities': W},
      [thinnest(r) for r in W], ('relative', 0.005, 'random points come near to the thinnest place only'),
      ('Lines across the sheet from random points of its middle surface, NumPy', NUMPY, HERE))

# --- Whole stops ----------------------------------------------------------------------------------------------------

# No whole part of a cell: else every cell would be counted at the same places.
STEP = 0.1937


def counted(body, slices):
    """Volume [mm³] of the whole and of slices of the lattice, by points at the middles of cubes of STEP."""
    height, foot, tip, plate = body['height'], body['foot'], body['tip'], body['plate']
    half = max(foot, tip) / 2
    xy = np.arange(-half - STEP, half + STEP, STEP) + STEP / 2
    x, y = np.meshgrid(xy, xy, indexing='ij')
    r = np.hypot(x, y)
    k = 2 * np.pi / body['cell']
    whole, parts = 0.0, np.zeros(slices)
    end = plate + height + body['cap']
    # Layers of plate, of each slice and of the cap by themselves: none lies in two of them.
    edges = [0.0, *(plate + height * np.arange(slices + 1) / slices), end]
    layers = [(low + (i + 0.5) * (high - low) / n, (high - low) / n) for low, high in zip(edges, edges[1:]) if high > low
              for n in [max(1, round((high - low) / STEP))] for i in range(n)]
    for z, thick in layers:
        above = min(max(z - plate, 0), height)
        outer = (foot + (tip - foot) * above / height) / 2
        rho = body['density'][0] + (body['density'][1] - body['density'][0]) * above / height
        solid = np.abs(level(k * x, k * y, k * (z - plate))) <= half_level(rho)
        if z < plate or z > plate + height:
            solid[:] = True
        if body['skin'] > 0:
            solid |= r > outer - body['skin']
        solid &= r < outer
        if z > plate:
            solid &= r > body['bore'] / 2
        if body['nut'] is not None and z < plate:
            hole, flats, low, high = body['nut']
            free = r < hole / 2
            if low < z < high:
                free |= np.all([np.abs(x * np.cos(a) + y * np.sin(a)) < flats / 2 for a in
                                (0, np.pi / 3, 2 * np.pi / 3)], axis=0)
            solid &= ~free
        volume = solid.sum() * STEP ** 2 * thick
        whole += volume
        if plate < z < plate + height:
            parts[min(int((z - plate) / height * slices), slices - 1)] += volume
    return whole, parts


COUNT = ('Points of a stop counted by NumPy', NUMPY, f'{HERE}, cubes of {STEP} mm')
# M10: clearance 11, nut 16 across flats and 8.4 high; 0.4 of play, 4 mm of plate below it and 2 above.
M10 = [11, 16.4, 4, 4 + 8.4 + 0.4]
BARE = {'height': 70, 'foot': 60, 'tip': 60, 'bore': 0, 'skin': 0, 'density': [0.5, 0.3], 'cell': 8, 'plate': 3,
        'cap': 0, 'nut': None}
BODIES = {
    'stop-60x70': ('Stop of 60 × 70 mm, 50 % to 30 %, cell 8 mm', BARE),
    'stop-nut': ('The same on a plate with a captive nut, with bore and cap',
                 {**BARE, 'plate': 14.8, 'nut': M10, 'bore': 12, 'cap': 2}),
    'stop-skin': ('Tapered stop with a skin, 45 % to 28 %, cell 10 mm',
                  {**BARE, 'height': 60, 'foot': 60, 'tip': 50, 'skin': 1.2, 'density': [0.45, 0.28], 'cell': 10}),
}
for id, (title, body) in BODIES.items():
    slices = round(body['height'] / body['cell'])
    whole, parts = counted(body, slices)
    check(f'{id}-volume', f'{title}: volume', 'solid-volume', 'solid volume', 'mm³', {'body': body}, whole,
          ('relative', 0.005, 'triangles against points: chords and the counting'), COUNT)
    check(f'{id}-slices', f'{title}: volume of each slice', 'solid-slices', 'solid volume', 'mm³', {'body': body},
          parts, ('relative', 0.01, 'a third of the 3 % that a slice may be off its density'), COUNT)
    middle = (np.arange(slices) + 0.5) / slices
    # The mean over a slice of skin and lattice on their shares of an outline that may taper.
    u = (np.arange(slices * 200) + 0.5) / (slices * 200)
    outer = (body['foot'] + (body['tip'] - body['foot']) * u) / 2
    rho = body['density'][0] + (body['density'][1] - body['density'][0]) * u
    area = outer ** 2 - (body['bore'] / 2) ** 2
    skin = outer ** 2 - (outer - body['skin']) ** 2
    asked = (skin + rho * (area - skin)).reshape(slices, 200).sum(1) / area.reshape(slices, 200).sum(1)
    check(f'{id}-density', f'{title}: density of each slice as asked', 'solid-density', 'solid share', '1',
          {'body': body}, asked, ('relative', 0.03, 'what a slice of one cell may be off (issue 5)'),
          ('The density that was asked for, averaged over the slice', NUMPY, HERE))
