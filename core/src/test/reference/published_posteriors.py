"""Posteriors of published worked examples, by NumPy over dense grids of tau, beside what is printed.

Rows of a table whose printed quantile has another place in the exact posterior than drawing explains are marked.
"""
import numpy as np
from scipy import optimize
from scipy.stats import norm

LEVELS = np.array([0.025, 0.25, 0.5, 0.75, 0.975])


class Grid:
    """y_i ~ N(theta_i, v_i), theta_i ~ N(mu, tau^2), mu flat (precision 0) or about 0; tau on equally likely cells."""

    def __init__(self, y, v, tau, precision=0.0, log_prior=0.0):
        w = 1 / (v[:, None] + tau**2)
        total = w.sum(0) + precision
        self.centre = (w * y[:, None]).sum(0) / total
        self.sd = total**-0.5
        log = 0.5 * np.log(w).sum(0) - 0.5 * np.log(total) + log_prior
        log -= 0.5 * ((w * (y[:, None] - self.centre) ** 2).sum(0) + precision * self.centre**2)
        self.share = np.exp(log - log.max())
        self.share /= self.share.sum()
        self.y, self.v, self.tau = y, v, tau

    def below(self, x, extra=0.0):
        return (self.share * norm.cdf((x - self.centre) / np.hypot(self.sd, extra))).sum()

    def quantile(self, p, extra=0.0):
        return optimize.brentq(lambda x: self.below(x, extra) - p, -50, 50, xtol=1e-12)

    def tau_below(self, x):
        edge = np.cumsum(self.share)
        step = self.tau[1] - self.tau[0]
        return np.interp(x, self.tau + step / 2, edge)

    def study(self, i):
        b = self.v[i] / (self.v[i] + self.tau**2)
        return self.y[i] + b * (self.centre - self.y[i]), np.sqrt(b * self.tau**2 + (b * self.sd) ** 2)


CONTROL = "3/39 14/116 11/93 127/1520 27/365 6/52 152/939 48/471 37/282 188/1921 52/583 47/266 16/293 45/883 31/147 38/213 12/122 6/154 3/134 40/218 43/364 39/674"
TREATED = "3/38 7/114 5/69 102/1533 28/355 4/59 98/945 60/632 25/278 138/1916 64/873 45/263 9/291 57/858 25/154 33/207 28/251 8/151 6/174 32/209 27/391 22/680"


def blockers():
    arms = [np.array([[float(n) for n in arm.split("/")] for arm in text.split()]) for text in (TREATED, CONTROL)]
    (a, n1), (c, n2) = arms[0].T, arms[1].T
    y = np.log(a / (n1 - a)) - np.log(c / (n2 - c))
    return y, 1 / a + 1 / (n1 - a) + 1 / c + 1 / (n2 - c)


def table(name, printed, below, quantile):
    for p, told in zip(LEVELS, printed):
        error = np.sqrt(p * (1 - p) / 5000)
        low, high = below(told - 0.005), below(told + 0.005)
        off = max(low - p, p - high, 0) / error
        print(f"  {name:10} {p:5} printed {told:5.2f} exact {quantile(p):.6f}"
              f" lies {off:4.1f} errors of 5,000 draws beyond its rounding{'  DISAGREES' if off > 3 else ''}")


y, v = blockers()
cells = 40_000
tau = (np.arange(cells) + 0.5) / cells * 2
grid = Grid(y, v, tau)
print("22 trials of beta-blockers, flat mean and tau")
table("mean", [-0.37, -0.29, -0.25, -0.20, -0.11], grid.below, grid.quantile)
table("tau", [0.02, 0.08, 0.13, 0.18, 0.31], grid.tau_below,
      lambda p: optimize.brentq(lambda x: grid.tau_below(x) - p, 1e-6, 2))
table("further", [-0.58, -0.34, -0.25, -0.17, 0.11], lambda x: grid.below(x, tau), lambda p: grid.quantile(p, tau))
mean = (grid.share * grid.centre).sum()
print(f"  sd of the mean {np.sqrt((grid.share * (grid.sd**2 + (grid.centre - mean)**2)).sum()):.6f}, printed 0.071;"
      f" a further effect above 0 {1 - grid.below(0, tau):.6f}, printed 'just over 10%'")
share = optimize.minimize_scalar(lambda p: grid.quantile(0.95 + p) - grid.quantile(p), bounds=(0.01, 0.04),
                                 method="bounded", options={"xatol": 1e-5}).x
print(f"  shortest limits of the mean as ratios {np.exp(grid.quantile(share)):.4f}"
      f" {np.exp(grid.quantile(0.95 + share)):.4f}, printed 0.69 and 0.90")
for held in (1e-9, 0.13):
    at = Grid(y, v, np.array([held]))
    print(f"  tau {held}: mean {at.centre[0]:.6f} sd {at.sd[0]:.6f} limits as ratios"
          f" {np.exp(at.centre[0] - 1.959964 * at.sd[0]):.4f} {np.exp(at.centre[0] + 1.959964 * at.sd[0]):.4f}")
held = Grid(y, v, np.linspace(0.0, 0.5, 501))
print(f"  mean given tau from {held.centre.min():.4f} to {held.centre.max():.4f};"
      f" density at 0 over the highest {held.share[0] / held.share.max():.3f}")

print("eight schools, tau held at 10, effects with two digits")
y = np.array([28.39, 7.94, -2.75, 6.82, -0.64, 0.63, 18.01, 12.16])
v = np.array([14.9, 10.2, 16.3, 11.0, 9.4, 11.4, 10.4, 17.6]) ** 2
at = Grid(y, v, np.array([10.0]))
for i in range(8):  # printed: A 14.5, 9.1; 0.93 0.995 0.992 0.985 0.9996 0.998 0.97 0.98
    m, s = (x[0] for x in at.study(i))
    print(f"  {'ABCDEFGH'[i]} mean {m:.5f} sd {s:.5f} below 28 {norm.cdf((28 - m) / s):.5f}")

print("eight schools, mean normal about 0 with sd 5, tau half-Cauchy with scale 5")
y = np.array([28, 8, -3, 7, -1, 1, 18, 12.0])
v = np.array([15, 10, 16, 11, 9, 11, 10, 18.0]) ** 2
tau = 5 * np.tan((np.arange(cells) + 0.5) / cells * np.pi / 2)
grid = Grid(y, v, tau, 1 / 25)
print("  studies", [round((grid.share * grid.study(i)[0]).sum(), 5) for i in range(8)])
print(f"  mean {(grid.share * grid.centre).sum():.6f} tau {(grid.share * grid.tau).sum():.6f}")
