"""What a craft's document may not be: every refusal names its field, what it was and what it must be."""

import json

import pytest

from rimfall.errors import Refused
from rimfall.scene.craft import examples
from rimfall.scene.reading import read, read_craft
from tests.tables import each_row

RING = {"name": "ring", "solid": "ring", "mass_kg": 90_000, "radius_m": 56}
KEEL = {"name": "keel", "group": "still", "solid": "cylinder", "mass_kg": 60_000, "radius_m": 3, "length_m": 40}
DOCUMENT = {"rimfall_craft": 1, "spin_rpm": 3, "parts": [RING, KEEL]}
TORUS = {"name": "torus", "solid": "torus", "mass_kg": 1, "radius_m": 28, "tube_radius_m": 3}
BOX = {"name": "box", "solid": "box", "mass_kg": 1, "size_m": [1, 2, 3]}


def refused(document, reader=read_craft):
    with pytest.raises(Refused) as caught:
        reader(json.dumps(document))
    return {one.field: one for one in caught.value.refusals}


REFUSED = [
    ({"parts": []}, "parts", "a list of 1 to 200"),
    ({"parts": [KEEL]}, "parts", "at least one of which is in the group turning"),
    ({"parts": [RING, RING]}, "parts.1.name", "no other part has (parts.0 has it)"),
    ({"parts": [RING | {"mass_kg": 0}]}, "parts.0.mass_kg", "0.001 to 1e12 kg"),
    ({"parts": [RING | {"radius_m": 0}]}, "parts.0.radius_m", "0.001 to 100,000 m"),
    ({"parts": [RING | {"radius_m": None}]}, "parts.0.radius_m", "is missing, which is the craft's own"),
    (
        {"parts": [RING | {"length_m": 3}]},
        "parts.0.length_m",
        "is unknown; parts.0 may hold axis, group, mass_kg, name",
    ),
    (
        {"parts": [RING | {"solid": "blob"}]},
        "parts.0.solid",
        'was "blob"; it must be point or rod or ring or disc or cylinder',
    ),
    ({"parts": [{"name": "a"}]}, "parts.0.solid", "is missing"),
    ({"parts": [RING | {"axis": [0, 0, 0]}]}, "parts.0.axis", "not all 0"),
    ({"parts": [RING | {"place_m": [0, 0]}]}, "parts.0.place_m", "three numbers"),
    ({"parts": [BOX | {"size_m": [1, 0, 3]}]}, "parts.0.size_m", "each from 0.001 to 100,000 m"),
    (
        {"parts": [RING | {"solid": "torus", "tube_radius_m": 60}]},
        "parts.0.tube_radius_m",
        "at most the radius of the ring, 56 m",
    ),
    (
        {"parts": [TORUS], "deploy": {"parts": [{"name": "torus", "radius_m": 1}]}},
        "deploy.parts.0.radius_m",
        "at least the radius of its tube, 3 m",
    ),
    (
        {"parts": [TORUS], "deploy": {"parts": [{"name": "torus", "radius_m": 4, "tube_radius_m": 5}]}},
        "deploy.parts.0.tube_radius_m",
        "at most the radius of the ring, 4 m",
    ),
    (
        {"deploy": {"parts": [{"name": "ring", "radius_m": 28}, {"name": "ring", "place_m": [5, 0, 0]}]}},
        "deploy.parts.1.name",
        "a part that changes once (deploy.parts.0 is of it already)",
    ),
    ({"dock": {"mass_kg": 1, "exhaust_m_s": 10, "thrust_n": 5e-324}}, "dock.thrust_n", "1e-6 to 1e12 N"),
    ({"spin_rpm": None}, "spin_rpm", "is missing; it must be 0 to 200 rpm."),
    (
        {"spin_rpm": 200, "parts": [RING | {"radius_m": 500}]},
        "parts.0.radius_m",
        "within 238.732 m of the axis at 200 rpm",
    ),
    (
        {"parts": [RING, BOX | {"group": "counter", "place_m": [0, 90, 0]}], "counter_rpm": -1e4},
        "parts.1.place_m",
        "within 4.77465 m",
    ),
    (
        {"move": {"mass_kg": 1, "from_radius_m": 0, "to_radius_m": 1e5, "speed_m_s": 1}},
        "move.to_radius_m",
        "within 15915.5 m",
    ),
    ({"loads": [{"name": "a", "mass_kg": 1, "place_m": [0, 1e5, 0]}]}, "loads.0.place_m", "within 15915.5 m"),
    ({"spin_up": {"by": "hand"}}, "spin_up.by", "it must be motor or thrusters"),
    ({"spin_up": {"by": "motor", "torque_n_m": 0}}, "spin_up.torque_n_m", "1e-6 to 1e15 N m"),
    ({"spin_up": 3}, "spin_up", "Spin-up was 3; it must be an object in braces"),
    ({"slew": {"angle_deg": 90}}, "slew.rate_deg_s", "(or slew.time_s or slew.torque_n_m is given instead)"),
    ({"slew": {"angle_deg": 90, "rate_deg_s": 1, "time_s": 1}}, "slew.time_s", "null beside slew.rate_deg_s"),
    ({"slew": {"angle_deg": 90, "rate_deg_s": 1, "torque_n_m": 1}}, "slew.torque_n_m", "null beside slew.rate_deg_s"),
    (
        {"radius_m": 60, "hull": {"material": "aramid", "thickness_m": 0.1, "tube_radius_m": 21}},
        "hull.tube_radius_m",
        "at most a third of the floor's radius, 20 m",
    ),
    ({"joint": {"radius_m": 1, "load_n": 1, "friction_coefficient": 3}}, "joint.friction_coefficient", "0 to 2"),
    ({"ballast": {"planes_m": [1]}}, "ballast.planes_m", "two places along the axis"),
    ({"deploy": {"parts": [{"name": "x"}]}}, "deploy.parts.0.name", "the name of a part: ring, keel"),
    ({"deploy": {"parts": [{"name": "ring", "length_m": 3}]}}, "deploy.parts.0.length_m", "left out: a ring has none"),
    ({"deploy": {"parts": [{"name": "keel", "axis": [0, 0, 0]}]}}, "deploy.parts.0.axis", "not all 0"),
    ({"tether": {"length_m": 0, "masses_kg": [1, 1]}}, "tether.length_m", "0.001 to 100,000 m"),
    ({"title": 3}, "title", "text of at most 200 characters"),
    ({"rimfall_craft": 2}, "rimfall_craft", "must be 1"),
    ({"rimfall_craft": True}, "rimfall_craft", "must be 1"),
    ({"hulk": 2}, "hulk", "is unknown; the document may hold ballast, counter_rpm"),
]


@each_row(("change", "field", "says"), REFUSED)
def test_a_craft_that_is_not_one_is_refused(change, field, says):
    refusals = refused(DOCUMENT | change)
    assert list(refusals) == [field]
    assert says in refusals[field].say


@each_row(
    ("content", "field"),
    [("[1]", "document"), ("{", "document"), ('{"rimfall_craft": 1}', "parts"), ("null", "document")],
)
def test_what_is_no_document_is_refused(content, field):
    with pytest.raises(Refused) as caught:
        read_craft(content)
    assert caught.value.refusals[0].field == field


def test_a_document_of_its_own_says_what_it_is():
    nameless = {name: value for name, value in DOCUMENT.items() if name != "rimfall_craft"}
    assert refused(nameless)["rimfall_craft"].say == "Document version is missing; it must be 1."
    assert read_craft(json.dumps(SCENE | {"craft": {"parts": [RING]}})).parts[0].name == "ring"


SCENE = {"rimfall": 1, "habitat": {"radius_m": 40, "spin_rpm": 4}, "motions": []}
CARRIED = {"rimfall_craft": 1, "parts": [RING | {"radius_m": None}, KEEL]}


def test_a_scene_gives_its_craft_radius_and_spin():
    """One number each, in one place: what the habitat's dials change changes the craft."""
    craft = read_craft(json.dumps(SCENE | {"craft": CARRIED}))
    assert (craft.spin_rpm, craft.radius_m, craft.parts[0].radius_m) == (4, 40, 40)
    wider = SCENE | {"habitat": {"radius_m": 70, "spin_rpm": 2}, "craft": CARRIED}
    assert read_craft(json.dumps(wider)).parts[0].radius_m == 70
    assert read(json.dumps(wider)).model_dump(mode="json")["craft"]["parts"][0]["radius_m"] is None


def test_a_torus_without_a_radius_reaches_out_to_the_craft_s():
    torus = {"name": "ring", "solid": "torus_shell", "mass_kg": 1, "tube_radius_m": 3}
    assert read_craft(json.dumps(DOCUMENT | {"radius_m": 40, "parts": [torus]})).parts[0].radius_m == 37


OF_SCENES = [
    (CARRIED | {"spin_rpm": 3}, "craft.spin_rpm", "left out in a scene: the habitat's is the craft's"),
    (CARRIED | {"radius_m": 3}, "craft.radius_m", "left out in a scene"),
    (CARRIED | {"parts": [KEEL]}, "craft.parts", "in the group turning"),
    (CARRIED | {"parts": [RING | {"mass_kg": -1}]}, "craft.parts.0.mass_kg", "0.001 to 1e12 kg"),
    (CARRIED | {"parts": [5]}, "craft.parts.0", "an object in braces"),
]


@each_row(("craft", "field", "says"), OF_SCENES)
def test_a_scene_s_craft_is_refused_by_its_own_fields(craft, field, says):
    for reader in (read, read_craft):
        refusals = refused(SCENE | {"craft": craft}, reader)
        assert list(refusals) == [field]
        assert says in refusals[field].say


def test_a_scene_without_a_craft_and_a_turntable_with_one():
    assert "carries no craft" in refused(SCENE)["craft"].say
    bench = {"shape": "turntable", "radius_m": 1, "spin_rpm": 30}
    assert "a turntable is in no craft" in refused(SCENE | {"habitat": bench, "craft": CARRIED}, read)["craft"].say


def test_every_craft_to_start_from_can_be_carried_by_a_scene():
    for name in examples.SAY:
        document = json.loads(examples.example(name))
        spin, radius = document.pop("spin_rpm"), document.pop("radius_m", 40.0)
        scene = SCENE | {"habitat": {"radius_m": radius, "spin_rpm": spin}, "craft": document}
        assert read_craft(json.dumps(scene)).title == document["title"]
