"""Every refusal has one shape and a sentence that names the place, what was there, and what may be."""

import json

import pytest

from rimfall.errors import BadInput, Refused, TooMuch, refusal
from rimfall.scene.reading import GREATEST_DOCUMENT_BYTES, read, read_export
from tests.scene.documents import changed, drop, pour, refusals, scene, the_refusal, throw
from tests.tables import each_row

# a fault of every kind: the document, then field, was, may_be and say as they are answered
WORDED = {
    "too large": (
        scene(throw(speed_m_s=4000)),
        ("motions.0.speed_m_s", "4000", "0 to 3,000 m/s", "Speed was 4000 m/s; it must be 0 to 3,000 m/s."),
    ),
    "too small": (
        scene(habitat={"radius_m": 0.05}),
        ("habitat.radius_m", "0.05", "0.1 to 100,000 m", "Radius was 0.05 m; it must be 0.1 to 100,000 m."),
    ),
    "not above": (
        scene(habitat={"ceiling_m": 0}),
        ("habitat.ceiling_m", "0", "above 0, to 100,000 m, or null", "Ceiling was 0 m; it must be above 0, to 100,000 m, or null."),
    ),
    "text for a number": (
        scene(habitat={"spin_rpm": "3"}),
        ("habitat.spin_rpm", '"3"', "0 to 200 rpm", 'Spin was "3"; it must be 0 to 200 rpm.'),
    ),
    "truth for a number": (
        scene(habitat={"spin_rpm": True}),
        ("habitat.spin_rpm", "true", "0 to 200 rpm", "Spin was true; it must be 0 to 200 rpm."),
    ),
    "number for text": (
        scene(title=3),
        ("title", "3", "text of at most 200 characters", "Title was 3; it must be text of at most 200 characters."),
    ),
    "missing": (
        {"rimfall": 1, "habitat": {"radius_m": 5.0}, "motions": []},
        ("habitat.spin_rpm", "nothing", "0 to 200 rpm", "Spin is missing; it must be 0 to 200 rpm."),
    ),
    "unknown": (
        scene(gravity=9.8),
        (
            "gravity", "9.8", "absent; known here: air, compare, craft, habitat, motions, own_limits, person, rimfall, sampling, title",
            "Field gravity is unknown; the document may hold air, compare, craft, habitat, motions, own_limits, person, rimfall, sampling, title.",
        ),
    ),
    "one of some words": (
        scene(habitat={"shape": "egg"}),
        ("habitat.shape", '"egg"', "cylinder or torus or sphere or pods or tether or tumbler or turntable",
         'Shape was "egg"; it must be cylinder or torus or sphere or pods or tether or tumbler or turntable.'),
    ),
    "a kind": (
        scene({"kind": "hover"}),
        ("motions.0.kind", '"hover"', "drop or throw or pour or roll or stand or hang or jump or walk or lift or let_go or approach or tumble",
         'Kind was "hover"; it must be drop or throw or pour or roll or stand or hang or jump or walk or lift or let_go or approach or tumble.'),
    ),
    "list for an object": (
        scene(sampling=[]),
        ("sampling", "[]", "an object in braces", None),
    ),
    "object for a list": (
        scene() | {"motions": {}},
        ("motions", "{}", "a list of at most 100", "Motions was {}; it must be a list of at most 100."),
    ),
    "the whole": (
        [1, 2],
        ("document", "[1, 2]", "an object in braces", "document was [1, 2]; it must be an object in braces."),
    ),
    "frame rate": (
        scene(sampling={"fps": "24/0"}),
        ("sampling.fps", '"24/0"', '1 to 240, or "n/d"', 'Frames per second was "24/0"; it must be 1 to 240, or "n/d".'),
    ),
    "not JSON": (
        '{"rimfall": 1,\n "habitat": {"radius_m": 5.}}',
        ("document", None, "a scene document in JSON", None),
    ),
    "a clash": (
        scene(habitat={"hub_radius_m": 56}),
        (
            "habitat.hub_radius_m", "56", "0.01 to below the radius, 56 m",
            "Hub radius was 56 m; it must be 0.01 to below the radius, 56 m.",
        ),
    ),
}  # fmt: skip


@each_row("kind", WORDED)
def test_a_refusal_says_where_what_and_what_may_be(kind):
    document, (field, was, may_be, say) = WORDED[kind]
    refusal = the_refusal(document)
    assert refusal.field == field
    assert refusal.may_be == may_be
    assert was is None or refusal.was == was
    assert say is None or refusal.say == say
    assert refusal.say.endswith(".")


@each_row("kind", WORDED)
def test_the_same_refused_in_an_export(kind):
    document, (field, *_) = WORDED[kind]
    if isinstance(document, dict):
        assert the_refusal({"scene": document}, read_export).field == field


def test_every_fault_is_told_at_once():
    document = scene(throw(speed_m_s=-1, heading_deg=500), habitat={"radius_m": -1}, note=1)
    assert {r.field for r in refusals(document)} == {
        "note", "habitat.radius_m", "motions.0.speed_m_s", "motions.0.heading_deg",
    }  # fmt: skip


def test_no_more_than_twenty_are_told():
    assert len(refusals(scene(*[{"kind": "roll"}] * 100))) == 20
    assert len(refusals(scene(*[drop(60.0)] * 100))) == 20


@each_row(
    ("source", "line", "column"),
    [
        ('{"rimfall": 1,\n "motions": [nonsense]}', 2, 15),
        ("nonsense", 1, 2),
        ('{"rimfall": 1,,}', 1, 15),
        ('{"a": "\x01"}', 1, 8),
    ],
)
def test_what_is_not_json_is_told_by_line_and_column(source, line, column):
    refusal = the_refusal(source)
    assert refusal.field == "document"
    assert f"line {line}, column {column}:" in refusal.say
    assert refusal.was in source


@each_row("source", [b"", b"   ", b"{", b'{"rimfall": 1', b"[", b'"'])
def test_what_breaks_off_is_not_json(source):
    refusal = the_refusal(source)
    assert refusal.field == "document"
    assert "EOF" in refusal.say


@each_row("encoding", ["latin-1", "cp1252"])
def test_other_encodings_are_not_json(encoding):
    refusal = the_refusal(json.dumps(scene(title="Läuft"), ensure_ascii=False).encode(encoding))
    assert refusal.field == "document"
    assert "line 1, column" in refusal.say


def test_text_and_bytes_are_read_alike():
    document = json.dumps(scene(drop(), title="Läuft 🚀"), ensure_ascii=False)
    assert read(document) == read(document.encode())


def test_deep_nesting_is_refused_in_words():
    assert the_refusal("[" * 100_000).field == "document"
    assert the_refusal(json.dumps(scene()).replace("3.0", "[" * 150 + "]" * 150)).field == "habitat.spin_rpm"


def test_long_numbers_are_refused():
    assert the_refusal(json.dumps(scene()).replace("56.0", "1" + "0" * 400)).field == "habitat.radius_m"
    assert the_refusal(json.dumps(scene()).replace("56.0", "1" + "0" * 5000)).field == "document"


def test_what_it_was_is_cut_to_80_characters():
    for document in (
        scene(title=["x"] * 500),
        scene(throw(body="b" * 500)),
        changed(scene(), "habitat.radius_m", [1] * 500),
    ):
        refused = the_refusal(document)
        assert len(refused.was) == 80
        assert refused.was.endswith("…")
    assert len(refusal("a", "x" * 80, "", "").was) == 80


def test_a_long_field_name_does_not_fill_the_answer():
    refusal = the_refusal(scene(**{"z" * 100_000: 1}))
    assert len(refusal.field) <= 200
    assert len(refusal.say) <= 500


def test_a_field_is_never_nameless():
    for source in ({}, {"scene": None}, {"scene": []}, scene(), [], 5, None):
        assert all(r.field and r.say[0] != " " for r in refusals(source, read_export)), source
    assert all(r.field for r in refusals({"scene": scene()}))
    assert the_refusal({"fps": 24, "scene": scene()}, read_export).field == "fps"
    assert refusals({}, read_export)[0].field == "scene"


def test_an_unknown_field_is_told_what_its_place_may_hold():
    refusal = the_refusal(scene(pour(body="cup")))
    assert "flow_ml_s" in refusal.may_be
    assert "elevation_deg" in refusal.may_be
    assert "body" not in refusal.may_be.replace("absent", "")
    assert "fps" not in the_refusal({"scene": scene(), "fps": 24}, read_export).may_be.split("known here")[-1]


def test_a_document_may_have_a_million_bytes():
    document = json.dumps(scene())
    assert read(document + " " * (GREATEST_DOCUMENT_BYTES - len(document)))
    with pytest.raises(TooMuch) as caught:
        read(document + " " * (GREATEST_DOCUMENT_BYTES - len(document) + 1))
    (refusal,) = caught.value.refusals
    assert (refusal.field, refusal.may_be) == ("document", "at most 1,000,000 bytes")


def test_bytes_are_counted_and_not_characters():
    title = "é" * 200
    document = json.dumps(scene(title=title), ensure_ascii=False)
    padded = document + " " * (GREATEST_DOCUMENT_BYTES - len(document))
    with pytest.raises(TooMuch):
        read(padded)
    with pytest.raises(TooMuch):
        read(padded.encode())


def test_the_answer_has_one_shape():
    error = BadInput(refusal("a.b", 4000, "0 to 3", "A was 4000; it must be 0 to 3."))
    assert error.as_dict() == {
        "refused": [{"field": "a.b", "was": "4000", "may_be": "0 to 3", "say": "A was 4000; it must be 0 to 3."}]
    }
    assert isinstance(error, Refused)
    assert str(error) == "A was 4000; it must be 0 to 3."


def test_a_field_that_is_there_twice_is_refused():
    document = json.dumps(scene())
    refusal = the_refusal(document[:-1] + ', "title": "a", "title": "b"}')
    assert (refusal.field, refusal.may_be) == ("title", "there once")
