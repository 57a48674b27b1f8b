"""Attitude without losses: against scipy's integration, the elliptic integral, and what every rigid body does."""

import math

import numpy as np
import pytest
from scipy import special

from rimfall.vessel import tumble
from rimfall.vessel.attitude import principal_of, torque_free
from rimfall.vessel.bodies import Body
from rimfall.vessel.damped import Damped
from tests.tables import each_row
from tests.vessel.thousand_turns import CASES, QUATERNIONS, SKEW, until_s
from tests.vessel.tumbling import apart, body_of, inertia_of, integrated, matrices, momentum_drift

QUATERNION, DRIFT, PERIOD = 1e-8, 1e-10, 1e-9  # the bounds of the contract


def test_twenty_flips_about_the_middle_axis():
    for moments, rates in (([1, 2, 3], [0.1, 1, 0.1]), ([1, 1.9, 2.1], [1e-3, -1, -1e-3])):
        body = body_of(moments)
        until_s = 10 * tumble.flip_period_s(body, rates)
        turned = torque_free(body, rates).at(np.array([until_s]))
        assert apart(turned.quaternion_wxyz[0], integrated(body, rates, until_s)) < QUATERNION


@each_row("name", list(CASES))
def test_a_thousand_turns_about_the_other_axes(name):
    inertia, rates = CASES[name]
    body = body_of(inertia)
    turned = torque_free(body, rates).at(np.linspace(0, until_s(rates), 501))
    assert apart(turned.quaternion_wxyz[-1], np.array(QUATERNIONS[name])) < QUATERNION
    assert momentum_drift(body, turned, inertia_of(body) @ rates) < DRIFT
    energy = np.einsum("ni,ij,nj->n", turned.rates_rad_s, inertia_of(body), turned.rates_rad_s)
    np.testing.assert_allclose(energy, energy[0], rtol=DRIFT)


def test_bodies_of_revolution():
    """Against scipy, with the momentum's cone as a closed form: seen from the body it goes round the axis at (1 - Iz/It) wz."""
    for moments, rates in (([2, 2, 3], [-0.4, 0.2, -1]), ([3, 1, 3], [-0.4, 0.2, 1]), ([5, 5, 1e-6], [0.1, 0.2, 1])):
        body = body_of(moments)
        time_s = np.linspace(0, 40, 41)
        turned = torque_free(body, rates).at(time_s)
        assert apart(turned.quaternion_wxyz[-1], integrated(body, rates, 40.0)) < QUATERNION
        own = next(i for i in range(3) if moments.count(moments[i]) == 1)
        a, b = (own + 1) % 3, (own + 2) % 3
        round_rad = np.unwrap(np.arctan2(turned.rates_rad_s[:, b], turned.rates_rad_s[:, a]))
        rate = (moments[own] / moments[a] - 1) * rates[own]
        np.testing.assert_allclose(round_rad - round_rad[0], rate * time_s, atol=1e-9)


def test_steady_turning_is_steady():
    for moments, rates in (
        ([1, 2, 3], [0, 1, 0]),
        ([1, 2, 3], [0, 0, -1]),
        ([2, 2, 2], [0.1, 0.7, -0.3]),
        ([1, 2, 3], [0, 0, 0]),
    ):
        turned = torque_free(body_of(moments), rates).at(np.array([0.0, 1.0, 1e4]))
        assert np.all(turned.rates_rad_s == rates)
        assert not np.any(turned.changes_rad_s2)


def test_the_separatrix_comes_to_the_middle_axis_and_stays():
    """There the rates are hyperbolic functions (Landau & Lifshitz, section 37): 2 E I2 is L^2, I3 (I3 - I2) w3^2 being I1 (I2 - I1) w1^2."""
    body, rates = body_of([1, 2, 4]), [math.sqrt(8.0) * 0.25, 0.5, 0.25]
    motion = torque_free(body, rates)
    greatest, _, per_s, mc = motion._motion
    assert mc < 1e-15
    time_s = np.linspace(0, 20 / per_s, 41)
    turned = motion.at(time_s)
    assert apart(turned.quaternion_wxyz[10], integrated(body, rates, time_s[10])) < QUATERNION
    assert abs(turned.rates_rad_s[20, 1]) == pytest.approx(abs(greatest[1]), rel=1e-6)


def test_period_of_the_rates_is_that_of_the_elliptic_integral():
    """Landau & Lifshitz, Mechanics, (37.11) and (37.12), written out for L^2 > 2 E I2, with scipy's K."""
    rng = np.random.default_rng(5)
    for _ in range(50):
        moments = np.sort(rng.uniform(1, 2, 3))
        rates = rng.normal(size=3)
        i1, i2, i3 = moments
        twice, square = moments @ rates**2, moments**2 @ rates**2
        if square < twice * i2:
            i1, i3 = i3, i1
        m = (i2 - i1) * (twice * i3 - square) / ((i3 - i2) * (square - twice * i1))
        period_s = 4 * special.ellipk(m) * math.sqrt(i1 * i2 * i3 / ((i3 - i2) * (square - twice * i1)))
        assert tumble.flip_period_s(body_of(moments), rates) == pytest.approx(period_s, rel=PERIOD)


def test_rates_come_back_after_a_period():
    body, rates = body_of([1, 2, 3]), [0.1, 1.0, 0.1]
    period_s = tumble.flip_period_s(body, rates)
    turned = torque_free(body, rates).at(np.array([0.0, period_s / 2, period_s]))
    np.testing.assert_allclose(turned.rates_rad_s[2], rates, atol=1e-12)
    np.testing.assert_allclose(turned.rates_rad_s[1], [-0.1, -1.0, 0.1], atol=1e-12)  # half way: one flip


def test_changes_are_those_of_the_rates():
    body, rates, step = body_of(SKEW @ np.diag([1, 1.7, 2.1]) @ SKEW.T), [-0.4, 0.2, -1], 1e-4
    turned = torque_free(body, rates).at(7.0 + step * np.array([-1.0, 0.0, 1.0]))
    np.testing.assert_allclose(
        (turned.rates_rad_s[2] - turned.rates_rad_s[0]) / (2 * step), turned.changes_rad_s2[1], atol=1e-7
    )


def test_a_motion_that_comes_to_the_middle_axis_and_stays():
    """Where L² is 2 E times the middle moment: whichever way rounding has it, as scipy has it, and never back."""
    body, ends = body_of([1, 2, 3]), 0
    for size in 0.1 + 0.037 * np.arange(40):
        rates = [math.sqrt(3) * size, 0.3 * size, size]
        turned = torque_free(body, rates).at(np.linspace(0, 20, 5))
        assert momentum_drift(body, turned, inertia_of(body) @ rates) < DRIFT
        if math.isinf(torque_free(body, rates).period_s):
            ends += 1
            assert ends > 3 or apart(turned.quaternion_wxyz[1], integrated(body, rates, 5.0)) < 1e-10
    assert ends > 3


def test_bodies_of_revolution_at_any_rate():
    """The parameter is 0 or 1 at an end, a hair beyond it by rounding: still finite, and momentum stays."""
    for moments in ([1, 1, 3], [1, 3, 3], [0.7, 0.7, 0.9]):
        for rates in np.random.default_rng(3).normal(size=(30, 3)):
            body = body_of(moments)
            turned = torque_free(body, rates).at(np.linspace(0, 20, 5))
            assert momentum_drift(body, turned, inertia_of(body) @ rates) < DRIFT


def test_each_attitude_is_written_next_to_the_one_before():
    body, at_s = body_of([1, 2, 3]), np.linspace(0, 60, 601)
    for motion in (torque_free(body, [0.3, 1.0, 0.1]), Damped(body, [0.3, 1.0, 0.1], 50.0)):
        written = motion.at(at_s).quaternion_wxyz
        assert np.all(np.sum(written[1:] * written[:-1], axis=1) > 0.9)


def test_spin_reversed_is_time_reversed():
    body, rates, time_s = body_of([1, 2, 3]), np.array([0.3, 0.8, -0.2]), np.linspace(0, 30, 16)
    forth = matrices(torque_free(body, rates).at(-time_s).quaternion_wxyz)
    back = matrices(torque_free(body, -rates).at(time_s).quaternion_wxyz)
    np.testing.assert_allclose(forth, back, atol=1e-12)


def test_moments_that_rounding_makes_differ_are_equal_and_a_line_is_none():
    body = body_of([1.0, 1.0 + 1e-14, 1.5])
    assert not body.has_middle
    assert not body_of([1.0, 1.5 - 1e-14, 1.5]).has_middle
    assert tumble.flip_period_s(body, [0.3, 0.2, 1.0]) is None
    with pytest.raises(ValueError, match="next to no inertia"):
        principal_of(Body(1.0, np.zeros(3), np.diag([1e-12, 1.0, 1.0])))


def test_motion_does_not_depend_on_the_craft_s_axes_its_scale_or_its_mirror_image():
    """Axes turned by S: attitudes S R S^T. Inertia times a number: the same. Mirrored in a plane: rates change sign but across it."""
    rng, time_s = np.random.default_rng(7), np.linspace(0, 25, 26)
    for moments, rates in (([1, 2, 3], [0.4, 1, 0.1]), ([2, 2, 3], [0.4, 1, -0.5]), ([0.2, 3, 3.1], [2, 0.1, 0.2])):
        body, turn = body_of(moments), np.linalg.qr(rng.normal(size=(3, 3)))[0]
        turn *= np.linalg.det(turn)
        own = matrices(torque_free(body, rates).at(time_s).quaternion_wxyz)
        turned = matrices(
            torque_free(body_of(turn @ np.diag(moments) @ turn.T), turn @ rates).at(time_s).quaternion_wxyz
        )
        np.testing.assert_allclose(turned, turn @ own @ turn.T, atol=1e-10)
        scaled = matrices(torque_free(body_of(1e9 * np.array(moments)), rates).at(time_s).quaternion_wxyz)
        np.testing.assert_allclose(scaled, own, atol=1e-11)
        flip = np.diag([-1.0, 1.0, 1.0])
        mirrored = matrices(torque_free(body, -flip @ rates).at(time_s).quaternion_wxyz)
        np.testing.assert_allclose(mirrored, flip @ own @ flip, atol=1e-11)


def test_moments_a_million_million_apart_are_refused_and_a_thousand_million_are_not():
    body = body_of([2e-9, 1.0, 1.0])
    turned = torque_free(body, [1.0, 1e-10, 0.0]).at(np.linspace(0, 100, 11))
    assert momentum_drift(body, turned, inertia_of(body) @ [1.0, 1e-10, 0.0]) < DRIFT
    with pytest.raises(ValueError, match="next to no inertia"):
        body_of([1e-12, 1.0, 1.0])
