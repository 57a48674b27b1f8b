"""What each shape and each kind of motion may hold: every wrong value is refused by the name of its field."""

import json

from rimfall.scene.reading import read
from tests.scene.documents import BALL, changed, drop, refusals, scene, the_refusal, throw
from tests.tables import each_row

FLOORS = [{"length_m": 12.0, "width_m": 6.0, "ceiling_m": 3.0}, {"length_m": 8.0, "width_m": 6.0}]
HABITATS = {
    "torus": {"shape": "torus", "radius_m": 56.0, "spin_rpm": 3.0, "tube_radius_m": 6.0},
    "sphere": {"shape": "sphere", "radius_m": 56.0, "spin_rpm": 3.0, "hub_radius_m": 2.0},
    "pods": {"shape": "pods", "radius_m": 24.0, "spin_rpm": 4.0, "floors": FLOORS},
    "tether": {"shape": "tether", "radius_m": 80.0, "spin_rpm": 2.0, "floors": FLOORS},
    "tumbler": {"shape": "tumbler", "radius_m": 9.0, "spin_rpm": 6.0, "floors": FLOORS},
    "turntable": {"shape": "turntable", "radius_m": 1.0, "spin_rpm": 20.0, "outside_gravity_m_s2": 9.8},
}
ROLL = {"kind": "roll", "name": "ball", "speed_m_s": 1.5, "heading_deg": 90.0, "body": BALL}
RAMP = {"slope_deg": 12.0, "heading_deg": 0.0, "length_m": 2.0, "width_m": 1.0}
STAND = {"kind": "stand", "name": "cup", "place": {"height_m": 0.9}, "body": "cup"}


def within(shape, *motions):
    return {"rimfall": 1, "habitat": HABITATS[shape], "motions": list(motions)}


def at(along_m=0.0, height_m=0.5, axial_m=0.2, **more):
    return {"place": {"along_m": along_m, "height_m": height_m, "axial_m": axial_m, **more}}


@each_row("shape", HABITATS)
def test_each_shape_stands_with_each_kind_of_motion(shape):
    motions = (drop(body=BALL, **at()), throw(body=BALL, **at()), ROLL | at(height_m=0.0), STAND | at(height_m=0.6))
    document = within(shape, *(m | {"name": f"m{i}"} for i, m in enumerate(motions)))
    document_read = read(json.dumps(document))
    assert document_read.habitat.shape == shape
    assert read(document_read.model_dump_json()) == document_read


WRONG = [
    ("torus", "habitat.tube_radius_m", 28.1),
    ("torus", "habitat.tube_radius_m", 0),
    ("torus", "habitat.tube_radius_m", None),
    ("torus", "habitat.width_m", 14.0),
    ("torus", "habitat.floors", FLOORS),
    ("sphere", "habitat.hub_radius_m", 56.0),
    ("sphere", "habitat.ceiling_m", 4.0),
    ("pods", "habitat.floors", []),
    ("pods", "habitat.floors", [{}] * 13),
    ("pods", "habitat.floors", {}),
    ("pods", "habitat.floors.0.length_m", 0.4),
    ("pods", "habitat.floors.0.width_m", "wide"),
    ("pods", "habitat.floors.0.radius_m", 20.0),
    ("pods", "habitat.floors.0.azimuth_deg", 10.0),
    ("pods", "habitat.floors.1.azimuth_deg", 361.0),
    ("pods", "habitat.floors.1.ceiling_m", 24.0),
    ("pods", "habitat.floors.1.ceiling_m", 0.0),
    ("pods", "habitat.floors.1.colour", "red"),
    ("tether", "habitat.floors.1.radius_m", 0.0),
    ("tumbler", "habitat.hub_radius_m", 1.0),
    ("turntable", "habitat.outside_gravity_m_s2", -1.0),
    ("turntable", "habitat.axial_thrust_m_s2", 1.0),
    ("turntable", "habitat.decks", []),
    ("turntable", "habitat.shape", "egg"),
    ("turntable", "habitat.shape", None),
    ("turntable", "habitat.shape", 3),
]


@each_row(("shape", "field", "value"), WRONG)
def test_a_wrong_value_of_a_shape_is_refused_by_name(shape, field, value):
    all_wrong = refusals(changed(within(shape), field, value))
    assert field in [r.field for r in all_wrong]
    assert all(r.say and r.may_be for r in all_wrong)


def test_the_rim_speed_counts_the_farthest_floor():
    far = changed(within("tether"), "habitat.floors.1.radius_m", 90_000.0)
    assert the_refusal(far).field == "habitat.spin_rpm"


OUTSIDE = [
    ("torus", {"axial_m": 5.92}, "axial_m"),
    ("torus", {"height_m": 0.1, "axial_m": 4.0}, "height_m"),
    ("torus", {"height_m": 11.95}, "height_m"),
    ("sphere", {"axial_m": 56.0}, "axial_m"),
    ("sphere", {"axial_m": 40.0}, "height_m"),
    ("sphere", {"height_m": 54.0}, "height_m"),
    ("pods", {"along_m": 6.1}, "along_m"),
    ("pods", {"axial_m": 3.1}, "axial_m"),
    ("pods", {"height_m": 2.95}, "height_m"),
    ("pods", {"height_m": 0.05}, "height_m"),
    ("pods", {"floor": 2}, "floor"),
    ("pods", {"floor": -1}, "floor"),
    ("pods", {"floor": 0.5}, "floor"),
    ("pods", {"floor": True}, "floor"),
    ("tether", {"floor": 1, "height_m": 80.1}, "height_m"),
    ("turntable", {"axial_m": 1.1}, "axial_m"),
    ("turntable", {"axial_m": -0.1}, "axial_m"),
    ("turntable", {"height_m": 0.05}, "height_m"),
    ("turntable", {"floor": 1}, "floor"),
]


@each_row(("shape", "where", "field"), OUTSIDE)
def test_a_place_outside_the_room_is_refused_by_name(shape, where, field):
    refusal = the_refusal(within(shape, drop(body=BALL, **at(**where))))
    assert refusal.field == f"motions.0.place.{field}"


ROLLS = [
    ("place.height_m", 0.5),
    ("place.axial_m", 8.0),
    ("speed_m_s", -1),
    ("start", "spinning"),
    ("ball_spin_rpm", 1e6),
    ("ball_spin_axis", [0, 1, 0]),
    ("elevation_deg", 10.0),
    ("ramp.slope_deg", 81),
    ("ramp.slope_deg", -1),
    ("ramp.slope_deg", None),
    ("ramp.length_m", 0),
    ("ramp.width_m", 1e9),
    ("ramp.colour", 1),
    ("ramp", 12.0),
    ("bounces", 1001),
    ("bounces", -1),
    ("bounces", 2.5),
    ("bounces", True),
    ("body.shell", "glass"),
    ("body.restitution", 1.1),
    ("body.friction", -0.1),
    ("body.friction", "rough"),
    ("body.rolling_resistance", 2),
]


@each_row(("field", "value"), ROLLS)
def test_a_wrong_value_of_a_roll_is_refused_by_name(field, value):
    document = scene(ROLL | {"ramp": dict(RAMP)}, habitat={"width_m": 14.0})
    all_wrong = refusals(changed(document, f"motions.0.{field}", value))
    assert f"motions.0.{field}" in [r.field for r in all_wrong]


def test_a_ball_that_rolls_may_say_the_height_it_has():
    assert read(json.dumps(scene(ROLL | at(height_m=0.09, axial_m=0.0))))
    refusal = the_refusal(scene(ROLL | at(height_m=0.2, axial_m=0.0)))
    assert "0.09" in refusal.may_be


def test_a_ball_on_a_ramp_fits_under_the_ceiling():
    low = scene(ROLL | {"ramp": RAMP | {"slope_deg": 60.0, "length_m": 4.0}}, habitat={"ceiling_m": 1.5})
    assert the_refusal(low).field == "motions.0.ramp.length_m"


@each_row(
    "axis", [[0, 0, 0], [1, 2], [1, 2, 3, 4], "up", 3, [1, None, 0], [1, "2", 0], [True, 0, 0], [1e400, 0, 0], {}]
)
def test_a_wrong_axis_of_spin_is_refused(axis):
    all_wrong = refusals(scene(throw(ball_spin_rpm=60.0, ball_spin_axis=axis)))
    assert all_wrong[0].field == "motions.0.ball_spin_axis"


def test_a_spin_needs_an_axis():
    refusal = the_refusal(scene(throw(ball_spin_rpm=60.0)))
    assert (refusal.field, refusal.was) == ("motions.0.ball_spin_axis", "null")


@each_row(("field", "value"), [("speed_m_s", 1.0), ("bounces", 3), ("place.height_m", 0.01), ("body", None)])
def test_a_wrong_value_of_a_stand_is_refused_by_name(field, value):
    assert refusals(changed(scene(dict(STAND)), f"motions.0.{field}", value))[0].field == f"motions.0.{field}"


def beside(**part):
    return {"name": "other", "habitat": {"radius_m": 224.0, "spin_rpm": 1.5} | part}


def test_up_to_three_habitats_beside():
    assert len(read(json.dumps(scene(drop(), compare=[beside() | {"name": n} for n in "abc"]))).compare) == 3
    assert the_refusal(scene(drop(), compare=[beside() | {"name": n} for n in "abcd"])).field == "compare"


COMPARES = [
    ([beside(), beside()], "compare.1.name"),
    ([beside(spin_rpm=201)], "compare.0.habitat.spin_rpm"),
    ([beside(shape="torus")], "compare.0.habitat.tube_radius_m"),
    ([beside(shape="egg")], "compare.0.habitat.shape"),
    ([beside(colour=1)], "compare.0.habitat.colour"),
    ([beside() | {"name": ""}], "compare.0.name"),
    ([beside(ceiling_m=1.0)], "compare.0.motions.0.place.height_m"),
    ([{"name": "other"}], "compare.0.habitat"),
    ([3], "compare.0"),
]


@each_row(("compare", "field"), COMPARES)
def test_a_wrong_habitat_beside_is_refused_by_name(compare, field):
    all_wrong = refusals(scene(drop(), compare=compare))
    assert all_wrong[0].field == field
    assert all_wrong[0].may_be
