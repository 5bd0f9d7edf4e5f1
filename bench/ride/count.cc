/* `count CASE`: how many floating-point operations one evaluation of the model takes, counted by running model.c with a
   number that counts what is done with it, along a ride by RK4 at 1 ms. Prints means an evaluation as JSON. Additions,
   subtractions, multiplications and divisions each count one; comparisons are told apart and count none. */
#include <cmath>
#include <cstdio>

static long sums, products, quotients, comparisons;

struct Counted {
  double value;
  Counted() = default;
  Counted(double x) : value(x) {}
  explicit operator int() const { return (int)value; }
};

static Counted operator+(Counted a, Counted b) { sums++; return a.value + b.value; }
static Counted operator-(Counted a, Counted b) { sums++; return a.value - b.value; }
static Counted operator*(Counted a, Counted b) { products++; return a.value * b.value; }
[[maybe_unused]] static Counted operator/(Counted a, Counted b) { quotients++; return a.value / b.value; }
static Counted &operator+=(Counted &a, Counted b) { return a = a + b; }
static Counted &operator-=(Counted &a, Counted b) { return a = a - b; }
static Counted &operator*=(Counted &a, Counted b) { return a = a * b; }
static bool operator<(Counted a, Counted b) { comparisons++; return a.value < b.value; }
static bool operator>(Counted a, Counted b) { comparisons++; return a.value > b.value; }
static bool operator<=(Counted a, Counted b) { comparisons++; return a.value <= b.value; }
static bool operator>=(Counted a, Counted b) { comparisons++; return a.value >= b.value; }

#define REAL Counted
#include "model.c"

int main(int argc, char **argv) {
  static Model model;
  if (argc < 2 || !read_model(argv[1], &model)) return 2;
  Counted y[N], in[N], k[4][N];
  for (int i = 0; i < N; i++) y[i] = i == 0 || i == 3 || i == 5 ? model.lift : 0;
  long evaluations = 0, sum = 0, product = 0, quotient = 0, comparison = 0;
  const double h = 1e-3;
  for (double t = 0; t < model.duration; t += h) {
    const double at[4] = {0, h / 2, h / 2, h};
    for (int s = 0; s < 4; s++) {
      for (int i = 0; i < N; i++) in[i].value = y[i].value + (s ? at[s] * k[s - 1][i].value : 0);
      sums = products = quotients = comparisons = 0;
      derivative(&model, t + at[s], in, k[s]);
      evaluations++;
      sum += sums, product += products, quotient += quotients, comparison += comparisons;
    }
    for (int i = 0; i < N; i++)
      y[i].value += h / 6 * (k[0][i].value + 2 * k[1][i].value + 2 * k[2][i].value + k[3][i].value);
  }
  double n = evaluations;
  printf("{\"sums\": %.2f, \"products\": %.2f, \"quotients\": %.2f, \"comparisons\": %.2f}\n", sum / n, product / n,
         quotient / n, comparison / n);
  return 0;
}
