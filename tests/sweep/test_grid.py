"""The combinations: all of them, each once, each a scene that stands; refusals before anything runs."""

import itertools
import json

import pytest

from rimfall.errors import BadInput, TooMuch
from rimfall.scene.reading import read
from rimfall.sweep import grid, parameters
from tests.tables import each_row

from .runs import AIR, scene

HANDBALL = "handball"


def grid_of(*varied, document=None):
    return grid.grid_of(read(json.dumps(document or scene())), [parameters.parse(text) for text in varied])


def refusals(*varied, document=None):
    with pytest.raises((BadInput, TooMuch)) as refused:
        grid.check(grid_of(*varied, document=document))
    return [r.say for r in refused.value.refusals]


def test_every_combination_is_there_once_the_last_changing_fastest():
    made = grid_of("habitat.spin_rpm=1..3/3", "motions.serve.speed_m_s=4,6", "motions.serve.elevation_deg=0,10,20")
    wanted = list(itertools.product([1, 2, 3], [4, 6], [0, 10, 20]))
    assert [made.values(n) for n in range(1, made.count + 1)] == wanted


def test_a_combination_is_the_scene_with_its_values_and_nothing_else_changed():
    made = grid_of("habitat.spin_rpm=1,2", "motions.let go.place.height_m=0.5,1")
    before, after = made.scene(3), read(json.dumps(scene()))
    assert (before.habitat.spin_rpm, before.motions[1].place.height_m) == (2, 0.5)
    assert before.motions[0] == after.motions[0]
    assert read(json.dumps(made.document)) == after


def test_motions_go_by_name_or_by_number_and_decks_by_number():
    document = scene()
    document["habitat"]["decks"] = [{"name": "Galley", "radius_m": 52.0}]
    made = grid_of(
        "motions.0.speed_m_s=1", "motions.let go.start_s=2", "habitat.decks.0.radius_m=50", document=document
    )
    assert made.keys == (("motions", 0, "speed_m_s"), ("motions", 1, "start_s"), ("habitat", "decks", 0, "radius_m"))


def test_words_and_null_can_be_varied():
    made = grid_of("air=null", "motions.serve.body=handball,tennis ball", document=scene(AIR, HANDBALL))
    grid.check(made)
    assert [made.scene(n).motions[0].body for n in (1, 2)] == ["handball", "tennis ball"]
    assert made.scene(1).air is None


@each_row(
    ("text", "part"),
    [
        ("habitat.spinn=1,2", "habitat has no spinn; there may be radius_m, spin_rpm"),
        ("motions.sprint.speed_m_s=1", "motions has no sprint; there is serve, let go."),
        ("motions.7.speed_m_s=1", "motions has no 7"),
        ("motions.let go.speed_m_s=1", "motions.let go has no speed_m_s"),
        ("air.pressure_kpa=50", "air is nothing in this scene and holds no pressure_kpa"),
    ],
)
def test_a_path_that_is_not_there_is_refused_with_what_is(text, part):
    assert part in refusals(text)[0]


def test_a_value_out_of_range_names_its_option_and_its_combination():
    (say,) = refusals("habitat.spin_rpm=1..301/3", "motions.serve.speed_m_s=4,6")
    assert say == (
        "--over habitat.spin_rpm=301: Spin was 301 rpm; it must be 0 to 200 rpm. "
        "(Combination 5: habitat.spin_rpm=301, motions.serve.speed_m_s=4.)"
    )


def test_what_only_a_combination_makes_wrong_is_refused_with_its_values():
    document = scene()
    document["habitat"] |= {"hub_radius_m": 5.0, "ceiling_m": 10.0}
    sentences = refusals("habitat.hub_radius_m=5,40", "habitat.ceiling_m=10,20", document=document)
    assert len(sentences) == 1
    assert "Combination 4: habitat.hub_radius_m=40, habitat.ceiling_m=20" in sentences[0]


def test_one_thing_may_not_be_varied_twice():
    assert "set the same thing" in refusals("motions.serve.speed_m_s=1", "motions.0.speed_m_s=2")[0]
    assert "set the same thing" in refusals("air=null", "air.pressure_kpa=2", document=scene(AIR, HANDBALL))[0]


def test_there_may_be_100_000_combinations():
    assert grid_of("habitat.spin_rpm=1..2/1000", "habitat.radius_m=50..60/100").count == 100_000
    assert "100,100 combinations" in refusals("habitat.spin_rpm=1..2/1001", "habitat.radius_m=50..60/100")[0]
