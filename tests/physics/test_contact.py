"""The impulse law against the sports' own rules, textbooks' worked cases and the laws it must keep."""

import math

import numpy as np
import pytest

from rimfall.physics import contact
from rimfall.physics.bodies import Body, named
from tests.tables import each_row

UP = np.array([[0.0, 1.0, 0.0]])


def meet(body, velocity, spin=(0.0, 0.0, 0.0), restitution=None):
    """Velocity, spin and slip (3,) after a body has met level ground."""
    many = contact.balls([body])
    e = many.restitution if restitution is None else np.array([restitution])
    return tuple(a[0] for a in contact.impulse(many, UP, np.array([velocity], float), np.array([spin], float), e))


def ball(shell="solid", friction=0.5, restitution=0.8):
    return Body(0.1, 0.08, shell=shell, friction=friction, restitution=restitution)


@each_row(
    ("name", "drop_m", "low_m", "high_m"),
    [
        ("tennis ball", 2.54, 1.35, 1.47),  # ITF Rules of Tennis, Appendix I: rebound from 254 cm
        ("table-tennis ball", 0.305, 0.24, 0.26),  # ITTF leaflet on balls: rebound from 30.5 cm on steel
    ],
)
def test_a_ball_of_the_rules_rebounds_as_the_rules_ask(name, drop_m, low_m, high_m):
    g = 9.80665
    velocity, _, _ = meet(named(name), (0.0, -math.sqrt(2 * g * drop_m), 0.0))
    assert low_m <= velocity[1] ** 2 / (2 * g) <= high_m


@each_row(("shell", "share"), [("solid", 5 / 7), ("hollow", 3 / 5)])
def test_a_ball_that_grips_leaves_with_5_7_or_3_5_of_its_speed_along(shell, share):
    """A ball without spin that meets the ground and grips: u_t/(1 + beta) (any mechanics text, from memory)."""
    velocity, spin, slip = meet(ball(shell, friction=5.0), (3.0, -2.0, 0.0))
    assert velocity == pytest.approx([3.0 * share, 1.6, 0.0], abs=1e-12)
    assert spin == pytest.approx([0.0, 0.0, -3.0 * share / 0.04], abs=1e-9)
    assert np.linalg.norm(slip) < 1e-12


def test_a_ball_that_slips_loses_friction_times_the_normal_impulse():
    velocity, spin, slip = meet(ball(friction=0.1), (3.0, -2.0, 0.0))
    along = 0.1 * 1.8 * 2.0
    assert velocity == pytest.approx([3.0 - along, 1.6, 0.0], abs=1e-12)
    assert spin[2] == pytest.approx(-along / (0.4 * 0.04), abs=1e-9)
    assert slip == pytest.approx([3.0 - along * 3.5, 0.0, 0.0], abs=1e-12)


def test_backspin_can_send_a_ball_back():
    velocity, _, _ = meet(ball(friction=1.0), (1.0, -4.0, 0.0), (0.0, 0.0, 200.0))
    assert velocity[0] < 0


def test_a_ball_that_rolls_meets_the_ground_and_goes_on_rolling():
    velocity, spin, slip = meet(ball(), (2.0, -1.0, 0.0), (0.0, 0.0, -2.0 / 0.04))
    assert velocity[0] == pytest.approx(2.0, abs=1e-12)
    assert spin[2] == pytest.approx(-50.0, abs=1e-9)
    assert np.linalg.norm(slip) < 1e-12


@each_row("shell", ["solid", "hollow"])
@each_row("friction", [0.0, 0.05, 0.5, 5.0])
def test_no_contact_makes_energy(shell, friction):
    chance = np.random.default_rng(3)
    body = ball(shell, friction, 1.0)
    inertia = body.inertia_factor * body.radius_m**2
    for _ in range(200):
        u, s = chance.normal(size=3) * 3, chance.normal(size=3) * 40
        u[1] = -abs(u[1])
        v, w, _ = meet(body, u, s)
        before, after = (a @ a + inertia * (b @ b) for a, b in ((u, s), (v, w)))
        assert after <= before * (1 + 1e-12)
        assert friction > 0 or after == pytest.approx(before, rel=1e-12)


def test_the_angular_momentum_about_the_touching_point_stays():
    """The impulse acts there (any mechanics text, from memory)."""
    body = ball("hollow", 0.3)
    u, s = np.array([2.0, -3.0, 1.0]), np.array([10.0, -5.0, 30.0])
    v, w, _ = meet(body, u, s)
    arm, inertia = np.array([0.0, body.radius_m, 0.0]), body.inertia_factor * body.radius_m**2
    assert np.cross(arm, v) + inertia * w == pytest.approx(np.cross(arm, u) + inertia * s, abs=1e-12)


def test_a_point_that_grips_stops_along_the_ground():
    velocity, spin, _ = meet(Body(1.0, 0.0, friction=5.0, restitution=0.5), (3.0, -2.0, 1.0))
    assert velocity == pytest.approx([0.0, 1.0, 0.0], abs=1e-12)
    assert np.all(spin == 0)


@each_row(
    ("leaves_m_s", "pressed_m_s2", "rebounds"),
    [
        (0.05, 9.8, True),
        (0.04, 9.8, False),
        (0.0, 9.8, False),
        (0.0, -1.0, False),
        (1e-6, -1.0, True),
        (1e-6, 0.0, True),
    ],
)
def test_a_rebound_lower_than_a_tenth_of_a_millimetre_is_none(leaves_m_s, pressed_m_s2, rebounds):
    """0.1 mm at 9.8 m/s2 takes 0.0443 m/s."""
    many = contact.balls([ball()])
    assert contact.rebounds(many, np.array([leaves_m_s]), np.array([pressed_m_s2]))[0] == rebounds


def test_a_large_ball_needs_a_thousandth_of_its_width():
    many = contact.balls([Body(10.0, 1.0)])
    assert list(contact.rebounds(many, np.array([0.13]), np.array([9.8]))) == [False]
    assert list(contact.rebounds(many, np.array([0.15]), np.array([9.8]))) == [True]
