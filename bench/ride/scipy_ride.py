"""SciPy's solvers on the same model: `python3 scipy_ride.py CASE LIBRARY SECONDS SETTING...`, a line of JSON a setting.

A setting is METHOD:RTOL:LONGEST_STEP, METHOD one of solve_ivp's (RK23, RK45, DOP853, LSODA), odeint, or dopri5 and dop853 of the older
interface. The right-hand side is the C model, compiled; what is left of Python is SciPy's own, and a call each evaluation.
Peaks are read from cubics through the solver's steps.
"""
import ctypes
import json
import math
import sys
import time
import warnings

import numpy as np
from scipy.integrate import ode, odeint, solve_ivp

warnings.simplefilter("ignore")
N, SIZE = 14, 15
case, library, budget, *settings = sys.argv[1:]
words = open(case).read().split()
gravity, speed, duration, lift = map(float, words[5:9])
c = ctypes.CDLL(library)
c.open_model.restype = ctypes.c_void_p
c.open_model.argtypes = [ctypes.c_char_p]
c.derivative.argtypes = [ctypes.c_void_p, ctypes.c_double, ctypes.c_void_p, ctypes.c_void_p]
c.derivative.restype = None
c.stop_travel.argtypes = [ctypes.c_void_p, ctypes.c_int, ctypes.c_void_p]
c.stop_travel.restype = ctypes.c_double
c.stop_gap.argtypes = [ctypes.c_void_p, ctypes.c_int]
c.stop_gap.restype = ctypes.c_double
model = c.open_model(case.encode())
state, rate = np.zeros(SIZE), np.zeros(SIZE)
at, to = state.ctypes.data, rate.ctypes.data
evaluations = 0
derivative = c.derivative


def rhs(t, y):
    global evaluations
    evaluations += 1
    state[:] = y
    derivative(model, t, at, to)
    rate[N] = rate[7] * rate[7]
    return rate.copy()


# Compression at the stops is linear in the coordinates: the rows of its matrix from unit vectors.
rows = np.zeros((4, 7))
for corner in range(4):
    for i in range(7):
        unit = np.zeros(7)
        unit[i] = 1
        rows[corner, i] = c.stop_travel(model, corner, unit.ctypes.data)
gaps = [c.stop_gap(model, corner) for corner in range(4)]
y0 = np.array([lift if i in (0, 3, 5) else 0.0 for i in range(SIZE)])


def peaks(t, y):
    h = np.diff(t)
    found = []
    for row, gap in zip(rows, gaps):
        x, v = y[:, :7] @ row, y[:, 7:14] @ row
        top = x.max()
        for i in np.nonzero((v[:-1] > 0) & (v[1:] < 0))[0]:
            # The cubic's slope is a parabola in u; it has one zero inside.
            rise = (x[i + 1] - x[i]) / h[i]
            a, b = 3 * (v[i] + v[i + 1] - 2 * rise), 2 * (3 * rise - 2 * v[i] - v[i + 1])
            root = b * b - 4 * a * v[i]
            if root < 0:
                continue
            u = 2 * v[i] / (-b + math.sqrt(root)) if -b + math.sqrt(root) > 0 else 0.0
            u = min(max(u, 0.0), 1.0)
            top = max(top, x[i] + h[i] * u * (v[i] + u * (b / 2 + u * a / 3)))
        found.append(max(0.0, float(top - gap)))
    return found


def solve(method, rtol, longest):
    atol = np.array([rtol * 0.02] * 7 + [rtol * 0.6] * 7 + [1e9])
    if method == "odeint":
        t = np.linspace(0, duration, max(2, round(duration / 2e-3)))
        return t, odeint(rhs, y0, t, rtol=rtol, atol=atol, hmax=longest, mxstep=100000, tfirst=True)
    if method in ("dopri5", "dop853"):
        times, states = [0.0], [y0]

        def taken(t, y):
            times.append(t)
            states.append(y.copy())
        solver = ode(rhs).set_integrator(method, rtol=rtol, atol=0.1 * rtol, max_step=longest, nsteps=10000000)
        solver.set_solout(taken)
        solver.set_initial_value(y0, 0)
        solver.integrate(duration)
        t, keep = np.unique(np.array(times), return_index=True)
        return t, np.array(states)[keep]
    solution = solve_ivp(rhs, (0, duration), y0, method=method, rtol=rtol, atol=atol, max_step=longest)
    return solution.t, solution.y.T


for setting in settings:
    method, rtol, longest = setting.split(":")
    best, spent, runs = 1e9, 0.0, 0
    while runs < 2 or (spent < float(budget) and runs < 50):
        evaluations = 0
        start = time.perf_counter()
        t, y = solve(method, float(rtol), float(longest))
        crush = peaks(t, y)
        took = time.perf_counter() - start
        best, spent, runs = min(best, took), spent + took, runs + 1
    rms = math.sqrt(max(0.0, float(y[-1, N])) / duration) if t[-1] >= duration * (1 - 1e-9) else 1e99
    sane = [x if math.isfinite(x) else 1e99 for x in (*crush, rms)]
    print(json.dumps({"seconds": best, "peakCrush": sane[:4], "rms": sane[4], "steps": len(t) - 1,
                      "evaluations": evaluations}), flush=True)
