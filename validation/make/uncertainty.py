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
write('uncertainty', 'column-propagation', 'Spare of a travel column and its 95 % half-width', 'column',
      'length', 'm', {'corner': 'frontLeft', 'readings': readings},
      {'hardTravel': hard, 'hardTravelTolerance': float(np.hypot(gap[1] / ratio[0], gap[0] / ratio[0] ** 2 * ratio[1])),
       'spare': spare, 'spareTolerance': expanded},
      ('absolute', 1.5e-4, 'the half-width comes from trials: a 95 % interval is 1.96 standard uncertainties where '
       'k = 2 is typed (2 %, 0.13 mm here), and the trials add their own scatter'),
      (GUM, '2008', '5.1.2, equation (10), first order, k = 2 in and out', NOTE), 'computed', MAKER)
write('uncertainty', 'column-probability', 'Probability that spare is below zero', 'column-probability',
      'probability', '1', {'corner': 'frontLeft', 'readings': readings},
      {'spareBelowZero': float(norm.cdf(-spare / (expanded / 2)))},
      ('absolute', 0.01, 'the quotient gap ÷ ratio is not quite normal, and 1000 trials or more resolve no finer'),
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
      ('absolute', 0.02, '1000 trials or more resolve a probability near one half to 0.016 at worst when plain random'),
      ('Difference of two normal quantities (SciPy scipy.stats.norm.cdf)', scipy.__version__,
       'validation/make/uncertainty.py'), 'computed', MAKER)


def above(t):
    return norm.sf(t, m1, s1) * norm.sf(t, m2, s2)


low, high = (brentq(lambda t, p=p: 1 - above(t) - p, 0.08, 0.14) for p in (0.025, 0.975))
write('uncertainty', 'smallest-of-two', 'Half-width of the smaller of two uncertain travels', 'hard-travel',
      'length', 'm', {'corner': 'rearLeft', 'readings': readings}, {'halfWidth': (high - low) / 2},
      ('absolute', 1.5e-4, 'a twentieth of the half-width: scatter of its ends at 1000 trials'),
      ('Distribution of the smaller of two independent normal quantities, 1 − (1 − F₁)(1 − F₂) (SciPy)',
       scipy.__version__, 'validation/make/uncertainty.py'), 'computed', MAKER)
