"""What bodies meet as gaps: values, rates, polynomials along a path, normals into the room, how those bend."""

import numpy as np
import pytest
from scipy.optimize import brentq

from rimfall.physics import bernstein
from rimfall.physics.surfaces import Ball, Drum, Plane, Tube
from tests.tables import each_row

LEANING = (0.36, -0.48, 0.8)
SURFACES = {
    "deck": Drum("deck", 56.0, hollow=True),
    "hub": Drum("hub", 2.0, hollow=False),
    "edge": Drum("edge", 56.0, hollow=True, edge=True),
    "wall": Plane("wall", (0.0, 0.0, 1.0), -7.0),
    "far wall": Plane("wall", (0.0, 0.0, -1.0), -7.0),
    "slope": Plane("ramp", LEANING, -9.0),
    "ball": Ball("deck", 56.0),
    "tube": Tube(56.0, 25.0),
    "slim tube": Tube(40.0, 9.0),
}
ALL = each_row("surface", SURFACES.values())
SMALL = np.array([0.1])
INSIDE = np.array([[30.0], [10.0], [2.0]])
TORI = [(1e4, 0.5), (1e4, 30.0), (1e4, 5e3), (56.0, 4.0), (2.0, 0.5), (1.0, 0.5)]


def test_gaps_are_from_the_bodys_own_surface_but_at_an_edge():
    at = np.array([[50.0], [0.0], [5.0]])
    expected = {
        "deck": 5.9,
        "hub": 47.9,
        "edge": 6.0,
        "wall": 11.9,
        "far wall": 1.9,
        "slope": 0.36 * 50 + 4 + 9 - 0.1,
        "ball": 55.9 - np.hypot(50.0, 5.0),
        "tube": 24.9 - np.hypot(19.0, 5.0),
        "slim tube": 8.9 - np.hypot(19.0, 5.0),
    }
    assert {name: s.gap(at, SMALL)[0] for name, s in SURFACES.items()} == pytest.approx(expected)
    boundary = Plane("edge", (1.0, 0.0, 0.0), -3.0, edge=True)
    assert boundary.gap(at, SMALL) == pytest.approx(53.0)
    assert boundary.gap_control(at, np.zeros((2, 3, 1)), SMALL)[0] == pytest.approx(53.0)


def path(s):
    """A cubic in s: position, first and second derivative (3, 1)."""
    powers = np.array([[30.0, 10.0, 2.0], [3.0, -9.0, 1.0], [-20.0, 4.0, 2.0], [5.0, 5.0, 0.5]])
    parts = [np.poly1d(powers[::-1, a]) for a in range(3)]
    return tuple(np.array([[np.polyder(p, k)(s)] for p in parts]) for k in range(3))


@ALL
@each_row("s", [0.0, 0.3, 0.9])
def test_rates_are_those_of_the_gap(surface, s):
    h = 1e-4
    below, here, above = (surface.gap(path(x)[0], SMALL)[0] for x in (s - h, s, s + h))
    rate, change = surface.gap_rates(*path(s))
    assert rate[0] == pytest.approx((above - below) / (2 * h), abs=1e-5)
    assert change[0] == pytest.approx((above - 2 * here + below) / h**2, abs=1e-4)


def at_share(control, s):
    """Points (3, N) of Bernstein control points (n + 1, 3, N) at one s, corner by corner (de Casteljau)."""
    while len(control) > 1:
        control = control[:-1] + s * (control[1:] - control[:-1])
    return control[0]


@ALL
def test_the_polynomial_vanishes_where_the_gap_does_and_has_its_sign(surface):
    rng = np.random.default_rng(4)
    control = rng.normal(size=(8, 3, 300)) * 20
    control[0] = 0.0
    start = np.tile(INSIDE, 300)
    gap = surface.gap_control(start, control, np.full(300, 0.1))
    for s in (0.0, 0.4, 1.0):
        true = surface.gap(start + at_share(control, s), 0.1)
        assert np.all(np.sign(bernstein.value(gap, np.full(300, s))) == np.sign(true))


def test_near_contact_the_polynomial_is_the_gap_in_metres():
    still = np.zeros((2, 3, 1))
    for name, at in (("deck", 55.899), ("hub", 2.101), ("ball", 55.899)):
        found = SURFACES[name].gap_control(np.array([[at], [0.0], [0.0]]), still, SMALL)
        assert found[0, 0] == pytest.approx(1e-3, rel=1e-3)


@each_row(("radius_m", "tube_m"), TORI)
@each_row("angle", [0.0, 1.5, 2.5, np.pi])
def test_in_a_tube_the_polynomial_is_never_less_than_the_gap_near_contact(radius_m, tube_m, angle):
    """So that no contact deeper than a share of it is passed over: it may only be too keen."""
    tube, limit = Tube(radius_m, tube_m), tube_m - 0.01
    for depth in (1e-6, -1e-6):
        off = limit + depth
        at = np.array([[tube.middle_m + off * np.cos(angle)], [0.0], [off * np.sin(angle)]])
        found = tube.gap_control(at, np.zeros((2, 3, 1)), np.array([0.01]))[0, 0]
        assert np.sign(found) == -np.sign(depth)
        assert abs(found) >= 0.9 * abs(depth)


@each_row(("radius_m", "tube_m"), TORI)
def test_a_straight_path_meets_the_tube_where_a_root_finder_says(radius_m, tube_m):
    """The exact distance to the ring, sampled densely, then Brent's method (scipy): places to 1e-9 m."""
    tube, rng, radius = Tube(radius_m, tube_m), np.random.default_rng(7), 0.05
    start, way = inside_a_tube(tube, tube_m - radius, 40, rng)
    powers = np.stack([np.zeros_like(way), way])
    gap = tube.gap_control(start, bernstein.from_powers(powers), np.full(40, radius))
    found = bernstein.first_descent(gap)
    for i in range(40):
        true = first_root(lambda s, i=i: tube.gap(start[:, [i]] + np.atleast_1d(s) * way[:, [i]], radius))
        speed = abs(tube.gap_rates(start[:, i] + true * way[:, i], way[:, i], np.zeros(3))[0])
        assert abs(found[i] - true) * speed <= 1e-9


def inside_a_tube(tube, limit, count, rng):
    """Starts (3, count) inside a tube and straight ways (3, count) that end well outside it."""
    turn, across = rng.uniform(0, 2 * np.pi, (2, count))
    off = limit * np.sqrt(rng.uniform(0, 0.9, count))
    rho = tube.middle_m + off * np.cos(across)
    start = np.stack([rho * np.cos(turn), rho * np.sin(turn), off * np.sin(across)])
    way = rng.normal(size=(3, count))
    return start, 2.5 * tube.radius_m * way / np.linalg.norm(way, axis=0)


def first_root(gap):
    """The first root of a gap on [0, 1] after dense samples."""
    s = np.concatenate([np.linspace(0, 0.05, 20_001), np.linspace(0.05, 1, 2001)[1:]])
    k = np.argmax(gap(s) < 0)
    assert k > 0
    return brentq(lambda x: gap(x)[0], s[k - 1], s[k], xtol=1e-16, rtol=1e-15)


@ALL
def test_a_path_said_to_be_far_never_meets_the_surface(surface):
    rng = np.random.default_rng(5)
    control = rng.normal(size=(5, 3, 3000)) * np.array([[18], [18], [5]]) * rng.uniform(0.2, 1, 3000)
    control[0] = 0.0
    start = np.tile(INSIDE, 3000)
    far = ~surface.near(start, control, np.full(3000, 0.1))
    assert 100 < np.count_nonzero(far) < 2990
    for s in np.linspace(0, 1, 60):
        assert np.all(surface.gap(start + at_share(control, s), 0.1)[far] > 0)
    falls = bernstein.first_descent(surface.gap_control(start, control, np.full(3000, 0.1)))
    assert np.all(np.isinf(falls[far]))


@ALL
def test_normals_are_of_length_1_and_point_into_the_room(surface):
    at = INSIDE[:, 0]
    normal = surface.normal(at)
    assert np.linalg.norm(normal) == pytest.approx(1.0)
    assert surface.gap(at + normal, 0.1) == pytest.approx(surface.gap(at, 0.1) + 1)
    many = surface.normal(np.tile(INSIDE, 4))
    assert many == pytest.approx(np.tile(normal[:, None], 4))


@ALL
def test_the_bend_is_how_fast_the_normal_changes(surface):
    at, moving, h = INSIDE, np.array([[2.0], [5.0], [-3.0]]), 1e-6
    change = (surface.normal(at + h * moving) - surface.normal(at - h * moving)) / (2 * h)
    assert surface.normal_rate(at, moving) == pytest.approx(change, abs=1e-8)
    assert surface.normal_rate(at[:, 0], moving[:, 0]) == pytest.approx(change[:, 0], abs=1e-8)


def test_only_planes_that_do_not_lie_across_the_axis_look_turned():
    assert [name for name, s in SURFACES.items() if s.turned] == ["slope"]


def test_a_tube_is_deck_outside_its_middle_and_ceiling_inside():
    tube = SURFACES["tube"]
    assert tube.name_at(np.array([31.5, 0.0, 24.0])) == "deck"
    assert tube.name_at(np.array([0.0, -30.5, 24.0])) == "ceiling"
    assert SURFACES["wall"].name_at(np.zeros(3)) == "wall"
