"""The same asked in English, in German and in English again of one process, which keeps what it worked out: words differ, nothing else."""

import json
import re

import pytest

from rimfall.language import Figure, Later, in_signs, speaking, tr, tr_later_as
from rimfall.scene import examples, questions
from rimfall.scene.catalogue import catalogue
from rimfall.scene.prose import of_motion
from rimfall.scene.reading import read
from rimfall.scene.size.request import STUDY_NAMES
from rimfall.web.asked import Asked
from rimfall.web.work import answered
from tests.scene.documents import changed, drop, pour, scene, throw
from tests.tables import each_row

OPTIONS = {
    "trace": {"arrays": "json", "units": "si", "hold": None, "held": None, "follower": None},
    "feel": {"units": "si"},
    "size": {"units": "us"},
    "craft": {"units": "si", "width": None, "drawing_width": None},
}
ENGLISH_SIGNS = str.maketrans(",.", ".,")  # of German numbers
NUMBER = re.compile(r"(?<![\w/])\d[\d.,]*")
ADDRESS = re.compile(r"doi \S+")  # its dots and digits are no number's
SCENES = {each["id"]: json.loads(examples.example(each["id"])) for each in examples.listed()}
WISHES = [
    [("gravity", "exactly", 0.9), ("spin", "at_most", 2)],
    [("gravity", "at_least", 0.3), ("spin", "at_most", 0.5), ("radius", "at_most", 1234.5)],
    [
        ("gradient", "at_most", 3),
        ("rim_speed", "at_least", 20),
        ("coriolis", "at_most", 0.2),
        ("gravity", "at_most", 1),
    ],
    [("gravity", "exactly", 0.4), ("spin", "at_least", 1)],
]
MASSLESS = drop(body={"mass_kg": 0, "diameter_m": 0.1})


def ask(name, document, language):
    """What the server answers, as JSON."""
    body = json.dumps(document).encode()
    return json.loads(answered(Asked(name, body, OPTIONS[name], 60.0, language=language), None, lambda: False).body)


def in_turn(name, document):
    """An answer in English, and in German; that English is the same before and after is seen to."""
    english, german, again = (ask(name, document, language) for language in ("en", "de", "en"))
    assert english == again
    return english, german


def apart(one, other, at=""):
    """(path, text, the other's text) where two answers differ; which they may in texts alone."""
    if isinstance(one, dict):
        assert one.keys() == other.keys(), at
        pairs = [(f"{at}.{key}", one[key], other[key]) for key in one]
    elif isinstance(one, list) and at.endswith(
        "pieces"
    ):  # one text, whose stressed part stands where the language has it
        pairs = [(f"{at}.whole", "".join(one), "".join(other))]
    elif isinstance(one, list):
        assert len(one) == len(other), at
        pairs = [(f"{at}.{k}", *both) for k, both in enumerate(zip(one, other, strict=True))]
    else:
        assert one == other or (isinstance(one, str) and isinstance(other, str)), (at, one, other)
        if isinstance(one, str):
            yield at, one, other
        return
    for path, a, b in pairs:
        yield from apart(a, b, path)


def numbers(text):
    return sorted(number.rstrip(".,") for number in NUMBER.findall(ADDRESS.sub("", text)))


def look_at(name, document):
    """Sentences are in German, with the numbers that they have in English."""
    sentences = 0
    for path, english, german in apart(*in_turn(name, document)):
        if english.endswith(".") and " " in english and not path.endswith("source"):
            assert english != german, path
            sentences += 1
        if english != german:
            assert numbers(german.translate(ENGLISH_SIGNS)) == numbers(english), (path, english, german)
    return sentences


@pytest.mark.parametrize("id", SCENES)
def test_a_scene_is_told_in_either_language_with_the_same_numbers(id):
    assert look_at("trace", SCENES[id]) >= 2 * len(SCENES[id]["motions"])
    assert look_at("feel", SCENES[id]) > 10


def test_crafts_and_sizes_are_told_in_either_language_with_the_same_numbers():
    crafts = [document for document in SCENES.values() if "craft" in document]
    assert all(look_at("craft", document) > 5 for document in crafts)
    assert crafts
    for wishes in WISHES:
        figures = [
            {"kind": "figure", "quantity": quantity, "bound": bound, "value": value}
            for quantity, bound, value in wishes
        ]
        assert look_at("size", {"wishes": figures}) > 3
        assert look_at("size", {"wishes": [*figures, {"kind": "study", "study": STUDY_NAMES[0]}]}) > 3


@each_row(
    ("name", "document", "field", "said"),
    [
        ("trace", scene(throw(speed_m_s=4000.5)), "motions.0.speed_m_s", "4000,5 m/s"),
        ("trace", scene(MASSLESS), "motions.0.body.mass_kg", "0 kg"),
        ("trace", scene(drop(height_m=-1.25)), "motions.0.place.height_m", "-1,25 m"),
        ("trace", scene(pour(), habitat={"spin_rpm": 1234.5}), "habitat.spin_rpm", "1234,5 rpm"),
        ("feel", scene(habitat={"radius_m": 0.05}), "habitat.radius_m", "0,05 m"),
        ("feel", scene(person={"walk_m_s": 99.5}), "person.walk_m_s", "99,5 m/s"),
        ("size", {"wishes": []}, "wishes", "[]"),
        ("size", {"wishes": [{"kind": "figure", "quantity": "spin", "bound": "at_most", "value": -0.5}]}, "wishes.0.value", "-0,5"),
        ("craft", {"rimfall_craft": 1, "spin_rpm": 2, "parts": []}, "parts", "[]"),
        ("craft", {"rimfall_craft": 1, "spin_rpm": -0.25, "parts": [{"name": "a"}]}, "spin_rpm", "-0,25 rpm"),
    ],
)  # fmt: skip
def test_a_refusal_names_the_same_field_and_value_in_either_language(name, document, field, said):
    english, german = in_turn(name, document)
    one, other = (next(r for r in answer["refused"] if r["field"] == field) for answer in (english, german))
    assert [r["field"] for r in english["refused"]] == [r["field"] for r in german["refused"]]
    assert one["was"] == other["was"]
    assert in_signs(one["was"]) in one["say"]
    assert said in other["say"]
    assert one["say"] != other["say"]
    assert numbers(other["may_be"].translate(ENGLISH_SIGNS)) == numbers(one["may_be"])


def test_what_is_left_out_of_a_document_is_refused_in_german():
    english, german = in_turn("trace", changed(scene(drop()), "habitat", {"spin_rpm": 3.0}))
    assert [r["field"] for r in english["refused"]] == ["habitat.radius_m"] == [r["field"] for r in german["refused"]]
    assert "Radius" in german["refused"][0]["say"]
    assert "missing" not in german["refused"][0]["say"]


def test_the_fields_are_told_in_the_language_that_is_spoken():
    english = catalogue()
    with speaking("de"):
        german = catalogue()
    assert english == catalogue()
    of = "motions.*.speed_m_s"
    assert english["fields"][of]["may_be"] == "0 to 3,000 m/s"
    assert german["fields"][of]["may_be"] == "0 bis 3.000 m/s"
    words = ("label", "may_be")
    for path, row in english["fields"].items():
        same, told = ({k: v for k, v in each.items() if k not in words} for each in (row, german["fields"][path]))
        assert same == told, path
        assert row["label"] != german["fields"][path]["label"] or " " not in row["label"], path
    for kind in english["kinds"]:
        assert english["kinds"][kind]["add"] != german["kinds"][kind]["add"]
        assert english["kinds"][kind]["new"] == german["kinds"][kind]["new"]


def test_words_that_were_told_of_a_motion_are_told_anew_in_another_language():
    told = {}
    (traced,) = questions.trace(read(json.dumps(scene(drop())))).motions
    for language in ("en", "de", "en"):
        with speaking(language):
            told.setdefault(language, []).append((of_motion(traced, "si"), traced.outcome(), traced.in_short()))
    assert told["en"][0] == told["en"][1] != told["de"][0]


def test_a_text_of_a_table_is_told_when_it_is_shown():
    span = Later("{least} to {greatest}", least=Figure("0.5"), greatest=Figure("1,000 m"))
    assert (span, tr(span)) == ("0.5 to 1,000 m", "0.5 to 1,000 m")
    both = Later("{first} or {last}", first=span, last=tr_later_as("kind of motion", "Drop"))
    with speaking("de"):
        assert tr(span) == "0,5 bis 1.000 m"
        assert tr(both) == "0,5 bis 1.000 m oder Fall"
    assert tr(both) == "0.5 to 1,000 m or Drop"
