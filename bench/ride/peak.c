/* What one core can do: independent chains of multiply-and-add in registers, as one vector instruction, as a scalar one,
   and as a multiplication and an addition apart, which is all that JavaScript and WebAssembly have. Prints operations a
   second as JSON, the best of several runs. */
#include <stdio.h>
#include <time.h>

#if defined(__AVX512F__)
#define BYTES 64
#elif defined(__AVX__)
#define BYTES 32
#else
#define BYTES 16
#endif
#define CHAINS 12
#define TURNS 4000000L

typedef double vector __attribute__((vector_size(BYTES)));

static double now(void) {
  struct timespec t;
  clock_gettime(CLOCK_MONOTONIC, &t);
  return t.tv_sec + 1e-9 * t.tv_nsec;
}

/* One step of a chain each; the empty assembly keeps it in a register and tells the compiler not to look ahead. */
#define FUSED(x) x = x * b + c; __asm__ volatile("" : "+v"(x));
#define APART(x) { double p = x * b; __asm__ volatile("" : "+v"(p)); x = p + c; __asm__ volatile("" : "+v"(x)); }
#define TWELVE(step) step(x0) step(x1) step(x2) step(x3) step(x4) step(x5) step(x6) step(x7) step(x8) step(x9) \
  step(x10) step(x11)

#define LOOP(name, type, step)                                                            \
  static double name(void) {                                                              \
    type b = (type){0} + 0.999999, c = (type){0} + 1e-7;                                     \
    type x0 = c, x1 = c, x2 = c, x3 = c, x4 = c, x5 = c;                                  \
    type x6 = c, x7 = c, x8 = c, x9 = c, x10 = c, x11 = c;                                \
    double least = 1e9;                                                                   \
    for (int run = 0; run < 7; run++) {                                                   \
      double from = now();                                                                \
      for (long n = 0; n < TURNS; n++) { TWELVE(step) }                                   \
      double took = now() - from;                                                         \
      if (took < least) least = took;                                                     \
    }                                                                                     \
    return 2.0 * CHAINS * TURNS * (sizeof(type) / sizeof(double)) / least;                \
  }

LOOP(vector_fused, vector, FUSED)
LOOP(scalar_fused, double, FUSED)
LOOP(scalar_apart, double, APART)

int main(void) {
  double vector_rate = vector_fused(), fused = scalar_fused(), apart = scalar_apart();
  printf("{\"lanes\": %d, \"vectorFused\": %.4g, \"scalarFused\": %.4g, \"scalarApart\": %.4g}\n",
         (int)(sizeof(vector) / sizeof(double)), vector_rate, fused, apart);
  return 0;
}
