"""The drawing of how a craft's axes go round its momentum: its points against scipy's rotations of the answer's own attitudes."""

import numpy as np
import pytest
from scipy.spatial.transform import Rotation

import rimfall
from rimfall.exports import craft_cones
from rimfall.exports.craft_drawings import charts
from rimfall.exports.drawing import Stroke, Text
from tests.tables import each_row

LONG = "long-tumbler"
WIDTH_MM = 90.0


def craft(rates_rpm, duration_s, losses_s=None, sizes_m=(4.0, 6.0, 20.0)):
    box = {"name": "hull", "group": "turning", "solid": "box", "mass_kg": 9000.0, "size_m": list(sizes_m)}
    tumble = {"rates_rpm": list(rates_rpm), "duration_s": duration_s}
    if losses_s:
        tumble["dissipation"] = {"time_s": losses_s}
    return {"rimfall_craft": 1, "spin_rpm": rates_rpm[2], "parts": [box], "tumble": tumble}


def angles_deg(finding, axis):
    """Of an axis of the craft from the momentum, which stands still in the room; by scipy."""
    momentum = np.array(finding["angular_momentum_kg_m2_s"])
    w, x, y, z = np.array(finding["quaternion_wxyz"]).T
    pointing = Rotation.from_quat(np.stack([x, y, z, w], axis=1)).apply(axis)
    return np.degrees(np.arccos(np.clip(pointing @ momentum / np.linalg.norm(momentum), -1, 1)))


@each_row("document", [LONG, craft((0.2, 1.0, 6.0), 90.0), craft((0.3, 6.0, 0.2), 120.0, losses_s=60.0)])
def test_its_points_are_those_of_the_answer(document):
    finding = rimfall.craft(document)["tumble"]
    for way, axis in zip(craft_cones.ways(finding), ([0, 0, 1], finding["final_axis"]), strict=True):
        np.testing.assert_allclose(np.degrees(way.angles_rad), angles_deg(finding, axis), atol=1e-5)
        np.testing.assert_allclose(np.linalg.norm(way.points, axis=1), 1.0, atol=1e-9)
        # between two samples it goes on evenly, and through each
        apart = np.linalg.norm(way.line[:, None] - way.points[None, :1200:97], axis=2).min(axis=0)
        assert apart.max() < 1e-9


def test_an_axis_of_revolution_stays_on_one_cone_and_says_how_wide():
    """A body of revolution's own axis keeps one angle to its momentum, tan = I_across w_across / (I_along w_along) (Goldstein, 5.6)."""
    document = craft((0.0, 0.5, 4.0), 60.0, sizes_m=(4.0, 4.0, 20.0))
    finding = rimfall.craft(document)["tumble"]
    wide = np.degrees(np.arctan((4.0**2 + 20.0**2) / (2 * 4.0**2) * 0.5 / 4.0))
    along, _ = craft_cones.ways(finding)
    np.testing.assert_allclose(np.degrees(along.angles_rad), wide, atol=1e-6)
    says, items, _ = craft_cones.spheres(finding, WIDTH_MM)
    written = [item.text for item in items if isinstance(item, Text) and item.role == "cone"]
    assert written[0] == f"{wide:.1f}°"
    assert says == (
        "With the momentum upright, where z points, and where its axis of greatest inertia does; dashed, the cones that hold it, °."
    )


def test_what_is_seen_is_on_the_paper_and_its_line_lies_where_its_points_are():
    answer = rimfall.craft(LONG)
    chart = charts(answer, WIDTH_MM)["tumble"]
    drawn = np.concatenate([item.points_mm for item in chart.items if isinstance(item, Stroke)])
    assert (drawn.min(axis=0) >= 0).all()
    assert (drawn.max(axis=0) <= (WIDTH_MM, chart.height_mm)).all()
    _, items, _ = craft_cones.spheres(answer["tumble"], WIDTH_MM)
    first = craft_cones.ways(answer["tumble"])[0]
    up = np.concatenate([item.points_mm for item in items if isinstance(item, Stroke) and item.role == "way"])
    circle = next(item.points_mm for item in items if isinstance(item, Stroke) and item.closed)
    radius = np.ptp(circle[:, 0]) / 2
    start = first.points[0]
    # seen from 24° above: what is up goes up by cos 24°, what is nearer comes down by sin 24°
    high = radius * (np.cos(np.radians(24)) * start[2] - np.sin(np.radians(24)) * start[1])
    middle = np.array([(circle[:, 0].min() + circle[:, 0].max()) / 2, (circle[:, 1].min() + circle[:, 1].max()) / 2])
    np.testing.assert_allclose(up[0], middle + np.array([radius * start[0], -high]), atol=0.02 * radius)


def test_a_way_of_many_turns_is_thinner_so_that_it_is_no_blot():
    few, many = (
        craft_cones.spheres(rimfall.craft(craft((0.0, 0.5, 4.0), seconds))["tumble"], WIDTH_MM)[1]
        for seconds in (15.0, 600.0)
    )
    widths = [{item.width_mm for item in items if getattr(item, "role", "") == "way"} for items in (few, many)]
    assert max(widths[0]) == 0.35  # as its arrow
    assert 0.08 <= min(widths[1]) < 0.35


def test_where_samples_are_far_apart_only_the_cones_are_drawn_and_a_standing_craft_has_none():
    fast = rimfall.craft(craft((0.0, 0.5, 90.0), 36_000.0))["tumble"]
    says, items, _ = craft_cones.spheres(fast, WIDTH_MM)
    assert says.endswith("Its samples are too far apart for a line.")
    assert not [item for item in items if item.role == "way"]
    assert [item for item in items if item.role == "cone"]
    assert craft_cones.spheres(rimfall.craft(craft((0.0, 0.0, 0.0), 60.0))["tumble"], WIDTH_MM) is None


def test_a_long_tumble_is_drawn_as_far_as_it_can_be_told():
    finding = rimfall.craft(craft((0.0, 0.5, 6.0), 3_000.0))["tumble"]
    assert len(finding["time_s"]) > 1_200
    says, _, _ = craft_cones.spheres(finding, WIDTH_MM)
    assert says.partition("°. ")[2].startswith("The line is of its first ")
    assert finding["time_s"][1_199] < 3_000.0 == pytest.approx(finding["time_s"][-1])
