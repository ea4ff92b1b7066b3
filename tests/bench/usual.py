"""The usual way beside ours, for bench.mjs: reads one task a line, as JSON, and answers with the seconds
of processor time (and of time) that it took, as JSON.

A task is {"name": …, "times": n}, one of TASKS, run n times after a warm-up; or {"run": [command, …],
"env": {…}}, a command with all that it starts.
"""
import json
import os
import pathlib
import platform
import resource
import subprocess
import sys
import time

sys.path.insert(0, str(pathlib.Path(__file__).parent.parent / "reference" / "scripts"))


def numeric_tasks():
    import numpy as np
    import scipy
    import statsmodels
    import statsmodels.api as sm
    from gradingScipy import MODELS, SIZES, fit, noisy
    from scipy import stats
    from scipy.optimize import minimize

    model = next(each for each in MODELS if each[0] == "fredlund")
    measured = np.array(noisy(model))
    values, _ = fit(model, measured, model[6], False)
    mean = model[1](np.array(SIZES), *values)
    rng = np.random.default_rng(1)

    def resample():
        for _ in range(1000):
            fit(model, mean + rng.choice(measured - mean, len(mean)), values, False)

    size = 0.002 * 40_000 ** (np.arange(20) / 19)
    passing = np.array([[100 / (1 + (m / d) ** 1.5) for m in (0.01, 0.3, 1, 5, 20)] for d in size])
    target = 100 * (size / 80) ** 0.35

    def blend():
        found = minimize(
            lambda x: ((passing @ x - target) ** 2).sum(),
            np.full(5, 0.2),
            jac=lambda x: 2 * passing.T @ (passing @ x - target),
            method="SLSQP",
            bounds=[(0, 1)] * 5,
            constraints={"type": "eq", "fun": lambda x: x.sum() - 1, "jac": lambda _: np.ones(5)},
            options={"ftol": 1e-12, "maxiter": 200},
        )
        assert found.success, found.message

    content = np.array([4 + 1.5 * (i % 5) for i in range(60)])
    strength = 0.3 + 0.35 * content + 0.25 * rng.standard_normal(60)
    at = sm.add_constant(np.linspace(4, 10, 61))

    def line():
        fitted = sm.OLS(strength, sm.add_constant(content)).fit()
        fitted.conf_int(), fitted.pvalues, fitted.rsquared, fitted.aic
        influence = fitted.get_influence()
        influence.hat_matrix_diag, influence.resid_studentized_internal, influence.cooks_distance

    def two_bands():
        line = sm.OLS(strength, sm.add_constant(content)).fit()
        predicted = line.get_prediction(at)
        predicted.summary_frame(alpha=0.05)
        return line, predicted

    def all_bands():
        line, predicted = two_bands()
        root = predicted.se_mean / line.mse_resid**0.5
        stats.nct.ppf(0.95, line.df_resid, stats.norm.ppf(0.95) / root) * root

    versions = {"python": platform.python_version(), "numpy": np.__version__,
                "scipy": scipy.__version__, "statsmodels": statsmodels.__version__}
    tasks = {"fit": lambda: fit(model, measured, model[6], False), "resample": resample,
             "blend": blend, "line": line, "all-bands": all_bands}
    return tasks, versions


def spent(who):
    used = resource.getrusage(who)
    return used.ru_utime + used.ru_stime


def command(words, env):
    before, start = spent(resource.RUSAGE_CHILDREN), time.perf_counter()
    done = subprocess.run(words, env={**os.environ, **env}, stdout=subprocess.PIPE,
                          stderr=subprocess.STDOUT, text=True)
    if done.returncode != 0:
        return {"failed": done.stdout[-2000:]}
    return {"cpu": spent(resource.RUSAGE_CHILDREN) - before, "wall": time.perf_counter() - start}


try:
    TASKS, VERSIONS = numeric_tasks()
except ModuleNotFoundError as missing:
    TASKS, VERSIONS = {}, {"missing": missing.name}
print(json.dumps(VERSIONS), flush=True)
for line in sys.stdin:
    task = json.loads(line)
    if "run" in task:
        print(json.dumps(command(task["run"], task.get("env", {}))), flush=True)
        continue
    run = TASKS.get(task["name"])
    if run is None:
        print(json.dumps({"failed": "not on this machine"}), flush=True)
        continue
    run()
    before, start = spent(resource.RUSAGE_SELF), time.perf_counter()
    for _ in range(task["times"]):
        run()
    print(json.dumps({"cpu": (spent(resource.RUSAGE_SELF) - before) / task["times"],
                      "wall": (time.perf_counter() - start) / task["times"]}), flush=True)
