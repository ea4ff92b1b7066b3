"""Writes ../constrainedLeastSquares.json: 500 random problems with SciPy's answers.

Run with the system Python: /usr/bin/python3 constrainedLeastSquares.py. The versions stand in the file.
Kinds: "sum" (sum to one, bounds) and "general" (equality, bounds, inequalities) by SLSQP;
"nonnegative" by nnls; "bounds" by lsq_linear (BVLS). Numbers are rounded before solving, so both
sides see the same problem. `breach` is the largest violation of SciPy's own answer.
"""
import json
import pathlib
import platform

import numpy as np
import scipy
from scipy.optimize import lsq_linear, minimize, nnls

rng = np.random.default_rng(20240611)


def rounded(values):
    return np.round(values, 2) + 0.0


def breach(p, x):
    worst = 0.0
    if "E" in p:
        worst = max(worst, np.max(np.abs(np.array(p["E"]) @ x - p["f"])))
    if "G" in p:
        worst = max(worst, np.max(np.array(p["G"]) @ x - p["h"]))
    if "lower" in p:
        worst = max(worst, np.max(np.array(p["lower"]) - x))
    if "upper" in p:
        worst = max(worst, np.max(x - np.array(p["upper"])))
    return float(worst)


def slsqp(p, start):
    A, b = np.array(p["A"]), np.array(p["b"])
    constraints = [
        {"type": "eq", "fun": lambda x: np.array(p["E"]) @ x - p["f"], "jac": lambda x: np.array(p["E"])}
    ]
    if "G" in p:
        constraints.append(
            {"type": "ineq", "fun": lambda x: p["h"] - np.array(p["G"]) @ x, "jac": lambda x: -np.array(p["G"])}
        )
    return minimize(
        lambda x: np.sum((A @ x - b) ** 2),
        start,
        jac=lambda x: 2 * A.T @ (A @ x - b),
        bounds=list(zip(p["lower"], p["upper"])),
        constraints=constraints,
        method="SLSQP",
        options={"ftol": 1e-15, "maxiter": 1000},
    ).x


problems = []
for k in range(500):
    kind = ["sum", "nonnegative", "bounds", "general"][k % 4]
    n = int(rng.integers(2, 7))
    m = int(rng.integers(n, n + 5))
    A = rounded(rng.normal(size=(m, n)) * 3)
    b = rounded(rng.normal(size=m) * 3)
    p = {"kind": kind, "A": A.tolist(), "b": b.tolist()}
    if kind == "sum":
        p["E"], p["f"] = [[1.0] * n], [1.0]
        p["lower"] = rounded(rng.uniform(0, 0.5 / n, n)).tolist()
        p["upper"] = rounded(rng.uniform(1.5 / n, 1, n)).tolist()
        x = slsqp(p, np.full(n, 1 / n))
    elif kind == "nonnegative":
        p["lower"] = [0.0] * n
        x = nnls(A, b)[0]
    elif kind == "bounds":
        p["lower"] = rounded(rng.uniform(-1, 0, n)).tolist()
        p["upper"] = rounded(rng.uniform(0.05, 1, n)).tolist()
        x = lsq_linear(A, b, bounds=(p["lower"], p["upper"]), method="bvls", tol=1e-15).x
    else:
        inside = rounded(rng.uniform(-1, 1, n))
        p["lower"] = rounded(inside - rng.uniform(0, 1, n)).tolist()
        p["upper"] = rounded(inside + rng.uniform(0.02, 1, n)).tolist()
        E = rounded(rng.normal(size=(1, n)))
        G = rounded(rng.normal(size=(3, n)))
        p["E"], p["f"] = E.tolist(), np.round(E @ inside, 6).tolist()
        p["G"] = G.tolist()
        p["h"] = np.round(G @ inside + rng.uniform(0, 0.4, 3), 6).tolist()
        x = slsqp(p, inside)
    p["objective"] = float(np.sum((A @ x - b) ** 2))
    p["breach"] = breach(p, x)
    problems.append(p)

out = {
    "source": "scipy.optimize by tests/reference/scripts/constrainedLeastSquares.py",
    "versions": {"python": platform.python_version(), "numpy": np.__version__, "scipy": scipy.__version__},
    "problems": problems,
}
path = pathlib.Path(__file__).parent.parent / "constrainedLeastSquares.json"
path.write_text(json.dumps(out, separators=(",", ":")))
