"""Deck, ceiling, hub and walls as gaps: values, rates, polynomials along a path, normals into the room."""

import numpy as np
import pytest

from server.physics import bernstein
from server.physics.surfaces import Drum, Plane

DECK, HUB = Drum("deck", 56.0, hollow=True), Drum("hub", 2.0, hollow=False)
WALL, FAR_WALL = Plane("wall", 2, -7.0, +1.0), Plane("wall", 2, 7.0, -1.0)
ALL = pytest.mark.parametrize("surface", [DECK, HUB, WALL, FAR_WALL], ids=["deck", "hub", "wall", "far wall"])
SMALL = np.array([0.1])
INSIDE = np.array([[30.0], [10.0], [2.0]])


def test_gaps_are_from_the_bodys_own_surface():
    at = np.array([[50.0], [0.0], [5.0]])
    assert DECK.gap(at, SMALL) == pytest.approx(5.9)
    assert HUB.gap(at, SMALL) == pytest.approx(47.9)
    assert WALL.gap(at, SMALL) == pytest.approx(11.9)
    assert FAR_WALL.gap(at, SMALL) == pytest.approx(1.9)


def path(s):
    """A cubic in s: position, first and second derivative (3, 1)."""
    powers = np.array([[30.0, 10.0, 2.0], [3.0, -9.0, 1.0], [-20.0, 4.0, 2.0], [5.0, 5.0, 0.5]])
    parts = [np.polyder(np.poly1d(powers[::-1, a]), 0) for a in range(3)]
    return tuple(np.array([[np.polyder(p, k)(s)] for p in parts]) for k in range(3))


@ALL
@pytest.mark.parametrize("s", [0.0, 0.3, 0.9])
def test_rates_are_those_of_the_gap(surface, s):
    h = 1e-4
    below, here, above = (surface.gap(path(x)[0], SMALL)[0] for x in (s - h, s, s + h))
    rate, change = surface.gap_rates(*path(s))
    assert rate[0] == pytest.approx((above - below) / (2 * h), abs=1e-5)
    assert change[0] == pytest.approx((above - 2 * here + below) / h**2, abs=1e-4)


@ALL
def test_the_polynomial_vanishes_where_the_gap_does_and_has_its_sign(surface):
    rng = np.random.default_rng(4)
    control = rng.normal(size=(8, 3, 300)) * 20
    control[0] = 0.0
    start = np.tile(INSIDE, 300)
    gap = surface.gap_control(start, control, np.full(300, 0.1))
    for s in (0.0, 0.4, 1.0):
        row = control
        while len(row) > 1:
            row = row[:-1] + s * (row[1:] - row[:-1])
        true = surface.gap(start + row[0], 0.1)
        found = bernstein.value(gap, np.full(300, s))
        assert np.all(np.sign(found) == np.sign(true))


def test_near_contact_the_polynomial_is_the_gap_in_metres():
    still = np.zeros((2, 3, 1))
    for surface, at in ((DECK, 55.899), (HUB, 2.101)):
        assert surface.gap_control(np.array([[at], [0.0], [0.0]]), still, SMALL)[0, 0] == pytest.approx(1e-3, rel=1e-3)


@ALL
def test_a_path_said_to_be_far_never_meets_the_surface(surface):
    rng = np.random.default_rng(5)
    control = rng.normal(size=(5, 3, 2000)) * [[[18], [18], [3]]]
    control[0] = 0.0
    start = np.tile(INSIDE, 2000)
    far = ~surface.near(start, control, np.full(2000, 0.1))
    assert 100 < np.count_nonzero(far) < 1990
    falls = bernstein.first_descent(surface.gap_control(start, control, np.full(2000, 0.1)))
    assert np.all(np.isinf(falls[far]))


@ALL
def test_normals_are_of_length_1_and_point_into_the_room(surface):
    normal = surface.normal(INSIDE[:, 0])
    assert np.linalg.norm(normal) == pytest.approx(1.0)
    assert surface.gap(INSIDE + 0.01 * normal[:, None], SMALL)[0] > surface.gap(INSIDE, SMALL)[0]
    assert surface.gap(INSIDE + normal[:, None], SMALL)[0] == pytest.approx(surface.gap(INSIDE, SMALL)[0] + 1)
