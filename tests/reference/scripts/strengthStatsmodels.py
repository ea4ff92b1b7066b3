"""Fits strength curves with statsmodels and SciPy: the fixture ../strengthStatsmodels.json.

Run with the system Python: /usr/bin/python3 strengthStatsmodels.py. The versions used stand in it.
"""
import json
import pathlib
import platform

import numpy as np
import scipy
import statsmodels
import statsmodels.api as sm
from scipy import stats
from statsmodels.stats.diagnostic import het_breuschpagan

RNG = np.random.default_rng(512)
VERSIONS = {
    "python": platform.python_version(),
    "numpy": np.__version__,
    "scipy": scipy.__version__,
    "statsmodels": statsmodels.__version__,
}


def blocks():
    """Invented: four contents, three ages, batches that cross contents, scatter that grows."""
    rows = []
    for content in (4.0, 6.0, 8.0, 10.0):
        for age in (7.0, 28.0, 56.0):
            for batch in ("M1", "M2", "M3"):
                density = round(float(1900 + 30 * RNG.standard_normal()), 1)
                moisture = round(float(4 + 0.8 * RNG.standard_normal()), 2)
                mean = (0.2 + 0.3 * content) * (0.5 + 0.15 * np.log(age)) + 0.002 * (density - 1900)
                mean += {"M1": -0.1, "M2": 0.02, "M3": 0.08}[batch] - 0.05 * (moisture - 4)
                strength = round(float(mean * (1 + 0.08 * RNG.standard_normal())), 3)
                rows.append([content, age, batch, density, moisture, strength])
    return rows


def summary(fit, count):
    out = {
        "params": list(fit.params[:count]),
        "bse": list(fit.bse[:count]),
        "pvalues": list(fit.pvalues[:count]),
        "scale": float(np.sqrt(fit.scale)),
        "df": float(fit.df_resid),
    }
    return out


def bands(fit, exog, weights=1):
    frame = fit.get_prediction(exog, weights=weights).summary_frame(alpha=0.05)
    keys = ["mean", "mean_ci_lower", "mean_ci_upper", "obs_ci_lower", "obs_ci_upper"]
    return {key: list(frame[key]) for key in keys}


def fixture():
    rows = blocks()
    c, age, density, moisture, f = (np.array([row[i] for row in rows], float) for i in (0, 1, 3, 4, 5))
    batch = np.array([row[2] for row in rows])
    day = age == 28
    at = np.array([4.5, 6.5, 9.0])
    one = np.ones_like
    out = {"versions": VERSIONS, "blocks": rows, "at": list(at)}

    line = sm.OLS(f[day], sm.add_constant(c[day])).fit()
    influence = line.get_influence()
    out["linear"] = {
        **summary(line, 2),
        "r2": line.rsquared,
        "bands": bands(line, np.column_stack([one(at), at])),
        "studentised": list(influence.resid_studentized_external),
        "cooks": list(influence.cooks_distance[0]),
    }
    quad = sm.OLS(f[day], np.column_stack([one(c[day]), c[day], c[day] ** 2])).fit()
    out["quadratic"] = {**summary(quad, 3), "bands": bands(quad, np.column_stack([one(at), at, at**2]))}
    power = sm.OLS(np.log(f[day]), sm.add_constant(np.log(c[day]))).fit()
    out["power"] = {**summary(power, 2), "bands": bands(power, np.column_stack([one(at), np.log(at)]))}

    # Covariates from their value at 28 days, 1890 kg/m3 and 4 %, so that the first two are the curve there.
    whole = np.column_stack([one(c), c, np.log(age / 28), density - 1890, moisture - 4])
    fit = sm.OLS(f, whole).fit()
    asked = np.column_stack([one(at), at, 0 * at, 0 * at, 0 * at])
    out["covariates"] = {**summary(fit, 5), "bands": bands(fit, asked)}

    codes = np.column_stack([1.0 * (batch == m) - (batch == "M3") for m in ("M1", "M2")])
    fit = sm.OLS(f[day], np.column_stack([one(c[day]), c[day], codes[day]])).fit()
    asked = np.column_stack([one(at), at, 0 * at, 0 * at])
    out["batches"] = {**summary(fit, 4), "bands": bands(fit, asked)}

    # Scatter proportional to strength: weights renewed until they stand still.
    design = sm.add_constant(c[day])
    reference = f[day].mean()
    fit = sm.OLS(f[day], design).fit()
    for _ in range(200):
        fit = sm.WLS(f[day], design, weights=(reference / fit.fittedvalues) ** 2).fit()
    asked = np.column_stack([one(at), at])
    value = asked @ fit.params
    out["proportional"] = {**summary(fit, 2), "bands": bands(fit, asked, (reference / value) ** 2)}

    pulled = f[day].copy()
    pulled[4] += 2
    rlm = sm.RLM(pulled, design, M=sm.robust.norms.HuberT(1.345)).fit(maxiter=500, tol=1e-12)
    out["huber"] = {"pulledIndex": 4, "by": 2, "params": list(rlm.params)}

    residuals = line.resid
    groups = [list(residuals[c[day] == content]) for content in (4, 6, 8, 10)]
    lm = het_breuschpagan(residuals, sm.add_constant(line.fittedvalues))
    out["checks"] = {
        "shapiro": [
            {"values": list(map(float, values)), "w": float(w), "p": float(p)}
            for values in (
                [1.0, 1.2, 2.9],
                [2.1, 2.4, 2.2, 2.8, 2.5, 2.3, 4.9],
                list(np.round(RNG.standard_normal(9), 3)),
                list(np.round(RNG.standard_normal(16), 3)),
                list(np.round(RNG.exponential(size=40), 3)),
                list(np.round(RNG.standard_normal(300), 3)),
            )
            for w, p in [stats.shapiro(values)]
        ],
        "brownForsythe": [float(v) for v in stats.levene(*groups, center="median")],
        "breuschPagan": [float(lm[0]), float(lm[1])],
    }

    # Acceptance of a lot, mean - k s >= f, where a share p of the blocks lies below f.
    out["acceptance"] = [
        {"n": n, "k": k, "p": p, "accept": float(stats.nct.sf(k * n**0.5, n - 1, stats.norm.isf(p) * n**0.5))}
        for n in (3, 5, 10)
        for k in (0.8, 1.645, 2.336)
        for p in (0.01, 0.05, 0.2)
    ]
    # Power of the two-sided t test between two contents, s pooled over four contents.
    out["twoSamplePower"] = []
    for n in (3, 6, 12):
        df, delta = 4 * (n - 1), 0.3 / (0.25 * (2 / n) ** 0.5)
        t = stats.t.isf(0.025, df)
        power_value = stats.nct.sf(t, df, delta) + stats.nct.cdf(-t, df, delta)
        out["twoSamplePower"].append({"n": n, "sd": 0.25, "difference": 0.3, "power": float(power_value)})
    path = pathlib.Path(__file__).parent.parent / "strengthStatsmodels.json"
    path.write_text(json.dumps(out, indent=1) + "\n")


if __name__ == "__main__":
    fixture()
