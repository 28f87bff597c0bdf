"""Expectations for the functions about lengths, ankle, lean, lift, moments and the back.

A second transcription of the published rules, written to share nothing with the product: joints are placed with rotation
matrices, leans found by bisection on the sum of the moments, angles taken between vectors, searches done by plain
scanning. Run it to write posture.csv beside it:

    python3 posture_model.py

Columns: formula (literals only), expected (number, text or error code), tolerance (absolute, for numbers).
"""

import csv
import itertools
import math
import os
import random
import re

import numpy as np

G = 9.80665
BUILD = "femur tibia trunk ankle".split()


class Refused(Exception):
    def __init__(self, code):
        self.code = code


def num():
    raise Refused("#NUM!")


def na():
    raise Refused("#N/A")


def value():
    raise Refused("#VALUE!")


def div():
    raise Refused("#DIV/0!")


deg, rad = math.degrees, math.radians


# ---------------------------------------------------------------- posture, by matrices and bisection
PLACE = {  # along the trunk, ahead of it
    "high-bar": (1.00, -0.09),
    "low-bar": (0.90, -0.11),
    "front": (0.98, 0.12),
    "goblet": (0.80, 0.45),
    "arms-forward": None,
}


def default_foot(f, s, t):
    return 0.152 / 0.779 * (f + s + t)


def foot_points(length, lift):
    """Heel, ankle, mid-foot, ball after turning the rigid rear foot about the ball until the heel stands at `lift`."""
    ball = np.array([0.740 * length, 0.0])
    if lift >= ball[0]:
        num()
    phi = math.asin(lift / ball[0])
    turn = np.array([[math.cos(phi), math.sin(phi)], [-math.sin(phi), math.cos(phi)]])
    place = lambda x, y: ball + turn @ (np.array([x, y]) - ball)
    return {
        "phi": deg(phi),
        "heel": place(0.0, 0.0),
        "ankle": place(0.25 * length, 0.039 / 0.152 * length),
        "middle": place(0.50 * length, 0.0),
        "ball": ball,
    }


def leg_points(f, s, t, a, lift, depth, foot, stance, shank=None):
    foot = default_foot(f, s, t) if foot is None else foot
    p = foot_points(foot, lift)
    sigma = a + p["phi"] if shank is None else shank
    if sigma >= 90:
        num()
    out = math.cos(rad(stance))
    ankle = p["ankle"] - np.array([p["middle"][0], 0.0])
    knee = ankle + s * np.array([math.sin(rad(sigma)), math.cos(rad(sigma))])
    hip = knee + f * np.array([-math.cos(rad(depth)), math.sin(rad(depth))])
    squeeze = lambda q: np.array([q[0] * out, q[1]])
    return {"ankle": squeeze(ankle), "knee": squeeze(knee), "hip": squeeze(hip), "sigma": sigma, "phi": p["phi"]}


def along_trunk(hip, t, beta, along, ahead):
    """A point `along` trunk lengths up the trunk and `ahead` of it."""
    b = rad(beta)
    return hip + t * (along * np.array([math.sin(b), math.cos(b)]) + ahead * np.array([math.cos(b), -math.sin(b)]))


def upper_body(hip, t, beta, placement):
    """Mass shares and centres of what lies above the hip."""
    if placement == "arms-forward":
        shoulder = along_trunk(hip, t, beta, 1, 0)
        return [(0.578, along_trunk(hip, t, beta, 0.660, 0)), (0.100, shoulder + np.array([0.611 * t, 0.0]))]
    if placement == "goblet":
        return [(0.578, along_trunk(hip, t, beta, 0.660, 0)), (0.100, along_trunk(hip, t, beta, 0.80, 0.25))]
    return [(0.678, along_trunk(hip, t, beta, 0.626, 0))]


def all_masses(j, t, beta, placement, mass, bar):
    """Every mass (kg) and its place: feet under the origin, shanks, thighs, upper body, bar."""
    parts = [
        (2 * 0.0145, np.array([0.0, 0.0])),
        (2 * 0.0465, j["knee"] + 0.433 * (j["ankle"] - j["knee"])),
        (2 * 0.100, j["hip"] + 0.433 * (j["knee"] - j["hip"])),
    ] + upper_body(j["hip"], t, beta, placement)
    out = [(mass * m, p) for m, p in parts]
    if bar:
        out.append((bar, along_trunk(j["hip"], t, beta, *PLACE[placement])))
    return out


def tipping(j, t, beta, placement, rule):
    """What is to be over mid-foot, cm ahead of it: the bar, or the centre of all mass."""
    if rule is None:
        if placement != "arms-forward":
            return along_trunk(j["hip"], t, beta, *PLACE[placement])[0]
        rule = (1.0, 0.0)
    mass, bar = rule
    parts = all_masses(j, t, beta, placement, mass, bar)
    return sum(m * p[0] for m, p in parts) / sum(m for m, _ in parts)


def balance(j, t, placement, rule=None):
    """The lean that brings it over mid-foot: where its forward travel rises, by bisection."""
    f = lambda beta: tipping(j, t, beta, placement, rule)
    # crest and trough of the travel, by ternary search over the rising half turn
    grid = np.linspace(-180, 180, 721)
    top = max(grid, key=f)
    lo, hi = top - 1, top + 1
    for _ in range(200):
        x, y = lo + (hi - lo) / 3, hi - (hi - lo) / 3
        if f(x) < f(y):
            lo = x
        else:
            hi = y
    top = (lo + hi) / 2
    low, high = top - 180, top
    if f(low) > 0 or f(high) < 0:
        num()
    for _ in range(200):
        mid = (low + high) / 2
        if f(mid) < 0:
            low = mid
        else:
            high = mid
    beta = (low + high) / 2
    if beta > 90:
        num()
    return beta


def bar_rule_word(placement):
    if placement == "goblet":
        value()


def lean_at(depth, f, s, t, a, lift=0, placement="high-bar", foot=None, stance=0):
    bar_rule_word(placement)
    return balance(leg_points(f, s, t, a, lift, depth, foot, stance), t, placement)


def lean_parallel(f, s, t, a, lift=0, placement="high-bar", foot=None, stance=0):
    return lean_at(0, f, s, t, a, lift, placement, foot, stance)


def lean_loaded(mass, bar, f, s, t, a, lift=0, depth=0, placement="high-bar", foot=None, stance=0):
    if placement == "arms-forward" and bar > 0:
        value()
    return balance(leg_points(f, s, t, a, lift, depth, foot, stance), t, placement, (mass, bar))


def angle_between(u, v):
    return deg(math.atan2(np.linalg.norm(np.cross(u, v)), float(np.dot(u, v))))


def hip_flexion(lean, depth=0, stance=0):
    trunk = np.array([math.sin(rad(lean)), math.cos(rad(lean)), 0.0])
    thigh = np.array(
        [
            math.cos(rad(depth)) * math.cos(rad(stance)),
            -math.sin(rad(depth)),
            math.cos(rad(depth)) * math.sin(rad(stance)),
        ]
    )
    return 180 - angle_between(trunk, thigh)


# ---------------------------------------------------------------- descent, by scanning
def quick_lean(f, s, t, sigma, lift, depth, placement, foot, stance):
    """Lean at arrays of depth and shank, closed form, NaN where none: only for scanning."""
    p = foot_points(foot, lift)
    out = math.cos(rad(stance))
    xa = (p["ankle"][0] - p["middle"][0]) * out
    xk = xa + s * np.sin(np.radians(sigma)) * out
    xh = xk - f * np.cos(np.radians(depth)) * out
    if placement == "arms-forward":
        need = -(
            0.093 * (xk + 0.433 * (xa - xk)) + 0.2 * (xh + 0.433 * (xk - xh)) + 0.678 * xh + 0.1 * 0.611 * t
        )
        a, c = (0.578 * 0.660 + 0.1) * t, 0.0
    else:
        need = -xh
        a, c = PLACE[placement][0] * t, PLACE[placement][1] * t
    with np.errstate(invalid="ignore"):
        beta = np.degrees(np.arcsin(need / math.hypot(a, c))) - deg(math.atan2(c, a))
    return np.where(beta > 90, np.nan, beta)


def deepest(f, s, t, a, lift=0, placement="high-bar", foot=None, stance=0, max_lean=60, max_hip=145, max_knee=155, step=0.001):
    bar_rule_word(placement)
    foot = default_foot(f, s, t) if foot is None else foot
    phi = foot_points(foot, lift)["phi"]
    depth = np.arange(60, -45 - step / 2, -step)
    sigma = np.minimum(a + phi, max_knee - 90 + depth)
    beta = quick_lean(f, s, t, sigma, lift, depth, placement, foot, stance)
    d, b, st = np.radians(depth), np.radians(beta), rad(stance)
    dot = np.sin(b) * np.cos(d) * math.cos(st) - np.cos(b) * np.sin(d)
    hip = 180 - np.degrees(np.arccos(np.clip(dot, -1, 1)))
    good = (sigma < 90) & (beta <= max_lean) & (hip <= max_hip)
    if not good[0]:
        num()
    bad = np.flatnonzero(~good)
    return -45.0 if len(bad) == 0 else float(depth[bad[0] - 1])


LIMITS = ("ankle", "knee", "hip", "lean")


def gains(f, s, t, a, lift, placement, foot, stance, max_lean, max_hip, max_knee):
    """The deepest position, and how much deeper each limit makes it when it is loosened by one degree."""
    foot = default_foot(f, s, t) if foot is None else foot
    go = lambda a=a, ml=max_lean, mh=max_hip, mk=max_knee: deepest(
        f, s, t, a, lift, placement, foot, stance, ml, mh, mk, 0.0005
    )
    base = go()

    def gain(**kw):
        try:
            return max(0.0, base - go(**kw))
        except Refused:
            return 0.0

    loose = {"ankle": {"a": a + 1}, "knee": {"mk": max_knee + 1}, "hip": {"mh": max_hip + 1}, "lean": {"ml": max_lean + 1}}
    return base, {word: gain(**loose[word]) for word in LIMITS}


def limiter(f, s, t, a, lift=0, placement="high-bar", foot=None, stance=0, max_lean=60, max_hip=145, max_knee=155):
    base, by = gains(f, s, t, a, lift, placement, foot, stance, max_lean, max_hip, max_knee)
    if base <= -45:
        return "none"
    best = max(by.values())
    # too near a threshold for a scan to judge: not used as an expectation
    if abs(best - 0.02) < 0.005 or any(0.005 < best - gain < 0.015 for gain in by.values()):
        return None
    if best < 0.02:
        return "none"
    return next(word for word in LIMITS if by[word] >= best - 0.01)


def gain(limit, f, s, t, a, lift=0, placement="high-bar", foot=None, stance=0, max_lean=60, max_hip=145, max_knee=155):
    return gains(f, s, t, a, lift, placement, foot, stance, max_lean, max_hip, max_knee)[1][limit]


# ---------------------------------------------------------------- functions by name
SURVEY = {
    "stature": ((175.621, 6.855), (162.847, 6.420)),
    "sitting height": ((91.829, 3.570), (85.663, 3.305)),
    "femur": ((40.927, 2.842), (37.941, 2.405)),
    "tibia": ((41.875, 2.457), (40.319, 2.591)),
    "trunk": ((53.981, 3.340), (48.974, 2.934)),
    "foot": ((27.118, 1.310), (24.629, 1.244)),
    "femur/tibia": ((0.9784, 0.0575), (0.9431, 0.0617)),
    "trunk/femur": ((1.3257, 0.1270), (1.2956, 0.1085)),
    "cormic": ((52.31, 1.35), (52.62, 1.41)),
}
SHARES = {
    "femur": (0.245, 0.2330, 0.2329),
    "tibia": (0.246, 0.2384, 0.2475),
    "trunk": (0.288, 0.3074, 0.3008),
    "foot": (0.152, 0.1544, 0.1513),
    "ankle height": (0.039, 0.0415, 0.0385),
}
DEMPSTER = {
    "foot": (0.0145, None),
    "shank": (0.0465, 0.433),
    "thigh": (0.100, 0.433),
    "head-arms-trunk": (0.678, 0.626),
    "pelvis": (0.142, None),
}
DELEVA = {
    "head": (6.94, 59.76, 6.68, 58.94),
    "trunk": (43.46, 44.86, 42.57, 41.51),
    "upper arm": (2.71, 57.72, 2.55, 57.54),
    "forearm": (1.62, 45.74, 1.38, 45.59),
    "hand": (0.61, 79.00, 0.56, 74.74),
    "thigh": (14.16, 40.95, 14.78, 36.12),
    "shank": (4.33, 44.59, 4.81, 44.16),
    "foot": (1.37, 44.15, 1.29, 40.14),
}


def sex_at(sex):
    return {"male": 0, "m": 0, "female": 1, "f": 1}[sex.lower()]


def segment(name, table, which):
    if table == "dempster":
        row = DEMPSTER.get(name)
        got = None if row is None else row[which]
    else:
        row = DELEVA.get(name)
        got = None if row is None else row[which + (0 if table == "deleva-male" else 2)] / 100
    if row is None and name not in DEMPSTER and name not in DELEVA:
        value()
    if got is None:
        na()
    return got


def difference(low, high):
    def f(upper, lower):
        d = upper - lower
        return d if low <= d <= high else num()

    return f


def normal_cdf(z):
    return 0.5 * math.erfc(-z / math.sqrt(2))


def check(f, s, t, stature=None):
    if not 0.6963 <= f / s <= 1.2084:
        return "femur/tibia is outside 0.6963 to 1.2084"
    if not 0.8177 <= t / f <= 1.8337:
        return "trunk/femur is outside 0.8177 to 1.8337"
    if stature is not None and not 0.72 <= (f + s + t) / stature <= 0.84:
        return "femur + tibia + trunk is outside 0.72 to 0.84 of stature"
    return "ok"


def from_wall(distance, tibia, foot=None):
    foot = 0.152 / 0.246 * tibia if foot is None else foot
    ahead = distance + 0.75 * foot - 5
    if abs(ahead) > tibia:
        num()
    a = deg(math.asin(ahead / tibia))
    return a if -10 <= a <= 70 else num()


def to_wall(ankle, tibia, foot=None):
    foot = 0.152 / 0.246 * tibia if foot is None else foot
    return tibia * math.sin(rad(ankle)) - 0.75 * foot + 5


def bisect(f, low, high):
    a, b = f(low), f(high)
    if a == 0:
        return low
    if (a > 0) == (b > 0):
        num()
    for _ in range(200):
        mid = (low + high) / 2
        if (f(mid) > 0) == (a > 0):
            low = mid
        else:
            high = mid
    return (low + high) / 2


def at_shank(f, s, t, lift, depth, placement, foot, stance, lean):
    """What is to be balanced ahead of mid-foot, as a function of the shank, for a lean held."""
    return lambda sigma: tipping(
        leg_points(f, s, t, None, lift, depth, foot, stance, shank=sigma), t, lean, placement, None
    )


def ankle_needed(lean, f, s, t, lift=0, depth=0, placement="high-bar", foot=None, stance=0):
    bar_rule_word(placement)
    foot = default_foot(f, s, t) if foot is None else foot
    g = at_shank(f, s, t, lift, depth, placement, foot, stance, lean)
    sigma = bisect(g, -89.999999, 89.999999)
    a = sigma - foot_points(foot, lift)["phi"]
    if not -10 <= a <= 70:
        num()
    # a lean past the crest of what the placement can balance is not the one the rule gives
    if abs(lean_at(depth, f, s, t, a, lift, placement, foot, stance) - lean) > 1e-6:
        num()
    return a


def offset(lean, f, s, t, a, lift=0, depth=0, placement="high-bar", foot=None, stance=0):
    bar_rule_word(placement)
    return tipping(leg_points(f, s, t, a, lift, depth, foot, stance), t, lean, placement, None)


def shank(ankle, lift=0, foot=None):
    if lift == 0:
        return ankle
    if foot is None:
        na()
    sigma = ankle + foot_points(foot, lift)["phi"]
    return sigma if sigma < 90 else num()


def knee_ahead(tibia, sigma, foot, lift=0):
    p = foot_points(foot, lift)
    return p["ankle"][0] + tibia * math.sin(rad(sigma)) - foot


def part(which, f, s, t, a, reference_ankle=38, lift=0, placement="high-bar", foot=None, stance=0):
    bar_rule_word(placement)
    foot = default_foot(f, s, t) if foot is None else foot
    total = f + s + t
    mine = {"femur": f, "tibia": s, "trunk": t, "ankle": a}
    theirs = {"femur": 0.2987 * total, "tibia": 0.3114 * total, "trunk": 0.3899 * total, "ankle": reference_ankle}
    gains = []
    for order in itertools.permutations(mine):
        now = dict(theirs)
        for name in order:
            before = lean_quick(now, lift, placement, foot, stance) if name == which else None
            now[name] = mine[name]
            if name == which:
                gains.append(lean_quick(now, lift, placement, foot, stance) - before)
    return sum(gains) / len(gains)


def lean_quick(b, lift, placement, foot, stance):
    return lean_parallel(b["femur"], b["tibia"], b["trunk"], b["ankle"], lift, placement, foot, stance)


def explain(which, lean, sigma, depth, f, s, t, a, reference_ankle=38, lift=0, placement="high-bar", foot=None, stance=0):
    """An observed lean taken apart: reference, four Shapley parts, range not used, bar not over mid-foot."""
    bar_rule_word(placement)
    foot = default_foot(f, s, t) if foot is None else foot
    in_use = sigma - foot_points(foot, lift)["phi"]
    if not -10 <= in_use <= 70:
        num()
    go = lambda F, S, T, A: lean_at(depth, F, S, T, A, lift, placement, foot, stance)
    total = f + s + t
    theirs = (0.2987 * total, 0.3114 * total, 0.3899 * total, reference_ankle)
    if which == "reference":
        return go(*theirs)
    if which == "use":
        return go(f, s, t, in_use) - go(f, s, t, a)
    if which == "balance":
        return lean - go(f, s, t, in_use)
    mine = (f, s, t, a)
    of = {own: go(*[mine[i] if i in own else theirs[i] for i in range(4)]) for own in subsets(range(4))}
    shapley = {name: 0.0 for name in BUILD}
    for order in itertools.permutations(range(4)):
        own = frozenset()
        for i in order:
            shapley[BUILD[i]] += (of[own | {i}] - of[own]) / 24
            own |= {i}
    return shapley["femur"] + shapley["tibia"] + shapley["trunk"] if which == "build" else shapley[which]


def subsets(of):
    items = list(of)
    return [frozenset(c) for n in range(len(items) + 1) for c in itertools.combinations(items, n)]


def used(sigma, a, lift=0, foot=None):
    """Share of the ankle range in use."""
    if a < 0:
        num()
    if lift and foot is None:
        na()
    phi = foot_points(foot, lift)["phi"] if lift else 0.0
    if a == 0:
        div()
    return (sigma - phi) / a


def seen(lean, sigma, mass, bar, f, s, t, foot, lift, depth, placement, stance):
    """All masses of a posture as it was seen, x from mid-foot in cm, and its joints; the feet come first."""
    if placement == "arms-forward" and bar > 0:
        value()
    j = leg_points(f, s, t, None, lift, depth, foot, stance, shank=sigma)
    return all_masses(j, t, lean, placement, mass, bar), j


def foot_centre(lean, sigma, mass, bar, f, s, t, foot, lift=0, depth=0, placement="high-bar", stance=0):
    parts, j = seen(lean, sigma, mass, bar, f, s, t, foot, lift, depth, placement, stance)
    x = sum(m * p[0] for m, p in parts) / (mass + bar)
    return 50 + 100 * x / (foot * math.cos(rad(j["phi"])) * math.cos(rad(stance)))


def moment_ankle(lean, sigma, mass, bar, f, s, t, foot, lift=0, depth=0, placement="high-bar", stance=0):
    parts, j = seen(lean, sigma, mass, bar, f, s, t, foot, lift, depth, placement, stance)
    return sum(m * G * (p[0] - j["ankle"][0]) / 100 for m, p in parts[1:])


def stance_angle(width, hips, f, s, sigma, depth=0):
    """The toe-out at which the ankle stands half the width from the middle, found by turning the leg out."""
    ahead = f * math.cos(rad(depth)) - s * math.sin(rad(sigma))
    if ahead <= 0:
        num()
    out = lambda angle: hips / 2 + ahead * math.sin(rad(angle)) - width / 2
    # a hair beyond either end, so that the ends themselves count
    return min(60.0, max(0.0, bisect(out, -1e-9, 60 + 1e-9)))


def board(rise, length):
    if length < rise:
        num()
    return deg(math.asin(rise / length))


def stack(drop, foot, board_=0):
    """Height of the heel over the ball when the shoe on the wedge is turned by both angles."""
    phi = foot_points(foot, drop)["phi"] + board_
    if phi >= 90:
        num()
    lever = 0.740 * foot
    height = float((np.array([[math.cos(rad(phi)), math.sin(rad(phi))], [-math.sin(rad(phi)), math.cos(rad(phi))]]) @ [-lever, 0.0])[1])
    return height if 0 <= height <= 15 and height < lever else num()


def error(sd_length, sd_ankle, f, s, t, a, lift=0, placement="high-bar", foot=None, stance=0, how="tape"):
    bar_rule_word(placement)
    foot = default_foot(f, s, t) if foot is None else foot
    base = {"femur": f, "tibia": s, "trunk": t, "ankle": a}
    by = {}
    for name in base:
        up, down = dict(base), dict(base)
        up[name] += 0.01
        down[name] -= 0.01
        by[name] = (lean_quick(up, lift, placement, foot, stance) - lean_quick(down, lift, placement, foot, stance)) / 0.02
    # the lean as a linear function of what was measured; the heights from top to bottom
    lengths = np.array([by["trunk"], by["femur"], by["tibia"]])
    if how == "heights":
        lengths = lengths @ np.array([[1, -1, 0, 0], [0, 1, -1, 0], [0, 0, 1, -1]])
    return math.sqrt(float(lengths @ lengths) * sd_length**2 + (by["ankle"] * sd_ankle) ** 2)


def from_points(hx, hy, sx, sy):
    if (hx, hy) == (sx, sy):
        div()
    a = angle_between(np.array([sx - hx, sy - hy, 0.0]), np.array([0.0, 1.0, 0.0]))
    return min(a, 180 - a)


def joint(ax, ay, bx, by, cx, cy):
    if (ax, ay) == (bx, by) or (cx, cy) == (bx, by):
        div()
    return angle_between(np.array([ax - bx, ay - by, 0.0]), np.array([cx - bx, cy - by, 0.0]))


def lift_change(lift, f, s, t, a, depth=0, placement="high-bar", foot=None, stance=0):
    foot = default_foot(f, s, t) if foot is None else foot
    go = lambda h: lean_at(depth, f, s, t, a, h, placement, foot, stance)
    return go(lift) - go(0)


def lift_as(what):
    def f_(lift, f, s, t, a, depth=0, placement="high-bar", foot=None, stance=0):
        bar_rule_word(placement)
        foot = default_foot(f, s, t) if foot is None else foot
        lean = lean_at(depth, f, s, t, a, lift, placement, foot, stance)
        flat = lambda F=f, S=s, A=a: tipping(leg_points(F, S, t, A, 0, depth, foot, stance), t, lean, placement, None)
        if what == "tibia":
            return bisect(lambda x: flat(S=x), 15, 80) - s
        if what == "femur":
            return f - bisect(lambda x: flat(F=x), 15, 80)
        return bisect(lambda x: flat(A=x), -10, 70) - a

    return f_


def lift_for_lean(lean, f, s, t, a, depth=0, max_lift=5, placement="high-bar", foot=None, stance=0):
    bar_rule_word(placement)
    foot = default_foot(f, s, t) if foot is None else foot

    def reached(h):
        try:
            return lean_at(depth, f, s, t, a, h, placement, foot, stance) <= lean
        except Refused:
            return False

    highest = min(max_lift, 0.74 * foot - 1e-9)
    steps = np.append(np.arange(0, highest, 0.25), highest)
    first = next((i for i, h in enumerate(steps) if reached(h)), None)
    if first is None:
        na()
    if first == 0:
        return 0.0
    low, high = steps[first - 1], steps[first]
    while high - low > 1e-9:
        mid = (low + high) / 2
        if reached(mid):
            high = mid
        else:
            low = mid
    return high


def lift_for_depth(depth, f, s, t, a, max_lift=5, placement="high-bar", foot=None, stance=0, max_lean=60, max_hip=145, max_knee=155):
    bar_rule_word(placement)
    foot = default_foot(f, s, t) if foot is None else foot

    def serves(h):
        try:
            return deepest(f, s, t, a, h, placement, foot, stance, max_lean, max_hip, max_knee) <= depth
        except Refused:
            return False

    highest = min(max_lift, 0.74 * foot - 1e-9)
    steps = [i * 0.05 for i in range(int(highest / 0.05) + 2) if i * 0.05 < highest] + [highest]
    first = next((i for i, h in enumerate(steps) if serves(h)), None)
    if first is None:
        na()
    if first == 0:
        return 0.0
    low, high = steps[first - 1], steps[first]
    while high - low > 0.0004:
        mid = (low + high) / 2
        if serves(mid):
            high = mid
        else:
            low = mid
    return high


def pick(lift, heights):
    on_hand = [h for h in heights if h >= lift]
    return min(on_hand) if on_hand else na()


def moments(lean, trunk, mass, bar, placement):
    """Masses above the hip about the hip at the origin, metres."""
    parts = [(mass * m, p / 100) for m, p in upper_body(np.zeros(2), trunk, lean, placement)]
    if bar:
        parts.append((bar, along_trunk(np.zeros(2), trunk, lean, *PLACE[placement]) / 100))
    return parts


def moment_hip(lean, trunk, mass, bar, placement="high-bar"):
    if placement == "arms-forward" and bar > 0:
        value()
    return sum(m * G * p[0] for m, p in moments(lean, trunk, mass, bar, placement))


def moment_knee(lean, femur, trunk, mass, bar, depth=0, placement="high-bar", stance=0):
    if placement == "arms-forward" and bar > 0:
        value()
    knee = femur / 100 * math.cos(rad(depth)) * math.cos(rad(stance))  # ahead of the hip
    parts = moments(lean, trunk, mass, bar, placement) + [(0.200 * mass, np.array([0.433 * knee, 0.0]))]
    return sum(m * G * (knee - p[0]) for m, p in parts)


def moment_back(lean, trunk, mass, bar, placement="high-bar"):
    if placement in ("goblet", "arms-forward"):
        value()
    joint_ = along_trunk(np.zeros(2), trunk, lean, 0.20, 0) / 100
    parts = [
        (0.536 * mass, along_trunk(np.zeros(2), trunk, lean, 0.744, 0) / 100),
        (bar, along_trunk(np.zeros(2), trunk, lean, *PLACE[placement]) / 100),
    ]
    return sum(m * G * (p[0] - joint_[0]) for m, p in parts)


def back_muscle(lean, trunk, mass, bar, placement="high-bar", lever=6):
    return moment_back(lean, trunk, mass, bar, placement) / (lever / 100)


def back_compression(lean, trunk, mass, bar, placement="high-bar", lever=6):
    return abs(back_muscle(lean, trunk, mass, bar, placement, lever)) + G * (0.536 * mass + bar) * math.cos(rad(lean))


def back_shear(lean, trunk, mass, bar, placement="high-bar"):
    moment_back(lean, trunk, mass, bar, placement)
    return G * (0.536 * mass + bar) * math.sin(rad(lean))


def arms(lever, *pairs):
    if len(pairs) % 2:
        na()
    return sum(pairs[i] * pairs[i + 1] for i in range(0, len(pairs), 2)) / lever


def pitch(lift, foot):
    return foot_points(foot, lift)["phi"]


FUNCTIONS = {
    "SEG.FEMUR": difference(15, 80),
    "SEG.TIBIA": difference(15, 80),
    "SEG.TRUNK": difference(20, 100),
    "SEG.RATIO": lambda a, b: a / b,
    "SEG.CRURAL": lambda s, f: 100 * s / f,
    "SEG.CORMIC": lambda sit, stature: 100 * sit / stature,
    "SEG.ESTIMATE": lambda seg, stature, sex=None: SHARES[seg][0 if sex is None else 1 + sex_at(sex)] * stature,
    "SEG.FOOT": default_foot,
    "SEG.MASS": lambda seg, mass, table="dempster": segment(seg, table, 0) * mass,
    "SEG.COM": lambda seg, table="dempster": segment(seg, table, 1),
    "SEG.NORM": lambda m, sex, st="mean": SURVEY[m][sex_at(sex)][0 if st == "mean" else 1],
    "SEG.PERCENTILE": lambda m, sex, v: 100 * normal_cdf((v - SURVEY[m][sex_at(sex)][0]) / SURVEY[m][sex_at(sex)][1]),
    "SEG.CHECK": check,
    "ANKLE.FROM.WALL": from_wall,
    "ANKLE.TO.WALL": to_wall,
    "ANKLE.NEEDED": ankle_needed,
    "LEAN.PARALLEL": lean_parallel,
    "LEAN.AT": lean_at,
    "LEAN.LOADED": lean_loaded,
    "LEAN.DEEPEST": deepest,
    "LEAN.LIMITER": limiter,
    "LEAN.GAIN": gain,
    "LEAN.OFFSET": offset,
    "LEAN.SHANK": shank,
    "LEAN.KNEE": lambda sigma, depth=0: 90 + sigma - depth,
    "LEAN.HIP": hip_flexion,
    "LEAN.KNEE.AHEAD": knee_ahead,
    "LEAN.PART": part,
    "LEAN.EXPLAIN": explain,
    "ANKLE.USED": used,
    "FOOT.CENTRE": foot_centre,
    "MOMENT.ANKLE": moment_ankle,
    "STANCE.ANGLE": stance_angle,
    "LIFT.BOARD": board,
    "LIFT.STACK": stack,
    "LEAN.ERROR": error,
    "LEAN.FROM.POINTS": from_points,
    "JOINT.FROM.POINTS": joint,
    "LIFT.PITCH": pitch,
    "LIFT.FROM.PITCH": lambda phi, foot: 0.740 * foot * math.sin(rad(phi)),
    "LIFT.NET": lambda heel, fore: heel - fore,
    "LIFT.CHANGE": lift_change,
    "LIFT.AS.TIBIA": lift_as("tibia"),
    "LIFT.AS.FEMUR": lift_as("femur"),
    "LIFT.AS.ANKLE": lift_as("ankle"),
    "LIFT.FOR.LEAN": lift_for_lean,
    "LIFT.FOR.DEPTH": lift_for_depth,
    "LIFT.PICK": pick,
    "MOMENT.HIP": moment_hip,
    "MOMENT.KNEE": moment_knee,
    "MOMENT.SHARE": lambda hip, knee: hip / (hip + knee),
    "MOMENT.BACK": moment_back,
    "BACK.MUSCLE": back_muscle,
    "BACK.COMPRESSION": back_compression,
    "BACK.SHEAR": back_shear,
    "MOMENT.ARMS": arms,
    "IN": lambda x: 2.54 * x,
    "LB": lambda x: 0.45359237 * x,
    "FT.IN": lambda feet, inches: 30.48 * feet + 2.54 * inches,
    "MM": lambda x: x / 10,
}
TOLERANCE = {"LEAN.DEEPEST": 0.01, "LEAN.GAIN": 0.01, "LIFT.FOR.LEAN": 1e-6, "LIFT.FOR.DEPTH": 0.001, "LEAN.ERROR": 1e-6}


def literal(v):
    if v is None:
        return ""
    if isinstance(v, str):
        return f'"{v}"'
    if isinstance(v, (list, tuple)):
        return "{" + ";".join(literal(x) for x in v) + "}"
    return repr(v)


def case(name, *args):
    try:
        got = FUNCTIONS[name](*defaults(name, args))
    except Refused as r:
        got = r.code
    if got is None:
        return None
    formula = f"={name}({', '.join(literal(a) for a in args)})"
    return formula, got if isinstance(got, str) else repr(float(got)), TOLERANCE.get(name, 1e-9)


def defaults(name, args):
    """Blanks take the default of the function."""
    import inspect

    ps = list(inspect.signature(FUNCTIONS[name]).parameters.values())
    if any(p.kind is p.VAR_POSITIONAL for p in ps):
        return args
    return [ps[i].default if a is None and ps[i].default is not inspect._empty else a for i, a in enumerate(args)]


def random_cases(rng):
    u = lambda lo, hi, d=1: round(rng.uniform(lo, hi), d)
    bar_words = ["high-bar", "low-bar", "front", "arms-forward"]

    def build():
        return u(34, 50), u(34, 48), u(44, 62), u(20, 48)

    def setup():
        foot = rng.choice([None, u(22, 31)])
        return rng.choice(bar_words), foot, rng.choice([0, 0, u(5, 40)])

    rows = []
    add = lambda *c: rows.append(case(*c))
    for _ in range(60):
        lift, depth = rng.choice([0, u(0, 4)]), u(-30, 50)
        add("LEAN.PARALLEL", *build(), lift, *setup())
        add("LEAN.AT", depth, *build(), lift, *setup())
        placement, foot, stance = setup()
        mass = u(50, 120)
        placement = rng.choice(bar_words + ["goblet"])
        load = 0 if placement == "arms-forward" else u(0, 40) if placement == "goblet" else u(0, 250)
        add("LEAN.LOADED", mass, load, *build(), lift, depth, placement, foot, stance)
        add("LEAN.OFFSET", u(10, 70), *build(), lift, depth, *setup())
        add("LEAN.DEEPEST", *build(), lift, *setup())
        f, s, t, _ = build()
        add("ANKLE.NEEDED", u(25, 60), f, s, t, lift, u(-20, 30), *setup())
        add("LIFT.CHANGE", u(0, 4), *build(), u(-30, 40), *setup())
        for what in ("TIBIA", "FEMUR", "ANKLE"):
            add(f"LIFT.AS.{what}", u(0.2, 3), *build(), u(-30, 40), *setup())
    for _ in range(24):
        add("LEAN.DEEPEST", *build(), u(0, 3), *setup(), u(35, 90), u(100, 180), u(100, 175))
        add("LEAN.LIMITER", *build(), rng.choice([0, u(0, 3)]), *setup())
        add("LEAN.LIMITER", *build(), rng.choice([0, u(0, 3)]), *setup(), u(40, 90), u(110, 170), u(110, 165))
        add("LIFT.FOR.LEAN", u(30, 60), *build(), u(-20, 30), u(1, 8), *setup())
        add("LEAN.ERROR", u(0, 2), u(0, 4), *build(), u(0, 2), *setup())
    for _ in range(10):
        add("LIFT.FOR.DEPTH", u(-20, 20), *build(), u(1, 5), *setup())
        add("LEAN.PART", rng.choice(BUILD), *build(), u(30, 45), u(0, 2), *setup())
    for _ in range(20):
        add("LEAN.HIP", u(-30, 90), u(-60, 90), u(0, 60))
        add("LEAN.SHANK", u(-10, 60), u(0, 8), u(20, 32))
        add("LEAN.KNEE.AHEAD", u(34, 48), u(-20, 60), u(22, 31), u(0, 6))
        add("ANKLE.FROM.WALL", u(-5, 18), u(34, 48), rng.choice([None, u(22, 31)]))
        add("ANKLE.TO.WALL", u(-10, 70), u(34, 48), rng.choice([None, u(22, 31)]))
        add("LIFT.PITCH", u(0, 6), u(22, 31))
        add("LIFT.FROM.PITCH", u(0, 20), u(22, 31))
        lean, trunk, mass, bar = u(-10, 80), u(44, 62), u(50, 120), u(0, 250)
        word = rng.choice(["high-bar", "low-bar", "front"])
        add("MOMENT.BACK", lean, trunk, mass, bar, word)
        add("BACK.MUSCLE", lean, trunk, mass, bar, word, u(4, 8))
        add("BACK.COMPRESSION", lean, trunk, mass, bar, word, u(4, 8))
        add("BACK.SHEAR", lean, trunk, mass, bar, word)
        word = rng.choice(["high-bar", "low-bar", "front", "goblet", "arms-forward"])
        bar = 0 if word == "arms-forward" else bar
        add("MOMENT.HIP", lean, trunk, mass, bar, word)
        add("MOMENT.KNEE", lean, u(34, 50), trunk, mass, bar, u(-30, 60), word, u(0, 45))
        add("LEAN.FROM.POINTS", u(-50, 50), u(-50, 50), u(-50, 50), u(-50, 50))
        add("JOINT.FROM.POINTS", *[u(-50, 50) for _ in range(6)])
        sex = rng.choice(["F", "M", "female", "male"])
        measure = rng.choice(list(SURVEY))
        mean, sd = SURVEY[measure][sex_at(sex)]
        add("SEG.PERCENTILE", measure, sex, round(mean + sd * rng.uniform(-3, 3), 3))
    for measure in SURVEY:
        for sex in ("female", "male"):
            add("SEG.NORM", measure, sex)
            add("SEG.NORM", measure, sex, "sd")
    for seg in SHARES:
        add("SEG.ESTIMATE", seg, 175.6)
        add("SEG.ESTIMATE", seg, 175.6, "male")
        add("SEG.ESTIMATE", seg, 162.8, "F")
    for seg in sorted(set(DEMPSTER) | set(DELEVA)):
        for table in ("dempster", "deleva-male", "deleva-female"):
            add("SEG.MASS", seg, 80, table)
            add("SEG.COM", seg, table)
    for _ in range(16):
        limit = rng.choice(LIMITS)
        add("LEAN.GAIN", limit, *build(), rng.choice([0, u(0, 3)]), *setup())
        add("LEAN.GAIN", limit, *build(), rng.choice([0, u(0, 3)]), *setup(), u(40, 90), u(110, 170), u(110, 165))
        add("LEAN.ERROR", u(0, 2), u(0, 4), *build(), u(0, 2), *setup(), "heights")
    for _ in range(48):
        f, s, t, a = build()
        which = rng.choice(("reference", *BUILD, "use", "balance", "build"))
        sigma = round(a * rng.uniform(0.5, 1.1), 1)
        add("LEAN.EXPLAIN", which, u(20, 65), sigma, u(-30, 40), f, s, t, a, rng.choice([None, u(30, 45)]), rng.choice([0, u(0, 3)]), *setup())
    for _ in range(40):
        f, s, t, a = build()
        word = rng.choice(bar_words + ["goblet"])
        bar = 0 if word == "arms-forward" else u(0, 250)
        who = (u(-10, 80), u(0, 50), u(50, 120), bar, f, s, t, u(22, 31), rng.choice([0, u(0, 4)]), u(-30, 50), word, rng.choice([0, u(5, 45)]))
        add("FOOT.CENTRE", *who)
        add("MOMENT.ANKLE", *who)
        add("ANKLE.USED", u(-10, 50), u(0, 48), rng.choice([0, u(0, 4)]), rng.choice([None, u(22, 31)]))
        add("STANCE.ANGLE", u(10, 70), u(14, 20), f, s, u(5, 40), u(-30, 40))
        add("LIFT.STACK", rng.choice([0, u(0, 4)]), u(20, 31), rng.choice([None, u(0, 45)]))
        add("LIFT.BOARD", u(0, 30), u(1, 60))
    return [r for r in rows if r]


def parse(formula):
    """Name and arguments of a call with literals only."""
    name, inside = re.fullmatch(r"=([A-Z.]+)\((.*)\)", formula).groups()
    args, depth, quoted, piece = [], 0, False, ""
    for ch in inside + ",":
        if ch == '"':
            quoted = not quoted
        if ch == "," and not quoted and depth == 0:
            args.append(piece.strip())
            piece = ""
            continue
        depth += (ch == "{") - (ch == "}")
        piece += ch
    def one(text):
        if text == "":
            return None
        if text.startswith("{"):
            return [one(x.strip()) for x in re.split("[;,]", text[1:-1])]
        return text[1:-1] if text.startswith('"') else float(text)
    return name, [one(a) for a in args]


def main():
    here = os.path.dirname(os.path.abspath(__file__))
    rows = []
    with open(os.path.join(here, "posture_formulas.txt"), encoding="utf-8") as f:
        for line in f:
            line = line.strip()
            if not line or line.startswith("#"):
                continue
            name, args = parse(line)
            row = case(name, *args)
            rows.append((line, *row[1:]))
    rows += random_cases(random.Random(20240611))
    with open(os.path.join(here, "posture.csv"), "w", newline="", encoding="utf-8") as f:
        out = csv.writer(f, lineterminator="\n")
        out.writerow(["formula", "expected", "tolerance"])
        out.writerows(rows)
    print(len(rows), "rows")


if __name__ == "__main__":
    main()
