"""Brackets: plates, beams, struts, bolts, welds, fatigue, sudden loads. Values of print, closed forms worked out with NumPy
and SciPy, and the finite-element decks.

Run: python3 -B validation/make/bracket.py, then biome over validation/checks.
"""
import numpy as np
import scipy
from check_file import write
from finite_elements import PLACE, RESULTS, solved
from scipy.integrate import quad, solve_ivp
from scipy.optimize import brentq

MAKER = 'bracket.py'
HERE = 'validation/make/bracket.py'
SCIPY = f'scipy {scipy.__version__}'


def check(id, title, evaluator, quantity, unit, inputs, expected, tolerance, source, provenance='computed'):
    write('bracket', id, title, evaluator, quantity, unit, inputs, expected, tolerance, source, provenance,
          MAKER if provenance == 'computed' else None)


def deck(name):
    return ('Finite elements, CalculiX', '2.20', f'{PLACE}, {name}')


ROUNDING = ('relative', 1e-9, 'rounding')
SIX = ('relative', 2e-6, 'printed to six digits')

# --- Plates -----------------------------------------------------------------------------------------------------------

STEEL = {'thickness': 5, 'modulus': 210e3, 'poisson': 0.3}
PLATES = ('Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells', '2nd ed. 1959', 'clamped circular plates',
          'sag of the first case read in an excerpt of a handbook, the rest from memory')
check('plate-round-pressure', 'Clamped round plate under even pressure', 'round-pressure', 'sag and stress', 'mm, MPa',
      {**STEEL, 'radius': 100, 'pressure': 1, 'parts': ['sag', 'edge', 'centre']},
      {'sag': 0.65, 'edge': 300, 'centre': 195}, ROUNDING, PLATES, 'from memory')


def bent_plate(load, a=100.0, t=5.0, e=210e3, nu=0.3, patch=0.0):
    """Clamped round plate by its differential equation: slope from the shear Q(r), worked out by quadrature."""
    d = e * t ** 3 / 12 / (1 - nu ** 2)

    def shear(r):
        return load * min(1.0, (r / patch) ** 2 if patch else 1.0) / (2 * np.pi * r)

    # d/dr(1/r d(r s)/dr) = -Q/D with s = -dw/dr ... integrated twice, s(0) = s(a) = 0.
    def first(r):
        return quad(shear, 1e-9, r, points=[patch] if 0 < patch < r else None, limit=400)[0]

    def second(r):
        return quad(lambda x: x * first(x), 1e-9, r, points=[patch] if 0 < patch < r else None, limit=400)[0]
    constant = 2 * second(a) / a ** 2
    slope = lambda r: (constant * r / 2 - second(r) / r) / d  # noqa: E731
    w = quad(slope, 1e-6, a, points=[patch] if patch else None, limit=400)[0]
    centre = d * (1 + nu) * constant / 2 / d
    edge = -(constant / 2 + second(a) / a ** 2 - first(a))
    return w, 6 * centre / t ** 2, abs(6 * edge / t ** 2)


sag, centre, edge = bent_plate(1e4, patch=12.5)
assert abs(sag / 0.791017 - 1) < 1e-4 and abs(centre / 517.257 - 1) < 1e-4 and abs(edge / 189.494 - 1) < 1e-4
check('plate-round-patch', 'Clamped round plate, 10 kN on a circle of radius 12.5 mm', 'round-patch', 'sag and stress',
      'mm, MPa', {**STEEL, 'radius': 100, 'patch': 12.5, 'force': 1e4, 'parts': ['sag', 'centre', 'edge']},
      {'sag': sag, 'centre': centre, 'edge': edge}, ('relative', 1e-5, 'quadrature of the reference'),
      ('Equation of the bent round plate, by quadrature', SCIPY, HERE))
check('plate-round-point', 'The same on a point', 'round-patch', 'sag and stress', 'mm, MPa',
      {**STEEL, 'radius': 100, 'patch': 0, 'force': 1e4, 'parts': ['sag', 'edge']},
      {'sag': 1e4 * 100 ** 2 / (16 * np.pi * 210e3 * 125 / 12 / 0.91), 'edge': 3e4 / (2 * np.pi * 25)}, ROUNDING,
      ('Round plate under a point load', 'closed form', 'P·a²/16πD and 3P/2πt²'))
for t, w, s in [(4, 0.71049, 655.5), (6, 0.21052, 291.3), (8, 0.08881, 163.9)]:
    check(f'plate-bracket-{t}', f'Pad on a top plate of {t} mm', 'round-patch', 'sag and stress', 'mm, MPa',
          {'thickness': t, 'modulus': 205e3, 'poisson': 0.3, 'radius': 60, 'patch': 20, 'force': 15e3,
           'parts': ['sag', 'centre']}, {'sag': w, 'centre': s}, ('relative', 3e-4, 'printed to four digits'), PLATES,
          'from memory')
check('plate-fe-round', 'Clamped round plate under pressure against finite elements', 'round-pressure', 'sag', 'mm',
      {**STEEL, 'radius': 100, 'pressure': 1, 'parts': ['sag']}, {'sag': solved('plate-round-pressure')[0]},
      ('relative', 0.015, 'solid elements shear as well, thin plates do not'), deck('plate-round-pressure'))
check('plate-fe-patch', 'The same, load on a circle, against finite elements', 'round-patch', 'sag', 'mm',
      {**STEEL, 'radius': 100, 'patch': 12.5, 'force': 1e4, 'parts': ['sag']}, {'sag': solved('plate-round-patch')[0]},
      ('relative', 0.015, 'solid elements shear as well, thin plates do not'), deck('plate-round-patch'))
ROARK = ('Roark\'s Formulas for Stress and Strain', '7th ed.', 'table 11.4, case 8b',
         'coefficients read in a page that quotes the table; case number from memory')
for name, a, sag, edge, centre in [('square', 200, 0.93105, 301.7, 586.2), ('two-to-one', 400, 1.20076, 401.6, 644.5)]:
    inputs = {**STEEL, 'edges': [a, 200], 'patch': 10, 'force': 1e4}
    check(f'plate-{name}', f'Clamped plate {a} × 200 × 5 mm, 10 kN on a circle of radius 10 mm', 'rectangle-patch',
          'sag and stress', 'mm, MPa', {**inputs, 'parts': ['sag', 'edge', 'centre']},
          {'sag': sag, 'edge': edge, 'centre': centre}, ('relative', 3e-4, 'printed to four digits'), ROARK, 'read')
    check(f'plate-fe-{name}', f'Clamped plate {a} × 200 × 5 mm against finite elements', 'rectangle-patch', 'sag', 'mm',
          {**inputs, 'parts': ['sag']}, {'sag': solved(f'plate-{name}-patch')[0]},
          ('relative', 0.02, 'the coefficient is that of a point load: 1.5 % more sag, on the safe side'),
          deck(f'plate-{name}-patch'))

# --- Beams ------------------------------------------------------------------------------------------------------------

b, h0, h1, L, E, P = 6, 20, 80, 150, 205e3, 1000
sag = quad(lambda x: P * x * x / (E * b * (h0 + (h1 - h0) * x / L) ** 3 / 12), 0, L)[0]
assert abs(sag - 0.0541226) < 1e-7
check('beam-tapered', 'Plate on edge, 20 deep at the load and 80 at the root', 'tapered-bar', 'sag, stress',
      'mm, MPa', {'width': b, 'depths': [h0, h1], 'length': L, 'modulus': E, 'force': P},
      {'sag': sag, 'root': 6 * P * L / b / h1 ** 2, 'peak': 31.25},
      ('relative', 5e-5, 'midpoints on 200 pieces; the largest of 200 places'),
      ('Tapered cantilever', SCIPY, 'quadrature; peak where depth is twice that at the load'))
check('beam-even', 'The same, 20 deep all along', 'tapered-bar', 'sag, stress', 'mm, MPa',
      {'width': b, 'depths': [h0, h0], 'length': L, 'modulus': E, 'force': P},
      {'sag': 4 * P * L ** 3 / E / b / h0 ** 3, 'root': 375, 'peak': 375}, ROUNDING,
      ('Cantilever of one section', 'closed form', 'F·L³/3EI and 6FL/bh²'))
check('beam-tapered-place', 'The same: where the stress is largest, from the load', 'tapered-place', 'place', 'mm',
      {'width': b, 'depths': [h0, h1], 'length': L, 'modulus': E, 'force': P}, 50, ('absolute', 0.75, 'one of 200 places'),
      ('Tapered cantilever', 'closed form', 'where depth is twice that at the load'))
TOWER = {'size': 50, 'wall': 3, 'length': 110, 'modulus': 205e3, 'force': 12e3}
GUSSET = {'thickness': 4, 'count': 2, 'reach': 60, 'height': 40, 'nose': 6}
for name, gusset, reason in [
        ('plain', None, 'agreed beforehand; the section warps at the root, which beams do not know'),
        ('gusseted', GUSSET, 'agreed beforehand; shear does not spread over tube and gussets as fast as plane sections say')]:
    case = RESULTS[f'tower-{name}']
    check(f'tower-fe-{name}', f'Square tube 50 × 3, 110 mm long, {name}, against finite elements', 'tower',
          'sag, stress of the upper wall', 'mm, MPa', {**TOWER, 'gusset': gusset, 'cut': case['cut']},
          {'sag': case['values'][0], 'stress': case['values'][1]}, ('relative', 0.10, reason), deck(f'tower-{name}'))

# --- Struts -----------------------------------------------------------------------------------------------------------

TUBE = {'diameter': 44.45, 'wall': 3.048, 'modulus': 205e3}
check('strut', 'Tube 44.45 × 3.048, pinned, 600, 1000 and 1500 mm: Johnson, Johnson, Euler', 'strut', 'critical load',
      'N', {**TUBE, 'yield': 460, 'fixity': 1, 'lengths': [600, 1000, 1500]}, [165044, 134250, 76799],
      ('relative', 1e-5, 'printed to the newton'),
      ('Johnson\'s parabola and Euler\'s load', 'Shigley, 9th ed., ch. 4', 'formulas'), 'from memory')


def bowed(force, aside, length=800.0):
    """Largest stress of a pinned tube pressed beside its axis, by the differential equation of its bow."""
    area = np.pi / 4 * (44.45 ** 2 - 38.354 ** 2)
    inertia = np.pi / 64 * (44.45 ** 4 - 38.354 ** 4)
    k = np.sqrt(force / (205e3 * inertia))
    moment = force * aside / np.cos(k * length / 2)
    return force / area + moment * 44.45 / 2 / inertia


check('strut-aside', 'The same, 800 mm, pressed 5 mm beside its axis', 'strut-aside', 'largest stress', 'MPa',
      {**TUBE, 'fixity': 1, 'length': 800, 'aside': 5, 'forces': [10e3, 40e3, 80e3]},
      [bowed(f, 5) for f in (10e3, 40e3, 80e3)],
      ('relative', 0.05, 'the amplification 1/(1 - P/P_E) lies up to 5 % below the secant here'),
      ('Secant formula', 'closed form', 'bow of a strut pressed beside its axis'))

# --- Bolts and threads ------------------------------------------------------------------------------------------------

ISO = ('ISO 898-1', '2013', 'tables of proof and breaking loads', 'read in a table that quotes it')
for d, p, area, proof, ultimate in [(8, 1.25, 36.6, 21200, 29300), (10, 1.5, 58.0, 33700, 46400), (12, 1.75, 84.3, 48900, 67400)]:
    thread = {'diameter': d, 'pitch': p, 'form': 'metric'}
    check(f'thread-m{d}', f'M{d}: area that the thread pulls on', 'stress-area', 'area', 'mm²', thread, area,
          ('relative', 2e-3, 'printed to three digits'), ISO, 'read')
    check(f'bolt-m{d}', f'M{d} of class 8.8: proof and breaking load', 'bolt-loads', 'load', 'N',
          {**thread, 'class': '8.8', 'areaUnit': 1e-6, 'forceUnit': 1}, {'proof': proof, 'ultimate': ultimate},
          ('relative', 5e-3, 'the table rounds area and load'), ISO, 'read' if d == 10 else 'from memory')
check('bolt-m10-10.9', 'M10 of class 10.9: proof and breaking load', 'bolt-loads', 'load', 'N',
      {'diameter': 10, 'pitch': 1.5, 'form': 'metric', 'class': '10.9', 'areaUnit': 1e-6, 'forceUnit': 1},
      {'proof': 48100, 'ultimate': 60300}, ('relative', 5e-3, 'the table rounds area and load'), ISO, 'read')
INCH = {'diameter': 0.3125, 'pitch': 1 / 18, 'form': 'inch', 'areaUnit': 0.0254 ** 2, 'forceUnit': 4.4482216152605}
J429 = ('SAE J429', '2014', 'proof and breaking stress by grade', 'read in a table that quotes it')
for grade, proof, ultimate in [('grade 5', 4450, 0.05243 * 120e3), ('grade 8', 6290, 0.05243 * 150e3)]:
    check(f'bolt-{grade.replace(" ", "-")}', f'5/16-18 of {grade}: proof and breaking load', 'bolt-loads', 'load', 'lbf',
          {**INCH, 'class': grade}, {'proof': proof, 'ultimate': ultimate}, ('relative', 5e-3, 'the table rounds'), J429,
          'read')
check('bolt-shear', 'M10 of class 8.8 in shear through its threads', 'bolt-shear', 'load', 'N',
      {'diameter': 10, 'pitch': 1.5, 'form': 'metric', 'class': '8.8'}, 0.6 * 800 * 58,
      ('relative', 5e-4, 'the area is printed as 58.0'), ('EN 1993-1-8', '2005', 'table 3.4'), 'from memory')
check('bolt-use', 'A bolt pulled to 60 % and sheared to 80 % is used up', 'bolt-use', 'share', '1',
      {'tension': 60, 'shear': 80, 'bears': [100, 100]}, 1, ROUNDING,
      ('Ellipse of tension and shear', 'closed form', '0.6² + 0.8²'))


def strip(d, p, engaged):
    """Sheared faces of the drawn profile: width of the tooth at the crest of the other part, turn by turn, by root."""
    height = np.sqrt(3) / 2 * p
    inner = d - 1.25 * height

    def flank_at(radius):
        """Axial half-width of the tooth of the bolt at a radius, from the sharp triangle of the basic profile."""
        sharp = d / 2 + height / 8
        return (sharp - radius) * np.tan(np.pi / 6)
    nut = p - 2 * flank_at(d / 2)
    bolt = 2 * flank_at(inner / 2)
    return {'nut': np.pi * d * nut * engaged / p, 'bolt': np.pi * inner * bolt * engaged / p}


for d, p, engaged in [(10, 1.5, 8), (9.525, 25.4 / 16, 9.525)]:
    check(f'strip-{d:g}', f'Thread {d:g} × {p:.4g}, {engaged:g} mm engaged: areas that must shear', 'strip-areas', 'area',
          'mm²', {'diameter': d, 'pitch': p, 'engaged': engaged}, strip(d, p, engaged),
          ('relative', 2e-4, 'constants of the formula have four digits'),
          ('Basic profile of a 60° thread, ISO 68-1', 'drawn', HERE))

# --- Welds ------------------------------------------------------------------------------------------------------------

T92 = ('Shigley, Mechanical Engineering Design', '9th ed.', 'table 9-2, p. 488', 'read in a scan')
VERTICAL = [[-25, -40, -25, 40], [25, -40, 25, 40]]
h, d, b = 6, 80, 50
throat = np.sqrt(0.5) * h
for name, title, shape, area, unit in [
        ('two-lines', 'Two upright lines of 80 mm', {'runs': VERTICAL}, 2 * throat * d, throat * d ** 3 / 6),
        ('box', 'Around 50 × 80 mm', {'around': [b, d]}, 2 * throat * (b + d), throat * d ** 2 * (3 * b + d) / 6)]:
    tau = np.hypot(10e3 / area, 10e3 * 100 * d / 2 / unit)
    check(f'weld-{name}', f'{title}, leg 6 mm, 10 kN at 100 mm', 'weld', 'shear stress in the throat', 'MPa',
          {**shape, 'leg': h, 'load': {'across': 10e3, 'bending': 1000}}, tau, ROUNDING, T92)
check('weld-turned', 'C-shaped weld 56 × 190 mm: area, second moments, centroid', 'weld-lines', 'lines',
      'mm², mm⁴, mm⁴, mm', {'runs': [[56, 95, 0, 95], [0, 95, 0, -95], [0, -95, 56, -95]], 'throat': 0.707 * 6},
      {'area': 1281, 'inertia': 0.707 * 6 * (190 ** 3 / 12 + 2 * 56 * 95 ** 2), 'polar': 7.071e6, 'centre': 10.4},
      ('relative', 3e-3, 'printed to three digits'),
      ('Shigley, Mechanical Engineering Design', '9th ed.', 'example 9-1'), 'from memory')
# The load hangs beyond the web: at its corners shear and turning add up, at the ends of the flanges they do not.
check('weld-example', 'The same under 25 kN, 100 mm beyond the web: worst and best corner', 'weld-corners',
      'shear stress in the throat', 'MPa',
      {'runs': [[56, 95, 0, 95], [0, 95, 0, -95], [0, -95, 56, -95]], 'leg': 6,
       'load': {'across': -25e3, 'turning': 2.76e3}}, {'most': 43.9, 'least': 37.1},
      ('relative', 0.01, 'rounding of the worked example; the book prints 44.0 and 37.0'),
      ('Shigley, Mechanical Engineering Design', '9th ed.', 'example 9-1'), 'from memory')

check('weld-lap', 'Two welds of 50 mm, leg 5 mm, under 49.5 kN', 'weld', 'shear stress in the throat', 'MPa',
      {'runs': [[0, -25, 0, 25], [40, -25, 40, 25]], 'leg': 5, 'load': {'across': 49.5e3}}, 140,
      ('relative', 2e-3, 'the load is printed to three digits'),
      ('Shigley, Mechanical Engineering Design', '9th ed.', 'problem 9-1', 'read in a page that quotes it'), 'read')

# --- Holes ------------------------------------------------------------------------------------------------------------

check('bearing', 'M10 in a wall of 4 mm, edge 25 mm and far', 'bearing', 'force', 'N',
      {'bolt': 10, 'hole': 11, 'wall': 4, 'edge': 25, 'wallUltimate': 360, 'boltUltimate': 800},
      2.5 * 25 / 33 * 360 * 10 * 4, ROUNDING, ('EN 1993-1-8', '2005', 'table 3.4, bearing'), 'from memory')

# --- Fatigue ----------------------------------------------------------------------------------------------------------

EC = ('EN 1993-1-9', '2005', '7.1, figures 7.1 and 7.2')
check('fatigue-line', 'Class 63: loops at 126, 63, 46.42, 40 and 25 MPa', 'loops-to-crack', 'loops', '1',
      {'ranges': [126, 63, 63 * 0.4 ** (1 / 3), 40], 'detail': 63, 'kind': 'direct'},
      [2.5e5, 2e6, 5e6, 5e6 * (0.7368062997 * 63 / 40) ** 5], ('relative', 1e-8, 'rounding'), EC, 'from memory')
check('fatigue-shear', 'Class 80 in shear: loops at 160 and 80 MPa', 'loops-to-crack', 'loops', '1',
      {'ranges': [160, 80], 'detail': 80, 'kind': 'shear'}, [2e6 / 32, 2e6], ROUNDING, EC, 'from memory')
HISTORY = [-20, 10, -30, 50, -10, 30, -40, 40, -20]
LOOPS = [(30, 0.5), (40, 1.5), (60, 0.5), (80, 1), (90, 0.5)]


def to_crack(s, c=63.0):
    knee = c * 0.4 ** (1 / 3)
    n = 2e6 * (c / s) ** 3 if s >= knee else 5e6 * (knee / s) ** 5
    return n if n <= 1e8 else np.inf


check('fatigue-sum', 'ASTM E1049\'s example as stress, class 63, ten thousand times', 'crack-share', 'share of life', '1',
      {'history': HISTORY, 'detail': 63, 'times': 1e4, 'factor': 1.35}, sum(1e4 * n / to_crack(s) for s, n in LOOPS),
      ('relative', 1e-9, 'rounding'), ('ASTM E1049 and EN 1993-1-9', SCIPY, HERE))

# --- Sudden loads -----------------------------------------------------------------------------------------------------


def factor(load, share):
    """Largest deflection by integrating x'' = (2π)²·(load − x), all the load and one free period after."""
    w = 2 * np.pi
    peak, state, begin = 0.0, [0.0, 0.0], 0.0
    for end in sorted({share / 2, share, share + 1.0}):
        run = solve_ivp(lambda t, y: [y[1], w * w * (load(t) - y[0])], (begin, end), state, rtol=1e-10, atol=1e-12,
                        max_step=share / 50 if end <= share else 0.01, dense_output=True)
        at = np.linspace(begin, end, 4001)
        peak, state, begin = max(peak, run.sol(at)[0].max()), run.y[:, -1], end
    return peak


BIGGS = ('Motion of one mass on a spring, integrated', SCIPY, HERE)
for shape, shares, load in [
        ('rectangle', [0.1, 0.25, 0.5, 1.5], lambda s: lambda t: 1.0 if t < s else 0.0),
        ('ramp', [0.5, 1, 1.5], lambda s: lambda t: min(t / s, 1.0)),
        ('half-sine', [0.1, 0.25, 0.5, 0.811, 1, 2], lambda s: lambda t: np.sin(np.pi * t / s) if t < s else 0.0),
        ('triangle', [0.5, 0.9, 1], lambda s: lambda t: max(0.0, 1 - abs(2 * t / s - 1))),
        ('falling', [0.5, 1, 2, 5], lambda s: lambda t: max(0.0, 1 - t / s))]:
    check(f'sudden-{shape}', f'Load factor: {shape}', 'load-factor', 'factor', '1', {'shape': shape, 'shares': shares},
          [factor(load(s), s) for s in shares], ('relative', 5e-4, 'largest of the places looked at'), BIGGS)
check('sudden-printed', 'Load factor of half a sine: printed values', 'load-factor', 'factor', '1',
      {'shape': 'half-sine', 'shares': [0.1, 0.25, 0.5, 1, 2]}, [0.396, 0.943, 1.571, 1.732, 1.268],
      ('absolute', 1e-3, 'printed to three decimals'),
      ('Biggs, Introduction to Structural Dynamics', '1964', 'ch. 2, shock spectra'), 'from memory')
check('drop', 'Drop factor at h/δ 0, 5 and 25', 'drop', 'factor', '1', {'heights': [0, 5, 25]}, [2, 4.3166, 8.1414],
      ('relative', 2e-5, 'printed to four decimals'), ('Energy of a drop', 'closed form', '1 + √(1 + 2h/δ)'), 'from memory')
check('impact', '300 kg at 1.5 m/s into 250 N/mm', 'impact', 'force', 'N', {'speed': 1.5, 'rate': 250, 'mass': 300},
      1.5 * np.sqrt(250e3 * 300), ROUNDING, ('Energy of an impact', 'closed form', 'v·√(k·m)'))
