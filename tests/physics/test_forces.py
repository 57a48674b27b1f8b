"""Drag and pull on bodies in air that turns, in the inertial frame."""

import math

import numpy as np
import pytest

from rimfall.physics.air import air_at
from rimfall.physics.bodies import Body, as_arrays
from rimfall.physics.forces import Force, Medium
from rimfall.physics.spin import ramped, steady
from tests.tables import each_row

AIR = air_at(101.325, 20.0)
R, OMEGA = 56.0, 0.4
BALL = Body(0.5, 0.2, 0.47)
NO_PULL = (0.0, 0.0, 0.0)


def force(bodies, spin=None, air=AIR, turns=1.0, pull=NO_PULL, start_s=0.0):
    n = len(bodies)
    medium = Medium(spin or steady(OMEGA), air, R)
    return Force(medium, as_arrays(bodies), np.full(n, start_s), np.full(n, turns), np.tile(np.array([pull]).T, n))


def column(*values):
    return np.array([values], dtype=float).T


def test_drag_is_half_rho_cd_area_speed_squared_against_the_motion():
    found = force([BALL]).at(0.0, column(R, 0, 0), column(0, OMEGA * R, 3.0))
    expected = 0.5 * AIR.deck_density_kg_m3 * 0.47 * math.pi * 0.1**2 * 3.0**2 / 0.5
    assert found[:, 0] == pytest.approx([0, 0, -expected], rel=1e-12, abs=1e-12)


@each_row("body", [BALL, Body(0.5, 0.2), Body(1e-9, 1e-4)])
def test_a_body_that_turns_with_the_air_feels_none_of_it(body):
    assert force([body]).at(0.0, column(30.0, 0, 4.0), column(0, OMEGA * 30.0, 0))[:, 0] == pytest.approx([0, 0, 0])


def test_a_slow_sphere_feels_stokes_drag():
    mist = Body(1e-9, 1e-4)
    found = force([mist]).at(0.0, column(R, 0, 0), column(0, OMEGA * R, 1e-6))
    assert found[2, 0] == pytest.approx(-3 * math.pi * AIR.viscosity_pa_s * 1e-4 * 1e-6 / 1e-9, rel=1e-3)


def test_over_still_ground_the_air_is_still_and_of_the_decks_density():
    turning = force([BALL]).at(0.0, column(R, 0, 0), column(0, OMEGA * R, 3.0))
    still = force([BALL], turns=0.0).at(0.0, column(500.0, 1.0, 0), column(0, 0, 3.0))
    assert still == pytest.approx(turning)


def test_the_air_turns_with_the_spin_of_that_instant():
    spinning_up = force([BALL], ramped(0.0, [(10.0, 1.0)]), start_s=3.0)
    assert spinning_up.at(2.0, column(R, 0, 0), column(0, 0.5 * R, 0))[:, 0] == pytest.approx([0, 0, 0], abs=1e-12)


def test_a_level_pull_turns_with_its_frame_and_an_axial_one_stays():
    turned = force([BALL], air=None, pull=(2.0, 0.5, -1.0)).at(math.pi / 2 / OMEGA, column(1, 0, 0), column(0, 0, 0))
    still = force([BALL], air=None, turns=0.0, pull=(2.0, 0.0, -1.0)).at(7.0, column(1, 0, 0), column(0, 0, 0))
    assert turned[:, 0] == pytest.approx([-0.5, 2, -1])
    assert still[:, 0] == pytest.approx([2, 0, -1])


def test_bodies_of_different_drag_do_not_mix():
    bodies = [BALL, Body(0.5, 0.2), Body(0.002, 0.01)]
    position, velocity = np.full((3, 3), 20.0), np.arange(9.0).reshape(3, 3)
    together = force(bodies)
    for i, body in enumerate(bodies):
        alone = force([body]).at(0.0, position[:, [i]], velocity[:, [i]])
        assert together.at(0.0, position, velocity)[:, i] == pytest.approx(alone[:, 0], rel=1e-13)
        picked = together.take([i]).at(0.0, position[:, [i]], velocity[:, [i]])
        assert picked == pytest.approx(alone, rel=1e-13)


@each_row("spin", [None, ramped(0.0, [(10.0, 2.0)])])
def test_the_force_on_a_slice_is_that_on_its_bodies(spin):
    many = as_arrays([BALL, Body(0.5, 0.2), Body(0.01, 0.3, buoyant=True), Body(0.002, 0.01, 0.5), BALL])
    medium = Medium(spin or steady(OMEGA), AIR, R)
    each = np.arange(15.0).reshape(3, 5)
    turns = np.array([1.0, 1.0, 0.0, 1.0, 0.0])
    whole = Force(medium, many, np.arange(5.0), turns, 0.1 * each, 3.0 + each)
    some = slice(1, 4)
    found = whole.take(some).at(0.5, 20.0 + each[:, some], each[:, some] - 7.0)
    assert found == pytest.approx(whole.take([1, 2, 3]).at(0.5, 20.0 + each[:, some], each[:, some] - 7.0), rel=1e-14)
    assert found == pytest.approx(whole.at(0.5, 20.0 + each, each - 7.0)[:, some], rel=1e-14)
    again = whole.take(some).take(slice(1, 3)).at(0.5, 20.0 + each[:, 2:4], each[:, 2:4] - 7.0)
    assert again == pytest.approx(found[:, 1:], rel=1e-14)


def test_what_nothing_but_a_constant_pull_moves_coasts():
    assert force([BALL], air=None, pull=(0, 0, -2.0)).coasts
    assert force([BALL], air=None, pull=(3.0, 0, 0), turns=0.0).coasts
    assert not force([BALL], air=None, pull=(3.0, 0, 0)).coasts
    assert not force([BALL]).coasts


SPIN = np.array([[40.0], [-70.0], [25.0]])


def lifted(body, spin_rad_s, position, velocity, medium_spin=None, elapsed_s=0.0, **of_air):
    """What a spin adds to the acceleration (3,) of one body."""
    bodies, medium = as_arrays([body]), Medium(medium_spin or steady(OMEGA), AIR, R)
    start, ones, pull = np.zeros(1), np.ones(1), np.zeros((3, 1))
    plain, spinning = (Force(medium, bodies, start, ones, pull, s, **of_air) for s in (None, spin_rad_s))
    state = elapsed_s, position, velocity
    return (spinning.at(*state) - plain.at(*state))[:, 0]


def as_written(body, spin, through_air, density):
    """Lift (3,): half rho A C_L u^2 along s x u, over the mass; C_L = 1.12 S/(0.583 + 2.333 S) (Cross & Nathan)."""
    speed, rate = np.linalg.norm(through_air), np.linalg.norm(spin)
    factor = body.radius_m * rate / speed
    size = 0.5 * density * math.pi * body.radius_m**2 * 1.12 * factor / (0.583 + 2.333 * factor) * speed**2
    return size * np.cross(spin / rate, through_air / speed) / body.mass_kg


@each_row("body", [BALL, Body(0.5, 0.2)])
@each_row("spin", [None, ramped(0.0, [(10.0, 2.0)])])
def test_lift_is_along_spin_across_motion_both_against_the_air(body, spin):
    omega = OMEGA if spin is None else 0.8
    position, velocity = column(30.0, -8.0, 2.0), column(3.0, 9.0, -2.0)
    air_moves = np.cross([0, 0, omega], position[:, 0])
    density = AIR.deck_density_kg_m3 * math.exp(omega**2 * AIR.thinning_s2_m2 * (30**2 + 8**2 - R**2))
    expected = as_written(body, SPIN[:, 0] - [0, 0, omega], velocity[:, 0] - air_moves, density)
    assert lifted(body, SPIN, position, velocity, spin, elapsed_s=4.0) == pytest.approx(expected, rel=1e-11)


def test_in_still_air_of_a_turning_room_lift_and_drag_are_by_the_inertial_motion_at_the_decks_density():
    position, velocity = column(30.0, -8.0, 2.0), column(3.0, 9.0, -2.0)
    still = {"air_turns": np.zeros(1)}
    expected = as_written(BALL, SPIN[:, 0], velocity[:, 0], AIR.deck_density_kg_m3)
    assert lifted(BALL, SPIN, position, velocity, **still) == pytest.approx(expected, rel=1e-11)
    medium = Medium(steady(OMEGA), AIR, R)
    found = Force(medium, as_arrays([BALL]), np.zeros(1), np.ones(1), np.zeros((3, 1)), **still)
    assert found.at(0.0, position, velocity) == pytest.approx(
        force([BALL], turns=0.0).at(0.0, position, velocity), rel=1e-14
    )


def test_a_ball_that_spins_with_the_air_or_is_at_rest_in_it_or_is_a_point_is_not_lifted():
    position, velocity = column(30.0, 0, 0), column(3.0, 9.0, -2.0)
    none = pytest.approx([0, 0, 0], abs=1e-15)
    assert lifted(BALL, column(0, 0, OMEGA), position, velocity) == none
    assert lifted(BALL, SPIN, position, column(0, OMEGA * 30.0, 0)) == none
    assert lifted(Body(1.0, 0.0, 0.5), SPIN, position, velocity) == none


def test_what_flies_unspun_pays_nothing_for_those_that_spin():
    """At a steady spin the lift is dropped where every ball turns with the air, also of those that are left."""
    bodies, medium = as_arrays([BALL, BALL]), Medium(steady(OMEGA), AIR, R)
    spins = np.array([[0.0, 5.0], [0.0, 0.0], [OMEGA, 0.0]])
    both = Force(medium, bodies, np.zeros(2), np.ones(2), np.zeros((3, 2)), spins)
    assert both._lift is not None
    assert both.take(np.array([True, False]))._lift is None
    state = np.full((3, 1), 20.0), np.full((3, 1), 4.0)
    alone = Force(medium, bodies.take([1]), np.zeros(1), np.ones(1), np.zeros((3, 1)), spins[:, [1]])
    assert both.take([1]).at(0.0, *state) == pytest.approx(alone.at(0.0, *state), rel=1e-14)
