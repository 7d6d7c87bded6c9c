"""Posteriors of counts by their exact likelihood, over dense grids by NumPy and SciPy alone.

Centre and tau each run over a grid, the true value of each study over another; quantiles come from
the sums. Printed for CountsPosteriorTest; takes about a minute.
"""

import numpy as np
from scipy.interpolate import CubicSpline
from scipy.optimize import brentq
from scipy.special import expit, gammaln
from scipy.stats import nchypergeom_fisher

U = np.linspace(-9, 9, 721)
PHI = np.exp(-U * U / 2)
PHI /= PHI.sum()
LEVELS = (0.025, 0.5, 0.975)


def binomial(x, n):
    return lambda t: -x * np.logaddexp(0, -t) - (n - x) * np.logaddexp(0, t)


def poisson(x, time):
    return lambda t: x * (t + np.log(time)) - time * np.exp(t)


def given_events(x1, t1, x2, t2):
    shift = np.log(t1) - np.log(t2)
    return lambda t: binomial(x1, x1 + x2)(t + shift)


def hypergeometric(x1, n1, x2, n2):
    """Given all margins, by the sum over all tables."""
    m = x1 + x2
    ys = np.arange(max(0, m - n2), min(n1, m) + 1)
    ways = [
        gammaln(n1 + 1) - gammaln(y + 1) - gammaln(n1 - y + 1)
        + gammaln(n2 + 1) - gammaln(m - y + 1) - gammaln(n2 - m + y + 1)
        for y in ys
    ]

    def log(t):
        total = np.full(np.shape(t), -np.inf)
        for y, way in zip(ys, ways):
            total = np.logaddexp(total, way + y * t)
        return x1 * t - total

    return log


def uniform_share(mu):
    return -np.abs(mu) - 2 * np.log1p(np.exp(-np.abs(mu)))


def uniform_rate(mu):
    return mu


def jeffreys_rate(mu):
    return mu / 2


def normal(mean, sd):
    return lambda mu: -((mu - mean) / sd) ** 2 / 2


def posterior(name, studies, prior, scale, low, high, average=None, places=1201):
    points, weights = np.polynomial.legendre.leggauss(60)
    edges = np.array([0, 0.25, 1, 2.5, 6.8]) * scale
    taus = np.concatenate([a + (b - a) * (points + 1) / 2 for a, b in zip(edges, edges[1:])])
    shares = np.concatenate([(b - a) / 2 * weights for a, b in zip(edges, edges[1:])])
    mus = np.linspace(low, high, places)
    cell = mus[1] - mus[0]
    rows, logs = [], []
    for tau in taus:
        log = prior(mus)
        theta = mus[:, None] + tau * U[None, :]
        for study in studies:
            value = study(theta)
            top = value.max(axis=1)
            log = log + top + np.log((np.exp(value - top[:, None]) * PHI).sum(axis=1))
        top = log.max()
        density = np.exp(log - top)
        mass = density.sum() * cell
        below = CubicSpline(mus, density / mass).antiderivative()
        rows.append((tau, below))
        logs.append(top + np.log(mass) - tau * tau / (2 * scale * scale))
    logs = np.array(logs)
    shares = shares * np.exp(logs - logs.max())
    shares /= shares.sum()

    def centre(x):
        return sum(s * below(np.clip(x, low, high)) for s, (_, below) in zip(shares, rows))

    def further(x):
        return sum(
            s * (below(np.clip(x - tau * U, low, high)) * PHI).sum()
            for s, (tau, below) in zip(shares, rows)
        )

    def quantiles(below, a, b):
        return [brentq(lambda x: below(x) - p, a, b, xtol=1e-12) for p in LEVELS]

    print(name)
    print("  centre ", *("%.8f" % q for q in quantiles(centre, low, high)))
    print("  further", *("%.8f" % q for q in quantiles(further, 2 * low, 2 * high)))
    if average is not None:
        backs = []
        for tau, below in rows:
            values = np.array([average(mu, tau) for mu in mus])
            keep = np.concatenate([[True], np.diff(values) > 0])
            backs.append(CubicSpline(values[keep], mus[keep]))

        def mean(a):
            total = 0
            for s, (_, below), back in zip(shares, rows, backs):
                inside = np.clip(a, back.x[0], back.x[-1])
                total += s * below(np.clip(back(inside), low, high))
            return total

        start, end = average(low, 0), average(high, 0)
        print("  average", *("%.8f" % q for q in quantiles(mean, start, end)))
    order = np.argsort(taus)
    spread = np.cumsum(shares[order])
    print("  mean of tau %.8f" % (shares * taus).sum(), "check %.3f" % spread[-1])


def logit_average(mu, tau):
    with_event = (expit(mu + tau * U) * PHI).sum()
    without = (expit(-mu - tau * U) * PHI).sum()
    return np.log(with_event / without)


def log_average(mu, tau):
    return mu + tau * tau / 2


if __name__ == "__main__":
    share = (uniform_share, 1.0, -14, 24)
    posterior("12/14, 23/27", [binomial(12, 14), binomial(23, 27)], *share, logit_average)
    posterior("9/9", [binomial(9, 9)], *share, logit_average)
    posterior("0/7, 0/12, 1/30", [binomial(0, 7), binomial(0, 12), binomial(1, 30)],
              uniform_share, 0.5, -24, 14, logit_average)
    posterior("rates 0 in 9, 3 in 20, 15 in 28", [poisson(0, 9), poisson(3, 20), poisson(15, 28)],
              uniform_rate, 1.0, -16, 18, log_average)
    posterior("rate 0 in 12, root prior", [poisson(0, 12)], jeffreys_rate, 1.0, -60, 20, log_average,
              places=6001)
    posterior("rates 6 in 14, 19 in 23, root prior", [poisson(6, 14), poisson(19, 23)],
              jeffreys_rate, 1.0, -20, 18, log_average)
    ten = [(4, 6), (49, 15), (3, 30), (6, 29), (12, 14), (3, 6), (4, 22), (13, 20), (7, 16), (9, 24)]
    posterior("ten rates far apart", [poisson(*one) for one in ten], uniform_rate, 0.5, -6, 6,
              log_average)
    posterior("odds ratio 0/9 3/9, 1/19 5/19",
              [hypergeometric(0, 9, 3, 9), hypergeometric(1, 19, 5, 19)],
              normal(0, 2.82), 0.5, -18, 14)
    posterior("rate ratio 2 in 40 against 9 in 38, 1 in 12 against 2 in 15",
              [given_events(2, 40, 9, 38), given_events(1, 12, 2, 15)],
              normal(0, 2.82), 0.5, -16, 14)
    check = hypergeometric(1, 19, 5, 19)(np.array([0.7]))[0] - hypergeometric(1, 19, 5, 19)(np.array([0.0]))[0]
    library = np.log(nchypergeom_fisher.pmf(1, 38, 19, 6, np.exp(0.7))) - np.log(
        nchypergeom_fisher.pmf(1, 38, 19, 6, 1.0))
    print("log likelihood of a table at 0.7 over that at 0: %.10f, by SciPy %.10f" % (check, library))
