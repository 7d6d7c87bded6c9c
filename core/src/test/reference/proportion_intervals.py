"""Limits of proportions as in table I of Newcombe, Stat Med 1998;17:857: python3 core/src/test/reference/proportion_intervals.py

Derived from the definition of each method with 30 digits, every limit a root of its own equation:
  wald                         p -+ z root(p(1 - p)/n)
  wilson                       roots p of (x/n - p)^2 = z^2 p(1 - p)/n (Wilson 1927)
  wilson-continuity-corrected  the same with |x/n - p| - 1/(2n), 0 and 1 where x is 0 and n
  clopper-pearson              P(X >= x | lower) = P(X <= x | upper) = 2.5 % (Clopper and Pearson 1934)
  mid-p                        the same with half of P(X = x)
  likelihood-ratio             twice the log likelihood lies z^2 below its top
Prints the lines of ProportionIntervalTest and holds the 45 printed values of published/single-proportions.
"""

from mpmath import binomial, erfinv, findroot, log, mp, mpf, sqrt

import held

mp.dps = 30
Z = sqrt(2) * erfinv(mpf(95) / 100)


def point(x, n, p):
    return binomial(n, x) * p ** x * (1 - p) ** (n - x)


def tail(x, n, p, from_above, share):
    """P of x and beyond it, that of x itself counted by a share."""
    beyond = range(x + 1, n + 1) if from_above else range(x)
    return sum(point(i, n, p) for i in beyond) + share * point(x, n, p)


def term(count, share):
    return count * log(share) if count else mpf(0)


def excess(x, n, p):
    """How far twice the log likelihood has fallen below its top, less z^2."""
    top = term(x, mpf(x) / n) + term(n - x, 1 - mpf(x) / n)
    return 2 * (top - term(x, p) - term(n - x, 1 - p)) - Z ** 2


def halved(function, low, high):
    """The root between two places where the function differs in sign."""
    return findroot(function, (low, high), solver="anderson", tol=1e-25, maxsteps=200)


def limits(method, x, n):
    p, tiny = mpf(x) / n, mpf(10) ** -20
    if method == "wald":
        half = Z * sqrt(p * (1 - p) / n)
        return p - half, p + half
    if method.startswith("wilson"):
        off = mpf(1) / (2 * n) if method.endswith("corrected") else mpf(0)

        def function(place):
            return max(abs(p - place) - off, 0) ** 2 - Z ** 2 * place * (1 - place) / n
    elif method == "likelihood-ratio":
        def function(place):
            return excess(x, n, place)
    else:
        share = mpf(1) / 2 if method == "mid-p" else mpf(1)

        def function(place):
            return mpf(25) / 1000 - tail(x, n, place, place < p, share)
    lower = mpf(0) if x == 0 else halved(function, tiny, p - tiny)
    return lower, mpf(1) if x == n else halved(function, p + tiny, 1 - tiny)


CASES = ((81, 263), (15, 148), (0, 20), (1, 29))
WORDS = {"wald": "Wald", "wilson": "Wilson", "wilson-continuity-corrected": "Wilson with continuity correction",
         "clopper-pearson": "Clopper-Pearson", "mid-p": "mid-P", "likelihood-ratio": "likelihood"}
found = {}
for events, total in CASES:
    for method, word in WORDS.items():
        lower, upper = limits(method, events, total)
        print(f"{method},{events},{total},{float(lower):.4f},{float(upper):.4f}")
        found[f"published/{events}/{total}/{word}/lower"] = round(float(lower), 4)
        found[f"published/{events}/{total}/{word}/upper"] = round(float(upper), 4)
held.compare("single-proportions", found)
