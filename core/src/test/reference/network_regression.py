"""A network whose comparisons with the reference change along a number of studies, by whole matrices.

One slope for every treatment against the reference and none between other treatments (Cooper and others, Stat Med
2009;28:1861), by generalised least squares on contrasts with the first arm of each study; variance between studies by
restricted and full likelihood (general search) and by moments (Jackson, White and Riley, Biom J 2013;55:231).
The invented studies of the class NetworkRegressionTest: study, length, then treatment, events and total of each arm.
"""
import numpy as np
from scipy import linalg, optimize, stats

STUDIES = """A 3 frame 6 40 nail 22 42|B 4 frame 7 35 nail 5 34|C 5.5 frame 9 51 nail 20 49|D 8 frame 5 30 nail 21 31
E 9.5 frame 4 35 nail 9 33|F 2.5 frame 8 40 plate 9 42|G 6 frame 10 44 plate 25 45|H 7 frame 6 38 plate 16 40
I 10 frame 5 29 plate 22 28|J 4.5 nail 12 50 plate 21 51|K 9 nail 14 44 plate 13 40|L 6.5 frame 7 36 nail 13 38 plate 9 37
M 3.5 frame 9 30 nail 7 30|N 7.5 nail 11 35 plate 16 36 frame 8 33""".replace("\n", "|").split("|")
TREATMENTS = ["frame", "nail", "plate"]
GIVEN = [2.0, 8.0]

y, x, blocks = [], [], []
lengths = []
for line in STUDIES:
    words = line.split()
    length = float(words[1])
    arms = [(words[i], float(words[i + 1]), float(words[i + 2])) for i in range(2, len(words), 3)]
    logit = [np.log(e / (n - e)) for _, e, n in arms]
    variance = [1 / e + 1 / (n - e) for _, e, n in arms]
    m = len(arms) - 1
    lengths.append(length)
    blocks.append((np.full((m, m), variance[0]) + np.diag(variance[1:]), (np.eye(m) + 1) / 2))
    for i in range(1, m + 1):
        y.append(logit[i] - logit[0])
        row = [0.0, 0.0, 0.0]
        for name, sign in ((arms[i][0], 1), (arms[0][0], -1)):
            if name != "frame":
                row[TREATMENTS.index(name) - 1] += sign
                row[2] += sign * length
        x.append(row)
y, x = np.array(y), np.array(x)
centre = np.mean(lengths)
x[:, 2] -= centre * (x[:, 0] + x[:, 1])
V = linalg.block_diag(*[b[0] for b in blocks])
S = linalg.block_diag(*[b[1] for b in blocks])


def fit(t):
    w = np.linalg.inv(V + t * S)
    cov = np.linalg.inv(x.T @ w @ x)
    b = cov @ x.T @ w @ y
    return b, cov, w


def minus_twice(t, restricted):
    b, cov, w = fit(t)
    r = y - x @ b
    value = r @ w @ r - np.linalg.slogdet(w)[1]
    return value - np.linalg.slogdet(cov)[1] if restricted else value


def likelihood(restricted):
    f = lambda t: minus_twice(t, restricted)
    best = min(np.linspace(0, 2, 2001), key=f)
    h = 1e-4
    slope = lambda t: (f(t + h) - f(t - h)) / (2 * h) - (f(t + 2 * h) - 2 * f(t + h) + 2 * f(t - h) - f(t - 2 * h)) / (12 * h)
    return optimize.brentq(slope, max(best - 0.01, 3 * h), best + 0.01, xtol=1e-13) if best > 0.01 else best


b0, cov0, w0 = fit(0)
r0 = y - x @ b0
q = r0 @ w0 @ r0
df = len(y) - 3
p0 = w0 - w0 @ x @ cov0 @ x.T @ w0
print("mean", centre, "q", q, "df", df)
for name, t in (("restricted-maximum-likelihood", likelihood(True)), ("maximum-likelihood", likelihood(False)),
                ("dersimonian-laird", max(0, (q - df) / np.trace(p0 @ S))), ("common", 0.0)):
    b, cov, w = fit(t)
    se = np.sqrt(np.diag(cov))
    print(name, "tau squared", repr(t))
    print("  slope", b[2], se[2], "t p", 2 * stats.t.sf(abs(b[2] / se[2]), df), "upper", b[2] + stats.t.ppf(0.975, df) * se[2],
          "normal p", 2 * stats.norm.sf(abs(b[2] / se[2])))
    for at in [centre] + GIVEN:
        for i, treatment in enumerate(TREATMENTS[1:]):
            c = np.array([float(i == 0), float(i == 1), at - centre])
            print("  at", at, treatment, c @ b, np.sqrt(c @ cov @ c))
