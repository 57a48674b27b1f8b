"""Tethers against integrals of their mass (scipy), and against the laws of momentum and energy."""

import math

import numpy as np
import pytest
from scipy.integrate import quad, solve_ivp

from rimfall.vessel import tether
from rimfall.vessel.tether import Tether
from tests.tables import each_row

STRESS_PA, DENSITY_KG_M3 = 9e8, 1440.0
ROPES = {
    "slow": Tether(200.0, (40000.0, 15000.0), 0.314, STRESS_PA, DENSITY_KG_M3),
    "fast": Tether(1000.0, (40000.0, 15000.0), 2.0, STRESS_PA, DENSITY_KG_M3),
    "unequal": Tether(500.0, (1e9, 1.0), 1.0, STRESS_PA, DENSITY_KG_M3),
    "still": Tether(500.0, (10.0, 20.0), 0.0, STRESS_PA, DENSITY_KG_M3),
}
EACH = each_row("rope", list(ROPES.values()))


@EACH
def test_uniform_tether_balances_and_carries_its_greatest_tension(rope):
    """The pull of each side, summed over its mass, is that of the other, and stress times section."""
    loaded = tether.uniform(rope)
    mass_per_m = loaded.tether_mass_kg / rope.length_m
    for mass, radius in zip(rope.masses_kg, loaded.radii_m, strict=True):
        pull = rope.rate_rad_s**2 * (mass * radius + quad(lambda r: mass_per_m * r, 0, radius)[0])
        assert pull == pytest.approx(loaded.tension_n, rel=1e-9)
    assert loaded.tension_n == pytest.approx(STRESS_PA * loaded.areas_m2[1], rel=1e-9)


@EACH
def test_tapered_tether_has_one_stress_all_along(rope):
    """The section's equation of balance, A' = -density rate² r A / stress, integrated from the balance point to each end."""
    loaded = tether.tapered(rope)
    first, middle, second = loaded.areas_m2
    weight = 0.0
    for mass, radius, end in zip(rope.masses_kg, loaded.radii_m, (first, second), strict=True):
        thinning = -DENSITY_KG_M3 * rope.rate_rad_s**2 / STRESS_PA

        def along(r, state, thinning=thinning):
            return thinning * r * state[0], DENSITY_KG_M3 * state[0]

        area, side = solve_ivp(along, (0, radius), (middle, 0.0), method="DOP853", rtol=1e-11, atol=1e-20).y[:, -1]
        assert area == pytest.approx(end, rel=1e-8)
        assert STRESS_PA * end == pytest.approx(mass * rope.rate_rad_s**2 * radius, rel=1e-9)
        weight += side
    assert loaded.tether_mass_kg == pytest.approx(weight, rel=1e-7, abs=1e-300)
    assert sum(loaded.radii_m) == pytest.approx(rope.length_m, rel=1e-15)


def test_tapered_tether_weighs_less_than_a_uniform_one():
    for rope in (ROPES["slow"], ROPES["fast"]):
        assert tether.tapered(rope).tether_mass_kg < tether.uniform(rope).tether_mass_kg


def test_no_section_carries_what_turns_too_fast():
    """Past stress/density = v²/2 at the end no uniform tether bears its own mass; a tapered one still does, at a price."""
    fast = Tether(1000.0, (10.0, 10.0), 2.1 * math.sqrt(STRESS_PA / DENSITY_KG_M3) / 500.0, STRESS_PA, DENSITY_KG_M3)
    assert tether.uniform(fast) is None
    assert tether.tapered(fast).tether_mass_kg > 20 * sum(fast.masses_kg)
    assert tether.tapered(Tether(1000.0, (10.0, 10.0), 20.0, STRESS_PA, DENSITY_KG_M3)) is None


def test_tension_along_a_tether_is_what_pulls_outside_of_it():
    rope = ROPES["fast"]
    loaded = tether.uniform(rope)
    places = np.linspace(0.0, rope.length_m, 7)
    mass_per_m = loaded.tether_mass_kg / rope.length_m
    for place, tension in zip(places, tether.tension_along_n(rope, loaded, places), strict=True):
        offset = place - loaded.radii_m[0]
        side = 0 if offset < 0 else 1
        rest = (loaded.radii_m[side] ** 2 - offset**2) / 2 * mass_per_m
        outside = rope.rate_rad_s**2 * (rope.masses_kg[side] * loaded.radii_m[side] + rest)
        assert tension == pytest.approx(outside, rel=1e-9)


def test_light_tether_is_the_limit_of_a_strong_one():
    rope = Tether(200.0, (40000.0, 15000.0), 0.314, 1e18, DENSITY_KG_M3)
    strong, light = tether.uniform(rope), tether.light(rope)
    assert strong.radii_m == pytest.approx(light.radii_m, rel=1e-9)
    assert strong.tension_n == pytest.approx(light.tension_n, rel=1e-9)


def test_reeling_keeps_angular_momentum_and_the_winch_pays_by_the_integral_of_tension():
    rope = Tether(200.0, (40000.0, 15000.0), 0.314)
    reeled = tether.reel(rope, 100.0)
    reduced = 40000.0 * 15000.0 / 55000.0
    momentum = reduced * rope.length_m**2 * rope.rate_rad_s
    assert reduced * reeled.length_m**2 * reeled.rate_rad_s == pytest.approx(momentum, rel=1e-12)
    work, _ = quad(lambda length: momentum**2 / (reduced * length**3), 100.0, 200.0)
    assert reeled.work_j == pytest.approx(work, rel=1e-9)
    assert reeled.tension_n == pytest.approx(8 * tether.light(rope).tension_n, rel=1e-12)
    assert reeled.gravity_m_s2 == pytest.approx(
        [8 * 0.314**2 * radius for radius in tether.light(rope).radii_m], rel=1e-12
    )
    assert tether.reel(rope, 400.0).work_j < 0


def test_cut_ends_keep_the_momentum_and_part_on_straight_lines():
    rope = Tether(200.0, (40000.0, 15000.0), 0.314)
    parted = tether.cut(rope, tether.light(rope), 60.0)
    assert 40000.0 * parted.speeds_m_s[0] == pytest.approx(15000.0 * parted.speeds_m_s[1], rel=1e-12)
    lines = [
        np.array([sign * radius, sign * speed * 60.0])
        for sign, radius, speed in zip((-1, 1), tether.light(rope).radii_m, parted.speeds_m_s, strict=True)
    ]
    assert parted.apart_m == pytest.approx(np.linalg.norm(lines[0] - lines[1]), rel=1e-12)
    for line, start, speed, toward in zip(
        lines, (-1, 1), parted.speeds_m_s, map(math.radians, parted.directions_deg), strict=True
    ):
        radius = tether.light(rope).radii_m[(1 + start) // 2]
        flown = np.array([start * radius, 0.0]) + 60.0 * speed * np.array([math.cos(toward), math.sin(toward)])
        assert flown == pytest.approx(line, rel=1e-12, abs=1e-9)
