"""Values held against limits: inside, at or beyond, by how much; published ones by year, the user's own among them and last."""

import json
import math
from dataclasses import asdict
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rimfall.comfort import limits
from rimfall.comfort.published import LIMITS, ROWS
from rimfall.comfort.quantities import QUANTITIES
from rimfall.scene.feel.person_part import OwnLimit
from tests.tables import each_row

HERE = {"gravity": 0.5636, "spin": 3.0, "gradient": 3.1, "rim_speed": 17.6, "head_turn": 0.329, "coriolis": 0.159}
NOWHERE = dict.fromkeys(QUANTITIES)


def own(quantity="spin", bound="at_most", value=3.0, name=""):
    return OwnLimit(quantity=quantity, bound=bound, value=value, name=name)


def compared(values=None, own_limits=()):
    return limits.compare(HERE | (values or {}), list(own_limits))


def found(row_id, values=None, own_limits=()):
    (row,) = [row for row in compared(values, own_limits) if row.id == row_id]
    return row


def told(row):
    return row.state, row.inside, row.margin, row.times


@each_row(
    ("row_id", "value", "told_of_it"),
    [
        ("hill_schnitzer_1962.spin.at_most", 3.0, ("inside", True, 1.0, None)),
        ("hill_schnitzer_1962.spin.at_most", 4.0, ("at the limit", True, 0.0, None)),
        ("hill_schnitzer_1962.spin.at_most", 10.0, ("beyond", False, -6.0, 2.5)),
        ("stone_1973.rim_speed.at_least", 12.5, ("inside", True, 2.5, None)),
        ("stone_1973.rim_speed.at_least", 10.0, ("at the limit", True, 0.0, None)),
        ("stone_1973.rim_speed.at_least", 2.5, ("beyond", False, -7.5, 4.0)),
        ("stone_1973.rim_speed.at_least", 0.0, ("beyond", False, -10.0, None)),
        ("gilruth_1969.spin.optimum", 1.0, ("below", None, None, None)),
        ("gilruth_1969.spin.optimum", 2.0, ("equal", None, None, None)),
        ("elias_jarchow_young_2008.spin.reached", 31.0, ("above", None, None, None)),
    ],
)  # fmt: skip
def test_a_value_lies_so_to_a_limit(row_id, value, told_of_it):
    quantity = row_id.split(".")[1]
    row = found(row_id, {quantity: value})
    assert told(row) == told_of_it
    assert row.value == value


@each_row("bound", LIMITS)
@each_row(("off", "state"), [(1e-10, "at the limit"), (1e-8, "beyond"), (-1e-10, "at the limit"), (-1e-8, "inside")])
def test_a_billionth_is_at_the_limit_and_more_is_not(bound, off, state):
    past = 1 + off if bound == "at_most" else 1 - off
    assert found("own.1", {"spin": 7.0 * past}, [own(bound=bound, value=7.0)]).state == state


@given(
    bound=st.sampled_from(LIMITS),
    value=st.floats(0.0, 1e6),
    limit=st.floats(1e-6, 1e6),
)
def test_margin_and_times_are_those_of_exact_arithmetic(bound, value, limit):
    """Against rational numbers of the standard library."""
    row = found("own.1", {"gradient": value}, [own("gradient", bound, limit)])
    past = Fraction(value) - Fraction(limit) if bound == "at_most" else Fraction(limit) - Fraction(value)
    if abs(past) <= Fraction(1, 10**9) * max(Fraction(value), Fraction(limit)):
        assert told(row) == ("at the limit", True, 0.0, None)
    elif past > 0:
        assert told(row)[:2] == ("beyond", False)
        assert row.margin == pytest.approx(-float(past), rel=1e-12)
        pair = (value, limit) if bound == "at_most" else (limit, value)
        assert row.times is None or row.times == pytest.approx(float(Fraction(pair[0]) / Fraction(pair[1])), rel=1e-12)
    else:
        assert told(row) == ("inside", True, pytest.approx(-float(past), rel=1e-12), None)


def test_without_a_value_nothing_is_said():
    rows = limits.compare(NOWHERE, [own()])
    assert len(rows) == len(ROWS) + 1
    assert {told(row) for row in rows} == {("none", None, None, None)}


def test_every_published_row_is_there_once_with_all_that_is_known_of_it():
    by_id = {row.id: row for row in compared()}
    assert sorted(by_id) == sorted(row.id for row in ROWS)
    for row in ROWS:
        ours = by_id[row.id]
        for name in ("quantity", "bound", "limit", "unit", "who", "source", "note", "known_by"):
            assert getattr(ours, name) == getattr(row, name)
        assert not ours.mine


def test_rows_go_by_quantity_then_year_then_study_and_own_ones_last():
    rows = compared(own_limits=[own(name="B"), own("gravity", "at_least", 0.2, "Z"), own(name="A")])
    assert [name for name in QUANTITIES if any(row.quantity == name for row in rows)] == list(
        dict.fromkeys(row.quantity for row in rows)
    )
    for name in QUANTITIES:
        theirs = [(row.year or 9999, row.study) for row in rows if row.quantity == name and not row.mine]
        assert theirs == sorted(theirs)
        mine = [row.mine for row in rows if row.quantity == name]
        assert mine == sorted(mine)
    assert [row.study for row in rows if row.mine] == ["Z", "B", "A"]  # by quantity, and as the user set them


def test_letters_run_through_each_quantity_and_go_on_after_z():
    rows = compared(own_limits=[own() for _ in range(12)])
    spins = [row.letter for row in rows if row.quantity == "spin"]
    assert spins == [*"abcdefghijklmnopqrstuvwxyz", "aa"]
    assert [row.letter for row in rows if row.quantity == "rim_speed"] == list("abcd")


def test_own_limits_are_compared_alike_and_marked():
    values = {"spin": 3.7}
    theirs, mine = (
        found("cramer_1985.spin.at_most", values),
        found("own.1", values, [own(value=3.0, name=" Quiet deck ")]),
    )
    assert told(mine) == told(theirs)
    assert (mine.mine, mine.study, mine.year, mine.unit) == (True, "Quiet deck", None, "rpm")
    assert found("own.1", values, [own()]).study == "your own"


def test_own_limits_keep_their_number_in_the_document():
    rows = compared(own_limits=[own("spin"), own("gravity", value=0.4)])
    assert [(row.id, row.quantity) for row in rows if row.mine] == [("own.2", "gravity"), ("own.1", "spin")]


@each_row("value", [0.0, 1e-300, 1e6, 1e300])
def test_everything_is_finite_or_none(value):
    own_limits = [own("gradient", bound, limit) for bound in LIMITS for limit in (5e-324, 1e6)]
    rows = limits.compare(dict.fromkeys(QUANTITIES, value), own_limits)
    assert json.dumps([asdict(row) for row in rows], allow_nan=False)


@given(spins=st.tuples(st.floats(0.001, 200.0), st.floats(0.001, 200.0)))
def test_a_faster_spin_keeps_to_no_more_of_the_limits_on_it(spins):
    """All of them are at most: the trade's rule that slower is inside more (common practice, no source)."""
    slow, fast = (
        {row.id for row in compared({"spin": spin}) if row.quantity == "spin" and row.inside} for spin in sorted(spins)
    )
    assert fast <= slow


def test_studies_disagree_and_each_is_kept():
    """At 5 rpm the three limits of 6 rpm are kept to, those of 0.1, 1, 3 and 4 rpm are not: no average stands for them."""
    spins = [row for row in compared({"spin": 5.0}) if row.inside is not None and row.quantity == "spin"]
    assert {row.limit for row in spins if row.inside} == {6.0}
    assert {row.limit for row in spins if not row.inside} == {0.1, 1.0, 3.0, 4.0}
    assert math.fsum(row.inside for row in spins) == 3
