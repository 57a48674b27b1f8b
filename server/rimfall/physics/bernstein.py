"""Polynomials on [0, 1] in Bernstein form: signs that are certain, and the first root.

Why this form: the coefficients bound the polynomial, so "no root" can be proved instead of sampled, and the number of sign
changes among them is never below the number of roots (variation diminishing; Farin, Curves and Surfaces for CAGD, ch. 5).
Coefficients are (n + 1, N): N polynomials of degree n.
"""

from functools import lru_cache
from math import comb

import numpy as np


@lru_cache
def _from_powers(n):
    """(n + 1, n + 1): powers of s, lowest first -> Bernstein coefficients."""
    return np.array([[comb(i, k) / comb(n, k) if k <= i else 0.0 for k in range(n + 1)] for i in range(n + 1)])


@lru_cache
def _raising(n, degree):
    """(degree + 1, n + 1): degree n -> the same polynomial as the other degree."""
    more = degree - n
    return np.array(
        [
            [comb(n, j) * comb(more, k - j) / comb(degree, k) if 0 <= k - j <= more else 0.0 for j in range(n + 1)]
            for k in range(degree + 1)
        ]
    )


def from_powers(powers):
    """Powers of s (n + 1, ...), lowest first -> Bernstein coefficients (n + 1, ...)."""
    n = len(powers) - 1
    return (_from_powers(n) @ powers.reshape(n + 1, -1)).reshape(powers.shape)


def raised(control):
    """Degree n (n + 1, N) -> the same as degree 2 n (2 n + 1, N)."""
    n = len(control) - 1
    return _raising(n, 2 * n) @ control


def of_degree(control, degree):
    """Degree n (n + 1, ...), n at most `degree` -> the same as that degree (degree + 1, ...)."""
    raised = _raising(len(control) - 1, degree) @ control.reshape(len(control), -1)
    return raised.reshape(-1, *control.shape[1:])


@lru_cache
def _product(n):
    """(2 n + 1, (n + 1)^2): products of coefficients, row by row -> coefficients of the product."""
    table = np.zeros((2 * n + 1, n + 1, n + 1))
    for i in range(n + 1):
        for j in range(n + 1):
            table[i + j, i, j] = comb(n, i) * comb(n, j) / comb(2 * n, i + j)
    return table.reshape(2 * n + 1, -1)


def squared(control):
    """Sum of squares of vector polynomials (n + 1, A, N) -> degree 2 n (2 n + 1, N)."""
    products = np.einsum("ian,jan->ijn", control, control)
    return _product(len(control) - 1) @ products.reshape(-1, control.shape[2])


def derivative(control):
    """Derivative (n, N) of (n + 1, N)."""
    return (len(control) - 1) * (control[1:] - control[:-1])


def deflated(control):
    """(n, N): the polynomial divided by s, given that it vanishes at 0 (its first coefficient is taken as 0)."""
    n = len(control) - 1
    return control[1:] * (n / np.arange(1, n + 1))[:, None]


def first_descent(control, depth=1e-9):
    """Where each polynomial (n + 1, N), above 0 at 0, first falls through 0: s (N,) in [0, 1], inf where it does not.

    A dip shallower than `depth` may be passed over; every deeper one is found. One that starts at or below 0 has s = 0.
    """
    above = control[0] > 0
    s = np.where(above, np.inf, 0.0)
    open_ = above & (control < 0).any(axis=0)
    if not open_.any():
        return s
    signs = np.signbit(control)
    once = open_ & (np.add.reduce(signs[1:] != signs[:-1], axis=0) == 1)
    if once.any():
        s[once] = _only_root(control[:, once])
    for i in (open_ & ~once).nonzero()[0].tolist():
        s[i] = _first_root(control[:, i], depth)
    return s


def first_fall(control):
    """Where each polynomial (n + 1, N) first falls through 0 from above it: s (N,) in [0, 1], inf where it does not. One that begins
    at or below 0 falls only after it has risen."""
    s = first_descent(control)
    s[control[0] <= 0] = np.inf
    below = np.flatnonzero((control[0] <= 0) & np.any(control > 0, axis=0))
    rises = first_descent(-control[:, below])
    below, rises = below[np.isfinite(rises)], rises[np.isfinite(rises)]
    if not len(below):
        return s
    rest = deflated(_after(control[:, below], rises))
    falls = np.where(rest[0] > 0, first_descent(rest), np.inf)
    s[below] = rises + (1.0 - rises) * falls
    return s


def _after(control, s):
    """Polynomials (n + 1, N) on [s, 1] (de Casteljau), s (N,)."""
    out = control.copy()
    for k in range(len(control) - 1, 0, -1):
        out[:k] += s * (out[1 : k + 1] - out[:k])
    return out


def _first_root(b, depth):
    """First root in [0, 1] of one polynomial (n + 1,) with b[0] > 0, or inf."""
    pieces = [(0.0, 1.0, b)]  # a stack, leftmost on top
    while pieces:
        low, high, c = pieces.pop()
        if c.min() > -depth and c[-1] >= 0:
            continue
        if c[0] <= 0 or high - low < 1e-15:
            return low
        if np.count_nonzero(np.diff(np.signbit(c))) == 1:
            return low + (high - low) * float(_only_root(c[:, None])[0])
        middle = 0.5 * (low + high)
        left, right = _halves(c)
        pieces += [(middle, high, right), (low, middle, left)]
    return np.inf


def _halves(c):
    """One polynomial on [0, 1/2] and on [1/2, 1] (de Casteljau)."""
    left, right = np.empty_like(c), np.empty_like(c)
    row = c
    for i in range(len(c)):
        left[i], right[-1 - i] = row[0], row[-1]
        row = 0.5 * (row[:-1] + row[1:])
    return left, right


@lru_cache
def _counts(n):
    """Binomial coefficients of degree n, a list."""
    return [float(comb(n, k)) for k in range(n + 1)]


@lru_cache
def _ways(n):
    """The same as an array (n + 1, 1)."""
    return np.array(_counts(n))[:, None]


def weights(n, s):
    """(n + 1, N): what each coefficient of degree n gives to the values at s (N,)."""
    rising, falling = np.empty((2, n + 1, len(s)))
    rising[0] = falling[0] = 1.0
    rising[1:], falling[1:] = s, 1.0 - s
    np.multiply.accumulate(rising, axis=0, out=rising)
    np.multiply.accumulate(falling, axis=0, out=falling)
    rising *= falling[::-1]
    rising *= _ways(n)
    return rising


def value(control, s):
    """Values (..., N) of polynomials (n + 1, ..., N) at s (N,) in [0, 1]: a weighted mean of the coefficients, so no digits are lost."""
    return np.einsum("kn,k...n->...n", weights(len(control) - 1, s), control)


@lru_cache
def straight(degree):
    """(degree + 1, 1, 1): coefficients of s."""
    out = np.linspace(0.0, 1.0, degree + 1)[:, None, None]
    out.flags.writeable = False
    return out


_FEW = 8  # polynomials


def _only_root(c):
    """The one root (M,) in (0, 1] of each polynomial (n + 1, M) whose coefficients change sign once, from + to -.

    Newton's steps, held inside a bracket that shrinks; the bracket alone would do.
    """
    if c.shape[1] <= _FEW:
        return np.array([_root_of(one) for one in c.T])
    slope = derivative(c)
    low, high = np.zeros(c.shape[1]), np.ones(c.shape[1])
    s = _chord(c)
    for _ in range(80):
        f, d = value(c, s), value(slope, s)
        low, high = np.where(f > 0, s, low), np.where(f > 0, high, s)
        guess = s - f / np.where(d < 0, d, -1.0)
        lost = (d >= 0) | (guess < low) | (guess > high)
        guess = np.where(lost, 0.5 * (low + high), guess)
        still = np.abs(guess - s) <= 4e-16
        s = guess
        if np.all(still):
            break
    return s


def _root_of(c):
    """The same of one polynomial (n + 1,), by plain numbers: numpy's cost a call is what counts of so few."""
    n, c = len(c) - 1, c.tolist()
    terms = [each * ways for each, ways in zip(c, _counts(n), strict=True)]
    slopes = [n * (b - a) * ways for a, b, ways in zip(c, c[1:], _counts(n - 1), strict=False)]
    k = next((k for k, each in enumerate(c) if each < 0), n)
    low, high, s = 0.0, 1.0, (k - 1 + c[k - 1] / (c[k - 1] - c[k])) / n
    for _ in range(80):
        f, d = _sum_at(terms, s), _sum_at(slopes, s)
        if f > 0:
            low = s
        else:
            high = s
        guess = s - f / d if d < 0 else -1.0
        if not low <= guess <= high:
            guess = 0.5 * (low + high)
        still, s = abs(guess - s) <= 4e-16, guess
        if still:
            break
    return s


def _sum_at(terms, s):
    """What terms (n + 1), coefficients times their ways, come to at s, by Horner's rule from the nearer end."""
    far = 1.0 - s
    if s <= 0.5:
        near, terms = far, terms[::-1]
        ratio = s / far
    else:
        near, ratio = s, far / s
    out = 0.0
    for term in terms:
        out = out * ratio + term
    return out * near ** (len(terms) - 1)


def _chord(c):
    """A first guess (M,): where the broken line through the coefficients crosses 0."""
    k = np.argmax(np.signbit(c), axis=0)
    above, below = np.take_along_axis(c, k[None] - 1, 0)[0], np.take_along_axis(c, k[None], 0)[0]
    return (k - 1 + above / (above - below)) / (len(c) - 1)
