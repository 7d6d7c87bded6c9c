"""Standard deviations from a range or quartiles: the divisors of Wan and others (2014) again.

The exact divisors are expectations of normal order statistics by numerical integration (SciPy), the
formulas their approximation by normal quantiles (Blom). Then means with a range are drawn: how far the
standard deviation lies from the true one on average, and how often the tool warns that a mean lies too
far to one side; the published test was made for a median and hardly ever warns of a mean.
"""
import math

import numpy as np
from scipy import integrate, stats


def expected_order_statistic(i, n):
    """Expectation of the i-th smallest of n standard normal values."""
    log_factor = math.lgamma(n + 1) - math.lgamma(i) - math.lgamma(n - i + 1)

    def integrand(z):
        return z * np.exp(log_factor + (i - 1) * stats.norm.logcdf(z)
                          + (n - i) * stats.norm.logsf(z) + stats.norm.logpdf(z))

    return integrate.quad(integrand, -12, 12, epsabs=1e-12, epsrel=1e-12, limit=400)[0]


def by_range(n):
    return 2 * stats.norm.ppf((n - 0.375) / (n + 0.25))


def by_quartiles(n):
    return 2 * stats.norm.ppf((0.75 * n - 0.125) / (n + 0.25))


print("range: n, exact divisor, formula")
for n in (5, 10, 25, 50, 100):
    exact = 2 * expected_order_statistic(n, n)
    print(f"{n} {exact:.6f} {by_range(n):.6f} {100 * (by_range(n) / exact - 1):+.2f} %")
    assert abs(by_range(n) / exact - 1) < 0.016

print("quartiles: n = 4q + 1, exact divisor, formula")
for q in (1, 2, 5, 10, 25):
    n = 4 * q + 1
    exact = 2 * expected_order_statistic(3 * q + 1, n)
    print(f"{n} {exact:.6f} {by_quartiles(n):.6f} {100 * (by_quartiles(n) / exact - 1):+.2f} %")
    assert abs(by_quartiles(n) / exact - 1) < 0.005

print("worked example: range 4 to 19 of 25: %.6f; quartiles 7 and 12 of 25: %.6f"
      % (15 / by_range(25), 5 / by_quartiles(25)))

random = np.random.default_rng(20261129)


def lopsided(low, middle, high):
    return np.abs(low + high - 2 * middle) / (high - low)


def drawn(name, draw, sd):
    for n in (5, 10, 20, 50, 200):
        x = draw((100_000, n))
        low, high, mean = x.min(axis=1), x.max(axis=1), x.mean(axis=1)
        lower, upper = np.quantile(x, [0.25, 0.75], axis=1)
        by_mean = np.mean(lopsided(low, mean, high) > 1.02 / math.log(n + 9))
        by_shi = np.mean(lopsided(low, mean, high) > 1.01 / math.log(n + 9) + 2.43 / (n + 1))
        of_quartiles = np.mean(lopsided(lower, mean, upper) > 1.43 / math.sqrt(n) + 60 / n**3)
        print(f"{name}, {n}: SD guessed/true by range {((high - low) / by_range(n)).mean() / sd:.3f},"
              f" by quartiles {((upper - lower) / by_quartiles(n)).mean() / sd:.3f};"
              f" warned by range {100 * by_mean:.1f} % (by the bound for medians {100 * by_shi:.1f} %),"
              f" by quartiles {100 * of_quartiles:.1f} %")
        if name == "normal":
            assert 0.04 < by_mean < 0.06
            assert n < 10 or 0.035 < of_quartiles < 0.065


drawn("normal", lambda size: random.standard_normal(size), 1)
for sigma in (0.3, 0.5, 0.8):
    sd = math.sqrt((math.exp(sigma**2) - 1) * math.exp(sigma**2))
    drawn(f"log-normal {sigma}", lambda size: random.lognormal(0, sigma, size), sd)
