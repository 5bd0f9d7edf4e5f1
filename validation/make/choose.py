"""Reference fronts and volumes for choosing: published test functions, a case solved by brute force, volumes in fractions.

Run: python3 -B validation/make/choose.py, then biome over validation/checks.
"""
import itertools
import math
import platform
from fractions import Fraction
from check_file import write

MAKER = 'choose.py'
PYTHON = platform.python_version()
ROUND = ('absolute', 1e-12, 'double precision: a dozen operations on numbers of order one')
EXACT = ('absolute', 0, 'whole numbers: nothing is rounded')
ZDT = ('Zitzler, Deb, Thiele, Evolutionary Computation 8 (2000) 173', '2000', 'test functions T1 to T3',
       'functions read in the manuals of two open libraries, which agree; the paper was not opened')
DTLZ = ('Deb, Thiele, Laumanns, Zitzler, Scalable test problems', '2005', 'DTLZ2',
        'function and front read in the manuals of two open libraries; the paper was not opened')


def beats(a, b):
    return all(x <= y for x, y in zip(a, b)) and any(x < y for x, y in zip(a, b))


def front(points):
    """Numbers of the points that no other one beats, by the definition."""
    return [i for i, p in enumerate(points) if not any(beats(q, p) for q in points)]


def number(candidate, options):
    at = 0
    for option, count in zip(candidate, options):
        at = at * count + option
    return at


def rest(x):
    return 1 + 9 * sum(x[1:]) / (len(x) - 1)


SHAPES = {
    'ZDT1': lambda u: 1 - math.sqrt(u),
    'ZDT2': lambda u: 1 - u * u,
    'ZDT3': lambda u: 1 - math.sqrt(u) - u * math.sin(10 * math.pi * u),
}
OPTIONS = [41, 4, 4]
for name, shape in SHAPES.items():
    closed = [(i / 40, shape(i / 40)) for i in range(41)]
    stands = front(closed)
    write('choose', f'{name.lower()}-front', f'{name}, 656 candidates: front on its closed form', 'test-function-front',
          'second objective by the first, and how many stand', '1', {'function': name, 'options': OPTIONS},
          {'second': [closed[i][1] for i in stands], 'first': [closed[i][0] for i in stands], 'count': len(stands)},
          ROUND, ZDT, 'computed', MAKER)
    whole = [(c[0] / 40, rest([c[0] / 40, c[1] / 3, c[2] / 3])) for c in itertools.product(*map(range, OPTIONS))]
    values = [(u, g * (1 - math.sqrt(u / g)) if name == 'ZDT1' else g * (1 - (u / g) ** 2) if name == 'ZDT2'
               else g * (1 - math.sqrt(u / g) - u / g * math.sin(10 * math.pi * u))) for u, g in whole]
    write('choose', f'{name.lower()}-who', f'{name}, 656 candidates: who stands, by brute force', 'test-function-who',
          'numbers of the candidates', '1', {'function': name, 'options': OPTIONS}, front(values),
          EXACT, ('Python', PYTHON, 'the definition of the front, all pairs'), 'computed', MAKER)

options = [7, 7, 5]
values = []
for a, b, c in itertools.product(*map(range, options)):
    g = 1 + (c / 4 - 0.5) ** 2
    s, t = a / 6 * math.pi / 2, b / 6 * math.pi / 2
    values.append((g * math.cos(s) * math.cos(t), g * math.cos(s) * math.sin(t), g * math.sin(s)))
# cos(π/2) is not quite 0 in any arithmetic of floats: candidates that are alike but for that are left to the
# resolution, as they are in use.
rounded = [tuple(round(v * 1e9) for v in p) for p in values]
write('choose', 'dtlz2-sphere', 'DTLZ2, three objectives, 245 candidates: all that stand lie on the unit sphere',
      'test-function-sphere', 'sum of squares of the objectives, largest and least', '1',
      {'function': 'DTLZ2', 'options': options, 'resolution': 1e-9}, {'largest': 1, 'least': 1},
      ROUND, DTLZ, 'read')
write('choose', 'dtlz2-who', 'DTLZ2, three objectives, 245 candidates: who stands, by brute force', 'test-function-who',
      'numbers of the candidates', '1', {'function': 'DTLZ2', 'options': options, 'resolution': 1e-9}, front(rounded),
      EXACT, ('Python', PYTHON, 'the definition of the front, all pairs'), 'computed', MAKER)

# Parts for five places, each with weight, price and hours (invented), of which the sums count.
table = [[[(7 * i + 3 * j * j + 5 * k) % 11 + 1 for k in range(3)] for j in range(4)] for i in range(5)]
sums = [tuple(sum(table[i][j][k] for i, j in enumerate(c)) for k in range(3))
        for c in itertools.product(range(4), repeat=5)]
write('choose', 'parts-for-five-places', 'Parts for five places, 1024 candidates, three sums: who stands, by brute force',
      'sums-who', 'numbers of the candidates', '1', {'table': table}, front(sums),
      EXACT, ('Python', PYTHON, 'the definition of the front, all pairs'), 'computed', MAKER)


def volume(points, corner):
    """Union of boxes by inclusion and exclusion, in fractions."""
    total = Fraction(0)
    for count in range(1, len(points) + 1):
        for some in itertools.combinations(points, count):
            box = Fraction(1)
            for k, far in enumerate(corner):
                box *= max(Fraction(0), Fraction(far) - max(Fraction(p[k]) for p in some))
            total += box if count % 2 else -box
    return float(total)


def cloud(count, width, seed):
    state, points = seed, []
    for _ in range(count):
        point = []
        for _ in range(width):
            state = state * 48271 % 2147483647
            point.append(state % 64 / 64)
        points.append(point)
    return points


for width in (2, 3, 4, 6):
    points = cloud(10, width, 17 + width)
    write('choose', f'volume-{width}', f'Volume under ten points in {width} objectives, some of them beaten',
          'volume', 'volume', '1', {'points': points, 'corner': [1] * width}, volume(points, [1] * width),
          ROUND, ('Inclusion and exclusion', 'textbook', f'in fractions, Python {PYTHON}'), 'computed', MAKER)
n = 200
write('choose', 'volume-staircase', 'Volume under 201 points on a straight front: a staircase', 'volume', 'area', '1',
      {'points': [[i / n, 1 - i / n] for i in range(n + 1)], 'corner': [1, 1]}, (n - 1) / (2 * n),
      ROUND, ('Closed form', 'textbook', '(n − 1) ÷ 2n: n(n − 1)/2 squares of side 1/n'), 'computed', MAKER)
