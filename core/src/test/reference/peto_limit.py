"""How far Peto's odds ratio lies from the true one in endless trials: python3 core/src/test/reference/peto_limit.py

sum(O - E)/sum V with each count put at its expectation, groups of sizes 1 : r, risk p after the comparator (Yusuf and others
1985). docs/methods/counts.md warns where groups are of very unequal size or effects large.
"""

from math import exp


def peto(odds_ratio, risk, ratio):
    odds = odds_ratio * risk / (1 - risk)
    n1, n2 = 1 / (1 + ratio), ratio / (1 + ratio)
    a, c = n1 * odds / (1 + odds), n2 * risk
    m = a + c
    return exp((a - n1 * m) / (n1 * n2 * m * (1 - m)))


print("true odds ratio, risk, sizes of groups: Peto's")
for odds_ratio in (0.8, 0.5, 0.2, 0.1):
    for risk in (0.02, 0.2):
        for ratio in (1, 4, 8):
            print(f"  {odds_ratio}, {100 * risk:.0f} %, 1 : {ratio}: {peto(odds_ratio, risk, ratio):.3f}")
