"""The forces: a solver that is given nothing but this file and its formula flies a body along the program's own path.

The solver is scipy's DOP853, the formula evaluated as its text says, with numpy's cross product, in the file's axes and unit.
"""

import csv
import io
import json

import numpy as np
import pytest
from scipy.integrate import solve_ivp
from scipy.interpolate import CubicSpline

from rimfall.exports.formats import FORMATS
from rimfall.exports.options import read_options
from rimfall.scene import examples
from rimfall.scene.reading import read
from tests.kinds.test_tumble import SKEW, tumble
from tests.scene.documents import POINT, scene, throw, trace_of
from tests.tables import each_row
from tests.vectors import cross

RAMP = [{"time_s": 4.0, "spin_rpm": 5.0}]


def written(document, **choices):
    found = read(json.dumps(document))
    trace, options = trace_of(found), read_options(choices, found)
    table = FORMATS["forces-csv"].write(trace, options).decode()
    rows = list(csv.DictReader(io.StringIO(table)))
    columns = {name: np.array([float(row[name]) for row in rows]) for name in rows[0]}
    paths = FORMATS["csv"].write(trace, options).decode()
    body = np.array([[float(v) for v in row] for row in list(csv.reader(io.StringIO(paths)))[1:]])
    return columns, json.loads(FORMATS["forces-notes"].write(trace, options)), body


def vector(columns, name, end):
    return np.stack([columns[f"{name}_{c}_{end}"] for c in "xyz"], axis=1)


@each_row(
    ("habitat", "choices"),
    [
        ({}, {}),
        ({}, {"up": "Z", "unit": "cm", "origin": "release"}),
        ({"spin_ramp": RAMP}, {"origin": {"along_m": 20.0, "height_m": 3.0, "axial_m": 1.0}}),
        ({"axial_thrust_m_s2": 0.7}, {"up": "Z"}),
    ],
)
def test_a_solver_fed_with_the_file_flies_the_same_path(habitat, choices):
    document = scene(throw(8.0, 40.0, 50.0, POINT), air=None, habitat=habitat)
    columns, notes, body = written(document, fps=240, **choices)
    times, unit = columns["time_s"], choices.get("unit", "m")
    omega, change = vector(columns, "omega", "rad_s"), vector(columns, "omega_dot", "rad_s2")
    centre, pull = np.array(notes["centre"]), np.array(notes[f"pull_{unit}_s2"])
    assert notes["formula"] == "a = -2 Ω×u - Ω×(Ω×r) - Ω̇×r + pull"

    def moves(t, state):
        spin = np.array([np.interp(t, times, omega[:, k]) for k in range(3)])
        r, u = state[:3] - centre, state[3:]
        own = -2 * cross(spin, u) - cross(spin, cross(spin, r)) - cross(change[0], r) + pull
        return np.concatenate([u, own])

    flies = times < times[-1] - 0.05
    flown = solve_ivp(
        moves, (0, times[flies][-1]), body[0, 4:], t_eval=times[flies], method="DOP853", rtol=1e-10, atol=1e-10
    )
    scale = 100 if unit == "cm" else 1
    assert flown.y[:3].T / scale == pytest.approx(body[flies, 4:7] / scale, abs=2e-5)


@each_row("choices", [{}, {"up": "Z", "unit": "cm", "origin": "release"}])
def test_a_solver_fed_with_the_file_flies_in_a_craft_that_tumbles(choices):
    """The vectors of every sample taken along, by a spline; and the formula's parts at the first."""
    document = scene(
        tumble(0.6, -0.4, losses_s=30.0),
        throw(6.0, 40.0, 50.0, POINT),
        air=None,
        craft=SKEW,
        sampling={"duration_s": 9.0},
    )
    columns, notes, rows = written(document, fps=60, **choices)
    times, unit, scale = columns["time_s"], choices.get("unit", "m"), 100 if "unit" in choices else 1
    turns = CubicSpline(times, np.hstack([vector(columns, "omega", "rad_s"), vector(columns, "omega_dot", "rad_s2")]))
    centre, track = np.array(notes["centre"]), trace_of(read(json.dumps(document))).motions[1].track

    def own(t, r, u):
        spin, change = np.split(turns(t), 2)
        return -2 * cross(spin, u), -cross(spin, cross(spin, r)), -cross(change, r)

    body = rows[rows[:, 2] == 1]
    flies = body[:, 1] < track.ends_s - 0.05
    flown = solve_ivp(
        lambda t, s: np.concatenate([s[3:], sum(own(t, s[:3] - centre, s[3:]))]),
        (0, body[flies, 1][-1]),
        body[0, 4:],
        t_eval=body[flies, 1],
        method="DOP853",
        rtol=1e-10,
        atol=1e-10,
    )
    assert flown.y[:3].T / scale == pytest.approx(body[flies, 4:7] / scale, abs=2e-5)
    worked = notes["worked"]
    r, u = np.array(worked[f"position_{unit}"]) - centre, np.array(worked[f"velocity_{unit}_s"])
    for name, part in zip(("coriolis", "centrifugal", "euler"), own(0.0, r, u), strict=True):
        assert worked[f"{name}_{unit}_s2"] == pytest.approx(part, abs=1e-6 * scale)


@each_row("name", ["same-lob", "spin-up", "on-the-bench", "three-pods", "under-thrust"])
def test_the_worked_number_is_the_formula(name):
    _, notes, _ = written(json.loads(examples.example(name)))
    worked = notes["worked"]
    spin, u = np.array(worked["omega_rad_s"]), np.array(worked["velocity_m_s"])
    r = np.array(worked["position_m"]) - np.array(notes["centre"])
    assert worked["coriolis_m_s2"] == pytest.approx(-2 * np.cross(spin, u), abs=1e-12)
    assert worked["centrifugal_m_s2"] == pytest.approx(-np.cross(spin, np.cross(spin, r)), abs=1e-12)
    parts = (worked[f"{part}_m_s2"] for part in ("coriolis", "centrifugal", "euler", "pull"))
    assert worked["sum_m_s2"] == pytest.approx(np.sum(list(parts), axis=0), abs=1e-12)


def test_the_angle_is_the_integral_of_the_spin():
    columns, _, _ = written(scene(throw(), habitat={"spin_ramp": RAMP}), fps=240)
    spin = columns["omega_z_rad_s"]
    summed = np.concatenate([[0], np.cumsum((spin[1:] + spin[:-1]) / 2 * np.diff(columns["time_s"]))])
    assert columns["angle_rad"] == pytest.approx(summed, abs=1e-6)
    assert columns["omega_dot_z_rad_s2"][0] == pytest.approx(2 * 2 * np.pi / 60 / 4)


@each_row(
    ("habitat", "air", "body"),
    [
        ({}, {}, "handball"),
        (
            {"radius_m": 8.0, "spin_rpm": 11.0},
            {"pressure_kpa": 70.0, "temperature_c": 5.0},
            {"mass_kg": 0.02, "diameter_m": 0.05, "drag": 0.6},
        ),
        ({"shape": "turntable", "radius_m": 2.0, "spin_rpm": 12.0}, {}, "table-tennis ball"),
    ],
)
def test_a_solver_fed_with_the_air_too_flies_what_air_slows(habitat, air, body):
    document = scene(throw(4.0, 40.0, 30.0, body, place={"height_m": 0.9, "axial_m": 0.5}), air=air, habitat=habitat)
    columns, notes, path = written(document, fps=240)
    air, times = notes["air"], columns["time_s"]
    omega, axis = vector(columns, "omega", "rad_s")[0], np.array(notes["axis"])
    centre, pull = np.array(notes["centre"]), np.array(notes["pull_m_s2"])
    table, (about,) = np.log(air["sphere_re_cd"]).T, air["bodies"]

    def density(r):
        if not air["turns_with_the_frame"]:
            return air["density_kg_m3"]
        out = np.linalg.norm(r - (r @ axis) * axis)
        thin = omega @ omega / (2 * air["gas_constant_j_kg_k"] * air["temperature_k"])
        return air["density_kg_m3"] * np.exp(thin * (out**2 - air["at_radius_m"] ** 2))

    def slowed(w, rho):
        fast = np.linalg.norm(w)
        re = rho * fast * about["diameter_m"] / air["viscosity_pa_s"]
        cd = np.exp(np.interp(np.log(re), *table)) if about["cd"] == "sphere" else about["cd"]
        return -np.pi / 8 * about["diameter_m"] ** 2 * rho * cd * fast * w / about["mass_kg"]

    def moves(_, state):
        r, u = state[:3] - centre, state[3:]
        own = -2 * cross(omega, u) - cross(omega, cross(omega, r)) + pull
        w = u if air["turns_with_the_frame"] else u + cross(omega, r)
        return np.concatenate([u, own + slowed(w, density(r))])

    flies = times < min(e["time_s"] for e in notes["events"] if e["surface"] or e["kind"] == "edge") - 0.01
    flown = solve_ivp(moves, (0, times[flies][-1]), path[0, 4:], t_eval=times[flies], rtol=1e-9, atol=1e-10)
    freely = lambda t, s: np.concatenate([s[3:], moves(t, s)[3:] - slowed(s[3:], density(s[:3] - centre))])  # noqa: E731
    free = solve_ivp(freely, (0, times[flies][-1]), path[0, 4:])
    assert path[flies, 4:7] == pytest.approx(flown.y[:3].T, abs=5e-5)
    assert np.linalg.norm(free.y[:3, -1] - flown.y[:3, -1]) > 2e-3, "the air matters"
    worked = about["worked"]
    assert slowed(np.array([10.0, 0, 0]), air["density_kg_m3"])[0] == pytest.approx(worked["a_air_m_s2"], rel=1e-3)


def test_in_vacuum_there_is_no_air_to_tell_of():
    assert written(scene(throw(body=POINT), air=None))[1]["air"] is None
