"""How likely a misfit at least that large is by chance: the chi-squared distribution, by the incomplete gamma function.

Series below a + 1, Lentz's continued fraction above: Abramowitz & Stegun (1964), 6.5.29 and 6.5.31.
"""

import math

_MOST = 100_000
_LEAST = 1e-300
_ENOUGH = 1e-15


def p_value(chi2, freedom):
    """The chance that chi squared of that many degrees of freedom is chi2 or more; 1 where there are none."""
    if freedom <= 0 or chi2 <= 0.0:
        return 1.0
    a, x = 0.5 * freedom, 0.5 * chi2
    if not math.isfinite(x):
        return 0.0
    front = math.exp(a * math.log(x) - x - math.lgamma(a))
    if x < a + 1.0:
        return 1.0 - front * _series(a, x)
    return front * _fraction(a, x)


def _series(a, x):
    term = total = 1.0 / a
    for n in range(1, _MOST):
        term *= x / (a + n)
        total += term
        if term < total * _ENOUGH:
            break
    return total


def _fraction(a, x):
    b = x + 1.0 - a
    c, d = 1.0 / _LEAST, 1.0 / b
    value = d
    for n in range(1, _MOST):
        step = -n * (n - a)
        b += 2.0
        d = step * d + b
        d = 1.0 / (d if abs(d) > _LEAST else _LEAST)
        c = b + step / c
        c = c if abs(c) > _LEAST else _LEAST
        value *= c * d
        if abs(c * d - 1.0) < _ENOUGH:
            break
    return value
