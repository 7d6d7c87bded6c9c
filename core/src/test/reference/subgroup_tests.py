"""Tests between groups of studies, by whole matrices: F with one variance between studies, Welch's F with separate ones.

Knapp and Hartung, Stat Med 2003;22:2693; Welch, Biometrika 1951;38:330. DerSimonian and Laird's variances, since they
are in closed form (with groups: their general form, Raudenbush 1994).
"""
import numpy as np
from scipy import stats

EFFECT = np.array([0.1, 0.9, 0.3, 1.2, 0.6, 1.9, 1.1, 2.4, 1.3, 0.2, 2.8, 1.4])
VARIANCE = np.array([0.04, 0.06, 0.03, 0.08, 0.05, 0.04, 0.09, 0.06, 0.05, 0.02, 0.07, 0.04])
GROUP = np.array(list("aaaaabbbbccc"))


def moments(x, y, v):
    w = np.diag(1 / v)
    p = w - w @ x @ np.linalg.inv(x.T @ w @ x) @ x.T @ w
    return max(0, (y @ p @ y - (len(y) - x.shape[1])) / np.trace(p))


def shared(narrow):
    x = np.array([[float(g == h) for h in "abc"] for g in GROUP])
    w = np.diag(1 / (VARIANCE + moments(x, EFFECT, VARIANCE)))
    cov = np.linalg.inv(x.T @ w @ x)
    b = cov @ x.T @ w @ EFFECT
    r = EFFECT - x @ b
    scale = r @ w @ r / 9
    scale = scale if narrow else max(1, scale)
    c = np.array([[-1, 1, 0], [-1, 0, 1]])
    f = c @ b @ np.linalg.solve(c @ cov @ c.T, c @ b) / 2 / scale
    return f, 9, stats.f.sf(f, 2, 9), scale


def welch(narrow):
    m, e, n = [], [], []
    for g in "abc":
        y, v = EFFECT[GROUP == g], VARIANCE[GROUP == g]
        w = 1 / (v + moments(np.ones((len(y), 1)), y, v))
        mean = (w * y).sum() / w.sum()
        q = (w * (y - mean) ** 2).sum() / (len(y) - 1)
        m.append(mean), e.append((q if narrow else max(1, q)) / w.sum()), n.append(len(y))
    m, w, n = np.array(m), 1 / np.array(e), np.array(n)
    grand = (w * m).sum() / w.sum()
    spread = ((1 - w / w.sum()) ** 2 / (n - 1)).sum()
    f = (w * (m - grand) ** 2).sum() / 2 / (1 + 2 * spread / 8)
    d = 8 / (3 * spread)
    return f, d, stats.f.sf(f, 2, d)


for narrow in (True, False):
    print("plain" if narrow else "never narrower", "shared", shared(narrow), "welch", welch(narrow))
