"""Where throws come down: each as `trace` has that throw, in vacuum the straight line that meets a circle, in air scipy's integrator."""

import json
import math
import re

import numpy as np
import pytest
from scipy.integrate import solve_ivp

import rimfall
from rimfall.errors import BadInput, Refused
from rimfall.physics import budget
from rimfall.scene.reading import read_landings
from rimfall.scene.shot import landings
from rimfall.shots import net
from rimfall.shots.landings import ENDINGS
from tests.tables import each_row

PLACE = {"along_m": 3.0, "height_m": 1.5, "axial_m": 0.5}
THROW = {
    "kind": "throw",
    "name": "serve",
    "start_s": 0.4,
    "place": PLACE,
    "body": "handball",
    "speed_m_s": 6.0,
    "elevation_deg": 35.0,
}
ELEVATION = {"field": "elevation_deg", "first": -20, "last": 85, "count": 22}
HEADING = {"field": "heading_deg", "first": -180, "last": 150, "count": 12}
SPEED = {"field": "speed_m_s", "first": 1, "last": 25, "count": 13}
WHEEL = {"radius_m": 30.0, "spin_rpm": 4.0}
SPIN_UP = [{"time_s": 1.0, "spin_rpm": 4.0}, {"time_s": 3.0, "spin_rpm": 2.0}]
FLOOR = {"name": "A", "radius_m": 30.0, "azimuth_deg": 0.0, "length_m": 20.0, "width_m": 8.0}
SCENES = {
    "ceiling and walls, in air": {"habitat": WHEEL | {"width_m": 20.0, "ceiling_m": 6.0}},
    "hub, ramp, no air": {"habitat": WHEEL | {"hub_radius_m": 4.0, "spin_ramp": SPIN_UP}, "air": None},
    "thrust, and an end before most land": {
        "habitat": WHEEL | {"axial_thrust_m_s2": 1.0},
        "sampling": {"duration_s": 1.4},
    },
    "torus": {"habitat": {"shape": "torus", "radius_m": 30.0, "spin_rpm": 4.0, "tube_radius_m": 6.0}},
    "sphere": {"habitat": {"shape": "sphere", "radius_m": 30.0, "spin_rpm": 4.0}},
    "pods": {"habitat": {"shape": "pods", "radius_m": 30.0, "spin_rpm": 4.0, "floors": [FLOOR]}},
    "turntable": {"habitat": {"shape": "turntable", "radius_m": 6.0, "spin_rpm": 8.0}},
}
SHOWS = {
    "ceiling and walls, in air": ("landed", "ceiling", "wall"),
    "hub, ramp, no air": ("landed", "hub"),
    "thrust, and an end before most land": ("landed", "never"),
    "turntable": ("landed", "edge"),
}
STOPS = ("deck", "floor", "ceiling", "hub", "wall", "edge")


def document(more=(), motion=()):
    return {"rimfall": 1, "motions": [THROW | dict(motion)], **dict(more)}


def found(scene, *over, watch=None):
    request = {"scene": scene, "motion": "serve", "over": over or (ELEVATION, SPEED)}
    return landings.find(read_landings(json.dumps(request)), watch)


@each_row("name", SCENES)
def test_each_is_what_trace_makes_of_that_throw(name):
    scene = document({"sampling": {"duration_s": 15.0, "fps": 48}} | SCENES[name])
    seen = set()
    for over in ((HEADING, SPEED), (ELEVATION, HEADING)):
        here = found(scene, *over).landings
        shuffled = np.random.default_rng(15).permutation(len(here.ended))
        firsts = [
            shuffled[here.ended[shuffled] == ending][:2] for ending in np.unique(here.ended)
        ]  # two of each ending
        picked = np.unique(np.concatenate([*firsts, shuffled[: 8 - sum(map(len, firsts))]]))
        motions = [
            THROW | {"name": str(k)} | {field: float(values[k]) for field, values in here.figures.items()}
            for k in picked
        ]
        traced = rimfall.trace(rimfall.open_scene(scene | {"motions": motions}))
        answer = json.loads(rimfall.scene.answers.of_trace(rimfall.scene.questions.trace(traced.scene)))
        for k, motion in zip(picked, answer["motions"], strict=True):
            event = next((e for e in motion["events"] if e["kind"] in STOPS), motion["last"] | {"kind": "never"})
            ended = {"deck": "landed", "floor": "landed"}.get(event["kind"], event["kind"])
            assert ENDINGS[here.ended[k]] == ended, (name, k)
            seen.add(ended)
            place = [event[field] for field in ("along_m", "height_m", "axial_m")]
            assert np.allclose(here.place_m[k], place, rtol=0, atol=2e-6), (name, k)
            assert abs(here.time_s[k] - event["time_s"]) < 1e-7
            assert abs(here.speed_m_s[k] - event["speed_m_s"]) < 1e-6
            way = (here.turns[k], here.spinward_m[k], here.across_m[k])
            assert np.allclose(
                way, [event["way"][field] for field in ("turns", "spinward_m", "axial_m")], rtol=0, atol=3e-6
            )
            if event.get("incidence_deg") is not None and ended != "edge":
                assert abs(here.incidence_deg[k] - event["incidence_deg"]) < 1e-5
    assert seen >= set(SHOWS.get(name, ("landed",))), seen


def test_in_vacuum_each_is_a_straight_line_that_meets_the_deck():
    """Thrown in the plane of rotation in a bare wheel: the first root of |r + v t| = R, and the azimuth swept less the deck's turning."""
    radius, omega = 30.0, 4.0 * math.tau / 60
    rho, azimuth = radius - PLACE["height_m"], PLACE["along_m"] / radius
    for heading_deg, slowest, turns in ((0.0, 1, {0}), (180.0, 12.5, set(range(-4, 1)))):
        point = {"start_s": 0.0, "heading_deg": heading_deg, "body": {"mass_kg": 1.0, "diameter_m": 0.0}}
        scene = document({"habitat": WHEEL, "air": None}, point)
        here = found(scene, ELEVATION | {"count": 106}, SPEED | {"first": slowest, "count": 97}).landings
        up, speed = np.radians(here.figures["elevation_deg"]), here.figures["speed_m_s"]
        # along the radius and along the rim
        out, round_ = -speed * np.sin(up), omega * rho + speed * np.cos(up) * math.cos(math.radians(heading_deg))
        fast2, closing = out**2 + round_**2, rho * out
        time_s = (np.sqrt(closing**2 + fast2 * (radius**2 - rho**2)) - closing) / fast2
        swept = np.arctan2(round_ * time_s, rho + out * time_s)
        assert len(here.ended) == 106 * 97
        assert np.all(here.ended == 0)
        assert np.abs(here.time_s - time_s).max() < 1e-9
        assert np.abs(here.place_m[:, 0] - radius * (azimuth + swept - omega * time_s)).max() < 1e-8
        assert np.abs(here.place_m[:, 1:] - [0.0, PLACE["axial_m"]]).max() < 1e-8
        assert np.all(here.round_m == pytest.approx(math.tau * radius))
        assert set(here.turns) == turns
        assert np.abs(here.in_all_m - radius * (swept - omega * time_s)).max() < 1e-8


def test_in_air_each_is_what_scipy_has():
    """Constant drag in air that turns with the wheel and thins toward the axis, in the inertial frame; the landing is solve_ivp's event."""
    body = {"mass_kg": 0.2, "diameter_m": 0.1, "drag": 0.47}
    scene = document(
        {"habitat": WHEEL, "air": {"pressure_kpa": 101.325, "temperature_c": 20.0}}, {"start_s": 0.0, "body": body}
    )
    here = found(scene).landings
    radius, omega = 30.0, 4.0 * math.tau / 60
    gas_k = 287.05 * 293.15
    factor = 0.5 * 0.47 * math.pi / 4 * 0.1**2 / 0.2 * 101_325.0 / gas_k

    def moves(_, state):
        position, velocity = state[:3], state[3:]
        wind = np.array([-omega * position[1], omega * position[0], 0.0]) - velocity
        thin = math.exp(-(omega**2) * (radius**2 - position[0] ** 2 - position[1] ** 2) / (2 * gas_k))
        return [*velocity, *(factor * thin * np.linalg.norm(wind) * wind)]

    def lands(_, state):
        return radius - 0.05 - math.hypot(*state[:2])

    lands.terminal, lands.direction = True, -1
    azimuth, rho = PLACE["along_m"] / radius, radius - PLACE["height_m"]
    outward, along = (
        np.array([math.cos(azimuth), math.sin(azimuth), 0.0]),
        np.array([-math.sin(azimuth), math.cos(azimuth), 0.0]),
    )
    for k in (0, 60, 130, 200, 285):
        speed, up = here.figures["speed_m_s"][k], math.radians(here.figures["elevation_deg"][k])
        velocity = (omega * rho + speed * math.cos(up)) * along - speed * math.sin(up) * outward
        start = [*(rho * outward + [0, 0, PLACE["axial_m"]]), *velocity]
        flown = solve_ivp(moves, (0, 60), start, "DOP853", events=lands, rtol=1e-12, atol=1e-12)
        (time_s,), (state,) = flown.t_events[0], flown.y_events[0]
        x, y = state[0], state[1]
        swept = math.atan2(y, x) - azimuth - omega * time_s
        gone = radius * ((swept + math.pi) % math.tau - math.pi)
        assert abs(here.time_s[k] - time_s) < 1e-6
        assert abs(here.spinward_m[k] - gone) < 1e-5


def test_the_net_is_cut_where_the_ceiling_stops_a_throw():
    for over in ((ELEVATION, SPEED), (ELEVATION | {"first": 85, "last": -20}, SPEED)):
        here = found(document(SCENES["ceiling and walls, in air"]), *over)
        rows, columns = here.landings.shape
        ended = here.landings.ended.reshape(rows, columns)
        assert here.up == "elevation_deg"  # all in the plane of rotation: on one line of the deck
        for line in here.net:
            along = ended[:, line.at]
            assert line.of == 1
            drawn = np.concatenate([np.arange(run.first, run.last + 1) for run in line.runs])
            assert np.array_equal(drawn, np.flatnonzero(along == 0))
            for run in line.runs:
                assert run.after == (None if run.last == rows - 1 else ENDINGS[along[run.last + 1]])
                assert run.before == (None if run.first == 0 else ENDINGS[along[run.first - 1]])
        assert "ceiling" in {end for line in here.net for run in line.runs for end in (run.before, run.after)}
    plan = found(document({"habitat": SCENES["thrust, and an end before most land"]["habitat"]}), HEADING, SPEED)
    assert plan.up is None
    assert {line.of for line in plan.net} == {0, 1}


@each_row(
    ("first", "last", "count", "values"),
    [
        (0, 80, 81, range(0, 81, 10)),
        (2, 20, 73, range(2, 21, 2)),
        (-90, 90, 73, [-90, *range(-80, 81, 20), 90]),
        (0, 1, 5, [0, 0.25, 0.5, 0.75, 1]),
    ],
)
def test_lines_stand_at_round_values(first, last, count, values):
    every = np.linspace(first, last, count)
    assert every[net.chosen(every)] == pytest.approx(list(values))


def test_every_count_is_told_and_the_farthest_are_the_farthest():
    here = found(document(SCENES["ceiling and walls, in air"]), HEADING, SPEED)
    answer = landings.as_data(here)
    assert sum(answer["counts"].values()) == 12 * 13
    landed = here.landings.landed
    for name, far in (
        ("spinward", here.landings.in_all_m),
        ("antispinward", -here.landings.in_all_m),
        ("across", here.landings.across_m),
    ):
        one = answer["farthest"][name]
        assert far[one["number"]] == far[landed].max()
        assert one["number"] == one["row"] * 13 + one["column"]
    first = answer["words"][0]
    assert first.startswith(f"{answer['counts']['landed']} of 156 throws come down on the deck, from ")
    said = " ".join(answer["words"])
    assert f"The ceiling stops {answer['counts']['ceiling']}" in said
    assert f"The end walls stop {answer['counts']['wall']}" in said
    for name, way in (("spinward", "spinward_m"), ("antispinward", "spinward_m"), ("along the axis", "axial_m")):
        one = answer["farthest"]["across" if name == "along the axis" else name]
        figures = re.search(
            rf"Farthest {name} goes the throw at ([\d.]+) m/s, [^:]+: ([\d.]+) m after ([\d.]+) s",
            said.replace("\u00a0", " "),
        )
        told = [one["speed_m_s"], abs(one["way"][way]), one["flight_s"]]
        assert [float(figure) for figure in figures.groups()] == pytest.approx(told, abs=0.05)
    assert len(answer["short"]) <= 18


@each_row(
    ("change", "field"),
    [
        ({"motion": "tea"}, "motion"),
        ({"over": [ELEVATION]}, "over"),
        ({"over": [ELEVATION, ELEVATION]}, "over.1.field"),
        ({"over": [ELEVATION | {"first": -91}, SPEED]}, "over.0.first"),
        ({"over": [SPEED | {"last": 3001}, ELEVATION]}, "over.0.last"),
        ({"over": [ELEVATION | {"last": -20}, SPEED]}, "over.0.last"),
        ({"over": [ELEVATION | {"count": 1}, SPEED]}, "over.0.count"),
        ({"over": [ELEVATION | {"field": "height_m"}, SPEED]}, "over.0.field"),
        ({"over": [ELEVATION | {"count": 200}, SPEED | {"count": 201}]}, "over"),
        ({"scene": document({"habitat": WHEEL, "sampling": {"duration_s": 0.4}})}, "sampling.duration_s"),
        ({"scene": document({"habitat": WHEEL}, {"place": {"height_m": 40.0}})}, "motions.0.place.height_m"),
        ({"steps": 3}, "steps"),
    ],
)
def test_bad_requests_are_refused_by_name(change, field):
    request = {"scene": document({"habitat": WHEEL}), "motion": "serve", "over": [ELEVATION, SPEED]} | change
    with pytest.raises(Refused) as refused:
        landings.find(read_landings(json.dumps(request)))
    assert refused.value.refusals[0].field == field
    assert refused.value.refusals[0].say.endswith((".", ".)"))


def test_it_tells_how_far_it_is_and_stops_when_asked():
    told = []
    found(document({"habitat": WHEEL}), watch=lambda done, of: told.append((done, of)))
    assert told[-1] == (286, 286)
    assert [done for done, _ in told] == sorted(done for done, _ in told)

    def stops(done, of):
        raise BadInput

    with pytest.raises(BadInput):
        found(document({"habitat": WHEEL}), watch=stops)
    with budget.spending(budget.Budget(stopped=lambda: True)), pytest.raises(budget.Stopped):
        found(document({"habitat": WHEEL}))
    with budget.spending(budget.Budget(law_calls=100)), pytest.raises(budget.TooMuchWork) as spent:
        found(document({"habitat": WHEEL}))
    assert spent.value.refusals[0].field == "over"
