"""Mean share, intraclass correlation, standard error and log likelihood of the beta-binomial distribution:
python3 core/src/test/reference/beta_binomial.py

By SciPy's betabinom (log gamma functions of two shapes) and a general optimiser over the logs of the shapes; the standard
error of the logit of the mean by central differences in logit and log of a + b. Quantiles and the share below a value by
SciPy's beta. Held in BetaBinomialTest. The families are Geissler's of Saxony (1889): boys among the first 12 children of
6,115 families, as Lindsey and Altham print them (Applied Statistics 1998;47:149); shapes of 34.1 and 31.6 and a log
likelihood of -12,492.9 are printed in many places (from memory).
"""

import csv
import pathlib

import numpy as np
from scipy import stats
from scipy.optimize import minimize
from scipy.special import expit

PUBLISHED = pathlib.Path("core/src/test/resources/published")


def log_likelihood(logit, log_size, events, totals, times):
    mean, size = expit(logit), np.exp(log_size)
    return np.sum(times * stats.betabinom.logpmf(events, totals, mean * size, (1 - mean) * size))


REGISTERS = [812_345, 1_203, 40, 7], [4_000_000, 9_001, 150, 300]
CHOICES = [np.longdouble(stats.binom.logpmf(e, n, 0.5) + n * np.log(2)) for e, n in zip(*REGISTERS)]


def term_by_term(logit, log_size, events, totals):
    """The same for millions of patients, where log gamma functions lose digits: patient after patient, in 80 bits."""
    mean, step = expit(np.longdouble(logit)), np.exp(-np.longdouble(log_size))
    steps = [np.arange(n, dtype=np.longdouble) * step for n in (max(events), max(totals))]
    logs = [np.log(mean + steps[0]), np.log(1 - mean + steps[1]), np.log1p(steps[1])]
    # Sums in pairs: one after the other, rounding of millions of terms would show in the bends.
    return sum(np.sum(logs[0][:e]) + np.sum(logs[1][: n - e]) - np.sum(logs[2][:n]) + constant
               for e, n, constant in zip(events, totals, CHOICES))


def fit(name, events, totals, times=1.0, loss=None):
    events, totals = np.array(events), np.array(totals)
    times = np.broadcast_to(times, events.shape)

    def usual(place):
        return -log_likelihood(*place, events, totals, times)

    loss = loss or usual

    start = np.sum(times * events) / np.sum(times * totals)
    best = minimize(loss, [np.log(start / (1 - start)), 1.0], method="Nelder-Mead",
                    options={"xatol": 1e-11, "fatol": 1e-13, "maxiter": 20000}).x
    h, unit = 1e-3, np.eye(2)

    def slope(at, e, h=h):
        return (8 * (loss(at + h * e) - loss(at - h * e)) - loss(at + 2 * h * e) + loss(at - 2 * h * e)) / (12 * h)

    def bend(at, e, f):
        return (8 * (slope(at + h * e, f) - slope(at - h * e, f)) - slope(at + 2 * h * e, f) + slope(at - 2 * h * e, f)) / (12 * h)

    for _ in range(3):  # Newton steps for the last digits
        information = np.array([[bend(best, e, f) for e in unit] for f in unit])
        best = best - np.linalg.solve(information, [slope(best, e) for e in unit])
    error = np.sqrt(np.linalg.inv(information)[0, 0])
    mean, size = expit(best[0]), np.exp(best[1])
    a, b = mean * size, (1 - mean) * size
    limits = stats.beta.ppf([0.025, 0.975], a, b)
    print(f"{name}: logit {best[0]:.9f} se {error:.9f} rho {1 / (1 + size):.10f} log L {-loss(best):.8f}")
    print(f"    mean {mean:.9f} alpha {a:.6f} beta {b:.6f} quantiles {limits[0]:.9f} {limits[1]:.9f}"
          f" below 0.5 {stats.beta.cdf(0.5, a, b):.9f}")


def published(name):
    with open(PUBLISHED / name / f"{name}.csv", newline="") as file:
        rows = [row for row in csv.DictReader(file) if row["events"] and row["total"]]
    return [int(row["events"]) for row in rows], [int(row["total"]) for row in rows]


for name in ("adherence-proportions", "proportions-full-arms", "single-proportions"):
    fit(name, *published(name))
boys = [3, 24, 104, 286, 670, 1033, 1343, 1112, 829, 478, 181, 45, 7]
fit("families", range(13), [12] * 13, np.array(boys, float))
fit("registers (some minutes)", *REGISTERS, loss=lambda place: float(-term_by_term(*place, *REGISTERS)))
