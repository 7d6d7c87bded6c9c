"""Posteriors of means under a half-normal prior of tau, over a dense grid by NumPy and SciPy alone.

Middle and tau each run over a grid and nothing is integrated in closed form; quantiles come from
the sums. Printed for MeanPosteriorsTest; takes about a minute.
"""

import numpy as np
from scipy.interpolate import CubicSpline
from scipy.optimize import brentq

U = np.linspace(-9, 9, 145)
PHI = np.exp(-U * U / 2)
PHI /= PHI.sum()
LEVELS = (0.025, 0.5, 0.975)


def grid(y, v, scale):
    """Tau by the middles of equal cells, the middle by a trapezium rule."""
    y, v = np.array(y), np.array(v)
    taus = (np.arange(300) + 0.5) / 300 * 8 * scale
    reach = 24 * (scale + np.sqrt(v.max())) + np.ptp(y)
    mus = np.linspace(y.mean() - reach, y.mean() + reach, 12001)
    log = np.empty((taus.size, mus.size))
    for i, tau in enumerate(taus):
        total = v + tau * tau
        squares = sum((one - mus) ** 2 / t for one, t in zip(y, total))
        log[i] = -0.5 * squares - 0.5 * np.log(total).sum() - tau * tau / scale**2 / 2
    mass = np.exp(log - log.max())
    return taus, mus, mass / mass.sum()


def quantiles(below, low, high):
    return [brentq(lambda x: below(x) - level, low, high, xtol=1e-13) for level in LEVELS]


def told(name, y, v, scale):
    taus, mus, mass = grid(y, v, scale)
    keep = mass.sum(axis=1) > 1e-14
    taus = taus[keep]
    curves = [CubicSpline(mus, row / (mus[1] - mus[0])).antiderivative() for row in mass[keep]]
    ends = np.array([float(curve(mus[-1])) for curve in curves])

    def shares(curve, end, at):
        inside = curve(np.clip(at, mus[0], mus[-1]))
        return np.where(at <= mus[0], 0, np.where(at >= mus[-1], end, inside))

    def middle_with(add):
        """Quantiles of the middle and what each tau adds to it."""
        return quantiles(
            lambda x: sum(float(shares(*one, x - a)) for *one, a in zip(curves, ends, add)),
            mus[0],
            mus[-1],
        )

    def further(x):
        return sum(float(PHI @ shares(*one, x - tau * U)) for *one, tau in zip(curves, ends, taus))

    print(name, "scale", repr(scale))
    print("  middle ", middle_with(np.zeros(taus.size)))
    print("  average", middle_with(taus**2 / 2))
    print("  further", quantiles(further, mus[0], mus[-1]))
    print("  mean of the middle", float(mass.sum(axis=0) @ mus))


def pooled_deviation(n, sd):
    n, sd = np.array(n), np.array(sd)
    return float(np.sqrt(((n - 1) * sd**2).sum() / (n - 1).sum()))


if __name__ == "__main__":
    # Months to union of three invented series, on the log scale.
    n, mean, sd = np.array([12, 20, 9]), np.array([9.1, 11.5, 7.8]), np.array([4.0, 5.2, 3.1])
    told("months", np.log(mean), sd**2 / n / mean**2, 0.5)
    told("months, one series", np.log(mean[:1]), (sd**2 / n / mean**2)[:1], 0.5)
    # Difference in length of the legs in cm, tau as a multiple of the pooled standard deviation.
    n, mean, sd = np.array([14, 22]), np.array([0.8, 1.4]), np.array([0.9, 1.1])
    pooled = pooled_deviation(n, sd)
    print("pooled standard deviation", repr(pooled))
    told("cm, 1 SD", mean, sd**2 / n, pooled)
    told("cm, 0.5 SD", mean, sd**2 / n, 0.5 * pooled)
