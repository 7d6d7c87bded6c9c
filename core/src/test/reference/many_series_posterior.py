"""Posterior of two hundred nearly full series by their exact likelihood, over one dense grid.

Nearly full series look alike where each has its own logit, so the spread between them is easily
sought where it is not. The likelihoods of all series are laid on one grid of true values and folded
with normal densities by whole matrices of NumPy and SciPy. Printed for AnotherPriorTest.
"""

import numpy as np
from scipy.interpolate import CubicSpline
from scipy.optimize import brentq


def series():
    totals = [5 + 37 * i % 60 for i in range(200)]
    return [(total - 7 * i * i % max(1, total // 3), total) for i, total in enumerate(totals)]


def quantile(places, density, level):
    below = CubicSpline(places, density).antiderivative()
    return brentq(lambda x: below(x) - level * below(places[-1]), places[0], places[-1])


def posterior(scale):
    kinds, times = np.unique(series(), axis=0, return_counts=True)
    theta = np.linspace(-8, 16, 2401)
    step = theta[1] - theta[0]
    events, totals = kinds[:, :1], kinds[:, 1:]
    values = -events * np.logaddexp(0, -theta) - (totals - events) * np.logaddexp(0, theta)
    tops = values.max(axis=1, keepdims=True)
    values = np.exp(values - tops)
    taus = np.linspace(0.2, 1.2, 401)
    mus = np.linspace(1.2, 2.8, 801)
    logs = np.empty((len(taus), len(mus)))
    for i, tau in enumerate(taus):
        normal = np.exp(-((theta[:, None] - mus) / tau) ** 2 / 2) * step / tau
        logs[i] = times @ np.log(values @ normal) - tau * tau / (2 * scale * scale)
    logs += -np.abs(mus) - 2 * np.log1p(np.exp(-np.abs(mus)))
    mass = np.exp(logs - logs.max())
    ends = max(mass[0].sum(), mass[-1].sum(), mass[:, 0].sum(), mass[:, -1].sum()) / mass.sum()
    print("scale %g, at the ends of the grid at most %.1e" % (scale, ends))
    for name, places, density in (("centre", mus, mass.sum(0)), ("tau", taus, mass.sum(1))):
        print(" ", name, *("%.6f" % quantile(places, density, one) for one in (0.025, 0.5, 0.975)))


if __name__ == "__main__":
    for scale in (1, 0.25):
        posterior(scale)
