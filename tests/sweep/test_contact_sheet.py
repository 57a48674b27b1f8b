"""The contact sheet, read by an XML reader: a plot a combination, everything on the page, all at one scale."""

import json
import re
import xml.etree.ElementTree as ElementTree

import numpy as np

from rimfall.scene.reading import read
from rimfall.sweep import contact_sheet, job, parameters
from rimfall.sweep.grid import grid_of
from rimfall.sweep.run import sweep_of
from tests.sweep import runs
from tests.tables import each_row

SVG = "{http://www.w3.org/2000/svg}"
COLOURS = ("#985C00", "#0068A6")  # of the first and the second path on paper


def drawn(*varied, document=None):
    """The pages of a run, each as an XML element, and its records."""
    scene = read(json.dumps(document or runs.scene()))
    sweep, grid = sweep_of(scene, [parameters.parse(text) for text in varied])
    records = [(n, job.work(sweep, n).record) for n in range(1, grid.count + 1)]
    box = None
    for _, record in records:
        box = contact_sheet.span(box, record)
    size = contact_sheet.PER_PAGE
    pages = [contact_sheet.page(grid, box, records[k : k + size]) for k in range(0, len(records), size)]
    assert len(contact_sheet.names(grid.count)) == len(pages)
    return [ElementTree.fromstring(page) for page in pages], records


def paths(page, colour):
    """Points (n, 2), mm, of every open line of this colour."""
    lines = [p.get("d") for p in page.iter(f"{SVG}path") if p.get("stroke") == colour and not p.get("d").endswith("Z")]
    return [np.array([[float(v) for v in pair.split()] for pair in line[1:].split("L")]) for line in lines]


def texts(page):
    return [text.text for text in page.iter(f"{SVG}text")]


def test_every_combination_has_its_number_its_values_and_both_paths():
    (page,), _ = drawn("habitat.spin_rpm=1..6/6", "motions.serve.speed_m_s=4,6,8")
    assert [t for t in texts(page) if t.isdigit()] == [str(n) for n in range(1, 19)]
    assert [t for t in texts(page) if t.startswith("serve.speed_m_s ")] == [
        f"serve.speed_m_s {v}" for v in (4, 6, 8)
    ] * 6
    assert [len(paths(page, colour)) for colour in COLOURS] == [18, 18]


def test_nothing_is_drawn_outside_the_page_or_another_plot():
    (page,), _ = drawn("habitat.spin_rpm=1..6/6", "motions.serve.elevation_deg=-20,45,80")
    width, height = map(float, page.get("viewBox").split()[2:])
    for colour in COLOURS:
        for k, line in enumerate(paths(page, colour)):
            assert line.min() > 0
            assert (line[:, 0] < width).all()
            assert (line[:, 1] < height).all()
            column = 10.0 + k % 3 * 44.0  # margin, and a plot with the gap after it
            assert ((line[:, 0] >= column - 1e-3) & (line[:, 0] <= column + 40.0 + 1e-3)).all()


def test_all_plots_have_one_scale_the_same_along_and_up():
    (page,), records = drawn("habitat.spin_rpm=1..6/6", "motions.serve.speed_m_s=4,6,8")
    (said,) = [t for t in texts(page) if "all at one scale" in t]
    per_m = 40.0 / float(re.search(r"each plot is ([0-9.]+) m wide", said)[1])
    for line, (_, record) in zip(paths(page, COLOURS[0]), records, strict=True):
        metres = np.ptp(np.array(record["motions"][0]["path"]), axis=0)
        np.testing.assert_allclose(np.ptp(line, axis=0), metres * per_m, rtol=5e-3, atol=2e-3)


@each_row(("heights", "bottom", "top"), [((1.2, 2.0), 0.0, 2.0), ((-3.0, -1.0), -3.0, 0.0)])
def test_the_ground_is_in_the_plot_of_what_never_comes_to_it(heights, bottom, top):
    record = {"motions": [{"path": [[along, height] for along, height in zip((0.0, 4.0), heights, strict=True)]}]}
    assert contact_sheet.span(None, record).tolist() == [0.0, 4.0, bottom, top]


def test_past_100_there_are_pages():
    pages, _ = drawn("habitat.spin_rpm=1..6/201")
    assert [sum(t.isdigit() for t in texts(page)) for page in pages] == [100, 100, 1]
    assert contact_sheet.names(201) == ["contact-01.svg", "contact-02.svg", "contact-03.svg"]
    assert contact_sheet.names(100) == ["contact.svg"]


def test_a_combination_without_paths_says_so():
    grid = grid_of(read(json.dumps(runs.scene())), [parameters.parse("habitat.spin_rpm=1,2")])
    record = {"motions": [], "refused": ["It would take too long."], "files": {}}
    assert contact_sheet.span(None, record) is None
    page = ElementTree.fromstring(contact_sheet.page(grid, None, [(1, record), (2, record)]))
    assert texts(page).count("refused: see index.csv") == 2


@each_row("count", [1, 4, 6])
def test_labels_are_cut_where_much_is_varied(count):
    fields = [f"motions.{m}.place.{f}=1,2" for m in ("serve", "let go") for f in ("along_m", "height_m", "axial_m")]
    (page,), _ = drawn(*fields[:count])
    labels = [t for t in texts(page) if "place." in t]
    assert len(labels) == 2**count * min(count, 4 if count <= 4 else 3)
    assert texts(page).count("and more: see index.csv") == (2**count if count > 4 else 0)
