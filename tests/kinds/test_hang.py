"""What hangs: against scipy's DOP853 on the unreduced problem in the room that does not turn, textbooks' pendulums, and Foucault's."""

import math

import numpy as np
import pytest
from scipy.integrate import solve_ivp
from scipy.optimize import brentq
from scipy.special import ellipk

from rimfall.errors import TooMuch
from rimfall.kinds.hang import swing as swing_module
from rimfall.kinds.hang.plan import HangingLine
from rimfall.kinds.hang.swing import Swings, swing
from rimfall.motions.flight import Room
from rimfall.physics import frames
from rimfall.physics.aboard import Aboard
from rimfall.physics.bodies import Body, as_arrays
from rimfall.physics.constants import G0_M_S2
from rimfall.physics.forces import Medium
from rimfall.physics.pendulum import Hung
from rimfall.physics.spin import steady
from tests.motions.scenes import AIR, LANTERN, OMEGA_LANTERN, POINT, one, place, read
from tests.published.foucault import ROWS
from tests.tables import each_row
from tests.vectors import cross

BENCH = {"shape": "turntable", "radius_m": 10.0, "spin_rpm": 0.0}
BALL = {"mass_kg": 0.2, "diameter_m": 0.08, "drag": 0.47}


def hang(height_m=4.0, length_m=2.0, body=POINT, along_m=0.0, axial_m=0.0, **more):
    at = place(height_m, along_m=along_m, axial_m=axial_m)
    return {"kind": "hang", "place": at, "length_m": length_m, "body": body} | more


def densely(traced, count=4001):
    """Times, and position from the pivot and velocity in the turning frame, all along the path."""
    path = traced.track.path
    times = np.linspace(path.begin_s, path.end_s, count)
    position, velocity = path.at(times)
    return times, position - traced.findings["pivot_rotating_m"], velocity


def unreduced(traced, habitat, air, times):
    """Positions (n, 3) in the room that does not turn of a mass on a line from a pivot that goes round, with Lagrange's multiplier:
    r'' = f + l d, d = r - p(t), and l so that d.d stays L^2. Drag by the law of the air that turns and thins, written anew."""
    points = [(0.0, habitat["spin_rpm"]), *((p["time_s"], p["spin_rpm"]) for p in habitat.get("spin_ramp", []))]
    knots, rates = np.array([t for t, _ in points]), np.array([r for _, r in points]) * math.tau / 60
    length, pivot = traced.motion.length_m, traced.findings["pivot_rotating_m"]
    thrust = habitat.get("axial_thrust_m_s2", 0.0)

    def turning(t):
        k = int(np.searchsorted(knots, t, "right")) - 1
        slope = (rates[k + 1] - rates[k]) / (knots[k + 1] - knots[k]) if k + 1 < len(knots) else 0.0
        before = np.sum(np.diff(knots[: k + 1]) * (rates[:k] + rates[1 : k + 1]) / 2)
        since = t - knots[k]
        return before + rates[k] * since + slope * since**2 / 2, rates[k] + slope * since, slope

    def turned(v, angle):
        c, s = math.cos(angle), math.sin(angle)
        return np.array([c * v[0] - s * v[1], s * v[0] + c * v[1], v[2]])

    def rates_of(t, y):
        r, v = y[:3], y[3:]
        angle, w, a = turning(t)
        p = turned(pivot, angle)
        z = np.array([0.0, 0.0, 1.0])
        p1, p2 = cross(w * z, p), cross(a * z, p) - w**2 * p * [1, 1, 0]
        force = np.array([0.0, 0.0, -thrust])
        if air:
            wind = cross(w * z, r) - v
            dense = air["pressure_kpa"] * 1e3 / (287.05 * 293.15)
            dense *= math.exp(-(w**2) * (habitat["radius_m"] ** 2 - r[0] ** 2 - r[1] ** 2) / (2 * 287.05 * 293.15))
            body = traced.plan.body
            force = (
                force
                + math.pi / 8 * body.diameter_m**2 * dense * body.drag / body.mass_kg * np.linalg.norm(wind) * wind
            )
        d, d1 = r - p, v - p1
        multiplier = -(d @ (force - p2) + d1 @ d1) / length**2
        return np.concatenate([v, force + multiplier * d])

    angle, w, _ = turning(times[0])
    first, moving = traced.track.path.at(times[:1])
    start = turned(first[0], angle), turned(moving[0] + np.cross([0, 0, w], first[0]), angle)
    options = {"method": "DOP853", "rtol": 1e-13, "atol": 1e-13, "t_eval": times, "max_step": 0.05}
    return solve_ivp(rates_of, (times[0], times[-1]), np.concatenate(start), **options).y[:3].T


CASES = {
    "askew under thrust": (LANTERN | {"axial_thrust_m_s2": 0.6}, hang(first_angle_deg=35, first_heading_deg=30), None),
    "pushed, near the hub": (LANTERN | {"axial_thrust_m_s2": 1.0}, hang(50.0, speed_m_s=1.1, heading_deg=70), None),
    "wide, started late": (LANTERN, hang(first_angle_deg=75, first_heading_deg=110, start_s=3.0), None),
    "in air": (LANTERN | {"axial_thrust_m_s2": 0.6}, hang(first_angle_deg=35, body=BALL, speed_m_s=2.0), AIR),
    "while it spins up": (
        LANTERN | {"spin_rpm": 1.0, "spin_ramp": [{"time_s": 4.0, "spin_rpm": 3.0}, {"time_s": 6.0, "spin_rpm": 2.5}]},
        hang(first_angle_deg=5),
        None,
    ),
}


@each_row("case", CASES)
def test_it_swings_as_the_unreduced_problem_does(case):
    habitat, motion, air = CASES[case]
    traced = one(motion, habitat, air, duration_s=10.0)
    times = np.linspace(motion.get("start_s", 0.0), 10.0, 60)
    ours = traced.track.path.both(read([motion], habitat).habitat.spin, times)[2]
    assert traced.findings["slack"] is False
    assert np.max(np.abs(ours - unreduced(traced, habitat, air, times))) < 1e-8


@each_row("length_m", [0.05, 2.0, 40.0])
@each_row("air", [None, AIR])
def test_the_line_keeps_its_length(length_m, air):
    body = BALL if air else POINT
    traced = one(hang(50.0, length_m, body, first_angle_deg=60, first_heading_deg=20), LANTERN, air, duration_s=12.0)
    _, away, _ = densely(traced)
    assert np.max(np.abs(np.linalg.norm(away, axis=1) - length_m)) < 1e-10 * length_m


@each_row("thrust", [0.0, 0.6])
def test_energy_is_kept_in_vacuum_at_steady_spin(thrust):
    """E' = u^2/2 - w^2 rho^2/2 + thrust z (Goldstein, section 1.3 with the centrifugal potential)."""
    habitat = LANTERN | {"axial_thrust_m_s2": thrust}
    traced = one(hang(first_angle_deg=50, first_heading_deg=40), habitat)
    _, away, moving = densely(traced)
    place = away + traced.findings["pivot_rotating_m"]
    energy = (
        0.5 * np.sum(moving**2, axis=1)
        - 0.5 * OMEGA_LANTERN**2 * np.sum(place[:, :2] ** 2, axis=1)
        + thrust * place[:, 2]
    )
    assert np.ptp(energy) < 1e-9 * np.max(0.5 * np.sum(moving**2, axis=1))


@each_row("angle_deg", [0.01, 30.0, 89.0])
def test_over_a_table_at_rest_it_is_the_textbooks_pendulum(angle_deg):
    """T = 4 sqrt(L/g) K(sin^2(a/2)), scipy's ellipk; 2 pi sqrt(L/g) where the swing is small."""
    traced = one(hang(5.0, 2.0, first_angle_deg=angle_deg), BENCH, duration_s=30.0)
    exact = 4 * math.sqrt(2 / G0_M_S2) * ellipk(math.sin(math.radians(angle_deg) / 2) ** 2)
    assert traced.findings["period_s"] == pytest.approx(exact, rel=1e-9)
    if angle_deg < 1:
        assert exact == pytest.approx(math.tau * math.sqrt(2 / G0_M_S2), rel=1e-8)
        assert traced.findings["plane_turns_deg"] is None, "too narrow for a plane"
    else:
        assert traced.findings["plane_turns_deg"] == pytest.approx(0.0, abs=1e-6)


@each_row(("heading_deg", "stiff_m"), [(0, 52.0), (90, 54.0)])
def test_in_the_wheel_it_swings_faster_along_the_axis(heading_deg, stiff_m):
    """w sqrt(rho/L) in the plane of rotation (the centrifugal pendulum: Den Hartog, Mechanical Vibrations, from memory), and
    w sqrt((rho + L)/L) square to it, rho that of the pivot; so T -> 2 pi sqrt(L/g) in a wheel that is wide against the line."""
    traced = one(hang(first_angle_deg=0.05, first_heading_deg=heading_deg))
    assert traced.findings["period_s"] == pytest.approx(math.tau / OMEGA_LANTERN * math.sqrt(2.0 / stiff_m), rel=1e-6)


PARIS = ROWS["TRJ-13"].inputs["latitude_deg"]
EARTH = math.tau / 86164.1


def over_the_earth(latitude_deg, length_m, aside_m, time_s):
    """The Swings of a pendulum over the turning Earth, whose pull is of one size and turns with it, as the textbooks take it."""
    sine, cosine = frames.sin_deg(latitude_deg), frames.cos_deg(latitude_deg)
    east, up = np.array([0.0, 1.0, 0.0]), np.array([cosine, 0.0, sine])
    rows = np.stack([east, up, np.cross(east, up)])
    medium, room = Medium(steady(EARTH), None, 1.0), Room((), True, tuple(-G0_M_S2 * up), None)
    forces = Aboard(medium, room, as_arrays([Body(28.0, 0.0)]))
    line = HangingLine(np.zeros(3), rows, length_m, Hung(np.zeros(3), length_m, forces), forces, 28.0)
    down = line.plumb(medium.spin, np.zeros(1))[0]
    aside = aside_m / length_m
    away = length_m * (math.sqrt(1 - aside**2) * down + aside * (rows[2] - (rows[2] @ down) * down))
    path = swing(medium.spin, line.law, room, 0.0, 0.0, time_s, away, np.zeros(3)).path
    return Swings(line, medium.spin, path)


def test_foucaults_pendulum_at_paris():
    """67 m, and so far aside that the ellipse it swings in turns it by 3/8 (a/L)^2, a hundred-thousandth, of that."""
    swings = over_the_earth(PARIS, 67.0, 0.3, 330.0)
    assert ROWS["TRJ-13"].allows(-swings.plane_turns_deg_per_h * 24)
    assert ROWS["TRJ-14"].allows(-360 / swings.plane_turns_deg_per_h)
    assert swings.plane_turns_deg_per_h == pytest.approx(-math.degrees(EARTH * frames.sin_deg(PARIS)) * 3600, rel=1e-4)
    assert swings.period_s == pytest.approx(math.tau * math.sqrt(67.0 / G0_M_S2), rel=1e-5)


def test_south_of_the_equator_it_turns_the_other_way():
    assert over_the_earth(-30.0, 67.0, 0.3, 200.0).plane_turns_deg_per_h > 0


@each_row("spin_rpm", [0.5, 3.0])
def test_over_a_turntable_its_plane_stays_in_the_room(spin_rpm):
    """Its pivot on the axis, it is a plain pendulum of the room: aboard its plane turns backward by the table's own rate, but
    for the ellipse's own 3/8 (a/L)^2 (Airy; any mechanics text, from memory)."""
    traced = one(hang(3.0, 2.0, first_angle_deg=1.0), BENCH | {"spin_rpm": spin_rpm}, duration_s=30.0)
    assert traced.findings["plane_turns_deg_per_h"] == pytest.approx(-spin_rpm * 360 * 60, rel=2e-4)


SHAPES = {
    "cylinder": LANTERN | {"axial_thrust_m_s2": 0.6},
    "torus": LANTERN | {"shape": "torus", "tube_radius_m": 12.0, "axial_thrust_m_s2": -1.0},
    "sphere": LANTERN | {"shape": "sphere"},
    "pods": {"shape": "pods", "radius_m": 24.0, "spin_rpm": 4.0, "floors": [{"length_m": 12.0, "width_m": 6.0}]},
    "turntable": BENCH | {"spin_rpm": 4.0},
}


@each_row("shape", SHAPES)
@each_row("air", [None, AIR])
def test_hung_along_the_plumb_line_it_stays(shape, air):
    """Over a table in air it is blown at: the air of the room stands still."""
    air = None if shape == "turntable" else air
    body = POINT if air is None else BALL
    traced = one(hang(5.0, 2.0, body, along_m=2.0, axial_m=1.0), SHAPES[shape], air, duration_s=20.0)
    _, away, moving = densely(traced)
    assert np.max(np.abs(away - away[0])) < 1e-9
    assert np.max(np.abs(moving)) < 1e-9
    assert np.max(traced.findings["swing_deg"]) < 1e-7
    assert traced.findings["period_s"] is None


def test_without_weight_it_stays_or_goes_round():
    still = {"spin_rpm": 0.0, "radius_m": 56.0}
    rests = one(hang(first_angle_deg=40), still, duration_s=10.0)
    assert np.max(np.abs(densely(rests)[2])) == 0.0
    assert not np.any(rests.findings["tension_n"])
    assert rests.findings["slack"] is False
    round_ = one(hang(speed_m_s=3.0), still, duration_s=10.0)
    assert round_.findings["tension_n"] == pytest.approx(3.0**2 / 2.0, rel=1e-9)


def test_pushed_too_little_to_go_over_it_goes_slack_where_the_textbooks_say():
    """From the lowest point at v: slack at the height (v^2 + g L)/(3 g) above it (any mechanics text, from memory)."""
    v = math.sqrt(3.5 * G0_M_S2 * 2.0)
    traced = one(hang(8.0, 2.0, speed_m_s=v), BENCH, duration_s=4.0)
    slack = next(e for e in traced.track.events if e.kind == "slack")
    assert slack.height_m - 6.0 == pytest.approx((v**2 / G0_M_S2 + 2.0) / 3, abs=1e-8)
    assert traced.findings["slack"] is True


def test_a_slack_line_is_straight_again_where_the_straight_line_of_the_room_says():
    """Let go high above its pivot it flies straight in the room that does not turn, until as far from the pivot as its line is long;
    then only the part of its velocity across the line is left."""
    traced = one(hang(8.0, 2.0, first_angle_deg=120), duration_s=12.0)
    pivot = traced.findings["pivot_rotating_m"]
    away = 2.0 * np.array([math.cos(math.radians(120)), math.sin(math.radians(120)), 0.0])
    first = pivot + away
    moving = OMEGA_LANTERN * np.array([-first[1], first[0], 0.0])
    flown = lambda t: first + moving * t - frames.turn(pivot, OMEGA_LANTERN * t)  # noqa: E731
    straight = brentq(lambda t: flown(t) @ flown(t) - 4.0, 0.2, 3.0, xtol=1e-14)
    taut = next(e for e in traced.track.events if e.kind == "taut")
    assert taut.time_s == pytest.approx(straight, abs=1e-8)
    line = (taut.rotating_m - pivot) / 2.0
    _, after = traced.track.path.at(np.array([straight + 1e-7]))
    before = taut.rotating_velocity_m_s
    assert before @ line > 0.1
    assert after[0] == pytest.approx(before - (before @ line) * line, abs=1e-5)
    lengths = np.linalg.norm(densely(traced)[1], axis=1)
    assert np.max(lengths) < 2.0 * (1 + 1e-9)


def test_it_ends_where_it_meets_a_wall():
    traced = one(hang(4.0, 2.0, BALL, speed_m_s=3.0, heading_deg=90, axial_m=-0.3), LANTERN | {"width_m": 2.0}, AIR)
    last = traced.track.events[-1]
    assert (traced.track.end, last.kind) == ("met a surface", "wall")
    assert last.axial_m == pytest.approx(1.0 - 0.04, abs=1e-9)


def test_it_ends_where_it_meets_the_deck():
    traced = one(hang(1.9, 2.0, BALL, first_angle_deg=60, first_heading_deg=90, along_m=5.0), LANTERN, AIR)
    last = traced.track.events[-1]
    assert (traced.track.end, last.kind) == ("met a surface", "deck")
    assert last.height_m == pytest.approx(0.04, abs=1e-9)


def test_it_is_pushed_across_its_line_at_the_speed_told():
    traced = one(hang(first_angle_deg=40, first_heading_deg=20, speed_m_s=2.0, heading_deg=110), duration_s=1.0)
    _, away, moving = densely(traced, 2)
    assert np.linalg.norm(moving[0]) == pytest.approx(2.0, rel=1e-12)
    assert away[0] @ moving[0] == pytest.approx(0.0, abs=1e-12)
    assert moving[0] @ [0.0, frames.cos_deg(110), frames.sin_deg(110)] > 1.5


@each_row("angle_deg", [95, 111, 123, 140, 155, 170])
def test_slack_and_straight_take_turns(angle_deg):
    """A line that goes slack is so for a while; twice at one instant would be the same contact found again."""
    traced = one(hang(8.0, 2.0, first_angle_deg=angle_deg, first_heading_deg=35), duration_s=6.0)
    events = [(e.kind, e.time_s) for e in traced.track.events if e.kind in ("slack", "taut")]
    assert [kind for kind, _ in events] == (["slack", "taut"] * len(events))[: len(events)]
    assert events[1][1] > 0.1


def test_its_findings_run_along_its_samples():
    traced = one(hang(first_angle_deg=10, body=BALL), LANTERN, AIR, duration_s=5.0)
    count = len(traced.track.samples.time_s)
    assert {len(traced.findings[n]) for n in ("plumb_deg", "swing_deg", "tension_n")} == {count}
    assert traced.findings["swing_deg"][0] == pytest.approx(10.0, abs=1e-9)
    assert traced.plan.flat_gravity is None


def test_the_pull_of_a_line_at_rest_is_the_weight_at_its_bob():
    traced = one(hang(body=BALL), LANTERN, AIR, duration_s=2.0)
    assert traced.findings["tension_n"] == pytest.approx(0.2 * OMEGA_LANTERN**2 * 54.0, rel=1e-12)


def test_what_swings_too_often_is_refused_by_name(monkeypatch):
    monkeypatch.setattr(swing_module, "MOST_TRIES", 40)
    habitat = {"radius_m": 56.0, "spin_rpm": 200.0}
    with pytest.raises(TooMuch) as refused:
        one(hang(4.0, 0.01, first_angle_deg=80, first_heading_deg=30), habitat)
    assert refused.value.refusals[0].field == "motions.0.length_m"


def test_a_balloon_pulls_its_line_with_what_the_air_bears_less_its_weight():
    """Archimedes, in air that stands still on plain ground: T = (rho V - m) g."""
    balloon = {"mass_kg": 0.0049, "diameter_m": 0.28, "buoyant": True}
    displaced_kg = 101325.0 / (287.05 * 293.15) * math.pi / 6 * 0.28**3
    findings = one(hang(body=balloon, first_angle_deg=0.0), BENCH, AIR).findings
    assert findings["tension_n"] == pytest.approx((displaced_kg - 0.0049) * G0_M_S2, rel=1e-6)
