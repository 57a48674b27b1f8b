"""What the page is told of the figures of aim, landings, match and cameras is what their requests take."""

import json

from pydantic import ValidationError

from rimfall.scene.catalogue import catalogue
from rimfall.scene.reading import read_landings
from rimfall.scene.shot.aim_request import AimRequest
from rimfall.scene.shot.camera_request import PlacedCamera
from rimfall.scene.shot.landings_request import LandingsRequest
from rimfall.scene.shot.match_request import MatchRequest
from tests.scene.documents import refusals
from tests.scene.test_document import BASE
from tests.tables import each_row

FIELDS = catalogue()["fields"]
PLACE = {"along_m": 0.0, "height_m": 1.0, "axial_m": 0.0}
ON_FLOOR = PLACE | {"floor": 0}
CAMERA = {
    "field_of_view_deg": 60,
    "width_px": 1920,
    "height_px": 1080,
    "roll_deg": 0,
    "time_s": 0,
    "position": PLACE,
    "look_at": PLACE,
}
PICTURE = {
    "points": [{"frame": 0, "time_s": 0, "x_px": 1.0, "y_px": 1.0}], "fps": 24, "camera": CAMERA,
    "plane": {"from_px": [0, 0], "to_px": [0, 9], "distance_m": 1.75},
}  # fmt: skip
BODY = dict.fromkeys(("mass_kg", "diameter_m", "drag_area_m2", "restitution", "friction", "rolling_resistance"), 0.5)
KNOWN = {
    "radius_m": 56.0, "spin_rpm": 3.0, "gravity_g": None, "start": PLACE, "speed": 6.0, "body": BODY,
    "air": {"pressure_kpa": 100, "temperature_c": 20},
}  # fmt: skip
FIXED = dict.fromkeys(("speed_m_s", "elevation_deg", "flight_s"))
LENS = {"time_s": 0, "roll_deg": 0, "field_of_view_deg": 60, "focal_length_mm": 35}
VARIED = ("speed_m_s", "heading_deg", "elevation_deg")
REQUESTS = {  # with all that may be stated, and the model that takes it
    "aim": (AimRequest, {"scene": BASE, "motion": "x", "to": ON_FLOOR, "within_m": 0.1, "fixed": FIXED, "flight_max_s": 9}),
    "camera": (PlacedCamera, {"film_back": {"width_mm": 36, "height_mm": 24}, "rows": [LENS | {"place": ON_FLOOR, "look_at": ON_FLOOR}]}),
    "match": (
        MatchRequest,
        {
            "track": [PLACE | {"time_s": 0}], "picture": PICTURE, "keys": {"rows": [dict.fromkeys(("time_s", "x_m", "y_m", "z_m"), 0)]},
            "accuracy_m": 1, "accuracy_px": 1, "playback_fps": 24, "known": KNOWN,
        },
    ),
}  # fmt: skip
REQUESTS |= {
    f"landings.over.{figure}": (
        LandingsRequest,
        {"scene": BASE, "motion": "x", "over": [{"field": name, "first": 0, "last": 1, "count": 2} for name in (figure, "heading_deg")]},
    )
    for figure in VARIED
}  # fmt: skip
NUMBERS = [name for name, said in FIELDS.items() if said["kind"] in ("number", "fps") and name.startswith((*REQUESTS,))]


def takes(model, document, path, value):
    """Whether a request may have a value at a path; what is refused must be that."""
    document = json.loads(json.dumps(document))
    *way, last = (int(key) if key.isdigit() else key for key in path.split("."))
    part = document
    for key in way:
        part = part[key]
    part[last] = value
    try:
        model.model_validate_json(json.dumps(document))
    except ValidationError as refused:
        return last not in {error["loc"][-1] for error in refused.errors()}
    return True


@each_row("name", NUMBERS)
def test_a_range_told_is_that_which_is_taken(name):
    """At either end a figure is taken, beyond them it is not; what a control shows lies within."""
    said, question = FIELDS[name], next(one for one in REQUESTS if name.startswith(one))
    path = name.removeprefix(f"{question}.").replace("*", "0")
    path = path if "over" not in question else f"over.0.{path}"
    low, high, above = said["min"], said["max"], said["above_min"]
    step = {"fps": 0.01}.get(said["kind"]) or (1 if said["whole"] else 1e-9 * max(abs(low), abs(high)))
    ends = [(low, not above), (low + step, True), (high, True), (low - step, False), (high + step, False)]
    assert [takes(*REQUESTS[question], path, value) for value, _ in ends] == [taken for _, taken in ends]
    assert said["label"]
    assert said["may_be"]
    if said["shown"] and not name.endswith("pressure_kpa"):
        assert low <= said["shown"]["min"] < said["shown"]["max"] <= high


def numbers(value, at):
    """Paths of all that is no text and no pixel."""
    if isinstance(value, dict):
        return {path for key, one in value.items() if key != "scene" for path in numbers(one, f"{at}.{key}")}
    if isinstance(value, list):
        return {path for one in value for path in numbers(one, f"{at}.*") if not at.endswith("_px")}
    return set() if isinstance(value, str) else {at}


def test_every_figure_is_told():
    held = {path for question in ("aim", "camera", "match") for path in numbers(REQUESTS[question][1], question)}
    assert {name for name in NUMBERS if not name.startswith("landings")} == held
    units = {"speed_m_s": "m/s", "heading_deg": "°", "elevation_deg": "°"}
    told = {name: FIELDS[name]["unit"] for name in NUMBERS if name.startswith("landings")}
    assert told == {f"landings.over.{f}.{end}": unit for f, unit in units.items() for end in ("first", "last")} | {
        f"landings.over.{f}.count": "" for f in units
    }
    pixels = ("from_px", "to_px", "deck_px", "up")
    assert {FIELDS[f"match.picture.plane.{name}"]["kind"] for name in pixels} == {"pixel"}


@each_row(
    ("figure", "label", "unit"),
    [(VARIED[0], "speed", "m/s"), (VARIED[1], "heading", "°"), (VARIED[2], "elevation", "°")],
)
def test_what_is_missing_or_wrong_of_a_figure_that_varies_is_told_as_that_figure_s(figure, label, unit):
    ends = {"field": figure, "count": 2}
    request = {"scene": BASE, "motion": "x", "over": [ends | {"first": 9000, "last": 0}, ends | {"first": 0}]}
    wrong, missing = refusals(request, read_landings)
    assert wrong.field == "over.0.first"
    assert wrong.say.startswith(f"First {label} was 9000 {unit}; it must be ")
    assert missing.field == "over.1.last"
    assert missing.say.startswith(f"Last {label} is missing; it must be ")
    assert missing.say.endswith(f" {unit}.")
