"""The plots, read off like a reader of paper would: values by the figures on the axes, against straight lines carried into the
turning view by complex numbers written out here, and omega^2 r and 2 omega v of any mechanics text."""

import json
import math
import re
import xml.etree.ElementTree as ET

import numpy as np
import pypdfium2
import pytest

from rimfall.exports import plots
from rimfall.exports.drawing import Stroke, Text
from rimfall.exports.formats import FORMATS
from rimfall.exports.labels import wide_mm
from rimfall.exports.options import read_options
from rimfall.exports.palette import INK, style_of
from rimfall.phrases import caution
from rimfall.scene import examples
from rimfall.scene.reading import read
from tests.scene.documents import POINT, drop, pour, scene, throw, trace_of
from tests.tables import each_row

RADIUS_M, OMEGA = 56.0, 3.0 * 2 * math.pi / 60
PLOTS = [plots.path, plots.true, plots.height, plots.felt]
READ_OFF = 0.005  # of the axis' length: how well a drawing of 0.001 mm steps is read, and a line of samples drawn
LOB = throw(6.0, 0.0, 35.0, body=POINT, name="lob")


def plotted(plot, document, **choices):
    found = read(json.dumps(document))
    return plot(trace_of(found), read_options(choices, found))


def texts(drawing):
    return [item.text for item in drawing.items if isinstance(item, Text)]


def lines_in(drawing, index):
    """The points of the lines of motion number index, one a panel."""
    colour = style_of(index).paper
    return [i.points_mm for i in drawing.items if isinstance(i, Stroke) and i.colour == colour and not i.closed]


def scale(places, figures):
    """value of a place on the page, by the figures on an axis."""
    slope, start = np.polyfit(places, figures, 1)
    return lambda place: slope * np.asarray(place) + start


def axes_of(drawing, panel=0):
    """x and y of the page -> values, by the figures of the axes: those right of a place of their own line up, those under too."""
    figured = [(i, float(i.text.replace("−", "-").replace(",", ""))) for i in drawing.items
               if isinstance(i, Text) and re.fullmatch(r"−?[\d,.]+", i.text)]  # fmt: skip
    upright = [(i.y_mm, v) for i, v in figured if i.anchor == "end"]
    level = [(i.x_mm, v) for i, v in figured if i.anchor == "middle"]
    zeros = [k for k, (_, v) in enumerate(upright) if v == 0] + [len(upright)]
    upright = upright[zeros[panel] : zeros[panel + 1]]
    offset = 0.35 * plots.TEXT_MM  # from a hair to the foot of its figure
    return scale(*zip(*level, strict=True)), scale(*zip(*((y - offset, v) for y, v in upright), strict=True))


def exact(time_s):
    """along and height of LOB in the turning view: a straight line of the other, as a complex number turned back."""
    up, spinward = 6.0 * math.sin(math.radians(35)), 6.0 * math.cos(math.radians(35))
    r0 = RADIUS_M - 1.5
    line = r0 + (-up + 1j * (spinward + OMEGA * r0)) * time_s
    turned = line * np.exp(-1j * OMEGA * time_s)
    return RADIUS_M * np.angle(turned), RADIUS_M - np.abs(turned)


def test_the_path_is_the_straight_line_of_the_other_view():
    drawing = plotted(plots.path, scene(LOB, air=None))
    (points,), (x, y) = lines_in(drawing, 0), axes_of(drawing)
    along, height = exact(np.linspace(0, 3, 4000))
    met = int(np.argmax(height < 0))
    seen = np.interp(x(points[:, 0]), along[:met], height[:met])
    assert np.max(np.abs(y(points[:, 1]) - seen)) < READ_OFF * 3
    assert x(points[-1, 0]) == pytest.approx(along[met], abs=READ_OFF * 10)


def test_height_by_time_is_that_of_the_same_line():
    drawing = plotted(plots.height, scene(LOB, air=None))
    (points,), (x, y) = lines_in(drawing, 0), axes_of(drawing)
    assert np.max(np.abs(y(points[:, 1]) - exact(x(points[:, 0]))[1])) < READ_OFF * 3


def test_accelerations_are_those_of_the_text_books():
    drawing = plotted(plots.felt, scene(LOB, air=None))
    together, centrifugal, coriolis = [
        axes_of(drawing, panel)[1](points[:, 1]) for panel, points in enumerate(lines_in(drawing, 0))
    ]
    out, across = OMEGA**2 * (RADIUS_M - 1.5), 2 * OMEGA * 6.0
    assert centrifugal[0] == pytest.approx(out, abs=READ_OFF * 10)
    assert coriolis[0] == pytest.approx(across, abs=READ_OFF * 10)
    up, spinward = across * math.cos(math.radians(35)), across * math.sin(math.radians(35))
    assert together[0] == pytest.approx(math.hypot(out + up, spinward), abs=READ_OFF * 10)


def test_the_figures_at_the_right_are_those_at_the_left_in_g():
    drawing = plotted(plots.felt, scene(LOB, air=None))
    by_height = {}
    for item in drawing.items:
        if isinstance(item, Text):
            by_height.setdefault(item.y_mm, []).append(item.text)
    pairs = [
        (float(a), float(b[:-2])) for a, b in (v for v in by_height.values() if len(v) == 2) if b.endswith("\u00a0g")
    ]
    assert len(pairs) >= 6
    for in_si, in_g in pairs:
        assert in_g == pytest.approx(in_si / 9.80665, abs=0.006)


def test_thrust_and_a_changing_spin_are_in_the_sum_and_in_its_words():
    pulled = plotted(plots.felt, scene(drop(body=POINT), air=None, habitat={"spin_rpm": 0.0, "axial_thrust_m_s2": 0.6}))
    assert any("steady pull" in text for text in texts(pulled))
    together = axes_of(pulled)[1](lines_in(pulled, 0)[0][:, 1])
    assert together == pytest.approx(0.6, abs=0.01)
    ramp = {"spin_rpm": 0.0, "spin_ramp": [{"time_s": 20.0, "spin_rpm": 3.0}]}
    spun_up = plotted(plots.felt, scene(drop(1.5, POINT), air=None, habitat=ramp, sampling={"duration_s": 5.0}))
    assert any("changing spin" in text for text in texts(spun_up))
    together = axes_of(spun_up)[1](lines_in(spun_up, 0)[0][:, 1])
    assert together[0] == pytest.approx(
        OMEGA / 20.0 * (RADIUS_M - 1.5), abs=0.01
    )  # the change of spin times the radius


def test_the_heading_says_how_far_it_lands_where_the_axis_counts_places():
    """Thrown back at a little less than the rim's own speed it hardly moves Outside, and aboard goes round."""
    back = throw(OMEGA * (RADIUS_M - 1.5) - 0.5, 180.0, 0.0, body=POINT, name="back")
    heading = " ".join(texts(plotted(plots.path, scene(back, LOB, air=None, sampling={"duration_s": 60.0}))))
    assert "along the deck, measured at the deck" in heading
    assert re.search(
        r"Landings: back \w+ round and [^;]*; lob \d+\.\d\d m spinward\.", heading.replace("\u00a0", " ")
    ), heading


def test_a_window_of_time_cuts_the_lines():
    drawing = plotted(plots.height, scene(LOB, air=None), from_s=0.25, to_s=0.75)
    (points,), (x, _) = lines_in(drawing, 0), axes_of(drawing)
    assert (x(points[0, 0]), x(points[-1, 0])) == pytest.approx((0.25, 0.75), abs=0.003)


@each_row("plot", PLOTS)
def test_only_the_motions_asked_for_are_drawn_and_in_their_own_ink(plot):
    both = scene(LOB, throw(5.0, 180.0, body=POINT, name="back"), air=None)
    drawing = plotted(plot, both, motions=["back"])
    assert lines_in(drawing, 0) == []
    assert lines_in(drawing, 1)
    assert "lob" not in texts(drawing)
    assert "back" in texts(drawing)


def test_in_grey_the_lines_are_told_apart_by_their_dashes():
    drawing = plotted(plots.path, scene(*(throw(s, name=f"m{s}") for s in range(3, 9))))
    dashes = {i.dash_mm for i in drawing.items if isinstance(i, Stroke) and len(i.points_mm) > 50}
    assert len(dashes) == 7  # six motions and plain gravity
    assert any(0 in dash for dash in dashes)


NAMES = scene(
    *(throw(4.0 + k / 4, 180.0 * (k % 2), 20.0 + 5 * k, name=f"a rather long name number {k}") for k in range(6))
)
HARD = {
    "nothing": scene(),
    "at rest": scene({"kind": "stand", "place": {"height_m": 0.9}, "body": "cup"}),
    "starts after the end": scene(drop(start_s=5.0), sampling={"duration_s": 1.0}),
    "on the deck from the start": scene(drop(0.0, POINT), air=None),
    "no spin": scene(throw(), habitat={"spin_rpm": 0.0}, sampling={"duration_s": 5.0}),
    "far": scene(throw(200.0), habitat={"radius_m": 100000.0, "spin_rpm": 0.05}),
    "tiny": scene(drop(0.001, POINT), air=None, habitat={"radius_m": 0.5}),
    "a pour": scene(pour()),
    "long names": NAMES,
}


@each_row("plot", PLOTS)
@each_row("name", HARD)
def test_every_scene_can_be_plotted_inside_the_page(plot, name):
    drawing = plotted(plot, HARD[name])
    assert texts(drawing)[-1] == caution()
    for item in drawing.items:
        at = item.points_mm if isinstance(item, Stroke) else np.array([[item.x_mm, item.y_mm]])
        assert np.all(at >= 0)
        assert np.all(at <= [drawing.width_mm, drawing.height_mm])


def test_what_has_nothing_to_show_says_so():
    assert plots._NOTHING in texts(plotted(plots.path, HARD["nothing"]))
    assert plots._NOTHING in texts(plotted(plots.height, HARD["starts after the end"]))
    assert plots._NOTHING not in texts(plotted(plots.height, HARD["at rest"]))


def test_names_do_not_lie_on_each_other():
    drawing = plotted(plots.path, NAMES)
    named = [i for i in drawing.items if isinstance(i, Text) and i.text.startswith("a rather")]
    assert len(named) == 6
    for k, one in enumerate(named):
        for other in named[k + 1 :]:
            wide = 0.45 * one.size_mm * len(one.text)
            assert abs(one.y_mm - other.y_mm) >= one.size_mm or abs(one.x_mm - other.x_mm) >= wide


def test_every_format_is_written_and_read_by_others():
    found = read(examples.example("galley"))
    trace, options = trace_of(found), read_options({}, found)
    for name in ("path", "true", "height", "felt"):
        root = ET.fromstring(FORMATS[f"plot-{name}-svg"].write(trace, options))
        document = pypdfium2.PdfDocument(FORMATS[f"plot-{name}-pdf"].write(trace, options))
        assert len(document) == 1
        read_back = document[0].get_textpage().get_text_range().replace("\u00a0", " ")
        assert [
            t.text for t in root.iter() if t.tag.endswith("}text") and t.text.replace("\u00a0", " ") not in read_back
        ] == []
    page = pypdfium2.PdfDocument(FORMATS["plots-pdf"].write(trace, options))
    assert page[0].get_size() == pytest.approx((595.276, 841.89), abs=0.01)  # A4 of ISO 216
    words = page[0].get_textpage().get_text_range()
    assert words.count(caution()) == 1
    assert all(
        title in words for title in ("Height by place", "Height by time", "Apparent acceleration", "serve", "tea")
    )


WHEEL = scene(
    throw(9.0, 180.0, 60.0, body=POINT, name="lob"),
    drop(2.0, POINT, place={"height_m": 2.0, "along_m": 20.0}),
    air=None,
)


def test_a_true_plot_has_one_scale_both_ways_and_the_ground_as_it_bends():
    """Read off by the figures: the path is the straight inertial line turned back, the ground a circle about the axis."""
    drawing = plotted(plots.true, WHEEL)
    across, up = axes_of(drawing)
    per_mm = across(1.0) - across(0.0), up(0.0) - up(1.0)
    assert per_mm[0] == pytest.approx(per_mm[1], rel=1e-3)
    said = next(t for t in texts(drawing) if "scale 1:" in t)
    assert 1e3 * per_mm[0] == pytest.approx(float(re.search(r"1:([\d,.]+),", said)[1].replace(",", "")), rel=1e-3)
    (ground,) = (
        i.points_mm for i in drawing.items if isinstance(i, Stroke) and i.colour == INK and len(i.points_mm) > 50
    )
    assert np.hypot(across(ground[:, 0]), up(ground[:, 1]) - RADIUS_M) == pytest.approx(
        np.full(len(ground), RADIUS_M), rel=2e-4
    )
    (line,) = lines_in(drawing, 0)
    speed, height = OMEGA * (RADIUS_M - 1.5) - 9.0 * math.cos(math.radians(60.0)), 9.0 * math.sin(math.radians(60.0))
    t = np.linspace(0.0, 8.0, 8001)
    still = speed * t + 1j * (-(RADIUS_M - 1.5) + height * t)
    seen = still * np.exp(-1j * OMEGA * t)
    for x, y in zip(across(line[:, 0])[::40], up(line[:, 1])[::40], strict=True):
        assert np.min(np.abs(seen - (x + 1j * (y - RADIUS_M)))) < 0.03


def test_unequal_scales_are_said():
    drawing = plotted(plots.path, WHEEL)
    across, up = axes_of(drawing)
    times = (across(1.0) - across(0.0)) / (up(0.0) - up(1.0))
    said = re.search(r"(Heights|Distances) are drawn ([\d.]+) times as large", " ".join(texts(drawing)))
    assert float(said[2]) == pytest.approx(times if said[1] == "Heights" else 1 / times, rel=0.06)


@each_row("plot", PLOTS)
def test_the_heading_has_room_in_a_wider_face_too(plot):
    """DejaVu Sans, in many systems what stands in for a face that is missing, is on average 1.13 times as wide as Helvetica."""
    document = LONG_POURS | {
        "title": "A title that goes on for longer than any page is wide, as titles of drafts do " * 2
    }
    drawing = plotted(plot, document)
    heading = [i for i in drawing.items[:5] if isinstance(i, Text) and i.y_mm < 13.9]
    assert len(heading) >= 3
    rows = {}
    for one in heading:
        rows.setdefault(one.y_mm, []).append(1.13 * wide_mm(one.text, one.size_mm, one.weight))
    assert all(sum(wide) < plots.WIDTH_MM for wide in rows.values())


LONG_POURS = scene(pour(), LOB, air=None, habitat={"axial_thrust_m_s2": 0.6})
