"""Streams and drops: speed at the lip, the numbers of a jet, breakup, dripping."""

import math

import pytest
from scipy.optimize import brentq

from rimfall.physics import liquids
from tests.published import iapws_r12_08
from tests.tables import each_row

WATER = liquids.LIQUIDS[0]
DRIP = 1e-9  # relative


def viscosity_pa_s(temperature_c, density_kg_m3):
    """IAPWS R12-08, away from the critical point."""
    t = (temperature_c + 273.15) / iapws_r12_08.CRITICAL_K
    rho = density_kg_m3 / iapws_r12_08.CRITICAL_KG_M3
    ideal = 100 * math.sqrt(t) / sum(h / t**i for i, h in enumerate(iapws_r12_08.IDEAL))
    dense = sum(h * (1 / t - 1) ** i * (rho - 1) ** j for (i, j), h in iapws_r12_08.DENSE.items())
    return 1e-6 * ideal * math.exp(rho * dense)


def surface_tension_n_m(temperature_c):
    """IAPWS R1-76(2014): 235.8 mN/m tau^1.256 (1 - 0.625 tau)."""
    tau = 1 - (temperature_c + 273.15) / iapws_r12_08.CRITICAL_K
    return 0.2358 * tau**1.256 * (1 - 0.625 * tau)


def density_kg_m3(t):
    """Kell, J. Chem. Eng. Data 20, 97 (1975), 1 atm (coefficients from memory)."""
    over = 999.83952 + t * (
        16.945176 + t * (-7.9870401e-3 + t * (-46.170461e-6 + t * (105.56302e-9 - 280.54253e-12 * t)))
    )
    return over / (1 + 16.879850e-3 * t)


@each_row(("name", "temperature_c"), [("water", 20.0), ("tea", 85.0), ("coffee", 65.0)])
def test_what_is_brewed_is_hot_water(name, temperature_c):
    found = liquids.named(name)
    assert found.density_kg_m3 == pytest.approx(density_kg_m3(temperature_c), abs=0.02)
    assert found.viscosity_pa_s == pytest.approx(viscosity_pa_s(temperature_c, found.density_kg_m3), rel=1e-4)
    assert found.surface_tension_n_m == pytest.approx(surface_tension_n_m(temperature_c), abs=6e-6)
    assert name == "water" or f"{temperature_c:.0f} C" in found.source


def test_what_is_recalled_says_so():
    assert [x.name for x in liquids.LIQUIDS if "from memory" in x.source] == ["olive oil", "honey"]
    assert all(" C" in x.source for x in liquids.LIQUIDS)


def test_a_stream_carries_its_flow_however_thin():
    thin = liquids.thinned_m(8e-3, 0.6, 4.8)
    assert thin**2 * 4.8 == pytest.approx(8e-3**2 * 0.6)
    assert liquids.thinned_m(8e-3, 0.6, 0.0) == pytest.approx(80e-3)


def test_what_leaves_the_lip_is_the_flow():
    assert liquids.lip_speed_m_s(30e-6, 8e-3) * math.pi * 4e-3**2 == pytest.approx(30e-6)


def test_weber_and_ohnesorge_make_the_reynolds_number():
    reynolds = WATER.density_kg_m3 * 2.0 * 3e-3 / WATER.viscosity_pa_s
    assert math.sqrt(liquids.weber(WATER, 2.0, 3e-3)) / liquids.ohnesorge(WATER, 3e-3) == pytest.approx(reynolds)


def test_a_faster_stream_holds_together_further():
    assert liquids.breakup_length_m(WATER, 2.0, 3e-3) > 1.9 * liquids.breakup_length_m(WATER, 1.0, 3e-3)


def hanging(gravity, lip_m):
    """Volume of a falling drop by Lando & Oakley's fit of Harkins & Brown, by a root-finder of another kind."""
    r = lip_m / 2
    factor = lambda v: 0.14782 + 0.27896 * r / v ** (1 / 3) - 0.166 * (r / v ** (1 / 3)) ** 2  # noqa: E731
    unbalance = lambda v: v * WATER.density_kg_m3 * gravity * factor(v) / r - WATER.surface_tension_n_m  # noqa: E731
    return brentq(unbalance, (r / 1.2) ** 3, (r / 0.3) ** 3, xtol=1e-22)


@each_row(("gravity", "lip_m"), [(9.80665, 3e-3), (9.80665, 5e-3), (1.0, 8e-3), (0.1, 20e-3)])
def test_a_dripping_drop_balances_its_weight(gravity, lip_m):
    diameter = liquids.dripping_drop_m(WATER, gravity, lip_m)
    assert liquids.drop_volume_m3(diameter) == pytest.approx(hanging(gravity, lip_m), rel=DRIP)


def test_a_dripping_drop_is_somewhat_lighter_than_tates_law():
    tate = math.pi * 4e-3 * WATER.surface_tension_n_m / 9.80665
    share = WATER.density_kg_m3 * liquids.drop_volume_m3(liquids.dripping_drop_m(WATER, 9.80665, 4e-3)) / tate
    assert 0.6 < share < 0.75  # Harkins & Brown (1919): 0.60 to 0.75 for such tips (from memory)


def test_drops_grow_as_gravity_falls_and_none_falls_without_it():
    sizes = [liquids.dripping_drop_m(WATER, g, 4e-3) for g in (20.0, 9.8, 1.0, 0.01, 1e-6)]
    assert sizes == sorted(sizes)
    with pytest.raises(ValueError, match="gravity"):
        liquids.dripping_drop_m(WATER, 0.0, 4e-3)
