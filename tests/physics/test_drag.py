"""The sphere's drag curve: against the printed one, against an independent spline, and its smoothness."""

import numpy as np
import pytest
from scipy.interpolate import CubicSpline

from rimfall.physics.drag import GREATEST_RE, LEAST_RE, clift_grace_weber, sphere_cd, sphere_cd_re
from tests.published import clift_1978
from tests.tables import each_row

KNOTS = np.linspace(-2.0, 5.25, 30)  # of log10 Re: four a decade, design section 2
SAME = 1e-11  # relative, of two ways to the same spline
FROM_PRINTED = 0.02  # relative; the printed curve itself jumps by up to 1.2 % at its joints
WIDTH = 1e-6  # of log10 Re, from which a jump is told
STEEPEST = 20.0  # nothing in the curve is steeper: of ln(Cd Re) a decade
BEND = 1e-4  # change of slope over such widths
WIDE = np.logspace(-6, 7, 4001)


def printed(re):
    return np.array([clift_1978.printed_cd(x) for x in re])


def test_the_printed_curve_is_ours_away_from_its_joints():
    re = np.array([0.02, 1.0, 19.0, 21.0, 259.0, 261.0, 1499.0, 1501.0, 1.1e4, 1.3e4, 4.3e4, 4.5e4, 1.7e5])
    assert clift_grace_weber(re) == pytest.approx(printed(re), rel=1e-14)


def test_the_curve_is_the_clamped_spline_through_30_printed_points():
    spline = CubicSpline(KNOTS, np.log10(printed(10**KNOTS)), bc_type=((1, -1.0), (1, 0.0)))
    x = np.linspace(-2.0, 5.25, 997)
    assert np.log10(sphere_cd(10**x)) == pytest.approx(spline(x), abs=SAME)


def test_the_curve_keeps_to_the_printed_one():
    re = np.logspace(-2, 5.25, 2000)
    assert np.abs(sphere_cd(re) / printed(re) - 1).max() < FROM_PRINTED


def test_at_rest_drag_is_that_of_stokes():
    assert sphere_cd_re(np.array([0.0])) == pytest.approx(24.0, rel=1e-3)
    assert sphere_cd_re(np.array([1e-3]))[0] - sphere_cd_re(np.array([0.0]))[0] == pytest.approx(4.5e-3)  # 24 * 3/16 Re


def test_above_the_curve_the_last_value_holds():
    assert sphere_cd(np.array([1e6, 1e8])) == pytest.approx(clift_1978.printed_cd(GREATEST_RE), rel=1e-9)


def test_drag_rises_with_speed_everywhere():
    assert np.all(np.diff(sphere_cd_re(WIDE) * WIDE) > 0)


@each_row("knot", [*KNOTS[1:-1], *np.log10(clift_1978.JOINTS), np.log10(LEAST_RE), np.log10(GREATEST_RE)])
def test_no_jump_of_value_or_slope(knot):
    width = WIDTH
    x = knot + width * np.array([-2.0, -1.0, 1.0, 2.0])
    y = np.log(sphere_cd_re(10**x))
    assert y[2] - y[1] == pytest.approx(0.0, abs=STEEPEST * width)
    if LEAST_RE * 1.01 < 10**knot < GREATEST_RE * 0.99:
        assert (y[3] - y[2]) == pytest.approx(y[1] - y[0], abs=BEND * width)


def test_the_same_curve_one_by_one_and_in_a_batch():
    assert [float(sphere_cd_re(np.array([re]))[0]) for re in WIDE[::400]] == list(sphere_cd_re(WIDE)[::400])
