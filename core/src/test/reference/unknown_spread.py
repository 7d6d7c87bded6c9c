"""Limits for a further study of a network, and a further cluster of three levels, with the spread not known.

Every standard deviation between 0 and infinity alike, weighed by the restricted likelihood, which is integrated by SciPy's
quad and dblquad; the distribution of a further value is a mixture of normal ones, whose points are found by brentq.
The invented studies of the class NetworkRegressionTest, and ten invented rows of four teams.

Then the same of counts, where the likelihood of a mean and a standard deviation is the product of integrals over each
study's true value (quad, between breaks at its hump): at each standard deviation the highest over the mean, times the
root of the variance that the information on the mean leaves there (second difference). Invented counts.
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


def counts(name, terms, own, to=3000.0):
    """Limits of a further value; terms gives the log likelihoods of the studies at an array of true values."""
    own = np.array(own)
    z, w = np.polynomial.legendre.leggauss(16)

    def log(mean, tau):
        # Panels about the studies' own values and about the mean, fine enough for the sharpest and the widest hump.
        edges = np.unique(np.concatenate([own + x for x in np.linspace(-12, 12, 49)] + [mean + tau * np.linspace(-9, 9, 61)]))
        edges = edges[(edges >= mean - 9 * tau) & (edges <= mean + 9 * tau)]
        half = np.diff(edges)[:, None] / 2
        at = edges[:-1, None] + half * (1 + z)
        log_density = -((at - mean) / tau) ** 2 / 2 - np.log(tau * np.sqrt(2 * np.pi))
        return sum(np.log(np.sum(half * w * np.exp(one(at) + log_density))) for one in terms)

    def best(tau):
        far = optimize.minimize_scalar(lambda m: -log(m, tau), bracket=(own.mean() - 0.3, own.mean() + 0.3), tol=1e-10)
        step = 0.02 * max(tau, 0.3)
        bend = (log(far.x + step, tau) - 2 * log(far.x, tau) + log(far.x - step, tau)) / step ** 2
        return -far.fun - np.log(-bend) / 2, far.x, -1 / bend

    at, weight = np.polynomial.legendre.leggauss(10)
    edges = [1e-6, 0.2, 0.5, 1, 2, 4, 8, 16, 32, 64, 128, 512, to]
    found = []
    for a, b in zip(edges, edges[1:]):
        for x, p in zip(at, weight):
            tau = (b - a) / 2 * x + (a + b) / 2
            found.append(((b - a) / 2 * p, tau) + best(tau))
    mass, tau, logs, mean, variance = np.array(found).T
    share = mass * np.exp(logs - logs.max())
    share /= share.sum()
    sd = np.sqrt(variance + tau ** 2)
    print(name, limits(lambda v: share @ stats.norm.cdf((v - mean) / sd), -200, 200))


def shares(name, events, totals, **more):
    from scipy.special import gammaln
    terms = [lambda t, x=x, n=n: x * t - n * np.logaddexp(0, t) + gammaln(n + 1) - gammaln(x + 1) - gammaln(n - x + 1)
             for x, n in zip(events, totals)]
    counts(name, terms, [np.log((x + 0.5) / (n - x + 0.5)) for x, n in zip(events, totals)], **more)


def rates(name, events, times, **more):
    from scipy.special import gammaln
    terms = [lambda t, x=x, u=u: x * (t + np.log(u)) - u * np.exp(t) - gammaln(x + 1) for x, u in zip(events, times)]
    counts(name, terms, [np.log((x + 0.5) / u) for x, u in zip(events, times)], **more)


def odds(name, tables, **more):
    terms, own = [], []
    for a, n1, c, n2 in tables:
        k = np.arange(max(0, a + c - n2), min(n1, a + c) + 1)
        weights = stats.hypergeom(n1 + n2, n1, a + c).logpmf(k)
        terms.append(lambda t, k=k, g=weights, a=a: a * t + g[list(k).index(a)]
                     - np.logaddexp.reduce(k * t[..., None] + g, axis=-1))
        own.append(np.log((a + 0.5) * (n2 - c + 0.5) / (n1 - a + 0.5) / (c + 0.5)))
    counts(name, terms, own, **more)


network()
shares("shares that agree", [17, 8, 31, 15, 26], [20, 9, 34, 18, 30])
shares("shares, some full", [12, 17, 8, 31, 15, 9, 22], [12, 20, 9, 34, 18, 9, 30])
rates("rates", [4, 9, 0, 3, 12, 7], [310, 420, 95, 180, 260, 505])
odds("odds ratios", [(6, 40, 14, 42), (7, 35, 5, 34), (9, 51, 20, 49), (0, 22, 4, 25), (5, 30, 11, 31)])
for POINTS in (8, 16):
    teams()
