"""Prints the coefficients in functions/statistics/gamma-large.ts: Temme's uniform expansion of the incomplete gamma function.

From the definition (NIST DLMF 8.12): eta^2/2 = mu - ln(1 + mu), c_0 = 1/mu - 1/eta, c_k = c_(k-1)'/eta + g_k/mu.
Run: python3 temme.py
"""
import mpmath as mp

mp.mp.dps = 60
N = 26
# mu as a power series in eta, from mu mu' = eta (1 + mu)
a = [mp.mpf(0), mp.mpf(1)] + [mp.mpf(0)] * (N - 1)
for n in range(2, N + 1):
    a[n] = (a[n - 1] - sum(a[i] * (n + 1 - i) * a[n + 1 - i] for i in range(2, n))) / (n + 1)
# eta/mu
inverse = [mp.mpf(1)] + [mp.mpf(0)] * (N - 1)
for k in range(1, N):
    inverse[k] = -sum(a[j + 1] * inverse[k - j] for j in range(1, k + 1))


def following(c, g):
    slope = [(k + 1) * c[k + 1] for k in range(len(c) - 1)]
    return [slope[k + 1] + g * inverse[k + 1] for k in range(min(len(slope), len(inverse)) - 1)]


c0 = inverse[1:]
c1 = following(c0, mp.mpf(-1) / 12)
c2 = following(c1, mp.mpf(1) / 288)
for c, n in ((c0, 12), (c1, 7), (c2, 3)):
    print([mp.nstr(x, 17) for x in c[:n]])
