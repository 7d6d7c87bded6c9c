"""Recomputes published/adherence-proportions and published/stroke-rates in good part:
python3 core/src/test/reference/adherence_and_stroke.py

Counts pooled by their own likelihood (binomial or Poisson given a study's own value, that value normal between studies:
Stijnen, Hamza and Ozdemir, Stat Med 2010;29:3046) where the integral of each study is done directly: the trapezium rule on
a fine grid 12 spreads to each side, which for so smooth a function is exact to rounding, no Gauss-Hermite rule and no
expansion about a mode. Held against the values of 61 points. Standard errors from the observed information by central
differences. The rest are the usual effects and their pooling by random_effects.py.
"""

import numpy as np
from scipy import stats
from scipy.optimize import minimize
from scipy.special import expit, gammaln, log_expit, logsumexp

import held
import random_effects as pooled

GRID = np.linspace(-12, 12, 4001)
LOG_WEIGHT = np.log(GRID[1] - GRID[0]) + stats.norm.logpdf(GRID)


def binomial(events, total, offset=0.0):
    def log_density(value):
        value = value + offset
        ways = gammaln(total + 1) - gammaln(events + 1) - gammaln(total - events + 1)
        return ways + events * log_expit(value) + (total - events) * log_expit(-value)

    return log_density


def poisson(events, time):
    def log_density(value):
        return events * (value + np.log(time)) - time * np.exp(value) - gammaln(events + 1)

    return log_density


def log_likelihood(studies, mean, tau):
    return sum(logsumexp(LOG_WEIGHT + study(mean + tau * GRID)) for study in studies)


def exact(prefix, studies, start):
    def loss(place):
        return -log_likelihood(studies, place[0], abs(place[1]))

    best = minimize(loss, start, method="Nelder-Mead", options={"xatol": 1e-10, "fatol": 1e-13, "maxiter": 5000}).x
    for _ in range(3):  # Newton steps for the last digits, since values near a top hardly differ
        information, slope = curvature(loss, best), gradient(loss, best)
        if abs(best[1]) > 0.01:
            best = best - np.linalg.solve(information, slope)
    tau = abs(best[1])
    inverse = np.linalg.inv(information) if tau > 0.01 else np.diag([1 / information[0, 0], 0])
    return {f"{prefix}/estimate": best[0], f"{prefix}/se": np.sqrt(inverse[0, 0]), f"{prefix}/tau": tau,
            f"{prefix}/loglik": -loss(best)}


def gradient(loss, at, step=1e-4):
    unit = np.eye(2) * step
    return np.array([(8 * (loss(at + e) - loss(at - e)) - loss(at + 2 * e) + loss(at - 2 * e)) / (12 * step) for e in unit])


def curvature(loss, at, step=1e-3):
    unit = np.eye(2) * step
    return np.array([(8 * (gradient(loss, at + e) - gradient(loss, at - e)) - gradient(loss, at + 2 * e)
                      + gradient(loss, at - 2 * e)) / (12 * step) for e in unit])


def columns(rows, *names):
    return [np.array([row[name] for row in rows]) for name in names]


x, n = columns(held.rows("adherence-proportions"), "events", "total")
computed = {}
for scale, y, v in (("logit", np.log(x / (n - x)), 1 / x + 1 / (n - x)), ("log", np.log(x / n), 1 / x - 1 / n),
                    ("raw", x / n, x / n * (1 - x / n) / n), ("arcsine", np.arcsin(np.sqrt(x / n)), 1 / (4 * n)),
                    ("double-arcsine", (np.arcsin(np.sqrt(x / (n + 1))) + np.arcsin(np.sqrt((x + 1) / (n + 1)))) / 2,
                     1 / (4 * n + 2))):
    computed.update(pooled.values(scale, y, v))
fitted = exact("exact/61", [binomial(a, b) for a, b in zip(x, n)], [-0.1, 0.6])
computed.update(fitted)
places = fitted["exact/61/estimate"] + fitted["exact/61/tau"] * GRID
computed["exact/61/back/estimate"] = expit(fitted["exact/61/estimate"])
computed["exact/61/back/average"] = np.sum(np.exp(LOG_WEIGHT) * expit(places))
held.compare("adherence-proportions", computed)

x1, t1, x2, t2 = columns(held.rows("stroke-rates"), "treated_events", "treated_time", "control_events", "control_time")
computed = pooled.values("rate-ratio", np.log(x1 / t1 / (x2 / t2)), 1 / x1 + 1 / x2)
between = [binomial(a, a + b, np.log(s / t)) for a, b, s, t in zip(x1, x2, t1, t2)]
computed.update(exact("rate-ratio/exact/61", between, [-1, 0.1]))
for arm, events, time in (("treated", x1, t1), ("control", x2, t2)):
    computed.update(pooled.values(f"rate/{arm}/log", np.log(events / time), 1 / events))
    computed.update(pooled.values(f"rate/{arm}/square-root", np.sqrt(events / time), 1 / (4 * time)))
    computed.update(exact(f"rate/{arm}/exact/61", [poisson(a, b) for a, b in zip(events, time)], [-3.0, 0.4]))
held.compare("stroke-rates", computed)
