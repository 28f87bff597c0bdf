"""Reliability of the knee-to-wall sample by numpy and scipy, for tests/session/reliability-sample.test.ts.

ICC(2,1), ICC(2,k) and ICC(3,1): Shrout & Fleiss 1979, Psychol Bull 86:420-428. SEM of consistency (root of the residual
mean square) and of agreement (SD * sqrt(1 - ICC)), MDC = z * sqrt(2) * SEM: Weir 2005, J Strength Cond Res 19:231-240.
Limits of agreement: Bland & Altman 1986, Lancet 1:307-310. Run from the project's folder:
python3 tests/reference/reliability_sample.py > tests/reference/reliability_sample.json
"""

import csv
import json

import numpy as np
from scipy.stats import norm

rows = list(csv.reader(open("sample-books/wall-test-reliability/trials.csv")))[2:]


def number(text):
    try:
        return float(text)
    except ValueError:
        return np.nan


x = np.array([[number(c) for c in r[1:7]] for r in rows])
designs = {
    "Tester A, three trials": x[:, 0:3],
    "Tester B, three trials": x[:, 3:6],
    "A and B, first trials": x[:, [0, 3]],
    "A and B, means of three": np.column_stack([x[:, 0:3].mean(axis=1), x[:, 3:6].mean(axis=1)]),
}


def of(table, form, confidence):
    t = table[~np.isnan(table).any(axis=1)]
    n, k = t.shape
    grand = t.mean()
    bms = k * ((t.mean(axis=1) - grand) ** 2).sum() / (n - 1)
    jms = n * ((t.mean(axis=0) - grand) ** 2).sum() / (k - 1)
    ems = ((t - t.mean(axis=1, keepdims=True) - t.mean(axis=0) + grand) ** 2).sum() / ((n - 1) * (k - 1))
    icc = {
        "2,1": (bms - ems) / (bms + (k - 1) * ems + k * (jms - ems) / n),
        "2,k": (bms - ems) / (bms + (jms - ems) / n),
        "3,1": (bms - ems) / (bms + (k - 1) * ems),
    }[form]
    spread = t.mean(axis=1).std(ddof=1) if form.endswith("k") else t.std(ddof=1)
    z = norm.ppf((1 + confidence) / 2)
    sem = float(np.sqrt(ems))
    agreement = float(spread * np.sqrt(1 - icc)) if form[0] == "2" else None
    out = {
        "n": n,
        "icc": float(icc),
        "spread": float(spread),
        "sem": sem,
        "detectable": float(z * np.sqrt(2) * sem),
        "sem_agreement": agreement,
        "detectable_agreement": None if agreement is None else float(z * np.sqrt(2) * agreement),
    }
    if k == 2:
        d = t[:, 0] - t[:, 1]
        out |= {"bias": float(d.mean()), "limit_low": float(d.mean() - z * d.std(ddof=1)), "limit_high": float(d.mean() + z * d.std(ddof=1))}
    return out


print(
    json.dumps(
        [
            {"form": form, "confidence": c, "design": name, **of(t, form, c)}
            for form, c in (("2,1", 0.95), ("2,k", 0.95), ("3,1", 0.9))
            for name, t in designs.items()
        ],
        indent=1,
    )
)
