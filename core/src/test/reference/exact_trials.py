"""Power of Fisher's exact test, and the patients it needs, by enumeration with SciPy.

Every outcome of two arms of n is weighed by its binomial chances; it counts if scipy.stats.fisher_exact gives a
two-sided p of at most the significance and the arm with the higher proportion has more events.
"""

import math
from functools import lru_cache

from scipy.stats import binom, fisher_exact, norm


@lru_cache(maxsize=None)
def p_value(x, y, n):
    return fisher_exact([[x, n - x], [y, n - y]])[1]


def power(n, low, high, significance):
    total = 0.0
    for x in range(n + 1):
        for y in range(x + 1, n + 1):
            if p_value(x, y, n) <= significance * (1 + 1e-12):
                total += binom.pmf(x, n, low) * binom.pmf(y, n, high)
    return total


def formula(p1, p2, significance, wanted):
    a, b = norm.isf(significance / 2), norm.ppf(wanted)
    p = (p1 + p2) / 2
    root = a * math.sqrt(2 * p * (1 - p)) + b * math.sqrt(p1 * (1 - p1) + p2 * (1 - p2))
    n = (root / (p1 - p2)) ** 2
    return n / 4 * (1 + math.sqrt(1 + 4 / (n * abs(p1 - p2)))) ** 2


def needed(p1, p2, significance=0.05, wanted=0.8):
    low, high = sorted((p1, p2))
    n = math.ceil(1.5 * formula(p1, p2, significance, wanted)) + 5
    while power(n, low, high, significance) >= wanted:
        n -= 1
    return n + 1


for p1, p2 in [(0.05, 0.95), (0.1, 0.6), (0.2, 0.6), (0.5, 0.9)]:
    n = needed(p1, p2)
    print(p1, p2, n, repr(power(n, min(p1, p2), max(p1, p2), 0.05)), repr(power(n - 1, min(p1, p2), max(p1, p2), 0.05)))
