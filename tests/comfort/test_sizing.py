"""The smallest habitat against scipy.optimize.linprog (HiGHS) on random wishes, and against published designs.

The half planes that linprog is given are written here from the text-book formulas, not taken from the program.
"""

import math
import random
from functools import cache

import numpy as np
import pytest
from scipy.constants import g as G0
from scipy.optimize import linprog

from rimfall.comfort import sizing
from rimfall.comfort.quantities import QUANTITIES
from rimfall.physics.constants import RPM_RAD_S
from rimfall.scene.feel.person_part import PersonPart
from tests.published import bretl_2019, cylinder_closed_forms
from tests.tables import each_row

PERSON = PersonPart(height_m=1.8, walk_m_s=1.1, head_turn_deg_s=70.0)
RANGES = {
    "gravity": (0.01, 3.0),
    "spin": (0.1, 30.0),
    "gradient": (0.05, 40.0),
    "rim_speed": (1.0, 300.0),
    "head_turn": (0.02, 5.0),
    "coriolis": (0.01, 1.0),
    "radius": (1.0, 5000.0),
}
CLOSE = 1e-7  # in logarithms: linprog's own tolerance
SETS = 200


def rows_of(wishes):
    """A x <= b of wishes, x = (ln radius in m, ln spin in rad/s), and of the ranges of a scene document."""
    head = math.radians(PERSON.head_turn_deg_s)
    known = {
        "gravity": (1, 2, -math.log(G0)),
        "spin": (0, 1, math.log(60 / (2 * math.pi))),
        "gradient": (-1, 0, math.log(100 * PERSON.height_m)),
        "rim_speed": (1, 1, 0.0),
        "head_turn": (0, 1, math.log(head)),
        "coriolis": (-1, -1, math.log(2 * PERSON.walk_m_s)),
        "radius": (1, 0, 0.0),
    }
    rows = [
        (-1, 0, -math.log(0.1)),
        (1, 0, math.log(1e5)),
        (0, 1, math.log(200 * 2 * math.pi / 60)),
        (1, 1, math.log(5000.0)),
    ]
    for quantity, bound, value in wishes:
        a, b, shift = known[quantity]
        if bound != "at_least":
            rows.append((a, b, math.log(value) - shift))
        if bound != "at_most":
            rows.append((-a, -b, shift - math.log(value)))
    return rows


def asked(goal, wishes):
    """linprog's answer for the least of goal over what meets the wishes; status 0, 2 none meets them, 3 endless."""
    *powers, most = np.array(rows_of(wishes)).T
    return linprog(goal, A_ub=np.stack(powers, axis=1), b_ub=most, bounds=[(None, None)] * 2)


def of(wishes):
    """The program's half planes, a tuple a wish."""
    return tuple(sizing.half_planes(PERSON, *wish, number) for number, wish in enumerate(wishes))


def flat(planes):
    return [plane for of_one in planes for plane in of_one]


def some_wishes(seed):
    rng = random.Random(seed)
    few = rng.randint(1, 6)
    return [
        (q, rng.choice(("exactly", "at_least", "at_most", "at_most")), math.exp(rng.uniform(*map(math.log, RANGES[q]))))
        for q in rng.choices(tuple(RANGES), k=few)
    ]


@cache
def answered():
    """(wishes, linprog's least radius) of random wishes: those that are met, and those that none meets; once, by the first test that asks."""
    every = [(wishes, asked((1, 0), wishes)) for wishes in map(some_wishes, range(SETS))]
    return [one for one in every if one[1].status == 0], [one for one in every if one[1].status == 2]


def test_there_are_enough_of_both_kinds():
    met, not_met = answered()
    assert len(met) + len(not_met) == SETS
    assert min(len(met), len(not_met)) > 60


def test_the_smallest_is_that_of_linear_programming():
    for wishes, least in answered()[0]:
        found = sizing.size(flat(of(wishes)))
        assert math.log(found.radius_m) == pytest.approx(least.x[0], abs=CLOSE), wishes


def test_what_cannot_be_met_is_told():
    assert [wishes for wishes, _ in answered()[1] if sizing.size(flat(of(wishes))) is not None] == []


def test_the_wishes_named_keep_it_from_being_smaller_and_each_of_them_does():
    for wishes, _ in answered()[0]:
        found = sizing.size(flat(of(wishes)))
        alone = asked((1, 0), [wishes[n] for n in found.bound_by]).x[0]
        assert alone == pytest.approx(math.log(found.radius_m), abs=CLOSE), wishes
        assert found.bound_by or found.by_program
    two = of([("gravity", "exactly", 0.9), ("spin", "at_most", 2.0), ("gradient", "at_most", 40.0)])
    assert sizing.size(flat(two)).bound_by == (0, 1)


def test_the_family_is_all_that_meets_the_wishes():
    for wishes, _ in answered()[0][:40]:
        found = sizing.size(flat(of(wishes)))
        assert math.log(found.radii_m[-1]) == pytest.approx(-asked((-1, 0), wishes).fun, abs=CLOSE)
        assert list(found.radii_m) == sorted(found.radii_m)
        for k in sorted({0, len(found.radii_m) // 2, len(found.radii_m) - 1}):
            _ends_agree(wishes, found.radii_m[k], found.spins[k])


def _ends_agree(wishes, radius_m, spin):
    """Both ends of the spin at a radius, where a wish sets them; where none does, the ranges of a document or nothing do."""
    here = [*wishes, ("radius", "at_least", radius_m * (1 - 1e-9)), ("radius", "at_most", radius_m * (1 + 1e-9))]
    top, low = asked((0, -1), here), asked((0, 1), here)
    if spin.high_rad_s is None:
        free = min(math.log(200 * RPM_RAD_S), math.log(5000.0 / radius_m))
        assert -top.fun == pytest.approx(free, abs=1e-6), wishes
    else:
        assert math.log(spin.high_rad_s) == pytest.approx(-top.fun, abs=1e-6), wishes
    if spin.low_rad_s is None:
        assert low.status == 3, wishes
    else:
        assert math.log(spin.low_rad_s) == pytest.approx(low.fun, abs=1e-6), wishes


def test_a_collision_is_a_set_of_three_at_most_without_any_of_which_the_rest_can_be_met():
    for wishes, _ in answered()[1]:
        chosen = sizing.collision(of(wishes))
        assert 1 <= len(chosen) <= 3
        assert asked((1, 0), [wishes[n] for n in chosen]).status == 2
        for left_out in chosen:
            rest = [wishes[n] for n in chosen if n != left_out]
            assert asked((1, 0), rest).status == 0


def test_no_smaller_set_collides():
    for wishes, _ in answered()[1][:30]:
        chosen = sizing.collision(of(wishes))
        if len(chosen) > 1:
            assert all(asked((1, 0), [wish]).status == 0 for wish in wishes)
        if len(chosen) > 2:
            pairs = [(a, b) for k, a in enumerate(wishes) for b in wishes[:k]]
            assert all(asked((1, 0), pair).status == 0 for pair in pairs)


def test_how_far_a_quantity_can_go_is_that_of_linear_programming():
    for wishes, _ in answered()[0][:40]:
        for name in RANGES:
            a, b, _ = sizing.line_of(PERSON, name)
            low, high = sizing.span(flat(of(wishes)), a, b)
            for goal, end in (((a, b), low), ((-a, -b), -high)):
                least = asked(goal, wishes)
                assert (end == pytest.approx(least.fun, abs=CLOSE)) if least.status == 0 else end == -math.inf


@each_row(
    ("row", "widths"),
    [
        (cylinder_closed_forms.ROWS["DES-18"], 1),
        (cylinder_closed_forms.ROWS["DES-19"], 1),
        (bretl_2019.ROWS["DES-20"], 2),  # a diameter
    ],
)
def test_published_designs_come_out(row, widths):
    spin, gravity = row.inputs["rate_rpm"], row.inputs.get("g_used_m_s2", G0) / G0
    found = sizing.size(flat(of([("gravity", "exactly", gravity), ("spin", "at_most", spin)])))
    assert row.allows(widths * found.radius_m)
    assert found.spin.high_rad_s == pytest.approx(spin * 2 * math.pi / 60)


def test_the_highest_spin_that_wishes_leave_and_none_where_they_leave_any():
    between = sizing.size(
        flat(of([("radius", "exactly", 30.0), ("gravity", "at_least", 0.3), ("spin", "at_most", 4.0)]))
    )
    assert between.spin.low_rad_s == pytest.approx(math.sqrt(0.3 * G0 / 30.0))
    assert between.spin.high_rad_s == pytest.approx(4.0 * RPM_RAD_S)
    endless = sizing.size(flat(of([("radius", "exactly", 30.0), ("gravity", "at_least", 0.3)])))
    assert endless.spin.high_rad_s is None
    slow = sizing.size(flat(of([("radius", "exactly", 30.0), ("spin", "at_most", 4.0)])))
    assert (slow.spin.low_rad_s, slow.spin.high_rad_s) == (None, pytest.approx(4.0 * RPM_RAD_S))


def test_what_is_nothing_in_every_habitat_cannot_be_wished_for():
    still = PersonPart(walk_m_s=0.0)
    assert sizing.half_planes(still, "coriolis", "at_most", 0.1) == ()
    with pytest.raises(ValueError, match="coriolis"):
        sizing.half_planes(still, "coriolis", "at_least", 0.1)


def test_every_quantity_can_be_wished_for():
    assert set(RANGES) == {*QUANTITIES, "radius"}
