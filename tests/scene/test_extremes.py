"""Every number of a document at the ends of what a float can be: refused by name, or answered in finite figures and without a warning.

Through the functions that the API's routes call, so that what passes here is no 500 there.
"""

import itertools
import json
import sys

import pytest

from rimfall.errors import Refused
from rimfall.kinds import KINDS
from rimfall.scene.catalogue import FIELDS
from rimfall.scene.described import walk
from rimfall.scene.reading import read, read_feel
from rimfall.scene.size.request import BOUNDS, QUANTITY_NAMES
from rimfall.shapes import SHAPES
from rimfall.web.work import WORK
from tests.scene import documents
from tests.scene.documents import changed

ENDS = (5e-324, 1e-300, -0.0, 1e300, sys.float_info.max)
TRACE = {"arrays": "lists", "units": "si", "hold": None, "held": None, "follower": "habitat.spin_rpm"}
HALF_A_SECOND = {"sampling": {"duration_s": 0.5, "fps": 10}}
AIR = {"air": {"pressure_kpa": 101.325, "temperature_c": 20.0}}
PARTS = {  # what a new motion of a kind leaves out
    "pour": {
        "duration_s": 0.1,
        "target": {"along_m": 0.3},
        "tilt": [{"time_s": 1.0, "elevation_deg": -20.0, "flow_ml_s": 10.0}],
    },
    "roll": {"ramp": {"slope_deg": 10.0}},
    "throw": {"carried": {"speed_m_s": 1.0}},
}
BODY = {"mass_kg": 0.1, "diameter_m": 0.05, "drag_area_m2": 0.01}
SMALL = {"radius_m": 2.0, "spin_rpm": 20.0}
PERSON = {"height_m": 1.75}


def answered(work, document, **options):
    """Asked; a refusal must name a field, an answer must be finite. A warning is an error in all tests."""
    try:
        body = WORK[work](json.dumps(document).encode(), lambda *_: None, **options).body
        if work != "export":
            json.loads(body, parse_constant=_not_finite)
    except Refused as refused:
        check_names_fields(refused)
    except Exception as error:
        error.add_note(f"{work} of {json.dumps(document)}")
        raise


def _not_finite(name):
    raise AssertionError(f"{name} in an answer")


def stands(document, reads):
    try:
        reads(json.dumps(document))
    except Refused as refused:
        check_names_fields(refused)
        return False
    return True


def check_names_fields(refused):
    assert all(one.field and one.say for one in refused.refusals)


def numbers(model, prefix):
    """The paths of a model's numbers, the first of every list."""
    for path, field in walk(model):
        if (field.json_schema_extra or {}).get("kind") == "number":
            yield prefix + path.replace("*", "0")


@pytest.mark.parametrize("kind", KINDS)
def test_motions(kind):
    motion = {"kind": kind, **KINDS[kind].new, **PARTS.get(kind, {})}
    if "body" in motion:
        motion["body"] = BODY
    base = documents.scene(motion, **HALF_A_SECOND, **AIR)
    assert stands(base, read), "what is changed must stand before"
    for path, value in itertools.product(numbers(KINDS[kind].fields, "motions.0."), ENDS):
        document = changed(base, path, value)
        if stands(document, read):
            answered("trace", document, **TRACE)


@pytest.mark.parametrize("shape", SHAPES)
def test_habitats_and_those_in_them(shape):
    more = SMALL if shape == "turntable" else {"decks": [{"name": "A", "radius_m": 40.0}]}
    ramp = {"spin_ramp": [{"time_s": 0.2, "spin_rpm": 4.0}]}
    habitat = documents.WHEEL | ramp | {"shape": shape, **SHAPES[shape].NEW, **more}
    base = documents.scene(documents.drop(0.5), **HALF_A_SECOND) | {"habitat": habitat}
    base |= {"own_limits": [{"quantity": "gravity", "bound": "at_most", "value": 1.0}], **AIR}
    assert stands(base, read), "what is changed must stand before"
    paths = [*numbers(SHAPES[shape], "habitat.")]
    if shape == "cylinder":
        paths += [
            p.replace("*", "0")
            for p, f in FIELDS.items()
            if p.startswith(("air.", "person.", "own_", "sampling.")) and f["kind"] == "number"
        ]
    for path, value in itertools.product(paths, ENDS):
        document = changed(base, path, value)
        if stands(document, read_feel):
            answered("feel", document, units="us")
            if path.startswith("habitat."):
                answered("mesh", document)
            if shape == "cylinder" and path.startswith(("habitat.", "own_")):
                answered("map", document, width=600, draw=[], units="si")
            if not path.startswith(("person.", "own_")):
                answered("trace", document, **TRACE)


def test_exports():
    base = documents.scene(documents.throw(), **HALF_A_SECOND)
    for field, value in itertools.product(("fps", "shown_fps", "first_frame", "from_s", "to_s"), ENDS):
        answered("export", {"scene": base, "export": {field: value}}, name="csv", packed=False)
        answered("plot", {"scene": base, "export": {field: value}}, width=600, plain=True, units="si")
    for field, value in itertools.product(("along_m", "height_m", "axial_m"), ENDS):
        answered("export", {"scene": base, "export": {"origin": {field: value}}}, name="forces-notes", packed=False)
    for hold, value, follower in itertools.product(
        ("gravity", "rim_speed"), ENDS, ("habitat.spin_rpm", "habitat.radius_m")
    ):
        answered("trace", base, **TRACE | {"hold": hold, "held": value, "follower": follower})


def wish(quantity, bound, value):
    return {"kind": "figure", "quantity": quantity, "bound": bound, "value": value}


def test_wishes_alone_and_in_pairs():
    """5e-324 was a ZeroDivisionError or an OverflowError in 453 of these."""
    for quantity, bound, value in itertools.product(QUANTITY_NAMES, BOUNDS, (*ENDS, 1e6)):
        answered("size", {"wishes": [wish(quantity, bound, value)]}, units="us")
    for one, other in itertools.permutations(QUANTITY_NAMES, 2):
        for bounds in itertools.product(BOUNDS, repeat=2):
            for value in (5e-324, 1.0):
                wishes = [wish(one, bounds[0], 5e-324), wish(other, bounds[1], value)]
                answered("size", {"wishes": wishes}, units="si")


def test_persons_who_hardly_move_find_a_size():
    moves = [path.removeprefix("person.") for path in FIELDS if path.startswith("person.")]
    for field, value in itertools.product(moves, ENDS):
        for quantity in ("coriolis", "head_turn", "gradient"):
            wishes = [wish(quantity, "exactly", 0.5), wish("spin", "at_most", 3.0)]
            answered("size", {"wishes": wishes, "person": PERSON | {field: value}}, units="si")
