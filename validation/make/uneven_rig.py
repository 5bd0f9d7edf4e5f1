"""The uneven, invented rig of the rides: elements with travel ratios, sides that differ. Used by ride_switching.py and
ride_elements.py."""
SHOCK = {'speed': [-2, -0.5, -0.1, 0, 0.1, 0.5, 2], 'force': [-4200, -1900, -700, 0, 300, 900, 2400]}
STOP = {'crush': [0, 0.008, 0.02, 0.03, 0.045], 'force': [0, 350, 1500, 3600, 11000]}
BASE = {
    'sprung': {'mass': 1380.0, 'rollInertia': 480.0, 'pitchInertia': 1650.0, 'toFrontAxle': 1.22, 'toRearAxle': 1.37},
    'axles': {
        'front': {
            'mass': 235.0, 'rollInertia': 60.0, 'halfTrack': 0.79,
            'spring': {'halfStation': 0.44, 'rate': 36000.0, 'ratio': 0.92},
            'shock': {'halfStation': 0.52, 'ratio': 0.88, **SHOCK},
            'stop': {'halfStation': 0.47, 'ratio': 0.85, 'gap': {'left': 0.048, 'right': 0.055}, **STOP,
                     'rateFactor': 0.15},
            'metal': {'atCrush': {'left': 0.046, 'right': 0.044}, 'rate': 4e6},
            'droopLimit': {'at': 0.12, 'rate': 4e5, 'rateFactor': 0.2},
            'tyre': {'rate': 210e3, 'damping': 350.0}},
        'rear': {
            'mass': 220.0, 'rollInertia': 55.0, 'halfTrack': 0.8,
            'spring': {'halfStation': 0.46, 'rate': 34000.0, 'ratio': 1.0},
            'shock': {'halfStation': 0.55, 'ratio': 0.93, **SHOCK},
            'stop': {'halfStation': 0.45, 'ratio': 0.9, 'gap': {'left': 0.05, 'right': 0.044}, **STOP,
                     'rateFactor': 0.1},
            'metal': {'atCrush': {'left': 0.045, 'right': 0.045}, 'rate': 4e6},
            'droopLimit': {'at': 0.11, 'rate': 4e5, 'rateFactor': 0.1},
            'tyre': {'rate': 200e3, 'damping': 300.0}}},
    'gravity': 9.80665}
