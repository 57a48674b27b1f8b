"""Functions of time in panels, a Chebyshev polynomial on each, and all their roots: found, or ruled out by bounds.

A panel's polynomial is in x from -1 to 1. A sum of the sizes of Chebyshev coefficients bounds a polynomial on its panel; by bounds of
its derivatives each stretch of it is shown to have no root, one, or an extremum and what lies beside that; else it is halved (Boyd,
Solving Transcendental Equations, 2014, chapters 2 and 3). Coefficients are (P, n + 1), lowest degree first.
"""

from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise

import numpy as np

from ..physics.budget import spend

_MOST_HALVINGS = 40
_NEWTON = 60
_ALONE = 1e-13  # of a polynomial's greatest value: an extremum so near to 0 is a root itself


@lru_cache
def nodes(degree: int) -> np.ndarray:
    """Chebyshev's points (degree + 1,) from -1 to 1, both ends among them."""
    return -np.cos(np.pi * np.arange(degree + 1) / degree)


@lru_cache
def _to_coefficients(degree):
    """(n + 1, n + 1): values at the nodes -> coefficients."""
    k = np.arange(degree + 1)
    return np.linalg.inv(np.cos(np.outer(np.arccos(np.clip(nodes(degree), -1, 1)), k)))


@lru_cache
def _differentiate(degree):
    """(n + 1, n): coefficients -> those of the derivative by x."""
    out = np.zeros((degree + 1, max(degree, 1)))
    for k in range(1, degree + 1):
        for j in range(k - 1, -1, -2):
            out[k, j] = (1.0 if j == 0 else 2.0) * k
    return out


def coefficients(values: np.ndarray) -> np.ndarray:
    """Values (P, n + 1, ...) at the nodes -> coefficients (P, n + 1, ...)."""
    return np.einsum("kj,pj...->pk...", _to_coefficients(values.shape[1] - 1), values)


def slope(coefs: np.ndarray) -> np.ndarray:
    """Coefficients (P, n + 1, ...) -> those of the derivative by x (P, n, ...)."""
    return np.einsum("kj,pk...->pj...", _differentiate(coefs.shape[1] - 1), coefs)


def value(coefs: np.ndarray, x: np.ndarray) -> np.ndarray:
    """Values (M, ...) of polynomials (M, n + 1, ...), each at its own x (M,) (Clenshaw's sum)."""
    x = x.reshape(-1, *(1,) * (coefs.ndim - 2))
    ahead, far = np.zeros_like(coefs[:, 0]), np.zeros_like(coefs[:, 0])
    for k in range(coefs.shape[1] - 1, 0, -1):
        ahead, far = coefs[:, k] + 2 * x * ahead - far, ahead
    return coefs[:, 0] + x * ahead - far


@dataclass(frozen=True)
class Panels:
    """Panels from low to high (P,), in order."""

    low: np.ndarray
    high: np.ndarray

    def times(self, degree: int) -> np.ndarray:
        """The nodes of each (P, degree + 1)."""
        return self.low[:, None] + 0.5 * (self.high - self.low)[:, None] * (1.0 + nodes(degree))

    def x(self, time: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
        """Numbers of the panels that hold times (M,), and where in them those lie, x (M,)."""
        k = np.clip(np.searchsorted(self.high, time), 0, len(self.low) - 1)
        return k, np.clip((2 * time - self.low[k] - self.high[k]) / (self.high[k] - self.low[k]), -1.0, 1.0)

    def time(self, panel: np.ndarray, x: np.ndarray) -> np.ndarray:
        """The inverse."""
        return self.low[panel] + 0.5 * (self.high - self.low)[panel] * (1.0 + x)

    def halved(self, which: np.ndarray) -> "Panels":
        """Those of a mask, each as two."""
        middle = 0.5 * (self.low + self.high)[which]
        ends = np.sort(np.concatenate([self.low[which], middle])), np.sort(np.concatenate([middle, self.high[which]]))
        return Panels(*ends)


def between(stops: np.ndarray, longest: float) -> Panels:
    """Panels from the first of the stops to the last, none longer than that, none across a stop."""
    edges = [stops[:1]]
    for low, high in pairwise(stops):
        edges.append(np.linspace(low, high, max(int(np.ceil((high - low) / longest)), 1) + 1)[1:])
    edges = np.concatenate(edges)
    return Panels(edges[:-1], edges[1:])


def roots(panels: Panels, values: np.ndarray) -> np.ndarray:
    """All times, rising, at which a function of values (P, n + 1) at the nodes is 0; one at which it only touches 0 is there once."""
    coefs = coefficients(values)
    first = slope(coefs)
    second = slope(first)
    third = np.abs(slope(second)).sum(axis=1)
    size = np.abs(coefs).sum(axis=1)
    panel = np.flatnonzero(np.abs(coefs[:, 0]) <= np.abs(coefs[:, 1:]).sum(axis=1))
    middle, half = np.zeros(len(panel)), np.ones(len(panel))
    found = []
    for _ in range(_MOST_HALVINGS):
        if not len(panel):
            break
        spend(1, len(panel))
        f, df, ddf = (value(each[panel], middle) for each in (coefs, first, second))
        bound = third[panel]
        none = np.abs(f) > half * (np.abs(df) + half * (0.5 * np.abs(ddf) + half * bound / 6))
        simple = ~none & (np.abs(df) > half * (np.abs(ddf) + 0.5 * half * bound))
        bent = ~none & ~simple & (np.abs(ddf) > half * bound)
        found.append(_crossed(panels, coefs, panel[simple], (middle - half)[simple], (middle + half)[simple]))
        found += _about_extrema(panels, (coefs, first, second), size, panel[bent], middle[bent], half[bent])
        again = ~(none | simple | bent)
        panel = np.repeat(panel[again], 2)
        half = 0.5 * np.repeat(half[again], 2)
        middle = np.repeat(middle[again], 2) + half * np.tile([-1.0, 1.0], len(panel) // 2)
    return _once(np.concatenate([*found, np.empty(0)]), panels)


def _once(times, panels):
    """Times in order, those that are one but for rounding once."""
    times = np.sort(times)
    apart = np.diff(times, prepend=-np.inf) > 1e-13 * max(1.0, abs(panels.high[-1]))
    return times[apart]


def _crossed(panels, coefs, panel, low, high):
    """Times at which monotone stretches pass through 0."""
    if not len(panel):
        return np.empty(0)
    at_low, at_high = value(coefs[panel], low), value(coefs[panel], high)
    some = (np.sign(at_low) * np.sign(at_high) < 0) | (at_low == 0) | (at_high == 0)
    panel, low, high, rising = panel[some], low[some], high[some], (at_high > at_low)[some]
    return panels.time(panel, _bisected(coefs[panel], slope(coefs)[panel], low, high, rising))


def _bisected(coefs, first, low, high, rising):
    """The root (M,) of each monotone polynomial between low and high (Newton's steps, held inside a bracket)."""
    x = 0.5 * (low + high)
    for _ in range(_NEWTON):
        f = value(coefs, x)
        above = (f > 0) == rising
        low, high = np.where(above, low, x), np.where(above, x, high)
        df = value(first, x)
        with np.errstate(divide="ignore", invalid="ignore"):
            guess = x - f / df
        guess = np.where((guess >= low) & (guess <= high), guess, 0.5 * (low + high))
        if np.all(np.abs(guess - x) <= 4e-16):
            break
        x = guess
    return x


def _about_extrema(panels, derivatives, size, panel, middle, half):
    """Times of roots on stretches that bend one way: beside their extremum, or where they have none at either end."""
    if not len(panel):
        return []
    coefs, first, second = derivatives
    low, high = middle - half, middle + half
    at_low, at_high = value(first[panel], low), value(first[panel], high)
    turns = np.sign(at_low) * np.sign(at_high) < 0
    out = [_crossed(panels, coefs, panel[~turns], low[~turns], high[~turns])]
    panel, low, high, rising = panel[turns], low[turns], high[turns], (at_high > at_low)[turns]
    x = _bisected(first[panel], second[panel], low, high, rising)
    touches = np.abs(value(coefs[panel], x)) <= _ALONE * size[panel]
    out.append(panels.time(panel[touches], x[touches]))
    panel, low, high, x = (each[~touches] for each in (panel, low, high, x))
    return [*out, _crossed(panels, coefs, panel, low, x), _crossed(panels, coefs, panel, x, high)]
