"""What is said of aims, landings, matches and cameras is said in the language that is spoken: of a language whose every message is marked,
nothing else is left but names that somebody gave, names of fields, numbers and units; and the numbers behind the words are the same."""

import json
import re

import numpy as np
import pytest

from rimfall.errors import Refused
from rimfall.exports import landings as files
from rimfall.exports.brought import cameras, tracks
from rimfall.language import speaking
from rimfall.scene.reading import read_aim, read_camera, read_landings, read_match
from rimfall.scene.shot import aim, camera, landings, match
from rimfall.scene.shot.aim_table import rows_of as rows_of_aim
from rimfall.scene.shot.landings_table import rows_of as rows_of_landings
from tests import pseudo
from tests.shots.match_paths import flown, rows
from tests.tables import each_row

pytestmark = pytest.mark.usefixtures("marked")
MARKED = pseudo.LEFT_TO_RIGHT
NOT_WORDS = re.compile(r"(?<![A-Za-z])(?:m/s|ft/s|rpm|kPa|fps|mm|ft|in|m|s|g|°|%|[−-]?\d[\d.,]*)(?![A-Za-z])")
SERVE = {
    "kind": "throw",
    "name": "Ysur",
    "place": {"height_m": 1.5},
    "speed_m_s": 7.0,
    "body": "handball",
    "bounces": 1,
}
WHEEL = {"radius_m": 30.0, "spin_rpm": 4.0, "ceiling_m": 3.0, "width_m": 14.0}
FLAT = {
    "shape": "pods",
    "radius_m": 30.0,
    "spin_rpm": 4.0,
    "floors": [{"name": name, "length_m": 12.0, "width_m": 6.0, "ceiling_m": 3.0} for name in ("Ossa", "Ossa two")],
}
TURNTABLE = {"shape": "turntable", "radius_m": 4.0, "spin_rpm": 12.0}


def left_of(text, names=("Ysur", "Ossa")):
    """What of a text is no message, no number with its unit, and none of some names."""
    left = pseudo.outside(text)
    for name in names:
        left = left.replace(name, "")
    return re.sub(r"[\s.,;:()–/+]", "", NOT_WORDS.sub("", left.replace("\u00a0", " ")))


def aimed(fixed, habitat, to, air):
    scene = {"rimfall": 1, "habitat": habitat, "air": air, "motions": [SERVE]}
    document = {"scene": scene, "motion": "Ysur", "to": to, "fixed": fixed, "flight_max_s": 20.0}
    return aim.find(read_aim(json.dumps(document)))


def said_of(ways):
    """Every text of throws that people read."""
    for way in ways:
        yield from (way["name"], way["says"], way["off_says"])
        if way["blocked_by"] is not None:
            yield way["blocked_by"]["says"]


ROOM = {"pressure_kpa": 101.325, "temperature_c": 20.0}
ASIDE = {"along_m": -12.0, "height_m": 1.4, "axial_m": 2.0}


@each_row(
    ("fixed", "habitat", "to", "air"),
    [
        ({"speed_m_s": 9.0}, WHEEL, {"along_m": -6.0, "height_m": 1.4}, None),  # one free, one under the ceiling
        ({"speed_m_s": 12.0}, WHEEL, {"along_m": -30.0, "height_m": 1.4}, None),  # farther than half round
        ({"elevation_deg": 60.0}, WHEEL, ASIDE, ROOM),  # none arrives
        ({"elevation_deg": 0.0}, WHEEL, ASIDE, None),
        ({"flight_s": 1.5}, WHEEL, ASIDE, ROOM),  # blocked
        ({"least": "speed_m_s"}, WHEEL, ASIDE, ROOM),
        ({"speed_m_s": 5.0}, TURNTABLE, {"along_m": 2.0, "height_m": 1.4, "axial_m": 2.5}, None),
    ],
)
def test_aims_are_said_in_the_language_that_is_spoken(fixed, habitat, to, air):
    plainly = aimed(fixed, habitat, to, air)
    with speaking(MARKED):
        found = aimed(fixed, habitat, to, air)
    for units in ("si", "us"):
        plain = aim.as_data(plainly, units)
        with speaking(MARKED):
            answer = aim.as_data(found, units)
            table = rows_of_aim(answer["ways"], units)
        ways = [*answer["ways"], *([answer["nearest"]] if answer["nearest"] else [])]
        texts = [answer["short"], answer["caution"], *answer["words"], *answer["assumptions"], *said_of(ways)]
        texts += [one["says"] for one in answer["would_do"]] + [cell for row in table for cell in row]
        assert {text: left for text in texts if (left := left_of(text))} == {}
        assert [way["flight_s"] for way in answer["ways"]] == [way["flight_s"] for way in plain["ways"]]
        assert len(answer["words"]) == len(plain["words"])


def landed(habitat, over):
    scene = {"rimfall": 1, "habitat": habitat, "air": ROOM, "motions": [SERVE]}
    document = {"scene": scene, "motion": "Ysur", "over": over}
    return landings.find(read_landings(json.dumps(document)))


UP = {"field": "elevation_deg", "first": -10, "last": 80, "count": 10}
FAST = {"field": "speed_m_s", "first": 2, "last": 20, "count": 7}
ROUND = {"field": "heading_deg", "first": -180, "last": 180, "count": 9}


@each_row(
    ("habitat", "over"),
    [
        (WHEEL, [UP, FAST]),
        (WHEEL, [ROUND, UP]),
        (WHEEL, [ROUND, FAST]),
        (FLAT, [ROUND, FAST]),
        (TURNTABLE, [ROUND, UP]),
    ],
)
def test_landings_are_said_in_the_language_that_is_spoken(habitat, over):
    found = landed(habitat, over)
    for units in ("si", "us"):
        with speaking(MARKED):
            answer = landings.as_data(found, units)
            heading, table = rows_of_landings(found, units)
            note, columns = files.note(found, units), json.loads(files.notes(found))["landings"]["columns"]
        texts = [
            answer["short"],
            answer["caution"],
            *answer["words"],
            *answer["assumptions"],
            heading,
            note,
            *columns.values(),
        ]
        texts += [one["says"] for one in answer["farthest"].values() if one] + [cell for row in table for cell in row]
        texts += [one["label"] for one in (*answer["over"], *answer["net"]["lines"])]
        assert {text: left for text in texts if (left := left_of(text))} == {}
        assert len(answer["words"]) == len(landings.as_data(found, units)["words"])


TRACK = rows(*flown(60), sd=0.005)


STRAIGHT = [
    {"time_s": 0.1 * k, "along_m": 3.0 * k / 10, "height_m": 2.0 + 0.01 * k, "axial_m": 0.3 * k * k / 100}
    for k in range(20)
]
FALL = [{"time_s": t, "along_m": 0.0, "height_m": 2.0 - 2.75 * t * t} for t in np.linspace(0.0, 0.8, 30).tolist()]


@each_row(
    "asked",
    [
        {"track": TRACK},
        {"track": TRACK, "known": {"radius_m": 56.0, "spin_rpm": 3.0, "air": None}},
        {"track": TRACK, "known": {"radius_m": 40.0, "air": None}},
        {"track": TRACK, "known": {"radius_m": 56.0, "spin_rpm": 2.0, "air": None}},
        {"track": TRACK[:3]},
        {"track": FALL, "known": {"radius_m": 56.0, "air": None}},
        {"track": STRAIGHT, "known": {"air": None}},
        {"track": TRACK + [{**TRACK[-1], "time_s": 10.0 + k} for k in range(6)]},
    ],
)
def test_matches_are_said_in_the_language_that_is_spoken(asked):
    request = read_match(json.dumps({"accuracy_m": 0.005} | asked))
    with speaking(MARKED):
        answer = match.as_data(request)
    texts = [answer["says"], answer["short"], answer["caution"], *answer["words"], *answer["assumptions"]]
    texts += [one["says"] for one in (*answer["reasons"], *answer["changes"])]
    texts += [one["label"] for one in answer["fit"].values()] + (
        [answer["left_out"]["says"]] if answer["left_out"] else []
    )
    assert {text: left for text in texts if (left := left_of(text))} == {}
    assert answer["verdict"] == match.as_data(request)["verdict"]


SEEN = {"time_s": 0.0, "place": {"along_m": -2.0, "height_m": 1.5}, "field_of_view_deg": 40.0}


@each_row("view", ["aboard", "outside"])
@each_row("times", [[0.0], [0.0, 1.5]])
def test_cameras_are_said_in_the_language_that_is_spoken(view, times):
    seen = [SEEN | {"time_s": t, "look_at": {"along_m": 1.0 + t, "height_m": 1.5}} for t in times]
    document = {
        "scene": {"rimfall": 1, "habitat": WHEEL, "motions": []},
        "camera": {"name": "Ossa", "view": view, "rows": seen},
    }
    with speaking(MARKED):
        words = camera.of_request(read_camera(json.dumps(document)))["words"]
    assert [left_of(text) for text in words] == [""]


def refused(ask):
    """What is said where a question is refused."""
    with pytest.raises(Refused) as caught:
        ask()
    return [text for one in caught.value.refusals for text in (one.say, one.may_be)]


HEAD = b"time_s,x_m,y_m,z_m,vertical_fov_deg\n"


@each_row(
    "ask",
    [
        lambda: aimed({}, WHEEL, ASIDE, None),
        lambda: aimed({"flight_s": 500.0}, WHEEL, ASIDE, None),
        lambda: aimed({"speed_m_s": 9.0}, WHEEL, ASIDE | {"height_m": 40.0}, None),
        lambda: aimed({"speed_m_s": 9.0}, WHEEL, {"motion": "Ossa"}, None),
        lambda: landed(WHEEL, [UP, UP]),
        lambda: landed(WHEEL, [UP | {"last": -10}, FAST]),
        lambda: landed(WHEEL, [UP | {"count": 400}, FAST | {"count": 400}]),
        lambda: match.as_data(read_match(json.dumps({"track": TRACK[:2], "accuracy_m": 0.01}))),
        lambda: match.as_data(read_match(json.dumps({"track": TRACK}))),
        lambda: match.as_data(read_match(json.dumps({"track": [TRACK[0]] * 5, "accuracy_m": 0.01}))),
        lambda: tracks.tracks_in(b"time_s,along_m\n0,1\n", tracks.About()),
        lambda: tracks.tracks_in(b"time_s,along_m,height_m\n0,1,2\n1,x,2\n", tracks.About()),
        lambda: tracks.tracks_in(b"glTF" + bytes(40), tracks.About()),
        lambda: cameras.cameras_in(b"a,b\n1,2\n", cameras.About()),
        lambda: cameras.cameras_in(HEAD + b"0,1,2,3,40\n", cameras.About()),
        lambda: cameras.cameras_in(HEAD, cameras.About(origin="deck")),
    ],
)
def test_refusals_are_said_in_the_language_that_is_spoken(ask):
    english = refused(ask)
    with speaking(MARKED):
        marked = refused(ask)
    fields = re.compile(r"[a-z_.0-9]*_(?:m|s|deg|g|px|mm|m_s)\b|[a-z]+(?:\.[a-z0-9_]+)+")
    assert {text: left for text in marked if (left := left_of(fields.sub("", text)))} == {}
    unsigned = re.compile("[⟦⟧.,]")
    assert [unsigned.sub("", text) for text in marked] == [unsigned.sub("", text) for text in english]
