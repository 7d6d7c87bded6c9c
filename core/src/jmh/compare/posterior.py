"""The posterior of shares by a general-purpose integrator: python3 posterior.py DATA.csv

Binomial counts, logits of centres normal about a middle whose share is uniform, tau half-normal with scale 1. SciPy's
adaptive quadrature over tau and, within it, over the middle; each centre's own logit by 40 points of Gauss and Hermite.
Prints what, mean of the middle on the logit scale, seconds a run (the least of up to five, warm).
"""
import csv
import math
import sys
import time

import numpy as np
from scipy.integrate import quad
from scipy.optimize import minimize_scalar

with open(sys.argv[1]) as data:
    rows = list(csv.DictReader(data))
events = np.array([float(row["events"]) for row in rows])
totals = np.array([float(row["total"]) for row in rows])
nodes, weights = np.polynomial.hermite_e.hermegauss(40)
log_weights = np.log(weights / weights.sum())


def log_posterior(middle, tau):
    logits = middle + tau * nodes[None, :]
    logs = events[:, None] * logits - totals[:, None] * np.logaddexp(0, logits) + log_weights
    top = logs.max(axis=1)
    studies = (top + np.log(np.exp(logs - top[:, None]).sum(axis=1))).sum()
    return studies - abs(middle) - 2 * math.log1p(math.exp(-abs(middle))) - tau * tau / 2


def mean_of_middle():
    best = minimize_scalar(lambda m: -log_posterior(m, 0.5), bounds=(-8, 8), method="bounded")
    share = 1 / (1 + math.exp(-best.x))
    information = totals.sum() * share * (1 - share)
    top = -best.fun

    def within(tau, power):
        reach = 12 * math.sqrt(1 / information + tau * tau / len(events)) + 0.5
        return quad(
            lambda m: m**power * math.exp(log_posterior(m, tau) - top),
            best.x - reach,
            best.x + reach,
            epsabs=0,
            epsrel=1e-9,
            points=[best.x],
            limit=200,
        )[0]

    mass = quad(lambda t: within(t, 0), 0, 7, epsabs=0, epsrel=1e-9, points=[0.5], limit=200)[0]
    return quad(lambda t: within(t, 1), 0, 7, epsabs=0, epsrel=1e-9, points=[0.5], limit=200)[0] / mass


spent = []
while len(spent) < 5 and sum(spent) < 5:
    start = time.perf_counter()
    value = mean_of_middle()
    spent.append(time.perf_counter() - start)
print(f"posterior of counts against a general integrator,{value:.15g},{min(spent):.9g}")
