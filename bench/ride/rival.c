/* Rivals of the ride engine on one case: `rival CASE SECONDS SETTING...`, each setting one of
     rk4:STEP
     cvode:bdf|adams|fixedpoint:RTOL:free|stops:LONGEST_STEP:HIGHEST_ORDER
   SECONDS are spent on each, and three runs at least. `fixedpoint` is Adams with functional iteration instead of Newton's; `stops` lets CVODE find every contact switch with its own root finder and start afresh there. CVODE takes its own
   steps; peaks are read from cubics through them, as ours are. Prints a line of JSON a setting: the best time of its runs
   and what was found. */
#include <cvode/cvode.h>
#include <math.h>
#include <nvector/nvector_serial.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sundials/sundials_context.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunmatrix/sunmatrix_dense.h>
#include <sunnonlinsol/sunnonlinsol_fixedpoint.h>
#include <time.h>

#include "model.h"

#define MOST_STEPS 200000 /* far beyond what could win; a root finder may step on the spot for ever */
#define SIZE (N + 1) /* one more: the integral of heave acceleration squared */

typedef struct {
  double crush[4];
  double rms;
  long steps, evaluations;
} Found;

/* JSON knows no infinity: what blew up is far off. */
static double number(double x) { return isfinite(x) ? x : 1e99; }

static double now(void) {
  struct timespec t;
  clock_gettime(CLOCK_MONOTONIC, &t);
  return t.tv_sec + 1e-9 * t.tv_nsec;
}

static void start(const Model *m, double *y) {
  memset(y, 0, SIZE * sizeof *y);
  y[0] = y[3] = y[5] = m->lift;
}

/* Largest travel of a step from its ends: a cubic where the speed changes sign. */
static double crest(double x0, double v0, double x1, double v1, double h) {
  double top = x0 > x1 ? x0 : x1;
  if (!(v0 > 0 && v1 < 0)) return top;
  double low = 0, high = 1;
  for (int i = 0; i < 30; i++) {
    double u = (low + high) / 2;
    double slope = 6 * u * (1 - u) * (x1 - x0) / h + (1 - u) * (1 - 3 * u) * v0 + u * (3 * u - 2) * v1;
    if (slope > 0) low = u;
    else high = u;
  }
  double u = (low + high) / 2, w = 1 - u;
  double x = w * x0 + u * x1 - u * w * ((1 - 2 * u) * (x1 - x0) - h * (w * v0 - u * v1));
  return x > top ? x : top;
}

static void take_peaks(const Model *m, const double *before, const double *after, double h, double *travel) {
  for (int c = 0; c < 4; c++) {
    double top = crest(stop_travel(m, c, before), stop_travel(m, c, before + 7), stop_travel(m, c, after),
                       stop_travel(m, c, after + 7), h);
    if (top > travel[c]) travel[c] = top;
  }
}

static void finish(const Model *m, const double *travel, double squares, Found *found) {
  for (int c = 0; c < 4; c++) {
    double crush = travel[c] - m->axle[c / 2].gap[c % 2];
    found->crush[c] = crush > 0 ? crush : 0;
  }
  found->rms = sqrt(squares / m->duration);
}

static Found run_rk4(const Model *m, double step) {
  Found found = {0};
  long count = (long)ceil(m->duration / step);
  double h = m->duration / count, y[SIZE], before[SIZE], k[4][N], in[N], travel[4] = {-1e9, -1e9, -1e9, -1e9};
  double squares = 0;
  start(m, y);
  for (long n = 0; n < count; n++) {
    double t = n * h;
    memcpy(before, y, sizeof y);
    derivative(m, t, y, k[0]);
    for (int i = 0; i < N; i++) in[i] = y[i] + h / 2 * k[0][i];
    derivative(m, t + h / 2, in, k[1]);
    for (int i = 0; i < N; i++) in[i] = y[i] + h / 2 * k[1][i];
    derivative(m, t + h / 2, in, k[2]);
    for (int i = 0; i < N; i++) in[i] = y[i] + h * k[2][i];
    derivative(m, t + h, in, k[3]);
    for (int i = 0; i < N; i++) y[i] += h / 6 * (k[0][i] + 2 * k[1][i] + 2 * k[2][i] + k[3][i]);
    squares += h / 6 * (k[0][7] * k[0][7] + 2 * k[1][7] * k[1][7] + 2 * k[2][7] * k[2][7] + k[3][7] * k[3][7]);
    take_peaks(m, before, y, h, travel);
  }
  found.steps = count;
  found.evaluations = 4 * count;
  finish(m, travel, squares, &found);
  return found;
}

static int right_hand_side(sunrealtype t, N_Vector y, N_Vector dy, void *data) {
  double *d = N_VGetArrayPointer(dy);
  derivative(data, t, N_VGetArrayPointer(y), d);
  d[N] = d[7] * d[7];
  return 0;
}

static int roots(sunrealtype t, N_Vector y, sunrealtype *out, void *data) {
  switches(data, t, N_VGetArrayPointer(y), out);
  return 0;
}

static Found run_cvode(Model *m, const char *family, double rtol, int stops, double longest, int order,
                       SUNContext context) {
  Found found = {0};
  N_Vector y = N_VNew_Serial(SIZE, context), atol = N_VNew_Serial(SIZE, context);
  N_VEnableFusedOps_Serial(y, SUNTRUE);
  double *at = N_VGetArrayPointer(y), *tolerance = N_VGetArrayPointer(atol), before[SIZE];
  double travel[4] = {-1e9, -1e9, -1e9, -1e9};
  start(m, at);
  for (int i = 0; i < 7; i++) {
    tolerance[i] = rtol * 0.02;
    tolerance[7 + i] = rtol * 0.6;
  }
  tolerance[N] = 1e9; /* the sum follows, it does not lead */
  void *cvode = CVodeCreate(strcmp(family, "bdf") == 0 ? CV_BDF : CV_ADAMS, context);
  CVodeInit(cvode, right_hand_side, 0, y);
  CVodeSVtolerances(cvode, rtol, atol);
  CVodeSetUserData(cvode, m);
  CVodeSetMaxNumSteps(cvode, 100000000);
  CVodeSetMaxStep(cvode, longest);
  CVodeSetMaxOrd(cvode, order);
  CVodeSetStopTime(cvode, m->duration);
  SUNMatrix matrix = SUNDenseMatrix(SIZE, SIZE, context);
  SUNLinearSolver solver = SUNLinSol_Dense(y, matrix, context);
  SUNNonlinearSolver fixed_point = NULL;
  if (strcmp(family, "fixedpoint") == 0) {
    fixed_point = SUNNonlinSol_FixedPoint(y, 0, context);
    CVodeSetNonlinearSolver(cvode, fixed_point);
  } else {
    CVodeSetLinearSolver(cvode, solver, matrix);
  }
  if (stops) CVodeRootInit(cvode, 20, roots);
  double t = 0;
  while (t < m->duration) {
    double from = t;
    memcpy(before, at, sizeof before);
    int flag = CVode(cvode, m->duration, y, &t, CV_ONE_STEP);
    if (flag < 0 || found.steps > MOST_STEPS) break;
    if (t > from) take_peaks(m, before, at, t - from, travel);
    if (flag == CV_ROOT_RETURN) {
      CVodeReInit(cvode, t, y);
      CVodeSetStopTime(cvode, m->duration);
    }
    found.steps++;
  }
  CVodeGetNumRhsEvals(cvode, &found.evaluations);
  finish(m, travel, t < m->duration ? INFINITY : at[N], &found); /* given up on the way: infinitely far off */
  CVodeFree(&cvode);
  if (fixed_point) SUNNonlinSolFree(fixed_point);
  SUNLinSolFree(solver);
  SUNMatDestroy(matrix);
  N_VDestroy(y);
  N_VDestroy(atol);
  return found;
}

/* One setting in words, as above. */
static int run_setting(Model *m, char *setting, SUNContext context, Found *found) {
  char *part[6] = {0};
  int count = 0;
  for (char *word = strtok(setting, ":"); word && count < 6; word = strtok(NULL, ":")) part[count++] = word;
  if (count == 2 && strcmp(part[0], "rk4") == 0) *found = run_rk4(m, atof(part[1]));
  else if (count == 6 && strcmp(part[0], "cvode") == 0)
    *found = run_cvode(m, part[1], atof(part[2]), strcmp(part[3], "stops") == 0, atof(part[4]), atoi(part[5]), context);
  else return 0;
  return 1;
}

int main(int argc, char **argv) {
  static Model model;
  if (argc < 4 || !read_model(argv[1], &model)) {
    fprintf(stderr, "rival: cannot read %s\n", argc > 1 ? argv[1] : "(no case)");
    return 2;
  }
  double budget = atof(argv[2]);
  SUNContext context;
  SUNContext_Create(NULL, &context);
  for (int each = 3; each < argc; each++) {
    Found found;
    char words[256];
    double best = 1e9, spent = 0;
    for (int n = 0; n < 3 || (spent < budget && n < 1000); n++) {
      snprintf(words, sizeof words, "%s", argv[each]);
      double from = now();
      if (!run_setting(&model, words, context, &found)) return 2;
      double took = now() - from;
      spent += took;
      if (took < best) best = took;
      if (took > 20 * budget) break; /* far from winning */
    }
    printf("{\"seconds\": %.9g, \"peakCrush\": [%.12g, %.12g, %.12g, %.12g], \"rms\": %.12g, \"steps\": %ld, "
           "\"evaluations\": %ld}\n",
           best, number(found.crush[0]), number(found.crush[1]), number(found.crush[2]), number(found.crush[3]),
           number(found.rms), found.steps, found.evaluations);
  }
  SUNContext_Free(&context);
  return 0;
}
