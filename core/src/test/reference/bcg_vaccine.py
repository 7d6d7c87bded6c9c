"""Recomputes a good part of published/bcg-vaccine: python3 core/src/test/reference/bcg_vaccine.py

Log odds ratios, log risk ratios and risk differences of 13 trials; pooled by a common effect and by nine estimators of the
between-study variance; Hartung-Knapp, prediction, Q profile and profile likelihood; Mantel-Haenszel and Peto; regression on
latitude (Knapp and Hartung, Stat Med 2003;22:2693); influence of each study. By scipy: random_effects.py tells the formulas.
"""

import numpy as np
from scipy import stats

import held
import random_effects as pooled

DATA = held.rows("bcg-vaccine")
A, N1, C, N2 = (np.array([row[key] for row in DATA])
                for key in ("treated_events", "treated_total", "control_events", "control_total"))
B, D, N = N1 - A, N2 - C, N1 + N2
EFFECTS = {
    "OR": (np.log(A * D / (B * C)), 1 / A + 1 / B + 1 / C + 1 / D),
    "RR": (np.log(A / N1 / (C / N2)), 1 / A - 1 / N1 + 1 / C - 1 / N2),
    "RD": (A / N1 - C / N2, A * B / N1 ** 3 + C * D / N2 ** 3)}


def on_latitude(prefix, y, v):
    latitude = np.array([row["latitude"] for row in DATA])
    x = np.column_stack([np.ones(len(y)), latitude])
    found = {f"{prefix}/QE": pooled.fit(x, y, v, 0)[2]}
    for method in ("REML", "DL"):
        t = pooled.tau_squared(y, v, method, x)
        t0 = pooled.tau_squared(y, v, method)
        b, covariance, q, _ = pooled.fit(x, y, v, t)
        df = len(y) - 2
        scale = q / df
        found[f"{prefix}/{method}/tau2"] = t
        found[f"{prefix}/{method}/R2"] = 100 * max(0, (t0 - t) / t0)
        wald = b[1] ** 2 / covariance[1, 1]
        found[f"{prefix}/{method}/QM"] = wald
        found[f"{prefix}/{method}/QM/p"] = stats.chi2.sf(wald, 1)
        found[f"{prefix}/{method}/QM/KH/F"] = wald / scale
        for i, name in enumerate(("intercept", "latitude")):
            at, se = f"{prefix}/{method}/{name}", np.sqrt(covariance[i, i])
            kh, point = se * np.sqrt(scale), stats.t.ppf(0.975, df)
            found.update({at: b[i], f"{at}/se": se, f"{at}/p": 2 * stats.norm.sf(abs(b[i] / se)), f"{at}/KH/se": kh,
                          f"{at}/KH/p": 2 * stats.t.sf(abs(b[i] / kh), df),
                          f"{at}/KH/lower": b[i] - point * kh, f"{at}/KH/upper": b[i] + point * kh})
    return found


def influence(prefix, y, v, method):
    z, found = stats.norm.ppf(0.975), {}
    t = pooled.tau_squared(y, v, method)
    m, error, _, w = pooled.mean(y, v, t)
    for i in range(len(y)):
        rest = np.arange(len(y)) != i
        ti = pooled.tau_squared(y[rest], v[rest], method)
        mi, ei, _, _ = pooled.mean(y[rest], v[rest], ti)
        found.update({f"{prefix}/{i + 1}/{name}": value for name, value in {
            "without/estimate": mi, "without/tau2": ti, "without/lower": mi - z * ei, "without/upper": mi + z * ei,
            "without/Q": pooled.mean(y[rest], v[rest], 0)[2],
            "studentised": (y[i] - mi) / np.sqrt(v[i] + ti + ei ** 2),
            "cook": (m - mi) ** 2 / error ** 2, "covratio": ei ** 2 / error ** 2, "hat": w[i] / np.sum(w),
            "dffits": (m - mi) / np.sqrt(w[i] / np.sum(w) * (ti + v[i]))}.items()})
    return found


def without_single_effects():
    z = stats.norm.ppf(0.975)
    r, s = np.sum(A * D / N), np.sum(B * C / N)
    # Robins, Breslow and Greenland 1986; Greenland and Robins 1985
    p, q = (A + D) / N, (B + C) / N
    odds = np.log(r / s), np.sqrt(np.sum(p * A * D / N) / (2 * r * r)
                                  + np.sum(p * B * C / N + q * A * D / N) / (2 * r * s)
                                  + np.sum(q * B * C / N) / (2 * s * s))
    above, below = np.sum(A * N2 / N), np.sum(C * N1 / N)
    risk = np.log(above / below), np.sqrt(np.sum((N1 * N2 * (A + C) - A * C * N) / N ** 2) / (above * below))
    weight = N1 * N2 / N
    difference = (np.sum(weight * (A / N1 - C / N2)) / np.sum(weight),
                  np.sqrt(np.sum((A * B * N2 ** 3 + C * D * N1 ** 3) / (N1 * N2 * N ** 2))) / np.sum(weight))
    off, spread = A - N1 * (A + C) / N, N1 * N2 * (A + C) * (B + D) / (N ** 2 * (N - 1))
    peto = np.sum(off) / np.sum(spread), 1 / np.sqrt(np.sum(spread))
    found = {"MH/chi2": np.sum(off) ** 2 / np.sum(spread),
             "Peto/Q": np.sum(off ** 2 / spread) - np.sum(off) ** 2 / np.sum(spread)}
    for name, (m, e) in {"MH/OR": odds, "MH/RR": risk, "MH/RD": difference, "Peto": peto}.items():
        found.update({f"{name}/estimate": m, f"{name}/se": e, f"{name}/lower": m - z * e, f"{name}/upper": m + z * e})
    return found


computed = without_single_effects()
for prefix, (effects, variances) in EFFECTS.items():
    computed.update(pooled.values(prefix, effects, variances))
    for place in range(len(effects)):
        computed[f"{prefix}/study/{place + 1}/effect"] = effects[place]
        computed[f"{prefix}/study/{place + 1}/variance"] = variances[place]
for prefix in ("OR", "RR"):
    computed.update(on_latitude(f"{prefix}/latitude", *EFFECTS[prefix]))
computed.update(influence("RR/influence", *EFFECTS["RR"], "REML"))
computed.update(influence("OR/influence-DL", *EFFECTS["OR"], "DL"))
held.compare("bcg-vaccine", computed)
