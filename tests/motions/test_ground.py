"""What rolls and slides, against closed forms, against the energy it must keep, and against the unreduced sphere.

The unreduced sphere (`Whole`) is worked out in the inertial frame by scipy: six degrees of freedom, and at each instant the
push of the surface as three unknowns, from the condition that the touching point keeps still on the surface, differentiated.
"""

import functools
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from rimfall.motions.flight import Room
from rimfall.motions.ground import GroundStart, go
from rimfall.physics import frames
from rimfall.physics.air import air_at
from rimfall.physics.bodies import Body
from rimfall.physics.constants import G0_M_S2
from rimfall.physics.forces import Medium
from rimfall.physics.spin import ramped, steady
from rimfall.physics.surfaces import Ball, Drum, Plane, Tube
from tests.published.rolling_balls import ROWS
from tests.tables import each_row
from tests.vectors import cross

RADIUS_M, OMEGA = 56.0, np.pi / 10
A_M = 0.09
BETA = {"solid": 2 / 5, "hollow": 2 / 3}
GRIPPY = {"friction": 5.0, "rolling_resistance": 0.0}
DECK = Drum("deck", RADIUS_M, hollow=True)
FLOOR = Plane("floor", (-1.0, 0.0, 0.0), -RADIUS_M)
TABLE = Plane("floor", (0.0, 0.0, 1.0), 0.0)
SLOPE_RAD = 0.3
RAMP = Plane("ramp", (-np.cos(SLOPE_RAD), 0.6 * np.sin(SLOPE_RAD), 0.8 * np.sin(SLOPE_RAD)), -RADIUS_M + 2.0)
SPHERE = Ball("deck", RADIUS_M)
TUBE = Tube(RADIUS_M, 8.0)
SPACE = (0.0, 0.0, 0.0)


def ball(shell="solid", **contact):
    return Body(0.45, 2 * A_M, shell=shell, **(GRIPPY | contact))


def room(surface, *others, turns=True, pull=SPACE, still_air=False):
    return Room((surface, *others), turns, pull, None, still_air)


def near(surface, guess, a=A_M):
    """The centre of a ball that lies on a surface, near a guess: a few steps of Newton's along the normal."""
    x = np.array(guess, dtype=float)
    for _ in range(50):
        x = x - surface.gap(x[:, None], np.array([a]))[0] * surface.normal(x)
    return x


def rolled(surface, where, velocity, body=None, *, pull=SPACE, turning=0.0, end_s=60.0, others=(), still_air=False):
    """A ball that rolls without slipping, velocity made tangent; turning: its spin about the normal."""
    body = body or ball()
    x = near(surface, where, body.radius_m)
    n = surface.normal(x)
    u = np.array(velocity, dtype=float)
    u = u - (u @ n) * n
    spin = np.cross(n, u) / body.radius_m + turning * n
    return GroundStart(
        room(surface, *others, pull=pull, still_air=still_air), surface, body, 0.0, x, u, spin, end_s, "rolls"
    )


def along(path, count=400):
    """Times, and the states (n, 6) there."""
    time_s = np.linspace(path.begin_s, path.end_s, count)
    return time_s, *path.at(time_s)


def one(start, spin=None, air=None):
    return go(Medium(spin or steady(OMEGA), air, RADIUS_M), [start])[0]


CASES = {
    "drum along the axis": rolled(DECK, (RADIUS_M, 0, 0), (0, 0, 2.0)),
    "drum aslant": rolled(DECK, (RADIUS_M, 0, 0), (0, 3.0, -2.0), ball("hollow"), turning=4.0),
    "drum against the spin": rolled(DECK, (RADIUS_M, 0, 0), (0, -6.0, 1.0)),
    "drum under thrust": rolled(DECK, (RADIUS_M, 0, 0), (0, 1.0, 1.0), pull=(0, 0, -0.4), end_s=20.0),
    "flat floor": rolled(FLOOR, (RADIUS_M, 1.0, 0), (0, 0.3, 1.0), turning=-3.0),
    "ramp": rolled(RAMP, (RADIUS_M - 4, 0, 0), (0, 1.0, 0.2), turning=2.0, end_s=8.0),
    "turntable": rolled(TABLE, (0.6, 0, 0), (0.1, 0.2, 0), pull=(0, 0, -G0_M_S2), turning=1.0),
    "turntable of a hollow ball": rolled(TABLE, (0.6, 0, 0), (0.1, 0.2, 0), ball("hollow"), pull=(0, 0, -G0_M_S2)),
}
ROUND = {
    "sphere": rolled(SPHERE, (RADIUS_M, 0, 6.0), (0, 2.0, 1.0), turning=2.0),
    "torus": rolled(TUBE, (RADIUS_M, 0, 2.0), (0, 1.0, 2.0), ball("hollow"), turning=-2.0),
}


@functools.cache
def gone(name):
    """A case to its end, worked out once for all that is looked at in it."""
    return one((CASES | ROUND)[name])


@each_row(("name", "start"), (CASES | ROUND).items())
def test_rolling_keeps_its_energy_for_a_minute(name, start):
    """u^2/2 + beta d^2 sigma^2/8 - omega^2 rho^2/2 - pull.x, to 1e-9 of its greatest parts (design, section 2)."""
    result = gone(name)
    assert result.end == "time"
    _, x, u = along(result.path)
    beta, d = start.body.inertia_factor, start.body.diameter_m
    moving = np.sum(u[:, :3] ** 2, axis=1) / 2
    turning = beta * d**2 / 8 * np.sum(u[:, 3:] ** 2, axis=1)
    outward = OMEGA**2 * np.sum(x[:, :2] ** 2, axis=1) / 2
    energy = moving + turning - outward - x[:, :3] @ np.array(start.room.pull_m_s2)
    assert np.ptp(energy) <= 1e-9 * np.max(moving + outward)
    assert np.ptp(moving) > 1e-3 * np.max(moving)


@each_row(("name", "start"), (CASES | ROUND).items())
def test_rolling_stays_on_its_surface_and_does_not_slip(name, start):
    _, x, u = along(gone(name).path)
    gap = start.surface.gap(x[:, :3].T, np.full(len(x), start.body.radius_m))
    slip = u[:, :3] - start.body.radius_m * np.cross(u[:, 3:], start.surface.normal(x[:, :3].T).T)
    assert np.max(np.abs(gap)) < 1e-9
    assert np.max(np.abs(slip)) < 1e-9


@each_row("name", CASES | ROUND)
def test_the_turning_told_is_the_integral_of_the_spin(name):
    path = gone(name).path
    edges = np.array([*path.start_s, path.end_s])
    nodes, weights = np.polynomial.legendre.leggauss(12)
    for low, high in pairwise(edges):
        spin = path.at(0.5 * (low + high) + 0.5 * (high - low) * nodes)[1][:, 3:]
        ends = path.at(np.array([low, high - 1e-13 * high]))[0][:, 3:]
        assert ends[1] - ends[0] == pytest.approx(0.5 * (high - low) * weights @ spin, abs=1e-7, rel=1e-10)


@dataclass(frozen=True)
class Whole:
    """The unreduced sphere on a surface that turns; see above. Its state: centre, velocity, spin, all inertial."""

    start: GroundStart
    spin: object
    air: object = None

    def turn(self, vector, time_s):
        return frames.turn(vector, float(self.spin.angle_rad(time_s)))

    def normal(self, x, v, omega, time_s):
        """The normal at an inertial centre, and its change as the centre moves and the surface turns."""
        surface = self.start.surface
        if isinstance(surface, Plane):
            n = self.turn(np.array(surface.into), time_s)
            return n, cross(omega, n)
        flat = np.array([1.0, 1.0, 0.0]) if isinstance(surface, Drum) else np.ones(3)
        out, moving = x * flat, v * flat
        far = np.linalg.norm(out)
        return -out / far, -(moving - out * (out @ moving) / far**2) / far

    def change(self, time_s, state):
        x, v, s = state.reshape(3, 3)
        a, beta = self.start.body.radius_m, self.start.body.inertia_factor
        omega = np.array([0.0, 0.0, float(self.spin.rate_rad_s(time_s))])
        ramp = np.array([0.0, 0.0, float(self.spin.change_rad_s2(time_s))])
        n, bend = self.normal(x, v, omega, time_s)
        free = self.turn(np.array(self.start.room.pull_m_s2), time_s)
        # The touching point's velocity against the surface: v - a s x n - omega x (x - a n) = 0, differentiated:
        known = free - a * cross(s, bend) - cross(ramp, x - a * n) - cross(omega, v - a * bend)
        unknown = np.array([push + cross(cross(n, push), n) / beta for push in np.eye(3)]).T
        push = np.linalg.solve(unknown, -known)
        return np.concatenate([v, free + push, -cross(n, push) / (beta * a)])

    def at(self, time_s):
        """Inertial centres and spins (n, 3) at times (n,), rising, inside one piece of the spin."""
        start = self.start
        omega = float(self.spin.rate_rad_s(start.time_s))
        x, v = frames.rotating_to_inertial(start.position_m, start.velocity_m_s, 0.0, omega)
        start = np.concatenate([x, v, start.spin_rad_s + np.array([0.0, 0.0, omega])])
        found = solve_ivp(self.change, (0.0, time_s[-1]), start, method="DOP853", rtol=1e-12, atol=1e-12, t_eval=time_s)
        return found.y[:3].T, found.y[6:].T


def against_the_whole(start, spin, until_s):
    """Greatest difference of centre, metres, and of spin times radius, m/s."""
    result = one(start, spin)
    time_s = np.linspace(0.0, min(until_s, result.path.end_s), 60)
    x, u = result.path.at(time_s)
    angle, omega = spin.angle_rad(time_s), spin.rate_rad_s(time_s)
    spinning = u[:, 3:].copy()
    spinning[:, 2] += omega
    place, turning = Whole(start, spin).at(time_s)
    off = np.abs(frames.turn(x[:, :3], angle) - place)
    return np.max(off), start.body.radius_m * np.max(np.abs(frames.turn(spinning, angle) - turning))


@pytest.mark.parametrize("start", [pytest.param(v, id=k) for k, v in CASES.items()] + [ROUND["sphere"]])
def test_rolling_is_that_of_the_whole_sphere(start):
    off_m, off_m_s = against_the_whole(start, steady(OMEGA), 20.0)
    assert off_m < 1e-7
    assert off_m_s < 1e-7


@each_row("name", ["drum aslant", "flat floor", "turntable"])
def test_rolling_under_a_ramp_of_the_spin_is_that_of_the_whole_sphere(name):
    off_m, off_m_s = against_the_whole(CASES[name], ramped(OMEGA, [(30.0, 1.5 * OMEGA)]), 15.0)
    assert off_m < 1e-7
    assert off_m_s < 1e-7


@each_row("shell", BETA)
def test_a_ball_rolled_along_the_axis_swings_back(shell):
    """z = (v/k) sin k t with k = omega sqrt(beta/(1 + beta)): the drum's turning tilts its spin (closed form of the balance)."""
    result = one(rolled(DECK, (RADIUS_M, 0, 0), (0, 0, 2.0), ball(shell)))
    time_s, x, _ = along(result.path)
    k = OMEGA * np.sqrt(BETA[shell] / (1 + BETA[shell]))
    assert x[:, 2] == pytest.approx(2.0 / k * np.sin(k * time_s), abs=1e-8)
    assert x[:, 1] == pytest.approx(0.0, abs=1e-8)


def turntable_orbit(shell, speed_m_s=0.1, omega_rad_s=2.0):
    """Rate over the table's and radius, metres, of the circle a ball makes in the room, rolled at a speed there.

    From the velocities in the room at even times: how far each has turned since the one before, and the chord between places.
    """
    n = np.array([0.0, 0.0, 1.0])
    x = np.array([0.4, 0.0, A_M])
    outside = np.array([0.0, speed_m_s, 0.0])
    start = rolled(TABLE, x, outside - omega_rad_s * np.cross(n, x), ball(shell), pull=(0, 0, -G0_M_S2))
    time_s = np.linspace(0.0, 60.0, 601)
    moving = one(start, steady(omega_rad_s)).path.at(time_s)
    place, velocity = (v[:, :3] for v in moving)
    place, velocity = frames.rotating_to_inertial(place, velocity, omega_rad_s * time_s, omega_rad_s)
    turned = np.unwrap(np.arctan2(velocity[:, 1], velocity[:, 0]))
    rate = (turned[-1] - turned[0]) / time_s[-1]
    chord = np.linalg.norm(place[10:] - place[:-10], axis=1)  # over a second
    return rate / omega_rad_s, chord / (2 * abs(np.sin(rate / 2)))


@each_row(("key", "shell"), [("ROL-01", "solid"), ("ROL-02", "hollow")])
def test_on_a_turntable_it_circles_at_the_published_share(key, shell):
    assert ROWS[key].allows(turntable_orbit(shell)[0])


def test_on_a_turntable_it_circles_as_wide_as_published():
    row = ROWS["ROL-03"]
    _, radius = turntable_orbit("solid", row.inputs["speed_m_s"], row.inputs["omega_rad_s"])
    assert row.allows(np.min(radius))
    assert row.allows(np.max(radius))


def slope_share(slope_rad=0.2):
    """Acceleration down a slope over g sin, of a ball let go on it for 4 s."""
    start = on_slope(slope_rad, 0.0)
    return np.linalg.norm(one(start).velocity_m_s) / (4.0 * G0_M_S2 * np.sin(slope_rad))


def test_down_a_slope_it_gains_the_published_share():
    assert ROWS["ROL-05"].allows(slope_share())


def test_far_out_at_the_same_gravity_it_rolls_as_on_the_ground():
    """R -> infinity at fixed gravity: straight on at one speed, in the first order of the time over R^1/2."""
    far = 1e8
    start = rolled(Drum("deck", far, hollow=True), (far, 0, 0), (0, 1.5, 2.0), end_s=5.0)
    result = go(Medium(steady(np.sqrt(G0_M_S2 / far)), None, far), [start])[0]
    _, x, _ = along(result.path)
    assert x[-1, 1:3] == pytest.approx([7.5, 10.0], rel=5e-3)


def test_without_spin_it_goes_straight():
    for surface, velocity, way in ((TABLE, (0.3, 0.4, 0.0), (3.0, 4.0, 0.0)), (FLOOR, (0.0, 0.3, 0.4), (0, 3.0, 4.0))):
        start = rolled(surface, (RADIUS_M, 0, 0), velocity, end_s=10.0)
        result = one(start, steady(0.0))
        assert result.end == "time"
        assert result.position_m - start.position_m == pytest.approx(np.array(way), abs=1e-12)


GROUND = {"pull": (0.0, 0.0, -G0_M_S2)}


def plain(mode, velocity, spin=SPACE, *, body=None, end_s=60.0, others=(), pull=(0.0, 0.0, -G0_M_S2), at=SPACE):
    """A ball on flat ground that does not turn."""
    body = body or ball()
    place = np.array([at[0], at[1], body.radius_m])
    state = np.array(velocity, dtype=float), np.array(spin, dtype=float)
    return GroundStart(room(TABLE, *others, turns=False, pull=pull), TABLE, body, 0.0, place, *state, end_s, mode)


@each_row("shell", BETA)
def test_a_ball_that_starts_sliding_grips(shell):
    """At v/(1 + beta), 5/7 of v for a solid one, after beta v/((1 + beta) mu g) (a textbook's case; from memory)."""
    beta, mu = BETA[shell], 0.3
    result = one(plain("slides", (2.0, 1.0, 0.0), body=ball(shell, friction=mu)))
    speed = np.hypot(2.0, 1.0)
    assert result.end == "grip"
    assert result.path.end_s == pytest.approx(beta / (1 + beta) * speed / (mu * G0_M_S2), abs=2e-8)
    assert result.velocity_m_s == pytest.approx(np.array([2.0, 1.0, 0.0]) / (1 + beta), abs=1e-8)
    assert A_M * np.cross(result.spin_rad_s, [0, 0, 1]) == pytest.approx(result.velocity_m_s, abs=1e-12)


def test_a_ball_with_side_spin_curves_along_a_parabola_until_it_grips():
    """Coulomb's friction keeps its direction on flat ground: u and slip are linear in time (billiards; from memory)."""
    mu, u, spin = 0.2, np.array([1.5, 0.0, 0.0]), np.array([-20.0, 0.0, 5.0])
    result = one(plain("slides", u, spin, body=ball(friction=mu)))
    slip = u - A_M * np.cross(spin, [0, 0, 1])
    lasts_s = np.linalg.norm(slip) * (2 / 7) / (mu * G0_M_S2)
    push = -mu * G0_M_S2 * slip / np.linalg.norm(slip)
    assert result.end == "grip"
    assert result.path.end_s == pytest.approx(lasts_s, abs=2e-8)
    time_s, x, _ = along(result.path, 50)
    assert x[:, :2] == pytest.approx((u * time_s[:, None] + 0.5 * push * time_s[:, None] ** 2)[:, :2], abs=1e-8)


@each_row("shell", BETA)
def test_rolling_resistance_brings_it_to_rest(shell):
    """The deceleration is C g/(1 + beta): the work C N a metre takes both parts of its energy."""
    body = ball(shell, rolling_resistance=0.05, friction=0.5)
    result = one(plain("rolls", (0.6, 0.8, 0.0), body=body))
    slowing = 0.05 * G0_M_S2 / (1 + BETA[shell])
    assert result.end == "rest"
    assert result.path.end_s == pytest.approx(1.0 / slowing, abs=2e-7)
    assert np.linalg.norm(result.position_m[:2]) == pytest.approx(0.5 / slowing, abs=1e-9)
    assert result.velocity_m_s == pytest.approx(np.zeros(3), abs=0.0)


def slope(slope_rad):
    return Plane("ramp", (-np.sin(slope_rad), 0.0, np.cos(slope_rad)), 0.0)


def on_slope(slope_rad, speed_m_s, mode="rolls", **contact):
    """On a slope that rises toward +x; speed up it."""
    body, surface = ball(**contact), slope(slope_rad)
    n = np.array(surface.into)
    u = speed_m_s * np.array([np.cos(slope_rad), 0.0, np.sin(slope_rad)])
    spin = np.cross(n, u) / body.radius_m if mode == "rolls" else np.zeros(3)
    return GroundStart(room(surface, turns=False, **GROUND), surface, body, 0.0, body.radius_m * n, u, spin, 4.0, mode)


def test_a_ball_rolls_up_a_slope_turns_and_rolls_down():
    result = one(on_slope(0.2, 2.0))
    down = 5 / 7 * G0_M_S2 * np.sin(0.2)
    assert result.end == "time"
    assert np.linalg.norm(result.velocity_m_s) == pytest.approx(4.0 * down - 2.0, abs=1e-9)


def test_with_resistance_it_turns_too_and_loses_what_it_must():
    result = one(on_slope(0.2, 2.0, rolling_resistance=0.05))
    up, down = (5 / 7 * G0_M_S2 * (np.sin(0.2) + sign * 0.05 * np.cos(0.2)) for sign in (1, -1))
    assert result.end == "time"
    assert np.linalg.norm(result.velocity_m_s) == pytest.approx(down * (4.0 - 2.0 / up), abs=1e-6)


def test_resistance_holds_it_on_a_slope_that_is_no_steeper():
    result = one(on_slope(0.04, 0.5, rolling_resistance=0.05))
    assert result.end == "rest"
    assert one(on_slope(0.04, 0.0, rolling_resistance=0.05)).end == "rest"
    assert one(on_slope(0.06, 0.0, rolling_resistance=0.05)).end == "time"


@each_row(("mu", "slips"), [(0.9, False), (0.4, True)])
def test_a_slope_too_steep_for_its_friction_makes_it_slip(mu, slips):
    """A solid ball slips where tan > 7/2 mu (textbook; from memory), and then has g (sin - mu cos)."""
    angle = 1.0
    result = one(on_slope(angle, 0.0, friction=mu))
    assert (np.tan(angle) > 3.5 * mu) == slips
    assert result.end == ("slip" if slips else "time")
    if slips:
        assert result.path.end_s == 0.0
        slid = one(GroundStart(**{**result.start.__dict__, "mode": "slides"}))
        assert slid.end == "time"
        assert slid.velocity_m_s @ [-np.cos(angle), 0, -np.sin(angle)] == pytest.approx(
            4.0 * G0_M_S2 * (np.sin(angle) - mu * np.cos(angle)), abs=1e-6
        )


def test_a_ball_that_slides_up_too_steep_a_slope_comes_down_without_grip():
    """Its slip dies out once on the way, but friction cannot hold it rolling: one leg to the end, no shower of them."""
    result = one(on_slope(1.0, 6.0, "slides", friction=0.4))
    assert result.end == "time"
    assert len(result.path.start_s) < 60


CUP = Body(0.25, 0.085, friction=0.4, rolling_resistance=0.05)


def cup(surface, where, velocity=SPACE, *, body=CUP, time_s=0.0, end_s=60.0, pull=SPACE, turns=True, still_air=False):
    x = near(surface, where, body.radius_m)
    n = surface.normal(x)
    u = np.array(velocity) - (velocity @ n) * n
    return GroundStart(
        room(surface, turns=turns, pull=pull, still_air=still_air),
        surface,
        body,
        time_s,
        x,
        u,
        np.zeros(3),
        end_s,
        "stands",
    )


def test_a_cup_under_a_steady_spin_stands_for_good():
    result = one(cup(DECK, (RADIUS_M, 0, 0)))
    assert (result.end, result.path.end_s) == ("rest", 0.0)
    assert result.path.path_m.shape[2] == 6


def test_a_cup_slides_to_a_stop_as_a_block_does():
    """v^2/(2 mu g) on plain ground, after v/(mu g)."""
    result = one(cup(TABLE, (0, 0, 0), (1.2, 0.5, 0.0), **GROUND, turns=False))
    assert result.end == "grip"
    assert result.path.end_s == pytest.approx(1.3 / (0.4 * G0_M_S2), abs=1e-8)
    assert np.linalg.norm(result.position_m[:2]) == pytest.approx(1.3**2 / (0.8 * G0_M_S2), abs=1e-9)
    assert np.all(result.spin_rad_s == 0.0)
    assert (one(GroundStart(**{**result.start.__dict__, "velocity_m_s": result.velocity_m_s})).end) == "rest"


def test_resistance_greater_than_friction_slows_no_more_than_friction_can():
    """A solid ball that all but sticks, friction 0.1: it rolls on and loses mu g, as much as any contact can give."""
    result = one(plain("rolls", (1.0, 0.0, 0.0), (0.0, 1 / A_M, 0.0), body=ball(rolling_resistance=1.0, friction=0.1)))
    assert result.end == "rest"
    assert result.path.end_s == pytest.approx(1.0 / (0.1 * G0_M_S2), abs=1e-7)


def test_a_ball_that_slides_and_resists_grips_and_rests():
    slid = one(plain("slides", (1.0, 0.0, 0.0), body=ball(rolling_resistance=1.0, friction=0.1)))
    assert slid.end == "grip"
    state = {"position_m": slid.position_m, "velocity_m_s": slid.velocity_m_s, "spin_rad_s": slid.spin_rad_s}
    assert (
        one(GroundStart(**{**slid.start.__dict__, **state, "time_s": slid.path.end_s, "mode": "rolls"})).end == "rest"
    )


def test_friction_of_any_strength_lets_go_and_takes_hold_in_few_steps():
    """At a hundred g a slip dies out within microseconds: no crawling there."""
    fast = steady(np.sqrt(1000.0 / RADIUS_M))
    start = cup(DECK, (RADIUS_M, 0, 0), (0.0, 1e-3, -7e-4), pull=(0.0, 0.0, -300.0))
    result = one(start, fast)
    assert result.end == "grip"
    assert len(result.path.start_s) < 60


def test_a_cup_on_a_turntable_slides_when_the_spin_is_past_what_friction_holds():
    """(omega^2 rho)^2 + (omega' rho)^2 = (mu g)^2: solved for omega by hand."""
    spin = ramped(0.5, [(2.0, 0.5), (12.0, 5.5)])
    result = one(cup(TABLE, (0.8, 0, 0), **GROUND), spin)
    omega = (((0.4 * G0_M_S2) ** 2 - (0.5 * 0.8) ** 2) / 0.64) ** 0.25
    assert result.end == "slip"
    assert result.path.end_s == pytest.approx(2.0 + (omega - 0.5) / 0.5, abs=1e-7)
    assert result.path.at(np.array([5.0]))[0][0, :3] == pytest.approx(result.start.position_m, abs=0.0)
    then = one(cup(TABLE, result.position_m, time_s=result.path.end_s, **GROUND), spin)
    assert then.path.end_s > result.path.end_s + 1.0
    assert np.linalg.norm(then.position_m[:2]) > 1.0


def test_a_cup_at_a_spin_up_from_rest_slides_at_once_and_grips():
    """Against scipy, in the inertial frame, where it only feels the deck's friction and its push toward the axis."""
    spin, mu, rho = ramped(0.01, [(10.0, OMEGA)]), 0.4, RADIUS_M - CUP.radius_m
    result = one(cup(DECK, (RADIUS_M, 0, 0)), spin)

    def change(_t, state):
        return [mu * state[0] ** 2 / rho]

    def grips(time_s, state):
        return state[0] - rho * float(spin.rate_rad_s(time_s))

    grips.terminal = True
    found = solve_ivp(
        change, (1e-9, 60.0), [0.01 * rho], method="DOP853", rtol=1e-11, atol=1e-11, events=grips, max_step=1.0
    )
    assert result.path.begin_s == 0.0
    assert result.end == ("grip" if found.t_events[0].size else "time")
    assert result.path.end_s == pytest.approx(found.t[-1], abs=1e-5)
    _, x, u = along(result.path)
    assert np.max(np.abs(x[:, 2])) < 1e-9
    assert np.min(u[:, 1]) < -5.0


def test_a_cup_on_a_deck_that_only_begins_to_turn_keeps_still_outside():
    """In vacuum nothing takes it along: no weight, no friction."""
    spin = ramped(0.0, [(10.0, OMEGA)])
    result = one(cup(DECK, (RADIUS_M, 0, 0), end_s=20.0), spin)
    time_s, x, _ = along(result.path)
    assert frames.turn(x[:, :3], spin.angle_rad(time_s)) == pytest.approx(
        np.tile(result.start.position_m, (400, 1)), abs=1e-6
    )


def test_a_ball_at_rest_rolls_when_a_ramp_begins_and_not_before():
    spin = ramped(OMEGA, [(5.0, OMEGA), (15.0, 1.2 * OMEGA)])
    for contact in ({}, {"rolling_resistance": 0.001, "friction": 0.5}):
        result = one(rolled(DECK, (RADIUS_M, 0, 0), SPACE, ball(**contact), end_s=20.0), spin)
        assert result.end in ("time", "slip")
        x, _ = result.path.at(np.array([4.9, 15.0]))
        assert x[0, :3] == pytest.approx(result.start.position_m, abs=1e-12)
        assert x[1, 1] < -1.0


def test_a_ball_at_rest_with_nothing_to_come_rests():
    for contact in ({}, {"rolling_resistance": 0.02}):
        result = one(rolled(DECK, (RADIUS_M, 0, 0), SPACE, ball(**contact)))
        assert (result.end, result.path.end_s) == ("rest", 0.0)


def test_a_ball_held_on_a_table_that_spins_up_does_not_turn_in_the_room():
    """A point of contact turns nothing about the normal: against the table the ball turns back by alpha t^2/2, until it lets go."""
    lies = rolled(TABLE, (0.5, 0.0, 0.0), SPACE, ball(rolling_resistance=0.05), pull=(0, 0, -G0_M_S2), end_s=25.0)
    path = one(lies, ramped(0.0, [(100.0, 5.0)])).path
    x, u = path.at(np.array([3.0, 8.0]))
    assert x[:, :3] == pytest.approx(np.tile(lies.position_m, (2, 1)), abs=1e-12)
    assert x[:, 5] == pytest.approx([-0.025 * 3.0**2, -0.025 * 8.0**2], abs=1e-9)
    assert u[:, 5] == pytest.approx([-0.05 * 3.0, -0.05 * 8.0], abs=1e-9)


def test_a_ball_that_outruns_its_weight_slips_and_leaves():
    """On the outside of a cylinder that does not turn, from near its top: cos = 10/17 for a solid ball (textbook; from memory).

    Just before, no friction is enough, for nothing presses it on: with a great one that is but the last instant.
    """
    hill = Drum("hub", 5.0, hollow=False)
    body, far, tilt = ball(friction=1e5), 5.0 + A_M, 1e-2
    x = far * np.array([np.cos(tilt), np.sin(tilt), 0.0])
    start = GroundStart(
        room(hill, turns=False, pull=(-G0_M_S2, 0, 0)), hill, body, 0.0, x, np.zeros(3), np.zeros(3), 60.0, "rolls"
    )
    slipped = one(start)
    assert slipped.end == "slip"
    assert slipped.position_m[0] / far == pytest.approx(10 / 17 * np.cos(tilt), abs=1e-4)
    state = {"position_m": slipped.position_m, "velocity_m_s": slipped.velocity_m_s, "spin_rad_s": slipped.spin_rad_s}
    left = one(GroundStart(**{**start.__dict__, **state, "time_s": slipped.path.end_s, "mode": "slides"}))
    assert left.end == "left"
    assert left.velocity_m_s @ left.velocity_m_s / far == pytest.approx(
        G0_M_S2 * left.position_m[0] / far,
        rel=1e-4,  # what only just slips is given a tenth of a millimetre a second
    )  # its weight is just what keeps it on the circle


def test_it_meets_walls_and_edges():
    wall, edge = Plane("wall", (-1.0, 0.0, 0.0), -3.0), Plane("edge", (0.0, -1.0, 0.0), -2.0, edge=True)
    result = one(plain("rolls", (1.0, 0.0, 0.0), (0.0, 1 / A_M, 0.0), others=(wall, edge)))
    assert (result.end, result.surface) == ("met", wall)
    assert result.path.end_s == pytest.approx(3.0 - A_M, abs=1e-9)
    result = one(plain("rolls", (0.0, 1.0, 0.0), (-1 / A_M, 0.0, 0.0), others=(wall, edge)))
    assert (result.end, result.surface) == ("met", edge)
    assert result.path.end_s == pytest.approx(2.0, abs=1e-9)


def test_a_ball_that_lies_against_a_wall_and_leaves_it_does_not_meet_it():
    wall = Plane("wall", (-1.0, 0.0, 0.0), -3.0)
    for speed, end in ((-1.0, "time"), (1.0, "met")):
        start = plain("rolls", (speed, 0, 0), (0, speed / A_M, 0), others=(wall,), at=(3.0 - A_M, 0), end_s=5.0)
        assert one(start).end == end


def test_air_that_stands_still_holds_a_ball_on_a_turntable_back():
    """Against scipy: drag by the velocity against the room."""
    air = air_at(101.325, 20.0)
    light = Body(0.0027, 0.04, 0.5, shell="hollow", **GRIPPY)
    start = rolled(TABLE, (0.5, 0, 0), (0.0, 0.0, 0.0), light, pull=(0, 0, -G0_M_S2), end_s=10.0, still_air=True)
    spin, beta = steady(2.0), 2 / 3
    result = one(start, spin, air)
    share = np.pi / 8 * 0.04**2 * air.deck_density_kg_m3 * 0.5 / light.mass_kg

    def change(_t, state):
        """Inertial: v' = (drag + beta Omega x v)/(1 + beta), the turntable's law (Weltner 1979) with a pull more."""
        v = state[2:]
        return [*v, *((-share * np.linalg.norm(v) * v + beta * 2.0 * np.array([-v[1], v[0]])) / (1 + beta))]

    found = solve_ivp(change, (0, 10.0), [0.5, 0.0, 0.0, 1.0], method="DOP853", rtol=1e-11, atol=1e-12)
    end = frames.turn(result.position_m, 20.0)
    assert end[:2] == pytest.approx(found.y[:2, -1], abs=1e-7)


def test_many_are_the_same_as_each_alone():
    """Each has a step of its own: the others change nothing."""
    rng = np.random.default_rng(4)
    ways = rng.uniform(-2, 2, (40, 3))
    bodies = [ball(rolling_resistance=c, friction=0.5) for c in (0.0, 0.02)]
    start = [
        GroundStart(**{**rolled(DECK, (RADIUS_M, 0, 0), way, bodies[i % 2], end_s=8.0 + i).__dict__, "time_s": 0.1 * i})
        for i, way in enumerate(ways)
    ] + [plain("slides", way * [1, 1, 0]) for way in ways]
    medium = Medium(steady(OMEGA), air_at(101.325, 20.0), RADIUS_M)
    for one_laid, result in list(zip(start, go(medium, start), strict=True))[::7]:
        alone = go(medium, [one_laid])[0]
        assert (result.start, result.end) == (one_laid, alone.end)
        assert result.path.end_s == pytest.approx(alone.path.end_s, abs=1e-9)
        assert result.position_m == pytest.approx(alone.position_m, abs=1e-9)


def test_it_tells_how_many_have_ended_and_stops_when_told():
    told = []
    medium = Medium(steady(OMEGA), None, RADIUS_M)
    go(medium, [rolled(DECK, (RADIUS_M, 0, 0), (0, 0, 1.0), end_s=e) for e in (1.0, 20.0)], told.append)
    assert told == sorted(told)
    assert told[-1] == 2

    def stop(_done):
        raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        go(medium, [rolled(DECK, (RADIUS_M, 0, 0), (0, 0, 1.0))], stop)


def test_nothing_laid_is_nothing():
    assert go(Medium(steady(OMEGA), None, RADIUS_M), []) == []
