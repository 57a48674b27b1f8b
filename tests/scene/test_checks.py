"""What fields say against one another, and places against the habitat's surfaces."""

import json
import math

from rimfall.scene.reading import read
from tests.scene.documents import BALL, POINT, changed, drop, pour, refusals, scene, the_refusal, throw
from tests.tables import each_row

STEEL_M = 0.020  # diameter of the named steel ball


def stands(document):
    return read(json.dumps(document))


@each_row(("radius_m", "greatest_rpm"), [(1000.0, 47.746482927568604), (100_000.0, 0.47746482927568606)])
def test_the_rim_moves_no_faster_than_5_km_a_second(radius_m, greatest_rpm):
    assert math.isclose(greatest_rpm * 2 * math.pi / 60 * radius_m, 5000.0, rel_tol=1e-12)
    assert stands(scene(habitat={"radius_m": radius_m, "spin_rpm": greatest_rpm * (1 - 1e-9)}))
    refusal = the_refusal(scene(habitat={"radius_m": radius_m, "spin_rpm": greatest_rpm * (1 + 1e-9)}))
    assert refusal.field == "habitat.spin_rpm"
    assert "5,000 m/s" in refusal.say


def test_no_faster_later_on_a_ramp_either():
    ramp = [{"time_s": 1.0, "spin_rpm": 1.0}, {"time_s": 2.0, "spin_rpm": 200.0}]
    refusal = the_refusal(scene(habitat={"radius_m": 1000.0, "spin_ramp": ramp}))
    assert refusal.field == "habitat.spin_ramp.1.spin_rpm"


@each_row("times", [(1.0, 1.0), (2.0, 1.0)])
def test_times_of_a_ramp_rise(times):
    ramp = [{"time_s": t, "spin_rpm": 3.0} for t in times]
    assert the_refusal(scene(habitat={"spin_ramp": ramp})).field == "habitat.spin_ramp.1.time_s"


def test_the_hub_is_inside_the_deck():
    assert stands(scene(habitat={"hub_radius_m": 55.9}))
    for hub in (56.0, 60.0):
        assert the_refusal(scene(habitat={"hub_radius_m": hub})).field == "habitat.hub_radius_m"


def test_ceiling_and_hub_leave_room():
    assert stands(scene(habitat={"ceiling_m": 50.0, "hub_radius_m": 5.9}))
    refusal = the_refusal(scene(habitat={"ceiling_m": 50.0, "hub_radius_m": 6.0}))
    assert refusal.field == "habitat.ceiling_m"
    assert "50" in refusal.may_be
    assert the_refusal(scene(habitat={"ceiling_m": 56.0})).field == "habitat.ceiling_m"


def test_names_differ():
    refusal = the_refusal(scene(drop(name="cup"), throw(name="ball"), drop(name="cup")))
    assert (refusal.field, refusal.was) == ("motions.2.name", '"cup"')
    assert "motions.0" in refusal.say


@each_row(
    ("habitat", "lowest", "highest"),
    [
        ({}, 0.010, 56.0),
        ({"ceiling_m": 4.0}, 0.010, 3.990),
        ({"hub_radius_m": 2.4}, 0.010, 53.590),
        ({"ceiling_m": 4.0, "hub_radius_m": 2.4}, 0.010, 3.990),
    ],
)
def test_a_body_starts_outside_every_surface_by_its_radius(habitat, lowest, highest):
    for height in (lowest, highest):
        assert stands(scene(drop(height, "steel ball 20 mm"), habitat=habitat))
    for height in (lowest - 1e-6, highest + 1e-6):
        refusal = the_refusal(scene(drop(height, "steel ball 20 mm"), habitat=habitat))
        assert refusal.field == "motions.0.place.height_m"
        assert "0.01" in refusal.may_be


@each_row("side", [-1, 1])
def test_a_body_starts_between_the_walls(side):
    def at(axial_m):
        place = {"height_m": 1.0, "axial_m": side * axial_m}
        return scene(drop(body="steel ball 20 mm", place=place), habitat={"width_m": 14.0})

    assert stands(at(6.99))
    assert the_refusal(at(6.990001)).field == "motions.0.place.axial_m"


def test_without_walls_it_may_start_anywhere_along_the_axis():
    assert stands(scene(drop(place={"height_m": 1.0, "axial_m": -1e6})))


@each_row("height_m", [0.0, 56.0])
def test_a_point_may_stand_on_the_deck_or_the_axis(height_m):
    assert stands(scene(drop(height_m, POINT), air=None))


def test_a_point_flies_in_vacuum_only():
    refusal = the_refusal(scene(drop(1.0, POINT)))
    assert refusal.field == "motions.0.body.diameter_m"
    assert "vacuum" in refusal.say


@each_row("air", [None, {}])
def test_nothing_is_thinner_than_a_tenth_of_a_millimetre(air):
    assert stands(scene(drop(1.0, BALL | {"diameter_m": 1e-4}), air=air))
    refusal = the_refusal(scene(drop(1.0, BALL | {"diameter_m": 0.99e-4}), air=air))
    assert refusal.field == "motions.0.body.diameter_m"


def test_a_body_is_smaller_than_half_the_radius():
    small = {"radius_m": 1.0}
    assert stands(scene(drop(0.3, BALL | {"diameter_m": 0.49}), habitat=small))
    assert the_refusal(scene(drop(0.3, BALL | {"diameter_m": 0.5}), habitat=small)).field == "motions.0.body.diameter_m"
    assert the_refusal(scene(pour(lip_diameter_mm=100, place={"height_m": 0.1}), habitat={"radius_m": 0.2})).field == (
        "motions.0.lip_diameter_mm"
    )


@each_row("habitat", [{"ceiling_m": 0.1}, {"width_m": 0.5}])
def test_a_body_that_fits_nowhere_is_told_so(habitat):
    refusal = the_refusal(
        scene(drop(0.05, BALL | {"diameter_m": 0.6 if "width_m" in habitat else 0.11}), habitat=habitat)
    )
    assert refusal.field == "motions.0.body.diameter_m"


def test_a_pour_starts_outside_by_half_its_lip():
    assert stands(scene(pour(place={"height_m": 0.004})))
    assert the_refusal(scene(pour(place={"height_m": 0.0039}))).field == "motions.0.place.height_m"


def test_every_motion_is_looked_at():
    document = scene(drop(), drop(60.0), throw(), pour(place={"height_m": 57.0}))
    assert [r.field for r in refusals(document)] == ["motions.1.place.height_m", "motions.3.place.height_m"]


def test_a_habitat_that_cannot_stand_is_told_before_places_in_it():
    document = changed(scene(drop(60.0)), "habitat.hub_radius_m", 70.0)
    assert [r.field for r in refusals(document)] == ["habitat.hub_radius_m"]
