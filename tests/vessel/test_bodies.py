"""Bodies put together: laws that hold for any parts, drawn at random."""

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from rimfall.vessel.bodies import Body, about_spin_axis, greater_transverse, joined, principal
from rimfall.vessel.solids import SQUARES, Solid, body_of, turn_to

EXACT = 1e-12
FEW = settings(max_examples=40)


def figures(low, high):
    return st.floats(low, high, allow_nan=False).map(lambda x: float(f"{x:.6g}"))


AXES = st.tuples(*[figures(-1, 1)] * 3).filter(lambda axis: max(map(abs, axis)) > 1e-3)
PLACES = st.tuples(*[figures(-100, 100)] * 3)
SIZES = figures(0.1, 100)
SOLIDS = st.builds(
    Solid, st.sampled_from(list(SQUARES)), st.floats(0, 12).map(lambda e: 10.0**e), PLACES, AXES, SIZES, SIZES, SIZES,
    st.tuples(SIZES, SIZES, SIZES),
)  # fmt: skip
CRAFTS = st.lists(SOLIDS, min_size=1, max_size=6)


def alike(one, other):
    """To 1e-12 of the greatest figure that either is made of: of the inertia about the origin."""
    reach = max(1.0, float(np.abs(one.centre_m).max()))
    size = np.abs(one.inertia_kg_m2).max() + one.mass_kg * reach**2
    assert other.mass_kg == pytest.approx(one.mass_kg, rel=EXACT)
    assert np.abs(one.centre_m - other.centre_m).max() <= EXACT * 100
    assert np.abs(one.inertia_kg_m2 - other.inertia_kg_m2).max() <= EXACT * size


def whole(solids):
    return joined([body_of(one) for one in solids])


@FEW
@given(CRAFTS, st.randoms(use_true_random=False))
def test_the_order_of_parts_changes_no_digit(solids, random):
    shuffled = random.sample(solids, len(solids))
    one, other = whole(solids), whole(shuffled)
    assert one.mass_kg == other.mass_kg
    assert (one.centre_m == other.centre_m).all()
    assert (one.inertia_kg_m2 == other.inertia_kg_m2).all()


@FEW
@given(CRAFTS, AXES, PLACES)
def test_another_frame_turns_and_shifts_the_body_and_no_more(solids, axis, shift):
    turn = turn_to(np.array(axis) / np.linalg.norm(axis))
    one = whole(solids)
    bodies = [body_of(solid) for solid in solids]
    moved = [Body(b.mass_kg, turn @ b.centre_m + shift, turn @ b.inertia_kg_m2 @ turn.T) for b in bodies]
    other = joined(moved)
    back = Body(other.mass_kg, turn.T @ (other.centre_m - shift), turn.T @ other.inertia_kg_m2 @ turn)
    alike(one, back)
    size = max(np.abs(one.inertia_kg_m2).max(), one.mass_kg * 1e4)
    assert np.abs(principal(one)[0] - principal(other)[0]).max() <= EXACT * size


@FEW
@given(CRAFTS)
def test_a_mirrored_craft_has_mirrored_figures(solids):
    """x to -x: the products with x change sign, nothing else; a box is turned by the shortest way, which mirrors as well."""
    mirror = np.diag([-1.0, 1.0, 1.0])
    flipped = [
        Solid(
            s.kind,
            s.mass_kg,
            tuple(mirror @ s.place_m),
            tuple(mirror @ s.axis),
            s.radius_m,
            s.length_m,
            s.tube_radius_m,
            s.size_m,
        )
        for s in solids
    ]
    one, other = whole(solids), whole(flipped)
    alike(one, Body(other.mass_kg, mirror @ other.centre_m, mirror @ other.inertia_kg_m2 @ mirror))
    assert about_spin_axis(one) == pytest.approx(about_spin_axis(other), rel=EXACT)


@FEW
@given(CRAFTS, st.floats(0.01, 100), st.floats(0.001, 1000))
def test_inertia_goes_with_mass_and_length_squared(solids, length, mass):
    scaled = [
        Solid(
            s.kind, s.mass_kg * mass, tuple(length * x for x in s.place_m), s.axis, s.radius_m * length, s.length_m * length,
            s.tube_radius_m * length, tuple(length * side for side in s.size_m),
        )
        for s in solids
    ]  # fmt: skip
    one, other = whole(solids), whole(scaled)
    alike(one, Body(other.mass_kg / mass, other.centre_m / length, other.inertia_kg_m2 / mass / length**2))


@FEW
@given(CRAFTS)
def test_principal_axes_are_right_handed_and_give_the_inertia_back(solids):
    body = whole(solids)
    values, axes = principal(body)
    size = max(np.abs(body.inertia_kg_m2).max(), 1e-300)
    assert list(values) == sorted(values)
    assert np.abs(axes @ axes.T - np.eye(3)).max() <= 1e-14
    assert np.linalg.det(axes) == pytest.approx(1)
    assert np.abs(axes.T @ np.diag(values) @ axes - body.inertia_kg_m2).max() <= EXACT * size
    assert (
        values[2] <= values[0] + values[1] + EXACT * size
    )  # no body has more about one axis than about the two others


@FEW
@given(CRAFTS)
def test_the_greater_moment_across_z_is_that_of_the_block_across_it(solids):
    body = whole(solids)
    across = np.linalg.eigvalsh(body.inertia_kg_m2[:2, :2])
    assert greater_transverse(body) == pytest.approx(across[1], rel=1e-9, abs=1e-300)


def test_masses_a_trillion_times_apart_are_both_there():
    body = joined([Body(1e12, np.zeros(3), np.zeros((3, 3))), Body(1.0, np.array([100.0, 0, 0]), np.zeros((3, 3)))])
    assert body.mass_kg == 1e12 + 1
    assert body.centre_m[0] == pytest.approx(1e-10, rel=1e-9)
    assert body.inertia_kg_m2[2, 2] == pytest.approx(1e4, rel=1e-9)


def test_about_the_spin_axis_a_mass_counts_with_its_distance_squared():
    assert about_spin_axis(body_of(Solid("point", 3.0, (3.0, 4.0, 9.0)))) == pytest.approx(75.0, rel=EXACT)
    assert about_spin_axis(None) == 0.0
    assert math.isclose(about_spin_axis(body_of(Solid("point", 3.0, (0.0, 0.0, 9.0)))), 0.0)
