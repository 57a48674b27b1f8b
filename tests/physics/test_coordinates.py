"""Places on each kind of ground, there and back, and the directions there."""

import math

import numpy as np
import pytest

from rimfall.physics.coordinates import BenchChart, FlatChart, FloorChart, RoundChart
from tests.tables import each_row

CHARTS = [RoundChart(56.0), FloorChart(24.0, 0.0), FloorChart(24.0, 2.1), BenchChart(1.5)]
each = each_row("chart", CHARTS)
PLACES = np.array([[0.3, 0.2, 0.4], [-0.7, 0.5, 1.1], [1.2, 0.0, 0.9]])


@each
def test_a_place_comes_back(chart):
    position = chart.position(PLACES)
    assert chart.height(position) == pytest.approx(PLACES[:, 1], abs=1e-13)
    assert chart.axial(position) == pytest.approx(PLACES[:, 2], abs=1e-13)
    if not chart.winds:
        assert chart.along(position) == pytest.approx(PLACES[:, 0], abs=1e-13)


@each
def test_the_directions_are_those_in_which_the_place_changes(chart):
    """Columns of the derivative of position by place are along the rows of the axes (by small differences)."""
    step = 1e-6
    for place in PLACES:
        rows = chart.axes(chart.position(place[None]))[0]
        assert rows @ rows.T == pytest.approx(np.eye(3), abs=1e-14)
        assert np.linalg.det(rows) == pytest.approx(1.0)
        assert rows == pytest.approx(chart.axes_at(place), abs=1e-14)
        for k in range(3):
            change = chart.position(place + step * np.eye(3)[k]) - chart.position(place - step * np.eye(3)[k])
            assert change / np.linalg.norm(change) == pytest.approx(rows[k], abs=1e-8)


def test_round_and_flat_floors_agree_at_the_reference_line():
    for place in ((0.0, 0.0, 0.0), (0.0, 1.5, -2.0)):
        assert RoundChart(24.0).position(place) == pytest.approx(FloorChart(24.0, 0.0).position(place))


def test_on_a_turntable_up_is_the_axis_and_the_third_direction_is_outward():
    rows = BenchChart(1.5).axes_at(np.array([0.0, 0.0, 1.0]))
    assert rows == pytest.approx(np.array([[0, 1, 0], [0, 0, 1], [1, 0, 0]]), abs=1e-15)


def test_the_companion_is_rolled_onto_round_ground_and_laid_straight_on_a_table():
    start, places = np.array([0.5, 0.1, 1.0]), np.array([[0.5, 0.1, 1.0], [1.5, 0.1, 1.0]])
    bench = BenchChart(1.5)
    straight = bench.flat(start, places)
    assert np.linalg.norm(straight[1] - straight[0]) == pytest.approx(1.0)
    assert (straight[1] - straight[0]) @ bench.axes_at(start)[0] == pytest.approx(1.0)
    assert RoundChart(56.0).height(RoundChart(56.0).flat(start, places)) == pytest.approx([0.1, 0.1])


def test_flat_ground_is_its_own_chart():
    assert FlatChart().position((1, 2, 3)) == pytest.approx([1, 2, 3])
    assert FlatChart().axes_at(None) == pytest.approx(np.eye(3))


@each
def test_the_axis_itself_has_directions_too(chart):
    place = np.array([0.4, chart.radius_m, 0.0]) if not isinstance(chart, BenchChart) else np.array([0.4, 0.2, 0.0])
    rows = chart.axes_at(place)
    assert np.all(np.isfinite(rows))
    assert math.isclose(np.linalg.det(rows), 1.0)
