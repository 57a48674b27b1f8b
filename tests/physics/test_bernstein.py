"""Polynomials in Bernstein form: algebra against numpy's, first roots against numpy's, grazing and double roots."""

import numpy as np
import pytest

from rimfall.physics import bernstein
from tests.tables import each_row

S = np.linspace(0, 1, 21)
ALGEBRA = 1e-12
ROOT = 1e-11
DEPTH = 1e-9  # a shallower dip may be passed over


def values(control):
    """One polynomial (n + 1, 1) at S."""
    return np.array([bernstein.value(control, np.array([s]))[0] for s in S])


def of_roots(*roots, lead=1.0):
    """Bernstein coefficients (n + 1, 1) of lead * product of (s - root)."""
    return bernstein.from_powers(lead * np.poly(roots)[::-1][:, None])


def random(degree, count, seed):
    return np.random.default_rng(seed).normal(size=(degree + 1, count))


def test_powers_become_the_same_polynomial():
    powers = random(7, 1, 1)
    assert values(bernstein.from_powers(powers)) == pytest.approx(np.polyval(powers[::-1, 0], S), abs=ALGEBRA)


def test_raising_the_degree_changes_nothing():
    control = random(5, 1, 2)
    assert len(bernstein.raised(control)) == 11
    assert values(bernstein.raised(control)) == pytest.approx(values(control), abs=ALGEBRA)


def test_squares_add_up():
    control = random(6, 2, 3).reshape(7, 2, 1)
    expected = values(control[:, 0]) ** 2 + values(control[:, 1]) ** 2
    assert values(bernstein.squared(control)) == pytest.approx(expected, abs=ALGEBRA)


def test_the_derivative_is_numpys():
    powers = random(6, 1, 4)
    slope = np.polyval(np.polyder(powers[::-1, 0]), S)
    assert values(bernstein.derivative(bernstein.from_powers(powers))) == pytest.approx(slope, abs=1e-11)


def test_a_root_at_0_is_divided_out():
    control = of_roots(0.0, 0.3, 0.8)
    assert values(bernstein.deflated(control)) == pytest.approx((S - 0.3) * (S - 0.8), abs=ALGEBRA)


def first_fall(powers):
    """The first real root in [0, 1] that numpy finds, of a polynomial above 0 at 0; inf without one."""
    roots = np.roots(powers[::-1])
    real = np.sort(roots.real[(np.abs(roots.imag) < 1e-9) & (roots.real >= 0) & (roots.real <= 1)])
    return real[0] if len(real) else np.inf


@each_row("degree", [1, 2, 3, 7, 14])
def test_first_roots_are_those_of_numpy(degree):
    powers = random(degree, 400, degree) * 4.0 ** np.arange(degree + 1)[:, None]
    powers[0] = np.abs(powers[0]) + 0.01
    found = bernstein.first_descent(bernstein.from_powers(powers))
    expected = np.array([first_fall(p) for p in powers.T])
    assert 50 < np.count_nonzero(np.isfinite(expected)) < 400
    assert found == pytest.approx(expected, abs=1e-7)  # numpy's own roots are no better where two lie close
    ends = np.isfinite(found)
    assert np.abs([np.polyval(p[::-1], s) for p, s in zip(powers.T[ends], found[ends], strict=True)]).max() < 1e-6


@each_row("roots", [(0.2, 0.7), (0.5, 0.5001), (1e-6, 0.3), (0.1, 0.1002), (0.999999, 1.5), (0.3, 0.301, 0.9, 0.95)])
def test_close_roots_are_told_apart_and_the_first_is_taken(roots):
    control = of_roots(*roots)
    assert bernstein.first_descent(control * np.sign(control[0]))[0] == pytest.approx(roots[0], abs=ROOT)


def graze(depth):
    """A parabola that dips below 0 by `depth` at the middle."""
    return bernstein.from_powers(np.array([[0.25 - depth], [-1.0], [1.0]]))


def test_a_dip_deeper_than_the_depth_is_found_and_a_near_miss_is_not():
    for depth in (1e-2, 1e-5, 2 * DEPTH):
        assert bernstein.first_descent(graze(depth), DEPTH)[0] == pytest.approx(0.5 - np.sqrt(depth), abs=1e-10)
        assert bernstein.first_descent(graze(-depth), DEPTH)[0] == np.inf


def test_a_double_root_is_contact_there_or_none_at_all():
    found = bernstein.first_descent(of_roots(0.5, 0.5))[0]
    assert found == np.inf or found == pytest.approx(0.5, abs=1e-4)


def test_a_triple_root_is_a_fall():
    assert bernstein.first_descent(of_roots(0.4, 0.4, 0.4, lead=-1.0))[0] == pytest.approx(
        0.4, abs=1e-5
    )  # round-off^(1/3)


def test_a_root_a_hair_before_a_half_is_not_taken_for_the_half():
    powers = -np.polymul([1.0, -0.5 + 2e-10], np.polyadd(np.polymul([1.0, -0.9], [1.0, -0.9]), [0.01]))
    assert bernstein.first_descent(bernstein.from_powers(powers[::-1, None]))[0] == pytest.approx(0.5 - 2e-10, abs=ROOT)


def test_a_root_at_the_very_end_is_found_and_one_past_it_is_not():
    assert bernstein.first_descent(of_roots(1.0, lead=-1.0))[0] in (1.0, np.inf)
    assert bernstein.first_descent(of_roots(1.0 - 1e-12, lead=-1.0))[0] == pytest.approx(1.0, abs=1e-11)
    assert bernstein.first_descent(of_roots(1.0 + 1e-9, lead=-1.0))[0] == np.inf


def test_one_that_starts_at_or_below_0_has_fallen_at_once():
    assert list(bernstein.first_descent(np.array([[0.0, -1.0], [1.0, 1.0]]))) == [0.0, 0.0]


def test_a_dip_of_high_degree_between_ends_far_above_0_is_found():
    powers = np.zeros((15, 1))
    powers[[0, 7, 14], 0] = 0.25 - 1e-7, -1.0, 1.0  # (s^7 - 1/2)^2, a hair below 0 at s = 0.906
    assert bernstein.first_descent(bernstein.from_powers(powers))[0] == pytest.approx(
        (0.5 - 1e-7**0.5) ** (1 / 7), abs=1e-9
    )


def test_a_fall_is_found_also_where_it_begins_below_and_rises_first():
    """s -> (s - a)(b - s) rises at a and falls at b; one that only rises, one that stays below and one that begins above."""
    a, b = 0.3, 0.8
    powers = np.array([[-a * b, -0.5, -1.0, 0.25], [a + b, 1.0, 1.0, -1.0], [-1.0, 0.0, -1.0, 0.0]])
    falls = bernstein.first_fall(bernstein.from_powers(powers))
    assert falls == pytest.approx([b, np.inf, np.inf, 0.25], abs=1e-15)
    assert bernstein.first_fall(bernstein.from_powers(powers[:, :0])).shape == (0,)
