"""The sphere's drag law: against the printed curve, its ends, its smoothness, and a polynomial worked out by other means."""

import math

import numpy as np
import pytest

from rimfall.physics.air import air_at
from rimfall.physics.bodies import Bodies
from rimfall.physics.drag import GREATEST_RE, Drag, sphere_cd, sphere_cd_re
from tests.published import clift_1978
from tests.published.drag_law import law_cd_re
from tests.tables import each_row

FROM_PRINTED = 0.021  # relative; the printed curve itself jumps by up to 0.8 % at its joints
RMS = 0.01
SAME = 1e-13  # relative, of two ways to the same polynomial
WIDE = np.logspace(-6, 7, 4001)


def test_the_law_keeps_to_the_printed_curve():
    re = np.logspace(-2, 5.25, 2000)
    off = sphere_cd(re) / np.array([clift_1978.printed_cd(x) for x in re]) - 1
    assert np.abs(off).max() < FROM_PRINTED
    assert np.sqrt(np.mean(off**2)) < RMS


def test_the_law_is_the_stated_polynomial():
    assert sphere_cd_re(WIDE) == pytest.approx([law_cd_re(re) for re in WIDE], rel=SAME)


def test_slow_bodies_feel_oseens_drag():
    assert sphere_cd_re(np.array([0.0])) == pytest.approx(24.0, rel=1e-14)
    re = np.logspace(-6, -2, 60)
    assert sphere_cd_re(re) == pytest.approx(24.0 * (1.0 + 3.0 / 16.0 * re), rel=1e-5)
    assert (sphere_cd_re(re) - 24.0) / re == pytest.approx(4.5, rel=2e-2)


def test_above_the_curve_the_last_value_holds():
    assert sphere_cd(np.array([1e6, 1e8])) == pytest.approx(float(sphere_cd(np.array([GREATEST_RE]))[0]), rel=1e-13)
    assert float(sphere_cd(np.array([1e7]))[0]) == pytest.approx(clift_1978.printed_cd(GREATEST_RE), rel=FROM_PRINTED)


def test_drag_rises_with_speed_everywhere():
    assert np.all(np.diff(sphere_cd_re(WIDE) * WIDE) > 0)


@each_row("order", [1, 2, 3])
def test_the_curve_ends_as_smoothly_as_the_constant_above_it(order):
    """The derivatives of ln Cd by ln Re just below the upper end, from differences over 1 % of a decade, vanish with the distance."""

    def derivative(below):
        x = math.log(GREATEST_RE) - below + 0.02 * np.arange(-order, 1)
        return float(np.diff(np.log(sphere_cd(np.exp(x))), order)[0]) / 0.02**order

    assert abs(derivative(0.0)) < 0.3 * abs(derivative(0.2))
    assert derivative(-0.2) == pytest.approx(0.0, abs=1e-8)


def test_no_jump_of_value_or_slope():
    x = np.linspace(-4.0, 7.0, 110_001)
    slopes = np.diff(np.log(sphere_cd_re(10**x)))
    assert np.abs(np.diff(slopes)).max() < 1e-7


def test_the_same_curve_one_by_one_and_in_a_batch():
    assert [float(sphere_cd_re(np.array([re]))[0]) for re in WIDE[::400]] == pytest.approx(
        list(sphere_cd_re(WIDE)[::400]), rel=1e-15
    )


def test_what_is_added_along_the_way_fades_as_drag_over_speed_grows_with_it():
    """d(rate u)/du by differences, over the rate: 2 for a constant Cd, and near it for a sphere's curve; whatever their order."""
    re = np.logspace(-2, 5, 300)
    diameter = np.full(600, 0.01)
    drag = Drag(Bodies(np.full(600, 0.01), diameter, np.repeat([np.nan, 0.47], 300)), air_at(101.325, 20.0))
    scaled = np.tile(re, 2)
    rate, more, less = (drag.rate_1_s(scaled * by) for by in (1.0, 1.0 + 1e-5, 1.0 - 1e-5))
    along = ((1.0 + 1e-5) * more - (1.0 - 1e-5) * less) / 2e-5
    off = np.abs(drag.along_1_s(rate) - along) / rate
    assert off[:300][re < 1000].max() < 0.08
    assert off[:300].max() < 0.2
    assert off[300:].max() < 1e-8
    some = drag.part(slice(290, 310))
    assert np.array_equal(some.rate_1_s(scaled[290:310]), rate[290:310])
    assert np.array_equal(some.along_1_s(rate[290:310]), drag.along_1_s(rate)[290:310])
