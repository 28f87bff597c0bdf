"""Quantiles of the normal distribution, of Student's t, of F and of chi-square to 17 digits, from error function, incomplete beta and incomplete gamma function at 40 digits (mpmath).

Independent of the program: run `python3 quantiles.py > quantiles.csv` with mpmath and scipy installed (scipy only gives
the starting point of the root search).
"""

import mpmath as mp
from scipy import stats

mp.mp.dps = 40


def t_below(t, df):
    t, df = mp.mpf(t), mp.mpf(df)
    half = mp.betainc(df / 2, mp.mpf(1) / 2, 0, df / (df + t * t), regularized=True) / 2
    return 1 - half if t > 0 else half


def f_below(x, a, b):
    x, a, b = mp.mpf(x), mp.mpf(a), mp.mpf(b)
    return mp.betainc(a / 2, b / 2, 0, a * x / (a * x + b), regularized=True)


def digits(x):
    return mp.nstr(x, 17, min_fixed=-3, max_fixed=12)


print("distribution,p,df1,df2,quantile")
for df in ["1", "1.5", "2", "3", "4.7", "9", "16", "17.7764735161785", "34", "100", "500.25", "5000", "1e6"]:
    for p in ["0.6", "0.9", "0.975", "0.995", "0.9995"]:
        start = stats.t.ppf(float(p), float(df))
        root = mp.findroot(lambda z: mp.log((1 - t_below(z, df)) / (1 - mp.mpf(p))), start)
        print(f"t,{p},{df},,{digits(root)}")
for a in ["1", "2", "4.3", "9", "15.07", "60", "499"]:
    for b in ["1", "2", "3.6", "15", "18.9", "120", "2000"]:
        for p in ["0.025", "0.5", "0.975", "0.995"]:
            start = stats.f.ppf(float(p), float(a), float(b))
            root = mp.findroot(lambda z: mp.log(f_below(z, a, b) / mp.mpf(p)), (start, start * (1 + 1e-6)))
            print(f"F,{p},{a},{b},{digits(root)}")
for p in ["1e-300", "1e-17", "1e-6", "0.001", "0.025", "0.2", "0.4999", "0.6", "0.975", "0.9999"]:
    root = mp.findroot(lambda z: mp.log(mp.erfc(-z / mp.sqrt(2)) / 2 / mp.mpf(p)), stats.norm.ppf(float(p)))
    print(f"normal,{p},,,{digits(root)}")
for df in ["1", "2", "3", "7", "14", "49.5", "200", "5000"]:
    for p in ["1e-9", "0.005", "0.025", "0.5", "0.975", "0.9999"]:
        half = mp.mpf(df) / 2
        below = lambda x: mp.gammainc(half, 0, x / 2, regularized=True)
        start = stats.chi2.ppf(float(p), float(df))
        root = mp.findroot(lambda z: mp.log(below(z) / mp.mpf(p)), (start, start * (1 + 1e-6)))
        print(f"chi2,{p},{df},,{digits(root)}")
