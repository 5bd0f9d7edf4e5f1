"""Reference values for uncertainty: closed forms of the guides, SciPy's normal distribution.

Run: python3 -B validation/make/uncertainty.py, then biome over validation/checks.
"""
import numpy as np
import scipy
from scipy.integrate import quad
from scipy.optimize import brentq
from scipy.stats import norm
from check_file import write

MAKER = 'uncertainty.py'
GUM = 'JCGM 100:2008, Guide to the expression of uncertainty in measurement'
SUPPLEMENT = 'JCGM 101:2008, Supplement 1: Monte Carlo method'
NOTE = 'The formula is known from memory; the guide itself was not opened.'

# Standard normal numbers: moments and quantiles of the sample.
COUNT, DIMENSIONS = 4096, 24
probabilities = np.array([0.025, 0.16, 0.5, 0.84, 0.975])
write('uncertainty', 'normal-moments', 'Moments of the normal trials, worst of 24 dimensions', 'normal-moments',
      'worst moment: mean, variance, fourth moment, correlation', '1', {'count': COUNT, 'dimensions': DIMENSIONS},
      {'mean': 0, 'variance': 1, 'fourth': 3, 'correlation': 0},
      ('absolute', 0.1, 'plain random numbers would scatter by 0.016 (mean), 0.022 (variance), 0.15 (fourth moment) '
       'and 0.016 (correlation) at 4096 trials, worst of 24 about 2.5 times that; evenly spread trials do better'),
      ('Moments of the standard normal distribution', 'closed form', 'E z = 0, E z² = 1, E z⁴ = 3'), 'computed', MAKER)
write('uncertainty', 'normal-quantiles', 'Quantiles of the normal trials in one dimension', 'normal-quantiles',
      'quantile', '1', {'count': COUNT, 'probabilities': probabilities}, norm.ppf(probabilities),
      ('absolute', 0.03, 'plain random numbers would scatter by 0.042 at the outer quantiles of 4096 trials'),
      ('SciPy scipy.stats.norm.ppf', scipy.__version__, 'validation/make/uncertainty.py'), 'computed', MAKER)
write('uncertainty', 'additive-model', 'Sum of four standard normal quantities', 'additive-model',
      'standard uncertainty and 95 % interval', '1', {'count': COUNT, 'quantities': 4},
      {'standard': 2.0, 'low': float(2 * norm.ppf(0.025)), 'high': float(2 * norm.ppf(0.975))},
      ('absolute', 0.06, 'plain random numbers would scatter by 0.02 (standard) and 0.08 (ends) at 4096 trials; '
       'the guide prints 2.00, −3.92, 3.92'),
      (SUPPLEMENT, '2008', 'clause 9.2.2, additive model with normal quantities', NOTE), 'computed', MAKER)

# The travel column is a sum and a quotient: law of propagation of uncertainty.
gap, ratio, stop_gap, crush, flex, reserve = (0.118, 0.003), (0.92, 0.02), (0.06, 0.002), (0.04, 0.0015), \
    (0.012, 0.004), 0.01
readings = {'front.contacts.sump.gap': gap, 'front.contacts.sump.ratio': ratio, 'front.stop.gap': stop_gap,
            'front.stop.usableCrush': crush, 'front.flex': flex, 'limits.reserve': reserve}
hard = gap[0] / ratio[0]
parts = {'front.contacts.sump.gap': gap[1] / ratio[0], 'front.contacts.sump.ratio': gap[0] / ratio[0] ** 2 * ratio[1],
         'front.stop.gap': stop_gap[1], 'front.stop.usableCrush': crush[1], 'front.flex': flex[1]}
expanded = float(np.sqrt(sum(part ** 2 for part in parts.values())))
spare = hard - stop_gap[0] - crush[0] - flex[0] - reserve
TRIALS = 32768
SCATTER = '2.1 standard deviations of an outer quantile of 32768 plain random trials (0.76 % each)'


def half_width(others):
    """Larger side of the interval that holds 95.45 % of gap ÷ ratio − others, exactly, about its nominal value."""
    def below(x):
        def part(z):
            r = ratio[0] + ratio[1] / 2 * z
            return norm.pdf(z) * norm.cdf((x - gap[0] / r) / np.hypot(gap[1] / 2 / r, others))
        return quad(part, -8, 8, epsabs=1e-13)[0]
    tail = norm.cdf(-2)
    ends = [brentq(lambda x, p=p: below(x) - p, hard - 0.03, hard + 0.03) for p in (tail, 1 - tail)]
    return float(max(hard - ends[0], ends[1] - hard))


others = np.sqrt(stop_gap[1] ** 2 + crush[1] ** 2 + flex[1] ** 2) / 2
write('uncertainty', 'column-distribution', 'Spare of a travel column: exact distribution', 'column',
      'length', 'm', {'corner': 'frontLeft', 'trials': TRIALS, 'readings': readings},
      {'hardTravel': hard, 'hardTravelTolerance': half_width(0.0), 'spare': spare, 'spareTolerance': half_width(others)},
      ('absolute', 1e-4, SCATTER),
      ('Distribution of gap ÷ ratio − rest for normal readings, by quadrature (SciPy integrate.quad)',
       scipy.__version__, 'validation/make/uncertainty.py'), 'computed', MAKER)
write('uncertainty', 'column-propagation', 'Spare of a travel column: law of propagation of uncertainty', 'column',
      'length', 'm', {'corner': 'frontLeft', 'trials': TRIALS, 'readings': readings},
      {'hardTravel': hard, 'hardTravelTolerance': float(np.hypot(gap[1] / ratio[0], gap[0] / ratio[0] ** 2 * ratio[1])),
       'spare': spare, 'spareTolerance': expanded},
      ('absolute', 1.6e-4, 'first order leaves out the bend of the quotient, worth 0.05 mm here; the rest is '
       + SCATTER),
      (GUM, '2008', '5.1.2, equation (10), first order, k = 2 in and out', NOTE), 'computed', MAKER)
write('uncertainty', 'column-probability', 'Probability that spare is below zero', 'column-probability',
      'probability', '1', {'corner': 'frontLeft', 'readings': readings},
      {'spareBelowZero': float(norm.cdf(-spare / (expanded / 2)))},
      ('absolute', 0.01, 'the quotient gap ÷ ratio is not quite normal, and 2048 plain random trials scatter by 0.011'),
      ('SciPy scipy.stats.norm.cdf on the first-order spare', scipy.__version__, 'validation/make/uncertainty.py'),
      'computed', MAKER)
write('uncertainty', 'column-blame', 'Share of the variance of spare that each reading is to blame for', 'column-blame',
      'share of the variance', '1', {'corner': 'frontLeft', 'readings': readings},
      {key: part ** 2 / expanded ** 2 for key, part in parts.items()},
      ('absolute', 0.03, 'first-order shares; the quotient adds a little interaction, and the trials their scatter'),
      (GUM, '2008', '5.1.3, shares of the combined variance', NOTE), 'computed', MAKER)

# Two contacts that nearly tie: which is touched first, and where the smaller of the two lies.
(m1, u1), (m2, u2) = (0.108, 0.004), (0.110, 0.006)
s1, s2 = u1 / 2, u2 / 2
first = float(norm.cdf((m2 - m1) / np.hypot(s1, s2)))
readings = {'rear.contacts.panhard.gap': (m1, u1), 'rear.contacts.sump.gap': (m2, u2)}
write('uncertainty', 'contacts-tie', 'Which of two contacts is touched first', 'first-share',
      'probability', '1', {'corner': 'rearLeft', 'readings': readings}, {'panhard': first, 'sump': 1 - first},
      ('absolute', 0.02, '2048 plain random trials scatter by 0.011 at a probability near one half'),
      ('Difference of two normal quantities (SciPy scipy.stats.norm.cdf)', scipy.__version__,
       'validation/make/uncertainty.py'), 'computed', MAKER)


def above(t):
    return norm.sf(t, m1, s1) * norm.sf(t, m2, s2)


# Ours is the half-width about the nominal travel, the larger of both sides, with the coverage of k = 2 (95.45 %).
tail = float(norm.cdf(-2))
low, high = (brentq(lambda t, p=p: 1 - above(t) - p, 0.08, 0.14) for p in (tail, 1 - tail))
nominal = min(m1, m2)
write('uncertainty', 'smallest-of-two', 'Half-width of the smaller of two uncertain travels', 'hard-travel',
      'length', 'm', {'corner': 'rearLeft', 'readings': readings}, {'halfWidth': max(high - nominal, nominal - low)},
      ('absolute', 2e-4, 'a twenty-fifth of the half-width: scatter of an outer quantile at 2048 plain random trials'),
      ('Distribution of the smaller of two independent normal quantities, 1 − (1 − F₁)(1 − F₂) (SciPy)',
       scipy.__version__, 'validation/make/uncertainty.py'), 'computed', MAKER)

# Normal quantiles: the function itself, when it is public.
places = np.array([1e-300, 1e-12, 1e-4, 0.001, 0.02275013194817921, 0.025, 0.1, 0.3, 0.5, 0.6, 0.925, 0.975, 0.999999])
write('uncertainty', 'normal-quantile', 'Quantiles of the standard normal', 'quantile', 'quantile', '1',
      {'probabilities': places}, norm.ppf(places),
      ('absolute', 5e-14, 'double precision at values up to 37'),
      ('SciPy scipy.stats.norm.ppf', scipy.__version__, 'validation/make/uncertainty.py'), 'computed', MAKER)
