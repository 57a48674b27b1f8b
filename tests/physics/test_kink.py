"""Where a velocity passes nearly nothing, and the pace of windows between two such places."""

import numpy as np
import pytest

from rimfall.physics.kink import kink
from rimfall.physics.pace import Pace
from rimfall.physics.picard import rule
from tests.tables import each_row

RULE = rule(20)


@each_row(
    ("at", "aside", "expected"),
    [
        (0.37, 0.0, 0.37),
        (0.37, 0.1, 0.37),
        (0.37, 0.4, None),  # as far aside it is no corner
        (0.0, 0.0, None),  # the start is none within
        (1.04, 0.0, 1.04),
        (1.5, 0.0, None),
        (-0.2, 0.0, None),
    ],
)
def test_a_straight_change_is_least_where_it_passes_nothing(at, aside, expected):
    """w = (s - at, aside, 0): least at s = at, by hand."""
    w = np.stack([RULE.points - at, np.full(len(RULE.points), aside), np.zeros(len(RULE.points))])
    share = kink(RULE, w)
    assert share == (None if expected is None else pytest.approx(expected, abs=1e-12))


def test_the_first_of_two_swings_ends_is_told():
    """cos turns through 0 at pi/2 and 3 pi/2."""
    w = np.stack([np.cos(5.0 * RULE.points), 0.0 * RULE.points, 0.0 * RULE.points])
    assert kink(RULE, w) == pytest.approx(np.pi / 10, abs=1e-9)


def paced(lengths, corners):
    """A Pace after windows of lengths, of half the error allowed, of which some end at corners."""
    pace, time_s = Pace(0.0), 0.0
    for length_s, at_corner in zip(lengths, corners, strict=True):
        pace.took(time_s, length_s, 0.5, 0.7, at_corner)
        time_s += length_s
    return pace, time_s


def test_windows_lead_from_corner_to_corner():
    pace, time_s = paced([0.25, 0.5, 0.25], [False, False, True])
    lengths = []
    while time_s < 2.0 - 1e-12:
        lengths.append(pace.length_s(time_s, 9.0))
        pace.took(time_s, lengths[-1], 0.5, 0.7, abs(time_s + lengths[-1] - 2.0) < 1e-12)
        time_s += lengths[-1]
    assert lengths == pytest.approx([0.25, 0.5, 0.25])


def test_half_a_swing_that_fits_is_one_window():
    pace, time_s = paced([1.0], [True])
    assert pace.length_s(time_s, 0.9) == pytest.approx(1.0)


def test_what_was_too_long_is_not_tried_again():
    pace, time_s = paced([1.0], [True])
    pace.failed()
    assert pace.length_s(time_s, 0.3) == 0.3


def test_before_any_corner_the_length_wanted_is_tried():
    assert Pace(0.0).length_s(0.0, 0.3) == 0.3
