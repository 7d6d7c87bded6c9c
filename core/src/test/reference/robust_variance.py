"""Robust variances by bias-reduced linearisation, with whole matrices.

Written from the equations of Pustejovsky and Tipton, J Bus Econ Stat 2018;36:672 (section 2), and Tipton and
Pustejovsky, J Educ Behav Stat 2015;40:604, with dense matrices of all rows: the adjustment matrices, the degrees
of freedom by the covariance of all pairs of clusters, F for two coefficients. The three-level fit is found by a
general search of the restricted likelihood.
"""
import numpy as np
from scipy import optimize, stats

EFFECT = np.array([0.1, 0.6, 0.7, 1.4, 0.2, -0.35, 1.1, 1.5, 0.9, 0.4, 0.05, 0.8])
VARIANCE = np.array([0.04, 0.05, 0.03, 0.06, 0.02, 0.08, 0.05, 0.02, 0.1, 0.04, 0.07, 0.03])
TEAM = np.array(list("AABBCCDDDEEF"))
LENGTH = np.array([1, 2, 2, 3, 1, 4, 3, 2, 5, 4, 1, 2.0])
YEAR = np.array([3, 1, 4, 1, 5, 9, 2, 6, 5, 3, 5, 8.0])


def root(matrix, power):
    values, vectors = np.linalg.eigh((matrix + matrix.T) / 2)
    kept = values > 1e-12 * values.max()
    return (vectors[:, kept] * values[kept] ** power) @ vectors[:, kept].T


def robust(x, covariance, kind="cr2"):
    weights = np.linalg.inv(covariance)
    bread = np.linalg.inv(x.T @ weights @ x)
    beta = bread @ x.T @ weights @ EFFECT
    hat = x @ bread @ x.T @ weights
    left = np.eye(len(EFFECT)) - hat
    residuals = left @ EFFECT
    teams = sorted(set(TEAM))
    meat = np.zeros((x.shape[1],) * 2)
    pieces = []
    for team in teams:
        own = np.flatnonzero(TEAM == team)
        block = covariance[np.ix_(own, own)]
        upper = np.linalg.cholesky(block).T
        inner = upper @ (left @ covariance @ left.T)[np.ix_(own, own)] @ upper.T
        adjust = upper.T @ root(inner, -0.5) @ upper
        w = weights[np.ix_(own, own)]
        score = x[own].T @ w @ (adjust if kind == "cr2" else np.eye(len(own))) @ residuals[own]
        meat += np.outer(score, score)
        # rows of this act on the whole vector of effects, a column a coefficient
        pieces.append((bread @ x[own].T @ w @ adjust @ left[own]).T)
    factor = len(teams) / (len(teams) - x.shape[1]) if kind == "cr1" else 1
    return beta, factor * bread @ meat @ bread, bread, pieces


def degrees(pieces, covariance, c):
    g = np.array([piece @ c for piece in pieces])
    p = g @ covariance @ g.T
    return np.trace(p) ** 2 / (p**2).sum()


def hotelling(beta, v, bread, pieces, covariance, which):
    q = len(which)
    c = np.eye(len(beta))[which]
    apart = root(c @ bread @ c.T, -0.5) @ c
    total = 0
    for s in range(q):
        for t in range(q):
            gs = np.array([piece @ apart[s] for piece in pieces])
            gt = np.array([piece @ apart[t] for piece in pieces])
            ss, tt = gs @ covariance @ gs.T, gt @ covariance @ gt.T
            st, ts = gs @ covariance @ gt.T, gt @ covariance @ gs.T
            total += (ss * tt + st * ts).sum()
    eta = q * (q + 1) / total
    b = beta[which]
    square = b @ np.linalg.solve(v[np.ix_(which, which)], b)
    f = (eta - q + 1) / (eta * q) * square
    return f, eta - q + 1, stats.f.sf(f, q, eta - q + 1)


def told(name, x, covariance):
    for kind in ("cr2", "cr1", "cr0"):
        beta, v, bread, pieces = robust(x, covariance, kind)
        print(name, kind, "errors", np.sqrt(np.diag(v)))
    beta, v, bread, pieces = robust(x, covariance)
    print(name, "coefficients", beta)
    freedom = [degrees(pieces, covariance, c) for c in np.eye(len(beta))]
    print(name, "degrees", np.array(freedom))
    print(name, "p", [2 * stats.t.sf(abs(b) / e, d) for b, e, d in zip(beta, np.sqrt(np.diag(v)), freedom)])
    if x.shape[1] == 3:
        print(name, "F, second degrees, p", hotelling(beta, v, bread, pieces, covariance, [1, 2]))


def three_level(x):
    same = (TEAM[:, None] == TEAM[None, :]).astype(float)

    def covariance(logs):
        return np.diag(VARIANCE + np.exp(logs[1])) + np.exp(logs[0]) * same

    def minus(logs):
        c = covariance(logs)
        w = np.linalg.inv(c)
        info = x.T @ w @ x
        r = EFFECT - x @ np.linalg.solve(info, x.T @ w @ EFFECT)
        return (np.linalg.slogdet(c)[1] + np.linalg.slogdet(info)[1] + r @ w @ r) / 2

    found = optimize.minimize(minus, [-2, -2], method="Nelder-Mead", options={"xatol": 1e-10, "fatol": 1e-13, "maxiter": 9000})
    print("three levels, variances", np.exp(found.x))
    return covariance(found.x)


np.set_printoptions(precision=12)
one = np.ones(12)
told("mean", one[:, None], np.diag(VARIANCE))
told("length and year", np.column_stack([one, LENGTH, YEAR]), np.diag(VARIANCE))
told("three levels, length", np.column_stack([one, LENGTH]), three_level(np.column_stack([one, LENGTH])))
