"""Writes large_counts.csv: functions of a formula at counts up to 1e9 (Poisson and gamma up to 1e300), 17 digits.

Independent of the program: mpmath at 50 digits. A sum of probabilities is added up term by term from its last one until
nothing changes; beta and gamma follow from sums of counts or symmetry; payments are written out as a schedule or as the
balance before and after.

Run from the folder tests/reference: python3 large_counts.py > large_counts.csv
"""
import mpmath as mp

mp.mp.dps = 50
one = mp.mpf(1)


def choose(n, k):
    return mp.loggamma(n + 1) - mp.loggamma(k + 1) - mp.loggamma(n - k + 1)


def down(at, k, ratio):
    """at + at r(k) + at r(k) r(k − 1) + …, r given as whole numbers above and below: whole numbers to 160 bits."""
    total = term = 1 << 160
    while k > 0 and term:
        above, below = ratio(k)
        term = term * above // below
        total += term
        k -= 1
    return at * mp.mpf(total) / mp.mpf(1 << 160)


def poisson(k, m, upto):
    a, b = m.as_integer_ratio()
    m = mp.mpf(m)
    at = mp.exp(k * mp.log(m) - m - mp.loggamma(k + 1))
    return down(at, k, lambda j: (j * b, a)) if upto else at


def binomial(k, n, p, upto):
    a, b = float(p).as_integer_ratio()
    p = mp.mpf(p)
    at = mp.exp(choose(n, k) + k * mp.log(p) + (n - k) * mp.log(1 - p))
    return down(at, k, lambda j: (j * (b - a), (n - j + 1) * a)) if upto else at


def negative(f, s, p, upto):
    a, b = float(p).as_integer_ratio()
    p = mp.mpf(p)
    at = mp.exp(choose(f + s - 1, f) + s * mp.log(p) + f * mp.log(1 - p))
    return down(at, f, lambda j: (j * b, (s + j - 1) * (b - a))) if upto else at


def hypergeometric(k, drawn, marked, all_, upto):
    at = mp.exp(choose(marked, k) + choose(all_ - marked, drawn - k) - choose(all_, drawn))
    ratio = lambda j: (j * (all_ - marked - drawn + j), (marked - j + 1) * (drawn - j + 1))
    return down(at, k, ratio) if upto else at


def line(name, *args):
    *given, value = args
    print(",".join([name, " ".join(str(a) for a in given), mp.nstr(value, 17, min_fixed=-3, max_fixed=15)]))


def owed(rate, periods, value, m):
    """What is owed after m payments at the end of each period."""
    q = 1 + mp.mpf(rate)
    return value * (q**periods - q**m) / (q**periods - 1)


def payments(rate, periods, value, start, end, at_start):
    """Interest and principal from start to end, as negative numbers."""
    r = mp.mpf(rate)
    pay = -value * r / (1 - (1 + r) ** -periods)
    if at_start:
        # the first payment is principal alone; the others are as at the end of the period before
        pay /= 1 + r
        grown = lambda m: (1 + r) ** (m - 1)
        left = lambda m: value if m == 0 else (value + pay) * grown(m) + pay * (grown(m) - 1) / r
    else:
        left = lambda m: owed(rate, periods, value, m)
    back = left(end) - left(start - 1)
    return pay * (end - start + 1) - back, back


print("function,arguments,value")
for upto in (True, False):
    for k, m in ((10**9, 1e9), (999900000, 1e9), (1000150000, 1e9), (200000, 199000.5), (0, 2.5), (7, 4.25)):
        line("POISSON.DIST", k, m, upto, poisson(k, m, upto))
    for k, n, p in ((5 * 10**8, 10**9, 0.5), (499900000, 10**9, 0.5), (1000, 10**6, 0.001), (3, 10, 0.3), (0, 12, 0.2)):
        line("BINOM.DIST", k, n, p, upto, binomial(k, n, p, upto))
    for f, s, p in ((10**9, 10**9, 0.5), (999900000, 10**9, 0.5), (4, 3, 0.4), (0, 5, 0.6)):
        line("NEGBINOM.DIST", f, s, p, upto, negative(f, s, p, upto))
    for k, d, m, n in ((3, 10, 8, 30), (7, 10, 25, 30), (250000, 500000, 500000, 10**6), (249000, 500000, 500000, 10**6)):
        line("HYPGEOM.DIST", k, d, m, n, upto, hypergeometric(k, d, m, n, upto))
# at least a of n = a + b − 1 with probability x
for x, a, b in ((0.5, 10**9, 10**9), (0.49999, 10**9, 10**9), (0.3, 4, 7)):
    line("BETA.DIST", x, a, b, True, 1 - binomial(a - 1, a + b - 1, x, True))
# P(a, x) = 1 − probability of at most a − 1 where x are expected
for a, x in ((10**9, 1e9), (10**9, 999900000.0), (3, 2.5)):
    line("GAMMA.DIST", x, a, 1, True, 1 - poisson(a - 1, x, True))
for args in ((0.005, 360, 100000, 1, 12, 0), (0.005, 360, 100000, 350, 360, 0), (0.005, 360, 100000, 1, 12, 1),
             (0.005, 360, 100000, 5, 360, 1), (0.00002, 5000, 1000, 1, 4000, 0), (0.00002, 5000, 1000, 3, 4000, 1)):
    interest, back = payments(*args)
    line("CUMIPMT", *args, interest)
    line("CUMPRINC", *args, back)
# nothing that a double can tell of the loan is paid back: interest alone
line("CUMIPMT", 0.005, 10**9, 1000, 1, 10**9 // 2, 0, -mp.mpf(0.005) * 1000 * (10**9 // 2))
