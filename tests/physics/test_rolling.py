"""The laws of what rolls, slides and stands, at single states: the balance itself, not its reduced form, and its limits."""

import numpy as np
import pytest

from rimfall.motions.flight import Room
from rimfall.physics import rolling
from rimfall.physics.aboard import cross, dot
from rimfall.physics.air import air_at
from rimfall.physics.bodies import Body
from rimfall.physics.forces import Force, Medium
from rimfall.physics.spin import ramped
from rimfall.physics.surfaces import Ball, Drum, Plane, Tube
from tests.published.rolling_balls import ROWS
from tests.tables import each_row

COUNT, RADIUS_M, G = 30, 20.0, 9.80665
OMEGA, CHANGE = 0.7, 0.05
SURFACES = {
    "drum": Drum("deck", RADIUS_M, hollow=True),
    "hub": Drum("hub", 15.0, hollow=False),
    "sphere": Ball("deck", RADIUS_M),
    "tube": Tube(RADIUS_M, 6.0),
    "ramp": Plane("ramp", (-0.8, 0.36, 0.48), -10.0),
}
SOLID = Body(0.5, 0.2, friction=0.4, rolling_resistance=0.03)
HOLLOW = Body(0.2, 0.1, 0.5, shell="hollow", friction=0.3, rolling_resistance=0.01)


def law_of(mode, surface, air=None, bodies=(SOLID, HOLLOW), pull=(0.3, -0.2, -1.0), **room):
    spin = ramped(OMEGA - 2 * CHANGE, [(100.0, OMEGA + 98 * CHANGE)])
    where = Room((surface,), room.pop("turns", True), pull, None, **room)
    which = np.arange(COUNT) % len(bodies)
    return rolling.LAWS[mode](surface, rolling.riders(Medium(spin, air, RADIUS_M), where, list(bodies), which))


def states(law, seed=2):
    """Positions and velocities (6, N) on the law's surface, as the law allows them."""
    rng = np.random.default_rng(seed)
    x = rng.normal(size=(3, COUNT)) * [[RADIUS_M / 2], [RADIUS_M / 2], [1.0]]
    for _ in range(60):
        x = x - law.surface.gap(x, law.many.radius_m) * law.surface.normal(x)
    velocity = law.tangent(rng.normal(size=(6, COUNT)), law.surface.normal(x))
    return np.concatenate([x, np.zeros_like(x)]), velocity


RATE = (OMEGA, CHANGE)


def spins(velocity, acceleration, a):
    """a (sigma' + Omega' + Omega x sigma) (3, N): what a torque changes."""
    omega = np.zeros_like(velocity[:3])
    omega[2] = OMEGA
    out = acceleration[3:] + cross(omega, velocity[3:])
    out[2] += CHANGE * a
    return out


@each_row("mode", ["rolls", "slides"])
@each_row("surface", SURFACES.values())
def test_force_and_torque_are_those_of_one_push_at_the_touching_point(mode, surface):
    """m u' = m A + N n + F, and beta a^2 m (spin's change) = -a n x F, less the torque of the rolling resistance: whole where
    friction has anything to spare."""
    law = law_of(mode, surface)
    position, velocity = states(law)
    acceleration, _ = law.at(RATE, position, velocity)
    many, n = law.many, surface.normal(position[:3])
    free = many.aboard.at(*RATE, position[:3], velocity[:3])
    push = acceleration[:3] - free
    press = dot(push, n)
    along = push - press * n
    left = many.inertia_factor * spins(velocity, acceleration, many.radius_m) + cross(n, push)
    if mode == "rolls":
        rolls = velocity[3:] - dot(velocity[3:], n) * n
        share = -dot(left, rolls) / (many.resistance * press * np.sqrt(dot(rolls, rolls)))
        spare = many.friction * press - np.sqrt(dot(along, along))
        assert np.all((share > -1e-9) & (share < 1 + 1e-9))
        assert share[spare > 1e-9] == pytest.approx(np.ones(np.count_nonzero(spare > 1e-9)), abs=1e-9)
        left += share * many.resistance * press * rolls / np.sqrt(dot(rolls, rolls))
    assert left == pytest.approx(np.zeros((3, COUNT)), abs=1e-11)
    if mode == "slides":
        slip = law.vanishing(position, velocity)
        against = -many.friction * press / np.sqrt(dot(slip, slip)) * slip
        assert along == pytest.approx(against, abs=1e-11)


@each_row("mode", ["rolls", "slides", "stands"])
@each_row("surface", SURFACES.values())
def test_what_moves_so_stays_on_the_surface_and_what_rolls_does_not_slip(mode, surface):
    """Differences over a short time: the gap and the slip change in the third order only."""
    law = law_of(mode, surface)
    position, velocity = states(law)
    acceleration, _ = law.at(RATE, position, velocity)
    gaps, slips = [], []
    for h in (2e-3, 1e-3):
        moved, moving = position + h * velocity + h * h / 2 * acceleration, velocity + h * acceleration
        n = surface.normal(moved[:3])
        gaps.append(np.max(np.abs(surface.gap(moved[:3], law.many.radius_m))))
        slips.append(np.max(np.abs(moving[:3] - dot(moving[:3], n) * n - cross(moving[3:], n))))
    assert gaps[1] < max(0.2 * gaps[0], 1e-13)
    if mode == "rolls":
        assert slips[1] < 0.3 * slips[0] or slips[0] < 1e-13


@each_row("mode", ["slides", "stands"])
@each_row("surface", SURFACES.values())
def test_the_change_of_what_vanishes_is_its_change(mode, surface):
    law, h = law_of(mode, surface), 1e-6
    position, velocity = states(law)
    acceleration, _ = law.at(RATE, position, velocity)
    told = law.vanishing_rate(position, velocity, acceleration)
    before = law.vanishing(position - h * velocity, velocity - h * acceleration)
    after = law.vanishing(position + h * velocity, velocity + h * acceleration)
    n = surface.normal(position[:3])
    found = (after - before) / (2 * h)
    assert told - dot(told, n) * n == pytest.approx(found - dot(found, n) * n, abs=1e-6)


@each_row("still_air", [False, True])
def test_the_air_is_that_of_flight(still_air):
    """Drag as the inertial force of what flies has it, turned into the frame at the instant the frames coincide."""
    air = air_at(101.325, 20.0)
    law = law_of("rolls", SURFACES["drum"], air, still_air=still_air, pull=(0.0, 0.0, 0.0))
    bare = law_of("rolls", SURFACES["drum"], pull=(0.0, 0.0, 0.0))
    position, velocity = states(law)
    x, u = position[:3], velocity[:3]
    drag = law.many.aboard.at(OMEGA, 0.0, x, u) - bare.many.aboard.at(OMEGA, 0.0, x, u)
    turning = u + np.stack([-OMEGA * x[1], OMEGA * x[0], np.zeros(COUNT)])
    medium = Medium(ramped(OMEGA, []), air, RADIUS_M)
    force = Force(medium, law.many.aboard._bodies, np.zeros(COUNT), np.ones(COUNT), np.zeros((3, COUNT)),
                  air_turns=np.full(COUNT, 0.0 if still_air else 1.0))  # fmt: skip
    assert drag == pytest.approx(force.at(0.0, x, turning), rel=1e-12)


def test_the_frames_own_accelerations_are_those_of_a_straight_line():
    """Without anything that acts, a body's inertial path is straight: its second change in the frame is all the frame's."""
    law = law_of("rolls", SURFACES["drum"], pull=(0.0, 0.0, 0.0))
    position, velocity = states(law)
    x, u = position[:3], velocity[:3]
    inertial = u + OMEGA * np.stack([-x[1], x[0], np.zeros(COUNT)])

    def at(t):
        angle = OMEGA * t + CHANGE * t * t / 2
        c, s = np.cos(angle), np.sin(angle)
        p = x + t * inertial
        return np.stack([c * p[0] + s * p[1], c * p[1] - s * p[0], p[2]])

    h = 1e-3
    second = (-at(2 * h) + 16 * at(h) - 30 * x + 16 * at(-h) - at(-2 * h)) / (12 * h * h)
    assert law.many.aboard.at(*RATE, x, u) == pytest.approx(second, abs=1e-7)


@each_row("key", ["ROL-01", "ROL-02"])
def test_on_a_turntable_it_turns_at_the_published_share(key):
    """u' in the room is share Omega x (velocity in the room): asked of the law at single states."""
    row = ROWS[key]
    shell = {2 / 5: "solid", 2 / 3: "hollow"}[row.inputs["inertia_factor"]]
    law = law_of("rolls", Plane("floor", (0.0, 0.0, 1.0), 0.0), bodies=(Body(0.1, 0.05, shell=shell),), pull=(0, 0, -G))
    position, velocity = states(law)
    x, u = position[:3], velocity[:3]
    acceleration = law.at((OMEGA, 0.0), position, velocity)[0][:3]
    z = np.zeros_like(x)
    z[2] = OMEGA
    outside = u + cross(z, x)
    turned = acceleration + 2 * cross(z, u) + cross(z, cross(z, x))
    assert turned == pytest.approx(row.value * cross(z, outside), abs=1e-12)


def test_down_a_slope_it_gains_the_published_share():
    row, tilt = ROWS["ROL-05"], 0.3
    slope = Plane("ramp", (-np.sin(tilt), 0.0, np.cos(tilt)), 0.0)
    law = law_of("rolls", slope, bodies=(Body(0.1, 0.05),), pull=(0, 0, -G), turns=False)
    position, velocity = states(law)
    down = law.at((0.0, 0.0), position, velocity)[0].T[:, :3] @ [-np.cos(tilt), 0.0, -np.sin(tilt)]
    assert down / (G * np.sin(tilt)) == pytest.approx(np.full(COUNT, row.value), abs=row.tolerance)


@each_row("surface", SURFACES.values())
def test_the_impulse_that_stops_a_slip_leaves_none_and_acts_at_the_touching_point(surface):
    law = law_of("slides", surface)
    position, velocity = states(law)
    after = law.stopped(position, velocity)
    assert law.vanishing(position, after) == pytest.approx(np.zeros((3, COUNT)), abs=1e-14)
    gained, n = after - velocity, surface.normal(position[:3])
    assert law.many.inertia_factor * gained[3:] == pytest.approx(-cross(n, gained[:3]), abs=1e-14)


def test_friction_holds_a_rolling_ball_on_a_slope_up_to_seven_halves_of_it():
    """tan = 7/2 mu for a solid ball (textbook; from memory), from either side."""
    for share, holds in ((0.999, True), (1.001, False)):
        tilt = np.arctan(3.5 * 0.4 * share)
        slope = Plane("ramp", (-np.sin(tilt), 0.0, np.cos(tilt)), 0.0)
        body = Body(0.5, 0.2, friction=0.4)
        law = law_of("slides", slope, bodies=(body,), pull=(0, 0, -G), turns=False)
        position, velocity = states(law)
        held, way = rolling.holds(law, (0.0, 0.0), position, law.stopped(position, velocity))
        assert np.all(held == holds)
        assert np.all(way.T @ [np.cos(tilt), 0.0, np.sin(tilt)] < 0)
