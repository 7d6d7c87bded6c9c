"""Profile likelihood limits of the variances of three levels and of their shares: python3 three_level_limits.py

The published delinquency effects and ten invented rows of four teams. Covariances are written out whole. One variance, or
its share s of between + within + typical v, is held; the likelihood, restricted or full, is highest over the other variance
by a scan of powers of ten and SciPy's bounded search about the highest; the limits lie half the 95 % point of chi-squared
on one degree of freedom below the top (brentq). Typical v: (k - 1)/tr P with weights 1/v.
"""
import numpy as np
from scipy import optimize, stats

import held

DROP = stats.chi2.ppf(0.95, 1) / 2


def typical(v):
    w = 1 / v
    return (len(v) - 1) / (w.sum() - (w ** 2).sum() / w.sum())


def limits(name, y, v, clusters, restricted):
    same = (clusters[:, None] == clusters[None, :]) * 1.0
    ones = np.ones(len(y))
    s2 = typical(v)

    def log(between, within):
        c = np.linalg.cholesky(same * between + np.diag(v + within))
        one, data = np.linalg.solve(c, ones), np.linalg.solve(c, y)
        information = one @ one
        rest = data - one * (one @ data) / information
        value = -np.log(np.diag(c)).sum() - rest @ rest / 2
        return value - np.log(information) / 2 if restricted else value

    def over(pair):
        """Highest over the free variance, on a scan and then near the best of it."""
        scan = np.concatenate([[0], s2 * 10.0 ** np.arange(-4, 6, 0.25)])
        heights = [log(*pair(f)) for f in scan]
        i = int(np.argmax(heights))
        a, b = scan[max(0, i - 1)], scan[min(len(scan) - 1, i + 1)]
        best = optimize.minimize_scalar(lambda f: -log(*pair(f)), bounds=(a, b), method="bounded",
                                        options={"xatol": 1e-12 * s2}).fun
        return max(-best, heights[i])

    held_by = {
        "between": lambda x: lambda f: (x, f),
        "within": lambda x: lambda f: (f, x),
        "share between": lambda s: lambda f: (s / (1 - s) * (f + s2), f),
        "share within": lambda s: lambda f: (f, s / (1 - s) * (f + s2)),
    }
    found = optimize.minimize(lambda p: -log(p[0] ** 2, p[1] ** 2), [0.4, 0.3], method="Nelder-Mead",
                              options={"xatol": 1e-10, "fatol": 1e-13, "maxiter": 4000}).x ** 2
    top = log(*found)
    shares = found / (found.sum() + s2)
    for (word, by), at in zip(held_by.items(), [*found, *shares]):
        drop = lambda x: over(by(x)) - top + DROP
        farthest = 1 - 1e-9 if "share" in word else 1e5 * s2
        lower = 0.0 if drop(0.0) >= 0 else optimize.brentq(drop, 0, at, xtol=1e-12, rtol=1e-12)
        upper = optimize.brentq(drop, at, farthest, xtol=1e-12, rtol=1e-12)
        print(f"{name} {'restricted' if restricted else 'full'} {word}: {at:.6f} {lower:.6f} {upper:.6f}")


rows = held.rows("delinquency-three-level")
delinquency = [np.array([row[key] for row in rows]) for key in ("effect", "variance", "study")]
teams = (np.array([0.1, 0.5, 0.9, 0.2, 1.2, 0.8, 0.7, 1.1, 0.3, 0.6]),
         np.array([0.2, 0.25, 0.3, 0.22, 0.35, 0.28, 0.3, 0.4, 0.21, 0.26]) ** 2, np.array(list("xxyyzzwwwx")))
for restricted in (True, False):
    limits("delinquency", *delinquency, restricted)
    limits("teams", *teams, restricted)
