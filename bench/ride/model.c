#include "model.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>

static real max0(real x) { return x > 0 ? x : (real)0; }

/* Fritsch–Carlson slopes with the three-point end rule, as in SciPy's PchipInterpolator. */
static double end_slope(double h0, double h1, double d0, double d1) {
  double s = ((2 * h0 + h1) * d0 - h0 * d1) / (h0 + h1);
  if (s * d0 <= 0) return 0;
  if (d0 * d1 <= 0 && fabs(s) > 3 * fabs(d0)) return 3 * d0;
  return s;
}

static void prepare(Axle *a) {
  int n = a->stop_points - 1;
  double h[MAX_POINTS], r[MAX_POINTS], s[MAX_POINTS];
  for (int i = 0; i < n; i++) {
    h[i] = a->crush[i + 1] - a->crush[i];
    r[i] = (a->force[i + 1] - a->force[i]) / h[i];
  }
  if (n == 1) s[0] = s[1] = r[0];
  else {
    for (int i = 1; i < n; i++) {
      if (r[i - 1] * r[i] <= 0) s[i] = 0;
      else {
        double w1 = 2 * h[i] + h[i - 1], w2 = h[i] + 2 * h[i - 1];
        s[i] = (w1 + w2) / (w1 / r[i - 1] + w2 / r[i]);
      }
    }
    s[0] = end_slope(h[0], h[1], r[0], r[1]);
    s[n] = end_slope(h[n - 1], h[n - 2], r[n - 1], r[n - 2]);
  }
  for (int i = 0; i < n; i++) {
    a->b[i] = s[i];
    a->c[i] = (3 * r[i] - 2 * s[i] - s[i + 1]) / h[i];
    a->d[i] = (s[i] + s[i + 1] - 2 * r[i]) / (h[i] * h[i]);
  }
  a->end_slope = s[n];
  for (int i = 0; i + 1 < a->shock_points; i++)
    a->shock_k[i] = (a->shock_f[i + 1] - a->shock_f[i]) / (a->shock_v[i + 1] - a->shock_v[i]);
}

static real shock(const Axle *a, real v) {
  int i = a->shock_points - 2;
  while (i > 0 && v < a->shock_v[i]) i--;
  return a->shock_f[i] + a->shock_k[i] * (v - a->shock_v[i]);
}

static real stop_curve(const Axle *a, real c) {
  int last = a->stop_points - 1;
  if (c >= a->crush[last]) return a->force[last] + a->end_slope * (c - a->crush[last]);
  int i = last - 1;
  while (i > 0 && c < a->crush[i]) i--;
  real u = c - a->crush[i];
  return a->force[i] + u * (a->b[i] + u * (a->c[i] + u * a->d[i]));
}

static void ground(const Ground *g, real s, real *height, real *slope) {
  real place = (s - g->origin) * g->per_step;
  int last = 2 * (g->count - 1);
  if (place <= 0) { *height = g->samples[0]; *slope = 0; return; }
  int i = 2 * (int)place;
  if (i >= last) { *height = g->samples[last]; *slope = 0; return; }
  real u = place - i / 2, w = 1 - u, h = g->step;
  const double *q = g->samples + i;
  real from = q[0], rise = q[2] - from, m0 = h * q[1], m1 = h * q[3], uw = u * w;
  *height = from + u * u * (3 - 2 * u) * rise + uw * (w * m0 - u * m1);
  *slope = (6 * uw * rise + w * (1 - 3 * u) * m0 + u * (3 * u - 2) * m1) * g->per_step;
}

void derivative(const Model *m, real t, const real *y, real *dy) {
  const real *v = y + 7;
  real lift = 0, pitch = 0, roll = 0, distance = m->speed * t;
  for (int i = 0; i < 7; i++) dy[i] = v[i];
  for (int e = 0; e < 2; e++) {
    const Axle *a = &m->axle[e];
    int k = 3 + 2 * e;
    real x0 = y[k] - (y[0] - a->x * y[1]), v0 = v[k] - (v[0] - a->x * v[1]);
    real tilt = y[k + 1] - y[2], tilt_v = v[k + 1] - v[2];
    real spring = a->spring_at * tilt, damper = a->shock_at * tilt, damper_v = a->shock_at * tilt_v;
    real bump = a->stop_at * tilt, bump_v = a->stop_at * tilt_v;
    real wheel = a->half_track * y[k + 1], wheel_v = a->half_track * v[k + 1];
    real force = 0, moment = 0, tyres = 0, tyre_moment = 0;
    for (int s = 0; s < 2; s++) {
      real f, x, xv, side, side_moment;
      side = max0(a->preload + a->spring_rate * (s ? x0 - spring : x0 + spring));
      side_moment = a->spring_at * side;
      x = s ? x0 - damper : x0 + damper;
      xv = s ? v0 - damper_v : v0 + damper_v;
      f = shock(a, xv);
      if (x < -a->droop_at) f -= max0(a->droop_rate * (-a->droop_at - x) * (1 - a->droop_factor * xv));
      side += f;
      side_moment += a->shock_at * f;
      x = (s ? x0 - bump : x0 + bump) - a->gap[s];
      if (x > 0) {
        xv = s ? v0 - bump_v : v0 + bump_v;
        f = stop_curve(a, x);
        if (x > a->metal_at[s]) f += a->metal_rate * (x - a->metal_at[s]);
        f *= max0(1 + a->rate_factor * xv);
        side += f;
        side_moment += a->stop_at * f;
      }
      real height, slope;
      ground(&m->ground[s], distance - a->behind, &height, &slope);
      f = a->tyre_load + a->tyre_rate * (height - (s ? y[k] - wheel : y[k] + wheel));
      if (f > 0) {
        f = max0(f + a->tyre_damping * (m->speed * slope - (s ? v[k] - wheel_v : v[k] + wheel_v)));
        tyres += f;
        if (s) tyre_moment -= f;
        else tyre_moment += f;
      }
      force += side;
      if (s) moment -= side_moment;
      else moment += side_moment;
    }
    lift += force;
    pitch -= a->x * force;
    roll += moment;
    dy[7 + k] = (tyres - force) * a->per_mass - m->gravity;
    dy[8 + k] = (a->half_track * tyre_moment - moment) * a->per_inertia;
  }
  dy[7] = lift * m->per_mass - m->gravity;
  dy[8] = pitch * m->per_pitch;
  dy[9] = roll * m->per_roll;
}

real stop_travel(const Model *m, int corner, const real *y) {
  const Axle *a = &m->axle[corner / 2];
  int k = 3 + 2 * (corner / 2);
  real sign = corner % 2 ? -1 : 1;
  return y[k] - (y[0] - a->x * y[1]) + sign * a->stop_at * (y[k + 1] - y[2]);
}

void switches(const Model *m, real t, const real *y, real *out) {
  const real *v = y + 7;
  for (int corner = 0; corner < 4; corner++) {
    const Axle *a = &m->axle[corner / 2];
    int s = corner % 2, k = 3 + 2 * (corner / 2);
    real sign = s ? -1 : 1;
    real x0 = y[k] - (y[0] - a->x * y[1]), tilt = y[k + 1] - y[2], height, slope;
    real crush = x0 + sign * a->stop_at * tilt - a->gap[s];
    out[0] = crush;
    out[1] = crush - a->metal_at[s];
    out[2] = a->preload + a->spring_rate * (x0 + sign * a->spring_at * tilt);
    out[3] = isfinite(a->droop_at) ? -a->droop_at - (x0 + sign * a->shock_at * tilt) : -1;
    ground(&m->ground[s], m->speed * t - a->behind, &height, &slope);
    real elastic = a->tyre_load + a->tyre_rate * (height - (y[k] + sign * a->half_track * y[k + 1]));
    real total = elastic + a->tyre_damping * (m->speed * slope - (v[k] + sign * a->half_track * v[k + 1]));
    out[4] = elastic < total ? elastic : total;
    out += 5;
  }
}

static int number(FILE *f, double *x) { return fscanf(f, "%lf", x) == 1; }

static int numbers(FILE *f, double *x, int *count) {
  double n;
  if (!number(f, &n) || n > MAX_POINTS) return 0;
  *count = (int)n;
  for (int i = 0; i < *count; i++)
    if (!number(f, x + i)) return 0;
  return 1;
}

int read_model(const char *path, Model *m) {
  FILE *f = fopen(path, "r");
  if (!f) return 0;
  double a, b;
  int ok = number(f, &m->mass) && number(f, &m->roll_inertia) && number(f, &m->pitch_inertia) && number(f, &a) &&
           number(f, &b) && number(f, &m->gravity) && number(f, &m->speed) && number(f, &m->duration) &&
           number(f, &m->lift);
  for (int e = 0; ok && e < 2; e++) {
    Axle *x = &m->axle[e];
    double *plain[] = {&x->mass, &x->inertia, &x->half_track, &x->spring_at, &x->spring_rate, &x->shock_at,
                       &x->stop_at, &x->gap[0], &x->gap[1], &x->metal_at[0], &x->metal_at[1], &x->rate_factor,
                       &x->metal_rate, &x->droop_at, &x->droop_rate, &x->droop_factor, &x->tyre_rate,
                       &x->tyre_damping};
    for (unsigned i = 0; ok && i < sizeof plain / sizeof *plain; i++) ok = number(f, plain[i]);
    ok = ok && numbers(f, x->shock_v, &x->shock_points) && numbers(f, x->shock_f, &x->shock_points) &&
         numbers(f, x->crush, &x->stop_points) && numbers(f, x->force, &x->stop_points);
    if (!ok) break;
    x->x = e ? -b : a;
    x->behind = e ? a + b : 0;
    x->preload = m->mass * m->gravity * (e ? a : b) / (a + b) / 2;
    x->tyre_load = x->preload + x->mass * m->gravity / 2;
    x->per_mass = 1 / x->mass;
    x->per_inertia = 1 / x->inertia;
    prepare(x);
  }
  for (int s = 0; ok && s < 2; s++) {
    Ground *g = &m->ground[s];
    double count;
    ok = number(f, &g->origin) && number(f, &g->step) && number(f, &count);
    if (!ok) break;
    g->count = (int)count;
    g->per_step = 1 / g->step;
    g->samples = (double *)malloc(sizeof(double) * 2 * g->count);
    for (int i = 0; ok && i < 2 * g->count; i++) ok = number(f, g->samples + i);
  }
  m->per_mass = 1 / m->mass;
  m->per_pitch = 1 / m->pitch_inertia;
  m->per_roll = 1 / m->roll_inertia;
  fclose(f);
  return ok;
}

Model *open_model(const char *path) {
  Model *m = (Model *)calloc(1, sizeof(Model));
  return m && read_model(path, m) ? m : NULL;
}

double stop_gap(const Model *m, int corner) { return m->axle[corner / 2].gap[corner % 2]; }
