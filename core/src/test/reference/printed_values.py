"""Values as papers print them, computed again from the data: python3 core/src/test/reference/printed_values.py

expected.json marks 73 values "published in ..., printed value as recalled". Newcombe's 45 limits are derived by
proportion_intervals.py, two of three levels by delinquency_three_level.py, the other 26 here: kappa (Cohen 1960, 1968), six
intraclass correlations from mean squares (Shrout and Fleiss, Psychol Bull 1979;86:420), and pooled effects by
random_effects.py. Each value must round to what is printed, to the digits printed.
"""

import sys

import numpy as np

import held
import random_effects as pooled


def column(rows, *names):
    return [np.array([row[name] for row in rows]) for name in names]


def kappa():
    rows = held.rows("agreement-two-judges")
    share = np.array([row["count"] for row in rows]).reshape(3, 3) / 200
    by_chance = np.outer(share.sum(axis=1), share.sum(axis=0))
    # disagreement: none weighs 0; Cohen's example weighs 1, 3 and 6
    custom = np.array([[0, 1, 3], [1, 0, 6], [3, 6, 0]])
    return {f"published/{name}": 1 - np.sum(weight * share) / np.sum(weight * by_chance)
            for name, weight in (("kappa", 1 - np.eye(3)), ("weighted", custom))}


def intraclass():
    x = np.column_stack(column(held.rows("agreement-four-raters"), *(f"rater_{i}" for i in range(1, 5))))
    n, k = x.shape
    subjects, raters = x.mean(axis=1, keepdims=True), x.mean(axis=0, keepdims=True)
    b = k * np.sum((subjects - x.mean()) ** 2) / (n - 1)
    j = n * np.sum((raters - x.mean()) ** 2) / (k - 1)
    w = np.sum((x - subjects) ** 2) / (n * (k - 1))
    e = np.sum((x - subjects - raters + x.mean()) ** 2) / ((n - 1) * (k - 1))
    return {"published/" + name: value for name, value in {
        "ICC(1,1)": (b - w) / (b + (k - 1) * w), "ICC(2,1)": (b - e) / (b + (k - 1) * e + k * (j - e) / n),
        "ICC(3,1)": (b - e) / (b + (k - 1) * e), "ICC(1,k)": (b - w) / b,
        "ICC(2,k)": (b - e) / (b + (j - e) / n), "ICC(3,k)": (b - e) / b}.items()}


def cells(name, add=0.0):
    a, n1, c, n2 = column(held.rows(name), "treated_events", "treated_total", "control_events", "control_total")
    more = np.where((a == 0) | (c == 0) | (a == n1) | (c == n2), add, 0)
    return a + more, n1 - a + more, c + more, n2 - c + more


def log_odds_ratios(name, add=0.0):
    a, b, c, d = cells(name, add)
    return np.log(a * d / (b * c)), 1 / a + 1 / b + 1 / c + 1 / d


def bcg():
    y, v = log_odds_ratios("bcg-vaccine")
    t = pooled.tau_squared(y, v, "ML")
    latitude, = column(held.rows("bcg-vaccine"), "latitude")
    x = np.column_stack([np.ones(len(y)), latitude])
    rest = pooled.tau_squared(y, v, "ML", x)
    b = pooled.fit(x, y, v, rest)[0]
    a, f, c, g = cells("bcg-vaccine")
    log_risk, variance = np.log(a / (a + f) / (c / (c + g))), 1 / a - 1 / (a + f) + 1 / c - 1 / (c + g)
    m, error, _, _ = pooled.mean(log_risk, variance, pooled.tau_squared(log_risk, variance, "DL"))
    return {"published/" + name: value for name, value in {
        "OR/ML/estimate": pooled.mean(y, v, t)[0], "OR/ML/tau2": t, "OR/latitude/slope": b[1],
        "OR/latitude/intercept": b[0], "OR/latitude/tau2": rest, "RR/DL/ratio": np.exp(m),
        "RR/DL/ratio/lower": np.exp(m - 1.959964 * error), "RR/DL/ratio/upper": np.exp(m + 1.959964 * error)}.items()}


def eight_schools():
    y, se = column(held.rows("coaching-eight-schools"), "effect", "standard_error")
    m, error, _, _ = pooled.mean(y, se ** 2, 0)
    return {"published/common/estimate": m, "published/common/se": error}


def diuretics():
    y, v = log_odds_ratios("diuretics-pregnancy")
    x = np.ones((len(y), 1))
    return {"published/DL/tau2": pooled.tau_squared(y, v, "DL"),
            "published/QP/lower": pooled.q_equals(pooled.stats.chi2.ppf(0.975, len(y) - 1), x, y, v),
            "published/QP/upper": pooled.q_equals(pooled.stats.chi2.ppf(0.025, len(y) - 1), x, y, v)}


def magnesium():
    a, b, c, d = cells("magnesium-infarction")
    n = a + b + c + d
    y, v = log_odds_ratios("magnesium-infarction", 0.5)
    random = pooled.mean(y, v, pooled.tau_squared(y, v, "DL"))[0]
    # the note beside the value speaks of a spread about the Mantel-Haenszel centre: two digits do not tell them apart
    centre, w = np.log(np.sum(a * d / n) / np.sum(b * c / n)), 1 / v
    about = (np.sum(w * (y - centre) ** 2) - len(y) + 1) / (np.sum(w) - np.sum(w ** 2) / np.sum(w))
    print(f"magnesium-infarction about the Mantel-Haenszel centre: {np.exp(pooled.mean(y, v, about)[0]):.6g}")
    return {"published/OR/common/ratio": np.sum(a * d / n) / np.sum(b * c / n), "published/OR/random/ratio": np.exp(random)}


def teachers():
    y, v, weeks = column(held.rows("teacher-expectancy"), "effect", "variance", "weeks")
    b = pooled.fit(np.column_stack([np.ones(len(y)), weeks]), y, v, 0)[0]
    return {"published/tau2": pooled.tau_squared(y, v, "REML"), "published/weeks/intercept": b[0],
            "published/weeks/slope": b[1]}


off = []
for name, computed in {"agreement-two-judges": kappa(), "agreement-four-raters": intraclass(), "bcg-vaccine": bcg(),
                       "coaching-eight-schools": eight_schools(), "diuretics-pregnancy": diuretics(),
                       "magnesium-infarction": magnesium(), "teacher-expectancy": teachers()}.items():
    wanted = {key: one for key, one in held.expected(name).items() if key.startswith("published/")}
    if set(wanted) != set(computed):
        off.append(f"{name}: other values than {sorted(computed)}")
    for key, value in computed.items():
        printed = wanted[key]["value"]
        # the tolerance is 0.6 of the last digit printed
        unit = wanted[key]["tolerance"] / 0.6
        agrees = abs(value - printed) <= unit / 2 * 1.000001
        print(f"{name} {key}: printed {printed}, computed {value:.6g}" + ("" if agrees else "  DIFFERS"))
        if not agrees:
            off.append(f"{name} {key}")
sys.exit("\n".join(off) if off else 0)
