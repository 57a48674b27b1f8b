"""A table of rows in one test: every row is tried, and those that fail are named."""

import pytest

from tests.tables import each_row


def test_every_row_is_tried_and_the_failing_ones_are_named():
    tried = []

    @each_row(("number", "square"), [(1, 1), (2, 5), (3, 9), (4, 15)])
    def squares(number, square, tmp_path):
        tried.append((number, tmp_path))
        assert number**2 == square

    with pytest.raises(ExceptionGroup, match="2 of 4 rows failed") as caught:
        squares(tmp_path="a folder")
    assert [error.__notes__ for error in caught.value.exceptions] == [
        ["in row 1: number=2, square=5"],
        ["in row 3: number=4, square=15"],
    ]
    assert tried == [(k, "a folder") for k in (1, 2, 3, 4)]


def test_a_single_failure_is_raised_as_it_is_and_tables_lie_within_tables():
    @each_row("a", [1, 2])
    @each_row("b", "xy")
    def pairs(a, b):
        assert (a, b) != (2, "y")

    with pytest.raises(AssertionError) as caught:
        pairs()
    assert caught.value.__notes__ == ["in row 1: b='y'", "in row 1: a=2"]


def test_an_empty_table_and_a_row_too_short_are_faults():
    with pytest.raises(ValueError, match="without rows"):
        each_row("a", [])
    for row in [(1,), (1, 2, 3)]:
        with pytest.raises(ValueError, match="as many values"):
            each_row(("a", "b"), [row])
