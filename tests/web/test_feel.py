"""What people would feel, and a habitat for wishes, through the app itself: whole answers, refusals, odd input."""

import json
import math
import re

import pytest

from rimfall.scene import examples
from tests.tables import each_row
from tests.test_any_person import numbers
from tests.web.test_api import JSON, call, refused

HABITAT = {"radius_m": 56.0, "spin_rpm": 3.0}
TWO = [
    {"kind": "figure", "quantity": "gravity", "bound": "exactly", "value": 1.0},
    {"kind": "figure", "quantity": "spin", "bound": "at_most", "value": 2.0},
]
SHAPES = {
    "torus": {"tube_radius_m": 8.0},
    "sphere": {},
    "pods": {"floors": [{"name": "a"}, {"name": "b"}]},
    "tether": {"floors": [{"name": "a"}, {"name": "b"}]},
    "tumbler": {"floors": [{"name": "a"}, {"name": "b"}]},
    "turntable": {},
    "cylinder": {"axial_thrust_m_s2": 2.0, "ceiling_m": 4.0, "width_m": 14.0},
}


def feel(document, query=""):
    return call("POST", f"/api/feel{query}", content=json.dumps(document), headers=JSON)


def size(document, query=""):
    return call("POST", f"/api/size{query}", content=json.dumps(document), headers=JSON)


def test_a_habitat_alone_and_a_scene_with_it_are_answered_alike():
    scene = json.loads(examples.example("galley"))
    whole, alone = feel(scene).json(), feel({"habitat": scene["habitat"]}).json()
    assert whole == alone
    assert set(whole) >= {
        "figures",
        "figure_rows",
        "limits",
        "quantities",
        "says",
        "map",
        "adaptation",
        "words",
        "caution",
    }


def test_the_answer_repeats_what_it_was_asked_with_every_default():
    answer = feel({"habitat": HABITAT, "person": {"height_m": 1.6}}).json()
    assert answer["person"]["height_m"] == 1.6
    assert answer["person"]["walk_m_s"] == 1.4
    assert answer["habitat"]["shape"] == "cylinder"


def test_every_figure_has_a_row_and_every_limit_a_source():
    answer = feel({"habitat": HABITAT}).json()
    assert [row["name"] for row in answer["figure_rows"]] == list(answer["figures"])
    assert all(row["source"] and row["study"] for row in answer["limits"])
    assert {row["quantity"] for row in answer["limits"]} <= {row["name"] for row in answer["quantities"]}
    assert len(answer["says"]["short"]) <= 18
    assert "none of this is medical advice" in answer["caution"]


def test_labels_name_the_habitat_asked_about_and_no_other():
    by_shape = {
        shape: {
            row["name"]: row["label"]
            for row in feel({"habitat": {"shape": shape, **HABITAT, **more}}).json()["figure_rows"]
        }
        for shape, more in SHAPES.items()
    }
    across = ("walk_axial_lean_deg", "drop_axial_m", "pour_axial_m")
    for shape, labels in by_shape.items():
        assert shape == "turntable" or not [label for label in labels.values() if "turntable" in label]
        way = "outward" if shape == "turntable" else "along the axis"
        assert [name for name in across if way not in labels[name]] == [], shape


def test_where_more_than_the_spin_pulls_the_answer_says_so_beside_the_map():
    alone, thrust, table = (
        feel({"habitat": HABITAT | more}).json()["says"]["map"]
        for more in ({}, {"axial_thrust_m_s2": 3.0}, {"shape": "turntable", "radius_m": 3.0})
    )
    assert alone == ""
    assert "includes the thrust; the map's lines" in thrust
    assert "includes the room's gravity" in table


def test_in_us_units_no_sentence_speaks_of_metres():
    """A rim that crawls passes all four limits on its speed, so that every sentence with a speed is there."""
    answer = feel({"habitat": {"radius_m": 5.0, "spin_rpm": 1.0}}, "?units=us").json()
    said = [*answer["says"].values(), *answer["assumptions"], *(one["says"] for one in answer["quantities"])]
    said += [one["text"] for one in answer["words"]]
    assert [text for text in said if re.search(r"[\d ]\u00a0?m(/s)?\b", text)] == []
    assert sum("ft/s" in text for text in said) >= 3


@each_row("shape", SHAPES)
@each_row("spin_rpm", [0.0, 1e-13, 3.0, 30.0])
def test_every_shape_is_answered_with_finite_numbers(shape, spin_rpm):
    habitat = {"shape": shape, "radius_m": 20.0, "spin_rpm": spin_rpm, **SHAPES[shape]}
    for units in ("si", "us"):
        answer = feel({"habitat": habitat}, f"?units={units}")
        assert answer.status_code == 200, answer.text
        assert all(math.isfinite(v) for v in numbers(answer.json()))


@each_row(
    ("person", "field"),
    [
        ({"height_m": 0}, "person.height_m"),
        ({"height_m": -1}, "person.height_m"),
        ({"walk_m_s": 1e9}, "person.walk_m_s"),
        ({"run_m_s": "fast"}, "person.run_m_s"),
        ({"head_turn_deg_s": None}, "person.head_turn_deg_s"),
        ({"größe": 1}, "person.größe"),
        ([], "person"),
    ],
)
def test_a_person_who_cannot_be_is_refused_by_name(person, field):
    rows = refused(feel({"habitat": HABITAT, "person": person}), 422)
    assert rows[0]["field"] == field


def test_limits_of_ones_own_are_held_beside_the_published_ones_and_marked():
    own = {"name": "ours, größer", "quantity": "gradient", "bound": "at_most", "value": 2.0}
    answer = feel({"habitat": HABITAT, "own_limits": [own]}).json()
    mine = [row for row in answer["limits"] if row["mine"]]
    assert [(row["study"], row["quantity"], row["state"], row["inside"]) for row in mine] == [
        ("ours, größer", "gradient", "beyond", False)
    ]
    assert mine[0]["value"] == pytest.approx(100 * 1.75 / 56)
    rows = refused(feel({"habitat": HABITAT, "own_limits": [own | {"quantity": "love"}]}), 422)
    assert (rows[0]["field"], "gravity" in rows[0]["may_be"]) == ("own_limits.0.quantity", True)
    rows = refused(feel({"habitat": HABITAT, "own_limits": [own | {"value": 0}]}), 422)
    assert rows[0]["field"] == "own_limits.0.value"


def test_units_change_the_words_alone():
    si, us = feel({"habitat": HABITAT}).json(), feel({"habitat": HABITAT}, "?units=us").json()
    assert si["words"] != us["words"]
    assert (si["figures"], si["limits"], si["map"]) == (us["figures"], us["limits"], us["map"])


def test_the_smallest_habitat_for_two_wishes():
    answer = size({"wishes": TWO}).json()
    assert answer["fits"]
    assert answer["smallest"]["radius_m"] == pytest.approx(223.6, abs=0.05)  # 1 g at 2 rpm: a = w^2 R
    assert answer["smallest"]["spin_rpm"] == pytest.approx(2.0)
    assert answer["collides"] == []


def test_wishes_that_collide_say_by_how_much():
    hull = {"kind": "figure", "quantity": "radius", "bound": "at_most", "value": 60.0}
    answer = size({"wishes": [*TWO, hull]}).json()
    assert not answer["fits"]
    assert answer["smallest"] is None
    could = {row["wish"]: row["could_be"] for row in answer["collides"]}
    assert could[2] == pytest.approx(223.6, abs=0.05)
    assert could[0] == pytest.approx((2 * math.pi / 30) ** 2 * 60 / 9.80665)
    assert could[1] == pytest.approx(math.sqrt(9.80665 / 60) * 30 / math.pi)


@each_row(
    ("change", "field"),
    [
        ({"wishes": []}, "wishes"),
        ({"wishes": [{}]}, "wishes.0.kind"),
        ({"wishes": [{"kind": "luck"}]}, "wishes.0.kind"),
        ({"wishes": [TWO[0] | {"value": 0}]}, "wishes.0.value"),
        ({"wishes": [TWO[0] | {"value": "NaN"}]}, "wishes.0.value"),
        ({"wishes": [TWO[0] | {"quantity": "taste"}]}, "wishes.0.quantity"),
        ({"wishes": [TWO[0] | {"bound": "about"}]}, "wishes.0.bound"),
        ({"wishes": [{"kind": "study", "study": "nobody_1900"}]}, "wishes.0.study"),
        ({"wishes": TWO * 7}, "wishes"),
        ({"wishes": TWO, "hurry": True}, "hurry"),
        ({"wishes": TWO, "person": {"height_m": 0}}, "person.height_m"),
        ({}, "wishes"),
    ],
)
def test_wishes_that_cannot_be_are_refused_by_name(change, field):
    rows = refused(size(change), 422)
    assert rows[0]["field"] == field
    assert rows[0]["may_be"]
    assert "what the scene document allows" not in rows[0]["say"]


@each_row("path", ["/api/feel", "/api/size"])
def test_what_is_no_document_is_refused(path):
    for body, status in (
        (b"", 422),
        (b"[1]", 422),
        (b'{"habitat": NaN}', 422),
        (b"{" * 5000, 422),
        (b" " * 1_100_000, 413),
    ):
        refused(call("POST", path, content=body, headers=JSON), status)
    refused(call("GET", path), 405)


@pytest.mark.parametrize("shape", SHAPES)
def test_the_habitats_of_a_scene_are_given_to_be_drawn(shape):
    habitat = {"shape": shape} | HABITAT | SHAPES[shape]
    beside = [{"name": "beside", "habitat": HABITAT}]
    answer = call("POST", "/api/mesh", content=json.dumps({"habitat": habitat, "compare": beside}), headers=JSON)
    assert answer.status_code == 200
    first, second = answer.json()["habitats"]
    assert first["radius_m"] == second["radius_m"] == 56.0
    assert any(part.get("material") in ("deck", "turntable") for part in first["parts"])


def test_a_habitat_that_cannot_be_is_not_drawn():
    answer = call(
        "POST",
        "/api/mesh",
        content=json.dumps({"habitat": {"shape": "torus"} | HABITAT | {"tube_radius_m": 40}}),
        headers=JSON,
    )
    assert refused(answer, 422)[0]["field"] == "habitat.tube_radius_m"


def test_the_map_and_the_plot_are_drawn_for_the_page():
    def drawn(path, document):
        return call("POST", path, content=json.dumps(document), headers=JSON)

    drawing = drawn("/api/map?width=310&draw=spin&draw=mine", {"habitat": HABITAT}).json()
    assert drawing["size_px"][0] == pytest.approx(310)
    assert all(one["says"].startswith("Spin") for one in drawing["limits"])
    scene = json.loads(examples.example("same-lob"))
    plot = drawn("/api/plot?width=310&plain=0", {"scene": scene, "export": {}}).json()
    assert "Lob out" in plot["svg"]
    assert "plain gravity" not in plot["svg"]
    for path, body in (("/api/map", {"habitat": HABITAT}), ("/api/plot", {"scene": scene, "export": {}})):
        assert refused(drawn(f"{path}?width=12", body), 422)[0]["field"] == "width"
    assert refused(drawn("/api/plot?width=310", {"scene": scene, "export": {"motions": ["x"]}}), 422)
