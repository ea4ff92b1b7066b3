"""Writes ../distributions.json: values of distribution functions by SciPy.

Run with the system Python: /usr/bin/python3 distributions.py. The versions used stand in the file.
"""
import json
import pathlib
import platform

import numpy
import scipy
from scipy import stats

probabilities = [1e-6, 0.001, 0.05, 0.3, 0.5, 0.75, 0.95, 0.975, 0.9999]
degrees = [1, 2, 3.5, 9, 30, 400]
out = {
    "source": "scipy.stats by tests/reference/scripts/distributions.py",
    "versions": {
        "python": platform.python_version(),
        "numpy": numpy.__version__,
        "scipy": scipy.__version__,
    },
    # Probabilities of given values: SciPy's own t.ppf is good to some eleven digits only.
    "t": [
        [x, d, float(stats.t.cdf(x, d))]
        for x in [-9.5, -3.3, -1.7, -0.2, 0.0, 0.6, 2.1, 4.0]
        for d in degrees
    ],
    "normal": [[p, float(stats.norm.ppf(p))] for p in probabilities],
    "f": [
        [x, a, b, float(stats.f.cdf(x, a, b))]
        for x in [0.1, 1, 3, 12]
        for a in [1, 4, 18]
        for b in [2, 9, 60]
    ],
    "noncentralT": [
        [x * (abs(d) + 1), df, d, float(stats.nct.cdf(x * (abs(d) + 1), df, d))]
        for x in [0.3, 0.7, 1.0, 1.2, 2.0]
        for df in [1, 2, 5, 9, 29, 120]
        for d in [-1.0, 0.0, 0.5, 2.0, 5.2, 12.0, 30.0]
    ],
    "toleranceFactor": [
        [n, c, g, float(stats.nct.ppf(g, n - 1, stats.norm.ppf(c) * n**0.5) / n**0.5)]
        for n in [2, 3, 4, 5, 6, 8, 10, 15, 20, 30, 100]
        for c in [0.9, 0.95, 0.99]
        for g in [0.5, 0.75, 0.9, 0.95]
    ],
}
path = pathlib.Path(__file__).parent.parent / "distributions.json"
path.write_text(json.dumps(out))
