"""What a tumble comes to: who is flipping, what lasts, what is felt and when it is flat, against scipy, limits and figures by hand."""

import math

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from rimfall.vessel import tumble
from rimfall.vessel.attitude import Principal, torque_free
from tests.tables import each_row
from tests.vessel.tumbling import body_of, inertia_of, matrices


def rates_of(body, direction):
    """Rates (3,) about principal axes of a momentum of 1 along a direction (3,) in them."""
    return np.array(direction) / body.moments


@each_row(
    ("moments", "share", "flips"),
    [
        ([1, 2, 3], 0.01, True),
        ([1, 2, 3], 0.4, True),
        ([1, 2, 3], 0.6, False),
        ([1.9, 2, 3], 0.4, False),
        ([1.9, 2, 3], 0.01, True),
        ([1, 2.9, 3], 0.4, True),
        ([1, 2.9, 3], 0.6, False),
    ],
)
def test_what_turns_right_over(moments, share, flips):
    """Its parameter m (Landau & Lifshitz, Mechanics, (37.11)) is more than a half; scipy's momentum then comes within 45 degrees of the middle
    axis. A body all but round about its long axis comes there as well, but rolls through."""
    body = body_of(moments)
    rates = rates_of(body, [0.0, math.sqrt(1 - share), math.sqrt(share)])
    assert tumble.flips(body, rates) == flips
    period_s = tumble.flip_period_s(body, rates)
    way = solve_ivp(
        lambda _, p: np.cross(p, p / body.moments),
        (0, period_s),
        rates * body.moments,
        rtol=1e-9,
        t_eval=np.linspace(0, period_s, 2001),
    ).y
    first, middle, last = moments
    twice, square = body.moments @ rates**2, body.moments**2 @ rates**2
    parameter = (middle - first) * (twice * last - square) / ((last - middle) * (square - twice * first))
    assert (parameter > 0.5) == flips
    assert np.max(way[1] ** 2) > 0.5 or not flips


def test_two_that_are_all_but_alike_are_two():
    assert body_of([1.0, 1.0 + 1e-9, 1.5]).has_middle
    assert body_of([1.0, 1.5 - 1e-9, 1.5]).has_middle


def leant(lean_deg):
    lean = math.radians(lean_deg)
    return np.array([[math.cos(lean), 0, math.sin(lean)], [0, 1, 0], [-math.sin(lean), 0, math.cos(lean)]])


@each_row(
    ("moments", "lean_deg", "axis", "lasts", "with_losses"),
    [
        ([1, 2, 3], 0.5, "greatest", True, True),
        ([1, 2, 3], 2.0, "greatest", False, False),
        ([3, 2, 1], 0.5, "least", True, False),
        ([3, 2, 1], 2.0, "least", False, False),
        ([1, 3, 2], 0.5, "middle", False, False),
        ([1, 3, 1], 0.0, "across", False, False),
        ([3, 1, 3], 0.0, "greatest", True, True),
    ],
)
def test_what_a_spin_about_z_is_about(moments, lean_deg, axis, lasts, with_losses):
    """Of a body whose axes lean by so much toward x; common practice, no source: all but the greatest are lost in time, the middle at once."""
    turn = leant(lean_deg)
    spin = tumble.spin_about_z(body_of(turn @ np.diag(moments) @ turn.T))
    assert (spin.axis, spin.lasts, spin.lasts_with_losses) == (axis, lasts, with_losses)
    assert math.degrees(spin.off_rad) == pytest.approx(lean_deg, abs=1e-5)


def test_of_two_that_are_alike_any_axis_between_is_as_good():
    turn = np.array([[1.0, 0.0, 0.0], [0.0, math.sqrt(0.5), -math.sqrt(0.5)], [0.0, math.sqrt(0.5), math.sqrt(0.5)]])
    for moments, axis in (([1.0, 3.0, 3.0], "greatest"), ([2.0, 2.0, 2.0], "any")):
        spin = tumble.spin_about_z(Principal(np.array(moments), turn))
        assert (spin.axis, spin.lasts_with_losses) == (axis, True)


def test_what_is_felt_is_what_the_place_is_pulled_by():
    """Twice the difference in time of where the place is in the room, turned back aboard."""
    body, rates, offset, step = body_of([1.0, 1.7, 2.1]), [0.4, -0.9, 0.3], np.array([3.0, -1.0, 2.0]), 1e-3
    turned = torque_free(body, rates).at(5.0 + step * np.array([-1.0, 0.0, 1.0]))
    turns = matrices(turned.quaternion_wxyz)
    before, now, after = turns @ offset
    pull = turns[1].T @ (after - 2 * now + before) / step**2
    np.testing.assert_allclose(tumble.gravity_g(turned, offset)[1] * 9.80665, -pull, atol=1e-5)


def test_before_it_is_let_go_nothing_is_lost():
    body, rates = body_of([1.0, 2.0, 3.0]), np.array([0.9, 0.3, 0.2])
    let_go = tumble.LetGo(body, 1.0, np.zeros(3), rates, 5.0, False)
    time_s = np.array([-20.0, -3.0, 0.0, 8.0])
    turned, free = let_go.at(time_s), torque_free(body, rates).at(time_s)
    np.testing.assert_allclose(turned.rates_rad_s[:2], free.rates_rad_s[:2], atol=1e-14)
    energy = 0.5 * np.einsum(
        "ni,ij,nj->n", turned.momentum @ body.axes.T, np.linalg.inv(inertia_of(body)), turned.momentum @ body.axes.T
    )
    assert energy[0] == pytest.approx(energy[2], rel=1e-12)
    assert energy[3] < 0.9 * energy[2]


def flat_by_scipy(body, rates, time_s, until):
    """When 2 E/L^2 of double-bracket dissipation falls to a level, by DOP853 of the momentum's direction."""
    inverse, size = 1 / body.moments, np.linalg.norm(np.array(rates) * body.moments)
    loss = 1 / (time_s * size * (inverse[0] - inverse[2]))

    def change(_, n):
        own = size * n * inverse
        return np.cross(n, own + loss * np.cross(n, own))

    def falls(_, n):
        return n**2 @ inverse / (n @ n) - until

    falls.terminal = True
    start = np.array(rates) * body.moments / size
    return solve_ivp(change, (0, 100 * time_s), start, "DOP853", rtol=1e-9, atol=1e-12, events=falls).t_events[0][0]


@each_row(("wobble_rad", "share"), [(0.5, 1e-5), (8.0, 1e-5), (25.0, 1e-5), (60.0, 0.02), (300.0, 5e-3)])
def test_time_to_flat_against_scipy(wobble_rad, share):
    """Few wobbles while energy falls by e, and many, on either side of where means over a wobble take over."""
    body, rates = body_of([1.0, 2.0, 3.0]), [0.9, 0.2, 0.3]
    inverse = 1 / body.moments
    time_s = wobble_rad / (np.linalg.norm(rates * body.moments) * (inverse[0] - inverse[2]))
    until = inverse[2] + (inverse[1] - inverse[2]) * math.sin(math.radians(1.0)) ** 2
    flat_s, begun = tumble.time_to_flat_s(body, rates, time_s)
    assert begun is None
    assert flat_s == pytest.approx(flat_by_scipy(body, rates, time_s, until), rel=share)


def test_a_body_almost_alike_about_all_axes_is_read_by_its_wobble_and_not_by_its_turns():
    """Fifty million turns, of which it wobbles in none."""
    body = body_of([1.0, 1.0 + 1e-9, 1.0 + 2e-9])
    flat_s, _ = tumble.time_to_flat_s(body, [0.3, 0.2, 0.1], 1e9)
    assert 1e9 < flat_s < 2e10


def test_only_what_is_next_to_alike_is_a_pair():
    """A momentum along the middle axis is a right angle from the greatest, or, where the two are a pair, in their plane."""
    along = np.array([[0.0, 1.0, 0.0]])
    assert np.degrees(tumble.nutation_rad(body_of([1.0, 2.95, 3.0]), along)) == pytest.approx(90.0)
    assert np.degrees(tumble.nutation_rad(body_of([1.0, 2.99, 3.0]), along)) == pytest.approx(0.0)


@each_row("near", [1e-9, 1e-6, 1e-3])
def test_small_wobbles_take_energy_as_two_springs_do(near):
    """About an axis of difference a and b of inverse moments to the others, the mean of |n x Dn|^2 is near a (a + b)/2 for the nearer one's a."""
    most, middle, least = 1 / np.array([1.0, 2.0, 3.0])
    for end, other in ((least, most), (most, least)):
        span, whole = middle - end, other - end
        mean = tumble._mean(np.array([most, middle, least]), end, np.array([1 - near]), np.array([near]))[0]
        assert mean == pytest.approx(near * span * (span + whole) / 2, rel=2 * near + 1e-9, abs=0)
