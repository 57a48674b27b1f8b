"""What the page draws lies where the habitat's own surfaces and meshes are, is plain data, and is told for every shape."""

import json
import math

import numpy as np
import pytest

from rimfall import shapes
from rimfall.phrases import OUTWARD
from rimfall.physics.spin import steady
from rimfall.shapes import SHAPES
from rimfall.shapes.drawn import drawn

SPIN = steady(0.3)
FLOORS = tuple(shapes.Floor(f"pod {i}", 30.0, 2.0 * i, 8.0, 5.0, 2.5 if i else None) for i in range(3))
WAYS = {
    "band",
    "shell",
    "rings",
    "sections",
    "lines",
    "posts",
    "lights",
    "tube",
    "box",
    "sheet",
    "disc",
    "lantern",
    "figure",
}


def every():
    for name, model in SHAPES.items():
        part = model.model_validate({"shape": name, "radius_m": 24.0, "spin_rpm": 3.0} | model.NEW)
        yield pytest.param(part.habitat(), id=name)
    yield pytest.param(
        shapes.Cylinder(56.0, SPIN, width_m=14.0, ceiling_m=3.0, hub_radius_m=4.0), id="a drum with all parts"
    )
    yield pytest.param(shapes.Turntable(4.0, SPIN, 9.81), id="a large turntable")


def of_form(habitat, form, **said):
    return [p for p in drawn(habitat)["parts"] if p["form"] == form and all(p.get(k) == v for k, v in said.items())]


@pytest.mark.parametrize("habitat", list(every()))
def test_it_is_plain_finite_data(habitat):
    answer = json.loads(json.dumps(drawn(habitat), allow_nan=False))
    assert {part["form"] for part in answer["parts"]} <= WAYS
    assert answer["level"] == (habitat.words_of_ground.across == OUTWARD)
    outline = np.array(answer["outline_m"]).reshape(-1, 3)
    assert outline == pytest.approx(habitat.outline_m(), abs=1e-4)
    for part in answer["parts"]:
        assert bool(part.get("cut")) <= (part.get("side") in (1, -1)), part


@pytest.mark.parametrize("habitat", list(every()))
def test_what_is_walked_on_lies_on_the_ground(habitat):
    """The gap of a point on the drawn deck to the ground that bodies meet is nothing."""
    ground = habitat.ground()
    for part in (p for p in drawn(habitat)["parts"] if p.get("material") == "deck"):
        if part["form"] == "sheet":
            floor = [habitat.ground(i) for i in range(len(habitat.floors))]
            points = np.array(part["corners"]).T
            assert min(np.abs(f.gap(points, np.zeros(4))).max() for f in floor) == pytest.approx(0.0, abs=1e-9)
            continue
        if part["form"] == "band":
            profile = np.array(part["profile"])
        else:
            centre, radius, start, end = part["arc"]
            angle = np.linspace(start, end, 9)
            profile = np.stack([centre - radius * np.cos(angle), radius * np.sin(angle)], -1)
        points = np.stack([habitat.radius_m - profile[:, 0], np.zeros(len(profile)), profile[:, 1]])
        assert ground.gap(points, np.zeros(len(profile))) == pytest.approx(np.zeros(len(profile)), abs=1e-9)


def test_a_drum_shows_its_deck_to_the_axis_and_its_hull_away_from_it():
    """Normal = spinward x the way along the profile, as for the files' meshes: toward the axis where axial falls."""
    drum = shapes.Cylinder(56.0, SPIN, width_m=14.0)
    (deck,), (hull,) = of_form(drum, "band", material="deck"), of_form(drum, "band", material="hull")
    assert deck["profile"][0][1] > deck["profile"][1][1]
    assert hull["profile"][0][1] < hull["profile"][1][1]
    assert {h for h, _ in hull["profile"]} == {-min(max(0.02 * 56, 0.02), 1.15 + 0.002 * 56)}


def test_an_open_drum_is_as_wide_as_can_be_seen_and_has_ends_only_where_they_are_asked_for():
    answer = drawn(shapes.Cylinder(56.0, SPIN))
    assert answer["half_m"] is None
    assert not [p for p in answer["parts"] if p.get("look") in ("rail", "edge")]
    assert answer["ended"]["half_m"] == 14.0
    assert [p for p in answer["ended"]["parts"] if p.get("look") == "rail"]
    assert drawn(shapes.Cylinder(56.0, SPIN, width_m=14.0))["ended"] is None


def test_spokes_lead_from_the_ceiling_to_the_hub():
    spokes = of_form(shapes.Cylinder(56.0, SPIN, ceiling_m=3.0, hub_radius_m=4.0), "tube", from_afar=True)
    assert len(spokes) == 4
    for spoke in spokes:
        assert [math.hypot(*end) for end in spoke["ends"]] == pytest.approx([53.0, 4.0])


def test_a_shell_is_open_on_the_side_of_the_eye():
    for habitat in (shapes.Torus(56.0, SPIN, tube_radius_m=6.0), shapes.Sphere(40.0, SPIN)):
        for side in (1, -1):
            (hull,) = of_form(habitat, "shell", side=side, cut="open")
            assert np.sign(hull["arc"][2:]).tolist() == [side, side]
            assert of_form(habitat, "band", side=side, cut="section")


def test_every_floor_has_its_sheet_where_its_corners_are_and_is_joined_as_its_shape_is():
    craft = shapes.Craft(30.0, SPIN, floors=FLOORS)
    sheets = of_form(craft, "sheet")
    assert [np.array(s["corners"]) for s in sheets] == [pytest.approx(craft.corners(i)) for i in range(3)]
    joined = {
        name: SHAPES[name].HABITAT(30.0, SPIN, floors=FLOORS) for name in ("pods", "tether", "tumbler")
    }  # each with what the others have not
    assert len(of_form(joined["pods"], "tube")) == 6
    assert len(of_form(joined["tether"], "box", material="hub")) == 1
    assert len(of_form(joined["tumbler"], "lines", look="joint")) == 12
    for arm in of_form(joined["pods"], "tube"):
        assert math.hypot(*arm["ends"][0][:2]) == pytest.approx(0.0, abs=1e-9)


def test_what_stands_still_round_a_table_is_said():
    table = shapes.Turntable(0.6, SPIN, 9.81)
    still = [p for p in drawn(table)["parts"] if p.get("still")]
    assert {p["form"] for p in still} == {"tube", "box", "sheet", "figure"}
    assert not of_form(shapes.Turntable(4.0, SPIN, 9.81), "figure")  # people ride on a large one
