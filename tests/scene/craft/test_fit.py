"""A craft made to fit another radius: lengths in proportion, masses as they are, so that inertia goes with the square (parallel axes)."""

import json

import numpy as np
import pytest

from rimfall import api
from rimfall.errors import BadInput
from rimfall.scene.craft import examples, scenes
from rimfall.scene.craft.fit import fitted
from tests.web.test_api import call


def test_every_craft_to_start_from_fits_another_radius():
    for name in examples.SAY:
        own, half = api.craft(name), api.craft(name, radius_m=api.craft(name)["rim_radius_m"] / 2)
        assert half["rim_radius_m"] == pytest.approx(own["rim_radius_m"] / 2)
        for group in ("turning", "still", "counter", "whole"):
            if own["mass"][group] is None:
                assert half["mass"][group] is None
                continue
            assert half["mass"][group]["mass_kg"] == own["mass"][group]["mass_kg"]
            inertia, was = (np.array(one["mass"][group]["inertia_kg_m2"]) for one in (half, own))
            assert inertia == pytest.approx(
                was / 4, rel=2e-3, abs=2e-3 * np.abs(was).max()
            )  # to four digits of a length
        assert half["mass"]["overlaps"] == own["mass"]["overlaps"]


def test_what_is_no_length_of_the_craft_stays():
    document = json.loads(examples.example("ring-ship"))
    document["tether"] = {"length_m": 200, "masses_kg": [1, 2]}
    after = fitted(document, 0.5)
    for name in ("tether", "dock", "hull", "slew"):
        assert after[name] == document[name]
    assert "radius_m" not in after["parts"][0]
    assert after["parts"][1] == document["parts"][1] | {"length_m": 25.0, "place_m": [14.5, 0.0, 0.0]}
    assert (after["loads"][0]["place_m"], after["ballast"]["planes_m"]) == ([27.25, 0.0, 1.0], [-1.5, 1.5])
    assert (after["move"]["to_radius_m"], after["move"]["speed_m_s"]) == (27.25, 1.0)


def test_a_habitat_that_keeps_its_radius_gets_craft_that_fit_it():
    listed = call("GET", "/api/crafts?radius_m=40").json()["crafts"]
    assert [one["radius_m"] for one in listed] == [40] * len(examples.SAY)
    assert listed[0]["craft"]["parts"][1]["length_m"] == pytest.approx(50 * 40 / 56, rel=1e-3)
    assert call("GET", "/api/crafts").json()["crafts"] == scenes.for_scenes()
    assert call("GET", "/api/crafts?radius_m=0").status_code == 422
    assert 0 < len(call("GET", "/api/crafts?radius_m=90000").json()["crafts"]) < len(examples.SAY), "none of 500 km"


def test_radius_and_spin_that_cannot_be_are_refused():
    with pytest.raises(BadInput, match="Radius was -1"):
        api.craft("ring-ship", radius_m=-1.0)
    with pytest.raises(BadInput, match="Spin was 1000 rpm"):
        api.craft("ring-ship", spin_rpm=1000)
    on_axis = {"rimfall_craft": 1, "spin_rpm": 1, "parts": [{"name": "a", "solid": "point", "mass_kg": 1}]}
    with pytest.raises(BadInput, match="all that turns is on its axis"):
        api.craft(on_axis, radius_m=3)
