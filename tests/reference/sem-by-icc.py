#!/usr/bin/env python3
"""Expected standard errors of measurement of the reliability report, by plain arithmetic on the published tables.

Tables: Shrout & Fleiss 1979, Psychol Bull 86:420-428, Table 2; Weir 2005, J Strength Cond Res 19:231-240, data set A.
Consistency: the root of the residual mean square. From the ICC: SD * sqrt(1 - ICC), where the SD (n - 1) is of all values
for the forms of one trial, and of the row means for the forms of the mean of k trials. MDC: z * sqrt(2) * SEM.
Run beside the tables: python3 sem-by-icc.py
"""
import csv
from math import sqrt
from pathlib import Path
from statistics import NormalDist, stdev

here = Path(__file__).parent


def table(name, columns):
    with open(here / name) as file:
        return [[float(row[column]) for column in columns] for row in csv.DictReader(file)]


def z(confidence):
    return NormalDist().inv_cdf((1 + confidence) / 2)


def tell(title, x):
    n, k = len(x), len(x[0])
    grand = sum(map(sum, x)) / (n * k)
    means = [sum(row) / k for row in x]
    trials = [sum(row[j] for row in x) / n for j in range(k)]
    total = sum((value - grand) ** 2 for row in x for value in row)
    rows = k * sum((m - grand) ** 2 for m in means)
    columns = n * sum((m - grand) ** 2 for m in trials)
    b, j = rows / (n - 1), columns / (k - 1)
    e, w = (total - rows - columns) / ((n - 1) * (k - 1)), (total - rows) / (n * (k - 1))
    icc = {
        '1,1': (b - w) / (b + (k - 1) * w),
        '2,1': (b - e) / (b + (k - 1) * e + k * (j - e) / n),
        '3,1': (b - e) / (b + (k - 1) * e),
        '1,k': (b - w) / b,
        '2,k': (b - e) / (b + (j - e) / n),
        '3,k': (b - e) / b,
    }
    spread = {'1': stdev([value for row in x for value in row]), 'k': stdev(means)}
    print(f"{title}: SD of all values {spread['1']:.6f}, of the row means {spread['k']:.6f}")
    print(f"  consistency {sqrt(e):.6f}, MDC 95 % {z(0.95) * sqrt(2 * e):.6f}")
    for form, r in icc.items():
        sem = spread[form[2]] * sqrt(1 - r)
        mdc = [z(c) * sqrt(2) * sem for c in (0.95, 0.90)]
        print(f'  {form}: ICC {r:.6f}, SEM {sem:.6f}, MDC 95 % {mdc[0]:.6f}, 90 % {mdc[1]:.6f}')


weir = table('weir_2005_set_a.csv', ['A1', 'A2'])
tell('Shrout & Fleiss 1979', table('shrout_fleiss_1979.csv', ['J1', 'J2', 'J3', 'J4']))
tell('Weir 2005, set A', weir)
tell('Weir 2005, set A without its first row', weir[1:])
