"""Bodies: named ones, and many as arrays."""

import math

import numpy as np
import pytest

from server.physics.bodies import NAMED_BODIES, Body, as_arrays, named


def test_a_name_gives_its_body_and_no_other_name_any():
    assert (named("handball").mass_kg, named("handball").diameter_m, named("handball").shell) == (0.45, 0.18, "hollow")
    assert named("anvil") is None


def test_every_named_body_says_where_its_numbers_are_from():
    assert all(b.source for b in NAMED_BODIES)
    assert len({b.name for b in NAMED_BODIES}) == len(NAMED_BODIES)


@pytest.mark.parametrize(
    ("name", "density"), [("steel ball 20 mm", 7850), ("steel ball 5 mm", 7850), ("water drop 3 mm", 998.2)]
)
def test_balls_have_the_density_their_source_names(name, density):
    body = named(name)
    assert body.mass_kg / (math.pi / 6 * body.diameter_m**3) == pytest.approx(density)


def test_many_bodies_as_arrays_know_which_fly_on_the_curve():
    many = as_arrays([Body(1.0, 0.1), Body(2.0, 0.2, 0.5)])
    assert np.isnan(many.drag_coefficient[0])
    assert many.take([1]).drag_coefficient == 0.5
    assert list(many.take(np.array([False, True])).mass_kg) == [2.0]
