"""Figures of a habitat, and its surfaces."""

import math

import pytest

from rimfall.physics.constants import G0_M_S2
from rimfall.physics.habitat import Habitat, figures, omega_for, radius_for
from rimfall.physics.spin import steady


def names(**parts):
    return [(s.name, getattr(s, "radius_m", None)) for s in Habitat(56.0, steady(0.3), **parts).surfaces()]


def test_the_lantern_wheel():
    found = figures(56.0, 3 * math.tau / 60)
    assert found.gravity_m_s2 == pytest.approx(56.0 * (math.pi / 10) ** 2)
    assert found.gravity_g == pytest.approx(found.gravity_m_s2 / G0_M_S2)
    assert found.rim_speed_m_s == pytest.approx(5.6 * math.pi)
    assert found.period_s == pytest.approx(20.0)


def test_at_rest_there_is_no_gravity_and_no_period():
    assert (figures(56.0, 0.0).gravity_m_s2, figures(56.0, 0.0).period_s) == (0.0, None)


def test_a_spin_the_other_way_gives_the_same_gravity():
    assert figures(56.0, -0.3).gravity_m_s2 == figures(56.0, 0.3).gravity_m_s2
    assert figures(56.0, -0.3).period_s > 0


@pytest.mark.parametrize("held", ["gravity_m_s2", "rim_speed_m_s"])
def test_radius_and_spin_for_a_figure_give_it_back(held):
    assert getattr(figures(radius_for(**{held: 7.0}, omega_rad_s=0.4), 0.4), held) == pytest.approx(7.0)
    assert getattr(figures(80.0, omega_for(80.0, **{held: 7.0})), held) == pytest.approx(7.0)


def test_no_radius_gives_gravity_at_rest():
    with pytest.raises(ValueError, match="no spin"):
        radius_for(gravity_m_s2=9.8, omega_rad_s=0.0)


def test_surfaces_are_those_that_a_body_can_meet():
    assert names() == [("deck", 56.0)]
    assert names(ceiling_m=4.0) == [("deck", 56.0), ("ceiling", 52.0)]
    assert names(hub_radius_m=2.0) == [("deck", 56.0), ("hub", 2.0)]
    assert names(ceiling_m=4.0, hub_radius_m=2.0) == [("deck", 56.0), ("ceiling", 52.0)]  # the hub lies behind it
    assert names(width_m=14.0) == [("deck", 56.0), ("wall", None), ("wall", None)]
