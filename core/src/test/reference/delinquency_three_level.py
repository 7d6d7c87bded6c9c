"""Recomputes published/delinquency-three-level: python3 core/src/test/reference/delinquency_three_level.py

100 effects in 17 studies with known variances: between studies and within them normal (Van den Noortgate and others, Behav
Res Methods 2013;45:576). Each study's covariance is written out whole and the likelihood, full or restricted, is that of the
multivariate normal distribution. Sandwich variances over studies: Liang and Zeger, Biometrika 1986;73:13 (CR0), times
m/(m - p) (CR1).
"""

import numpy as np
from scipy import stats
from scipy.optimize import minimize

import held
import random_effects as pooled

DATA = held.rows("delinquency-three-level")
STUDY, Y, V, PUBLISHED = (np.array([row[key] for row in DATA]) for key in ("study", "effect", "variance", "published"))
SAME = STUDY[:, None] == STUDY[None, :]


def fit(x, covariance):
    inverse = np.linalg.inv(covariance)
    spread = np.linalg.inv(x.T @ inverse @ x)
    return spread @ x.T @ inverse @ Y, spread, inverse


def covariance_of(between, within):
    return SAME * between + np.diag(V + within)


def log_likelihood(parts, x, restricted):
    covariance = covariance_of(*parts)
    b, spread, _ = fit(x, covariance)
    value = stats.multivariate_normal.logpdf(Y, x @ b, covariance)
    if restricted:
        value += (np.linalg.slogdet(spread)[1] + x.shape[1] * np.log(2 * np.pi)) / 2
    return value


def three_level(x, restricted):
    """Both variances, by a search on their logs and Newton steps for the last digits."""
    def loss(logs):
        return -log_likelihood(np.exp(logs), x, restricted)

    at = minimize(loss, np.log([0.2, 0.1]), method="Nelder-Mead", options={"xatol": 1e-9, "fatol": 1e-12}).x
    unit = np.eye(2) * 1e-3
    for _ in range(3):
        slope = np.array([(8 * (loss(at + e) - loss(at - e)) - loss(at + 2 * e) + loss(at - 2 * e)) / 12e-3 for e in unit])
        bend = np.array([[(loss(at + e + f) - loss(at + e - f) - loss(at - e + f) + loss(at - e - f)) / 4e-6
                          for f in unit] for e in unit])
        at = at - np.linalg.solve(bend, slope)
    return np.exp(at)


def robust(label, names, x, covariance):
    b, spread, inverse = fit(x, covariance)
    residual, meat, p = Y - x @ b, 0, x.shape[1]
    for study in np.unique(STUDY):
        rows = STUDY == study
        score = x[rows].T @ inverse[np.ix_(rows, rows)] @ residual[rows]
        meat = meat + np.outer(score, score)
    m, found = len(np.unique(STUDY)), {}
    for i, name in enumerate(names):
        plain = np.sqrt((spread @ meat @ spread)[i, i])
        corrected = plain * np.sqrt(m / (m - p))
        at = f"{label}/{name}"
        found.update({f"{at}/estimate": b[i], f"{at}/CR0": plain, f"{at}/CR1": corrected,
                      f"{at}/CR1/p": 2 * stats.t.sf(abs(b[i] / corrected), m - p)})
    return found


ones = np.ones((len(Y), 1))
computed = {}
for word, restricted in (("REML", True), ("ML", False)):
    parts = three_level(ones, restricted)
    b, spread, _ = fit(ones, covariance_of(*parts))
    computed.update({f"three-level/{word}/{name}": value for name, value in {
        "between": parts[0], "within": parts[1], "estimate": b[0], "se": np.sqrt(spread[0, 0]),
        "loglik": log_likelihood(parts, ones, restricted)}.items()})
computed["published/estimate"] = computed["three-level/REML/estimate"]
computed["published/within"] = computed["three-level/REML/within"]
for label, names, x in (("robust", ["mean"], ones),
                        ("robust-published", ["intercept", "published"], np.column_stack([ones, PUBLISHED]))):
    computed.update(robust(f"{label}/common", names, x, np.diag(V)))
    computed.update(robust(f"{label}/random", names, x, np.diag(V + pooled.tau_squared(Y, V, "DL", x))))
    computed.update(robust(f"{label}/three-level", names, x, covariance_of(*three_level(x, True))))
held.compare("delinquency-three-level", {k: v for k, v in computed.items() if not k.startswith("published/")})
held.compare("delinquency-three-level", {k: v for k, v in computed.items() if k.startswith("published/")},
             "delinquency-three-level, as printed")
