"""Flight in rooms with flat floors that turn, in still air, and of balls that spin; checked in the inertial frame by scipy."""

import itertools
import math

import numpy as np
import pytest
from scipy.integrate import OdeSolution, solve_ivp
from scipy.optimize import brentq

from rimfall.motions.flight import Release, Room, fly
from rimfall.physics.air import air_at
from rimfall.physics.bodies import Body
from rimfall.physics.forces import Medium
from rimfall.physics.spin import ramped, steady
from rimfall.physics.surfaces import Ball, Drum, Plane, Tube
from tests.tables import each_row
from tests.vectors import cross

R, OMEGA = 20.0, 0.5
FLOOR = Plane("floor", (-1.0, 0.0, 0.0), -R)
CEILING = Plane("ceiling", (1.0, 0.0, 0.0), R - 6.0)
EDGES = tuple(Plane("edge", n, -4.0, edge=True) for n in ((0.0, 1.0, 0.0), (0.0, -1.0, 0.0)))
WALLS = tuple(Plane("wall", n, -3.0) for n in ((0.0, 0.0, 1.0), (0.0, 0.0, -1.0)))
POD = Room((FLOOR, CEILING, *EDGES, *WALLS), True, (0.0, 0.0, 0.0), math.hypot(R, 4.0))
RAMP = ramped(0.5, [(1.1, 0.9), (1.6, 0.1), (2.5, 0.6)])
AIR = air_at(101.325, 20.0)
BALL = Body(0.06, 0.07, 0.45)


def inertial(spin, time_s, position, velocity):
    """A state of the turning frame as seen outside, written out."""
    angle, omega = float(spin.angle_rad(time_s)), float(spin.rate_rad_s(time_s))
    c, s = math.cos(angle), math.sin(angle)
    turn = np.array([[c, -s, 0], [s, c, 0], [0, 0, 1]])
    return turn @ position, turn @ (np.asarray(velocity) + cross([0, 0, omega], position))


def release(spin, position, velocity, room=POD, time_s=0.3, body=BALL, end_s=20.0, **more):
    return Release(room, body, time_s, *inertial(spin, time_s, np.array(position), velocity), end_s, **more)


def one(spin, released, air=None):
    return fly(Medium(spin, air, R), [released])[0]


def seen_aboard(spin, time_s, position):
    angle = spin.angle_rad(time_s)
    c, s = np.cos(angle), np.sin(angle)
    return np.array([c * position[0] + s * position[1], c * position[1] - s * position[0], position[2]])


def gap(surface, x, radius_m):
    return np.dot(surface.into, x) - surface.at_m - (0.0 if surface.edge else radius_m)


def first_met(spin, where, begin_s, radius_m):
    """Time, and surface of the pod, of the first contact of a path `where(t)`, (3,) at a time and (3, n) at times (n,): dense samples,
    then Brent (scipy)."""
    times, found = np.linspace(begin_s, begin_s + 8.0, 8001), []
    aboard = seen_aboard(spin, times, where(times))
    for surface in POD.surfaces:
        gaps = gap(surface, aboard, radius_m)
        if np.any(gaps < 0):
            k = int(np.argmax(gaps < 0))
            root = brentq(lambda t, s=surface: gap(s, seen_aboard(spin, t, where(t)), radius_m), times[k - 1], times[k],
                          xtol=1e-14)  # fmt: skip
            found.append((root, surface.name))
    return min(found)


THROWS = [
    ((R - 1.5, 0.0, 0.0), (0.0, 0.0, 0.0)),
    ((R - 1.5, 1.0, 0.5), (-1.0, 2.0, 0.3)),
    ((R - 3.0, -2.0, 0.0), (0.0, 25.0, 0.0)),
    ((R - 3.0, 0.0, 0.0), (0.5, 0.0, 4.0)),
    ((R - 3.0, -1.0, 0.0), (-7.0, -0.5, 0.0)),
]


@each_row("spin", [steady(OMEGA), RAMP])
def test_in_a_vacuum_the_pods_surfaces_are_met_where_a_root_finder_says(spin):
    names = set()
    for position, velocity in THROWS:
        released = release(spin, position, velocity)
        flown = one(spin, released)
        x, v = released.position_m, released.velocity_m_s
        time_s, name = first_met(spin, lambda t, x=x, v=v: (x + np.multiply.outer(t - 0.3, v)).T, 0.3, BALL.radius_m)
        assert (flown.path.end_s, flown.surface.name) == (pytest.approx(time_s, abs=1e-9), name)
        names.add(name)
    assert names >= {"floor", "wall", "ceiling", "edge"}


@each_row("air", [None, AIR])
def test_no_step_turns_the_frame_far_or_crosses_a_kink_of_the_spin(air):
    room = Room((FLOOR,), True, (0.0, 0.0, 0.0), R)
    path = one(RAMP, release(RAMP, (2.0, 0.0, 0.0), (0.3, 0.1, 0.0), room), air).path
    assert np.all(path.length_s * 0.9 <= 0.5 + 1e-12)
    inside = path.start_s + path.length_s
    for kink_s in (1.1, 1.6, 2.5):
        assert not np.any((path.start_s < kink_s - 1e-12) & (inside > kink_s + 1e-12))


def drag_and_lift(spin, spinning, still):
    """Right-hand side of the motion of BALL in the inertial frame, written out: constant Cd, and lift by
    C_L = 1.12 S/(0.583 + 2.333 S) (Cross & Nathan)."""
    area, density = math.pi * BALL.radius_m**2, AIR.deck_density_kg_m3

    def rates(t, y):
        omega = 0.0 if still else float(spin.rate_rad_s(t))
        u = y[3:] - cross([0, 0, omega], y[:3])
        s = spinning - [0, 0, omega]
        speed, rate = np.linalg.norm(u), np.linalg.norm(s)
        thin = math.exp(omega**2 * (y[0] ** 2 + y[1] ** 2 - R**2) / (2 * 287.05 * AIR.temperature_k))
        factor = BALL.radius_m * rate / speed
        lift = 1.12 * factor / (0.583 + 2.333 * factor) * speed * cross(s, u) / rate
        a = 0.5 * density * thin * area * (lift - 0.45 * speed * u) / BALL.mass_kg
        return np.concatenate([y[3:], a])

    return rates


@each_row("still", [False, True])
@each_row("spin", [steady(OMEGA), RAMP])
def test_a_spinning_ball_in_air_flies_and_lands_as_scipy_has_it(spin, still):
    spinning = np.array([60.0, -110.0, 45.0])
    room = Room(POD.surfaces, True, POD.pull_m_s2, POD.across_m, still)
    for position, velocity in THROWS[1:]:
        released = release(spin, position, velocity, room, spin_rad_s=spinning, lifts=True)
        flown = one(spin, released, AIR)
        knots = [0.3, *(t for t in spin.times_s if t > 0.3), 8.4]
        pieces, state = [], np.concatenate([released.position_m, released.velocity_m_s])
        for a, b in itertools.pairwise(knots):
            pieces.append(solve_ivp(drag_and_lift(spin, spinning, still), (a, b), state, method="DOP853", rtol=1e-12,
                                    atol=1e-12, dense_output=True))  # fmt: skip
            state = pieces[-1].y[:, -1]

        ends = [*(p.sol.ts[:-1] for p in pieces), pieces[-1].sol.ts[-1:]]
        path = OdeSolution(np.concatenate(ends), [step for p in pieces for step in p.sol.interpolants])

        def where(t, path=path):
            return path(t)[:3]

        time_s, name = first_met(spin, where, 0.3, BALL.radius_m)
        assert flown.surface.name == name
        assert flown.path.end_s == pytest.approx(time_s, abs=2e-7)
        times = np.linspace(0.3, flown.path.end_s, 50)
        assert np.abs(flown.path.at(times)[0].T - where(times)).max() < 1e-6


@each_row("air", [None, AIR])
def test_how_a_release_stands_to_a_floor_that_turns_is_told_by_its_own_frame(air):
    at = (R - BALL.radius_m, 1.0, 0.0)
    spin = steady(OMEGA)
    resting = one(spin, release(spin, at, (0.0, 0.0, 0.0)), air)
    assert (resting.surface, resting.path.end_s) == (FLOOR, 0.3)
    thrown = one(spin, release(spin, at, (-2.0, 0.0, 0.0)), air)
    assert thrown.surface is FLOOR
    assert thrown.path.end_s == pytest.approx(0.3 + 2 * 2.0 / (OMEGA**2 * R), rel=0.15)
    hanging = one(spin, release(spin, (R - 6.0 + BALL.radius_m, 0.0, 0.0), (0.0, 0.0, 0.0)), air)
    assert hanging.surface is not CEILING
    assert hanging.path.end_s > 2.0


def test_speeding_up_throws_a_resting_body_off_a_floor_it_would_lie_on():
    """Where the spin rises faster than omega^2 R carries, a floor beside the axis leaves the body behind."""
    side = Plane("floor", (0.0, 1.0, 0.0), -1.0)  # the body is at azimuth 0, the floor is behind it
    room = Room((side,), True, (0.0, 0.0, 0.0), R)
    at = (10.0, -1.0 + BALL.radius_m, 0.0)
    for rate, stays in ((0.9, True), (0.1, False)):
        spin = ramped(0.5, [(2.0, rate)])
        flown = one(spin, release(spin, at, (0.0, 0.0, 0.0), room, time_s=0.0, end_s=0.5))
        assert (flown.surface is side and flown.path.end_s == 0.0) == stays


@each_row(
    ("surface", "across"), [(Ball("deck", R), R), (Tube(R, 3.0), R), (Drum("edge", R, hollow=True, edge=True), R)]
)
def test_round_rooms_are_met_where_a_root_finder_says(surface, across):
    spin, rng = steady(OMEGA), np.random.default_rng(6)
    room = Room((surface,), True, (0.0, 0.0, 0.0), across)
    starts = [(np.array([R - 2.0, 0.0, 0.0]), rng.normal(size=3) * [2, 2, 1]) for _ in range(20)]
    for flown in fly(Medium(spin, None, R), [release(spin, x, v, room) for x, v in starts]):
        x, v = flown.release.position_m, flown.release.velocity_m_s

        def outside(t, x=x, v=v):
            x, y, z = x + (t - 0.3) * v
            rho = math.hypot(x, y)
            kind = type(surface)
            if kind is Drum:
                return R - rho
            return (
                R - BALL.radius_m - math.hypot(rho, z)
                if kind is Ball
                else 3.0 - BALL.radius_m - math.hypot(rho - 17, z)
            )

        times = np.linspace(0.3, 20.0, 4001)
        k = int(np.argmax(np.array([outside(t) for t in times]) < 0))
        assert flown.path.end_s == pytest.approx(brentq(outside, times[k - 1], times[k], xtol=1e-14), abs=1e-9)


def test_bodies_in_rooms_of_all_kinds_fly_in_one_batch_as_alone():
    spin = steady(OMEGA)
    rooms = [POD, Room((Ball("deck", R),), True, (0.0, 0.0, 0.0), R), Room((FLOOR,), False, (0.0, -1.0, 0.0), None)]
    releases = [
        release(spin, (R - 2.0, 0.5, 0.0), (-1.0, 1.0, 0.5), room, spin_rad_s=(9.0, 0.0, 30.0), lifts=True)
        for room in rooms
    ]
    for air in (None, AIR):
        together = fly(Medium(spin, air, R), releases)
        for flown, released in zip(together, releases, strict=True):
            alone = one(spin, released, air)
            assert flown.surface == alone.surface
            assert flown.path.end_s == pytest.approx(alone.path.end_s, abs=1e-7)
