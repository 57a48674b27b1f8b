"""Turning that loses energy: against scipy, closed forms for bodies of revolution, and the laws it must keep."""

import math

import numpy as np
import pytest

from rimfall.physics.budget import Budget, TooMuchWork, spending
from rimfall.physics.constants import TURN_RAD
from rimfall.vessel import tumble
from rimfall.vessel.attitude import torque_free
from rimfall.vessel.damped import Damped
from tests.tables import each_row
from tests.vessel.thousand_turns import SKEW
from tests.vessel.tumbling import apart, body_of, inertia_of, integrated, momentum_drift

CASES = [
    ([1, 2, 3], [1, 0.1, 0.1], 60.0),
    (SKEW @ np.diag([1, 1.7, 2.1]) @ SKEW.T, [-0.4, 0.2, -1], 100.0),
    ([0.1, 2, 2], [1, 0.01, 0.01], 100.0),
    ([1, 2, 3], [0.4, -0.2, -1], 60.0),
]


def loss_of(body, rates, time_s):
    size = np.linalg.norm(inertia_of(body) @ rates)
    return 1 / (time_s * size**2 * (1 / body.moments[0] - 1 / body.moments[2]))


@each_row(("inertia", "rates", "time_s"), CASES)
def test_attitude_against_scipy(inertia, rates, time_s):
    body = body_of(inertia)
    theirs = integrated(body, rates, 120.0, loss_of(body, rates, time_s))
    assert apart(Damped(body, rates, time_s).at(np.array([120.0])).quaternion_wxyz[0], theirs) < 1e-8


@each_row(("inertia", "rates", "time_s"), CASES)
def test_momentum_stays_and_energy_only_falls(inertia, rates, time_s):
    """A thousand turns: to flat and long after; to a part in 1e13 of the energy, which is rounding."""
    body = body_of(inertia)
    at_s = np.linspace(0, 1000 * TURN_RAD / np.linalg.norm(rates), 2001)
    turned = Damped(body, rates, 3 * time_s).at(at_s)
    momentum = inertia_of(body) @ rates
    assert momentum_drift(body, turned, momentum) < 1e-10
    energy = tumble.energy_j(body, turned.momentum)
    assert np.all(np.diff(energy) <= 1e-13 * energy[0])
    assert energy[-1] == pytest.approx(0.5 / body.moments[2], rel=1e-6)


def test_a_rod_tips_over_and_a_disc_settles_as_their_closed_forms_say():
    """tan of the angle from the axis of symmetry goes as exp(+t/time) for a rod, as exp(-t/time) for a disc (`damped.py`)."""
    at_s = np.linspace(0, 400, 21)
    for moments, rates, sign in (([3, 3, 0.1], [0.01, 0, 1], 1), ([1, 1, 2], [1, 0, 0.2], -1)):
        body = body_of(moments)
        direction = Damped(body, rates, 80.0).directions(at_s)
        own = 0 if sign > 0 else 2
        tangent = np.linalg.norm(np.delete(direction, own, 1), axis=1) / np.abs(direction[:, own])
        np.testing.assert_allclose(tangent, tangent[0] * np.exp(sign * at_s / 80.0), rtol=1e-9)


def test_rates_are_those_of_the_attitude_and_changes_those_of_the_rates():
    motion, step = Damped(body_of(CASES[1][0]), CASES[1][1], 20.0), 1e-4
    turned = motion.at(9.0 + step * np.array([-1.0, 0.0, 1.0]))
    np.testing.assert_allclose(
        (turned.rates_rad_s[2] - turned.rates_rad_s[0]) / (2 * step), turned.changes_rad_s2[1], atol=1e-7
    )
    w, v = turned.quaternion_wxyz[:, 0], turned.quaternion_wxyz[:, 1:]
    dw, dv = (w[2] - w[0]) / (2 * step), (v[2] - v[0]) / (2 * step)
    rate = 2 * (w[1] * dv - dw * v[1] - np.cross(v[1], dv))
    np.testing.assert_allclose(rate, turned.rates_rad_s[1], atol=1e-7)


@each_row("sense", [1.0, -1.0])
def test_about_an_axis_alone_it_turns_on_as_it_was(sense):
    turned = Damped(body_of([1, 2, 3]), [0.0, 0.0, sense], 60.0).at(np.array([2.5]))
    assert apart(turned.quaternion_wxyz, np.array([[math.cos(1.25), 0.0, 0.0, sense * math.sin(1.25)]])) < 1e-11
    assert turned.rates_rad_s == pytest.approx(np.array([[0.0, 0.0, sense]]))


def test_next_to_no_losses_are_none():
    body, rates, at_s = body_of([1, 2, 3]), [0.3, 0.2, 1.0], np.linspace(0, 300, 31)
    free, damped = torque_free(body, rates).at(at_s), Damped(body, rates, 1e15).at(at_s)
    assert apart(free.quaternion_wxyz, damped.quaternion_wxyz) < 1e-9


def test_any_order_of_times_reads_the_same():
    motion, at_s = Damped(body_of([1, 2, 3]), [1, 0.1, 0.1], 60.0), np.array([90.0, 10.0, 50.0])
    alone = [motion.at(np.array([t])).rates_rad_s[0] for t in at_s]
    assert np.all(motion.at(at_s).rates_rad_s == alone)


def test_its_work_is_counted():
    with pytest.raises(TooMuchWork), spending(Budget(steps=500)):
        Damped(body_of([1, 2, 3]), [1, 0.1, 0.1], 60.0).at(np.array([1e4]))


def test_time_to_flat_is_that_of_the_motion():
    """By means over each wobble, against the motion itself: 64 wobbles while energy falls by e, then few."""
    for moments, rates in (([1, 2, 3], [1, 0.05, 0.05]), ([1, 2.5, 3], [0.05, 1, 0.02]), ([2, 2, 3], [0.3, 0.2, 1])):
        for time_s, share in ((400.0, 2e-3), (5.0, 1e-9)):
            body = body_of(moments)
            flat_s, begun = tumble.time_to_flat_s(body, rates, time_s)
            direction = Damped(body, rates, time_s).directions(flat_s * np.array([1 - share, 1 + share]))
            level = np.sum(direction**2 / body.moments, axis=1)
            middle, least = 1 / body.moments[1], 1 / body.moments[2]
            flat = least + (middle - least) * math.sin(math.radians(tumble.FLAT_DEG)) ** 2
            assert begun is None
            assert level[1] < flat * (1 + 1e-6) or share < 1e-8
            assert level[0] > flat * (1 - 1e-6)


def test_time_to_flat_of_a_rod_is_closed():
    body = body_of([2, 2, 0.1])
    flat_s, begun = tumble.time_to_flat_s(body, [0, 0, 1.0], 1000.0)
    assert begun == tumble.BEGUN_DEG
    assert flat_s == pytest.approx(1000 * 2 * math.log(math.tan(math.radians(89.0))), rel=1e-9)
    slight_s, begun = tumble.time_to_flat_s(body, np.array([math.sin(1e-3), 0, math.cos(1e-3)]) / [2, 2, 0.1], 1000.0)
    assert begun is None  # a wobble of a milliradian is one
    assert slight_s == pytest.approx(1000 * math.log(math.tan(math.radians(89.0)) / math.tan(1e-3)), rel=1e-6)
    one_deg = np.array(
        [math.cos(math.radians(1)), math.sin(math.radians(1)), 0]
    )  # toward the middle axis, which is the least that it can lean
    leant_s, _ = tumble.time_to_flat_s(body_of([1, 2, 3]), one_deg / [1, 2, 3], 1e4)
    assert tumble.time_to_flat_s(body_of([1, 2, 3]), [1.0 / 1, 0, 0], 1e4)[0] == pytest.approx(leant_s, rel=1e-9)
    assert tumble.time_to_flat_s(body_of([2, 2, 3]), [0, 0, 1.0], 1000.0) == (0.0, None)
    assert tumble.time_to_flat_s(body_of([2, 2, 2]), [0, 0, 1.0], 1000.0) == (None, None)


def test_a_long_body_is_flat_whichever_way_it_has_rolled():
    """Its two greater moments a ten-thousandth apart: the wobble is that of its length, as if they were the same."""
    rates = [0.0, 0.01, 1.0]
    for twin in (2.0, 2.0002):
        body = body_of([2.0, twin, 0.1])
        flat_s, _ = tumble.time_to_flat_s(body, rates, 200.0)
        level = np.sum(Damped(body, rates, 200.0).directions(np.array([flat_s])) ** 2 / body.moments, axis=1)
        (wobble,) = tumble.nutation_rad(body, Damped(body, rates, 200.0).directions(np.array([flat_s])))
        assert np.degrees(wobble) == pytest.approx(tumble.FLAT_DEG, rel=0.02)
        assert level[0] == pytest.approx(0.5, rel=1e-2)
        assert flat_s == pytest.approx(200 * math.log(math.tan(math.radians(89)) / (2.0 * 0.01 / 0.1)), rel=0.01)
