"""Rings, rocks and visitors against integrals (scipy), plain kinematics, and published barriers."""

import math
from dataclasses import replace

import numpy as np
import pytest
from scipy.integrate import dblquad

from rimfall.physics.constants import G0_M_S2
from rimfall.vessel import dock, hull, rock


def test_hoop_stress_is_what_a_half_ring_is_pulled_by():
    """The half's outward loads along the middle, shared by its two cut sections."""
    ring = hull.Ring(56.0, 0.4, 2710.0, 0.05, 300.0, 101.3e3)
    angles = (np.arange(2000) + 0.5) * math.pi / 2000
    outward = (2710.0 * 0.05 + 300.0) * ring.gravity_m_s2 + 101.3e3
    pull = np.sum(outward * np.sin(angles)) * ring.radius_m * math.pi / 2000
    assert hull.hoop_stress(ring).whole_pa == pytest.approx(pull / (2 * 0.05), rel=1e-6)


def test_largest_ring_carries_just_what_it_may():
    ring = hull.Ring(56.0, 0.4, 2710.0, 0.05, 300.0, 101.3e3)
    radius = hull.largest_radius_m(ring, 100e6, G0_M_S2)
    at_it = hull.Ring(radius, math.sqrt(G0_M_S2 / radius), 2710.0, 0.05, 300.0, 101.3e3)
    assert hull.hoop_stress(at_it).whole_pa == pytest.approx(100e6, rel=1e-12)
    assert hull.largest_radius_m(hull.Ring(56.0, 0.0, 2710.0, 0.05), 100e6, 0.0) == math.inf


def test_spokes_share_the_weight_at_the_rim():
    assert hull.spoke_tension_n(90000.0, 5.0, 6) == pytest.approx(75000.0)


def test_air_in_a_tube_is_held_by_its_wall():
    """Free bodies (statics): half the torus is held by its two cut sections, and its inner quarter, up to the top of the tube, by the wall
    at its inner side alone. (The closed forms are Roark's, table 13.1.)"""
    tube_m, wall_m, air_pa = 4.0, 0.03, 101.3e3
    ring = hull.Ring(56.0, 0.0, 2710.0, wall_m, 0.0, air_pa, tube_m)
    sections_n = 2 * (2 * math.pi * tube_m * wall_m) * hull.hoop_stress(ring).whole_pa
    assert sections_n == pytest.approx(2 * math.pi * tube_m**2 * air_pa, rel=1e-12)
    middle_m, inner_m = 56.0 - tube_m, 56.0 - 2 * tube_m
    inner_n = 2 * math.pi * inner_m * wall_m * ring.air_around_pa
    assert inner_n == pytest.approx(math.pi * (middle_m**2 - inner_m**2) * air_pa, rel=1e-12)


def test_the_largest_tube_and_the_thinnest_wall_are_just_safe():
    ring = hull.Ring(56.0, 0.4, 2710.0, 0.05, 300.0, 101.3e3, 4.0)
    radius = hull.largest_radius_m(ring, 100e6, G0_M_S2)
    at_it = replace(ring, radius_m=radius, rate_rad_s=math.sqrt(G0_M_S2 / radius))
    assert hull.hoop_stress(at_it).whole_pa == pytest.approx(100e6, rel=1e-12)
    near = hull.largest_radius_m(ring, 8.43e6, G0_M_S2)
    assert near > 56.0  # where the pull on the inner side is less than here, 8.44 MPa
    assert (
        hull.largest_radius_m(ring, 8.1e6, G0_M_S2) == 0.0
    )  # p r/t, the pull around the tube of the largest, is 8.104 MPa
    for safe_pa in (9e6, 30e6):
        thin = replace(ring, thickness_m=hull.least_thickness_m(ring, safe_pa))
        assert max(hull.hoop_stress(thin).whole_pa, thin.air_around_pa) == pytest.approx(safe_pa, rel=1e-12)


def test_spin_barrier_of_asteroids_is_near_2_2_hours():
    """P. Pravec and A. W. Harris, Icarus 148 (2000) 12: about 2.2 h, of densities between 2 and 3 g/cm³."""
    periods_h = [
        2 * math.pi / rock.Rock(density, 500.0).weightless_rate_rad_s / 3600 for density in (2000.0, 2250.0, 3000.0)
    ]
    assert periods_h[0] > 2.2 > periods_h[2]
    assert periods_h[1] == pytest.approx(2.2, abs=0.02)


def test_mean_tension_in_a_spun_sphere_is_that_of_its_halves():
    """Its centrifugal load by integration of one half; its halves' pull on each other 3GM²/16R² (uniform sphere)."""
    body = rock.Rock(2600.0, 500.0)
    rate = 0.02
    spread, _ = dblquad(
        lambda across, along: (
            rate**2 * body.density_kg_m3 * across * 2 * math.sqrt(body.radius_m**2 - across**2 - along**2)
        ),
        -body.radius_m,
        body.radius_m,
        0.0,
        lambda along: math.sqrt(body.radius_m**2 - along**2),
        epsrel=1e-6,
    )
    mass = 4 / 3 * math.pi * body.radius_m**3 * body.density_kg_m3
    together = 3 * 6.67430e-11 * mass**2 / (16 * body.radius_m**2)
    assert rock.mean_tension_pa(body, rate) == pytest.approx((spread - together) / body.section_m2, rel=1e-4)


def test_what_stands_on_a_spun_rock_feels_the_wished_gravity():
    body = rock.Rock(2600.0, 500.0)
    rate = rock.rate_for(body, 3.0)
    mass = 4 / 3 * math.pi * body.radius_m**3 * body.density_kg_m3
    assert rate**2 * body.radius_m - 6.67430e-11 * mass / body.radius_m**2 == pytest.approx(3.0, rel=1e-12)
    assert rock.mean_tension_pa(body, rate) == pytest.approx(2600.0 * 500.0 * 3.0 / 4, rel=1e-12)
    largest = rock.largest_radius_m(2600.0, 10e6, 3.0)
    assert rock.mean_tension_pa(
        rock.Rock(2600.0, largest), rock.rate_for(rock.Rock(2600.0, largest), 3.0)
    ) == pytest.approx(10e6)


def test_visitor_adrift_goes_straight():
    """The straight line seen from axes that turn with the rim."""
    radius, rate, time = 56.0, 0.314, 10.0
    place = np.array([radius, rate * radius * time])
    azimuth = math.atan2(place[1], place[0]) - rate * time
    seen = dock.adrift(radius, rate, time)
    assert seen.away_m == pytest.approx(np.hypot(*place) - radius, rel=1e-12)
    assert seen.along_m == pytest.approx(radius * azimuth, rel=1e-12)


def test_visitor_beside_the_rim_pays_by_its_weight():
    held = dock.hold_at_rim(56.0, 0.314, 8000.0, 3000.0)
    assert held.push_n == pytest.approx(8000.0 * held.speed_m_s**2 / 56.0)
    assert held.propellant_kg_s * 3000.0 == pytest.approx(held.push_n)


def test_visitor_at_the_hub_takes_on_the_spin():
    hub = dock.match_hub(32000.0, -0.314, 50.0, 2.0, 3000.0)
    assert 50.0 * 2.0 * hub.time_s == pytest.approx(32000.0 * 0.314)
    assert hub.propellant_kg * 3000.0 == pytest.approx(50.0 * hub.time_s)


@pytest.mark.parametrize("rate", [0.3, -0.3])
def test_what_is_let_go_there_flies_where_it_was_wished(rate):
    direction = 2.0
    azimuth = dock.let_go_azimuth_rad(direction, rate)
    velocity = rate * np.array([-math.sin(azimuth), math.cos(azimuth)])
    assert velocity / abs(rate) == pytest.approx([math.cos(direction), math.sin(direction)], abs=1e-12)
    wait = dock.wait_s(azimuth, 0.4, rate)
    assert 0 <= wait < 2 * math.pi / abs(rate)
    assert math.cos(0.4 + rate * wait - azimuth) == pytest.approx(1.0, abs=1e-12)
