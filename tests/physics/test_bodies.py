"""Bodies: named ones, and many as arrays."""

import math

import numpy as np
import pytest

from rimfall.physics.bodies import NAMED_BODIES, Body, as_arrays, named
from tests.tables import each_row


def test_a_name_gives_its_body_and_no_other_name_any():
    assert (named("handball").mass_kg, named("handball").diameter_m, named("handball").shell) == (0.45, 0.18, "hollow")
    assert named("anvil") is None


def test_every_named_body_says_where_its_numbers_are_from():
    assert all(b.source for b in NAMED_BODIES)
    assert len({b.name for b in NAMED_BODIES}) == len(NAMED_BODIES)


@each_row(("name", "density"), [("steel ball 20 mm", 7850), ("steel ball 5 mm", 7850), ("water drop 3 mm", 998.2)])
def test_balls_have_the_density_their_source_names(name, density):
    body = named(name)
    assert body.mass_kg / (math.pi / 6 * body.diameter_m**3) == pytest.approx(density)


def test_many_bodies_as_arrays_know_which_fly_on_the_curve():
    many = as_arrays([Body(1.0, 0.1), Body(2.0, 0.2, 0.5)])
    assert np.isnan(many.drag_coefficient[0])
    assert many.take([1]).drag_coefficient == 0.5
    assert list(many.take(np.array([False, True])).mass_kg) == [2.0]


def test_a_drag_area_stands_before_the_drag_and_its_coefficient_is_on_the_body_s_own_disc():
    many = as_arrays(
        [Body(1.0, 0.2, 0.5, drag_area_m2=0.1), Body(1.0, 0.2, drag_area_m2=0.0), Body(1.0, 0.0, drag_area_m2=0.1)]
    )
    assert many.drag_coefficient == pytest.approx([0.1 / (math.pi * 0.1**2), 0.0, 0.0])


def test_only_what_is_buoyant_displaces_air():
    assert as_arrays([Body(1.0, 0.1)]).displaced_m3 is None
    many = as_arrays([Body(1.0, 0.1), Body(1.0, 0.2, buoyant=True)])
    assert many.displaced_m3 == pytest.approx([0.0, math.pi / 6 * 0.2**3])
    assert many.take([1]).displaced_m3 == pytest.approx(math.pi / 6 * 0.2**3)


def test_a_balloon_of_helium_is_lighter_than_air_and_one_of_air_and_a_bubble_are_heavier():
    """Over the air's: molar masses 4.0026 and 28.96 g/mol of equal volumes (Avogadro), and the skins."""
    air, names = 101_325 / (287.05 * 293.15), ("helium balloon", "air balloon", "soap bubble")
    shares = {n: named(n).mass_kg / (air * math.pi / 6 * named(n).diameter_m ** 3) for n in names}
    skin = 0.003 / (air * math.pi / 6 * 0.28**3)
    assert shares["helium balloon"] == pytest.approx(4.0026 / 28.96 + skin, rel=1e-3)
    assert shares["air balloon"] == pytest.approx(1 + skin)
    assert shares["soap bubble"] == pytest.approx(1 + 6 * 998.2e-6 / (air * 0.05))
