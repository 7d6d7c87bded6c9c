"""Posterior of two hundred nearly full series by their exact likelihood, over one dense grid.

Nearly full series look alike where each has its own logit, so the spread between them is easily
sought where it is not. The likelihoods of all series are laid on one grid of true values and folded
with normal densities by whole matrices of NumPy. Printed for AnotherPriorTest.
"""

import numpy as np


def series():
    totals = [5 + 37 * i % 60 for i in range(200)]
    return [(total - 7 * i * i % max(1, total // 3), total) for i, total in enumerate(totals)]


def quantile(mass, edges, level):
    below = np.concatenate([[0], np.cumsum(mass)]) / mass.sum()
    return np.interp(level, below, edges)


def posterior(scale):
    kinds, times = np.unique(series(), axis=0, return_counts=True)
    theta = np.linspace(-8, 16, 2401)
    step = theta[1] - theta[0]
    events, totals = kinds[:, :1], kinds[:, 1:]
    values = -events * np.logaddexp(0, -theta) - (totals - events) * np.logaddexp(0, theta)
    tops = values.max(axis=1, keepdims=True)
    values = np.exp(values - tops)
    tau_edges = np.linspace(0.2, 1.2, 401)
    mu_edges = np.linspace(1.2, 2.8, 801)
    taus = (tau_edges[1:] + tau_edges[:-1]) / 2
    mus = (mu_edges[1:] + mu_edges[:-1]) / 2
    logs = np.empty((len(taus), len(mus)))
    for i, tau in enumerate(taus):
        normal = np.exp(-((theta[:, None] - mus) / tau) ** 2 / 2) * step / tau
        logs[i] = times @ np.log(values @ normal) - tau * tau / (2 * scale * scale)
    logs += -np.abs(mus) - 2 * np.log1p(np.exp(-np.abs(mus)))
    mass = np.exp(logs - logs.max())
    ends = max(mass[0].sum(), mass[-1].sum(), mass[:, 0].sum(), mass[:, -1].sum()) / mass.sum()
    print("scale %g, at the ends of the grid at most %.1e" % (scale, ends))
    for name, sums, edges in (("centre", mass.sum(0), mu_edges), ("tau", mass.sum(1), tau_edges)):
        print(" ", name, *("%.6f" % quantile(sums, edges, level) for level in (0.025, 0.5, 0.975)))


if __name__ == "__main__":
    for scale in (1, 0.25):
        posterior(scale)
