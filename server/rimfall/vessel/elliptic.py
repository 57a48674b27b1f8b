"""Elliptic integrals and functions, as a rigid body's turning needs them, for one complementary parameter mc = 1 - m.

mc is asked for and not m: a body that turns about its middle axis has an m that is 1 but for what a float cannot hold, and its
whole motion hangs on the difference. Sources: R. Bulirsch, Numerical calculation of elliptic integrals and elliptic functions,
Numer. Math. 7 (1965) 78 (sn, cn, dn); B. C. Carlson, Numerical computation of real or complex elliptic integrals, Numer.
Algorithms 10 (1995) 13 (R_F, R_J by duplication). Arrays are (n,).
"""

import math

import numpy as np

_DIGITS_F = (3 * 1e-17) ** (-1 / 6)
_DIGITS_J = (1e-17 / 4) ** (-1 / 6)
_HALVINGS = 60  # far more than any argument needs


def quarter(mc):
    """K(m), the complete integral of the first kind, by the arithmetic-geometric mean; inf at mc = 0."""
    a, b = 1.0, math.sqrt(mc)
    if b == 0.0:
        return math.inf
    while abs(a - b) > 1e-8 * a:
        a, b = (a + b) / 2, math.sqrt(a * b)
    return math.pi / (a + b)


def mean_sn2(mc, m):
    """Mean of sn^2 over a period (k,), (K - E)/m K, of mc (k,) above 0 and m = 1 - mc, by the arithmetic-geometric mean's differences."""
    a, b = np.ones_like(mc), np.sqrt(mc)
    c = m / (2 * (1 + b))
    share = c / (1 + b) / 2  # c^2/m, of the first difference
    total, weight = 0.5 + share, 1.0
    while np.any(c > 1e-9 * a):
        a, b = (a + b) / 2, np.sqrt(a * b)
        ratio = c / (2 * (a + b))  # of the next difference to this
        c, share, weight = c * ratio, share * ratio * ratio, 2 * weight
        total = total + weight * share
    return total


def jacobi(u, mc):
    """sn, cn, dn (n,) of u (n,), best within a quarter period of 0; hyperbolic at mc = 0."""
    if mc == 0.0:
        cn = 1 / np.cosh(np.clip(u, -700.0, 700.0))
        return np.tanh(u), cn, cn
    means, a, b = [], 1.0, mc
    while True:
        root = math.sqrt(b)
        means.append((a, root))
        mean = (a + root) / 2
        if abs(a - root) <= 1e-8 * a:
            break
        a, b = mean, root * a
    sin, cos = np.sin(mean * u), np.cos(mean * u)
    some = sin != 0
    ratio = np.divide(cos, sin, out=np.zeros_like(sin), where=some)
    c, dn = mean * ratio, np.ones_like(sin)
    for a, root in means[::-1]:
        ratio, c = c * ratio, c * dn
        dn = (root + ratio) / (a + ratio)
        ratio = c / a
    size = 1 / np.sqrt(c * c + 1)
    sn = np.where(sin >= 0, size, -size)
    return np.where(some, sn, 0.0), np.where(some, c * sn, cos), np.where(some, dn, 1.0)


def carlson_f(x, y, z):
    """R_F of x, y, z (n,) at least 0, at most one of them 0."""
    x, y, z = np.broadcast_arrays(x, y, z)
    mean = (x + y + z) / 3
    off = _DIGITS_F * np.maximum(np.maximum(abs(mean - x), abs(mean - y)), abs(mean - z))
    begun, share = mean, 1.0
    u, v, w = x, y, z
    for _ in range(_HALVINGS):
        if np.all(share * off <= mean):
            break
        a, b, c = np.sqrt(u), np.sqrt(v), np.sqrt(w)
        more = a * b + b * c + c * a
        u, v, w, mean, share = (u + more) / 4, (v + more) / 4, (w + more) / 4, (mean + more) / 4, share / 4
    p, q = share * (begun - x) / mean, share * (begun - y) / mean
    r = -p - q
    e2, e3 = p * q - r * r, p * q * r
    return (1 - e2 / 10 + e3 / 14 + e2 * e2 / 24 - 3 * e2 * e3 / 44) / np.sqrt(mean)


def carlson_j(x, y, z, p):
    """R_J of x, y, z (n,) at least 0, at most one of them 0, and p (n,) above 0."""
    x, y, z, p = np.broadcast_arrays(x, y, z, p)
    mean = (x + y + z + 2 * p) / 5
    delta = (p - x) * (p - y) * (p - z)
    off = _DIGITS_J * np.max(np.abs(np.stack([mean - x, mean - y, mean - z, mean - p])), axis=0)
    begun, share, total = mean, 1.0, np.zeros_like(mean)
    u, v, w, t = x, y, z, p
    for _ in range(_HALVINGS):
        if np.all(share * off <= mean):
            break
        a, b, c, d = np.sqrt(u), np.sqrt(v), np.sqrt(w), np.sqrt(t)
        more = a * b + b * c + c * a
        product = (d + a) * (d + b) * (d + c)
        total = total + share / product * _carlson_c(share**3 * delta / product**2)
        u, v, w, t = (u + more) / 4, (v + more) / 4, (w + more) / 4, (t + more) / 4
        mean, share = (mean + more) / 4, share / 4
    f, g, h = (share * (begun - value) / mean for value in (x, y, z))
    k = -(f + g + h) / 2
    e2 = f * g + g * h + h * f - 3 * k * k
    e3 = f * g * h + 2 * e2 * k + 4 * k**3
    e4 = (2 * f * g * h + e2 * k + 3 * k**3) * k
    e5 = f * g * h * k * k
    series = 1 - 3 * e2 / 14 + e3 / 6 + 9 * e2 * e2 / 88 - 3 * e4 / 22 - 9 * e2 * e3 / 52 + 3 * e5 / 26
    return share * series / (mean * np.sqrt(mean)) + 6 * total


def _carlson_c(e):
    """R_C(1, 1 + e) of e (n,) above -1."""
    root = np.sqrt(np.abs(e))
    with np.errstate(divide="ignore", invalid="ignore"):
        far = np.where(e > 0, np.arctan(root), np.arctanh(np.where(e < 0, root, 0.0))) / root
    return np.where(root < 1e-3, 1 - e / 3 + e * e / 5 - e**3 / 7, far)
