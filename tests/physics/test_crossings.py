"""First contacts inside a step, and where a path turns back, against closed forms."""

import math

import numpy as np
import pytest
from scipy.optimize import brentq

from rimfall.physics import turned
from rimfall.physics.crossings import first_contact, nearest_axis, touching
from rimfall.physics.integrate import Coaster
from rimfall.physics.spin import steady
from rimfall.physics.surfaces import Drum, Plane
from tests.tables import each_row

DECK, HUB = Drum("deck", 56.0, hollow=True), Drum("hub", 2.0, hollow=False)
TIME_S = 1e-11


def straight(position, velocity, seconds, pull=(0.0, 0.0, 0.0)):
    """One step of one body that coasts."""
    p, v, g = (np.array([x], dtype=float).T for x in (position, velocity, pull))
    return Coaster(g, p, v, np.array([seconds]), np.array([np.inf])).step()


def contact(step, *surfaces, radius_m=0.0):
    s, which = first_contact(step, surfaces, np.array([radius_m]), np.zeros((len(surfaces), 1), dtype=int))
    return s[0] * step.length_s[0], which[0]


def test_a_straight_path_meets_the_deck_where_the_quadratic_says():
    time_s, _ = contact(straight((54.0, 0, 0), (1.0, 17.0, 0), 9.0), DECK, radius_m=0.25)
    a, b, c = 1 + 17.0**2, 54.0, 54.0**2 - 55.75**2
    assert time_s == pytest.approx((-b + math.sqrt(b * b - a * c)) / a, abs=TIME_S)


def test_a_path_past_the_hub_at_less_than_its_radius_meets_it():
    time_s, _ = contact(straight((50.0, 1.0, 0), (-10.0, 0, 0), 9.0), HUB, radius_m=0.5)
    assert time_s == pytest.approx((50.0 - math.sqrt(2.5**2 - 1.0)) / 10, abs=TIME_S)


@each_row("depth_m", [1e-3, 1e-6, 2e-9])
def test_a_graze_is_found_inside_one_long_step(depth_m):
    step = straight((50.0, 2.0 - depth_m, 0), (-10.0, 0, 0), 9.0)  # both ends lie far off the hub
    expected = (50.0 - math.sqrt(4.0 - (2.0 - depth_m) ** 2)) / 10
    assert contact(step, HUB)[0] == pytest.approx(expected, abs=1e-6)
    assert contact(straight((50.0, 2.0 + depth_m, 0), (-10.0, 0, 0), 9.0), HUB)[1] == -1


def test_of_two_surfaces_the_sooner_one_counts():
    step = straight((50.0, 0, 0), (-1.0, 0, 4.0), 60.0)
    wall = Plane("wall", (0.0, 0.0, -1.0), -7.0)
    assert contact(step, HUB, wall) == (pytest.approx(7.0 / 4.0), 1)
    assert contact(step, wall, HUB)[1] == 0


def state(surface, position, velocity, acceleration=(0, 0, 0)):
    column = lambda x: np.array([x], dtype=float).T  # noqa: E731 - one body
    return touching(surface, column(position), column(velocity), column(acceleration), np.zeros(1))[0]


def test_how_a_body_stands_to_a_surface_at_its_release():
    assert state(DECK, (50, 0, 0), (1, 0, 0)) == 0  # clear of it
    assert state(DECK, (56, 0, 0), (-1, 17, 0)) == 1  # thrown off it
    assert state(HUB, (2, 0, 0), (0, 1, 0)) == 2  # let go at it: carried off by its own speed
    assert state(Plane("wall", (0.0, 0.0, 1.0), -7.0), (9, 0, -7), (0, 0, 0), (0, 0, 2)) == 2  # pulled off it
    assert state(DECK, (56, 0, 0), (0, 17, 0)) == -1  # lying on it
    assert state(DECK, (56, 0, 0), (0, 0, 0)) == -1  # floating at it, at rest outside


def test_a_body_thrown_off_the_deck_comes_back_to_it_once():
    step = straight((56.0, 0, 0), (-6.0, 17.0, 0), 20.0)
    s, _ = first_contact(step, (DECK,), np.zeros(1), np.array([[1]]))
    assert s[0] * 20.0 == pytest.approx(2 * 56.0 * 6.0 / (36 + 289), abs=TIME_S)


def test_a_body_let_go_at_the_ceiling_does_not_meet_it_again():
    ceiling = Drum("ceiling", 52.0, hollow=False)
    s, _ = first_contact(straight((52.0, 0, 0), (0, 16.0, 0), 9.0), (ceiling,), np.zeros(1), np.array([[2]]))
    assert s[0] == np.inf


def nearest(position, velocity, seconds=20.0):
    step = straight(position, velocity, seconds)
    return nearest_axis(step.position_m.T, step.path_m[:, :2], step.length_s)[0] * seconds


def test_a_straight_path_is_nearest_the_axis_where_it_stands_square_to_it():
    assert nearest((40.0, 3.0, 0), (-5.0, 1.0, 2.0)) == pytest.approx((40 * 5 - 3) / 26)
    assert nearest((40.0, 0.0, 0), (-5.0, 0.0, 0.0)) == pytest.approx(8.0)


def test_a_path_that_moves_off_or_ends_before_has_no_turning_point():
    assert nearest((40.0, 3.0, 0), (5.0, 1.0, 0)) == math.inf
    assert nearest((40.0, 3.0, 0), (-1.0, 0.0, 0)) == math.inf


FLOOR = Plane("floor", (-1.0, 0.0, 0.0), -30.0)
OMEGA = 0.5


def past_the_turning_floor(position, velocity, radius_m=0.0):
    """When a body that coasts first meets FLOOR, which turns, step by step, as `first_contact` has it."""
    p, v = (np.array([x], dtype=float).T for x in (position, velocity))
    longest = np.array([turned.longest_s(steady(OMEGA))])
    coaster = Coaster(np.zeros((3, 1)), p, v, np.array([40.0]), np.array([np.inf]), longest_s=longest)
    start_s = np.array([1.7])
    while not coaster.done[0]:
        step = coaster.step()
        none = np.zeros((1, 1), dtype=int)
        s, _ = first_contact(step, (FLOOR,), np.array([radius_m]), none, (steady(OMEGA), start_s))
        if np.isfinite(s[0]):
            return step.elapsed_s[0] + s[0] * step.length_s[0]
    return np.inf


@each_row("radius_m", [0.0, 0.2])
@each_row("position", [(2.0, 1.0, 0.0), (-12.0, 5.0, 3.0), (9.0, -26.0, 0.0)])
def test_a_floor_that_turns_is_met_where_a_root_finder_says(radius_m, position):
    """scipy's Brent on the exact distance: the straight path, turned back by the floor's own angle."""
    velocity = (3.0, -8.0, 1.0)

    def gap(t):
        x, y, _ = np.array(position) + t * np.array(velocity)
        angle = OMEGA * (1.7 + t)
        return 30.0 - radius_m - (np.cos(angle) * x + np.sin(angle) * y)

    times = np.linspace(0, 40, 40_001)
    k = int(np.argmax(np.array([gap(t) for t in times]) < 0))
    true = brentq(gap, times[k - 1], times[k], xtol=1e-14)
    assert past_the_turning_floor(position, velocity, radius_m) == pytest.approx(true, abs=1e-10)


def test_a_turning_floor_that_dips_into_a_path_inside_a_step_is_met():
    """A body at rest outside the floor's own circle: the middle of the floor comes round to it, its edge of a plane first."""
    time_s = past_the_turning_floor((-31.0, 0.0, 0.0), (0.0, 0.0, 0.0))
    turn = (
        np.pi - np.arccos(30.0 / 31.0)
    ) / OMEGA  # when the plane's foot is so far from the body that it just touches
    assert time_s == pytest.approx(turn - 1.7, abs=1e-10)
