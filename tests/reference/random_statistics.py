"""Expected values for random data from numpy and scipy, independent of the program.

Run `python3 random_statistics.py > random_statistics.csv`. Routes: scipy.stats for t tests, correlations and
distributions; numpy least squares for regressions; the mean squares of an intraclass correlation by the computing formulas
of a textbook (total less between less trials), its limits by McGraw & Wong 1996, Table 7.
"""

import csv
import sys

import numpy as np
from scipy import stats

random = np.random.default_rng(20260214)
out = csv.writer(sys.stdout, lineterminator="\n")
out.writerow(["formula", "expected", "tolerance"])


def array(values):
    rows = np.atleast_2d(np.asarray(values).T).T
    return "{" + ";".join(",".join(repr(float(v)) for v in row) for row in rows) + "}"


def emit(formula, value, tolerance="1e-9 rel"):
    out.writerow([formula, repr(float(value)), tolerance])


def icc(x, form, confidence):
    n, k = x.shape
    total = (x**2).sum() - x.sum() ** 2 / (n * k)
    rows = (x.sum(axis=1) ** 2).sum() / k - x.sum() ** 2 / (n * k)
    columns = (x.sum(axis=0) ** 2).sum() / n - x.sum() ** 2 / (n * k)
    msr, msc = rows / (n - 1), columns / (k - 1)
    mse = (total - rows - columns) / ((n - 1) * (k - 1))
    msw = (total - rows) / (n * (k - 1))
    f = lambda a, b: stats.f.ppf(1 - (1 - confidence) / 2, a, b)
    many = form.endswith("k")
    if form[0] in "13":
        error, df = (msw, n * (k - 1)) if form[0] == "1" else (mse, (n - 1) * (k - 1))
        value = (msr - error) / msr if many else (msr - error) / (msr + (k - 1) * error)
        low, high = msr / error / f(n - 1, df), msr / error * f(df, n - 1)
        if many:
            return value, 1 - 1 / low, 1 - 1 / high
        return value, (low - 1) / (low + k - 1), (high - 1) / (high + k - 1)
    if many:
        value = (msr - mse) / (msr + (msc - mse) / n)
        c, d = value / (n * (1 - value)), 1 + value * (n - 1) / (n * (1 - value))
        v = (c * msc + d * mse) ** 2 / ((c * msc) ** 2 / (k - 1) + (d * mse) ** 2 / ((n - 1) * (k - 1)))
        low, high = f(n - 1, v), f(v, n - 1)
        return (
            value,
            n * (msr - low * mse) / (low * (msc - mse) + n * msr),
            n * (high * msr - mse) / (msc - mse + n * high * msr),
        )
    value = (msr - mse) / (msr + (k - 1) * mse + k * (msc - mse) / n)
    a, b = k * value / (n * (1 - value)), 1 + k * value * (n - 1) / (n * (1 - value))
    v = (a * msc + b * mse) ** 2 / ((a * msc) ** 2 / (k - 1) + (b * mse) ** 2 / ((n - 1) * (k - 1)))
    low, high = f(n - 1, v), f(v, n - 1)
    noise = k * msc + (k * n - k - n) * mse
    return (
        value,
        n * (msr - low * mse) / (low * noise + n * msr),
        n * (high * msr - mse) / (noise + n * high * msr),
    )


for n, k, shift in [(5, 2, 0), (8, 3, 1.5), (12, 2, 4), (6, 5, 0.3)]:
    x = np.round(38 + 4 * random.standard_normal((n, 1)) + 1.5 * random.standard_normal((n, k)) + shift * np.arange(k), 1)
    for form in ["1,1", "2,1", "3,1", "1,k", "2,k", "3,k"]:
        for confidence in [0.95, 0.9]:
            value, low, high = icc(x, form, confidence)
            if confidence == 0.95:
                emit(f'TEST.ICC({array(x)}, "{form}")', value, "1e-9 abs")
            emit(f'TEST.ICC.LOW({array(x)}, "{form}", {confidence})', low, "1e-8 abs")
            emit(f'TEST.ICC.HIGH({array(x)}, "{form}", {confidence})', high, "1e-8 abs")

for na, nb, gap in [(3, 9, 0.5), (12, 5, 6), (30, 30, 2), (2, 2, 1)]:
    a = np.round(random.normal(40, 3, na), 1)
    b = np.round(random.normal(40 + gap, 6, nb), 1)
    test = stats.ttest_ind(a, b, equal_var=False)
    interval = test.confidence_interval(0.95)
    pair = f"{array(a)}, {array(b)}"
    emit(f'COHORT.WELCH({pair}, "t")', test.statistic)
    emit(f'COHORT.WELCH({pair}, "df")', test.df)
    emit(f"COHORT.WELCH({pair})", test.pvalue)
    emit(f'COHORT.WELCH({pair}, "low")', interval.low)
    emit(f'COHORT.WELCH({pair}, "high")', interval.high)

for n, noise in [(5, 2.0), (12, 5.0), (40, 1.0), (25, 30.0)]:
    x = np.round(random.normal(45, 4, n))
    y = np.round(1.2 * x + random.normal(0, noise, n))
    pair = f"{array(x)}, {array(y)}"
    r = stats.pearsonr(x, y)
    rho = stats.spearmanr(x, y)
    emit(f"COHORT.R({pair})", r.statistic)
    emit(f'COHORT.R({pair}, "p")', r.pvalue, "1e-8 rel")
    emit(f'COHORT.R({pair}, "low")', r.confidence_interval(0.95).low)
    emit(f'COHORT.R({pair}, "high")', r.confidence_interval(0.95).high)
    emit(f'COHORT.R({pair}, "r", "spearman")', rho.statistic)
    emit(f'COHORT.R({pair}, "p", "spearman")', rho.pvalue, "1e-8 rel")
    line = stats.linregress(x, y)
    emit(f"COHORT.FIT({pair})", line.slope)
    emit(f'COHORT.FIT({pair}, "intercept")', line.intercept, "1e-8 abs")
    emit(f'COHORT.FIT({pair}, "r2")', line.rvalue**2, "1e-9 abs")
    slope = stats.theilslopes(y, x)
    emit(f'TRAIN.TREND({pair}, , , , , "theil-sen")', 7 * slope.slope)
    emit(f"TRAIN.TREND({pair})", 7 * line.slope)
    value = float(np.round(x[0] + 1.3, 1))
    emit(f"COHORT.PERCENTILE({float(x[0])!r}, {array(x)})", stats.percentileofscore(x, x[0], kind="mean"))
    emit(f"COHORT.Z({value!r}, {array(x)})", (value - x.mean()) / x.std(ddof=1))
    emit(f"COHORT.TRIMMED({array(y)}, 0.15)", stats.trim_mean(y, 0.15))
    emit(f"COHORT.MAD({array(y)})", 1.4826 * stats.median_abs_deviation(y))

for n, p in [(9, 2), (20, 3), (6, 4)]:
    x = np.round(random.normal(50, 8, (n, p)), 1)
    y = np.round(x @ np.arange(1, p + 1) * 0.3 + random.normal(0, 2, n), 1)
    design = np.column_stack([np.ones(n), x])
    beta, rss, _, _ = np.linalg.lstsq(design, y, rcond=None)
    see = float(np.sqrt(rss[0] / (n - p - 1)))
    errors = see * np.sqrt(np.diag(np.linalg.inv(design.T @ design)))
    both = f"{array(y)}, {array(x)}"
    for j in range(p + 1):
        emit(f"COHORT.REGRESS({both})@{j + 1}", beta[j], "1e-8 rel")
        emit(f'COHORT.REGRESS({both}, "se")@{j + 1}', errors[j], "1e-8 rel")
    emit(f'COHORT.REGRESS({both}, "see")', see, "1e-8 rel")
    emit(f'COHORT.REGRESS({both}, "r2")', 1 - rss[0] / ((y - y.mean()) ** 2).sum(), "1e-9 abs")

for n, rise, noise in [(4, 0.15, 0.3), (8, 0.1, 0.8), (20, -0.05, 1.0)]:
    days = 46000 + np.cumsum(random.integers(1, 9, n))
    values = np.round(9 + rise * (days - days[0]) + random.normal(0, noise, n), 1)
    pair = f"{array(days)}, {array(values)}"
    line = stats.linregress(days - days[0], values)
    half = stats.t.ppf(0.975, n - 2) * line.stderr
    assert abs(line.slope) > half
    target = round(float(values[-1] + 20 * rise), 1)
    emit(f"TEST.REACHED({pair}, {target})", days[0] + (target - line.intercept) / line.slope, "1e-7 abs")
    emit(f'TEST.REACHED({pair}, {target}, "slope")', 7 * line.slope)
    emit(f'TEST.REACHED({pair}, {target}, "low")', 7 * (line.slope - half))
    emit(f'TEST.REACHED({pair}, {target}, "high")', 7 * (line.slope + half))
