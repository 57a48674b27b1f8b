"""A bearing: friction that drags along, and seizing, against steps in time and the laws of momentum and energy."""

import pytest

from rimfall.vessel import joint
from tests.tables import each_row

PAIRS = [
    ((282e6, 0.27e6), (0.314, 0.0)),
    ((3.0, 5.0), (2.0, -1.0)),
    ((1e12, 1.0), (0.3, 0.0)),
    ((7.0, 7.0), (1.0, -1.0)),
]


@each_row(("inertias", "rates"), PAIRS)
def test_friction_drags_both_to_the_rate_at_which_they_would_seize(inertias, rates):
    """A steady torque one way on one and the other way on the other, until their rates meet."""
    torque = joint.friction_torque_n_m(0.002, 20_000.0, 1.2)
    assert torque == pytest.approx(48.0)
    time = joint.drag_along_s(inertias, rates[0] - rates[1], torque)
    ends = rates[0] - torque * time / inertias[0], rates[1] + torque * time / inertias[1]
    assert ends[0] == pytest.approx(ends[1], rel=1e-9, abs=1e-12)
    assert joint.seized(inertias, rates).rate_rad_s == pytest.approx(ends[0], rel=1e-9, abs=1e-12)


@each_row(("inertias", "rates"), PAIRS)
def test_seizing_keeps_momentum_and_turns_the_rest_into_heat(inertias, rates):
    stuck = joint.seized(inertias, rates)
    before = sum(i * w for i, w in zip(inertias, rates, strict=True))
    assert sum(inertias) * stuck.rate_rad_s == pytest.approx(before, rel=1e-12, abs=1e-12)
    energy = sum(i * w * w / 2 for i, w in zip(inertias, rates, strict=True))
    assert stuck.heat_j == pytest.approx(energy - sum(inertias) * stuck.rate_rad_s**2 / 2, rel=1e-9, abs=1e-3)


@each_row(("inertias", "rates"), PAIRS)
def test_a_reversed_spin_ends_the_other_way_with_the_same_heat(inertias, rates):
    one, other = joint.seized(inertias, rates), joint.seized(inertias, tuple(-rate for rate in rates))
    assert (one.rate_rad_s, one.heat_j) == (-other.rate_rad_s, other.heat_j)


def test_the_ends():
    assert joint.drag_along_s((1.0, 1.0), 1.0, 0.0) is None
    assert joint.drag_along_s((1.0, 0.0), 1.0, 3.0) == 0.0
    assert joint.seized((0.0, 0.0), (1.0, 0.0)) is None
