"""A whole ride with everything that switches, on a rig whose elements have travel ratios and whose sides differ.

The reference rides of validation/ride-cases have ratios of one and even sides. Here the same laws are written down once
more, in Python, and solved by SciPy's DOP853.

Run: python3 -B validation/make/ride_switching.py (about a minute), then biome over validation/checks.
"""
import copy

import numpy as np
import scipy
from scipy.integrate import solve_ivp
from scipy.interpolate import PchipInterpolator
from check_file import write
from uneven_rig import BASE, SHOCK, STOP

model = copy.deepcopy(BASE)
model['axles']['front']['stop']['rateFactor'] = 0.2
model['axles']['front']['metal']['atCrush'] = {'left': 0.045, 'right': 0.042}
shock, curve, G = SHOCK, STOP, model['gravity']
course = {'kind': 'whoops', 'height': 0.3, 'spacing': 5.5, 'count': 3, 'start': 1.0, 'rightPhase': 0.9}
speed, duration = 9.0, 3.0

table = PchipInterpolator(curve['crush'], curve['force'])
end_slope = float(table.derivative()(curve['crush'][-1]))


def stop_curve(c):
    last = curve['crush'][-1]
    return float(table(c)) if c <= last else curve['force'][-1] + end_slope * (c - last)


def shock_force(v):
    x, y = shock['speed'], shock['force']
    i = int(np.clip(np.searchsorted(x, v) - 1, 0, len(x) - 2))
    return y[i] + (y[i + 1] - y[i]) / (x[i + 1] - x[i]) * (v - x[i])


def ground(s, side):
    u = s - course['start'] - (course['rightPhase'] * course['spacing'] / (2 * np.pi) if side < 0 else 0)
    if not 0 < u < course['count'] * course['spacing']:
        return 0.0, 0.0
    k = 2 * np.pi / course['spacing']
    return course['height'] / 2 * (1 - np.cos(k * u)), course['height'] / 2 * k * np.sin(k * u)


S = model['sprung']
a, b = S['toFrontAxle'], S['toRearAxle']
ENDS = (('front', a, 3, 0.0, b), ('rear', -b, 5, a + b, a))


def stop_at(axle, x, v, which):
    """Crush, and force along the stop."""
    st, metal = axle['stop'], axle['metal']
    crush = st['ratio'] * x - st['gap'][which]
    if crush <= 0:
        return crush, 0.0
    elastic = stop_curve(crush) + metal['rate'] * max(0.0, crush - metal['atCrush'][which])
    return crush, max(0.0, 1 + st['rateFactor'] * st['ratio'] * v) * elastic


def motion(z, x_axle, at, y):
    """Compression at station y, and how fast."""
    def of(q):
        return q[at] + y * q[at + 1] - (q[0] - x_axle * q[1] + y * q[2])
    return of(z[:7]), of(z[7:])


def rate(t, z):
    out = np.empty(14)
    out[:7] = z[7:]
    lift = pitch = roll = 0.0
    for name, x_axle, at, late, other in ENDS:
        axle = model['axles'][name]
        share = S['mass'] * G * other / (a + b) / 2
        load = share + axle['mass'] * G / 2
        f_sum = m_sum = p_sum = pm_sum = 0.0
        for side, which in ((1, 'left'), (-1, 'right')):
            y = side * axle['spring']['halfStation']
            x, _ = motion(z, x_axle, at, y)
            f = max(0.0, share + axle['spring']['rate'] * axle['spring']['ratio'] ** 2 * x)
            f_sum, m_sum = f_sum + f, m_sum + y * f
            y = side * axle['shock']['halfStation']
            x, v = motion(z, x_axle, at, y)
            q = axle['shock']['ratio']
            f = q * shock_force(q * v)
            limit = axle['droopLimit']
            if x < -limit['at']:
                f -= max(0.0, limit['rate'] * (-limit['at'] - x) * (1 - limit['rateFactor'] * v))
            f_sum, m_sum = f_sum + f, m_sum + y * f
            y = side * axle['stop']['halfStation']
            x, v = motion(z, x_axle, at, y)
            f = axle['stop']['ratio'] * stop_at(axle, x, v, which)[1]
            f_sum, m_sum = f_sum + f, m_sum + y * f
            h, slope = ground(speed * t - late, side)
            w = side * axle['halfTrack']
            elastic = load + axle['tyre']['rate'] * (h - z[at] - w * z[at + 1])
            p = 0.0
            if elastic > 0:
                p = max(0.0, elastic + axle['tyre']['damping'] * (speed * slope - z[at + 7] - w * z[at + 8]))
            p_sum, pm_sum = p_sum + p, pm_sum + w * p
        lift, pitch, roll = lift + f_sum, pitch - x_axle * f_sum, roll + m_sum
        out[7 + at] = (p_sum - f_sum) / axle['mass'] - G
        out[8 + at] = (pm_sum - m_sum) / axle['rollInertia']
    out[7], out[8], out[9] = lift / S['mass'] - G, pitch / S['pitchInertia'], roll / S['rollInertia']
    return out


solution = solve_ivp(rate, (0, duration), np.zeros(14), method='DOP853', rtol=1e-9, atol=1e-11, max_step=1e-3,
                     dense_output=True)
times = [round(0.1 * k, 1) for k in range(1, 21)]
at_times = solution.sol(times)
names = ['heave', 'pitch', 'roll', 'frontHeave', 'frontRoll', 'rearHeave', 'rearRoll']
fine = np.linspace(0, duration, 60001)
states = solution.sol(fine).T
crush, force = {}, {}
for name, x_axle, at, *_ in ENDS:
    axle = model['axles'][name]
    for side, which in ((1, 'left'), (-1, 'right')):
        y = side * axle['stop']['halfStation']
        pairs = [stop_at(axle, *motion(z, x_axle, at, y), which) for z in states]
        corner = name + which.capitalize()
        crush[corner] = max(0.0, max(c for c, _ in pairs))
        force[corner] = max(f for _, f in pairs)
print(crush, force, len(solution.t))

SOURCE = ('The laws of ride-case/1 with travel ratios and sides of their own, written again in Python, solved by SciPy '
          'solve_ivp, DOP853, rtol 1e-9', scipy.__version__, 'validation/make/ride_switching.py')
inputs = {'model': model, 'course': course, 'speed': speed, 'duration': duration}
write('ride', 'switching-motion', 'Motion of an uneven rig with travel ratios over whoops that take it to its stops',
      'whole-motion', 'heave, pitch, roll', 'm, rad', {**inputs, 'times': times},
      {name: at_times[i] for i, name in enumerate(names)},
      ('absolute', 2e-6, 'both solvers are asked for 1e-7 or better; each of some dozen switches passes an error on'),
      SOURCE, 'computed', 'ride_switching.py')
write('ride', 'switching-crush', 'Peak crush of an uneven rig with travel ratios', 'whole-crush', 'crush', 'm', inputs,
      crush, ('absolute', 3e-6, 'a peak read off a grid of 50 µs, and the error of the motion'), SOURCE, 'computed',
      'ride_switching.py')
write('ride', 'switching-force', 'Peak stop force of an uneven rig with travel ratios', 'whole-force', 'force', 'N',
      inputs, force, ('relative', 1e-3, 'metal at 4 MN/m makes of a micrometre 4 N; the rest as for crush'), SOURCE,
      'computed', 'ride_switching.py')
