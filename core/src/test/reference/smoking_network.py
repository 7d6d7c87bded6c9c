"""Recomputes published/smoking-cessation-network: python3 core/src/test/reference/smoking_network.py

24 trials of four approaches as generalised least squares written out with whole matrices: contrasts of each study against
its first arm, their covariance the variance of that arm off the diagonal (Lu and others, Res Synth Methods 2011;2:43), the
variance between studies t on the diagonal and t/2 off it. The moment estimator follows from the mean of Q, which is
df + t tr(PS): t = (Q - df)/tr(PS). Restricted likelihood maximised as written. P-scores: Rucker and Schwarzer, BMC Med Res
Methodol 2015;15:58. Direct and indirect by taking the direct part out of the network's estimate.
"""

import itertools

import numpy as np
from scipy import stats

import held
import random_effects as pooled

NAMES = ["no contact", "group counselling", "individual counselling", "self-help"]


def studies():
    for _, arms in itertools.groupby(held.rows("smoking-cessation-network"), key=lambda row: row["study"]):
        arms = list(arms)
        add = 0.5 if any(arm["events"] in (0, arm["total"]) for arm in arms) else 0
        yield [(arm["treatment"], arm["events"] + add, arm["total"] - arm["events"] + add) for arm in arms]


def contrasts(all_studies):
    """Effects, their covariance, the pattern S of the variance between studies, the design."""
    y, x, blocks, patterns = [], [], [], []
    for arms in all_studies:
        for name, a, b in arms[1:]:
            y.append(np.log(a / b) - np.log(arms[0][1] / arms[0][2]))
            x.append([(one == name) - (one == arms[0][0]) for one in NAMES[1:]])
        first = 1 / arms[0][1] + 1 / arms[0][2]
        blocks.append(first + np.diag([1 / a + 1 / b for _, a, b in arms[1:]]))
        patterns.append((np.ones((len(arms) - 1,) * 2) + np.eye(len(arms) - 1)) / 2)
    return np.array(y), block_diagonal(blocks), block_diagonal(patterns), np.array(x, float)


def block_diagonal(blocks):
    size = sum(len(block) for block in blocks)
    whole, at = np.zeros((size, size)), 0
    for block in blocks:
        whole[at:at + len(block), at:at + len(block)] = block
        at += len(block)
    return whole


def solve(y, v, x):
    w = np.linalg.inv(v)
    covariance = np.linalg.inv(x.T @ w @ x)
    b = covariance @ x.T @ w @ y
    return b, covariance, (y - x @ b) @ w @ (y - x @ b), w - w @ x @ covariance @ x.T @ w


def saturated_q(all_studies):
    """Q of studies of one design: each contrast with a mean of its own."""
    y, v, _, _ = contrasts(all_studies)
    own = len(all_studies[0]) - 1
    return solve(y, v, np.tile(np.eye(own), (len(all_studies), 1)))[2]


def network(label, t, y, v, s, x):
    b, covariance, _, _ = solve(y, v + t * s, x)
    c = np.vstack([np.zeros(len(b)), np.eye(len(b))])
    found = {}
    for i, j in itertools.permutations(range(len(NAMES)), 2):
        difference = c[i] - c[j]
        at = f"{label}/{NAMES[i]}/{NAMES[j]}"
        found[at + "/estimate"], found[at + "/se"] = difference @ b, np.sqrt(difference @ covariance @ difference)
    for i, name in enumerate(NAMES):
        found[f"{label}/P-score/{name}"] = np.mean([
            stats.norm.cdf(found[f"{label}/{name}/{other}/estimate"] / found[f"{label}/{name}/{other}/se"])
            for j, other in enumerate(NAMES) if j != i])
    return found


def split(label, t, of_two, found):
    """Self-help against no contact, which only studies of two arms compare."""
    y, v = [], []
    for arms in of_two:
        if {arms[0][0], arms[1][0]} == {"no contact", "self-help"}:
            sign = 1 if arms[1][0] == "self-help" else -1
            y.append(sign * (np.log(arms[1][1] / arms[1][2]) - np.log(arms[0][1] / arms[0][2])))
            v.append(sum(1 / a + 1 / b for _, a, b in arms))
    direct, error, _, _ = pooled.mean(np.array(y), np.array(v), t)
    whole, whole_error = (found[f"{label}/self-help/no contact/{name}"] for name in ("estimate", "se"))
    rest = 1 / whole_error ** 2 - 1 / error ** 2
    indirect = (whole / whole_error ** 2 - direct / error ** 2) / rest
    apart, apart_error = direct - indirect, np.sqrt(error ** 2 + 1 / rest)
    return {f"{label}/split/no contact:self-help/{name}": value for name, value in {
        "direct": direct, "direct/se": error, "indirect": indirect, "indirect/se": rest ** -0.5, "difference": apart,
        "difference/se": apart_error, "difference/p": 2 * stats.norm.sf(abs(apart / apart_error))}.items()}


ALL = list(studies())
y, v, s, x = contrasts(ALL)
b, covariance, q, p = solve(y, v, x)
df = len(y) - len(b)
found = {"network/Q": q, "network/Q/p": stats.chi2.sf(q, df), "network/I2": 100 * (q - df) / q}
designs = {}
for arms in ALL:
    designs.setdefault(tuple(arm[0] for arm in sorted(arms, key=lambda arm: NAMES.index(arm[0]))), []).append(
        sorted(arms, key=lambda arm: NAMES.index(arm[0])))
within = {design: saturated_q(of_design) for design, of_design in designs.items()}
within_df = sum((len(of_design) - 1) * (len(design) - 1) for design, of_design in designs.items())
found.update({"network/Qdesign/" + ":".join(design): one for design, one in within.items()})
found["network/Qwithin"] = sum(within.values())
found["network/Qbetween"] = q - found["network/Qwithin"]
found["network/Qbetween/p"] = stats.chi2.sf(found["network/Qbetween"], df - within_df)


def restricted(t):
    _, spread, square, _ = solve(y, v + t * s, x)
    return (np.linalg.slogdet(spread)[1] - np.linalg.slogdet(v + t * s)[1] - square) / 2


for label, t in (("common", 0), ("DL", (q - df) / np.trace(p @ s)), ("REML", pooled.highest(restricted, 10))):
    found[f"network/{label}/tau2"] = t
    found.update(network(f"network/{label}", t, y, v, s, x))
    found.update(split(f"network/{label}", t, ALL, found))
held.compare("smoking-cessation-network", found)
