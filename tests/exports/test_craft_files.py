"""Files of a craft: read back by other programs, and equal to the answer."""

import csv
import io

import numpy as np
import pypdfium2
import pytest

from rimfall.errors import BadInput
from rimfall.exports import craft_files
from rimfall.exports.craft_drawings import charts
from rimfall.scene.craft import examples
from rimfall.scene.craft.answers import FINDINGS, as_data
from rimfall.scene.craft.asked import asked_of
from rimfall.scene.reading import read_craft
from tests.tables import each_row


def asked_and_answer(name, units="si"):
    craft = read_craft(examples.example(name))
    return asked_of(craft, units), as_data(craft, units)


def table(name, of="csv"):
    rows = list(csv.DictReader(io.StringIO(craft_files.made(of, *asked_and_answer(name)).decode())))
    assert rows
    return rows


@each_row(("name", "units"), [(name, units) for name in examples.SAY for units in ("si", "us")])
def test_pages_hold_every_question_and_sentence(name, units):
    asked, answer = asked_and_answer(name, units)
    pages = pypdfium2.PdfDocument(craft_files.made("pdf", asked, answer, units))
    flat = "".join("".join(page.get_textpage().get_text_range() for page in pages).split())
    for number in range(1, len(pages) + 1):
        before, foot, after = flat.partition("".join(answer["caution"].split()) + f"{number}of{len(pages)}")
        assert foot
        flat = before + after
    for finding in (answer[name] for name in FINDINGS if name in answer):
        for said in [finding["question"], *finding["says"], *finding["assumptions"]]:
            assert "".join(said.split()) in flat, said


def test_the_drawing_carries_the_caution():
    asked, answer = asked_and_answer("ring-ship")
    assert answer["caution"] in craft_files.made("svg", asked, answer).decode()


def test_the_table_of_figures_is_the_answer():
    _, answer = asked_and_answer("ring-ship")
    told = {(row["finding"], row["figure"]): (float(row["value"]), row["unit"]) for row in table("ring-ship")}
    assert told["spin_up", "time"] == (pytest.approx(answer["spin_up"]["time_s"], rel=1e-8), "s")
    assert told["joint", "heat"] == (pytest.approx(answer["joint"]["heat_w"], rel=1e-8), "W")
    place = [told["mass", f"still: centre of mass {k}"][0] for k in (1, 2, 3)]
    assert place == pytest.approx(answer["mass"]["still"]["centre_of_mass_m"], rel=1e-8)


def test_the_table_of_a_tumble_is_the_answer():
    _, answer = asked_and_answer("long-tumbler")
    rows = table("long-tumbler", "tumble")
    tumble = answer["tumble"]
    assert [float(row["time_s"]) for row in rows] == pytest.approx(tumble["time_s"], rel=1e-8)
    attitude = np.array([[float(row[f"q_{k}"]) for k in "wxyz"] for row in rows])
    assert attitude == pytest.approx(np.array(tumble["quaternion_wxyz"]), abs=1e-8)
    assert [float(row["bridge gravity_g"]) for row in rows] == pytest.approx(tumble["places"][0]["gravity_g"], rel=1e-8)


def test_what_is_not_there_is_refused_by_name():
    with pytest.raises(BadInput, match="no table of the tumble"):
        craft_files.made("tumble", *asked_and_answer("ring-ship"))
    with pytest.raises(BadInput, match=r"must end in .svg, .pdf, .tumble.csv, .csv"):
        craft_files.file_of("wheel.docx", *asked_and_answer("ring-ship"))


def test_bars_of_momenta_add_up_as_they_are_drawn():
    """Bars are as long as their figures, and two equal wheels against each other leave none."""
    _, answer = asked_and_answer("counter-pair")
    items = charts(answer, 90.0)["mass"].items
    bars = [one.points_mm for one in items if getattr(one, "closed", False)]
    turning, still, counter, together = [bar[1, 0] - bar[0, 0] for bar in bars]
    assert turning == pytest.approx(-counter, rel=1e-12)
    assert turning > 10
    assert (still, together) == (0.0, 0.0)


def test_nothing_is_drawn_of_what_does_not_vary():
    _, answer = asked_and_answer("tether-pair")
    assert set(charts(answer, 90.0)) == {"tether"}
