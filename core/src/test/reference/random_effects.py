"""Pooling of effects y with variances v by scipy alone. Used by the other scripts.

Between-study variance t: restricted and full maximum likelihood are maximised as written, not by their scores;
DerSimonian and Laird, Control Clin Trials 1986;7:177, once and with its own weights again (DerSimonian and Kacker, Contemp
Clin Trials 2007;28:105); Paule and Mandel, J Res Natl Bur Stand 1982;87:377, which is also Morris's empirical Bayes, J Am
Stat Assoc 1983;78:47; Hunter and Schmidt 1990; Sidik and Jonkman, J R Stat Soc C 2005;54:367; Hedges 1983 (Cochran).
"""

import numpy as np
from scipy import stats
from scipy.optimize import brentq, minimize_scalar

HALF_CHI = stats.chi2.ppf(0.95, 1) / 2


def fit(x, y, v, t):
    """Weighted least squares: coefficients, their covariance, sum of squares, weights."""
    w = 1 / (v + t)
    covariance = np.linalg.inv(x.T @ (w[:, None] * x))
    b = covariance @ (x.T @ (w * y))
    return b, covariance, np.sum(w * (y - x @ b) ** 2), w


def mean(y, v, t):
    b, covariance, q, w = fit(np.ones((len(y), 1)), y, v, t)
    return b[0], np.sqrt(covariance[0, 0]), q, w


def log_likelihood(t, x, y, v, restricted):
    _, covariance, q, w = fit(x, y, v, t)
    value = np.sum(np.log(w)) / 2 - q / 2
    return value + np.linalg.slogdet(covariance)[1] / 2 if restricted else value


def highest(function, most):
    """The place from 0 to most where a function of one hump is highest, by golden section on its scale."""
    places = np.concatenate([[0.0], np.geomspace(most * 1e-8, most, 200)])
    best = int(np.argmax([function(place) for place in places]))
    low, high = places[max(best - 1, 0)], places[min(best + 1, len(places) - 1)]
    found = minimize_scalar(lambda t: -function(t), bounds=(low, high), method="bounded", options={"xatol": 1e-13 * high})
    return polished(function, found.x, high) if function(found.x) > function(0.0) else 0.0


def polished(function, near, most):
    """The top of a smooth function to more digits than its values tell: the root of its centred slope."""
    step = near * 1e-3

    def slope(t):
        # fourth order in the step, whose error so is below the rounding of the values
        return 8 * (function(t + step) - function(t - step)) - (function(t + 2 * step) - function(t - 2 * step))

    low, high = near * 0.98, near * 1.02
    return brentq(slope, low, high, xtol=1e-14) if slope(low) > 0 > slope(high) else near


def moment(x, y, v, a):
    """Expected against found sum of squares with any weights a."""
    covariance = np.linalg.inv(x.T @ (a[:, None] * x))
    p = np.diag(a) - (a[:, None] * x) @ covariance @ (a[:, None] * x).T
    return max(0.0, (y @ p @ y - np.sum(np.diag(p) * v)) / np.trace(p))


def tau_squared(y, v, method, x=None):
    x = np.ones((len(y), 1)) if x is None else x
    k, p = x.shape
    most = 100 * (np.var(y) + np.max(v))
    if method in ("REML", "ML"):
        return highest(lambda t: log_likelihood(t, x, y, v, method == "REML"), most)
    if method == "DL":
        return moment(x, y, v, 1 / v)
    if method == "DL2":
        return moment(x, y, v, 1 / (v + moment(x, y, v, 1 / v)))
    if method == "HE":
        return moment(x, y, v, np.ones(k))
    if method in ("PM", "EB"):
        return q_equals(k - p, x, y, v, most)
    if method == "HS":
        return max(0.0, (fit(x, y, v, 0)[2] - k) / np.sum(1 / v))
    if method == "SJ":
        start = np.mean((y - np.mean(y)) ** 2)
        return start * fit(x, y, v, start)[2] / (k - p)
    raise ValueError(method)


def q_equals(value, x, y, v, most=None):
    """The t at which the sum of squares has a value; 0 if it lies below it already."""
    most = most or 1000 * (np.var(y) + np.max(v))
    if fit(x, y, v, 0.0)[2] <= value:
        return 0.0
    return brentq(lambda t: fit(x, y, v, t)[2] - value, 0.0, most, xtol=1e-15, rtol=1e-14)


def profile_of_mean(y, v):
    """Limits of the mean where the likelihood, at its best t for each mean, has fallen by half the chi-squared point."""
    t = tau_squared(y, v, "ML")
    top = log_likelihood(t, np.ones((len(y), 1)), y, v, False)
    middle, error, _, _ = mean(y, v, t)
    most = 100 * (np.var(y) + np.max(v))

    def fallen(m):
        def at(s):
            w = 1 / (v + s)
            return np.sum(np.log(w) - w * (y - m) ** 2) / 2

        return at(highest(at, most)) - top + HALF_CHI

    return [brentq(fallen, middle, middle + side * 30 * error, xtol=1e-10) for side in (-1, 1)]


def profile_of_tau_squared(y, v):
    x = np.ones((len(y), 1))
    t = tau_squared(y, v, "ML")

    def fallen(s):
        return log_likelihood(s, x, y, v, False) - log_likelihood(t, x, y, v, False) + HALF_CHI

    lower = brentq(fallen, 0.0, t, xtol=1e-15) if t > 0 and fallen(0.0) < 0 else 0.0
    return lower, brentq(fallen, t, 1000 * (t + np.max(v)), xtol=1e-15)


def values(prefix, y, v, ratio_methods="REML ML DL DL2 PM EB HS SJ HE".split()):
    """Everything of one meta-analysis by the ids of the expected values."""
    y, v = np.asarray(y, float), np.asarray(v, float)
    k, z, x = len(y), stats.norm.ppf(0.975), np.ones((len(y), 1))
    found = {}
    m, error, q, w = mean(y, v, 0)
    chi = stats.chi2(k - 1)
    found.update({
        "common/estimate": m, "common/se": error, "common/lower": m - z * error, "common/upper": m + z * error,
        "common/p": 2 * stats.norm.sf(abs(m / error)), "Q": q, "Q/p": chi.sf(q),
        "I2/Q": 100 * max(0, (q - (k - 1)) / q), "H2/Q": q / (k - 1)})
    typical = (k - 1) * np.sum(w) / (np.sum(w) ** 2 - np.sum(w ** 2))
    for method in ratio_methods:
        t = tau_squared(y, v, method)
        m, error, q, w = mean(y, v, t)
        hk = error * np.sqrt(q / (k - 1))
        never = max(hk, error)
        point = stats.t.ppf(0.975, k - 1)
        found.update({method + "/" + name: value for name, value in {
            "tau2": t, "estimate": m, "se": error, "lower": m - z * error, "upper": m + z * error,
            "p": 2 * stats.norm.sf(abs(m / error)), "I2": 100 * t / (t + typical), "H2": (t + typical) / typical,
            "HK/se": hk, "HK/lower": m - point * hk, "HK/upper": m + point * hk,
            "HK/p": 2 * stats.t.sf(abs(m / hk), k - 1),
            "HK1/lower": m - point * never, "HK1/upper": m + point * never}.items()})
        for kind, e in (("wald", error), ("HK", hk)):
            for df in (1, 2):
                half = stats.t.ppf(0.975, k - df) * np.sqrt(t + e ** 2) if k > df else np.nan
                found[f"{method}/PI/{kind}/k-{df}/lower"] = m - half
                found[f"{method}/PI/{kind}/k-{df}/upper"] = m + half
    found["tau2/QP/lower"] = q_equals(chi.ppf(0.975), x, y, v)
    found["tau2/QP/upper"] = q_equals(chi.ppf(0.025), x, y, v)
    found["PL/lower"], found["PL/upper"] = profile_of_mean(y, v)
    found["PL/tau2/lower"], found["PL/tau2/upper"] = profile_of_tau_squared(y, v)
    return {prefix + "/" + name: value for name, value in found.items()}
