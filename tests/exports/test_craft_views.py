"""The drawing of a craft: to scale, all of it on the page, and each part where it is."""

import math

import numpy as np
import pytest

from rimfall.exports import craft_views
from rimfall.exports.drawing import Drawing, Stroke, Text, svg
from rimfall.exports.page_drawings import views_of_craft
from rimfall.scene.craft.asked import asked_of
from rimfall.scene.craft.checks import check
from rimfall.scene.craft.document import Craft
from tests.tables import each_row

PARTS = [
    {"name": "ring", "solid": "torus", "mass_kg": 90_000.0, "tube_radius_m": 4.0},
    {"name": "keel", "group": "still", "solid": "cylinder", "mass_kg": 60_000.0, "radius_m": 3.0, "length_m": 90.0},
    {"name": "crate", "solid": "point", "mass_kg": 3_000.0, "place_m": (30.0, 20.0, 0.0)},
]


def asked(parts=PARTS, radius_m=56.0):
    return asked_of(check(Craft(rimfall_craft=1, spin_rpm=3.0, radius_m=radius_m, parts=parts)))


FAR = [{**PARTS[0], "place_m": (0.0, 0.0, 4_000.0)}, *PARTS[1:]]
DOT = [{"name": "all of it", "solid": "point", "mass_kg": 1.0}]


@each_row(("parts", "width_mm"), [(PARTS, 60.0), (PARTS, 180.0), (FAR, 120.0), (DOT, 120.0)])
def test_all_of_it_is_on_the_page(parts, width_mm):
    _, items, height_mm = craft_views.chart(asked(parts), width_mm, 0.7 * width_mm)
    assert height_mm <= 0.7 * width_mm + 1e-9
    for item in items:
        points = item.points_mm if isinstance(item, Stroke) else np.array([[item.x_mm, item.y_mm]])
        assert points.min() > -0.1
        assert points[:, 0].max() < width_mm + 0.1
        assert points[:, 1].max() < height_mm + 0.1
    assert svg(Drawing(width_mm, height_mm, "craft", tuple(items))).startswith(b"<svg")


def test_both_views_and_the_bar_have_one_scale():
    both, items, _ = craft_views.chart(asked(), 160.0, 112.0)
    side, end = both["side"], both["end"]
    assert side.mm_per_m == end.mm_per_m
    assert np.hypot(*(end.of((56.0, 0.0, 0.0)) - end.of((0.0, 0.0, 0.0)))) == pytest.approx(56 * end.mm_per_m)
    (bar,) = [
        one for one in items if isinstance(one, Stroke) and one.width_mm == 0.4 and np.ptp(one.points_mm[:, 1]) == 0
    ]
    (said,) = [one.text for one in items if isinstance(one, Text) and one.text.endswith("\u00a0m")]
    assert np.ptp(bar.points_mm[:, 0]) == pytest.approx(float(said.split("\u00a0")[0]) * side.mm_per_m)


def test_the_page_knows_where_each_part_is():
    """The same place by hand: the side has z to the right and x up, the end x to the right and y up."""
    drawn = views_of_craft(asked(), 600.0)
    crate = next(one for one in drawn["parts"] if one["name"] == "crate")
    side, end = drawn["side"], drawn["end"]
    assert crate["side_px"] == pytest.approx([side["origin_px"][0], side["origin_px"][1] - 30 * side["px_per_m"]])
    right, down = 30 * end["px_per_m"], 20 * end["px_per_m"]
    assert crate["end_px"] == pytest.approx([end["origin_px"][0] + right, end["origin_px"][1] - down])
    assert drawn["svg"].count('class="part"') >= len(PARTS) * 2


def test_every_name_stands_once_and_on_no_other():
    _, items, _ = craft_views.chart(asked(), 160.0, 112.0)
    names = [one for one in items if isinstance(one, Text) and one.text in ("ring", "keel", "crate")]
    assert sorted(one.text for one in names) == ["crate", "keel", "ring"]
    gaps = [math.hypot(a.x_mm - b.x_mm, a.y_mm - b.y_mm) for a in names for b in names if a is not b]
    assert min(gaps) > 2.0
