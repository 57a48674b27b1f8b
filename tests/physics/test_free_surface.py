"""Liquids at rest in what turns: level across local apparent gravity; what a tilted cup holds."""

import math

import numpy as np
import pytest
from scipy.integrate import dblquad, quad

from rimfall.physics import free_surface as surface
from tests.published.white_fluid_mechanics import CUP, ROWS
from tests.tables import each_row

G = CUP["g_m_s2"]
SAME = 1e-9  # relative, against scipy's quadrature
SLIVER = 1e-7  # relative: of a millionth of a cup's volume two large parts all but cancel


def test_the_cup_on_the_tray_does_not_spill():
    """White's example: the surface rises 2.14 cm at the wall, and 3 cm are free."""
    radius, tilt = CUP["diameter_m"] / 2, math.atan2(ROWS["LIQ-31"].inputs["a_m_s2"], G)
    poured = math.pi * radius**2 * CUP["filled_m"]
    assert poured < surface.brim_m3(CUP["depth_m"], radius, tilt) < math.pi * radius**2 * CUP["depth_m"]
    assert surface.level_m(poured, radius, tilt) == pytest.approx(CUP["filled_m"])


def test_a_paraboloid_holds_half_its_cylinder():
    rim = float(surface.rise_m(5.0, -G, 0.2))
    held = quad(lambda r: 2 * math.pi * r * float(surface.rise_m(5.0, -G, r)), 0.0, 0.2)[0]
    assert held == pytest.approx(math.pi * 0.2**2 * rim / 2, rel=SAME, abs=0.0)


def test_the_surface_is_square_to_what_is_felt():
    """Its slope along z, from the paraboloid, is the tilt that the local apparent gravity gives."""
    omega, pull, rho = 0.3141593, -0.8, 55.0
    felt = surface.apparent_m_s2(omega, (0.0, 0.0, pull), np.array([rho, 0.0, 0.0]))
    near = surface.rho_m(omega, pull, rho, np.array([-1e-4, 1e-4]))
    slope = (near[1] - near[0]) / 2e-4
    assert math.tan(float(surface.tilt_rad(felt, (-1.0, 0.0, 0.0)))) == pytest.approx(slope, rel=1e-6)


def test_without_thrust_it_is_a_cylinder_about_the_axis():
    assert surface.rho_m(0.3, 0.0, 55.0, np.array([-7.0, 0.0, 7.0])) == pytest.approx(55.0, rel=1e-15)
    felt = surface.apparent_m_s2(0.3, (0.0, 0.0, 0.0), np.array([30.0, 40.0, 2.0]))
    assert float(surface.tilt_rad(felt, (-0.6, -0.8, 0.0))) < 1e-7


def test_thrust_draws_it_off_where_there_is_no_more_spin_to_hold_it():
    found = surface.rho_m(0.3, 1.0, 10.0, np.array([0.0, 100.0]))
    assert found[0] == 10.0
    assert math.isnan(found[1])


def test_what_has_no_surface_is_said():
    assert surface.tilt_rad(np.zeros(3), (0.0, 1.0, 0.0)) == 0.0
    with pytest.raises(ValueError, match="spin"):
        surface.rho_m(0.0, 1.0, 10.0, 0.0)
    with pytest.raises(ValueError, match="pulls"):
        surface.rise_m(1.0, 0.0, 1.0)


def held(level, radius, slope):
    """The volume by scipy, over the disc; the surface is straight along one side of it."""
    chord = lambda x: math.sqrt(max(radius**2 - x**2, 0.0))  # noqa: E731
    dry = min(max(-level / slope, -radius), radius) if slope else -radius
    return dblquad(lambda _, x: level + slope * x, dry, radius, lambda x: -chord(x), chord, epsabs=1e-14)[0]


@each_row(("level", "slope"), [(0.05, 0.0), (0.05, 0.4), (0.02, 1.0), (0.0, 0.7), (-0.01, 0.7), (-0.021, 0.7)])
def test_a_tilted_cup_holds_what_lies_under_its_surface(level, slope):
    assert surface.held_m3(level, 0.03, slope) == pytest.approx(held(level, 0.03, slope), rel=1e-6, abs=1e-15)


@each_row("tilt_deg", [0.0, 10.0, 45.0, 80.0])
@each_row("share", [1e-6, 0.1, 0.5, 1.0])
def test_a_level_holds_its_volume(tilt_deg, share):
    tilt = math.radians(tilt_deg)
    volume = share * surface.brim_m3(0.1, 0.03, tilt)
    level = surface.level_m(volume, 0.03, tilt)
    assert surface.held_m3(level, 0.03, math.tan(tilt)) == pytest.approx(volume, rel=SLIVER, abs=0.0)
    assert level + 0.03 * math.tan(tilt) <= 0.1 * (1 + 1e-9)


def test_a_cup_on_its_side_holds_nothing():
    assert surface.brim_m3(0.1, 0.03, math.pi / 2) == surface.level_m(1e-5, 0.03, 2.0) == 0.0
