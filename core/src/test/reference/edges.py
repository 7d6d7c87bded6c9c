"""Plans at the edge of what data can tell, by SciPy alone: what the tests of gapwise.analysis.edges hold.

Likelihoods of counts are integrals over a lattice of true values fine enough for any spread, their tops found by
Nelder and Mead's search; posteriors are sums over grids of centre and tau under a uniform share and a half-normal
tau of scale 1. Takes half a minute.
"""

import numpy as np
from scipy.interpolate import interp1d
from scipy.optimize import minimize
from scipy.special import expit, gammaln, log_expit
from scipy.stats import beta, fisher_exact, binom

Z = np.linspace(-9, 9, 18001)
PHI = np.exp(-Z * Z / 2)
PHI /= PHI.sum()


def proportions(series):
    """Log likelihood of a centre and a tau, with all constants."""

    def log(centre, tau):
        at = centre + tau * Z
        sum_ = 0
        for x, n in series:
            ways = gammaln(n + 1) - gammaln(x + 1) - gammaln(n - x + 1)
            sum_ += ways + np.log(PHI @ np.exp(x * log_expit(at) + (n - x) * log_expit(-at)))
        return sum_

    return log


def rate_ratios(series):
    """Events of the first group given those of both."""

    def log(centre, tau):
        sum_ = 0
        for x1, t1, x2, t2 in series:
            at = centre + tau * Z + np.log(t1 / t2)
            ways = gammaln(x1 + x2 + 1) - gammaln(x1 + 1) - gammaln(x2 + 1)
            sum_ += ways + np.log(PHI @ np.exp(x1 * log_expit(at) + x2 * log_expit(-at)))
        return sum_

    return log


def top(log, start):
    def lost(p):
        return -log(p[0], np.exp(p[1]))

    options = {"xatol": 1e-10, "fatol": 1e-13, "maxiter": 5000, "maxfev": 5000}
    found = minimize(lost, start, method="Nelder-Mead", options=options)
    found = minimize(lost, found.x, method="Nelder-Mead", options=options)
    return found.x[0], np.exp(found.x[1]), -found.fun


def average(centre, tau):
    return PHI @ expit(centre + tau * Z)


def posterior(series):
    """Quantiles of centre and of a further centre."""
    us = np.linspace(-7, 7, 281)
    phi = np.exp(-us * us / 2)
    phi /= phi.sum()
    centres = np.linspace(-14, 18, 641)
    taus = np.linspace(0.0125, 6, 240)
    weight = np.empty((len(taus), len(centres)))
    for j, tau in enumerate(taus):
        at = centres[:, None] + tau * us
        log = log_expit(centres) + log_expit(-centres) - tau * tau / 2
        for x, n in series:
            log = log + np.log(np.exp(x * log_expit(at) + (n - x) * log_expit(-at)) @ phi)
        weight[j] = log
    weight = np.exp(weight - weight.max())
    of_centre = weight.sum(0) / weight.sum()
    further = np.zeros(len(centres))
    step = centres[1] - centres[0]
    for j, tau in enumerate(taus):
        share = weight[j] / weight.sum()
        kernel = np.exp(-((np.arange(-640, 641) * step / tau) ** 2) / 2)
        further += np.convolve(share, kernel / kernel.sum())[640:1281]

    def quantiles(mass):
        cumulative = np.cumsum(mass) - mass / 2
        keep = (cumulative > 1e-6) & (cumulative < 1 - 1e-6)
        return interp1d(cumulative[keep], centres[keep], "cubic")([0.025, 0.5, 0.975])

    return quantiles(of_centre), quantiles(further)


print("Quadrature too coarse: centre, tau, log likelihood")
WIDE = [(0, 14), (9, 9), (3, 3), (0, 10), (5, 9), (7, 7), (6, 6), (11, 11)]
print("  proportions", *top(proportions(WIDE), [5, 2.3]))
RATES = [(6, 10, 0, 12), (0, 9, 7, 11), (9, 20, 0, 14), (3, 8, 4, 9), (0, 15, 5, 12)]
print("  rate ratios", *top(rate_ratios(RATES), [0, 1.5]))

print("Average and median: centre, tau, median and mean over centres")
UNEVEN = [(4, 12), (17, 18), (15, 15), (8, 11), (3, 9), (22, 22), (16, 16)]
centre, tau, _ = top(proportions(UNEVEN), [2, 1])
print(" ", centre, tau, expit(centre), average(centre, tau))

print("All at a limit, and no spread estimated: quantiles of the centre and of a further centre")
print("  all at a limit", *posterior([(0, 8), (12, 12), (9, 9), (0, 15), (6, 6)]))
ALIKE = [(17, 20), (14, 16), (9, 11), (21, 23), (12, 13), (10, 12), (18, 21)]
log = proportions(ALIKE)
share = sum(x for x, _ in ALIKE) / sum(n for _, n in ALIKE)
at_zero = log(np.log(share / (1 - share)), 1e-9)
beyond = max(log(centre, tau) for centre in np.linspace(1.5, 2.4, 19) for tau in (0.1, 0.2, 0.4, 0.8))
print("  alike", *posterior(ALIKE), "top at tau 0:", beyond < at_zero)

print("Exact intervals of single series")
for x, n in ((14, 14), (0, 6), (11, 12)):
    print(" ", x, n, beta.ppf(0.025, x, n - x + 1) if x else 0, beta.ppf(0.975, x + 1, n - x) if x < n else 1)

print("Trials of few patients: smallest size an arm from which Fisher's exact test keeps its power, and that power")


def power(n, p, q):
    total = 0
    for a in range(n + 1):
        for b in range(n + 1):
            if fisher_exact([[a, n - a], [b, n - b]])[1] <= 0.05:
                total += binom.pmf(a, n, p) * binom.pmf(b, n, q)
    return total


for p, q in ((0.05, 0.95), (0.1, 0.9), (0.2, 0.9), (0.9, 0.1)):
    sizes = [power(n, p, q) for n in range(1, 16)]
    n = max([i + 1 for i, s in enumerate(sizes) if s < 0.8], default=0) + 1
    print(" ", p, q, n, sizes[n - 1])
