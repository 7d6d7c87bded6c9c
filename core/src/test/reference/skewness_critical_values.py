"""Critical values of the skewness test of Shi and others: python3 core/src/test/reference/skewness_critical_values.py

Stat Methods Med Res 2023;32:1338. For n = 4q + 1 normal values with a median m the values below it are an independent sample
of the normal distribution below m, those above of that above. So lower distance (m - lower limit) and upper distance are
independent given m, and the chance that |upper - lower|/(upper + lower) passes c is a double integral, done here by
Gauss-Legendre rules: exact, no simulation. For range and quartiles together the four distances are drawn from their
exact distributions (order statistics of uniform values are beta values), two million times with a fixed seed.

Prints the error of the first kind at the critical values of the class Skewness, the critical values that give 5 % exactly, and
the constants a least-squares fit of the same forms to those gives; for quartiles also the first constant by the variance
of q1 + q3 - 2m in large samples, 1.96 x 1.356 = 2.66.
"""

import numpy as np
from scipy import stats
from scipy.optimize import brentq, curve_fit

POINTS, WEIGHTS = np.polynomial.legendre.leggauss(160)
NORMAL = stats.norm


def rule(low, high):
    return low + (high - low) * (POINTS + 1) / 2, WEIGHTS * (high - low) / 2


def chance(c, q, rank):
    """That the statistic of n = 4q + 1 passes c; limits are the rank-th value from the median, outward."""
    k = 2 * q
    ratio = (1 + c) / (1 - c)
    share = stats.beta(rank, k - rank + 1)  # of the way, in probability, from the median outward
    p, p_weight = rule(*stats.beta(k + 1, k + 1).ppf([1e-15, 1 - 1e-15]))
    p_weight = p_weight * stats.beta(k + 1, k + 1).pdf(p)
    s, s_weight = rule(*share.ppf([1e-15, 1 - 1e-15]))
    s_weight = s_weight * share.pdf(s)
    m = NORMAL.ppf(p)[:, None]
    lower = m - NORMAL.ppf(p[:, None] * (1 - s[None, :]))
    beyond = (NORMAL.cdf(m + ratio * lower) - p[:, None]) / (1 - p[:, None])
    # both sides pass alike
    return 2 * p_weight @ (share.sf(beyond) @ s_weight)


def exact(q, rank):
    return brentq(lambda c: chance(c, q, rank) - 0.05, 1e-3, 0.999, xtol=1e-10)


def critical_range(n, a=1.01, b=2.43):
    return a / np.log(n + 9) + b / (n + 1)


def critical_quartiles(n, a=2.65, b=6.0):
    return a / np.sqrt(n) - b / n ** 2


def critical_both(n, a=3.0, b=40.0):
    return a / np.sqrt(n) - b / n ** 3


def statistic_of_both(q, draws, random):
    n, k = 4 * q + 1, 2 * q
    p = random.beta(k + 1, k + 1, draws)
    sides = []
    for side in (p, 1 - p):
        near = random.beta(q, k - q + 1, draws)
        # of the q values beyond the quartile the outermost
        far = near + (1 - near) * random.beta(q, 1, draws)
        m = NORMAL.isf(side)  # the side turned so that it lies above the median
        sides.append([NORMAL.isf(side * (1 - s)) - m for s in (near, far)])
    (q_lower, r_lower), (q_upper, r_upper) = sides
    of_range = abs(r_upper - r_lower) / (r_upper + r_lower)
    of_quartiles = abs(q_upper - q_lower) / (q_upper + q_lower)
    return np.maximum(2.65 * np.log(0.6 * n) / np.sqrt(n) * of_range, of_quartiles)


sizes = np.array([2, 3, 4, 6, 10, 15, 25, 50, 100, 150, 250])
n = 4 * sizes + 1
for name, critical, rank in (("range", critical_range, lambda q: 2 * q), ("quartiles", critical_quartiles, lambda q: q)):
    values = np.array([exact(q, rank(q)) for q in sizes])
    print(name + ": n, critical value, exact one, error of the first kind")
    for i, q in enumerate(sizes):
        print(f"  {n[i]:4d} {critical(n[i]):.4f} {values[i]:.4f} {chance(critical(n[i]), q, rank(q)):.4f}")
    print("  constants fitted:", np.round(curve_fit(critical, n, values, p0=critical.__defaults__)[0], 2))
density = NORMAL.pdf(NORMAL.ppf(0.25))
spread = (2 * (3 / 16 + 1 / 16) / density ** 2 + np.pi * 2 - 8 * (1 / 8) / (density * NORMAL.pdf(0))) ** 0.5
print(f"quartiles in large samples: {NORMAL.ppf(0.975) * spread / (2 * NORMAL.ppf(0.75)):.3f}/root n")

random, draws, values = np.random.default_rng(7), 2_000_000, []
print("both: n, critical value, exact one, error of the first kind (standard error 0.0002)")
for q in sizes:
    drawn = statistic_of_both(int(q), draws, random)
    values.append(np.quantile(drawn, 0.95))
    size = 4 * q + 1
    print(f"  {size:4d} {critical_both(size):.4f} {values[-1]:.4f} {np.mean(drawn > critical_both(size)):.4f}")
print("  constants fitted:", np.round(curve_fit(critical_both, n, np.array(values), p0=(3, 40))[0], 2))
