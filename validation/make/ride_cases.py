"""Our own reference rides in the format `ride-case/1`, solved by whole_rig.py, and the four given ones solved again.

Run: python3 -B validation/make/ride_cases.py (a few minutes). Writes validation/ride-cases/own-*.json; for the others it
prints how far its solution is from what stands in them.
"""
import json
import math
import pathlib

import numpy as np
import scipy
from whole_rig import CORNERS, RTOL, Rig, drive

CASES = pathlib.Path(__file__).resolve().parent.parent / 'ride-cases'
DIGITS = 9
VEHICLE = {
    'sprung': {'mass': 1520, 'rollInertia': 560, 'pitchInertia': 1900, 'toFrontAxle': 1.18, 'toRearAxle': 1.46},
    'front': {
        'axle': {'mass': 255, 'rollInertia': 68}, 'halfTrack': 0.82, 'spring': {'halfStation': 0.43, 'rate': 33000},
        'shock': {'halfStation': 0.54, 'speed': [-3, -1, -0.4, -0.1, 0, 0.08, 0.3, 1, 3],
                  'force': [-6500, -3100, -1900, -700, 0, 240, 640, 1500, 3600]},
        'stop': {'halfStation': 0.42, 'gap': 0.055, 'crush': [0, 0.01, 0.022, 0.034, 0.046],
                 'force': [0, 420, 1500, 4300, 12500], 'rateFactor': 0.2},
        'metal': {'atCrush': 0.046, 'rate': 1.2e7}, 'droopLimit': {'at': 0.12, 'rate': 6e5, 'rateFactor': 0.15},
        'tyre': {'rate': 215000, 'damping': 350}},
    'rear': {
        'axle': {'mass': 210, 'rollInertia': 54}, 'halfTrack': 0.8, 'spring': {'halfStation': 0.49, 'rate': 29000},
        'shock': {'halfStation': 0.57, 'speed': [-3, -1, -0.4, -0.1, 0, 0.08, 0.3, 1, 3],
                  'force': [-5800, -2700, -1600, -600, 0, 210, 560, 1300, 3200]},
        'stop': {'halfStation': 0.46, 'gap': 0.07, 'crush': [0, 0.015, 0.03, 0.04, 0.05],
                 'force': [0, 600, 2100, 4800, 11000], 'rateFactor': 0.25},
        'metal': {'atCrush': 0.05, 'rate': 1.5e7}, 'droopLimit': {'at': 0.15, 'rate': 5e5, 'rateFactor': 0.2},
        'tyre': {'rate': 225000, 'damping': 420}},
    'gravity': 9.80665}


def rough_road(roughness, seed, waves=48):
    """A random road as a sum of waves: amplitudes from G(n) = G(n0)(n/n0)^-2 at n0 = 0.1 per metre, phases by lot, and the
    tracks alike where waves are long, coherence exp(-2n)."""
    rng = np.random.default_rng(seed)
    edges = np.geomspace(0.05, 2, waves + 1)
    out = []
    for low, high in zip(edges[:-1], edges[1:]):
        n = math.sqrt(low * high)
        power = 2 * roughness * (n / 0.1) ** -2 * (high - low)
        alike = math.exp(-2 * n)
        phases = rng.uniform(0, 2 * math.pi, 3)
        out.append({'n': round(n, 6), 'common': round(math.sqrt(power * alike), 7), 'commonPhase': round(phases[0], 6),
                    'own': round(math.sqrt(power * (1 - alike)), 7), 'leftPhase': round(phases[1], 6),
                    'rightPhase': round(phases[2], 6)})
    return out


OWN = {
    'own-road-class-f': ({'kind': 'waves', 'fadeIn': 8, 'waves': rough_road(16384e-6, 3)}, 9, 5, 0),
    'own-whoops-crossed': ({'kind': 'whoops', 'height': 0.24, 'spacing': 4.6, 'count': 4, 'start': 1.5,
                            'rightPhase': 2.2}, 8.5, 4, 0),
    'own-ledge-both': ({'kind': 'ledge', 'side': 'both', 'height': 0.09, 'length': 0.18, 'start': 2}, 10, 2.5, 0),
}


def model_of(vehicle):
    """As whole_rig.py takes it: an element stands at its axle or once for the vehicle."""
    def axle(end):
        at = vehicle[end]

        def element(name, mount=None):
            return {**vehicle.get(name, {}), **at.get(name, {}), **(at.get(mount, {}) if mount else {})}
        both = lambda x: {'left': x, 'right': x}
        shock, stop, metal = element('damper', 'shock'), element('stop'), element('metal')
        return {'mass': at['axle']['mass'], 'rollInertia': at['axle']['rollInertia'], 'halfTrack': at['halfTrack'],
                'spring': {**at['spring'], 'ratio': 1}, 'shock': {**shock, 'ratio': 1},
                'stop': {**stop, 'ratio': 1, 'gap': both(stop['gap'])},
                'metal': {'rate': metal['rate'], 'atCrush': both(metal['atCrush'])},
                'droopLimit': element('droopLimit'), 'tyre': element('tyre')}
    return {'sprung': vehicle['sprung'], 'axles': {end: axle(end) for end in ('front', 'rear')},
            'gravity': vehicle['gravity']}


def ground_of(terrain):
    """Height and slope at a distance, and the places where the law changes."""
    kind = terrain['kind']
    if kind == 'flat':
        return (lambda s, side: (0.0, 0.0)), []
    if kind == 'ledge':
        height, length, start = (terrain[key] for key in ('height', 'length', 'start'))
        sides = {'left': (1,), 'right': (-1,), 'both': (1, -1)}[terrain.get('side', 'both')]

        def ledge(s, side):
            u = s - start
            if side not in sides or u <= 0:
                return 0.0, 0.0
            if u >= length:
                return height, 0.0
            k = math.pi / length
            return height / 2 * (1 - math.cos(k * u)), height / 2 * k * math.sin(k * u)
        return ledge, [start, start + length]
    if kind == 'whoops':
        height, spacing = terrain['height'], terrain['spacing']
        far, k = terrain['count'] * spacing, 2 * math.pi / spacing
        late = terrain.get('rightPhase', 0) / k

        def whoops(s, side):
            u = s - terrain['start'] - (late if side < 0 else 0)
            if not 0 < u < far:
                return 0.0, 0.0
            return height / 2 * (1 - math.cos(k * u)), height / 2 * k * math.sin(k * u)
        return whoops, [terrain['start'] + more for more in (0, far, late, late + far)]
    n, common, shift, own, left, right = (
        np.array([wave[key] for wave in terrain['waves']])
        for key in ('n', 'common', 'commonPhase', 'own', 'leftPhase', 'rightPhase'))
    k, fade = 2 * math.pi * n, terrain['fadeIn']
    # The two sines of a wave are one sine: of one amplitude and phase a side.
    sums = {side: common * np.exp(1j * shift) + own * np.exp(1j * phase) for side, phase in ((1, left), (-1, right))}

    def waves(s, side):
        if s <= 0:
            return 0.0, 0.0
        turned = sums[side] * np.exp(1j * k * s)
        height, slope = float(turned.imag.sum()), float((k * turned.real).sum())
        if s >= fade:
            return height, slope
        c = s / fade
        gain, rate = c ** 3 * (10 - 15 * c + 6 * c * c), 30 * c * c * (1 - c) ** 2 / fade
        return gain * height, gain * slope + rate * height
    return waves, [0.0, fade]


def solve(vehicle, terrain, speed, duration, lift):
    ground, places = ground_of(terrain)
    wheelbase = vehicle['sprung']['toFrontAxle'] + vehicle['sprung']['toRearAxle']
    breaks = [(place + late) / speed for place in places for late in (0, wheelbase)]
    found = drive(Rig(model_of(vehicle), ground, speed, lift), duration, breaks)
    each = lambda values: [round(values[corner], DIGITS) for corner in CORNERS]
    return {'order': list(CORNERS), 'peakCrush': each(found['crush']), 'peakStopForce': each(found['force']),
            'peakBodyAcceleration': round(found['peak']['body'], 5), 'rmsBodyAcceleration': round(found['bodyRms'], 8),
            'tyreAirborneShare': round(found['airborne'], 6), 'bodyHeaveAtEnd': round(float(found['state'][0]), 8),
            'bodyPitchAtEnd': round(float(found['state'][1]), 8)}, found['events']


for path in sorted(CASES.glob('*.json')):
    if path.name.startswith('own-'):
        continue
    case = json.loads(path.read_text())
    ours, events = solve(case['vehicle'], case['terrain'], case['speed'], case['duration'], case['initialLift'])
    off = {}
    for key, theirs in case['expected'].items():
        if key == 'order':
            continue
        pairs = zip(ours[key], theirs) if isinstance(theirs, list) else [(ours[key], theirs)]
        off[key] = max(abs(a - b) / (1 if 'AtEnd' in key else max(abs(b), 1e-9)) for a, b in pairs)
    print(path.stem, events, 'switches; largest difference', {key: f'{value:.1e}' for key, value in off.items()}, flush=True)

for name, (terrain, speed, duration, lift) in OWN.items():
    expected, events = solve(VEHICLE, terrain, speed, duration, lift)
    print(name, events, 'switches', expected, flush=True)
    case = {'format': 'ride-case/1', 'name': name,
            'solvers': f'SciPy {scipy.__version__} DOP853 with switches located, rtol {RTOL:g}: validation/make/ride_cases.py',
            'vehicle': VEHICLE, 'terrain': terrain, 'speed': speed, 'duration': duration, 'initialLift': lift,
            'expected': expected,
            'tolerance': {'peakCrush': 0.001, 'peakStopForce': 0.01, 'peakBodyAcceleration': 0.01,
                          'rmsBodyAcceleration': 0.001, 'tyreAirborneShare': 0.003,
                          'bodyHeaveAtEnd': '1e-4 m absolute', 'bodyPitchAtEnd': '1e-4 rad absolute',
                          'note': 'relative unless said; peaks below 1 mm or 100 N are not compared'}}
    (CASES / f'{name}.json').write_text(json.dumps(case, indent=1) + '\n')
