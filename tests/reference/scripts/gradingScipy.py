"""Fits grading models with SciPy: the fixture ../gradingScipy.json. The bench takes its fits too.

Run with the system Python: /usr/bin/python3 gradingScipy.py. The versions used stand in it.
"""
import json
import pathlib
import platform

import numpy as np
import scipy
from scipy.optimize import least_squares
from scipy.special import ndtr

SIZES = [0.001 * 1.7**k for k in range(20)]
DM = 1e-4


def fredlund(d, a, n, m, dr):
    fine = np.log1p(dr / d) / np.log1p(dr / DM)
    return 100 * np.log(np.e + (a / d) ** n) ** -m * (1 - fine**7)


def skaggs(d, f, u, c):
    r = np.maximum(0, d / 0.002 - 1)
    return 100 / (1 + (1 / f - 1) * np.exp(-u * r**c))


# Name, function, which parameters step by their logarithm, lower, upper, true values, SciPy's start.
MODELS = [
    ("power", lambda d, D, n: np.where(d >= D, 100, 100 * (d / D) ** n), [1, 0],
     [1e-3, 0.01], [1e3, 5], [12, 0.32], [16, 0.5]),
    ("lognormal", lambda d, md, s: 100 * ndtr(np.log(d / md) / s), [1, 0],
     [1e-6, 0.02], [1e4, 15], [0.12, 2.1], [0.3, 1.5]),
    ("weibull", lambda d, k, n: -100 * np.expm1(-((d / k) ** n)), [1, 0],
     [1e-6, 0.02], [1e4, 20], [0.4, 0.6], [0.2, 1]),
    ("haverkamp-parlange", lambda d, g, N, M: 100 * (1 + (g / d) ** N) ** -M, [1, 0, 0],
     [1e-6, 0.05, 0.005], [1e4, 30, 30], [0.9, 0.9, 0.5], [0.5, 1.5, 0.5]),
    ("fredlund", fredlund, [1, 0, 0, 1],
     [1e-5, 0.05, 0.02, 1e-6], [1e4, 20, 20, 10], [0.5, 1.4, 0.9, 0.004], [0.6, 2, 1, 0.001]),
    ("skaggs", skaggs, [0, 1, 0],
     [0.0005, 1e-8, 0.02], [0.999, 1e3, 5], [0.15, 0.5, 0.35], [0.2, 0.4, 0.4]),
    ("bimodal-lognormal",
     lambda d, w, a, s, b, t: 100 * (w * ndtr(np.log(d / a) / s) + (1 - w) * ndtr(np.log(d / b) / t)),
     [0, 1, 0, 1, 0], [1e-3, 1e-6, 0.05, 1e-6, 0.05], [0.999, 1e4, 10, 1e4, 10],
     [0.4, 0.008, 0.9, 1.5, 1.0], [0.5, 0.01, 0.7, 1, 0.7]),
]


def steps(values, log):
    return np.array([np.log(v) if l else v for v, l in zip(values, log)], float)


def fit(model, y, start, tight):
    name, f, log, low, high, _, _ = model
    d = np.array(SIZES)
    mask = np.array(log, bool)

    def residual(p):
        v = np.where(mask, np.exp(np.where(mask, p, 0)), p)
        return f(d, *v) - y

    tolerance = 1e-14 if tight else 1e-8
    found = least_squares(residual, steps(start, log), bounds=(steps(low, log), steps(high, log)),
                          x_scale="jac", jac="3-point" if tight else "2-point",
                          ftol=tolerance, xtol=tolerance, gtol=tolerance, max_nfev=2000)
    return [float(np.exp(p) if l else p) for p, l in zip(found.x, log)], float(2 * found.cost)


def noisy(model, seed=11):
    """Points of a model with errors of 0.4 points, rounded so that both languages read the same."""
    rng = np.random.default_rng(seed)
    y = model[1](np.array(SIZES), *model[5]) + 0.4 * rng.standard_normal(len(SIZES))
    return [round(float(v), 4) for v in np.clip(y, 0.01, 99.99)]


versions = {"python": platform.python_version(), "numpy": np.__version__, "scipy": scipy.__version__}

if __name__ == "__main__":
    cases = []
    for model in MODELS:
        y = noisy(model)
        values, rss = fit(model, np.array(y), model[6], True)
        cases.append({"model": model[0], "passingPct": y, "values": values, "residualSumOfSquares": rss})
    out = {"source": "scipy.optimize.least_squares by tests/reference/scripts/gradingScipy.py",
           "versions": versions, "sizesMm": SIZES, "cases": cases}
    target = pathlib.Path(__file__).parent.parent / "gradingScipy.json"
    target.write_text(json.dumps(out, indent=1) + "\n")
