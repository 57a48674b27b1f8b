"""The JSON file keeps the design's axes: x out through the reference line, y spinward, z along the spin; metres."""

import json

import numpy as np
import pytest

from rimfall.exports.formats import FORMATS
from rimfall.exports.options import read_options
from rimfall.scene import examples
from rimfall.scene.reading import read
from tests.scene.documents import POINT, scene, throw, trace_of
from tests.tables import each_row


def written(document, **choices):
    found = read(json.dumps(document))
    trace, options = trace_of(found), read_options(choices, found)
    return json.loads(FORMATS["json"].write(trace, options), parse_constant=lambda name: pytest.fail(name))


def test_in_vacuum_the_inertial_places_are_a_straight_line_at_one_speed():
    file = written(scene(throw(9.0, 30.0, 40.0, POINT), air=None), view="inertial_flat", up="Y", unit="cm")
    ball = file["balls"][0]
    place, velocity = np.array(ball["position_m"]), np.array(ball["velocity_m_s"])
    times = np.array(file["time_s"])
    level = 9 * np.cos(np.radians(40))
    rho = 56 - 1.5
    first = [
        -9 * np.sin(np.radians(40)),
        level * np.cos(np.radians(30)) + rho * np.pi / 10,
        level * np.sin(np.radians(30)),
    ]
    flies = times <= times[-2]
    assert velocity[flies] == pytest.approx(np.tile(first, (flies.sum(), 1)), abs=1e-9)
    assert place[flies] == pytest.approx(np.array([rho, 0, 0]) + times[flies, None] * np.array(first), abs=1e-9)
    assert np.array(ball["acceleration_m_s2"])[flies] == pytest.approx(0, abs=1e-9)
    assert file["file"]["axes"].startswith("x out through the reference line")
    assert (file["file"]["unit"], file["file"]["spin_axis"], file["file"]["pivot"]) == ("m", "+Z", [0, 0, 0])


@each_row("name", examples.SAY)
def test_every_example_has_its_lists_and_its_scene(name):
    file = written(json.loads(examples.example(name)), fps=12)
    count = len(file["time_s"])
    assert len(file["frame"]) == len(file["angle_rad"]) == count
    assert all(np.shape(b["position_m"]) == (count, 3) for b in file["balls"])
    assert all(b["attitude_wxyz"] is None or np.shape(b["attitude_wxyz"]) == (count, 4) for b in file["balls"])
    if file["drops"] is not None:
        assert np.shape(file["drops"]["position_m"]) == (count, len(file["drops"]["ids"]), 3)
    assert read(json.dumps(file["scene"])) == read(examples.example(name))
    assert [m["name"] for m in file["motions"]] == [m.name for m in read(examples.example(name)).motions]
    assert all(m["events"][0]["kind"] == "release" and m["words"] for m in file["motions"])


def test_an_origin_at_a_place_is_told_with_the_floor_where_there_are_floors_and_a_floor_without_a_name_counts_from_one():
    def told(habitat, floor):
        found = read(json.dumps(scene(throw()) | {"habitat": habitat}))
        trace = trace_of(found)
        origin = {"along_m": 1.5, "height_m": 0.0, "axial_m": -0.5, "floor": floor}
        return json.loads(FORMATS["notes"].write(trace, read_options({"origin": origin}, found)))["file"]["origin"]

    pods = {"shape": "pods", "radius_m": 24.0, "spin_rpm": 4.0, "floors": [{"name": "Bunks"}, {"azimuth_deg": 180.0}]}
    assert told(pods, 0) == "at the place 1.5 m along, 0 m up, -0.5 m axial on Bunks, where that is at time 0"
    assert told(pods, 1) == "at the place 1.5 m along, 0 m up, -0.5 m axial on Floor 2, where that is at time 0"
    drum = {"radius_m": 24.0, "spin_rpm": 4.0}
    assert told(drum, 0) == "at the place 1.5 m along, 0 m up, -0.5 m axial, where that is at time 0"


def test_the_same_twice_is_the_same_bytes():
    found = read(examples.example("galley"))
    trace, options = trace_of(found), read_options({}, found)
    assert FORMATS["json"].write(trace, options) == FORMATS["json"].write(trace, options)
