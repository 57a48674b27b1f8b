"""What the page is told of fields, bodies and liquids is what the document allows."""

import json
import math

import pytest

import rimfall
from rimfall.kinds.motion import OwnBody
from rimfall.phrases import caution
from rimfall.scene.catalogue import catalogue, export_choices, pattern_of
from rimfall.scene.document import MOTIONS, Scene
from rimfall.scene.export_part import ExportPart
from rimfall.scene.reading import read
from rimfall.shapes import SHAPES
from tests.scene.documents import changed, refusals, scene
from tests.scene.test_document import BASE, RANGES, accepts, base
from tests.tables import each_row

PODS = {
    "shape": "pods",
    "radius_m": 24.0,
    "spin_rpm": 4.0,
    "floors": [{"length_m": 12.0, "width_m": 6.0, "ceiling_m": 3.0}],
}
PURE = ("restitution", "friction", "rolling_resistance", "bounces", "floor", "jitter", "seed", "value")
FIELDS = catalogue()["fields"]
OF_QUESTIONS = (
    "aim.",
    "landings.",
    "camera.",
    "match.",
    "craft.",
)  # `test_question_fields.py` has these, `craft/test_checks.py` the last
NUMBERS = [f for f, said in FIELDS.items() if said["kind"] == "number" and not f.startswith(OF_QUESTIONS)]


def test_it_is_plain_json_and_names_its_parts():
    data = json.loads(json.dumps(catalogue(), allow_nan=False))
    assert set(data) == {"program", "fields", "kinds", "shapes", "bodies", "liquids"} | {
        "person_height_m",
        "greatest_rim_speed_m_s",
        "holds",
        "craft",
        "caution",
    }
    assert data["program"] == rimfall.__version__
    assert (data["person_height_m"], data["greatest_rim_speed_m_s"]) == (1.75, 5000.0)
    assert data["caution"] == caution()


def test_what_is_held_is_told_as_powers_of_radius_and_spin():
    """Gravity v²/R and rim speed 2πR/T: 56 m in turns of 20 s (any mechanics text, uniform circular motion)."""
    holds, speed = catalogue()["holds"], 2 * math.pi * 56.0 / 20.0
    for name, value in {"rim_speed": speed, "gravity": speed**2 / 56.0}.items():
        law = holds[name]
        assert law["factor"] * 56.0 ** law["radius_power"] * 3.0 ** law["spin_power"] == pytest.approx(value, rel=1e-12)


def leaves(value, at=""):
    if isinstance(value, dict) and value:
        for key, inner in value.items():
            yield from leaves(inner, f"{at}.{key}" if at else key)
    elif isinstance(value, list) and value:
        yield at
        for inner in value:
            yield from leaves(inner, f"{at}.*")
    else:
        yield at


def test_every_field_of_a_full_document_is_told():
    full = read(json.dumps(BASE)).model_dump(mode="json")
    assert {pattern_of(path) for path in leaves(full)} <= set(FIELDS)


def test_every_choice_of_an_export_is_told_with_its_default():
    told = export_choices()
    default = ExportPart().model_dump(mode="json")
    assert {name for name in told if "." not in name} == set(default)
    assert all(
        told[name]["default"] == value and told[name]["label"] and told[name]["may_be"]
        for name, value in default.items()
    )
    assert (told["first_frame"]["min"], told["samples_per_frame"]["choices"]) == (-1_000_000, [1, 2, 4, 8])


def test_every_number_told_is_in_the_contract():
    known = {pattern_of(path) for path, *_ in RANGES} - {"motions.*.body.drag", "sampling.fps"}
    assert set(NUMBERS) == known


@each_row(("path", "least", "greatest"), RANGES)
def test_ranges_told_are_the_contract_s(path, least, greatest):
    said = FIELDS[pattern_of(path)]
    if said["kind"] == "number":
        above = isinstance(least, tuple)
        assert (said["min"], said["max"], said["above_min"]) == (least[0] if above else least, greatest, above)
        assert said["label"]
        assert said["unit"] or path.split(".")[-1] in PURE


@each_row("field", NUMBERS)
def test_what_a_slider_shows_is_inside_the_range(field):
    said = FIELDS[field]
    if said["shown"] is not None:
        assert said["shown"]["scale"] in ("log", "linear", "fine_low")
        assert said["shown"]["min"] < said["shown"]["max"] <= said["max"]
        assert said["shown"]["min"] >= said["min"] or said["nullable"] or field == "air.pressure_kpa"
        assert said["shown"]["scale"] != "log" or said["shown"]["min"] > 0


def test_radius_and_spin_show_what_their_dials_show():
    assert FIELDS["habitat.radius_m"]["shown"] == {"min": 2, "max": 10_000, "scale": "log"}
    assert FIELDS["habitat.spin_rpm"]["shown"] == {"min": 0, "max": 30, "scale": "fine_low"}


def test_defaults_told_are_those_that_are_filled_in():
    least = {"rimfall": 1, "habitat": {"radius_m": 56.0, "spin_rpm": 3.0}, "motions": []}
    full = read(json.dumps(least)).model_dump(mode="json")
    for path in leaves(full):
        said = FIELDS[pattern_of(path)]
        if not said["required"] and path != "motions":
            value = full
            for step in path.split("."):
                value = value[step]
            assert said["default"] == value, path


@each_row("field", [f for f in NUMBERS if FIELDS[f]["nullable"]])
def test_null_is_told_where_it_may_be(field):
    assert "null" in FIELDS[field]["may_be"]
    path = next(path for path, *_ in RANGES if pattern_of(path) == field)
    assert accepts(changed(base(path), path, None))


def test_every_shape_can_be_chosen_as_it_comes():
    shapes = catalogue()["shapes"]
    assert list(shapes) == list(SHAPES)
    for shape, told in shapes.items():
        habitat = {"radius_m": 56.0, "spin_rpm": 3.0} | told["new"]
        document = {"rimfall": 1, "habitat": habitat, "motions": []}
        assert read(json.dumps(document)).habitat.shape == shape
        assert {"shape", *told["fields"]} == set(SHAPES[shape].model_fields)
        for needed in told["required"]:
            left = {k: v for k, v in habitat.items() if k != needed}
            assert refusals(document | {"habitat": left})[0].field == f"habitat.{needed}"


def test_a_shape_is_told_with_the_words_for_its_ground():
    shapes = catalogue()["shapes"]
    assert {shape: said["ground"]["name"] for shape, said in shapes.items()} == (
        dict.fromkeys(("cylinder", "torus", "sphere"), "deck")
        | dict.fromkeys(("pods", "tether", "tumbler"), "floor")
        | {"turntable": "turntable"}
    )
    assert shapes["torus"]["ground"]["along"] == "along the deck"
    assert shapes["turntable"]["ground"] == {
        "name": "turntable",
        "surface": "floor",
        "along": "round the turntable, measured at its edge",
        "across": ("outward", "inward"),
        "side": "outward",
        "level": True,
    }
    assert all("{radius}" in said["thing"] and said["whole"] for said in shapes.values())


def test_every_kind_can_be_added_as_it_comes():
    kinds = catalogue()["kinds"]
    assert (
        list(kinds)
        == list(MOTIONS)
        == [*("drop", "throw", "pour", "roll", "stand", "hang", "jump", "walk", "lift", "let_go", "approach", "tumble")]
    )
    for kind, told in kinds.items():
        assert read(json.dumps(scene(told["new"]))).motions[0].kind == kind
        assert {"kind", *told["fields"]} == set(MOTIONS[kind].model_fields)
        for needed in told["required"]:
            left = {k: v for k, v in told["new"].items() if k != needed}
            assert refusals(scene(left))[0].field == f"motions.0.{needed}"


def test_bodies_and_liquids_can_be_named_and_have_sources():
    data = catalogue()
    for body in data["bodies"]:
        own = {key: value for key, value in body.items() if key not in ("name", "source")}
        assert set(own) == set(OwnBody.model_fields)
        assert body["source"]
        for stated in (body["name"], own):
            assert read(json.dumps(scene({"kind": "drop", "place": {"height_m": 1.2}, "body": stated})))
    for liquid in data["liquids"]:
        assert liquid["source"]
        assert liquid["name"] in FIELDS["motions.*.liquid"]["choices"]


def test_the_models_hold_nothing_untold():
    assert {f for f in FIELDS if "." not in f} == set(Scene.model_fields)
