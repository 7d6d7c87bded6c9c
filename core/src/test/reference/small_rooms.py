"""Values for the small tests of single classes: python3 core/src/test/reference/small_rooms.py

Standard errors of kappa on published/agreement-two-judges, by the delta method with differences for the slopes (no formula
of Fleiss's), and limits of intraclass correlations on published/agreement-four-raters. Funnel asymmetry and influence on the log odds ratios of published/bcg-vaccine; the posterior of the eight schools of
published/coaching-eight-schools; the network of published/smoking-cessation-network has a script of its own. Regressions
by numpy's least squares with an intercept column, ranks by scipy's kendalltau, the posterior by scipy's quad over tau on
its own scale: none of the ways by which the project reckons. Prints; holds nothing.
"""

import numpy as np
from scipy import integrate, optimize, stats

import held


def kappa_of(p, weights):
    expected = np.sum(weights * np.outer(p.sum(1), p.sum(0)))
    return (np.sum(weights * p) - expected) / (1 - expected)


def delta_error(p, weights, n):
    """Root of g'(diag p - pp')g/n, g by central differences."""
    slopes = np.zeros(p.size)
    for cell in range(p.size):
        step = np.zeros(p.size)
        step[cell] = 1e-5
        slopes[cell] = (kappa_of(p + step.reshape(p.shape), weights) - kappa_of(p - step.reshape(p.shape), weights)) / 2e-5
    flat = p.ravel()
    return np.sqrt((np.sum(flat * slopes**2) - np.sum(flat * slopes) ** 2) / n)


def agreement():
    table = np.zeros((3, 3))
    for row in held.rows("agreement-two-judges"):
        table[int(row["rater_a"]) - 1, int(row["rater_b"]) - 1] = row["count"]
    n = table.sum()
    p = table / n
    apart = np.abs(np.subtract.outer(np.arange(3), np.arange(3)))
    chance = np.outer(p.sum(1), p.sum(0))
    for label, weights in (("none", apart == 0), ("linear", 1 - apart / 2), ("quadratic", 1 - apart**2 / 4)):
        weights = weights.astype(float)
        print(f"kappa {label}: {kappa_of(p, weights):.9f} error {delta_error(p, weights, n):.7f}"
              f" under 0 {delta_error(chance, weights, n):.7f}")
    x = np.array([[row[f"rater_{j}"] for j in (1, 2, 3, 4)] for row in held.rows("agreement-four-raters")])
    n, k = x.shape
    between = k * np.var(x.mean(1), ddof=1)
    rater = n * np.var(x.mean(0), ddof=1)
    within = np.mean(np.var(x, axis=1, ddof=1))
    residual = (np.sum((x - x.mean()) ** 2) - (n - 1) * between - (k - 1) * rater) / ((n - 1) * (k - 1))
    for label, error, degrees in (("one-way", within, n * (k - 1)), ("fixed", residual, (n - 1) * (k - 1))):
        # 1 + k rho/(1 - rho) is the ratio of expected mean squares, which F over its points bounds
        ratios = [between / error / stats.f.ppf(q, n - 1, degrees) for q in (0.975, 0.025)]
        print(f"{label}: " + " ".join(f"{(ratio - 1) / (ratio + k - 1):.9f}" for ratio in ratios))
    rho = (between - residual) / (between + (k - 1) * residual + k * (rater - residual) / n)
    a, b = k * rho / (n * (1 - rho)), 1 + k * rho * (n - 1) / (n * (1 - rho))
    # Satterthwaite's degrees of freedom as McGraw and Wong, Psychol Methods 1996;1:30, write them
    v = (a * rater + b * residual) ** 2 / ((a * rater) ** 2 / (k - 1) + (b * residual) ** 2 / ((n - 1) * (k - 1)))
    low, high = stats.f.ppf(0.975, n - 1, v), stats.f.ppf(0.975, v, n - 1)
    rest = k * rater + (k * n - k - n) * residual
    print(f"random: {n * (between - low * residual) / (low * rest + n * between):.9f}"
          f" {n * (high * between - residual) / (rest + n * high * between):.9f}")


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
    agreement()
    asymmetry()
    influence()
    posterior()
