"""What is varied, as it is asked for: values against numpy's, refusals that name what is wrong."""

import numpy as np
import pytest

from rimfall.errors import BadInput
from rimfall.sweep import parameters
from tests.tables import each_row


@each_row(("first", "last", "count"), [(1, 6, 11), (-30, 30, 7), (0.1, 0.7, 4), (5, -5, 3), (1e-3, 2e3, 50)])
def test_a_range_is_evenly_spaced_with_both_ends(first, last, count):
    values = parameters.parse(f"habitat.spin_rpm={first}..{last}/{count}").values
    np.testing.assert_allclose(values, np.linspace(first, last, count), rtol=1e-15, atol=1e-15)
    assert (values[0], values[-1], len(values)) == (first, last, count)


def test_a_range_has_the_decimals_a_reader_expects():
    assert parameters.parse("x=1.1..1.9/9").values == (1.1, 1.2, 1.3, 1.4, 1.5, 1.6, 1.7, 1.8, 1.9)
    assert parameters.parse("x=0..0.3/4").values == (0, 0.1, 0.2, 0.3)


def test_a_list_holds_numbers_and_words():
    assert parameters.parse("motions.serve.body=handball, tennis ball").values == ("handball", "tennis ball")
    assert parameters.parse("air=null").values == (None,)
    assert parameters.parse("x=true,1,-2.5e1,.5").values == (True, 1, -25, 0.5)
    assert parameters.parse("sampling.fps=24000/1001,24").values == ("24000/1001", 24)


def test_whole_numbers_are_integers_as_fields_that_count_want_them():
    assert all(isinstance(v, int) for v in parameters.parse("motions.serve.bounces=0..10/11").values)


@each_row(
    ("text", "part"),
    [
        ("habitat.spin_rpm", "PATH=first..last/count"),
        ("=1,2", "PATH=first..last/count"),
        ("a..b=1", "PATH=first..last/count"),
        ("x=1,,2", "an empty value"),
        ("x=1..6", "not a range"),
        ("x=1..6..11", "not a range"),
        ("x=1:6/11", "first..last/count, such as 1..6/11"),
        ("x=-2.5:4:14", "it must be first..last/count, such as -2.5..4/14"),
        ("x=1..6/2.5", "not a range"),
        ("x=1..6/1", "2 to 100,000"),
        ("x=1..6/999999999", "2 to 100,000"),
        ("x=1e999", "too great"),
        ("x=4,4.0", "has 4 twice"),
    ],
)
def test_what_is_no_variation_is_refused(text, part):
    with pytest.raises(BadInput) as refused:
        parameters.parse(text)
    (one,) = refused.value.refusals
    assert one.field == "over"
    assert part in one.say
