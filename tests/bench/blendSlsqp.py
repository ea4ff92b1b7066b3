"""Times SciPy's SLSQP on a problem of the shape that blend.bench.ts times first: 5 materials by 20
sizes, shares from 0 to 1 that sum to 1. Run it beside the bench, on the same quiet machine:

    OMP_NUM_THREADS=1 python3 tests/bench/blendSlsqp.py
"""
import time

import numpy as np
import scipy
from scipy.optimize import minimize

size = 0.002 * 40_000 ** (np.arange(20) / 19)
passing = np.array([[100 / (1 + (m / d) ** 1.5) for m in (0.01, 0.3, 1, 5, 20)] for d in size])
target = 100 * (size / 80) ** 0.35
times = []
for _ in range(300):
    start = time.perf_counter()
    found = minimize(
        lambda x: ((passing @ x - target) ** 2).sum(),
        np.full(5, 0.2),
        jac=lambda x: 2 * passing.T @ (passing @ x - target),
        method="SLSQP",
        bounds=[(0, 1)] * 5,
        constraints={"type": "eq", "fun": lambda x: x.sum() - 1, "jac": lambda _: np.ones(5)},
        options={"ftol": 1e-12, "maxiter": 200},
    )
    times.append(time.perf_counter() - start)
    assert found.success, found.message
print(f"SciPy {scipy.__version__} SLSQP: median {1e3 * np.median(times):.3f} ms over {len(times)} runs")
