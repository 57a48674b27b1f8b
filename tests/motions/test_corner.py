"""What touches two surfaces at once goes on along both, or along what it must: against closed forms, the energy it must keep, and
a ball between two springy walls, worked out by scipy with none of the code's own algebra (`springy`)."""

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from rimfall.motions.carry import carry
from rimfall.motions.flight import Room
from rimfall.motions.ground import GroundStart
from rimfall.motions.journey import Start
from rimfall.physics.bodies import Body
from rimfall.physics.forces import Medium
from rimfall.physics.spin import ramped, steady
from rimfall.physics.surfaces import Drum, Plane
from tests.tables import each_row
from tests.vectors import cross

A_M, G, H = 0.05, 9.80665, 3.0
FLOOR, WALL = Plane("deck", (0.0, 1.0, 0.0), 0.0), Plane("wall", (0.0, 0.0, 1.0), 0.0)
RADIUS_M, OMEGA = 30.0, 0.5
DECK, END = Drum("deck", RADIUS_M, hollow=True), Plane("wall", (0.0, 0.0, 1.0), -3.0)
IN_DRUM = (RADIUS_M - A_M, 0.0, -3.0 + A_M)


def ball(**contact):
    return Body(0.3, 2 * A_M, **({"friction": 0.3, "restitution": 0.0} | contact))


def went(surfaces, place, velocity, spin=(0, 0, 0), *, body=None, pull=(0.0, -G, -H), omega=0.0, end_s=10.0, mode=None):
    """The journey of a body laid on the first of some surfaces, in a room that turns where there is spin."""
    body = body or ball()
    turning = omega if hasattr(omega, "steady") else steady(omega)
    turns = not (turning.steady and not turning.rates_rad_s[0])
    room = Room(tuple(surfaces), turns, pull, None)
    state = (np.array(v, dtype=float) for v in (place, velocity, spin))
    first = GroundStart(
        room, surfaces[0], body, 0.0, *state, end_s, mode or ("stands" if body.diameter_m == 0 else "slides")
    )
    return carry(Medium(turning, None, RADIUS_M), [Start(first, rolls=mode != "stands")])[0]


def at(journey, time_s):
    """Position and velocity (6,), (6,) at a time."""
    leg = next(leg for leg in journey.legs if leg.path.end_s >= time_s)
    return tuple(v[0] for v in leg.path.at(np.array([time_s])))


def kinds(journey):
    return [e.kind for e in journey.events]


def groove(velocity, spin=(0, 0, 0), **more):
    return went((FLOOR, WALL), (0.0, A_M, A_M), velocity, spin, **more)


def test_without_friction_a_ball_that_meets_an_end_wall_glides_on_along_it():
    """Nothing acts along the line: its speed there stays (Newton's first law in the frame's own terms: ω ρ + u is constant)."""
    journey = went(
        (DECK, END), (RADIUS_M - A_M, 0, -2.0), (0, 2.0, -1.0), body=ball(friction=0.0), pull=(0, 0, 0), omega=OMEGA
    )
    assert journey.ends_s == 10.0
    assert "wall" in kinds(journey)
    for time_s in (3.0, 10.0):
        x, u = at(journey, time_s)
        assert np.hypot(u[0], u[1]) == pytest.approx(2.0, abs=1e-9)
        assert x[2] == pytest.approx(-3.0 + A_M, abs=1e-9)


@each_row(("shell", "beta"), [("solid", 0.4), ("hollow", 2 / 3)])
def test_a_ball_pressed_to_a_wall_rolls_on_the_floor_and_rubs_until_it_rolls_on_both(shell, beta):
    """By hand: u' = -mu h/(1 + beta), a spin about the upright grows by mu h/beta until it equals u, at u0 (1 + beta)/(1 + 2 beta)."""
    mu, u0 = 0.3, 2.0
    journey = groove((u0, 0, 0), (0, 0, -u0 / A_M), body=ball(friction=mu, shell=shell), mode="rolls")
    grips_s = u0 / (mu * H * (1 / beta + 1 / (1 + beta)))
    assert [e.time_s for e in journey.events if e.kind == "grip"] == pytest.approx([grips_s], abs=1e-8)
    _, u = at(journey, 0.5 * grips_s)
    assert u[:3] == pytest.approx([u0 - mu * H * 0.5 * grips_s / (1 + beta), 0, 0], abs=1e-9)
    assert A_M * u[4] == pytest.approx(mu * H * 0.5 * grips_s / beta, abs=1e-9)
    x, u = at(journey, 10.0)
    assert u[0] == pytest.approx(u0 * (1 + beta) / (1 + 2 * beta), abs=1e-8)
    assert A_M * u[3:] == pytest.approx([0, u[0], -u[0]], abs=1e-8)
    assert x[1:3] == pytest.approx([A_M, A_M], abs=1e-9)


def test_a_thing_that_slides_along_a_corner_is_held_back_by_both():
    mu, u0 = 0.2, 4.0
    journey = groove((u0, 0, 0), body=ball(friction=mu), mode="stands")
    stops_s = u0 / (mu * (G + H))
    assert journey.end == "rest"
    assert journey.ends_s == pytest.approx(stops_s, rel=1e-9)
    assert at(journey, journey.ends_s)[0][0] == pytest.approx(0.5 * u0 * stops_s, rel=1e-8)


def test_a_thing_that_slides_round_a_drum_s_corner_slows_as_a_pendulum_in_reverse():
    """V' = -mu (V^2/r + h) with V = omega r + u: V = sqrt(h r) tan(phi - mu sqrt(h/r) t), by hand; r of its centre."""
    mu, r, u0 = 0.1, RADIUS_M - A_M, 3.0
    journey = went(
        (DECK, END), IN_DRUM, (0, u0, 0), body=ball(friction=mu), pull=(0, 0, -H), omega=OMEGA, mode="stands"
    )
    phi = np.arctan((OMEGA * r + u0) / np.sqrt(H * r))
    for time_s in (0.4, 1.2):
        speed = np.sqrt(H * r) * np.tan(phi - mu * np.sqrt(H / r) * time_s) - OMEGA * r
        _, u = at(journey, time_s)
        assert np.hypot(u[0], u[1]) == pytest.approx(speed, abs=1e-8)


def test_rolling_on_both_keeps_the_energy_of_the_turning_frame():
    u0 = 2.0
    journey = went(
        (DECK, END),
        IN_DRUM,
        (0, u0, 0),
        (-u0 / A_M, 0, -u0 / A_M),
        body=ball(friction=0.9),
        pull=(0, 0, -H),
        omega=OMEGA,
    )
    x, _u = at(journey, 10.0)
    assert kinds(journey) == ["wall"]  # that it touches as it is laid, and no more
    energy = [u[:3] @ u[:3] / 2 + 0.2 * A_M**2 * (u[3:] @ u[3:]) for _, u in (at(journey, t) for t in (0.0, 10.0))]
    assert energy[1] == pytest.approx(energy[0], rel=1e-9)
    assert x[2] == pytest.approx(-3.0 + A_M, abs=1e-9)


STIFF_1_S2, DAMPED_1_S, SMOOTH_M_S = 3e5, 800.0, 1e-3


def springy(surfaces, place, velocity, spin, body, pull, omega, until_s):
    """Centre and a times the spin, in the room's frame, of a ball on springs in place of surfaces and with friction that sets in over
    SMOOTH_M_S of slip, worked out in the inertial frame."""
    a, beta, mu = body.radius_m, body.inertia_factor, body.friction
    turn = np.array([0.0, 0.0, omega])

    def change(time_s, state):
        x, v, s = state.reshape(3, 3)
        back = np.array(
            [
                [np.cos(omega * time_s), np.sin(omega * time_s), 0],
                [-np.sin(omega * time_s), np.cos(omega * time_s), 0],
                [0, 0, 1],
            ]
        )
        force, torque = back.T @ np.array(pull), np.zeros(3)
        for surface in surfaces:
            n = back.T @ surface.normal(back @ x)
            gap = float(surface.gap((back @ x)[:, None], np.array([a]))[0])
            c = v - a * cross(s, n) - cross(turn, x - a * n)
            press = max(-STIFF_1_S2 * gap - DAMPED_1_S * (v - cross(turn, x)) @ n, 0.0) if gap < 0 else 0.0
            slip = c - (c @ n) * n
            rub = -mu * press * slip / np.sqrt(slip @ slip + SMOOTH_M_S**2)
            force, torque = force + press * n + rub, torque - cross(n, rub)
        return np.concatenate([v, force, torque / (beta * a)])

    first = np.concatenate([place, np.array(velocity) + np.cross(turn, place), np.array(spin) + turn])
    end = solve_ivp(change, (0, until_s), first, method="LSODA", rtol=1e-7, atol=1e-9).y[:, -1].reshape(3, 3)
    cos, sin = np.cos(omega * until_s), np.sin(omega * until_s)
    back = np.array([[cos, sin, 0], [-sin, cos, 0], [0, 0, 1]])
    return back @ end[0], a * (back @ end[2] - turn)


STEEP = Plane("wall", (0.0, -0.4, np.sqrt(0.84)), 0.0)  # leans over the floor
UNDER = (0.0, A_M, A_M * (1.0 + 0.4) / np.sqrt(0.84))
CASES = {  # the last: how many legs
    "under a wall that leans": (
        (FLOOR, STEEP),
        UNDER,
        (1.0, 0, 0),
        (9.0, -20.0, 4.0),
        0.2,
        (0.3, -4.0, -4.0),
        0.0,
        0.4,
        2,
    ),
    "spinning fast in a straight corner": (
        (FLOOR, WALL),
        (0, A_M, A_M),
        (1.5, 0, 0),
        (20.0, 30.0, -8.0),
        0.3,
        (0, -G, -H),
        0.0,
        0.4,
        3,
    ),
    "against both": ((FLOOR, WALL), (0, A_M, A_M), (1.0, 0, 0), (-25.0, -30.0, 40.0), 0.15, (0, -G, -H), 0.0, 0.3, 1),
    "climbs off the floor": (
        (FLOOR, WALL),
        (0, A_M, A_M),
        (0.5, 0, 0),
        (-40.0, 0, 0),
        0.5,
        (0, -2.0, -6.0),
        0.0,
        0.2,
        1,
    ),
    "round a drum": ((DECK, END), IN_DRUM, (0, 1.5, 0), (30.0, -10.0, 5.0), 0.2, (0, 0, -2.0), OMEGA, 0.5, 2),
    "an end wall that it leaves": (
        (DECK, END),
        IN_DRUM,
        (0, 1.5, 0),
        (5.0, -30.0, 5.0),
        0.2,
        (0, 0, -0.05),
        OMEGA,
        0.6,
        2,
    ),
}


@each_row("name", list(CASES))
def test_it_goes_as_a_ball_between_springs_goes(name):
    surfaces, place, velocity, spin, mu, pull, omega, until_s, legs = CASES[name]
    body = ball(friction=mu)
    journey = went(surfaces, place, velocity, spin, body=body, pull=pull, omega=omega, end_s=until_s)
    x, u = at(journey, until_s)
    where, spun = springy(surfaces, place, velocity, spin, body, pull, omega, until_s)
    assert np.linalg.norm(x[:3] - where) < 3e-4
    assert np.linalg.norm(A_M * u[3:] - spun) < 3e-3
    assert sum(leg.path.end_s - leg.path.begin_s > 1e-3 for leg in journey.legs) == legs


def test_a_thing_that_friction_holds_beside_a_wall_rests_and_needs_no_wall():
    journey = groove((0, 0, 0), body=ball(friction=0.5), mode="stands")
    assert (journey.end, kinds(journey)) == ("rest", ["rest"])
    held_by_both = groove((0, 0, 0), body=ball(friction=0.25), mode="stands")
    assert held_by_both.end == "rest"
    assert "wall" in kinds(held_by_both)


def test_a_roll_along_a_wall_that_it_only_touches_keeps_rolling():
    u0 = 1.0
    journey = groove((u0, 0, 0), (0, 0, -u0 / A_M), pull=(0, -G, 0), mode="rolls")
    assert journey.ends_s == 10.0
    assert journey.events == []
    assert at(journey, 10.0)[0][:3] == pytest.approx([10 * u0, A_M, A_M], abs=1e-8)


def test_what_is_pulled_off_a_wall_leaves_it():
    journey = groove((1.0, 0, 0), (0, 0, -1.0 / A_M), pull=(0, -G, 0.5), body=ball(friction=5.0), mode="rolls")
    assert journey.events == []
    assert at(journey, 2.0)[0][2] == pytest.approx(A_M + 0.5 * 0.5 / 1.4 * 4.0, abs=1e-8)  # rolls: 5/7 of the pull


def test_a_thing_at_rest_in_a_corner_slides_when_a_changing_spin_moves_it():
    """Along the line acts omega' r, held up to mu (omega^2 r + h): by hand."""
    r, mu, change = RADIUS_M - A_M, 0.25, 0.2
    spin = ramped(1.5, [(5.0, 1.5 - 5 * change)])  # slower, so that less holds it
    journey = went(
        (DECK, END), IN_DRUM, (0, 0, 0), body=ball(friction=mu), pull=(0, 0, -10.0), omega=spin, mode="stands"
    )
    starts_s = (1.5 - np.sqrt((change * r / mu - 10.0) / r)) / change
    slips_s = [e.time_s for e in journey.events if e.kind == "slip"]
    assert slips_s[-1] == pytest.approx(starts_s, abs=1e-5)
    assert slips_s[0] < starts_s  # till then the deck held it alone


def test_rolling_resistance_brings_it_to_rest_in_a_corner():
    body = ball(friction=0.9, rolling_resistance=0.05)
    journey = groove((1.0, 0, 0), (0, 1 / A_M, -1 / A_M), body=body, mode="rolls")
    assert journey.end == "rest"
    slows = 0.05 * (G + H) / (1 + 2 * 0.4)  # (1 + 2 beta) m u u' is what both take: C (N_1 + N_2) u
    assert journey.ends_s == pytest.approx(1.0 / slows, rel=1e-6)


@each_row("friction", [0.0, 0.05, 0.5, 5.0])
def test_chance_corners_never_gain_energy_and_do_not_stand_still_in_mid_course(friction):
    chance = np.random.default_rng(11)
    for _ in range(3):
        pull = (0.0, *-chance.uniform(0.5, 8.0, 2))
        speed, spin = chance.normal() * 2, chance.normal(size=3) * 20
        journey = groove((speed, 0, 0), spin, body=ball(friction=friction), pull=pull, end_s=1.0)
        assert journey.end in (None, "rest")
        last, before = None, np.inf
        for leg in journey.legs:
            x, u = leg.path.at(np.linspace(leg.path.begin_s, leg.path.end_s, 5))
            if u.shape[1] == 6:
                energy = (
                    np.sum(u[:, :3] ** 2, 1) / 2 + 0.2 * A_M**2 * np.sum(u[:, 3:] ** 2, 1) - x[:, :3] @ np.array(pull)
                )
                assert np.all(np.diff([min(before, energy[0] + 1e-7), *energy]) < 1e-6)
                before, last = energy[-1], energy
        assert last is not None


def test_what_friction_at_a_wall_presses_into_the_floor_is_rubbed_there_too():
    """Spinning down the wall: it pushes back by 1 + mu^2 of its own impulse, and takes mu + mu^2 of it over beta of the spin (by hand, the
    slips keeping their ways)."""
    mu, rolls = 0.2, 2.0
    journey = went(
        (FLOOR, WALL), (0, A_M, A_M + 1e-6), (0, 0, -1.0), (rolls / A_M, 0, 0), body=ball(friction=mu), end_s=1e-4
    )
    _, u = at(journey, journey.ends_s)
    left = rolls - (mu + mu**2) / 0.4 / (1 + mu**2)
    assert A_M * u[3] == pytest.approx(left, abs=5e-3)
