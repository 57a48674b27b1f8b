"""The drawings of the page: what they show, read by the standard library's XML reader, stands where omega^2 r and the answer say."""

import itertools
import json
import math
import re
import xml.etree.ElementTree as ET

import pytest
from scipy.constants import g as G0

from rimfall.comfort.published import ROWS, STUDIES
from rimfall.exports import page_drawings
from rimfall.exports.options import read_options
from rimfall.exports.ticks import decades
from rimfall.scene import questions
from rimfall.scene.reading import read
from tests.scene.documents import POINT, scene, throw

SVG = "{http://www.w3.org/2000/svg}"
WIDTHS = (240, 310, 620, 1200)
OWN = [{"name": "Bunk <1>", "quantity": "spin", "bound": "at_most", "value": 2.0}]


def mapped(width=310, quantities=(), units="si", **more):
    document = {"rimfall": 1, "habitat": {"radius_m": 56, "spin_rpm": 3}, "motions": []} | more
    drawing = page_drawings.map_of_limits(read(json.dumps(document)), width, quantities, units)
    return drawing, ET.fromstring(drawing["svg"])


def of_class(root, name):
    return [one for one in root.iter() if name in one.get("class", "").split()]


def ends(path):
    return [tuple(map(float, point.split())) for point in re.sub("[MZ]", "", path.get("d")).split("L")]


def place(drawing, x, y):
    """Radius and spin at a point of the map."""
    left, top, right, bottom = drawing["box_px"]
    (r0, r1), (s0, s1) = drawing["radius_m"], drawing["spin_rpm"]
    return r0 * (r1 / r0) ** ((x - left) / (right - left)), s0 * (s1 / s0) ** ((bottom - y) / (bottom - top))


def test_each_limit_on_gravity_runs_where_its_gravity_is():
    drawing, root = mapped(620, ("gravity",))
    lines = of_class(root, "limit")
    assert len(lines) == sum(one["on_map"] for one in drawing["limits"]) > 4
    for line, one in zip(lines, drawing["limits"], strict=True):
        for radius, spin in (place(drawing, *end) for end in ends(line)):
            assert radius * (spin * math.pi / 30) ** 2 / G0 == pytest.approx(
                float(one["short"].split("\u00a0")[0]), rel=2e-3
            )


def test_a_line_and_its_words_are_told_with_all_who_say_so():
    _, root = mapped(620, ("spin",), own_limits=OWN)
    told = [one.find(f"{SVG}title").text for one in root.iter(f"{SVG}g") if of_class(one, "limit")]
    assert told[-1] == "Spin at most 2\u00a0rpm: Bunk <1>, yours"
    published = {row.study for row in ROWS if row.quantity == "spin" and row.bound == "at_most"}
    assert all(any(STUDIES[study].called in one for one in told) for study in published)
    words = [one.text for one in of_class(root, "limit-words")]
    assert "2\u00a0rpm, yours" in words
    assert "mine" in next(one for one in of_class(root, "limit-words") if "yours" in one.text).get("class")


def test_only_what_is_asked_for_is_drawn():
    every, _ = mapped(own_limits=OWN)
    spin, _ = mapped(quantities=("spin",), own_limits=OWN)
    mine, _ = mapped(quantities=("mine",), own_limits=OWN)
    assert len(every["limits"]) > len(spin["limits"]) > len(mine["limits"]) == 1


def test_in_us_units_a_speed_is_in_feet_and_the_axis_has_round_numbers_of_feet():
    drawing, root = mapped(620, ("rim_speed",), "us")
    assert "19.7\u00a0ft/s" in [one["short"] for one in drawing["limits"]]  # 6 m/s / 0.3048
    assert "radius, ft" in [one.text for one in of_class(root, "what")]
    hundred = next(one for one in of_class(root, "figure") if one.text == "100" and one.get("text-anchor") == "middle")
    assert place(drawing, float(hundred.get("x")), 0)[0] == pytest.approx(30.48, rel=1e-3)  # the international foot


def test_a_bare_number_says_what_it_is_of():
    drawing, _ = mapped(quantities=("coriolis",))
    assert [one["short"] for one in drawing["limits"]] == ["Coriolis 0.25"]


@pytest.mark.parametrize("width", WIDTHS)
def test_figures_of_the_axes_keep_clear_of_one_another_and_inside_the_drawing(width):
    """By letters as wide as Source Sans 3 has its figures: 0.497 of their size (its own hmtx table)."""
    drawing, root = mapped(width)
    wide, high = drawing["size_px"]
    figures = of_class(root, "figure")
    across = [(float(one.get("x")), 0.497 * float(one.get("font-size")) * len(one.text)) for one in figures
              if one.get("text-anchor") == "middle"]  # fmt: skip
    up = [float(one.get("y")) for one in figures if one.get("text-anchor") == "end"]
    assert len(across) >= 5
    assert len(up) >= 5
    assert all(b - a > (p + q) / 2 + 2 for (a, p), (b, q) in itertools.pairwise(across))
    assert all(x - w / 2 >= 0 and x + w / 2 <= wide for x, w in across)
    assert all(a - b > 12 for a, b in itertools.pairwise(up))
    assert max(float(one.get("y")) for one in root.iter(f"{SVG}text")) < high


def letters_px(text):
    """As wide as Source Sans 3 has such words at 12.5 px, or wider: by its hmtx table "6 rpm" is 2.43 and "0.06 rad/s²" 4.48 of its size."""
    return 12.5 * (0.43 * len(text) + 0.3)


@pytest.mark.parametrize("width", WIDTHS)
@pytest.mark.parametrize("quantities", [(), ("gravity", "spin")])
def test_no_words_on_lines_lie_on_other_words(width, quantities):
    drawing, root = mapped(width, quantities, own_limits=OWN)
    boxes = [
        (float(one.get("x")), float(one.get("y")), letters_px(one.text) / 2) for one in of_class(root, "limit-words")
    ]
    assert len(boxes) > 4
    for k, (x, y, half) in enumerate(boxes):
        assert not any(abs(x - u) < half + other and abs(y - v) < 11 for u, v, other in boxes[:k])
        assert drawing["box_px"][0] <= x - half + 1
        assert x + half <= drawing["box_px"][2]


def test_all_of_it_is_in_the_pages_own_colours_and_needs_no_style():
    for svg in (mapped(own_limits=OWN)[0]["svg"], plotted()["svg"]):
        assert set(re.findall(r'(?:fill|stroke)="([^"]+)"', svg)) <= {"none", *(f"var({name})" for name in
            ("--ink", "--ink-2", "--hair", "--paper", *(f"--p{k}" for k in range(1, 7))))}  # fmt: skip
        assert "style=" not in svg.replace("font-style=", "")


def plotted(units="si", **choices):
    found = read(
        json.dumps(
            scene(
                throw(6.0, 0.0, 35.0, body=POINT, name="lob"),
                throw(5.0, 180.0, 35.0, body=POINT, name="back"),
                air=None,
            )
        )
    )
    return page_drawings.plot_of_paths(questions.trace(found), read_options(choices, found), 310, units=units)


def test_a_path_stands_where_the_plot_says_its_values_are_in_either_unit():
    found = read(json.dumps(scene(throw(6.0, 0.0, 35.0, body=POINT, name="lob"), air=None)))
    traced = questions.trace(found)
    landing = traced.motions[0].track.landing
    for units in ("si", "us"):
        drawing = page_drawings.plot_of_paths(traced, read_options({}, found), 310, False, units)
        root = ET.fromstring(drawing["svg"])
        (line,) = [
            one for one in root.iter(f"{SVG}path") if one.get("stroke") == "var(--p1)" and one.get("d")[-1] != "Z"
        ]
        left, top, right, bottom = drawing["box_px"]
        (x0, x1), (y0, y1) = drawing["along_m"], drawing["height_m"]
        x, y = ends(line)[-1]
        assert x0 + (x - left) / (right - left) * (x1 - x0) == pytest.approx(landing.along_m, abs=0.01)
        assert y0 + (bottom - y) / (bottom - top) * (y1 - y0) == pytest.approx(landing.height_m, abs=0.01)


def test_only_the_motions_asked_for_are_plotted():
    def names(drawing):
        return {one.text for one in ET.fromstring(drawing["svg"]).iter(f"{SVG}text")}

    assert {"lob", "back", "plain gravity"} <= names(plotted())
    assert names(plotted(motions=["lob"])) & {"lob", "back"} == {"lob"}


def test_a_log_axis_has_fewer_figures_where_room_is_scarce():
    sparse, dense = (decades(1, 10_000, length, len) for length in (36, 500))
    assert [figure for _, figure in dense][:4] == ["1", "2", "5", "10"]
    assert [figure for _, figure in sparse] == ["1", "3", "10", "30", "100", "300", "1k", "3k", "10k"]
    assert [figure for _, figure in decades(1, 10_000, 5, len)] == ["1", "10", "100", "1k", "10k"]
