"""Prose: rounded as prose is, true all the same. What is read back out of the words is held against the figure they were made from."""

import json
import re
from functools import lru_cache

import numpy as np
import pytest

from rimfall.amounts import number, share
from rimfall.prose import MEASURES, NEAR, NEAR_M, Telling
from rimfall.scene import examples, prose
from rimfall.scene.answers import habitat_figures
from rimfall.scene.reading import read
from tests.motions.scenes import one as traced_of
from tests.motions.scenes import pour
from tests.scene.documents import trace_of
from tests.tables import each_row

COUNTS = {number(n): float(n) for n in range(101)} | {"a": 1.0, "an": 1.0}
PARTS = {
    "half": 1 / 2,
    "a third": 1 / 3,
    "two thirds": 2 / 3,
    "a quarter": 1 / 4,
    "three quarters": 3 / 4,
    "two fifths": 2 / 5,
}
PARTS |= {"three fifths": 3 / 5, "nine tenths": 9 / 10, "a fifth": 1 / 5}
ORDINALS = {"twenty-fifth": 25, "twentieth": 20, "fifteenth": 15, "twelfth": 12, "tenth": 10, "eighth": 8, "sixth": 6}
PARTS |= {f"a {name}": 1 / n for name, n in ORDINALS.items()} | {"an eighth": 1 / 8}
UNITS_M = {"kilometre": 1000.0, "metre": 1.0, "foot": 0.3048, "feet": 0.3048, "mile": 1609.344}
UNITS_S = {"second": 1.0, "minute": 60.0, "hour": 3600.0}


def counted(words):
    """The number that words say: "two and a half", "120", "1.5", "a quarter of a", "half a"."""
    words = words.strip()
    for name, part in PARTS.items():
        if words in (name, f"{name} a", f"{name} an", f"{name} of a", f"{name} of an"):
            return part
    whole, _, rest = words.partition(" and ")
    value = COUNTS[whole] if whole in COUNTS else float(whole.replace(",", ""))
    return value + (PARTS[{"a half": "half"}.get(rest, rest)] if rest else 0.0)


def sized(words, units):
    """The figure that words say in some units, singular or plural."""
    for name, size in units.items():
        if found := re.fullmatch(rf"(?:about )?(.*?) ?{name}s?", words):
            return counted(found[1]) * size
    raise AssertionError(words)


def body_sized(words):
    """Metres that words say by a body, or in a unit of length."""
    for measure in MEASURES:
        if words == f"about {measure.one}":
            return measure.size_m
        if measure.several and (found := re.fullmatch("about " + measure.several.format(count="(.*)"), words)):
            return counted(found[1]) * measure.size_m
    return sized(words, UNITS_M)


@each_row(("units", "upright"), [("si", False), ("si", True), ("us", False), ("us", True)])
def test_every_length_said_is_near_the_length_itself(units, upright):
    for length_m in np.geomspace(0.015, 50_000.0, 400):
        said = Telling(units=units).length(length_m, upright)
        if said == "less than a finger’s breadth":
            assert length_m < 0.02
            continue
        assert body_sized(said) == pytest.approx(length_m, rel=NEAR, abs=NEAR_M), said


def test_every_time_said_is_near_the_time_itself():
    for time_s in np.geomspace(0.18, 40_000.0, 400):
        assert sized(Telling().time(time_s), UNITS_S) == pytest.approx(time_s, rel=NEAR), time_s


def test_every_share_said_is_near_it_and_on_the_side_it_says():
    for value in np.geomspace(0.036, 0.949, 400):
        hedge, part = re.fullmatch("(about|a little over|a little under) (.*)", share(value)).groups()
        assert PARTS[part] == pytest.approx(value, rel=NEAR)
        assert {"about": True, "a little over": value > PARTS[part], "a little under": value < PARTS[part]}[hedge]


def test_what_lands_is_told_where_it_lands_and_on_which_side():
    """Every landing of the shipped scenes: its way, out of the answer, against the sentence."""
    checked = 0
    for one in scenes():
        for traced in one.motions:
            told = prose.of_motion(traced, "si")["past"].partition(" landed ")[2].partition(".")[0]
            said = re.search("(.*) (ahead of|behind) you", told)
            if said is None or "round the habitat" in told:
                continue
            way, distance = traced.way(traced.track.landing), re.split(" and (?=about|less)", said[1])[-1]
            if distance.startswith("less"):
                assert abs(way.in_all_m) < 0.02
            else:
                assert body_sized(distance) == pytest.approx(abs(way.in_all_m), rel=NEAR, abs=NEAR_M), told
            assert (said[2] == "ahead of") == (way.in_all_m > 0)
            checked += 1
    assert checked > 20


def test_a_paragraph_has_no_symbol_and_keeps_to_its_tense():
    for one in scenes():
        told = prose.of_scene(one, habitat_figures(one)["felt_g"], "si")
        for tense, text in told.items():
            assert text.endswith(".")
            assert not re.search(r"[°%²/=_]|\d [a-zµ]{1,3}\b|\bg\b|  ", text), text
            wrong = r"\b(lands|lay|landed|is|was|turns|turned|rolls|rolled|weighs|weighed)\b"
            past = {"landed", "lay", "was", "turned", "rolled", "weighed"}
            found = set(re.findall(wrong, re.sub(r"would have \w+", "", text)))
            assert found <= past if tense == "past" else not found & past, text


@lru_cache
def scenes():
    """The shipped scenes, traced."""
    return [trace_of(read(examples.example(each["id"]).encode())) for each in examples.listed()]


@each_row(("diameter_m", "name"), [(0.08, "cup"), (0.5, "basin")])
def test_a_basin_is_called_one(diameter_m, name):
    target = {"along_m": 40.0, "height_m": 0.1, "diameter_m": diameter_m}
    poured = traced_of(pour(1.1, flow_ml_s=30.0, lip_mm=8.0) | {"target": target})
    assert f"missed the {name}" in prose.of_motion(poured, "si")["past"]
    said = " ".join(poured.outcome())
    other = {"cup": "basin", "basin": "cup"}[name]
    assert name in said
    assert f"the {other}" not in said


def test_a_part_of_the_way_round_the_long_way_is_no_part_of_a_time():
    thrown = {"kind": "throw", "name": "Ball", "place": {"height_m": 1.5}, "body": "handball"}
    thrown |= {"speed_m_s": 10.0, "heading_deg": 180.0, "elevation_deg": 6.95}
    scene = {"rimfall": 1, "habitat": {"radius_m": 30.0, "spin_rpm": 4.0}, "air": None, "motions": [thrown]}
    (traced,) = trace_of(read(json.dumps(scene))).motions
    told = prose.of_motion(traced, "si")["past"]
    assert "landed about three quarters of the way round the habitat, against the spin" in told
