"""What the page is told of every kind: its sentence follows what a motion has, and whatever it names is there."""

import re
from pathlib import Path

import pytest

from rimfall.kinds import KINDS
from rimfall.scene.catalogue import FIELDS, OWN, catalogue

GLOSSARY = Path(__file__).resolve().parents[2] / "static/panels/glossary_words.js"
MOVERS = {"ball", "cup", "person", "craft"}
BESIDE = {None, "pendulum", "lift", "tether", "cup", "table"}
ARROWS = {"velocity", "centrifugal", "coriolis"}


def said(part, motion):
    """A sentence as the page puts it together (`static/state/motions.js`)."""
    if isinstance(part, str):
        return part
    if isinstance(part, (list, tuple)):
        return "".join(said(one, motion) for one in part)
    value = motion
    for key in part["field"].split("."):
        value = (value or {}).get(key)
    holds = value == part["equals"] if "equals" in part else bool(value)
    holds = (value or 0) >= part["least"] if "least" in part else holds
    holds = (value or 0) > part["above"] if "above" in part else holds
    return said(part["say"] if holds else part["otherwise"], motion)


def parts(part):
    """Every text of a sentence, and every field it hangs on."""
    if isinstance(part, str):
        yield from re.findall(r"\{([\w.]+)(?::\w+)?\}", part)
    elif isinstance(part, (list, tuple)):
        for one in part:
            yield from parts(one)
    else:
        yield part["field"]
        yield from parts(part["say"])
        yield from parts(part["otherwise"])


def is_a_field(kind, name):
    return name.split(".")[0] in KINDS[kind].fields.model_fields and (
        f"motions.*.{name}" in FIELDS or name in OWN[kind]
    )


@pytest.mark.parametrize("kind", KINDS)
def test_what_the_page_drags_and_lists_is_a_field(kind):
    page = KINDS[kind].page
    more = {} if page.more is None else page.more[1]
    for name in [*set(parts(page.sentence)) - {"ground"}, *page.rows, *more]:
        assert is_a_field(kind, name), name


@pytest.mark.parametrize("kind", KINDS)
def test_every_kind_has_its_words_and_an_entry_in_the_glossary(kind):
    page = KINDS[kind].page
    assert all((page.group, page.add, page.many, page.short, page.title, page.one))
    assert kind.replace("_", " ").capitalize() in page.terms
    assert all(words.endswith(".") for words in page.terms.values())
    assert all(finding.say and finding.term for finding in page.findings)
    assert (page.stage.mover in MOVERS, page.stage.beside in BESIDE) == (True, True)
    assert set(page.stage.no_arrows) <= ARROWS


def test_the_page_is_told_all_of_it():
    told = catalogue()["kinds"]["walk"]
    assert told["findings"][0] == {
        "name": "feet_g",
        "say": "weight at the feet",
        "unit": "g",
        "term": "weight at the feet",
        "sided": False,
    }
    assert told["stage"]["weight"] == "feet_g"
    assert told["group"] == "People"


def test_who_moves_is_not_also_who_watches():
    for kind, one in KINDS.items():
        assert one.page.stage.mover != "person" or one.page.stage.attended_m is None, kind
    assert KINDS["hang"].page.stage.attended_m is not None
    assert KINDS["approach"].page.stage.attended_m is None


@pytest.mark.parametrize(
    ("kind", "motion", "wanted"),
    [
        ("walk", {"speed_m_s": 1.4}, "^Walks at"),
        ("walk", {"speed_m_s": 4}, "^Runs at"),
        ("walk", {"speed_m_s": 1, "climb_deg": 30}, r"^Climbs at .*\{climb_deg\}"),
        ("jump", {"elevation_deg": 90}, r"straight up\.$"),
        ("jump", {"elevation_deg": 60, "carried": {"speed_m_s": 3}}, "on the run at"),
        ("lift", {"acceleration_m_s2": None}, r"at \{top_speed_m_s\}\.$"),
        ("pour", {"target": {"diameter_m": 1}, "tilt": [{}]}, "tilting lip.*cup"),
        ("hang", {"first_angle_deg": 0, "speed_m_s": 0}, "at rest"),
        ("roll", {"start": "sliding", "speed_m_s": 1}, r"^Set sliding at .*\{heading_deg\}\.$"),
        ("roll", {"ramp": {"slope_deg": 5}, "ball_spin_rpm": 9}, "^Let roll from rest on a ramp .* spinning at"),
        ("roll", {"speed_m_s": 1, "ball_spin_rpm": 9}, r"^Rolled at .*\{heading_deg\}, spinning at"),
        ("throw", {"bounces": 2}, r"\. It may bounce \{bounces\}\.$"),
    ],
)
def test_a_sentence_follows_what_the_motion_has(kind, motion, wanted):
    assert re.search(wanted, said(KINDS[kind].page.sentence, motion))


def test_every_term_is_explained_and_no_term_twice():
    of_kinds = [term for kind in KINDS.values() for term in kind.page.terms]
    of_the_page = re.findall(r"^  \[trLater\('([^']+)'\), ", GLOSSARY.read_text(encoding="utf-8"), re.MULTILINE)
    terms = [term.lower() for term in (*of_kinds, *of_the_page)]
    assert len(terms) == len(set(terms)) > len(of_kinds)
    for kind in KINDS.values():
        assert {finding.term for finding in kind.page.findings} <= set(terms)
