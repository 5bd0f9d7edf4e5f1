/* The seven-coordinate model of docs/theory/ride.md once more, written from its equations and not from our code.
   It is the rivals' right-hand side, so it is meant to be fast: divisions are made once, tables are short and searched
   from their busy end, the ground is read from the same samples as ours. What varies in a run is `real`: a double, or in
   count.cc a number that counts what is done with it. */
#ifndef LASTINCH_BENCH_MODEL_H
#define LASTINCH_BENCH_MODEL_H

#define N 14
#define MAX_POINTS 64

#ifndef REAL
#define REAL double
#endif
typedef REAL real;

typedef struct {
  double x, behind, mass, inertia, half_track, spring_at, spring_rate, preload, shock_at, stop_at;
  double gap[2], metal_at[2], rate_factor, metal_rate, droop_at, droop_rate, droop_factor;
  double tyre_load, tyre_rate, tyre_damping, per_mass, per_inertia;
  int shock_points, stop_points;
  double shock_v[MAX_POINTS], shock_f[MAX_POINTS], shock_k[MAX_POINTS];
  double crush[MAX_POINTS], force[MAX_POINTS], b[MAX_POINTS], c[MAX_POINTS], d[MAX_POINTS], end_slope;
} Axle;

typedef struct {
  double origin, step, per_step;
  int count;
  double *samples;
} Ground;

typedef struct {
  double mass, roll_inertia, pitch_inertia, gravity, speed, duration, lift;
  double per_mass, per_pitch, per_roll;
  Axle axle[2];
  Ground ground[2];
} Model;

/** Reads the plain numbers that case-numbers.ts writes. Returns 0 when something is missing. */
int read_model(const char *path, Model *model);

/** The same for a caller who cannot make one: NULL when it cannot be read. */
Model *open_model(const char *path);
double stop_gap(const Model *model, int corner);

/** dy/dt: 7 coordinates, then their 7 speeds. */
void derivative(const Model *model, real time, const real *y, real *dy);

/** Compression at the stop's station of a corner, or its speed when given y + 7. */
real stop_travel(const Model *model, int corner, const real *y);

/** Contacts as numbers that are positive while the contact carries force: 5 a corner. */
void switches(const Model *model, real time, const real *y, real *out);

#endif
