"""Limits for a further study of a network, and a further cluster of three levels, with the spread not known.

Every standard deviation between 0 and infinity alike, weighed by the restricted likelihood, which is integrated by SciPy's
quad and dblquad; the distribution of a further value is a mixture of normal ones, whose points are found by brentq.
The invented studies of the class NetworkRegressionTest, and ten invented rows of four teams.
"""
import numpy as np
from scipy import integrate, linalg, optimize, stats

STUDIES = """A frame 6 40 nail 22 42|B frame 7 35 nail 5 34|C frame 9 51 nail 20 49|D frame 5 30 nail 21 31
E frame 4 35 nail 9 33|F frame 8 40 plate 9 42|J nail 12 50 plate 21 51|L frame 7 36 nail 13 38 plate 9 37""".replace(
    "\n", "|").split("|")
TREATMENTS = ["frame", "nail", "plate"]


def restricted(y, x, cov):
    w = np.linalg.inv(cov)
    inner = np.linalg.inv(x.T @ w @ x)
    b = inner @ x.T @ w @ y
    r = y - x @ b
    log = (np.linalg.slogdet(w)[1] + np.linalg.slogdet(inner)[1] - r @ w @ r) / 2
    return log, b, inner


def limits(tail, low, high):
    return [optimize.brentq(lambda z: tail(z) - p, low, high, xtol=1e-12) for p in (0.025, 0.975)]


def network():
    y, x, v, s = [], [], [], []
    for line in STUDIES:
        words = line.split()
        arms = [(words[i], float(words[i + 1]), float(words[i + 2])) for i in range(1, len(words), 3)]
        logit = [np.log(e / (n - e)) for _, e, n in arms]
        variance = [1 / e + 1 / (n - e) for _, e, n in arms]
        m = len(arms) - 1
        v.append(np.full((m, m), variance[0]) + np.diag(variance[1:]))
        s.append((np.eye(m) + 1) / 2)
        for i in range(1, m + 1):
            y.append(logit[i] - logit[0])
            x.append([(arms[i][0] == t) * 1.0 - (arms[0][0] == t) for t in TREATMENTS[1:]])
    y, x, v, s = np.array(y), np.array(x), linalg.block_diag(*v), linalg.block_diag(*s)
    top = restricted(y, x, v + 0.2 * s)[0]

    def summed(c, z):
        def of(tau):
            log, b, inner = restricted(y, x, v + tau ** 2 * s)
            return np.exp(log - top) * (1 if z is None else
                                        stats.norm.cdf((z - c @ b) / np.sqrt(c @ inner @ c + tau ** 2)))
        parts = [0, 0.25, 0.5, 1, 2, 5, 20, np.inf]
        return sum(integrate.quad(of, a, b, epsabs=1e-13, epsrel=1e-11, limit=200)[0] for a, b in zip(parts, parts[1:]))

    whole = summed(None, None)
    for name, c in (("nail less frame", np.array([1.0, 0])), ("plate less nail", np.array([-1.0, 1]))):
        print(name, limits(lambda z: summed(c, z) / whole, -20, 20))


def teams():
    y = np.array([0.1, 0.5, 0.9, 0.2, 1.2, 0.8, 0.7, 1.1, 0.3, 0.6])
    v = np.array([0.2, 0.25, 0.3, 0.22, 0.35, 0.28, 0.3, 0.4, 0.21, 0.26]) ** 2
    team = np.array(list("xxyyzzwwwx"))
    same = (team[:, None] == team[None, :]) * 1.0
    x = np.ones((len(y), 1))
    top = restricted(y, x, np.diag(v) + 0.05 * same)[0]
    # Points of Gauss and Legendre on panels of both standard deviations, dense enough to agree with half as many.
    edges = [0, 0.1, 0.2, 0.4, 0.8, 1.6, 3.2, 8, 20, 60, 200, 1000, 1e4, 1e5, 1e7]
    at, weight = np.polynomial.legendre.leggauss(POINTS)
    taus = np.concatenate([(b - a) / 2 * at + (a + b) / 2 for a, b in zip(edges, edges[1:])])
    mass = np.concatenate([(b - a) / 2 * weight for a, b in zip(edges, edges[1:])])
    share, mean, sd = [], [], []
    for between, p in zip(taus, mass):
        for within, q in zip(taus, mass):
            log, b, inner = restricted(y, x, np.diag(v + within ** 2) + between ** 2 * same)
            share.append(p * q * np.exp(log - top))
            mean.append(b[0])
            sd.append(np.sqrt(inner[0, 0] + within ** 2 + between ** 2))
    share, mean, sd = np.array(share) / sum(share), np.array(mean), np.array(sd)
    print("further row of a further team", limits(lambda z: share @ stats.norm.cdf((z - mean) / sd), -50, 50))


network()
for POINTS in (8, 16):
    teams()
