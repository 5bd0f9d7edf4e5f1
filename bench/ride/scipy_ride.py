"""SciPy's solver on the same model: `python3 scipy_ride.py CASE METHOD RTOL`, one run, one line of JSON.

The right-hand side is written in plain Python floats, which is faster here than small numpy arrays. Reads the numbers
that case-numbers.ts writes.
"""
import json
import math
import sys
import time

import numpy as np
from scipy.integrate import solve_ivp
from scipy.interpolate import PchipInterpolator

words = iter(open(sys.argv[1]).read().split())
number = lambda: float(next(words))
numbers = lambda: [number() for _ in range(int(number()))]
mass, roll_inertia, pitch_inertia, a, b = (number() for _ in range(5))
gravity, speed, duration, lift = (number() for _ in range(4))


def axle(front):
    names = ("mass inertia half_track spring_at spring_rate shock_at stop_at gap_l gap_r metal_l metal_r rate_factor "
             "metal_rate droop_at droop_rate droop_factor tyre_rate tyre_damping").split()
    it = {name: number() for name in names}
    it["v"], it["f"], crush, force = numbers(), numbers(), numbers(), numbers()
    curve = PchipInterpolator(crush, force)
    it["crush"], it["coefficients"] = crush, curve.c.T.tolist()
    it["last"], it["end_slope"] = force[-1], float(curve(crush[-1], 1))
    it["x"], it["behind"] = (a, 0.0) if front else (-b, a + b)
    it["preload"] = mass * gravity * (b if front else a) / (a + b) / 2
    it["tyre_load"] = it["preload"] + it["mass"] * gravity / 2
    return it


axles = [axle(True), axle(False)]


def side():
    origin, step, count = number(), number(), int(number())
    return origin, step, [number() for _ in range(2 * count)]


grounds = [side(), side()]


def ground(which, s):
    origin, h, q = grounds[which]
    place = (s - origin) / h
    if place <= 0:
        return q[0], 0.0
    i = 2 * int(place)
    if i >= len(q) - 2:
        return q[-2], 0.0
    u = place - i // 2
    w = 1 - u
    rise, m0, m1 = q[i + 2] - q[i], h * q[i + 1], h * q[i + 3]
    return (q[i] + u * u * (3 - 2 * u) * rise + u * w * (w * m0 - u * m1),
            (6 * u * w * rise + w * (1 - 3 * u) * m0 + u * (3 * u - 2) * m1) / h)


def shock(it, v):
    xs, ys = it["v"], it["f"]
    i = len(xs) - 2
    while i > 0 and v < xs[i]:
        i -= 1
    return ys[i] + (ys[i + 1] - ys[i]) / (xs[i + 1] - xs[i]) * (v - xs[i])


def stop_curve(it, c):
    xs = it["crush"]
    if c >= xs[-1]:
        return it["last"] + it["end_slope"] * (c - xs[-1])
    i = len(xs) - 2
    while i > 0 and c < xs[i]:
        i -= 1
    u, (d3, d2, d1, d0) = c - xs[i], it["coefficients"][i]
    return d0 + u * (d1 + u * (d2 + u * d3))


def derivative(t, y):
    y = y.tolist()
    v = y[7:]
    out = v[:7] + [0.0] * 8
    lift_force = pitch = roll = 0.0
    for e, it in enumerate(axles):
        k = 3 + 2 * e
        x0, v0 = y[k] - (y[0] - it["x"] * y[1]), v[k] - (v[0] - it["x"] * v[1])
        tilt, tilt_v = y[k + 1] - y[2], v[k + 1] - v[2]
        force = moment = tyres = tyre_moment = 0.0
        for s in (0, 1):
            sign = -1.0 if s else 1.0
            f = max(0.0, it["preload"] + it["spring_rate"] * (x0 + sign * it["spring_at"] * tilt))
            side_force, side_moment = f, it["spring_at"] * f
            x, xv = x0 + sign * it["shock_at"] * tilt, v0 + sign * it["shock_at"] * tilt_v
            f = shock(it, xv)
            stretch = -it["droop_at"] - x
            if stretch > 0:
                f -= max(0.0, it["droop_rate"] * stretch * (1 - it["droop_factor"] * xv))
            side_force += f
            side_moment += it["shock_at"] * f
            crush = x0 + sign * it["stop_at"] * tilt - (it["gap_r"] if s else it["gap_l"])
            if crush > 0:
                xv = v0 + sign * it["stop_at"] * tilt_v
                metal = max(0.0, crush - (it["metal_r"] if s else it["metal_l"]))
                f = max(0.0, 1 + it["rate_factor"] * xv) * (stop_curve(it, crush) + it["metal_rate"] * metal)
                side_force += f
                side_moment += it["stop_at"] * f
            height, slope = ground(s, speed * t - it["behind"])
            elastic = it["tyre_load"] + it["tyre_rate"] * (height - (y[k] + sign * it["half_track"] * y[k + 1]))
            if elastic > 0:
                closing = speed * slope - (v[k] + sign * it["half_track"] * v[k + 1])
                f = max(0.0, elastic + it["tyre_damping"] * closing)
                tyres += f
                tyre_moment += sign * f
            force += side_force
            moment += sign * side_moment
        lift_force += force
        pitch -= it["x"] * force
        roll += moment
        out[7 + k] = (tyres - force) / it["mass"] - gravity
        out[8 + k] = (it["half_track"] * tyre_moment - moment) / it["inertia"]
    out[7] = lift_force / mass - gravity
    out[8] = pitch / pitch_inertia
    out[9] = roll / roll_inertia
    out[14] = out[7] ** 2
    return out


rtol = float(sys.argv[3])
y0 = [lift if i in (0, 3, 5) else 0.0 for i in range(15)]
atol = [rtol * 0.02] * 7 + [rtol * 0.6] * 7 + [1e9]
start = time.perf_counter()
solution = solve_ivp(derivative, (0, duration), y0, method=sys.argv[2], rtol=rtol, atol=atol, max_step=0.05,
                     dense_output=True)
seconds = time.perf_counter() - start
times = np.unique(np.concatenate([np.linspace(p, q, 9) for p, q in zip(solution.t[:-1], solution.t[1:])]))
y = solution.sol(times)
peak = []
for corner in range(4):
    it, k, sign = axles[corner // 2], 3 + 2 * (corner // 2), -1 if corner % 2 else 1
    travel = y[k] - (y[0] - it["x"] * y[1]) + sign * it["stop_at"] * (y[k + 1] - y[2])
    peak.append(max(0.0, float(travel.max()) - (it["gap_r"] if corner % 2 else it["gap_l"])))
print(json.dumps({"seconds": seconds, "peakCrush": peak, "rms": math.sqrt(float(solution.y[14, -1]) / duration),
                  "steps": len(solution.t) - 1, "evaluations": solution.nfev}))
