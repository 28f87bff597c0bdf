"""Writes builtins.csv: what numpy, scipy and plain counting give for the built-in functions that are checked against them.

Run from the folder tests/reference: python3 builtins.py > builtins.csv
"""
import csv
import sys

import numpy as np
import scipy
from scipy import stats


def column(name, what):
    with open(f"{name}.csv") as f:
        return np.array([float(row[what]) for row in csv.DictReader(f)])


out = csv.writer(sys.stdout, lineterminator="\n")
out.writerow(["formula", "expected", "tolerance", "by"])
by_scipy = f"scipy {scipy.__version__}, numpy {np.__version__}"


def line(formula, expected, tolerance="1e-12 rel", by=by_scipy):
    out.writerow([formula, repr(float(expected)), tolerance, by])


dist, speed = column("cars", "dist"), column("cars", "speed")
copper = column("copper_in_flour", "copper")

up = stats.rankdata(dist, method="min")
down = stats.rankdata(-dist, method="min")
mean_down = stats.rankdata(-dist, method="average")
for i in (0, 7, 22, 49):
    line(f"RANK({dist[i]:g}, cars.dist)", down[i], "exact")
    line(f"RANK.EQ({dist[i]:g}, cars.dist, 1)", up[i], "exact")
    line(f"RANK.AVG({dist[i]:g}, cars.dist)", mean_down[i], "exact")

# shares below, cut off after 9 digits as asked
for i in (0, 7, 22, 49):
    below = int(np.sum(dist < dist[i]))
    line(f"PERCENTRANK({'cars.dist'}, {dist[i]:g}, 9)", np.floor(below / (len(dist) - 1) * 1e9) / 1e9, "1e-9 abs", "counting")
    line(f"PERCENTRANK.EXC(cars.dist, {dist[i]:g}, 9)", np.floor((below + 1) / (len(dist) + 1) * 1e9) / 1e9, "1e-9 abs", "counting")

fit = stats.linregress(speed, dist)
line("INTERCEPT(cars.dist, cars.speed)", fit.intercept)
line("FORECAST(21.5, cars.dist, cars.speed)", fit.intercept + fit.slope * 21.5)
line("FORECAST.LINEAR(0, cars.dist, cars.speed)", fit.intercept)

line("KURT(copper_in_flour.copper)", stats.kurtosis(copper, bias=False), "1e-11 rel")
line("KURT(cars.dist)", stats.kurtosis(dist, bias=False), "1e-11 rel")
line("TRIMMEAN(copper_in_flour.copper, 0.2)", stats.trim_mean(copper, 0.1))
line("TRIMMEAN(cars.dist, 0.25)", stats.trim_mean(dist, 0.125))
line("MODE(copper_in_flour.copper)", stats.mode(copper).mode)
line("MODE(cars.dist)", stats.mode(dist).mode)
line("PERMUT(10, 3)", scipy.special.perm(10, 3, exact=True), "exact")
line("PERMUT(24, 24)", scipy.special.perm(24, 24, exact=True), "1e-14 rel")

counts = np.histogram(dist, [-np.inf, 10, 30, 60, 100, np.inf])[0]
# numpy's classes are closed below, those of FREQUENCY above: count once more for the limits themselves
edges = [10, 30, 60, 100]
up_to = [int(np.sum(dist <= e)) for e in edges]
for k, n in enumerate(np.diff([0, *up_to, len(dist)])):
    line(f"FREQUENCY(cars.dist, {{10;30;60;100}})@{k + 1}", n, "exact", "counting")

for what, constant in (("TRUE", True), ("FALSE", False)):
    x = np.column_stack([speed, speed**2])
    design = np.column_stack([x, np.ones(len(dist))]) if constant else x
    b, rss, *_ = np.linalg.lstsq(design, dist, rcond=None)
    df = len(dist) - design.shape[1]
    errors = np.sqrt(np.diag(np.linalg.inv(design.T @ design)) * rss[0] / df)
    tss = np.sum((dist - dist.mean()) ** 2) if constant else np.sum(dist**2)
    cells = [b[1], b[0], b[2] if constant else 0, errors[1], errors[0]]
    names = f"LINEST(cars.dist, squares(cars.speed), {what}, TRUE)"
    for at, value in zip((1, 2, 3, 4, 5), cells):
        line(f"{names}@{at}", value, "1e-9 rel" if value else "1e-12 abs")
    line(f"{names}@7", 1 - rss[0] / tss, "1e-9 rel")
    line(f"{names}@8", np.sqrt(rss[0] / df), "1e-9 rel")
    line(f"{names}@10", (tss - rss[0]) / 2 / (rss[0] / df), "1e-9 rel")
    line(f"{names}@11", df, "exact")
    line(f"{names}@13", tss - rss[0], "1e-9 rel")
    line(f"{names}@14", rss[0], "1e-9 rel")

line_at = np.polyval(np.polyfit(speed, dist, 1), [0, 10, 30])
for k, value in enumerate(line_at):
    line(f"TREND(cars.dist, cars.speed, {{0;10;30}})@{k + 1}", value, "1e-9 rel")

norris = "NIST StRD Norris, certified"
line("INTERCEPT(nist_norris.y, nist_norris.x)", -0.262323073774029, "1e-11 rel", norris)
line("LINEST(nist_norris.y, nist_norris.x)@1", 1.00211681802045, "1e-11 rel", norris)
line("LINEST(nist_norris.y, nist_norris.x, TRUE, TRUE)@3", 0.429796848199937e-03, "1e-11 rel", norris)
line("LINEST(nist_norris.y, nist_norris.x, TRUE, TRUE)@4", 0.232818234301152, "1e-11 rel", norris)
line("LINEST(nist_norris.y, nist_norris.x, TRUE, TRUE)@5", 0.999993745883712, "1e-11 rel", norris)
line("LINEST(nist_norris.y, nist_norris.x, TRUE, TRUE)@6", 0.884796396144373, "1e-11 rel", norris)
longley = "NIST StRD Longley, certified"
names = "deflator;gnp;unemployed;armed_forces;population;year"
for at, value in ((7, -3482258.63459582), (6, 15.0618722713733), (5, -0.358191792925910e-01), (4, -2.02022980381683),
                  (3, -1.03322686717359), (2, -0.511041056535807e-01), (1, 1829.15146461355)):
    line(f"LINEST(longley.employed, longley({names}))@{at}", value, "1e-8 rel", longley)
