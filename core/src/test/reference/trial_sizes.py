"""Patients for a trial of two arms: python3 core/src/test/reference/trial_sizes.py

Two proportions: n = (a root(2pq) + b root(p1 q1 + p2 q2))^2/(p1 - p2)^2 (Fleiss, Levin and Paik 2003, equation 4.14), with
continuity correction n/4 (1 + root(1 + 4/(n |p1 - p2|)))^2 (Fleiss, Tytun and Ury, Biometrics 1980;36:343). Two means: the n
at which scipy's noncentral t on 2n - 2 about root(n/2) d passes its critical value with the power (Cohen 1988, chapter 2).
Prints the sizes that TrialSizeTest holds.
"""

from math import ceil, sqrt

from numpy import errstate
from scipy.optimize import brentq
from scipy.stats import nct, norm, t


def proportions(p1, p2, power, significance):
    p, a, b = (p1 + p2) / 2, norm.isf(significance / 2), norm.ppf(power)
    return ((a * sqrt(2 * p * (1 - p)) + b * sqrt(p1 * (1 - p1) + p2 * (1 - p2))) / (p1 - p2)) ** 2


def corrected(n, p1, p2):
    return n / 4 * (1 + sqrt(1 + 4 / (n * abs(p1 - p2)))) ** 2


def means(d, power, significance=0.05):
    def lacking(n):
        return nct.sf(t.isf(significance / 2, 2 * n - 2), 2 * n - 2, sqrt(n / 2) * abs(d)) - power

    # by the normal distribution, which asks for some two patients fewer
    near = 2 * ((norm.isf(significance / 2) + norm.ppf(power)) / d) ** 2
    with errstate(invalid="ignore"):  # raised inside the library on the way to a sound value
        return brentq(lacking, max(2, near), near + 4, xtol=1e-10)


for case in ((0.50, 0.75, 0.90, 0.05), (0.85, 0.95, 0.80, 0.05), (0.90, 0.95, 0.80, 0.05), (0.02, 0.10, 0.80, 0.05),
             (0.60, 0.70, 0.95, 0.01)):
    n = proportions(*case)
    with_correction = corrected(n, *case[:2])
    print(f"{case}: {n:.9f}, with continuity correction {with_correction:.2f}, so {ceil(with_correction)}")
for d, power in ((1, 0.90), (0.5, 0.80), (0.8, 0.80), (0.2, 0.80), (-0.22314355131420976 / 0.4, 0.80), (3, 0.80)):
    n = means(d, power)
    print(f"d {d:.4g}, power {power}: {n:.7f}, so {ceil(n)}")
