"""Writes values.json beside it: elementary functions of seeded random arguments, by 400-digit arithmetic (mpmath: the largest angles lose 300 of them),
each rounded to the nearest double. Run: python3 tests/functions/core/elementary/values.py"""
import json
import os
import random

import mpmath as mp

mp.mp.dps = 400
random.seed(20250908)
draw = random.uniform
COUNT = 200


def wide(low, high):
    return 10 ** draw(low, high)


def angle():
    """Mostly some turns; some near whole quarter turns, some far beyond a million turns."""
    kind = random.random()
    if kind < .5:
        return [draw(-20, 20)]
    if kind < .7:
        return [float(random.randint(-1000, 1000) * mp.pi / 2) + draw(-1, 1) * wide(-18, -3)]
    return [draw(-1, 1) * wide(-6, 6) if kind < .85 else draw(-1, 1) * wide(6, 307)]


cases = {
    'exp': (lambda: [draw(-745, 709)], mp.exp),
    'log': (lambda: [wide(-300, 300)], mp.log),
    'log10': (lambda: [wide(-300, 300)], mp.log10),
    'log1p': (lambda: [draw(-1, 4)], mp.log1p),
    'expm1': (lambda: [draw(-40, 40)], mp.expm1),
    'tanh': (lambda: [draw(-6, 6)], mp.tanh),
    'atanh': (lambda: [draw(-1, 1)], mp.atanh),
    'asin': (lambda: [draw(-1, 1)], mp.asin),
    'acos': (lambda: [draw(-1, 1)], mp.acos),
    'atan2': (lambda: [draw(-1, 1) * wide(-3, 3), draw(-1, 1) * wide(-3, 3)], mp.atan2),
    'pow': (lambda: [wide(-30, 30), draw(-9, 9)], mp.power),
    'hypot': (lambda: [draw(-1, 1) * wide(-3, 3), draw(-1, 1) * wide(-3, 3)], lambda x, y: mp.sqrt(x * x + y * y)),
    'atan': (lambda: [draw(-1, 1) * wide(-3, 3)], mp.atan),
    'log2': (lambda: [wide(-300, 300)], lambda x: mp.log(x) / mp.log(2)),
    'sin': (angle, mp.sin),
    'cos': (angle, mp.cos),
    'tan': (angle, mp.tan),
    'sinh': (lambda: [draw(-1, 1) * wide(-4, 2.85)], mp.sinh),
    'cosh': (lambda: [draw(-1, 1) * wide(-4, 2.85)], mp.cosh),
    'asinh': (lambda: [draw(-1, 1) * wide(-4, 12)], mp.asinh),
    'acosh': (lambda: [1 + wide(-8, 12)], mp.acosh),
}
out = {}
for name, (arguments, function) in cases.items():
    rows = []
    for _ in range(COUNT):
        given = arguments()
        rows.append([given, float(function(*[mp.mpf(x) for x in given]))])
    out[name] = rows
with open(os.path.join(os.path.dirname(os.path.abspath(__file__)), 'values.json'), 'w') as file:
    json.dump(out, file, separators=(',', ':'))
    file.write('\n')
