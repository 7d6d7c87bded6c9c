"""Exact likelihood of a network of odds ratios: every table of a study with its total is written down, the differences of
studies are summed over a dense grid, and a general optimiser finds the top. Ten invented studies, two of three arms, with
empty cells. Limits by profile likelihood and likelihood ratios. Takes minutes.
"""
import itertools

import numpy as np
from scipy import optimize, special, stats

ROWS = """A frame 2 20|A nail 7 22|A plate 4 19|B frame 0 15|B nail 3 16|C nail 2 25|C plate 11 24
D plate 1 18|D graft 4 17|D frame 0 16|E graft 5 20|E nail 6 21|F frame 6 14|F nail 2 12|G frame 1 30|G graft 9 28
H nail 8 26|H plate 0 25|I frame 9 33|I nail 4 31|J frame 1 21|J plate 6 20""".replace("\n", "|").split("|")
NAMES = ["frame", "graft", "nail", "plate"]
STEP, FAR = 0.25, 8.0
GRID = np.arange(-FAR, FAR + STEP / 2, STEP)


def read(rows):
    studies = {}
    for s, t, e, n in (row.split() for row in rows):
        studies.setdefault(s, []).append((t, int(e), int(n)))
    return studies


def prepared(arms):
    """Log ways to every table with the total, the tables, the place of the one found, and the grid of differences."""
    events, totals = [a[1] for a in arms], [a[2] for a in arms]
    tables = [x + (sum(events) - sum(x),) for x in itertools.product(*[range(n + 1) for n in totals[:-1]])
              if 0 <= sum(events) - sum(x) <= totals[-1]]
    x = np.array(tables, float)
    n = np.array(totals, float)
    ways = (special.gammaln(n + 1) - special.gammaln(x + 1) - special.gammaln(n - x + 1)).sum(1)
    m = len(arms) - 1
    # Contrasts with variance 1 and covariance 1/2 from independent standard normal numbers.
    root = np.linalg.cholesky(np.eye(m) / 2 + 0.5)
    u = np.array(list(itertools.product(GRID, repeat=m)))
    weight = stats.norm.logpdf(u).sum(1) + m * np.log(STEP)
    return x, ways, tables.index(tuple(events)), u @ root.T, weight


class Model:
    def __init__(self, studies, column=lambda study, treatment: treatment, reference=("frame",)):
        names = sorted({column(s, a[0]) for s, arms in studies.items() for a in arms})
        self.names = [n for n in names if n not in reference]
        self.studies = []
        for s, arms in studies.items():
            rows = np.zeros((len(arms), len(self.names)))
            for j, a in enumerate(arms):
                if column(s, a[0]) in self.names:
                    rows[j, self.names.index(column(s, a[0]))] = 1
            self.studies.append((rows, *prepared(arms)))

    def value(self, d, tau):
        total = 0
        for rows, x, ways, own, grid, weight in self.studies:
            eta = rows @ d
            theta = np.zeros((len(grid), len(eta)))
            theta[:, 1:] = tau * grid
            theta += eta
            logs = theta @ x.T + ways
            given = logs[:, own] - special.logsumexp(logs, axis=1)
            total += special.logsumexp(given + weight)
        return total

    def at_zero(self, d):
        total = 0
        for rows, x, ways, own, _, _ in self.studies:
            logs = x @ (rows @ d) + ways
            total += logs[own] - special.logsumexp(logs)
        return total


def derivatives(f, at, h=1e-3):
    """Slopes and second derivatives by differences of the fourth order."""
    n = len(at)
    unit = np.eye(n) * h
    slope = np.array([(-f(at + 2 * u) + 8 * f(at + u) - 8 * f(at - u) + f(at - 2 * u)) / (12 * h) for u in unit])
    bend = np.zeros((n, n))
    for i in range(n):
        u = unit[i]
        bend[i, i] = (-f(at + 2 * u) + 16 * f(at + u) - 30 * f(at) + 16 * f(at - u) - f(at - 2 * u)) / (12 * h * h)
        for j in range(i):
            v = unit[j]

            def mixed(k):
                return f(at + k * u + k * v) - f(at + k * u - k * v) - f(at - k * u + k * v) + f(at - k * u - k * v)
            bend[i, j] = bend[j, i] = (16 * mixed(1) - mixed(2)) / (48 * h * h)
    return slope, bend


def top(f, start):
    """The highest point: a general search, then Newton's rule on differences."""
    at = optimize.minimize(lambda p: -f(p), start, method="BFGS", options={"gtol": 1e-5}).x
    for _ in range(3):
        slope, bend = derivatives(f, at)
        at = at - np.linalg.solve(bend, slope)
    return at, f(at)


CRIT = stats.norm.ppf(0.975)


def contrast(i, j):
    c = np.zeros(3)
    for k, sign in ((i, 1), (j, -1)):
        if k > 0:
            c[k - 1] += sign
    return c


def pairs(f, at, best, cov):
    for i, j in [(i, j) for i in range(4) for j in range(i)]:
        c = contrast(i, j)
        k = int(np.argmax(np.abs(c)))
        estimate, error = c @ at[:-1], np.sqrt(c @ cov[:3, :3] @ c)
        rest = [l for l in range(3) if l != k]

        def missing(v):
            def held(q):
                d = np.zeros(3)
                d[rest] = q[:-1]
                d[k] = (v - c[rest] @ d[rest]) / c[k]
                return f(np.append(d, q[-1]))
            start = np.append(at[rest], at[-1])
            low = optimize.minimize(lambda q: -held(q), start, method="BFGS", options={"gtol": 1e-6}).fun
            return 2 * (best + low) - CRIT ** 2

        limits = [optimize.brentq(missing, estimate + 0.3 * way * error, estimate + 5 * way * error, xtol=1e-8)
                  for way in (-1, 1)]
        print(NAMES[i], "less", NAMES[j], estimate, error, limits)


def spread(model, at, best):
    """Profile limits of tau squared, and what values of tau weigh by."""
    cache, starts = {}, [at[:-1]]

    def given(tau):
        if tau not in cache:
            g = lambda d: model.value(d, tau)
            d = optimize.minimize(lambda q: -g(q), starts[-1], method="BFGS", options={"gtol": 1e-4}).x
            starts.append(d)
            cache[tau] = d, g(d)
        return cache[tau]

    fallen = lambda tau: 2 * (best - given(tau)[1]) - CRIT ** 2
    print("profile limits of tau squared", optimize.brentq(fallen, 0.1, at[-1], xtol=1e-8) ** 2,
          optimize.brentq(fallen, at[-1], 6, xtol=1e-8) ** 2)
    # What a tau weighs by where a further study is told: Laplace over effects. The grid is too coarse far beyond 3.
    for tau in (0.5, 1.5, 3.0):
        d, value = given(tau)
        cov = np.linalg.inv(-derivatives(lambda q: model.value(q, tau), d)[1])
        print("weight at tau", tau, value + 0.5 * np.linalg.slogdet(cov)[1], "effects", d, "errors", np.sqrt(np.diag(cov)))


def ratios(best):
    """Direct and indirect where studies of two arms alone hold a pair: these have effects of their own."""
    studies = read(ROWS)
    own = lambda s, t: "own " + t if {"nail", "graft"} <= {a[0] for a in studies[s]} else t
    model = Model(studies, own, ("frame", "own graft"))
    at, value = top(lambda p: model.value(p[:-1], p[-1]), np.array([1.0, 0.5, 0.0, 0.5, 1.0]))
    cov = np.linalg.inv(-derivatives(lambda p: model.value(p[:-1], p[-1]), at)[1])
    i, j, k = (model.names.index(n) for n in ("own nail", "nail", "graft"))
    c, d = np.zeros(5), np.zeros(5)
    c[i], d[j], d[k] = 1, 1, -1
    print("nail less graft direct", c @ at, np.sqrt(c @ cov @ c), "indirect", d @ at, np.sqrt(d @ cov @ d),
          "difference", np.sqrt((c - d) @ cov @ (c - d)), "p", stats.chi2.sf(2 * (value - best), 1))


def main():
    model = Model(read(ROWS))
    f = lambda p: model.value(p[:-1], p[-1])
    at, best = top(f, np.array([1.0, 0.5, 0.5, 0.5]))
    cov = np.linalg.inv(-derivatives(f, at)[1])
    print("effects", model.names, at[:-1], "tau", at[-1], "log likelihood", best)
    zero, low = top(lambda d: model.at_zero(d), np.zeros(3))
    print("at tau 0", zero, "log likelihood", low)
    ratios(best)
    spread(model, at, best)
    pairs(f, at, best, cov)


if __name__ == "__main__":
    main()
