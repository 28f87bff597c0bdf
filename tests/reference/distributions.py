"""Writes distributions.csv: 200 random arguments of each distribution function and test of a formula, with values to 17 digits.

Independent of the program: mpmath at 40 digits (incomplete beta and gamma functions, error function), from the definitions.
Each line gives a function, its arguments and the value. Quantiles are made the other way round: an argument is drawn, its
probability is computed, rounded to a double, and one Newton step at 40 digits gives the quantile of that double.

Run from the folder tests/reference: python3 distributions.py > distributions.csv
"""
import random

import mpmath as mp

mp.mp.dps = 40
random.seed(20260)
half = mp.mpf(1) / 2


def t_upper(t, df):
    """P(T > t) for t > 0."""
    return mp.betainc(df / 2, half, 0, df / (df + t * t), regularized=True) / 2


def t_density(t, df):
    return mp.exp(mp.loggamma((df + 1) / 2) - mp.loggamma(df / 2) - (df + 1) / 2 * mp.log1p(t * t / df)) / mp.sqrt(df * mp.pi)


def f_below(x, a, b):
    return mp.betainc(a / 2, b / 2, 0, a * x / (a * x + b), regularized=True)


def f_above(x, a, b):
    return mp.betainc(b / 2, a / 2, 0, b / (a * x + b), regularized=True)


def f_density(x, a, b):
    return mp.exp(a / 2 * mp.log(a) + b / 2 * mp.log(b) + (a / 2 - 1) * mp.log(x) - (a + b) / 2 * mp.log(a * x + b)
                  - mp.loggamma(a / 2) - mp.loggamma(b / 2) + mp.loggamma((a + b) / 2))


def c_below(x, k):
    return mp.gammainc(k / 2, 0, x / 2, regularized=True)


def c_above(x, k):
    return mp.gammainc(k / 2, x / 2, mp.inf, regularized=True)


def c_density(x, k):
    return mp.exp((k / 2 - 1) * mp.log(x) - x / 2 - k / 2 * mp.log(2) - mp.loggamma(k / 2))


def n_below(z):
    return mp.erfc(-z / mp.sqrt(2)) / 2


def n_density(z):
    return mp.exp(-z * z / 2) / mp.sqrt(2 * mp.pi)


def digits(x):
    return mp.nstr(mp.mpf(x), 17, min_fixed=-3, max_fixed=12)


def line(name, args, value):
    # nothing that a double cannot tell from 0
    if not 1e-290 < abs(value) < 1e290:
        return False
    given = " ".join(repr(a) for a in args)
    print(",".join([name, f'"{given}"' if "," in given else given, digits(value)]))
    return True


def many(name, draw):
    """200 lines; draw gives arguments and value, or None to be asked again."""
    done = 0
    while done < 200:
        drawn = draw()
        if drawn and line(name, *drawn):
            done += 1


def spread(low, high):
    return float(f"{10 ** random.uniform(low, high):.6g}")


def freedom():
    return int(10 ** random.uniform(0, 3))


def inverse(x, tail, density, sign):
    """The double nearest to the tail at x, and where the tail is that double: two Newton steps."""
    p = float(tail(x))
    if not 1e-280 < p < 1:
        return None
    # near 1 the double may be far from the tail, next to what is left of it
    for _ in range(9):
        x = x + sign * (mp.mpf(p) - tail(x)) / density(x)
    return p, x


def two(x, k, tail, density, sign=1):
    got = inverse(mp.mpf(x), lambda v: tail(v, mp.mpf(k)), lambda v: density(v, mp.mpf(k)), sign)
    return got and ([got[0], k], got[1])


def three(x, a, b, tail, sign=1):
    got = inverse(mp.mpf(x), lambda v: tail(v, mp.mpf(a), mp.mpf(b)), lambda v: f_density(v, mp.mpf(a), mp.mpf(b)), sign)
    return got and ([got[0], a, b], got[1])


def of(f, *args):
    return f(*(mp.mpf(a) for a in args))


def t_below(t, k):
    return t_upper(-t, k) if t < 0 else 1 - t_upper(t, k)


def with_args(make, f):
    def draw():
        args = make()
        return list(args), f(*args)
    return draw


t_args = lambda: (spread(-2, 1.6), freedom())
signed = lambda: (random.choice([-1, 1]) * spread(-2, 1.6), freedom())
f_args = lambda: (spread(-2, 2), freedom(), freedom())
c_args = lambda: (lambda k: (float(f"{k * 10 ** random.uniform(-1, 0.6):.6g}"), k))(freedom())
z_arg = lambda: float(f"{random.uniform(-36, 8):.6g}")

print("function,arguments,value")
many("T.DIST", with_args(lambda: (*signed(), True), lambda t, k, _: of(t_below, t, k)))
many("T.DIST", with_args(lambda: (*signed(), False), lambda t, k, _: of(t_density, t, k)))
many("T.DIST.2T", with_args(t_args, lambda t, k: 2 * of(t_upper, t, k)))
many("T.DIST.RT", with_args(t_args, lambda t, k: of(t_upper, t, k)))
many("TDIST", with_args(lambda: (*t_args(), random.choice([1, 2])), lambda t, k, n: n * of(t_upper, t, k)))
many("T.INV", lambda: (lambda a: two(*a, t_below, t_density))(signed()))
for name in ("T.INV.2T", "TINV"):
    many(name, lambda: (lambda a: two(*a, lambda t, k: 2 * t_upper(t, k), lambda t, k: 2 * t_density(t, k), -1))(t_args()))
many("F.DIST", with_args(lambda: (*f_args(), True), lambda x, a, b, _: of(f_below, x, a, b)))
many("F.DIST", with_args(lambda: (*f_args(), False), lambda x, a, b, _: of(f_density, x, a, b)))
for name in ("F.DIST.RT", "FDIST"):
    many(name, with_args(f_args, lambda x, a, b: of(f_above, x, a, b)))
many("F.INV", lambda: three(*f_args(), f_below))
for name in ("F.INV.RT", "FINV"):
    many(name, lambda: three(*f_args(), f_above, -1))
many("CHISQ.DIST", with_args(lambda: (*c_args(), True), lambda x, k, _: of(c_below, x, k)))
many("CHISQ.DIST", with_args(lambda: (*c_args(), False), lambda x, k, _: of(c_density, x, k)))
for name in ("CHISQ.DIST.RT", "CHIDIST"):
    many(name, with_args(c_args, lambda x, k: of(c_above, x, k)))
many("CHISQ.INV", lambda: two(*c_args(), c_below, c_density))
for name in ("CHISQ.INV.RT", "CHIINV"):
    many(name, lambda: two(*c_args(), c_above, c_density, -1))
for name in ("NORM.S.DIST", "NORMSDIST"):
    many(name, with_args(lambda: (z_arg(), True), lambda z, _: of(n_below, z)))
many("NORM.S.DIST", with_args(lambda: (z_arg(), False), lambda z, _: of(n_density, z)))
for name in ("NORM.S.INV", "NORMSINV"):
    many(name, lambda: (lambda got: got and ([got[0]], got[1]))(inverse(mp.mpf(z_arg()), n_below, n_density, 1)))
many("CONFIDENCE.T", lambda: (lambda t, k, sd: (lambda got: got and ([got[0][0], sd, k + 1], got[1] * mp.mpf(sd) / mp.sqrt(k + 1)))(
    two(t, k, lambda v, d: 2 * t_upper(v, d), lambda v, d: 2 * t_density(v, d), -1)))(*t_args(), spread(-1, 2)))


def between(z):
    return mp.erf(z / mp.sqrt(2)) / 2


def log_args():
    return (spread(-3, 3), float(f"{random.uniform(-2, 2):.6g}"), spread(-0.7, 0.5))


def log_below(x, m, s):
    return n_below((mp.log(x) - m) / s)


def log_density(x, m, s):
    return n_density((mp.log(x) - m) / s) / (x * s)


def log_inverse():
    x, m, s = log_args()
    got = inverse(mp.mpf(x), lambda v: log_below(v, mp.mpf(m), mp.mpf(s)), lambda v: log_density(v, mp.mpf(m), mp.mpf(s)), 1)
    return got and ([got[0], m, s], got[1])


class Cells(list):
    # as an array in a formula
    def __repr__(self):
        return "{" + ";".join(repr(x) for x in self) + "}"


class Table(list):
    def __repr__(self):
        return "{" + ";".join(",".join(repr(x) for x in row) for row in self) + "}"


def z_test():
    x = Cells(float(f"{random.gauss(50, 5):.5g}") for _ in range(random.randint(3, 12)))
    value = float(f"{random.uniform(35, 60):.5g}")
    given = random.choice([None, float(f"{random.uniform(2, 8):.3g}")])
    n = len(x)
    mean = sum(mp.mpf(v) for v in x) / n
    sd = mp.mpf(given) if given else mp.sqrt(sum((mp.mpf(v) - mean) ** 2 for v in x) / (n - 1))
    return [x, value] + ([given] if given else []), n_below((value - mean) * mp.sqrt(n) / sd)


def chi_test():
    rows, columns = random.choice([(2, 2), (2, 3), (4, 3), (6, 1)])
    counts = Table([random.randint(0, 60) for _ in range(columns)] for _ in range(rows))
    wanted = Table([float(f"{random.uniform(5, 50):.4g}") for _ in range(columns)] for _ in range(rows))
    total = sum((c - mp.mpf(w)) ** 2 / mp.mpf(w) for a, b in zip(counts, wanted) for c, w in zip(a, b))
    df = (rows - 1) * (columns - 1) if columns > 1 else rows - 1
    return [counts, wanted], c_above(total, mp.mpf(df))


many("GAUSS", with_args(lambda: (random.choice([-1, 1]) * spread(-8, 0.8),), lambda z: of(between, z)))
for name in ("LOGNORM.DIST", "LOGNORMDIST"):
    many(name, with_args(lambda: (*log_args(), True), lambda x, m, s, _: of(log_below, x, m, s)))
many("LOGNORM.DIST", with_args(lambda: (*log_args(), False), lambda x, m, s, _: of(log_density, x, m, s)))
for name in ("LOGNORM.INV", "LOGINV"):
    many(name, log_inverse)
for name in ("Z.TEST", "ZTEST"):
    many(name, z_test)
for name in ("CHISQ.TEST", "CHITEST"):
    many(name, chi_test)
