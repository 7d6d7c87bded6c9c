"""Posteriors of two manuscripts' worked examples with two to ten studies, by NumPy over dense grids, beside what they print.

Employment in first-episode psychosis (Kaplankiran, Li, Trotta, Twumasi and Georgiades 2026): counts, priors and posterior numbers
as the authors' public repository employment-early-psychosis has them (looked up); drawn by Hamiltonian Monte Carlo, so a printed
quantile must lie, within three errors of as many draws as their effective sample is large, where the share below is right.
Aspirin in colorectal cancer (Carmona-Bayonas 2026): numbers as the public account of the manuscript prints them (looked up); the
hazard ratio of group B from memory of the trial's report.
"""
import numpy as np
from scipy import optimize
from scipy.stats import norm

Z = norm.ppf(0.975)


class Effects:
    """y_i ~ N(theta_i, v_i), theta_i ~ N(mu, tau^2), mu ~ N(0, 1/precision), tau half-normal."""

    def __init__(self, y, v, scale, precision, cells=120_000):
        tau = (np.arange(cells) + 0.5) / cells * 7 * scale
        w = 1 / (v[:, None] + tau**2)
        total = w.sum(0) + precision
        self.centre, self.sd = (w * y[:, None]).sum(0) / total, total**-0.5
        log = 0.5 * np.log(w).sum(0) - 0.5 * np.log(total) - tau**2 / 2 / scale**2
        log -= 0.5 * ((w * (y[:, None] - self.centre) ** 2).sum(0) + precision * self.centre**2)
        share = np.exp(log - log.max())
        self.share, self.tau, self.y, self.v = share / share.sum(), tau, y, v

    def below(self, x, extra=0.0):
        return (self.share * norm.cdf((x - self.centre) / np.hypot(self.sd, extra))).sum()

    def quantile(self, p, extra=0.0):
        return optimize.brentq(lambda x: self.below(x, extra) - p, -30, 30, xtol=1e-13)

    def tau_quantile(self, p):
        return np.interp(p, np.cumsum(self.share), self.tau + (self.tau[1] - self.tau[0]) / 2)

    def study(self, i):
        b = self.v[i] / (self.v[i] + self.tau**2)
        mean, sd = self.y[i] + b * (self.centre - self.y[i]), np.sqrt(b * self.tau**2 + (b * self.sd) ** 2)
        middle = (self.share * mean).sum()
        return middle, np.sqrt((self.share * (sd**2 + (mean - middle) ** 2)).sum())


ERICKSON, KILLACKEY08, KILLACKEY19, NUECHTERLEIN = (34, 47, 25, 50), (13, 20, 2, 21), (47, 66, 29, 60), (25, 36, 5, 15)
print("Log risk ratios, mean normal about 0 with 1, tau half-normal: lower, median, upper of mean; of tau; limits of a further one")
for name, trials, scale in [
    ("two, 0.5", [ERICKSON, KILLACKEY08], 0.5),
    ("two others, 0.5", [KILLACKEY08, KILLACKEY19], 0.5),
    ("three, 0.25", [ERICKSON, KILLACKEY08, KILLACKEY19], 0.25),
    ("three, 0.5", [ERICKSON, KILLACKEY08, KILLACKEY19], 0.5),
    ("three, 1", [ERICKSON, KILLACKEY08, KILLACKEY19], 1.0),
    ("four, 0.5", [ERICKSON, KILLACKEY08, KILLACKEY19, NUECHTERLEIN], 0.5),
]:
    a, n, c, m = np.array(trials, float).T
    grid = Effects(np.log(a / n) - np.log(c / m), 1 / a - 1 / n + 1 / c - 1 / m, scale, 1.0)
    told = [grid.quantile(p) for p in (0.025, 0.5, 0.975)] + [grid.tau_quantile(p) for p in (0.025, 0.5, 0.975)]
    told += [grid.quantile(p, grid.tau) for p in (0.025, 0.975)]
    print(f"  {name:16}", " ".join(f"{one:.7f}" for one in told), f"above 0 {1 - grid.below(0):.6f}")

LIMITS = [(0.61, 0.34, 1.08), (0.51, 0.29, 0.88)]
y = np.log([one[0] for one in LIMITS])
v = np.array([((np.log(u) - np.log(low)) / 2 / Z) ** 2 for _, low, u in LIMITS])
grid = Effects(y, v, 0.5, 0.0)
mean, sd = grid.study(0)
print(f"Aspirin, group A: mean {mean:.7f} sd {sd:.7f}; hazard ratio {np.exp(mean):.4f} ({np.exp(mean - Z * sd):.4f} to"
      f" {np.exp(mean + Z * sd):.4f}), below 1 {norm.cdf(-mean / sd):.4f}, alone {norm.cdf(-y[0] / v[0] ** 0.5):.4f};"
      f" tau {grid.tau_quantile(0.5):.6f}; printed 0.58 (0.36 to 0.94), 98.7 %, 95.3 %, around 0.24")

SHARES = [(55, 97), (205, 578), (41, 134), (30, 194), (17, 46), (16, 57), (11, 27), (62, 142), (64, 282), (25, 56)]


def shares(scale, middles=401, spreads=1200, widest=3.0):
    """Binomial counts, logits normal about mu ~ N(0, 1.5^2), tau half-normal: a grid of mu and tau, and of true logits within."""
    x, weight = np.polynomial.hermite_e.hermegauss(60)
    weight = weight / weight.sum()
    mu = np.linspace(-2.2, 1, middles)
    tau = (np.arange(spreads) + 0.5) / spreads * widest
    theta = np.arange(-12, 12, 0.02)
    counts = np.array(SHARES, float)
    log_of = lambda logits: [e * logits - n * np.logaddexp(0, logits) for e, n in counts]
    tops = [one.max() for one in log_of(theta)]
    fine = np.exp(np.array([one - top for one, top in zip(log_of(theta), tops)])).T
    log = np.zeros((middles, spreads))
    for j, t in enumerate(tau):
        if t < 0.15:  # too narrow for the grid of true logits, wide enough for a Gauss rule
            inside = log_of(mu[:, None] + t * x)
            log[:, j] = sum(np.log(np.exp(one - top) @ weight) for one, top in zip(inside, tops))
        else:
            kernel = np.exp(-0.5 * ((theta - mu[:, None]) / t) ** 2) / t
            log[:, j] = np.log(kernel @ fine).sum(1) + len(counts) * np.log(0.02 / np.sqrt(2 * np.pi))
    log += -(mu[:, None] ** 2) / 2 / 1.5**2 - tau**2 / 2 / scale**2
    share = np.exp(log - log.max())
    share /= share.sum()
    marginal, spread = share.sum(1), share.sum(0)
    half = (mu[1] - mu[0]) / 2
    cdf = np.cumsum(marginal)
    told = [np.interp(p, cdf, mu + half) for p in (0.025, 0.5, 0.975)]
    told += [np.interp(p, np.cumsum(spread), tau + (tau[1] - tau[0]) / 2) for p in (0.025, 0.5, 0.975)]
    return told


print("Ten shares by their binomial likelihood: lower, median, upper of the middle logit; of tau")
for scale in (0.5, 1.0):
    print(f"  {scale}", " ".join(f"{one:.6f}" for one in shares(scale)))
