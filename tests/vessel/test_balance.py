"""Balance: weights that leave none of the offset and the products, tilt, gravity round a rim, and the pull on a joint."""

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from rimfall.vessel import balance
from rimfall.vessel.bodies import Body, joined, principal
from rimfall.vessel.solids import Solid, body_of, turn_to
from tests.tables import each_row
from tests.vessel.test_bodies import CRAFTS, whole

EXACT = 1e-12
PLANES = st.tuples(st.floats(-50, 49), st.floats(0.5, 100)).map(lambda pair: (pair[0], pair[0] + pair[1]))


def balanced(body, radius, planes):
    weights = balance.two_plane_weights(body, radius, planes)
    points = [
        Solid(
            "point", one.mass_kg, (radius * math.cos(one.azimuth_rad), radius * math.sin(one.azimuth_rad), one.plane_m)
        )
        for one in weights
    ]
    return joined([body, *(body_of(point) for point in points if point.mass_kg)])


@settings(max_examples=60)
@given(CRAFTS, st.floats(1, 100), PLANES)
def test_two_weights_leave_neither_offset_nor_products(solids, radius, planes):
    """To 1e-12 of what the weights and the craft have of each."""
    body = whole(solids)
    first, product = balance.moments(balanced(body, radius, planes))
    scale = body.mass_kg * 200 * max(1, 200 / (planes[1] - planes[0]))
    assert abs(first) <= EXACT * scale
    assert abs(product) <= EXACT * scale * 200


def test_one_plane_will_do_for_what_is_not_skew_and_for_nothing_else():
    even = body_of(Solid("point", 10.0, (3.0, 0.0, 2.0)))
    weights = balance.two_plane_weights(even, 5.0, (2.0, 2.0))
    assert [one.mass_kg for one in weights] == pytest.approx([3.0, 3.0])
    assert [abs(one.azimuth_rad) for one in weights] == pytest.approx([math.pi, math.pi])
    assert balance.two_plane_weights(even, 5.0, (1.0, 1.0)) is None


@each_row(("lean_deg", "toward_deg"), [(0.0, 0.0), (3.0, 50.0), (20.0, -170.0), (1e-4, 0.0)])
def test_a_disc_that_leans_leans_as_much(lean_deg, toward_deg):
    lean, toward = math.radians(lean_deg), math.radians(toward_deg)
    axis = (math.sin(lean) * math.cos(toward), math.sin(lean) * math.sin(toward), math.cos(lean))
    tilt, azimuth = balance.tilt(body_of(Solid("disc", 8.0, (0.0, 0.0, 0.0), axis, radius_m=2.0)))
    assert tilt == pytest.approx(lean, abs=1e-12)
    if lean:
        assert math.degrees(azimuth) == pytest.approx(toward_deg, abs=1e-6)


def test_the_moment_on_an_axis_is_that_of_the_masses_on_it():
    """Two masses askew on an axis: each pulls outward with m ω² r, and the pair twists."""
    pair = joined([body_of(Solid("point", 4.0, (s * 3.0, 0.0, s * 2.0))) for s in (1, -1)])
    assert balance.bearing_moment_n_m(pair, 0.5) == pytest.approx(2 * 4 * 0.25 * 3 * 2)
    assert balance.offset(pair)[0] == 0.0


def test_gravity_round_a_rim_is_the_distance_from_where_it_turns_about():
    angles = np.linspace(0, 2 * math.pi, 7201)
    away = np.hypot(56 * np.cos(angles) - 0.4, 56 * np.sin(angles))
    least, greatest = balance.gravity_round(56.0, 0.4, 0.3)
    assert (least, greatest) == pytest.approx((0.09 * away.min(), 0.09 * away.max()))


def test_a_point_and_a_ball_have_no_tilt():
    assert balance.tilt(body_of(Solid("point", 1.0, (1.0, 1.0, 1.0)))) == (0.0, 0.0)
    assert balance.tilt(body_of(Solid("sphere", 1.0, (1.0, 1.0, 1.0), radius_m=3.0))) == (0.0, 0.0)


def test_the_principal_axis_that_counts_is_the_one_nearest_the_axis():
    """Of a long body it is that of least inertia."""
    turn = turn_to(np.array([math.sin(0.1), 0.0, math.cos(0.1)]))
    rod = Body(1.0, np.zeros(3), turn @ np.diag([9.0, 8.0, 1.0]) @ turn.T)
    assert balance.tilt(rod)[0] == pytest.approx(0.1)
    assert principal(rod)[0] == pytest.approx([1, 8, 9])


@each_row(
    ("axis", "lean_deg"),
    [((1.0, 0.0, 0.03), math.degrees(math.atan(0.03))), ((1.0, 0.4, 0.0), 0.0), ((0.0, 0.0, 1.0), 0.0)],
)
def test_of_two_axes_that_are_alike_any_between_them_is_principal(axis, lean_deg):
    """A ring that lies on its side: the nearest to z of the directions across its own axis, whichever the machine happens to name."""
    for kind in ("torus", "rod", "disc"):
        body = body_of(Solid(kind, 9.0, (0.0, 0.0, 0.0), axis, radius_m=28.0, length_m=30.0, tube_radius_m=3.0))
        assert math.degrees(balance.tilt(body)[0]) == pytest.approx(lean_deg, abs=1e-6)


def test_planes_that_are_next_to_one_are_one():
    skew = joined([body_of(Solid("point", 4.0, (3.0, 0.0, 2.0))), body_of(Solid("point", 4.0, (1.0, 1.0, -2.0)))])
    assert balance.two_plane_weights(skew, 5.0, (0.0, 5e-324)) is None
    assert balance.two_plane_weights(skew, 5.0, (0.0, 1e-3)) is not None
