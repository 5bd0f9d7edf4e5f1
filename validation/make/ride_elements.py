"""Whole rides of an uneven, invented rig with each further element: gas, seals, bar, shock ends, oil, friction, viscous
branch, seat; and one with all of them. The equations stand in whole_rig.py.

Run: python3 -B validation/make/ride_elements.py (a few minutes), then biome over validation/checks.
"""
import copy
import math

import scipy
from check_file import write
from uneven_rig import BASE
from whole_rig import CORNERS, RTOL, Rig, drive

ATMOSPHERE = 101325.0
WHOOPS = {'kind': 'whoops', 'height': 0.28, 'spacing': 5.5, 'count': 3, 'start': 1.0, 'rightPhase': 0.9}
LEDGE = {'kind': 'ledge', 'side': 'left', 'height': 0.16, 'length': 0.35, 'start': 1.0}
DROP = {'kind': 'drop', 'height': 0.4}
RIDES = {'whoops': (WHOOPS, 8.0, 3.0), 'ledge': (LEDGE, 5.0, 2.0), 'drop': (DROP, 5.0, 1.5)}

GAS = {'front': {'pressure': 1.4e6, 'rodDiameter': 0.022, 'rise': 0.35, 'stroke': 0.25, 'fromOpen': 0.12},
       'rear': {'pressure': 1.2e6, 'rodDiameter': 0.022, 'rise': 0.3, 'stroke': 0.28, 'fromOpen': 0.15}}
SEALS = {'front': 45.0, 'rear': 55.0}
BARS = {'front': {'linkRate': 52e3, 'linkSpread': 0.9, 'linkRatio': 0.95},
        'rear': {'linkRate': 30e3, 'linkSpread': 0.84, 'linkRatio': 1.0}}
ENDS = {'front': {'closedAt': 0.075, 'openAt': 0.085, 'rate': 2e6}, 'rear': {'closedAt': 0.08, 'openAt': 0.08, 'rate': 1.5e6}}
OIL = {'front': 900.0, 'rear': 700.0}
FRICTION = {'front': {'limit': 0.25, 'halfTravel': 0.0012}, 'rear': {'limit': 0.18, 'halfTravel': 0.001}}
MAXWELL = {'front': {'rate': 90e3, 'damping': 4000.0}, 'rear': {'rate': 70e3, 'damping': 3000.0}}
SEAT = {'mass': 82.0, 'rate': 42e3, 'damping': 1100.0, 'ahead': -0.25, 'left': 0.38}


def ground_of(course):
    kind = course['kind']
    if kind == 'drop':
        return lambda s, side: (0.0, 0.0)
    if kind == 'ledge':
        height, length = course['height'], course['length']

        def ledge(s, side):
            u = s - course['start']
            if side < 0 or u <= 0:
                return 0.0, 0.0
            if u >= length:
                return height, 0.0
            k = math.pi / length
            return height / 2 * (1 - math.cos(k * u)), height / 2 * k * math.sin(k * u)
        return ledge
    height, spacing = course['height'], course['spacing']
    k = 2 * math.pi / spacing

    def whoops(s, side):
        u = s - course['start'] - (course['rightPhase'] / k if side < 0 else 0)
        if not 0 < u < course['count'] * spacing:
            return 0.0, 0.0
        return height / 2 * (1 - math.cos(k * u)), height / 2 * k * math.sin(k * u)
    return whoops


def breaks_of(course, speed, wheelbase):
    if course['kind'] == 'drop':
        return []
    if course['kind'] == 'ledge':
        places = [course['start'], course['start'] + course['length']]
    else:
        places = [course['start'] + late + far for late in (0, course['rightPhase'] * course['spacing'] / 2 / math.pi)
                  for far in (0, course['count'] * course['spacing'])]
    return [(place + late) / speed for place in places for late in (0, wheelbase)]


def fitted(parts):
    """The model with the parts' own readings worked out by their equations."""
    model = copy.deepcopy(BASE)
    for end, axle in model['axles'].items():
        shock = axle['shock']
        if 'gas' in parts:
            # Boyle: the column that gains the rise over the stroke, then force and rate of a slow stroke at ride height.
            gas = parts['gas'][end]
            p, area = gas['pressure'] + ATMOSPHERE, math.pi * gas['rodDiameter'] ** 2 / 4
            q = (gas['pressure'] * (1 + gas['rise']) + ATMOSPHERE) / p
            column = gas['stroke'] * q / (q - 1)
            left = column - gas['fromOpen']
            shock['gas'] = {'force': area * (p * column / left - ATMOSPHERE), 'rate': area * p * column / left ** 2}
        if 'seals' in parts:
            # A straight rise to the friction at 0.01 m/s, then constant, beside the table: corners at both.
            table = dict(zip(shock['speed'], shock['force']))
            speeds = sorted({*shock['speed'], -0.01, 0.01})
            lines = [BASE['axles'][end]['shock'][key] for key in ('speed', 'force')]
            shock['force'] = [at_table(*lines, v) + parts['seals'][end] * max(-1.0, min(1.0, v / 0.01)) for v in speeds]
            shock['speed'] = speeds
            assert table[0] == 0
        if 'bars' in parts:
            bar = parts['bars'][end]
            axle['antiRollRate'] = bar['linkRate'] * (bar['linkRatio'] * bar['linkSpread']) ** 2
        if 'ends' in parts:
            shock['ends'] = parts['ends'][end]
        if 'oil' in parts:
            axle['stop']['oilFactor'] = parts['oil'][end]
        for name in ('friction', 'maxwell'):
            if end in parts.get(name, {}):
                axle['stop'][name] = parts[name][end]
        if end in parts.get('maxwell', {}):
            axle['stop']['rateFactor'] = 0.0
    if 'seat' in parts:
        model['seat'] = parts['seat']
    return model


def at_table(x, y, v):
    i = max(0, min(len(x) - 2, sum(v >= each for each in x[1:])))
    return y[i] + (y[i + 1] - y[i]) / (x[i + 1] - x[i]) * (v - x[i])


def check(id, title, ride, parts):
    course, speed, duration = RIDES[ride]
    model = fitted(parts)
    sprung = model['sprung']
    rig = Rig(model, ground_of(course), speed, course['height'] if course['kind'] == 'drop' else 0.0)
    found = drive(rig, duration, breaks_of(course, speed, sprung['toFrontAxle'] + sprung['toRearAxle']))
    touched = [corner for corner in CORNERS if found['crush'][corner] > 1e-3]
    print(id, {c: round(1e3 * found['crush'][c], 3) for c in touched}, found['bodyRms'], found['events'], flush=True)
    expected = {'peakCrush': {c: found['crush'][c] for c in touched},
                'peakStopForce': {c: found['force'][c] for c in touched},
                'peakAcceleration': found['peak']['body'], 'rmsAcceleration': found['bodyRms']}
    if 'seat' in parts:
        expected['seat'] = {'peakAcceleration': found['peak']['seat'], 'rmsAcceleration': found['seatRms']}
    write('ride', id, title, 'fitted-ride', 'crush, force, acceleration', 'm, N, m/s²',
          {'model': BASE, 'parts': parts, 'corners': touched, 'course': course, 'speed': speed, 'duration': duration},
          expected,
          ('relative', 1e-3, 'the accuracy that a ride promises; the reference itself is exact to 1e-6 or better'),
          (f'Equations of docs/theory written again in Python, SciPy DOP853 with its switches located, rtol {RTOL:g}',
           scipy.__version__, 'validation/make/whole_rig.py'), 'computed', 'ride_elements.py')


check('fitted-gas-seals', 'Whole ride with gas and seal friction in the shocks', 'whoops', {'gas': GAS, 'seals': SEALS})
check('fitted-bars', 'Whole ride with anti-roll bars', 'whoops', {'bars': BARS})
check('fitted-bars-ledge', 'Ledge under one side with anti-roll bars', 'ledge', {'bars': BARS})
check('fitted-shock-ends', 'Whole ride with shocks that reach both their ends', 'whoops', {'ends': ENDS})
check('fitted-shock-ends-drop', 'Drop with shocks that top out in the air and bottom on landing', 'drop', {'ends': ENDS})
check('fitted-oil', 'Drop on stops with oil behind them', 'drop', {'oil': OIL})
check('fitted-friction', 'Whole ride with friction in the stops', 'whoops', {'friction': FRICTION})
check('fitted-friction-ledge', 'Ledge under one side with friction in the stops', 'ledge', {'friction': FRICTION})
check('fitted-viscous', 'Whole ride with a viscous branch in the stops', 'whoops', {'maxwell': MAXWELL})
check('fitted-viscous-drop', 'Drop on stops with a viscous branch', 'drop', {'maxwell': MAXWELL})
check('fitted-both', 'Whole ride with friction and a viscous branch in every stop', 'whoops',
      {'friction': FRICTION, 'maxwell': MAXWELL})
check('fitted-both-drop', 'Drop on stops with friction and a viscous branch', 'drop',
      {'friction': FRICTION, 'maxwell': MAXWELL})
check('fitted-seat', 'Ledge under one side with a sitter on a seat of his own', 'ledge', {'seat': SEAT})
check('fitted-everything', 'Whole ride with all of these: friction in the front stops, a viscous branch in the rear ones',
      'whoops', {'gas': GAS, 'seals': SEALS, 'bars': BARS, 'ends': ENDS, 'oil': OIL, 'seat': SEAT,
                 'friction': {'front': FRICTION['front']}, 'maxwell': {'rear': MAXWELL['rear']}})
