"""Direct and indirect evidence of pairs that studies of three arms hold, and the flow through a network, by whole matrices.

Symmetrical side-splitting: White, Stata J 2015;15:951; one column more in generalised least squares. Flow: the row of
the hat matrix (Koenig, Krahn and Binder, Stat Med 2013;32:5414), by the Laplacian of the arms' weights.
The eight invented studies of the class Networks: log odds, common effect.
"""
import numpy as np
from scipy import stats

ROWS = """A frame 6 40|A nail 24 42|A plate 9 38|B frame 7 25|B nail 11 24|C nail 12 51|C plate 23 49
D plate 6 30|D graft 12 31|D frame 10 29|E graft 15 35|E nail 14 33|F frame 5 20|F nail 4 22
G frame 15 30|G graft 9 28|H nail 18 44|H plate 9 40""".replace("\n", "|").split("|")
NAMES = ["frame", "graft", "nail", "plate"]
arms = [(s, t, float(e), float(n)) for s, t, e, n in (row.split() for row in ROWS)]
studies = sorted({a[0] for a in arms})

# Arm by arm: a free mean a study, a column a treatment but the first.
y = np.array([np.log(e / (n - e)) for _, _, e, n in arms])
w = np.diag([1 / (1 / e + 1 / (n - e)) for _, _, e, n in arms])
base = np.array([[float(a[0] == s) for s in studies] for a in arms])
treat = np.array([[float(a[1] == t) for t in NAMES[1:]] for a in arms])


def fit(x):
    cov = np.linalg.inv(x.T @ w @ x)
    return cov @ x.T @ w @ y, cov


def told(name, c, b, cov):
    print(name, c @ b, np.sqrt(c @ cov @ c))


def split(one, other):
    both = {s for s in studies if {one, other} <= {a[1] for a in arms if a[0] == s}}
    delta = np.array([(0.5 * (a[1] == one) - 0.5 * (a[1] == other)) * (a[0] in both) for a in arms])
    b, cov = fit(np.column_stack([base, treat, delta]))
    c = np.zeros(len(b))
    for name, sign in ((one, 1), (other, -1)):
        if name != NAMES[0]:
            c[len(studies) + NAMES.index(name) - 1] = sign
    told(f"{one} less {other}: indirect", c, b, cov)
    c[-1] = 1
    told(f"{one} less {other}: direct", c, b, cov)
    c[:] = 0
    c[-1] = 1
    told(f"{one} less {other}: difference", c, b, cov)
    print("p", 2 * stats.norm.sf(abs(c @ b) / np.sqrt(c @ cov @ c)))


split("nail", "plate")
split("frame", "nail")
split("nail", "graft")

# Contributions to graft less plate: weights of pairs w_i w_j / sum w of a study, the flow from graft to plate.
weights = np.zeros((4, 4))
for s in studies:
    own = [(NAMES.index(a[1]), 1 / (1 / a[2] + 1 / (a[3] - a[2]))) for a in arms if a[0] == s]
    for i, u in own:
        for j, v in own:
            if i != j:
                weights[i, j] += u * v / sum(k for _, k in own)
laplace = np.diag(weights.sum(1)) - weights
start, end = NAMES.index("graft"), NAMES.index("plate")
current = np.zeros(4)
current[start], current[end] = 1, -1
heights = np.linalg.pinv(laplace) @ current
flow = np.maximum(0, weights * (heights[:, None] - heights[None, :]))
shares = {}
while True:
    ways = [[start]]
    done = None
    while ways and not done:
        way = ways.pop(0)
        if way[-1] == end:
            done = way
        else:
            ways += [way + [j] for j in range(4) if flow[way[-1], j] > 1e-12 and j not in way]
    if not done:
        break
    stream = min(flow[a, b] for a, b in zip(done, done[1:]))
    for a, b in zip(done, done[1:]):
        flow[a, b] -= stream
        key = tuple(sorted((NAMES[a], NAMES[b])))
        shares[key] = shares.get(key, 0) + stream / (len(done) - 1)
print({k: round(100 * v, 10) for k, v in shares.items()})
