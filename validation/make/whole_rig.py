"""A whole rig with every element, written down from the equations and driven by SciPy's DOP853.

Equations: docs/theory (ride, coil, shock, gas, anti-roll-bar, stop, metal, droop-limit, tyre) and, for friction and the
viscous branch of a stop, Berg's and Maxwell's laws. A model is the same plain data that the checks hold.

Switches are found: the sign of each switch function is watched, the step in which one changes is cut at its root, and
the integration starts afresh there. Between two switches every law is smooth, so that rtol 1e-10 means what it says.
"""
import math

from scipy.integrate import DOP853
from scipy.interpolate import PchipInterpolator
from scipy.optimize import brentq, minimize_scalar

CORNERS = ('frontLeft', 'frontRight', 'rearLeft', 'rearRight')
RTOL = 1e-10
LONGEST = 1e-3
PLACES = 6


class Curve:
    """Monotone cubic through points, the end slope carried on."""

    def __init__(self, x, y):
        cubic = PchipInterpolator(x, y)
        self.x, self.c = list(map(float, x)), cubic.c.T.tolist()
        self.last, self.slope = float(y[-1]), float(cubic(x[-1], 1))

    def __call__(self, at):
        if at >= self.x[-1]:
            return self.last + self.slope * (at - self.x[-1])
        i = len(self.x) - 2
        while i > 0 and at < self.x[i]:
            i -= 1
        u, (c3, c2, c1, c0) = at - self.x[i], self.c[i]
        return c0 + u * (c1 + u * (c2 + u * c3))


def straight(x, y, at):
    """Straight lines through points, the end slopes carried on."""
    i = len(x) - 2
    while i > 0 and at < x[i]:
        i -= 1
    return y[i] + (y[i + 1] - y[i]) / (x[i + 1] - x[i]) * (at - x[i])


def berg(x, turned, share, half):
    """Friction from the last turn (xs, fs), all in shares of the elastic force."""
    xs, fs = turned
    if x > xs:
        return fs + (x - xs) * (share - fs) / (half * (1 - fs / share) + (x - xs))
    if x < xs:
        return fs + (x - xs) * (share + fs) / (half * (1 + fs / share) - (x - xs))
    return fs


class Corner:
    """One side of one axle."""

    def __init__(self, model, end, side):
        sprung, axle = model['sprung'], model['axles'][end]
        a, b = sprung['toFrontAxle'], sprung['toRearAxle']
        front, left = end == 'front', side == 'left'
        self.s = 1 if left else -1
        self.xa = a if front else -b
        self.late = 0.0 if front else a + b
        self.at = 3 if front else 5
        self.axle, self.shock, self.stop = axle, axle['shock'], axle['stop']
        self.curve = Curve(self.stop['crush'], self.stop['force'])
        self.gap, self.metal_at = self.stop['gap'][side], axle['metal']['atCrush'][side]
        share = sprung['mass'] * model['gravity'] * (b if front else a) / (a + b) / 2
        gas = self.shock.get('gas')
        self.gas = (0.0, 0.0) if gas is None else (gas['force'], gas['rate'])
        # The gas carries part of the rig, the coil the rest.
        self.seat_load = share - self.shock['ratio'] * self.gas[0]
        self.tyre_load = share + axle['mass'] * model['gravity'] / 2
        self.friction, self.maxwell = self.stop.get('friction'), self.stop.get('maxwell')
        self.turned, self.left, self.on = (0.0, 0.0), 0.0, False

    def share(self, c):
        return berg(c, self.turned, self.friction['limit'], self.friction['halfTravel']) if self.friction else 0.0

    def motion(self, y, station):
        """Compression at a half station, and how fast."""
        w = self.s * station

        def of(q):
            return y[q + self.at] + w * y[q + self.at + 1] - (y[q] - self.xa * y[q + 1] + w * y[q + 2])
        return of(0), of(self.speeds)

    def coil(self, y):
        spring = self.axle['spring']
        x, _ = self.motion(y, spring['halfStation'])
        return self.seat_load + spring['rate'] * spring['ratio'] ** 2 * x

    def damper(self, y):
        """Shock, its gas, its ends and the droop limit, all at the shock's station."""
        shock, limit = self.shock, self.axle['droopLimit']
        x, v = self.motion(y, shock['halfStation'])
        q = shock['ratio']
        f = q * straight(shock['speed'], shock['force'], q * v) + q * (self.gas[0] + self.gas[1] * q * x)
        if x < -limit['at']:
            f -= limit['rate'] * (-limit['at'] - x) * max(0.0, 1 - limit['rateFactor'] * v)
        ends = shock.get('ends')
        if ends:
            f += ends['rate'] * (max(0.0, x - ends['closedAt']) - max(0.0, -ends['openAt'] - x))
        return f

    def face(self, y):
        """Where the face of the stop stands by itself: held back while the damper of its branch has not run out. Its
        friction is what it was when the stop let go."""
        u = y[self.inner] if self.maxwell else 0.0
        if u <= 0:
            return 0.0
        k = self.maxwell['rate']
        return brentq(lambda c: self.curve(c) * (1 + self.left) - k * (u - c), 0, u, xtol=1e-16, rtol=1e-15)

    def crush(self, y):
        x, v = self.motion(y, self.stop['halfStation'])
        return self.stop['ratio'] * x - self.gap, self.stop['ratio'] * v

    def touches(self, y):
        """With friction and a viscous branch both, touch and release are switches with a memory, otherwise a place."""
        if self.friction and self.maxwell:
            return self.on
        return self.crush(y)[0] > self.face(y)

    def touch(self, y):
        """Positive where pad and stop press: by the force while they do, by place while they do not."""
        c, _ = self.crush(y)
        if self.friction and self.maxwell and self.on:
            return self.curve(c) * (1 + self.share(c)) + self.maxwell['rate'] * (c - y[self.inner])
        return c - self.face(y)

    def stop_force(self, y):
        """Force along the stop, metal with it."""
        c, v = self.crush(y)
        metal = self.axle['metal']['rate'] * max(0.0, c - self.metal_at)
        if not self.touches(y):
            return max(0.0, 1 + self.stop['rateFactor'] * v) * metal
        f = max(0.0, 1 + self.stop['rateFactor'] * v) * (self.curve(c) * (1 + self.share(c)) + metal)
        if self.maxwell:
            f += self.maxwell['rate'] * (c - y[self.inner])
        oil = self.stop.get('oilFactor', 0.0)
        if v > 0:
            f += oil * v * v
        return max(0.0, f)

    def flow(self, y):
        """How fast the inner place of the viscous branch follows."""
        c, _ = self.crush(y)
        at = c if self.touches(y) else self.face(y)
        return self.maxwell['rate'] / self.maxwell['damping'] * (at - y[self.inner])

    def tyre(self, t, y, ground, speed):
        """Elastic part, and the sum with damping."""
        h, slope = ground(speed * t - self.late, self.s)
        w, tyre = self.s * self.axle['halfTrack'], self.axle['tyre']
        elastic = self.tyre_load + tyre['rate'] * (h - y[self.at] - w * y[self.at + 1])
        at = self.at + self.speeds
        return elastic, elastic + tyre['damping'] * (speed * slope - y[at] - w * y[at + 1])


class Rig:
    def __init__(self, model, ground, speed, lift=0.0):
        self.model, self.ground, self.speed = model, ground, speed
        self.corners = [Corner(model, end, side) for end in ('front', 'rear') for side in ('left', 'right')]
        self.seat = model.get('seat')
        self.n = 8 if self.seat else 7
        size = 2 * self.n
        for corner in self.corners:
            corner.speeds = self.n
            corner.inner = None
            if corner.maxwell:
                corner.inner, size = size, size + 1
        # Last: the integrals of heave acceleration squared, of the body and of the sitter.
        self.start = [0.0] * (size + 2)
        for i in (0, 3, 5, *((7,) if self.seat else ())):
            self.start[i] = lift

    def rate(self, t, y):
        y = list(map(float, y))
        n, model, g = self.n, self.model, self.model['gravity']
        out = [0.0] * len(y)
        out[:n] = y[n:2 * n]
        body, pitch, roll = 0.0, 0.0, 0.0
        for corner in self.corners:
            axle, at = corner.axle, n + corner.at
            f_tyre, f_axle, m_axle = 0.0, 0.0, 0.0
            for f, station in ((max(0.0, corner.coil(y)), axle['spring']['halfStation']),
                               (corner.damper(y), corner.shock['halfStation']),
                               (corner.stop['ratio'] * corner.stop_force(y), corner.stop['halfStation'])):
                f_axle, m_axle = f_axle + f, m_axle + corner.s * station * f
            elastic, total = corner.tyre(t, y, self.ground, self.speed)
            f_tyre = max(0.0, total) if elastic > 0 else 0.0
            body, pitch, roll = body + f_axle, pitch - corner.xa * f_axle, roll + m_axle
            out[at] += (f_tyre - f_axle) / axle['mass']
            out[at + 1] += (corner.s * axle['halfTrack'] * f_tyre - m_axle) / axle['rollInertia']
            if corner.maxwell:
                out[corner.inner] = corner.flow(y)
        for end, at in (('front', 3), ('rear', 5)):
            axle = model['axles'][end]
            out[n + at] -= g
            twist = axle.get('antiRollRate', 0.0) * (y[at + 1] - y[2])
            roll += twist
            out[n + at + 1] -= twist / axle['rollInertia']
        sprung, seat = model['sprung'], self.seat
        mass = sprung['mass']
        if seat:
            mass -= seat['mass']
            ahead, left = seat['ahead'], seat['left']

            def there(q):
                return y[q] - ahead * y[q + 1] + left * y[q + 2] - y[q + 7]
            cushion = seat['rate'] * there(0) + seat['damping'] * there(n)
            out[n + 7] = cushion / seat['mass']
            # On the body the sitter's weight at rest and what the cushion adds; his weight is taken to rest at the centre.
            body -= seat['mass'] * g + cushion
            pitch += ahead * cushion
            roll -= left * cushion
            out[-1] = out[n + 7] ** 2
        out[n] = body / mass - g
        out[n + 1] = pitch / sprung['pitchInertia']
        out[n + 2] = roll / sprung['rollInertia']
        out[-2] = out[n] ** 2
        return out

    def switches(self, t, y):
        """Positive while a contact carries force; of a stop with friction also while it closes."""
        y = list(map(float, y))
        out = []
        for corner in self.corners:
            shock, limit = corner.shock, corner.axle['droopLimit']
            x, _ = corner.motion(y, shock['halfStation'])
            c, v = corner.crush(y)
            ends = shock.get('ends', {'closedAt': math.inf, 'openAt': math.inf})
            touch = corner.touch(y)
            out += [touch, c - corner.metal_at, corner.coil(y), -limit['at'] - x if math.isfinite(limit['at']) else -1.0,
                    min(corner.tyre(t, y, self.ground, self.speed)),
                    x - ends['closedAt'] if ends['closedAt'] < math.inf else -1.0,
                    -ends['openAt'] - x if ends['openAt'] < math.inf else -1.0,
                    v if corner.friction and touch > 0 else 1.0]
            # A shock table has corners too.
            for knee in shock['speed'][1:-1]:
                out.append(shock['ratio'] * corner.motion(y, shock['halfStation'])[1] - knee)
            if corner.stop.get('oilFactor'):
                out.append(v if touch > 0 else 1.0)
        return out

    def switched(self, i, y):
        """A stop that is touched begins anew, one that turns round remembers where. One whose face is held back goes on
        with the friction that it had when it let go."""
        per = len(self.switches(0.0, y)) // 4
        corner, which = self.corners[i // per], i % per
        if not corner.friction:
            return
        y = list(map(float, y))
        c, _ = corner.crush(y)
        if which == 7:
            corner.turned = (c, corner.share(c))
        elif which == 0:
            corner.on = not corner.on
            if not corner.on:
                corner.left = corner.share(c) if corner.maxwell else 0.0
            else:
                corner.turned = (c, corner.left) if corner.maxwell and y[corner.inner] > 0 else (0.0, 0.0)


def drive(rig, duration, breaks=(), rtol=RTOL, times=()):
    """Peaks per corner, r.m.s. values, share of time in the air, and the state at `times`."""
    y, t, step = list(rig.start), 0.0, 1e-5
    on = [g > 0 for g in rig.switches(t, y)]
    crush, force = [0.0] * 4, [0.0] * 4
    peak = {'body': 0.0, 'seat': 0.0}
    ends = sorted({b for b in breaks if 0 < b < duration} | {duration})
    states, events, airborne = {}, 0, 0.0
    for end in ends:
        while t < end:
            solver = DOP853(rig.rate, t, y, end, rtol=rtol, atol=rtol * 1e-2, max_step=LONGEST,
                            first_step=min(step, end - t))
            while solver.status == 'running':
                message = solver.step()
                if message:
                    raise RuntimeError(message)
                t0, t1, sol = solver.t_old, solver.t, solver.dense_output()
                changed = [i for i, g in enumerate(rig.switches(t1, solver.y)) if (g > 0) != on[i]]
                cut = t1
                for i in changed:
                    cut = min(cut, root(rig, sol, i, on[i], t0, t1))
                watch(rig, sol, t0, cut, crush, force, peak)
                airborne += (cut - t0) * sum(not each for each in on[4::len(on) // 4]) / 4
                for moment in times:
                    if t0 < moment <= cut:
                        states[moment] = sol(moment)
                if changed:
                    break
            t, y, step = cut, list(sol(cut)), min(t1 - t0, 1e-4)
            if changed:
                events += 1
                signs = rig.switches(t, y)
                for i in changed:
                    if (signs[i] > 0) != on[i]:
                        rig.switched(i, y)
                # What one switch does to another (a stop let go no longer turns round) is no event of its own.
                on = [g > 0 for g in rig.switches(t, y)]
                for k, corner in enumerate(rig.corners):
                    if corner.friction and corner.maxwell:
                        on[k * len(on) // 4] = corner.on
    return {'crush': dict(zip(CORNERS, crush)), 'force': dict(zip(CORNERS, force)), 'peak': peak, 'state': y,
            'bodyRms': math.sqrt(y[-2] / duration), 'seatRms': math.sqrt(y[-1] / duration), 'events': events, 'airborne': airborne / duration,
            'states': [states[moment] for moment in times]}


def root(rig, sol, i, was_on, t0, t1):
    """The first moment at which switch i has another sign, to 1e-14 s, from the side where it has."""
    def sign(t):
        return (rig.switches(t, sol(t))[i] > 0) != was_on
    low, high = t0, t1
    if sign(low):
        return low
    while high - low > 1e-14 and low < (low + high) / 2 < high:
        middle = (low + high) / 2
        low, high = (low, middle) if sign(middle) else (middle, high)
    return high


def watch(rig, sol, t0, t1, crush, force, peak):
    """Peaks inside a step: at a few places, and where the largest of them leaves room for more, by search."""
    if t1 <= t0:
        return
    places = [t0 + (t1 - t0) * k / PLACES for k in range(PLACES + 1)]
    states = [list(map(float, sol(t))) for t in places]
    rates = [rig.rate(t, y) for t, y in zip(places[1:-1], states[1:-1])]
    peak['body'] = max([peak['body'], *(abs(r[rig.n]) for r in rates)])
    if rig.seat:
        peak['seat'] = max([peak['seat'], *(abs(r[rig.n + 7]) for r in rates)])
    for k, corner in enumerate(rig.corners):
        for best, of in ((crush, lambda y: corner.crush(y)[0]), (force, corner.stop_force)):
            top = max(map(of, states))
            if top <= 0 or top < 0.98 * best[k]:
                continue
            if best is crush and not corner.crush(states[0])[1] * corner.crush(states[-1])[1] < 0:
                best[k] = max(best[k], top)
                continue
            found = minimize_scalar(lambda t: -of(list(map(float, sol(t)))), bounds=(t0, t1), method='bounded',
                                    options={'xatol': 1e-9})
            best[k] = max(best[k], top, -float(found.fun))
