"""Counts explained by moderators by their own likelihood, by brute force.

Each study's true value is x'b + tau u on the logit or log scale; u is integrated out by a plain
trapezium rule over a dense grid, b and tau are found by a general-purpose optimiser and polished by
Newton's method with central differences, limits are roots of the profile likelihood. Data are the
published sets of core/src/test/resources/published. For CountRegressionTest.
"""
import csv
import os

import numpy as np
from scipy.optimize import brentq, minimize
from scipy.special import gammaln, logsumexp
from scipy.stats import chi2

HERE = os.path.dirname(os.path.abspath(__file__))
U = np.linspace(-9, 9, 601)
LOG_DENSITY = -U * U / 2 - 0.5 * np.log(2 * np.pi) + np.log(U[1] - U[0])


def rows(name):
    path = os.path.join(HERE, "..", "resources", "published", name, name + ".csv")
    with open(path) as file:
        return list(csv.DictReader(file))


def choose(n, k):
    return gammaln(n + 1) - gammaln(k + 1) - gammaln(n - k + 1)


def binomial(x, n, offset=0.0):
    def log(theta):
        eta = theta + offset
        return choose(n, x) + x * eta - n * np.logaddexp(0, eta)

    return log


def poisson(x, t):
    return lambda theta: x * (theta + np.log(t)) - t * np.exp(theta) - gammaln(x + 1)


def hypergeometric(x, n1, y, n2):
    m = x + y
    support = np.arange(max(0, m - n2), min(n1, m) + 1)
    tables = choose(n1, support) + choose(n2, m - support)

    def log(theta):
        theta = np.asarray(theta)
        return (
            choose(n1, x) + choose(n2, y) + x * theta
            - logsumexp(tables[None, :] + support[None, :] * theta[:, None], axis=1)
        )

    return log


def minus(parameters, studies, design):
    b, tau = parameters[:-1], parameters[-1]
    total = 0.0
    for log, x in zip(studies, design):
        total += logsumexp(log(x @ b + tau * U) + LOG_DENSITY)
    return -total


def derivatives(f, at):
    n = len(at)
    h = 1e-3 * np.maximum(1, np.abs(at))
    value = f(at)
    slope = np.zeros(n)
    bend = np.zeros((n, n))

    def moved(*moves):
        place = at.copy()
        for j, way in moves:
            place[j] += way * h[j]
        return f(place)

    for i in range(n):
        up, down = moved((i, 1)), moved((i, -1))
        slope[i] = (moved((i, 0.2)) - moved((i, -0.2))) / (0.4 * h[i])
        bend[i, i] = (up - 2 * value + down) / h[i] ** 2
        for j in range(i):
            bend[i, j] = bend[j, i] = (
                moved((i, 1), (j, 1)) - moved((i, 1), (j, -1))
                - moved((i, -1), (j, 1)) + moved((i, -1), (j, -1))
            ) / (4 * h[i] * h[j])
    return slope, bend


def top(f, start):
    at = minimize(f, start, method="Nelder-Mead",
                  options={"xatol": 1e-5, "fatol": 1e-8, "maxiter": 20000, "maxfev": 20000}).x
    for _ in range(6):
        slope, bend = derivatives(f, at)
        at = at - np.linalg.solve(bend, slope)
    return at


def fit(name, terms, studies, design):
    """Columns are centred and scaled for the search, and coefficients carried back."""
    design = np.asarray(design, float)
    centre = design.mean(axis=0)
    spread = design.std(axis=0)
    centre[0], spread[0] = 0, 1
    inner = (design - centre) / spread
    p = design.shape[1]
    back = np.diag(1 / spread)
    back[0, 1:] = -centre[1:] / spread[1:]
    f = lambda at: minus(at, studies, inner)
    at = top(f, np.append(np.zeros(p), 0.5))
    _, bend = derivatives(f, at)
    b = back @ at[:-1]
    covariance = back @ np.linalg.inv(bend)[:p, :p] @ back.T
    print(name)
    print("  tau %.9f  log likelihood %.9f" % (abs(at[-1]), -f(at)))
    value = f(at)
    for j, term in enumerate(terms):
        error = np.sqrt(covariance[j, j])
        limits = [profile(studies, design, j, way, b, at[-1], error, value) for way in (-1, 1)]
        print("  %-12s %.9f  error %.9f  profile %.8f to %.8f" % (term, b[j], error, *limits))
    if p > 1:
        null = top(lambda a: minus(a, studies, inner[:, :1]), np.array([at[0], abs(at[-1]) + 0.2]))
        print("  all moderators: chi-squared %.8f" % (2 * (minus(null, studies, inner[:, :1]) - value)))


def profile(studies, design, j, way, b, tau, error, value):
    others = [i for i in range(design.shape[1]) if i != j]
    spread = np.maximum(np.abs(design).max(axis=0), 1e-9)

    def fall(x):
        def f(at):
            full = np.zeros(design.shape[1])
            full[j] = x
            full[others] = at[:-1] / spread[others]
            return minus(np.append(full, at[-1]), studies, design)

        start = np.append(b[others] * spread[others], tau)
        return 2 * (f(top(f, start)) - value) - chi2.ppf(0.95, 1)

    near, far = b[j] + way * 1.2 * error, b[j] + way * 4 * error
    return brentq(fall, near, far, xtol=1e-8 * max(1, abs(b[j])))


def spline(x, knots):
    cube = lambda v: max(v, 0.0) ** 3
    a, m, z = knots
    return (cube(x - a) - cube(x - m) * (z - a) / (z - m) + cube(x - z) * (m - a) / (z - m)) / (z - a) ** 2


def main():
    data = rows("adherence-proportions")
    counts = [binomial(float(r["events"]), float(r["total"])) for r in data]
    quality = [float(r["care_quality"]) for r in data]
    caucasian = [1.0 if r["ethnicity"] == "caucasian" else 0.0 for r in data]
    other = [1 - c for c in caucasian]
    fit("adherence, quality of care", ["intercept", "care_quality"], counts,
        [[1, q] for q in quality])
    fit("adherence, quality of care and ethnicity", ["intercept", "care_quality", "other"], counts,
        [[1, q, c] for q, c in zip(quality, other)])
    knots = [5.0, 12.0, 24.0]
    fit("adherence, spline with knots 5, 12, 24", ["intercept", "care_quality", "care_quality'"],
        counts, [[1, q, spline(q, knots)] for q in quality])

    data = rows("stroke-rates")
    year = [float(r["year"]) - 1990 for r in data]
    fit("stroke, rates of the controls by year less 1990", ["intercept", "year"],
        [poisson(float(r["control_events"]), float(r["control_time"])) for r in data],
        [[1, y] for y in year])

    data = rows("bcg-vaccine")
    tables = [
        hypergeometric(float(r["treated_events"]), float(r["treated_total"]),
                       float(r["control_events"]), float(r["control_total"]))
        for r in data
    ]
    fit("vaccine, conditional odds ratios by latitude", ["intercept", "latitude"], tables,
        [[1, float(r["latitude"])] for r in data])


if __name__ == "__main__":
    main()
