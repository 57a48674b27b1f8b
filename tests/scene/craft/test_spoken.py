"""Everything that is said of a craft is said in the language that is spoken: of a language whose every message is marked, nothing else is
left but names that somebody gave, numbers and units; and the numbers behind the words are the same."""

import json
import re

import pytest
from pydantic import ValidationError

from rimfall.errors import BadInput
from rimfall.exports.craft_files import FORMATS, made
from rimfall.exports.craft_report import PAGE_MM, WIDTH_MM, sheets
from rimfall.exports.labels import wide_mm
from rimfall.language import speaking
from rimfall.phrases import caution
from rimfall.scene.craft import answers, blocks, examples
from rimfall.scene.craft.asked import asked_of
from rimfall.scene.craft.called import as_group, as_part, as_still_part
from rimfall.scene.craft.checks import check
from rimfall.scene.craft.document import Craft
from rimfall.scene.craft.figure_labels import LABELS
from rimfall.scene.craft.figures import figures, numbers
from rimfall.scene.validation_errors import from_validation
from tests import pseudo
from tests.scene.craft.random_crafts import whole
from tests.tables import each_row

pytestmark = pytest.mark.usefixtures("marked")
MARKED = pseudo.LEFT_TO_RIGHT
UNITS = (
    "kg m²/s|kg m²|kg/m³|kg/min|kg/s|N m|lbf ft|m/s²|m/s|rad/s|ft/s|rpm|arc minutes|kg|kPa|MPa|[kMGT]?(?:Pa|N|J|W)|"
    "m²|ft²|°/s|min|mm|ft|in|lbf|lb|g|h|m|s|t|z|x|y|°|%"
)
NOT_WORDS = re.compile(rf"(?<![A-Za-z])(?:{UNITS}|\d[\d.,]*|×|[⁻⁰¹²³⁴⁵⁶⁷⁸⁹]+)(?![A-Za-z²³])")


def left_of(text, names=()):
    """What of a text is no message, no number with its unit, and none of some names."""
    left = pseudo.outside(text)
    for name in names:
        left = left.replace(name, "")
    return re.sub(r"[\s.,;:()+−/-]", "", NOT_WORDS.sub("", left.replace("\u00a0", " ")))


def asked_in(document, units="si"):
    return asked_of(check(Craft.model_validate_json(document)), units)


def texts_of(answer):
    """Every text of an answer that people read."""
    yield answer["short"]
    for name in answers.FINDINGS:
        finding = answer.get(name)
        if finding is not None:
            yield from (finding["question"], *finding["says"], *finding["assumptions"])
            yield from (text for group, label, *_ in figures(finding) for text in (group, label))


def documents():
    yield from (examples.example(name) for name in examples.SAY)
    yield from (json.dumps(whole(seed)) for seed in range(60))


def names_of(craft):
    """Names that somebody gave, the longest first."""
    spots = () if craft.tumble is None else craft.tumble.places
    return sorted({one.name for one in (*craft.parts, *(craft.loads or ()), *spots)}, key=len, reverse=True)


@each_row("units", ("si", "us"))
def test_nothing_that_is_said_of_a_craft_is_left_in_english(units):
    asked_of_all, refusals = 0, []
    for document in documents():
        with speaking(MARKED):
            try:
                asked = asked_in(document, units)
            except BadInput as refused:
                refusals += refused.refusals
                continue
            answer = answers.of_asked(asked)
            asked_of_all += 1
            for text in texts_of(answer):
                assert left_of(text, names_of(asked.craft)) == "", text
    assert asked_of_all > 40
    assert all("⟦" in one.say for one in refusals)


@each_row("name", tuple(examples.SAY))
def test_a_craft_in_german_has_the_numbers_of_the_english_one_in_german_signs(name):
    def told(language):
        with speaking(language):
            answer = answers.of_asked(asked_in(examples.example(name)))
            rows = [row for one in answers.FINDINGS if one in answer for row in figures(answer[one])]
            plain = [row for one in answers.FINDINGS if one in answer for row in numbers(answer[one])]
            return answer, rows, plain

    english, german = told("en"), told("de")
    # the names of data stay, but for those of parts and places
    assert [row[1:] for row in english[2]] == [row[1:] for row in german[2]]
    for (_, label, value, unit), (_, label_de, value_de, unit_de) in zip(english[1], german[1], strict=True):
        signs = str.maketrans({",": ".", ".": ","})
        million = {"trillion": "Bio.", "billion": "Mrd.", "million": "Mio."}
        for word, short in million.items():
            value_de = value_de.replace(short, word)
        assert (value.replace(", ", "; ").translate(signs), unit) == (value_de.replace(", ", "; "), unit_de)
        assert label != label_de or label in ("Radius", "Motor")
    for one in answers.FINDINGS:
        if one in english[0]:
            assert len(english[0][one]["says"]) == len(german[0][one]["says"])


@each_row("bent", ("", "of", "with"))
def test_a_group_is_called_by_its_name_in_each_case_that_german_bends_it(bent):
    with speaking("de"):
        called = [as_part("keel", bent), as_part("Kiel", bent), as_still_part("keel", bent), as_group("craft", bent)]
    article = {"": "das", "of": "des", "with": "dem"}[bent]
    assert all(one.startswith(f"{article} ") for one in called)
    assert [one.partition("„")[2] for one in called] == ["keel“", "Kiel“", "keel“", ""]


def test_every_label_of_a_figure_is_of_a_field_that_there_is():
    told = set()

    def look(part):
        if isinstance(part, dict):
            told.update(part)
            for one in part.values():
                look(one)
        elif isinstance(part, list):
            for one in part:
                look(one)

    for document in documents():
        try:
            look(answers.of_asked(asked_in(document)))
        except BadInput:
            continue
    assert [label for label in LABELS if not any(name == label or name.startswith(f"{label}_") for name in told)] == []


def test_pages_and_drawings_are_told_in_the_language_that_is_spoken():
    for name in examples.SAY:
        with speaking(MARKED):
            asked = asked_in(examples.example(name))
            answer = answers.of_asked(asked)
            texts = [item.text for sheet in sheets(asked, answer) for item in sheet.items if hasattr(item, "text")]
            assert left_of(" ".join(texts), names_of(asked.craft)) == ""
            drawn = made("svg", asked, answer).decode()
        for english in ("From the side", "spin axis", "centre of mass"):
            assert f"⟦{english}⟧" in drawn


def test_the_table_of_figures_has_the_names_of_data_in_every_language():
    for name in examples.SAY:
        tables = []
        for language in ("en", MARKED):
            with speaking(language):
                asked = asked_in(examples.example(name))
                tables.append(made("csv", asked, answers.of_asked(asked)).decode().splitlines())
        assert tables[0][0] == tables[1][0] == "finding,figure,value,unit"
        for one, other in zip(*tables, strict=True):
            assert "⟦" not in re.sub(r"⟦[a-z ]+⟧", "", other)
            assert one.rpartition('"')[2].split(",")[-2:] == other.rpartition('"')[2].split(",")[-2:]
    assert set(FORMATS) == {"svg", "pdf", "tumble", "csv"}


def test_what_the_page_puts_a_craft_together_from_is_told_in_the_language_that_is_spoken():
    with speaking(MARKED):
        data = blocks.as_data({name: name for name in answers.FINDINGS})
    for block in data["blocks"]:
        assert block["asks"].startswith("⟦")
        assert block["items"] is None or block["items"]["adds"].startswith("⟦")
        assert all(one["asks"].startswith("⟦") for one in (*block["inside"], *block["beside"]))
    assert all(one["new"]["name"].startswith("⟦") for one in data["solids"].values())


def part(**other):
    return {"name": "ring", "group": "turning", "solid": "ring", "mass_kg": 1000.0} | other


@each_row(
    "document",
    (
        {"parts": [part()], "spin_rpm": 3.0},
        {"parts": [part(radius_m=5.0), part(radius_m=5.0)], "spin_rpm": 3.0},
        {"parts": [part(radius_m=5.0, group="still")], "spin_rpm": 3.0},
        {"parts": [part(radius_m=5.0)], "spin_rpm": 3.0, "slew": {"angle_deg": 90.0}},
        {"parts": [part(radius_m=5.0)], "spin_rpm": 3.0, "slew": {"angle_deg": 90.0, "time_s": 9.0, "torque_n_m": 9.0}},
        {"parts": [part(radius_m=5.0)], "spin_rpm": 3.0, "deploy": {"parts": [{"name": "none"}]}},
        {"parts": [part(radius_m=5.0)], "spin_rpm": 3.0, "deploy": {"parts": [{"name": "ring", "length_m": 2.0}]}},
        {"parts": [part(radius_m=90_000.0)], "spin_rpm": 30.0},
        {"parts": [part(solid="torus", radius_m=5.0, tube_radius_m=6.0)], "spin_rpm": 3.0},
        {"parts": [part(solid="rod", length_m=5.0)], "spin_rpm": 0.0, "tumble": {"rates_rpm": [0, 0, 1.0]}},
    ),
)
def test_a_craft_is_refused_in_the_language_that_is_spoken(document):
    with speaking(MARKED), pytest.raises(BadInput) as refused:
        check(Craft.model_validate({"rimfall_craft": 1} | document))
    for one in refused.value.refusals:
        fields = re.compile(r"[a-z_]+(?:\.[a-z_0-9]+)+")
        assert left_of(fields.sub("", one.say), ("ring", '"none"', '["ring"]', "[]", '""', "[", "]", '"')) == "", (
            one.say
        )
        assert left_of(fields.sub("", one.may_be), ("ring",)) == "", one.may_be


def test_a_craft_that_is_no_craft_is_refused_in_the_language_that_is_spoken():
    text = json.dumps({"rimfall_craft": 1, "spin_rpm": 3.0, "parts": [part(mass_kg=-1.0, axis=[0.0])]})
    with speaking(MARKED):
        with pytest.raises(ValidationError) as error:
            Craft.model_validate_json(text)
        refused = from_validation(error.value, text, Craft)
    assert len(refused.refusals) == 2
    for one in refused.refusals:
        assert left_of(one.say, ("[0.0]", "-1")) == "", one.say


def test_the_caution_has_room_on_the_page_in_every_language():
    for language in ("en", "de"):
        with speaking(language):
            asked = asked_in(examples.example("ring-ship"))
            foot = [item for item in sheets(asked, answers.of_asked(asked))[0].items if getattr(item, "italic", False)]
            drawn = made("svg", asked, {}).decode()
            words = caution()
        assert " ".join(row.text for row in sorted(foot, key=lambda row: row.y_mm)) == words
        assert max(wide_mm(row.text, row.size_mm) for row in foot) <= WIDTH_MM
        assert max(row.y_mm for row in foot) < PAGE_MM[1] - 10
        assert all(row.text in drawn for row in foot)
