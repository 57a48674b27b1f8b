"""First contacts inside a step, and where a path turns back, against closed forms."""

import math

import numpy as np
import pytest

from server.physics.crossings import first_contact, nearest_axis, touching
from server.physics.integrate import Coaster
from server.physics.surfaces import Drum, Plane

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


@pytest.mark.parametrize("depth_m", [1e-3, 1e-6, 2e-9])
def test_a_graze_is_found_inside_one_long_step(depth_m):
    step = straight((50.0, 2.0 - depth_m, 0), (-10.0, 0, 0), 9.0)  # both ends lie far off the hub
    expected = (50.0 - math.sqrt(4.0 - (2.0 - depth_m) ** 2)) / 10
    assert contact(step, HUB)[0] == pytest.approx(expected, abs=1e-6)
    assert contact(straight((50.0, 2.0 + depth_m, 0), (-10.0, 0, 0), 9.0), HUB)[1] == -1


def test_of_two_surfaces_the_sooner_one_counts():
    step = straight((50.0, 0, 0), (-1.0, 0, 4.0), 60.0)
    wall = Plane("wall", 2, 7.0, -1.0)
    assert contact(step, HUB, wall) == (pytest.approx(7.0 / 4.0), 1)
    assert contact(step, wall, HUB)[1] == 0


def state(surface, position, velocity, acceleration=(0, 0, 0)):
    column = lambda x: np.array([x], dtype=float).T  # noqa: E731 - one body
    return touching(surface, column(position), column(velocity), column(acceleration), np.zeros(1))[0]


def test_how_a_body_stands_to_a_surface_at_its_release():
    assert state(DECK, (50, 0, 0), (1, 0, 0)) == 0  # clear of it
    assert state(DECK, (56, 0, 0), (-1, 17, 0)) == 1  # thrown off it
    assert state(HUB, (2, 0, 0), (0, 1, 0)) == 2  # let go at it: carried off by its own speed
    assert state(Plane("wall", 2, -7.0, 1.0), (9, 0, -7), (0, 0, 0), (0, 0, 2)) == 2  # pulled off it
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
    return nearest_axis(step.position_m.T, np.moveaxis(step.path_m, 2, 0))[0] * seconds


def test_a_straight_path_is_nearest_the_axis_where_it_stands_square_to_it():
    assert nearest((40.0, 3.0, 0), (-5.0, 1.0, 2.0)) == pytest.approx((40 * 5 - 3) / 26)
    assert nearest((40.0, 0.0, 0), (-5.0, 0.0, 0.0)) == pytest.approx(8.0)


def test_a_path_that_moves_off_or_ends_before_has_no_turning_point():
    assert nearest((40.0, 3.0, 0), (5.0, 1.0, 0)) == math.inf
    assert nearest((40.0, 3.0, 0), (-1.0, 0.0, 0)) == math.inf
