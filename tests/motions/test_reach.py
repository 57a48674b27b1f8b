"""Within whose reach a flight comes, when, how high and how fast: against scipy's own minimum of straight inertial lines."""

import json
import math
import re

import numpy as np
import pytest
from scipy.optimize import minimize_scalar

from rimfall import aim, open_scene
from rimfall.phrases import FOOT_M
from rimfall.scene import examples, prose
from rimfall.scene.answers import outcome
from rimfall.scene.questions import trace
from rimfall.scene.reading import read
from tests.scene.documents import POINT, scene
from tests.tables import each_row

RADIUS_M, OMEGA = 56.0, 3.0 * math.pi / 30
ARM_M = 0.77  # 0.44 of a stature of 1.75 m (Drillis & Contini 1966)


def stands(along_m, axial_m=0.0, **more):
    place = {"along_m": along_m, "height_m": 0.0, "axial_m": axial_m}
    return {"kind": "walk", "name": "Ada", "place": place, "speed_m_s": 0.0, "for_s": 0.5} | more


def thrown(speed_m_s, elevation_deg, **more):
    throw = {"kind": "throw", "name": "it", "place": {"height_m": 1.5}, "speed_m_s": speed_m_s, "body": POINT}
    return throw | {"elevation_deg": elevation_deg} | more


def traced(*motions, **habitat):
    return trace(read(json.dumps(scene(*motions, habitat=habitat, air=None))))


def reached(*motions, **habitat):
    return traced(*motions, **habitat).motions[0].reached


def nearest(speed_m_s, elevation_deg, along_m, axial_m, start_s=0.0):
    """A throw at its nearest to the middle of an upright line of 2 m at rest aboard: when, how far off the line, how high, how fast. In
    the inertial frame the one goes straight and the other round."""
    up, rho = math.radians(elevation_deg), RADIUS_M - 1.5
    velocity = np.array([-speed_m_s * math.sin(up), speed_m_s * math.cos(up) + OMEGA * rho])

    def place(t):
        return np.array([rho, 0.0]) + velocity * t

    def off(t, half=0.0):
        """Off the line, so far up and down from its middle."""
        azimuth = along_m / RADIUS_M + OMEGA * t
        out = place(t) @ [math.cos(azimuth), math.sin(azimuth)]
        aside = place(t) @ [-math.sin(azimuth), math.cos(azimuth)]
        return math.hypot(out - np.clip(out, RADIUS_M - 1.0 - half, RADIUS_M - 1.0 + half), aside, axial_m)

    looks = np.linspace(0.0, 3.0, 3001)
    near = looks[np.argmin([off(t) for t in looks])]
    best = minimize_scalar(off, bounds=(near - 2e-3, near + 2e-3), method="bounded", options={"xatol": 1e-11}).x
    x, y = place(best)
    aboard = velocity - OMEGA * np.array([-y, x])
    return start_s + best, off(best, 1.0), RADIUS_M - math.hypot(x, y), float(np.linalg.norm(aboard))


@each_row(
    ("speed_m_s", "elevation_deg", "along_m", "axial_m"),
    [
        (9.0, 20.0, 6.0, 0.0),
        (9.0, 20.0, 6.0, -0.7),
        (300.0, 0.0, 8.0, 0.3),
        (7.0, 60.0, 7.0, 0.1),
        (4.0, -10.0, 1.5, 0.0),
    ],
)
def test_it_is_told_of_the_nearest_moment(speed_m_s, elevation_deg, along_m, axial_m):
    ((name, one),) = reached(thrown(speed_m_s, elevation_deg, start_s=1.2), stands(along_m, axial_m))
    time_s, off_m, height_m, closing_m_s = nearest(speed_m_s, elevation_deg, along_m, axial_m, 1.2)
    assert name == "Ada"
    assert off_m < ARM_M
    assert one.off_m == pytest.approx(off_m, abs=1e-6)
    assert one.time_s == pytest.approx(time_s, abs=1e-4)
    assert one.height_m == pytest.approx(height_m, abs=1e-3)
    assert one.closing_m_s == pytest.approx(closing_m_s, rel=1e-4)


def test_an_arm_s_reach_is_the_bound():
    told = [reached(thrown(9.0, 20.0), stands(6.0, axial)) for axial in (0.76, 0.78)]
    assert [len(one) for one in told] == [1, 0]


def test_only_a_flight_before_it_lands_and_out_of_other_hands_is_told():
    assert reached(thrown(9.0, 20.0), stands(0.3)) == ()  # it leaves the hands of whoever stands there
    assert reached(thrown(9.0, 20.0, bounces=20), stands(30.0)) == ()  # it comes there when it has bounced
    assert reached(stands(3.0), stands(0.2) | {"name": "Bo"}) == ()  # people are not caught
    wide = {
        "radius_m": 50_000.0,
        "spin_rpm": 0.0955,
    }  # 0.5 g, where what goes straight up comes down beside who threw it
    ((_, back),) = reached(thrown(5.0, 90.0), stands(0.0), **wide)
    gravity = 50_000.0 * (0.0955 * math.pi / 30) ** 2
    falls_s = math.sqrt(2 * (1.5 + 25.0 / (2 * gravity)) / gravity)
    assert 5.0 / gravity < back.time_s < 5.0 / gravity + falls_s
    assert traced(thrown(5.0, 90.0), stands(0.0), **wide).motions[0].track.landing.time_s > back.time_s


def test_those_who_can_catch_it_are_told_in_order_of_time():
    far, near = stands(6.0), stands(3.0) | {"name": "Bo"}
    told = reached(thrown(9.0, 10.0), far, near)
    assert [name for name, _ in told] == ["Bo", "Ada"]
    assert told[0][1].time_s < told[1][1].time_s


def test_a_way_of_an_aim_at_a_runner_comes_within_reach_as_the_aim_says():
    document = json.loads(examples.example("pass-to-a-runner"))
    way = next(
        way
        for way in aim(open_scene(document), "pass", {"motion": "runner"}, {"speed_m_s": 12.0})["ways"]
        if way["flight_s"] < 3
    )
    document["motions"][0] |= {name: way[name] for name in ("speed_m_s", "heading_deg", "elevation_deg")}
    one = trace(read(json.dumps(document))).motions[0]
    ((name, met),) = one.reached
    assert name == "runner"
    assert met.off_m < 0.15
    assert met.time_s == pytest.approx(0.5 + way["flight_s"], abs=1e-3)
    assert met.closing_m_s == pytest.approx(way["arrives"]["speed_m_s"], rel=1e-3)
    assert met.height_m == pytest.approx(way["meets"]["height_m"], abs=1e-3)


def test_words_and_prose_say_who_can_catch_it_and_where_it_lands_else():
    whole = traced(thrown(9.0, 20.0), stands(6.0))
    one, (_, met) = whole.motions[0], whole.motions[0].reached[0]
    assert outcome(one, whole)["within_reach"] == [{"motion": "Ada"} | vars(met)]
    for units, per_m in (("si", 1.0), ("us", 1 / FOOT_M)):
        first, second, *_ = (said.replace("\u00a0", " ") for said in one.outcome(units))
        told = re.fullmatch(
            r"It comes within reach of Ada after ([\d.]+) s, ([\d.]+) (?:m|ft) above the deck, at a closing velocity of ([\d.]+) (?:m|ft)/s\.",
            first,
        )
        assert [float(figure) for figure in told.groups()] == pytest.approx(
            [met.time_s, met.height_m * per_m, met.closing_m_s * per_m], abs=0.051
        )
        assert second.startswith("Uncaught, it lands ")
    told = prose.of_motion(one, "si")
    assert " it comes within the catcher’s reach, about " in told["present"]
    assert " above the deck, at a closing velocity of about " in told["present"]
    assert " If nobody catches it, it lands after about " in told["present"]
    assert " it came within the catcher’s reach, about " in told["past"]
    assert " If nobody had caught it, it would have landed after about " in told["past"]
    assert "catch" not in prose.of_motion(traced(thrown(9.0, 20.0)).motions[0], "si")["past"]
