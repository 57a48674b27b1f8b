"""A pour's tilt and cup against the habitat: refused by the field that is wrong, with what it may be."""

import pytest

from rimfall.errors import TooMuch
from tests.scene.documents import answer, pour, refusals, scene, the_refusal, traced
from tests.tables import each_row

POINT = {"time_s": 0.5, "elevation_deg": -20.0, "flow_ml_s": 40.0}
PODS = {"shape": "pods", "floors": [{"length_m": 12.0, "width_m": 6.0, "ceiling_m": 3.0}]}


@each_row("second_s", [0.5, 0.2])
def test_the_tilt_s_times_rise(second_s):
    refusal = the_refusal(scene(pour(tilt=[POINT, POINT | {"time_s": second_s}])))
    assert (refusal.field, refusal.was) == ("motions.0.tilt.1.time_s", str(second_s))
    assert "above 0.5 s" in refusal.may_be


@each_row(
    ("habitat", "cup", "field", "may_be"),
    [
        ({"width_m": 4.0}, {"axial_m": 2.1}, "axial_m", "-2 to 2 m"),
        ({"ceiling_m": 4.0}, {"height_m": 4.0}, "height_m", "above 0, below 4 m"),
        ({"hub_radius_m": 6.0}, {"height_m": 50.5}, "height_m", "above 0, below 50 m"),
        ({}, {"height_m": 0.0}, "height_m", "above 0, below 56 m"),
        ({}, {"height_m": 0.05}, "depth_m", "0.001 to 0.05 m"),
        ({"radius_m": 12.0}, {"diameter_m": 6.0}, "diameter_m", "below half the radius, 6 m"),
        (PODS, {"along_m": 6.5}, "along_m", "-6 to 6 m"),
        ({"shape": "turntable", "radius_m": 2.0}, {"axial_m": -0.1}, "axial_m", "0 to 2 m"),
        ({"shape": "torus", "tube_radius_m": 3.0}, {"axial_m": 2.0, "height_m": 0.5}, "height_m", "above 0.763"),
        ({"shape": "sphere"}, {"axial_m": 57.0}, "axial_m", "-56 to 56 m"),
    ],
)  # fmt: skip
def test_a_cup_stands_in_the_room(habitat, cup, field, may_be):
    place = {"height_m": 1.1, "axial_m": 1.0 if habitat.get("shape") == "turntable" else 0.0}
    refusal = the_refusal(scene(pour(place=place, target={"axial_m": place["axial_m"]} | cup), habitat=habitat))
    assert refusal.field == f"motions.0.target.{field}"
    assert may_be in refusal.may_be


def test_a_cup_is_asked_in_every_habitat_beside_the_scene_s():
    beside = [{"name": "low", "habitat": {"radius_m": 56.0, "spin_rpm": 3.0, "ceiling_m": 2.0}}]
    (refusal,) = refusals(scene(pour(target={"height_m": 2.5}), compare=beside))
    assert refusal.field == "compare.0.motions.0.target.height_m"


def test_a_pour_of_too_many_drops_is_refused_by_its_name():
    with pytest.raises(TooMuch) as caught:
        traced(scene(pour(200, 4, 600.0, jitter=0.1, name="hose")))
    refusal = caught.value.refusals[0]
    assert (refusal.field, refusal.was) == ("motions", "hose")
    assert "20,000" in refusal.may_be


def test_drops_with_paths_of_their_own_count_as_samples():
    with pytest.raises(TooMuch) as caught:
        traced(scene(pour(30, 4, 20.0, place={"height_m": 5.0}, jitter=0.1)), greatest_samples=20_000)
    assert caught.value.refusals[0].field == "motions.0"


HABITATS = [
    {}, {"spin_rpm": 0}, {"spin_ramp": [{"time_s": 0.5, "spin_rpm": 0.0}, {"time_s": 1.0, "spin_rpm": 8.0}]}, {"axial_thrust_m_s2": 2.0},
    {"shape": "torus", "tube_radius_m": 6.0}, {"shape": "sphere"}, PODS, {"shape": "turntable", "radius_m": 3.0},
]  # fmt: skip
WHOLE, CUT = {"duration_s": 5.0, "fps": 12}, {"duration_s": 0.1}  # s: what lands has landed long before
IN_AIR_OR_NONE = [  # every two of habitat, air and sampling come together
    (habitat, air, (WHOLE, CUT)[(number + (air is None)) % 2])
    for number, habitat in enumerate(HABITATS)
    for air in ({}, None)
]


@each_row(("habitat", "air", "sampling"), IN_AIR_OR_NONE)
def test_a_tilting_scattered_pour_has_an_answer_everywhere(habitat, air, sampling):
    """Finite throughout, which packing makes sure of; all that is poured is caught, spilled, or neither yet."""
    one = pour(
        5,
        8,
        0.25,  # past the tilt's one point, into its greater flow
        tilt=[POINT | {"time_s": 0.2}],
        jitter=1.0,
        place={"height_m": 1.1, "axial_m": 1.0},
        start_s=0.05,
        target={"axial_m": 1.0, "height_m": 0.3},
    )
    motion = answer(scene(one, habitat=habitat, air=air, sampling=sampling), f4=True)["motions"][0]
    findings = motion["findings"]
    assert 0 <= findings["caught_ml"] + findings["spilled_ml"] <= findings["poured_ml"] * (1 + 1e-12)
    assert len(findings["drops"]["born_s"]) == 2  # shape and bytes
