"""Published values about craft against the program: each row of tests/published/craft/ is asked of the code here.

Not asked, because the program does not compute it: the thickness of a spherical window (STR-04).
"""

import importlib
import math
import pkgutil

import pytest

from rimfall.physics.constants import G0_M_S2
from rimfall.vessel import hull, tether
from rimfall.vessel.materials import MATERIALS
from tests.published import craft as published

MODULES = [importlib.import_module(f"{published.__name__}.{m.name}") for m in pkgutil.iter_modules(published.__path__)]
ROWS = {key: row for module in MODULES for key, row in module.ROWS.items()}
asked = set()


def rows(*keys):
    """Ask a test once for each of these rows."""
    asked.update(keys)
    return pytest.mark.parametrize("row", [pytest.param(ROWS[key], id=key) for key in keys])


def at_gravity(radius_m, gravity_m_s2, density_kg_m3, thickness_m=1.0, load_kg_m2=0.0):
    return hull.Ring(radius_m, math.sqrt(gravity_m_s2 / radius_m), density_kg_m3, thickness_m, load_kg_m2)


@rows("STR-01")
def test_share_of_hoop_stress_that_does_not_depend_on_thickness(row):
    """The bulkheads' mass is spread over the wall, as the source has it."""
    density = row.inputs["rho_hull_kg_m3"] + row.inputs["bulkhead_equiv_kg_m3"]
    ring = at_gravity(row.inputs["radius_m"], row.inputs["g_m_s2"], density)
    assert row.allows(hull.hoop_stress(ring).own_pa)


@rows("STR-02")
def test_share_of_hoop_stress_of_the_load(row):
    structure = ROWS["STR-01"].inputs
    ring = at_gravity(structure["radius_m"], structure["g_m_s2"], 0.0, 0.5, row.inputs["areal_load_kg_m2"])
    assert row.allows(hull.hoop_stress(ring).load_pa * ring.thickness_m)


@rows("STR-03")
def test_hoop_stress_of_own_weight(row):
    ring = at_gravity(row.inputs["radius_m"], row.inputs["g_m_s2"], row.inputs["rho_kg_m3"])
    assert row.allows(hull.hoop_stress(ring).whole_pa)


@rows("MEC-17")
def test_rim_speed_of_a_flywheel_ring(row):
    """The source's mass per length over its section as a density: the stress at the printed speed is the printed one."""
    density = row.inputs["mass_per_length_kg_m"] / (row.inputs["thickness_m"] * row.inputs["width_m"])
    ring = hull.Ring(1.0, 1.0, density, row.inputs["thickness_m"])
    assert row.allows(math.sqrt(row.inputs["stress_Pa"] / hull.hoop_stress(ring).whole_pa))


NAMED = {
    "STR-05": "strong steel",
    "STR-06": "strong aluminium",
    "STR-07": "strong titanium",
    "STR-08": "carbon fibre",
    "STR-09": "aramid",
    "STR-11": "aluminium 6061-T6",
    "STR-12": "aluminium 7075-T6",
    "STR-13": "titanium Ti-6Al-4V",
    "STR-14": "steel 4340",
}


@rows(*NAMED)
def test_specific_strength_of_each_material(row):
    (key,) = [key for key in NAMED if ROWS[key] is row]
    material = MATERIALS[NAMED[key]]
    assert row.allows(material.specific_strength_m2_s2 / 1e3)
    assert (material.strength_pa / 1e6, material.density_kg_m3) == (row.inputs["strength_MPa"], row.inputs["rho_kg_m3"])


def test_no_material_is_listed_that_no_source_here_prints():
    assert sorted(MATERIALS) == sorted(NAMED.values())


@rows("STR-10")
def test_breaking_length_is_the_largest_bare_ring_at_one_gravity(row):
    bare = at_gravity(1.0, G0_M_S2, row.inputs["rho_kg_m3"])
    assert row.allows(hull.largest_radius_m(bare, row.inputs["strength_MPa"] * 1e6, G0_M_S2) / 1e3)


@rows("STR-15")
def test_tapered_tether_weighs_so_many_times_its_end(row):
    assert row.allows(tether.tapered_mass_ratio(row.inputs["velocity_ratio"]))


@rows("STR-17")
def test_taper_at_the_characteristic_speed(row):
    """Two equal ends, each at the speed sqrt(2 stress/density)."""
    stress_pa, density_kg_m3, length_m = 1e9, 1500.0, 200.0
    rate = row.inputs["velocity_ratio"] * math.sqrt(2 * stress_pa / density_kg_m3) / (length_m / 2)
    end, middle, _ = tether.tapered(tether.Tether(length_m, (100.0, 100.0), rate, stress_pa, density_kg_m3)).areas_m2
    assert row.allows(middle / end)


@rows("MEC-07")
def test_work_to_reel_two_masses_together(row):
    given = row.inputs
    before = given["separation_before_m"]
    rate = given["speed_before_m_s"] / (before / 2)
    rope = tether.Tether(before, (given["mass_each_kg"],) * 2, rate)
    assert row.allows(tether.reel(rope, given["separation_after_m"]).work_j)


def test_every_row_is_asked():
    assert asked == set(ROWS)
