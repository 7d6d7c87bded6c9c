"""Covariance of standardised means of several arms: python3 core/src/test/reference/standardised_arms.py

The class StandardisedArms takes cov(g_i, g_j) = 1/n_1 + g_i g_j/(2N), and 1/n_i more on the diagonal (Gleser and Olkin 1994).
Its form is derived here from exact moments: with s^2 on f = N - arms degrees of freedom, independent of the means,
  E(g_i) = delta_i and E(g_i g_j) = J^2 f/(f - 2) (delta_i delta_j + 1/n_1 [+ 1/n_i]),
since E(1/s) = 1/J and E(1/s^2) = f/(f - 2) for patients of variance 1, J the small-sample factor (Hedges, J Educ Stat
1981;6:107). In large samples J^2 f/(f - 2) is 1 + 1/(2f) to first order, which gives the formula with f for N. Prints both at
sizes of real series, and the largest difference relative to the standard errors.
"""

from math import exp, lgamma, log, sqrt


def factor(f):
    return exp(lgamma(f / 2) - lgamma((f - 1) / 2) - log(f / 2) / 2)


def exact(i, j, delta, n):
    f = sum(n) - len(n)
    sizes = 1 / n[0] + (1 / n[i] if i == j else 0)
    return factor(f) ** 2 * f / (f - 2) * (delta[i] * delta[j] + sizes) - delta[i] * delta[j]


def formula(i, j, delta, n):
    return 1 / n[0] + (1 / n[i] if i == j else 0) + delta[i] * delta[j] / (2 * sum(n))


for n in ((14, 17, 20), (30, 30, 30), (100, 120, 80), (2000, 2000, 2000)):
    worst = 0.0
    for delta in ((0, 0.3, -0.4), (0, 0.8, 0.5), (0, 1.5, 1.0)):
        for i, j in ((1, 1), (1, 2), (2, 2)):
            a, b = exact(i, j, delta, n), formula(i, j, delta, n)
            scale = sqrt(exact(i, i, delta, n) * exact(j, j, delta, n))
            worst = max(worst, abs(a - b) / scale)
    print(f"arms of {n}: exact moments and formula differ by at most {100 * worst:.2f} % of the variances")
