"""Expected values of ROUND, ROUNDUP, ROUNDDOWN, MROUND, CEILING and FLOOR with their kin, by decimal arithmetic: python3 tests/reference/rounding.py

Rule: a number counts with its 15 significant decimal digits, halves go away from zero (OpenFormula 1.3, part 4, 6.17);
the result is the nearest double. Where 15 digits end before the place that is asked for, the shortest decimal form counts.
"""
import os
import random
from decimal import Decimal, ROUND_DOWN, ROUND_HALF_UP, ROUND_UP, getcontext

getcontext().prec = 400
random.seed(20250)
WAYS = {'ROUND': ROUND_HALF_UP, 'ROUNDUP': ROUND_UP, 'ROUNDDOWN': ROUND_DOWN}


def counted(x, places):
    digits = Decimal(f'{x:.14e}')
    return Decimal(repr(x)) if digits.adjusted() + 1 + places >= 15 else digits


def result(name, x, places):
    if places >= 0 and x == int(x):
        return x
    return float(counted(x, places).quantize(Decimal(1).scaleb(-places), WAYS[name]))


def multiple(x, step, way='ROUND'):
    times = Decimal(result(way, abs(x / step), 0))
    return float((times * Decimal(repr(abs(step)))).copy_sign(Decimal(x)))


rows = []
for x, places in [(1.005, 2), (2.675, 2), (0.285, 2), (1.255, 2), (1.45, 1), (0.5, 0), (1.5, 0), (2.5, 0), (0.285 * 100, 0),
                  (1.1 * 3, 1), (0.29 * 100, 0), (0.49999999999999994, 0), (4.35, 1), (1e15 + 0.5, 0), (12345678901234.56, 1),
                  (123456789.123456789, 7), (150, -2), (149.99999999999999, -2), (250, -2), (1e300, -299), (5e-324, 0),
                  (5e-324, 323), (0.1 + 0.2, 15), (0.1 + 0.2, 16), (0.1 + 0.2, 17), (1 / 3, 20), (0.05, 0), (0.05, -1), (60, -2)]:
    for sign in (1, -1):
        for name in WAYS:
            rows.append((name, sign * x, places, result(name, sign * x, places)))
for _ in range(300):
    places = random.randint(-3, 6)
    x = random.choice([
        random.uniform(-1000, 1000),
        random.randint(-10**7, 10**7) / 10 ** (places + 1 if places >= 0 else 1) / 2,
        random.randint(-2000, 2000) * 0.005,
        random.randint(-2000, 2000) * 0.1 * 1.1,
    ])
    if x != 0:
        name = random.choice(list(WAYS))
        rows.append((name, x, places, result(name, x, places)))
for x, step in [(7.3, 0.1), (6.05, 0.1), (101.25, 2.5), (-101.25, -2.5), (1.005, 0.01), (10, 3), (2 / 3, 1 / 3), (-7.4, -0.2)]:
    rows.append(('MROUND', x, step, multiple(x, step)))
for _ in range(60):
    step = random.choice([0.1, 0.25, 0.5, 1.25, 2.5, 0.05])
    x = random.randint(1, 4000) * step / 2
    rows.append(('MROUND', x, step, multiple(x, step)))

# Up and down by the quotient's 15 digits. CEILING and FLOOR take a negative number with a negative step away from zero and
# towards it; the others go by the size of the step (OpenFormula 1.3, part 4, 6.17).
def beside(name, x, step):
    above = name.startswith('CEILING')
    positive = step > 0 if name in ('CEILING', 'FLOOR') else True
    return multiple(x, step, 'ROUNDUP' if ((x > 0) == positive) == above else 'ROUNDDOWN')


NEXT = ['CEILING', 'FLOOR', 'CEILING.MATH', 'FLOOR.MATH', 'CEILING.PRECISE', 'FLOOR.PRECISE']
pairs = [(0.3, 0.1), (0.29, 0.1), (0.31, 0.1), (0.1 + 0.2, 0.1), (7.3, 0.1), (-7.3, 0.1), (-7.3, -0.1), (-7.35, 0.1), (-7.35, -0.1),
         (101.25, 2.5), (81.2, 1.25), (0.285 * 100, 0.5), (1.1 * 3, 1.1), (61, 2.5), (1e9 + 0.05, 0.1), (2 / 3, 1 / 3)]
for _ in range(120):
    step = random.choice([0.1, 0.25, 0.5, 1.25, 2.5, 0.05, 0.2, 0.01])
    pairs.append((random.choice([1, 1, -1]) * random.randint(1, 4000) * step / random.choice([1, 2, 3]), step))
for x, step in pairs:
    for name in NEXT:
        rows.append((name, x, step, beside(name, x, step)))

with open(os.path.join(os.path.dirname(__file__), 'rounding.csv'), 'w') as out:
    out.write('function,number,places_or_step,result\n')
    for name, x, by, value in rows:
        out.write(f'{name},{x!r},{by!r},{value!r}\n')
