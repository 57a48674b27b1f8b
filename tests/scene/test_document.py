"""The document's ranges, defaults and strictness are those of the contract, written down here a second time."""

import json
import math

from pydantic import ValidationError

from rimfall.scene.document import Scene
from rimfall.scene.reading import read
from tests.scene.documents import BALL, changed, drop, pour, refusals, scene, throw
from tests.tables import each_row

BASE = scene(
    throw(body=BALL, carried={}),
    pour(tilt=[{"time_s": 1.0, "elevation_deg": -20.0, "flow_ml_s": 40.0}], target={}),
    {"kind": "roll", "body": dict(BALL), "ramp": {"slope_deg": 10.0}},
    {"kind": "jump"},
    {"kind": "walk"},
    {"kind": "lift", "to_height_m": 20.0},
    {"kind": "approach"},
    {"kind": "hang", "body": "cup", "place": {"height_m": 4.0}},
    habitat={"spin_ramp": [{"time_s": 1.0, "spin_rpm": 3.0}], "decks": [{"name": "Galley", "radius_m": 50.0}]},
    air={},
    sampling={},
    person={},
    own_limits=[{"quantity": "gradient", "bound": "at_most", "value": 3.0}],
)

FLOOR = {"length_m": 12.0, "width_m": 6.0, "ceiling_m": 3.0}
OTHERS = {  # what else a habitat may be, by the field that only it has
    "habitat.tube_radius_m": {"shape": "torus", "tube_radius_m": 6.0},
    "habitat.floors": {"shape": "pods", "floors": [FLOOR]},
    "habitat.outside_gravity_m_s2": {"shape": "turntable"},
}


TUMBLES = ("motions.0.about_x_rpm", "motions.0.about_y_rpm", "motions.0.losses_s")  # beside a tumble nothing else moves


def base(path):
    """A document that has the field."""
    if path in TUMBLES:
        return BASE | {"motions": [{"kind": "tumble"}]}
    other = next((part for field, part in OTHERS.items() if path.startswith(field)), None)
    return BASE if other is None else BASE | {"habitat": {"radius_m": 56.0, "spin_rpm": 3.0} | other, "motions": []}


# path, least, greatest; a least of (0,) is "above 0"
RANGES = [
    ("habitat.radius_m", 0.1, 100_000),
    ("habitat.spin_rpm", 0, 200),
    ("habitat.width_m", 0.5, 100_000),
    ("habitat.ceiling_m", (0,), 100_000),
    ("habitat.hub_radius_m", 0.01, 100_000),
    ("habitat.axial_thrust_m_s2", -100, 100),
    ("habitat.spin_ramp.0.time_s", (0,), 4_200),
    ("habitat.spin_ramp.0.spin_rpm", 0, 200),
    ("habitat.decks.0.radius_m", (0,), 100_000),
    ("air.pressure_kpa", 0.001, 1_000),
    ("air.temperature_c", -150, 500),
    ("motions.0.start_s", 0, 3_600),
    ("motions.0.place.along_m", -1e6, 1e6),
    ("motions.0.place.height_m", 0, 100_000),
    ("motions.0.place.axial_m", -1e6, 1e6),
    ("motions.0.speed_m_s", 0, 3_000),
    ("motions.0.heading_deg", -360, 360),
    ("motions.0.elevation_deg", -90, 90),
    ("motions.0.carried.speed_m_s", 0, 3_000),
    ("motions.0.carried.heading_deg", -360, 360),
    ("motions.0.body.mass_kg", 1e-9, 1e6),
    ("motions.0.body.diameter_m", 0, 10),
    ("motions.0.body.drag", 0, 5),
    ("motions.0.body.restitution", 0, 1),
    ("motions.0.body.friction", 0, 5),
    ("motions.0.body.rolling_resistance", 0, 1),
    ("motions.0.body.drag_area_m2", 0, 1_000),
    ("motions.0.ball_spin_rpm", -1e5, 1e5),
    ("motions.0.bounces", 0, 1_000),
    ("motions.0.place.floor", 0, 11),
    ("motions.1.heading_deg", -360, 360),
    ("motions.1.elevation_deg", -90, 90),
    ("motions.1.flow_ml_s", 0.1, 1_000),
    ("motions.1.lip_diameter_mm", 1, 100),
    ("motions.1.duration_s", 0.05, 600),
    ("motions.1.tilt.0.time_s", (0,), 600),
    ("motions.1.tilt.0.elevation_deg", -90, 90),
    ("motions.1.tilt.0.flow_ml_s", 0, 1_000),
    ("motions.1.target.along_m", -1e6, 1e6),
    ("motions.1.target.height_m", 0, 100_000),
    ("motions.1.target.axial_m", -1e6, 1e6),
    ("motions.1.target.diameter_m", 0.001, 10),
    ("motions.1.target.depth_m", 0.001, 10),
    ("motions.1.jitter", 0, 1),
    ("motions.1.seed", 0, 1_000_000),
    ("motions.2.speed_m_s", 0, 3_000),
    ("motions.2.heading_deg", -360, 360),
    ("motions.2.ball_spin_rpm", -1e5, 1e5),
    ("motions.2.bounces", 0, 1_000),
    ("motions.2.ramp.slope_deg", 0, 80),
    ("motions.2.ramp.heading_deg", -360, 360),
    ("motions.2.ramp.length_m", 0.1, 1_000),
    ("motions.2.ramp.width_m", 0.1, 1_000),
    ("motions.3.mass_kg", 1, 1_000),
    ("motions.3.centre_m", 0.1, 3),
    ("motions.3.drag_area_m2", 0, 100),
    ("motions.4.climb_deg", -90, 90),
    ("motions.4.for_s", 0.05, 600),
    ("motions.5.to_height_m", 0, 100_000),
    ("motions.5.top_speed_m_s", 0.01, 1_000),
    ("motions.5.acceleration_m_s2", 0.001, 100),
    ("motions.6.from_m", 1, 1_000_000),
    ("motions.6.size_m", 0.1, 1_000),
    ("motions.7.length_m", 0.01, 1_000),
    ("motions.7.first_angle_deg", 0, 180),
    ("motions.7.first_heading_deg", -360, 360),
    ("motions.7.speed_m_s", 0, 3_000),
    ("motions.0.about_x_rpm", -200, 200),
    ("motions.0.about_y_rpm", -200, 200),
    ("motions.0.losses_s", 1, 1_000_000_000),
    ("habitat.tube_radius_m", 0.05, 50_000),
    ("habitat.floors.0.radius_m", 0.1, 100_000),
    ("habitat.floors.0.azimuth_deg", -360, 360),
    ("habitat.floors.0.length_m", 0.5, 100_000),
    ("habitat.floors.0.width_m", 0.5, 100_000),
    ("habitat.floors.0.ceiling_m", (0,), 100_000),
    ("habitat.outside_gravity_m_s2", 0, 100),
    ("sampling.fps", 1, 240),
    ("sampling.duration_s", 0.1, 600),
    ("person.height_m", 0.3, 3),
    ("person.walk_m_s", 0, 10),
    ("person.run_m_s", 0, 20),
    ("person.climb_m_s", 0, 5),
    ("person.lift_m_s", 0, 50),
    ("person.head_turn_deg_s", 0, 1_000),
    ("own_limits.0.value", (0,), 1_000_000),
]
each_number = each_row(("path", "least", "greatest"), RANGES)
OUTSIDE = 1.001  # beyond every rounding of a frame rate to n/d


def accepts(document):
    try:
        Scene.model_validate_json(json.dumps(document))
    except ValidationError:
        return False
    return True


@each_number
def test_both_ends_of_a_range_are_inside(path, least, greatest):
    least = least if isinstance(least, int | float) else math.ulp(0.0)
    assert accepts(changed(base(path), path, least))
    assert accepts(changed(base(path), path, greatest))


@each_number
def test_past_either_end_is_refused_by_name(path, least, greatest):
    below = 0 if isinstance(least, tuple) else least / OUTSIDE if least > 0 else least * OUTSIDE if least else -1e-300
    for value in (below, greatest * OUTSIDE):
        (refusal,) = refusals(changed(base(path), path, value))
        assert refusal.field == path
        assert refusal.was == (repr(int(value)) if value == int(value) else repr(value))


@each_number
@each_row("wrong", ["12", True, [1], {}])
def test_a_number_is_never_guessed_from_something_else(path, least, greatest, wrong):
    (refusal,) = refusals(changed(base(path), path, wrong))
    assert refusal.field == path
    assert refusal.was == json.dumps(wrong)


@each_number
@each_row("word", ["NaN", "Infinity", "-Infinity", "1e999", "-1e999"])
def test_a_number_is_finite(path, least, greatest, word):
    source = json.dumps(changed(base(path), path, "here")).replace('"here"', word)
    (refusal,) = refusals(source)
    assert refusal.field == path


NULLABLE = ["habitat.width_m", "habitat.ceiling_m", "habitat.hub_radius_m", "sampling.duration_s", "motions.0.body.drag_area_m2",
            "motions.5.acceleration_m_s2", "motions.0.losses_s",
            *(f"habitat.floors.0.{name}_m" for name in ("radius", "ceiling")), "habitat.floors.0.azimuth_deg"]  # fmt: skip


@each_row("path", NULLABLE)
def test_these_may_be_null(path):
    assert accepts(changed(base(path), path, None))


@each_row(
    "path",
    [r[0] for r in RANGES if r[0] not in NULLABLE],
)
def test_others_may_not_be_null(path):
    (refusal,) = refusals(changed(base(path), path, None))
    assert (refusal.field, refusal.was) == (path, "null")


def test_defaults_are_those_of_the_contract():
    least = {
        "rimfall": 1,
        "habitat": {"radius_m": 56.0, "spin_rpm": 3.0},
        "motions": [drop(1.0, BALL), throw(), pour()],
    }
    del least["motions"][1]["heading_deg"], least["motions"][1]["elevation_deg"], least["motions"][1]["speed_m_s"]
    full = read(json.dumps(least)).model_dump(mode="json")
    assert full["title"] == ""
    assert full["habitat"] == {
        "shape": "cylinder", "radius_m": 56.0, "spin_rpm": 3.0, "width_m": None, "ceiling_m": None, "hub_radius_m": None,
        "axial_thrust_m_s2": 0.0, "spin_ramp": [], "decks": [],
    }  # fmt: skip
    assert full["air"] == {"pressure_kpa": 101.325, "temperature_c": 20.0}
    assert full["sampling"] == {"fps": 24, "duration_s": None}
    place = {"along_m": 0.0, "axial_m": 0.0, "floor": 0}
    own = BALL | {"shell": "solid", "restitution": 0.7, "friction": 0.5, "rolling_resistance": 0.0,
        "drag_area_m2": None, "buoyant": False}  # fmt: skip
    spun = {"ball_spin_rpm": 0.0, "ball_spin_axis": None, "bounces": 0}
    assert full["motions"][0] == {
        "name": "drop 1", "kind": "drop", "start_s": 0.0, "place": place | {"height_m": 1.0}, "carried": None, "body": own, **spun,
    }  # fmt: skip
    assert full["motions"][1] == {
        "name": "throw 2", "kind": "throw", "start_s": 0.0, "place": place | {"height_m": 1.5}, "carried": None,
        "body": "handball", "speed_m_s": 0.0, "heading_deg": 0.0, "elevation_deg": 0.0, **spun,
    }  # fmt: skip
    assert full["motions"][2] == {
        "name": "pour 3", "kind": "pour", "start_s": 0.0, "place": place | {"height_m": 1.1}, "heading_deg": 0.0,
        "elevation_deg": 0.0, "flow_ml_s": 30.0, "lip_diameter_mm": 8.0, "duration_s": 2.0, "liquid": "water",
        "tilt": [], "target": None, "jitter": 0.0, "seed": 0,
    }  # fmt: skip


def test_drag_is_that_of_a_sphere_unless_stated():
    one = read(json.dumps(scene(drop(1.0, {"mass_kg": 1, "diameter_m": 0.1}))))
    assert one.motions[0].body.drag == "sphere"


def test_air_is_there_unless_it_is_null():
    assert read(json.dumps(scene())).air.pressure_kpa == 101.325
    assert read(json.dumps(scene(air=None))).air is None


@each_row(
    "path",
    ["rimfall", "habitat", "motions", "habitat.radius_m", "habitat.spin_rpm", "motions.0.kind", "motions.0.body",
     "motions.0.body.mass_kg", "motions.0.body.diameter_m", "motions.1.flow_ml_s", "motions.1.lip_diameter_mm",
     "motions.1.duration_s", "motions.1.liquid", "habitat.spin_ramp.0.time_s", "habitat.spin_ramp.0.spin_rpm",
     "habitat.decks.0.name", "habitat.decks.0.radius_m"],
)  # fmt: skip
def test_what_is_required_is_missed_by_name(path):
    parent, _, name = path.rpartition(".")
    document = json.loads(json.dumps(BASE))
    part = document
    for step in parent.split(".") if parent else []:
        part = part[int(step)] if step.isdigit() else part[step]
    del part[name]
    all_wrong = refusals(document)
    assert [r.field for r in all_wrong] == [path]


@each_row(
    "path",
    ["note", "habitat.tube_radius_m", "air.wind", "motions.0.ramp", "motions.0.place.radius_m", "motions.0.body.colour",
     "motions.0.carried.elevation_deg", "motions.1.body", "motions.1.speed_m_s", "sampling.frames", "habitat.decks.0.height_m",
     "habitat.spin_ramp.0.rpm", "scene"],
)  # fmt: skip
def test_a_field_it_does_not_know_is_refused_by_name(path):
    (refusal,) = refusals(changed(BASE, path, 1))
    assert refusal.field == path
    assert refusal.was == "1"
    assert path.split(".")[-1] in refusal.say
    assert "unknown" in refusal.say


def test_a_drop_has_no_speed():
    (refusal,) = refusals(scene(drop(speed_m_s=1.0)))
    assert refusal.field == "motions.0.speed_m_s"
    assert "speed_m_s" not in refusal.may_be, "what is refused is not offered"


@each_row("version", [0, 2, "1", True, 1.5, None])
def test_the_version_is_the_number_one(version):
    (refusal,) = refusals(scene() | {"rimfall": version})
    assert (refusal.field, refusal.may_be) == ("rimfall", "1")


@each_row(
    ("path", "most"),
    [("habitat.spin_ramp", 100), ("habitat.decks", 20), ("motions", 100)],
)
def test_lists_have_a_longest_length(path, most):
    one = {
        "habitat.spin_ramp": lambda i: {"time_s": 1.0 + i, "spin_rpm": 3.0},
        "habitat.decks": lambda i: {"name": f"deck {i}", "radius_m": 50.0},
        "motions": lambda i: drop(),
    }[path]
    assert accepts(changed(base(path), path, [one(i) for i in range(most)]))
    (refusal,) = refusals(changed(base(path), path, [one(i) for i in range(most + 1)]))
    assert refusal.field == path
    assert str(most) in refusal.say


def test_a_scene_may_be_empty():
    assert accepts(scene())


@each_row("title", ["", "x" * 200, "Läuft — 走る 🚀"])
def test_titles_that_may_be(title):
    assert read(json.dumps(scene(title=title))).title == title


def test_a_title_is_no_longer_than_200():
    (refusal,) = refusals(scene(title="x" * 201))
    assert refusal.field == "title"
    assert refusal.was == '"' + "x" * 78 + "…", "what it was is cut to 80 characters"


@each_row("name", ["x", "y" * 60, "Wurf – 投げる 🤾", "two words", "7"])
def test_names_that_may_be(name):
    assert read(json.dumps(scene(drop(name=name)))).motions[0].name == name


@each_row("name", ["", " ", "\t\n", "y" * 61, "a.b", "a=b", "a,b", 3, []])
def test_names_that_may_not_be(name):
    (refusal,) = refusals(scene(drop(name=name)))
    assert refusal.field == "motions.0.name"
    assert refusal.may_be == "1 to 60 characters, without . = ,"


@each_row("body", ["no such body", "", "CUP", 5, None, True, []])
def test_a_body_is_named_or_stated(body):
    (refusal,) = refusals(scene(drop(1.2, body)))
    assert refusal.field == "motions.0.body"
    assert "handball" in refusal.may_be
    assert "mass_kg" in refusal.may_be


@each_row("liquid", ["gin", "", None, 1])
def test_a_liquid_is_named(liquid):
    (refusal,) = refusals(scene(pour(liquid=liquid)))
    assert refusal.field == "motions.0.liquid"
    assert "water" in refusal.may_be


@each_row("shape", ["Torus", "", None, 1])
def test_the_shape_is_one_of_seven(shape):
    (refusal,) = refusals(scene(habitat={"shape": shape}))
    assert refusal.field == "habitat.shape"
    for one in ("cylinder", "torus", "sphere", "pods", "tether", "tumbler", "turntable"):
        assert one in refusal.may_be


@each_row("kind", ["hover", "", "Drop", None, 1, []])
def test_the_kind_is_one_of_five(kind):
    (refusal,) = refusals(scene(drop() | {"kind": kind}))
    assert refusal.field == "motions.0.kind"
    assert refusal.was == json.dumps(kind)
    for one in ("drop", "throw", "pour", "roll", "stand"):
        assert one in refusal.may_be


@each_row("drag", ["Sphere", "", -0.1, 5.01, None, True, [0.5]])
def test_drag_is_a_sphere_or_a_coefficient(drag):
    (refusal,) = refusals(changed(BASE, "motions.0.body.drag", drag))
    assert refusal.field == "motions.0.body.drag"
    assert refusal.may_be == '"sphere" or a number from 0 to 5'


@each_row("buoyant", ["yes", 1, 0, None, [True]])
def test_a_body_is_buoyant_or_it_is_not(buoyant):
    (refusal,) = refusals(changed(BASE, "motions.0.body.buoyant", buoyant))
    assert (refusal.field, refusal.was) == ("motions.0.body.buoyant", json.dumps(buoyant))
    assert refusal.may_be == "true (the air it displaces bears it up) or false"


def test_whole_numbers_and_decimals_are_the_same_number():
    assert read(json.dumps(scene(habitat={"radius_m": 56}))) == read(json.dumps(scene(habitat={"radius_m": 56.0})))
