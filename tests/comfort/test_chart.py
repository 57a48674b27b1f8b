"""The map's lines and forbidden parts against the text-book formulas written out here: omega^2 r, omega r, height over radius,
2 v over rim speed; g from scipy.constants (CODATA). Inside or outside of a polygon is told by scipy.spatial."""

import json
import math
from dataclasses import asdict

import numpy as np
import pytest
from scipy.constants import g as G0
from scipy.spatial import Delaunay

from rimfall.comfort.chart import chart, says
from rimfall.comfort.limits import compare
from rimfall.comfort.published import ROWS, STUDIES
from rimfall.comfort.quantities import QUANTITIES
from rimfall.scene.feel.person_part import OwnLimit, PersonPart
from tests.tables import each_row

PERSON = PersonPart(height_m=1.6, walk_m_s=1.2, head_turn_deg_s=80.0)
OWN = [
    OwnLimit(name="mine", quantity="gradient", bound="at_most", value=3.0),
    OwnLimit(quantity="gravity", bound="at_most", value=2.0),
]
READ_OFF = 1e-9  # relative: lines have 12 figures


def at(quantity, radius_m, spin_rpm, person=PERSON):
    """A quantity's value, from the text books."""
    omega = spin_rpm * 2 * math.pi / 60
    return {
        "gravity": omega**2 * radius_m / G0,
        "spin": spin_rpm,
        "gradient": 100 * person.height_m / radius_m,
        "rim_speed": omega * radius_m,
        "head_turn": math.radians(person.head_turn_deg_s) * omega,
        "coriolis": 2 * person.walk_m_s / (omega * radius_m),
    }[quantity]


DRAWN = chart(PERSON, OWN)
LINED = [line for line in DRAWN.limits if line.line]


def on_the_side(radius_m, spin_rpm):
    return radius_m in DRAWN.radius_m or spin_rpm in DRAWN.spin_rpm


def test_equal_gravity_is_omega_squared_r():
    assert len(DRAWN.gravity) >= 3
    for line in DRAWN.gravity:
        for radius_m, spin_rpm in line.line:
            assert at("gravity", radius_m, spin_rpm) == pytest.approx(line.g, rel=READ_OFF)
            assert on_the_side(radius_m, spin_rpm)


@each_row("line", LINED)
def test_a_limit_holds_all_along_its_line(line):
    ends = np.array(line.line)
    assert np.ptp(ends, axis=0).max() > 0
    assert all(on_the_side(*end) for end in line.line)
    for part in (0.0, 0.3, 1.0):
        radius_m, spin_rpm = np.exp((1 - part) * np.log(ends[0]) + part * np.log(ends[1]))
        assert at(line.quantity, radius_m, spin_rpm) == pytest.approx(line.limit, rel=READ_OFF)


@each_row("line", DRAWN.limits)
def test_what_is_forbidden_is_what_lies_beyond(line):
    rng = np.random.default_rng(6)
    low, high = np.log([(DRAWN.radius_m[k], DRAWN.spin_rpm[k]) for k in (0, 1)])
    points = rng.uniform(low, high, (400, 2))
    values = np.array([at(line.quantity, *np.exp(point)) for point in points])
    beyond = values > line.limit if line.bound == "at_most" else values < line.limit
    inside = Delaunay(np.log(line.forbids)).find_simplex(points) >= 0 if line.forbids else np.zeros(len(points), bool)
    clear = np.abs(np.log(values / line.limit)) > 1e-6
    assert np.array_equal(inside[clear], beyond[clear])


def test_every_published_limit_is_on_one_line_and_nothing_else_is():
    limits = sorted(row.id for row in ROWS if row.bound in ("at_least", "at_most"))
    assert sorted(i for line in DRAWN.limits for i in line.ids if not line.mine) == limits
    assert 0 < len(limits) < len(ROWS)


def test_who_says_the_same_shares_a_line_in_the_order_of_their_years():
    six = next(line for line in DRAWN.limits if line.quantity == "spin" and line.limit == 6.0)
    assert six.label == "6\u00a0rpm at most: Gilruth 1969, Gordon & Gervais 1969, Stone 1973"
    assert six.short == "6\u00a0rpm"
    rows = {row.id: row for row in ROWS}
    for line in (one for one in DRAWN.limits if not one.mine):
        years = [STUDIES[rows[i].study].year or math.inf for i in line.ids]
        assert years == sorted(years)
        assert all(STUDIES[rows[i].study].name in line.label for i in line.ids)
        assert {(rows[i].quantity, rows[i].bound, rows[i].limit) for i in line.ids} <= {
            (line.quantity, line.bound, line.limit)
        }


def test_own_limits_are_marked_and_come_last():
    assert [line.mine for line in DRAWN.limits[-2:]] == [True, True]
    assert not any(line.mine for line in DRAWN.limits[:-2])
    assert {line.label for line in DRAWN.limits[-2:]} == {"3\u00a0% at most: mine", "2\u00a0g at most: your own"}


@each_row(
    ("own", "all_of_it"),
    [
        (OwnLimit(quantity="spin", bound="at_most", value=61.0), False),
        (OwnLimit(quantity="spin", bound="at_least", value=61.0), True),
        (OwnLimit(quantity="spin", bound="at_most", value=0.05), True),
        (OwnLimit(quantity="gravity", bound="at_least", value=1e-7), False),
    ],
)
def test_outside_the_map_there_is_no_line_and_all_or_nothing_is_forbidden(own, all_of_it):
    line = chart(PERSON, [own]).limits[-1]
    assert line.line is None
    corners = [[r, s] for r in DRAWN.radius_m for s in DRAWN.spin_rpm]
    assert (line.forbids is not None and sorted(line.forbids) == sorted(corners)) == all_of_it
    assert all_of_it or line.forbids is None


def test_where_nobody_walks_or_turns_the_head_those_limits_forbid_nothing_or_all():
    still = PersonPart(walk_m_s=0.0, head_turn_deg_s=0.0)
    own = [OwnLimit(quantity="coriolis", bound="at_least", value=0.1)]
    for line in chart(still, own).limits:
        if line.quantity in ("coriolis", "head_turn"):
            assert line.line is None
            assert (line.forbids is not None) == line.mine


def test_the_lines_follow_the_person():
    tall = next(line for line in chart(PersonPart(height_m=3.0), OWN).limits if line.quantity == "gradient")
    assert tall.line[0][0] == pytest.approx(100.0)  # 3 m is 3 % of it


def test_the_map_is_plain_finite_data():
    json.dumps(asdict(DRAWN), allow_nan=False)


@each_row(
    ("limit", "shown"),
    [
        (1e6, "1,000,000"),
        (123456.0, "123,500"),
        (0.035, "0.035"),
        (2e-5, "0.00002"),
        (1e-300, "under 0.000001"),
        (6.0, "6"),
    ],
)
def test_a_limit_is_shown_without_a_power_of_ten(limit, shown):
    assert says("rim_speed", "at_most", limit) == f"{shown}\u00a0m/s at most"


def test_a_limit_of_ones_own_has_the_id_of_its_row_and_a_name_of_spaces_is_none():
    own = [OwnLimit(quantity="spin", bound="at_most", value=2.5, name=name) for name in ("A", "  ")]
    lines = [line for line in chart(PERSON, own).limits if line.mine]
    rows = [row for row in compare(dict.fromkeys(QUANTITIES), own) if row.mine]
    assert sorted(line.ids for line in lines) == [(row.id,) for row in rows] == [("own.1",), ("own.2",)]
    assert {line.label.partition(": ")[2] for line in lines} == {"A", "your own"} == {row.study for row in rows}


def test_a_limit_on_the_edge_of_the_map_is_drawn_there():
    (slowest,) = [line for line in DRAWN.limits if (line.quantity, line.limit) == ("spin", 0.1)]
    assert DRAWN.spin_rpm[0] == 0.1
    assert slowest.line == [[DRAWN.radius_m[0], 0.1], [DRAWN.radius_m[1], 0.1]]
