"""Values for the small tests of single classes: python3 core/src/test/reference/small_rooms.py

Funnel asymmetry and influence on the log odds ratios of published/bcg-vaccine; the posterior of the eight schools of
published/coaching-eight-schools; the network of published/smoking-cessation-network has a script of its own. Regressions
by numpy's least squares with an intercept column, ranks by scipy's kendalltau, the posterior by scipy's quad over tau on
its own scale: none of the ways by which the project reckons. Prints; holds nothing.
"""

import numpy as np
from scipy import integrate, optimize, stats

import held


def log_odds():
    rows = held.rows("bcg-vaccine")
    a = np.array([row["treated_events"] for row in rows])
    n1 = np.array([row["treated_total"] for row in rows])
    c = np.array([row["control_events"] for row in rows])
    n2 = np.array([row["control_total"] for row in rows])
    b, d = n1 - a, n2 - c
    return a, b, c, d, np.log(a * d / (b * c)), 1 / a + 1 / b + 1 / c + 1 / d


def line(x, y, w, tested):
    root = np.sqrt(w)
    design = np.column_stack([np.ones_like(x), x]) * root[:, None]
    coefficients, squares, _, _ = np.linalg.lstsq(design, y * root, rcond=None)
    error = np.sqrt(squares[0] / (len(x) - 2) * np.diag(np.linalg.inv(design.T @ design)))
    t = coefficients[tested] / error[tested]
    print(f"  intercept {coefficients[0]:.9f} slope {coefficients[1]:.9f} t {t:.9f}"
          f" p {2 * stats.t.sf(abs(t), len(x) - 2):.9f}")


def asymmetry():
    a, b, c, d, y, v = log_odds()
    se = np.sqrt(v)
    print("egger, y/se on 1/se")
    line(1 / se, y / se, np.ones_like(y), 0)
    print("peters, y on 1/N")
    line(1 / (a + b + c + d), y, 1 / (1 / (a + c) + 1 / (b + d)), 1)
    print("harbord, Z/root V on root V")
    n = a + b + c + d
    z = a - (a + c) * (a + b) / n
    information = (a + b) * (c + d) * (a + c) * (b + d) / (n**2 * (n - 1))
    line(np.sqrt(information), z / np.sqrt(information), np.ones_like(y), 0)
    w = 1 / v
    mean = np.sum(w * y) / np.sum(w)
    rank = stats.kendalltau((y - mean) / np.sqrt(v - 1 / np.sum(w)), v, method="exact")
    print(f"begg: tau {rank.statistic:.9f} exact p {rank.pvalue:.9f}")


def pooled(y, v):
    w = 1 / v
    mean = np.sum(w * y) / np.sum(w)
    q = np.sum(w * (y - mean) ** 2)
    t = max(0.0, (q - len(y) + 1) / (np.sum(w) - np.sum(w**2) / np.sum(w)))
    w = 1 / (v + t)
    return np.sum(w * y) / np.sum(w), 1 / np.sum(w), t, w / np.sum(w)


def influence():
    *_, y, v = log_odds()
    mean, variance, t, share = pooled(y, v)
    print(f"DerSimonian-Laird: mean {mean:.9f} variance {variance:.9f} t {t:.9f}")
    for i in (3, 7):
        others = np.arange(len(y)) != i
        m, s, left, _ = pooled(y[others], v[others])
        print(f"  without {i}: mean {m:.9f} t {left:.9f} studentised {(y[i] - m) / np.sqrt(v[i] + left + s):.9f}"
              f" cook {(mean - m) ** 2 / variance:.9f} covariance ratio {s / variance:.9f} share {share[i]:.9f}")


def posterior():
    rows = held.rows("coaching-eight-schools")
    y = np.array([row["effect"] for row in rows])
    v = np.array([row["standard_error"] for row in rows]) ** 2

    def given(t):
        w = 1 / (v + t * t)
        return np.sum(w * y) / np.sum(w), 1 / np.sum(w), w

    for label, prior in (("flat", lambda t: 1.0), ("half-normal 5", lambda t: np.exp(-t * t / 50))):
        def density(t):
            m, s, w = given(t)
            return prior(t) * np.sqrt(s * np.prod(w * 100)) * np.exp(-np.sum(w * (y - m) ** 2) / 2)

        def integral(function):
            parts = [0, 2, 5, 10, 20, 40, 80, 200, 1000, np.inf]
            return sum(integrate.quad(function, low, high, epsabs=0, epsrel=1e-11, limit=400)[0]
                       for low, high in zip(parts, parts[1:]))

        mass = integral(density)
        below = lambda x: integrate.quad(density, 0, x, epsabs=0, epsrel=1e-11, limit=400)[0] / mass
        median = optimize.brentq(lambda x: below(x) - 0.5, 1e-3, 100, xtol=1e-11)
        mean = integral(lambda t: density(t) * given(t)[0]) / mass
        square = integral(lambda t: density(t) * (given(t)[1] + given(t)[0] ** 2)) / mass
        positive = integral(lambda t: density(t) * stats.norm.cdf(given(t)[0] / np.sqrt(given(t)[1]))) / mass
        print(f"{label}: tau median {median:.8f} mean {integral(lambda t: t * density(t)) / mass:.8f};"
              f" mean {mean:.8f} sd {np.sqrt(square - mean**2):.8f} above 0 {positive:.8f}")


if __name__ == "__main__":
    asymmetry()
    influence()
    posterior()
