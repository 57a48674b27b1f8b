"""The drawing of a craft: to scale, all of it on the page, and each part where it is."""

import math

import numpy as np
import pytest

from rimfall.exports import craft_views
from rimfall.exports.drawing import Drawing, Stroke, Text, svg
from rimfall.exports.labels import spread, wide_mm
from rimfall.exports.page_drawings import views_of_craft
from rimfall.scene.craft import examples
from rimfall.scene.craft.asked import asked_of
from rimfall.scene.craft.checks import check
from rimfall.scene.craft.document import Craft
from rimfall.scene.reading import read_craft
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


@each_row(("name", "width_mm"), [(name, width_mm) for name in examples.SAY for width_mm in (75.0, 85.0, 250.0)])
def test_no_name_stands_on_a_part_or_on_another_name(name, width_mm):
    """Each as it is drawn, half a millimetre of its own edge aside, against the outlines' lines."""
    craft = asked_of(read_craft(examples.example(name)))
    _, items, _ = craft_views.chart(craft, width_mm, 0.9 * width_mm)
    names = {part.name for part in craft.craft.parts}
    boxes = [box(one) for one in items if isinstance(one, Text) and one.text in names]
    assert len(boxes) >= min(len(names), 2)
    ink = np.concatenate(
        [spread(one.points_mm * 4) / 4 for one in items if isinstance(one, Stroke) and one.role == "part"]
    )
    for number, (left, top, right, bottom) in enumerate(boxes):
        assert left > 0
        assert right < width_mm
        x, y = ink.T
        assert not np.any((x > left) & (x < right) & (y > top) & (y < bottom)), name
        for other in boxes[:number]:
            assert left >= other[2] or right <= other[0] or top >= other[3] or bottom <= other[1]


def box(text):
    half = wide_mm(text.text, text.size_mm) / 2
    return text.x_mm - half, text.y_mm - 0.7 * text.size_mm, text.x_mm + half, text.y_mm


def test_the_key_explains_every_sign_and_keeps_to_the_page():
    for width_mm in (63.0, 90.0, 180.0):
        _, items, _ = craft_views.chart(asked(), width_mm, 0.9 * width_mm)
        said = {one.text: one for one in items if isinstance(one, Text)}
        for word in ("turning", "still", "spin axis", "floor", "centre of mass", "that of what turns"):
            assert said[word].x_mm + wide_mm(word, said[word].size_mm) <= width_mm
        assert "counter" not in said  # of which it has none


def test_a_name_that_has_no_room_beside_its_part_stands_at_a_line():
    """Three points in one another's handles, and one of them named from farther off."""
    near = [
        {"name": name, "solid": "point", "mass_kg": 10.0, "place_m": (20.0, k, 0.0)} for k, name in enumerate("abc")
    ]
    _, items, _ = craft_views.chart(asked([PARTS[0], *near]), 90.0, 80.0)
    assert {one.text for one in items if isinstance(one, Text)} >= {"a", "b", "c"}
