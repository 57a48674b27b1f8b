"""What meets a third surface while it touches two goes on along what it must, or lies there: against closed forms, by hand."""

import numpy as np
import pytest

from rimfall.physics.nook import stopped_by
from rimfall.physics.spin import ramped
from rimfall.physics.surfaces import Plane
from tests.tables import each_row

from .test_corner import A_M, FLOOR, WALL, G, H, at, ball, groove, kinds, springy, went

END = Plane("ceiling", (-1.0, 0.0, 0.0), -2.0)
THREE = (FLOOR, WALL, END)
SLOPE = Plane("ceiling", (-0.6, 0.8, 0.0), -1.2)  # rises ahead at atan 3/4


@each_row(("mode", "mu"), [("stands", 0.0), ("stands", 0.05), ("rolls", 0.05)])
def test_in_a_corner_of_three_it_comes_to_rest(mode, mu):
    spin = (0, 0, -2 / A_M) if mode == "rolls" else (0, 0, 0)
    journey = went(THREE, (0, A_M, A_M), (2.0, 0, 0), spin, body=ball(friction=mu), mode=mode)
    assert journey.end == "rest"
    assert {"wall", "ceiling", "rest"} <= set(kinds(journey))
    assert at(journey, journey.ends_s)[0][:3] == pytest.approx([2 - A_M, A_M, A_M], abs=1e-3)


def test_what_nothing_stops_spinning_lies_there_and_spins():
    journey = went(THREE, (0, A_M, A_M), (2.0, 0, 0), (0, 0, -40.0), body=ball(friction=0.0))
    x, u = at(journey, 10.0)
    assert x[:3] == pytest.approx([2 - A_M, A_M, A_M], abs=1e-8)
    assert u == pytest.approx([0, 0, 0, 0, 0, -40.0], abs=1e-8)


def test_up_a_slope_along_a_wall_it_goes_on_along_both():
    """Without friction the speed that the slope leaves is 2 cos; up it falls by g sin (the inclined plane)."""
    journey = went((FLOOR, WALL, SLOPE), (0, A_M, A_M), (2.0, 0, 0), body=ball(friction=0.0), mode="stands", end_s=1.4)
    meets_s = next(e.time_s for e in journey.events if e.kind == "ceiling")
    since = 1.4 - meets_s
    along = 1.6 * since - 0.5 * 0.6 * G * since**2
    assert at(journey, 1.4)[0][:3] == pytest.approx([2 * meets_s + 0.8 * along, A_M + 0.6 * along, A_M], abs=1e-8)


def test_what_lies_between_three_leaves_when_the_changing_spin_lets_it():
    """Ahead of it acts omega^2 x + omega' y, back 1 m/s2: it leaves where the two are one."""
    change, x = -0.1, 2.0 - A_M
    journey = went(
        THREE, (x, A_M, A_M), (0, 0, 0), body=ball(friction=0.0), pull=(-1.0, -G, -H), omega=ramped(1.0, [(9.0, 0.1)]), mode="stands",
        end_s=6.0,
    )  # fmt: skip
    leaves_s = (np.sqrt((1.0 - change * A_M) / x) - 1.0) / change
    for later, moved in ((leaves_s - 1e-3, False), (leaves_s + 0.5, True)):
        assert (at(journey, later)[0][0] < x - 1e-4) == moved


@each_row("spin", [(30.0, -20.0, 10.0)])
def test_a_ball_spinning_into_a_corner_of_three_ends_near_where_springs_have_it(spin):
    state = (2 - A_M - 0.2, A_M, A_M), (1.0, 0, 0), spin
    journey = went(THREE, *state, body=ball(), pull=(0.5, -4.0, -4.0), end_s=0.6)
    where, _ = springy(THREE, *state, ball(), (0.5, -4.0, -4.0), 0.0, 0.6)
    assert journey.end == "rest"
    assert np.linalg.norm(at(journey, journey.ends_s)[0][:3] - where) < 0.03


def test_the_velocity_that_three_surfaces_leave():
    square = np.eye(3)
    assert stopped_by(square, np.array([-1.0, -2.0, 0.5])) == pytest.approx([0, 0, 0.5])
    assert stopped_by(square, np.array([1.0, 2.0, 0.5])) == pytest.approx([1.0, 2.0, 0.5])
    wedge = np.array([[0, 1.0, 0], [0.8, -0.6, 0], [0, 0, 1.0]]).T  # less than a right angle between the first two
    assert stopped_by(wedge, np.array([-1.0, -0.1, 0.0])) == pytest.approx([0, 0, 0], abs=1e-12)


def test_two_walls_that_face_each_other_bear_it_with_the_floor():
    """A ball as wide as the way between them: what presses it to one has it glide along that and the floor."""
    other = Plane("wall", (0.0, 0.0, -1.0), -2 * A_M)
    journey = went((FLOOR, WALL, other), (0, A_M, A_M), (1.0, 0, 0), body=ball(friction=0.0), mode="stands", end_s=3.0)
    assert at(journey, 3.0)[0][:3] == pytest.approx([3.0, A_M, A_M], abs=1e-7)
    assert groove((1.0, 0, 0), body=ball(friction=0.0), mode="stands").end is None
