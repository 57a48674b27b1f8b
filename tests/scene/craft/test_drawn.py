"""What the page draws of a craft round its habitat."""

import json

import pytest

from rimfall.scene.craft import scenes
from rimfall.scene.craft.drawn import drawn
from rimfall.scene.reading import read

CRAFTS = {one["id"]: one for one in scenes.for_scenes()}


def scene_with(name, **habitat):
    one = CRAFTS[name]
    home = {"radius_m": one["radius_m"], "spin_rpm": one["spin_rpm"]} | habitat
    return read(json.dumps({"rimfall": 1, "habitat": home, "motions": [], "craft": one["craft"]}))


def test_every_craft_to_start_from_stands_in_a_scene_and_is_drawn():
    for name in CRAFTS:
        assert drawn(scene_with(name))["parts"], name


def test_the_ring_that_the_habitat_is_drawn_as_is_told_apart():
    def told(name):
        return {part["name"]: part["is_habitat"] for part in drawn(scene_with(name))["parts"]}

    ring = told("ring-ship")
    assert [name for name, is_habitat in ring.items() if is_habitat] == ["ring"]
    assert {"keel", "spoke east", "tanks"} <= set(ring)
    assert told("counter-pair") == {"fore ring": True, "aft ring": False, "spine": False}
    assert told("long-tumbler")["hull"]


def test_the_counter_group_turns_against_the_habitat():
    assert drawn(scene_with("counter-pair"))["counter_ratio"] == pytest.approx(-1.0)
    assert drawn(scene_with("counter-pair", spin_rpm=8.0))["counter_ratio"] == pytest.approx(-0.5)
    assert drawn(scene_with("counter-pair", spin_rpm=0.0))["counter_ratio"] == 0.0


def test_a_scene_without_a_craft_draws_none():
    assert (
        drawn(read(json.dumps({"rimfall": 1, "habitat": {"radius_m": 56.0, "spin_rpm": 3.0}, "motions": []}))) is None
    )
