"""What the air bears up, against laws written down here a second time."""

import math

import numpy as np
import pytest

from rimfall.motions.flight import Room
from rimfall.physics.aboard import Aboard, of_frame
from rimfall.physics.air import air_at
from rimfall.physics.bodies import Body, as_arrays
from rimfall.physics.buoyancy import of_bodies
from rimfall.physics.drag import Slowing
from rimfall.physics.forces import Force, Medium
from rimfall.physics.spin import ramped, steady
from rimfall.physics.turned import turned_back
from rimfall.physics.windowed import WindowStepper
from tests.tables import each_row

AIR = air_at(101.325, 20.0)
RHO = 101325.0 / (287.05 * 293.15)
R, OMEGA, G = 56.0, 0.4, 9.80665
VOLUME = math.pi / 6 * 0.28**3


def balloon(mass_kg, drag=0.0):
    return Body(mass_kg, 0.28, drag, buoyant=True)


def force(bodies, spin=None, turns=1.0, pull=(0.0, 0.0, 0.0)):
    n = len(bodies)
    medium = Medium(spin or steady(OMEGA), AIR, R)
    return Force(medium, as_arrays(bodies), np.zeros(n), np.full(n, turns), np.tile(np.array([pull]).T, n))


def column(*values):
    return np.array([values], dtype=float).T


def test_a_bubble_of_no_mass_starts_to_rise_at_twice_gravity():
    """It moves half its own volume of air: a sphere's added mass (Batchelor, Introduction to Fluid Dynamics, 6.8)."""
    found = force([balloon(1e-12)], turns=0.0, pull=(0, -G, 0)).at(0.0, column(0, 1, 0), column(0, 0, 0))
    assert found[:, 0] == pytest.approx([0, 2 * G, 0], rel=1e-9)


@each_row("mass_kg", [1e-6, 0.0049, 0.1])
def test_its_slowing_rates_are_how_pushes_across_its_way_and_along_it_die_out(mass_kg):
    """Drag by the square of a speed along z has the derivative -rate across it and -2 rate along it, of the mass that is moved; the air
    stands still."""
    bodies, slowing = force([balloon(mass_kg, 0.5)], turns=0.0), Slowing()
    bodies.at(0.0, column(0, 1, 0), column(0, 0, 3.0), slowing)
    across = bodies.at(0.0, column(0, 1, 0), column(1e-6, 0, 3.0))[0, 0] / 1e-6
    along = np.subtract(*(bodies.at(0.0, column(0, 1, 0), column(0, 0, 3.0 + d))[2, 0] for d in (1e-6, -1e-6))) / 2e-6
    assert slowing.across_1_s[0] == pytest.approx(-across, rel=1e-6)
    assert slowing.along_1_s[0] == pytest.approx(-along, rel=1e-6)
    assert np.abs(slowing.way[:, 0]) == pytest.approx([0, 0, 1])
    assert slowing.across_1_s[0] == pytest.approx(
        0.25 * math.pi * 0.14**2 * RHO * 3.0 / (mass_kg + RHO * VOLUME / 2), rel=1e-9
    )


@each_row("mass_kg", [0.0049, 0.1])
def test_in_still_air_it_comes_to_the_speed_at_which_drag_carries_what_the_air_does_not(mass_kg):
    """Constant Cd: v = V tanh(a t/V), height V^2/a ln cosh(a t/V), a the first acceleration, V the last speed (separated by hand)."""
    moved, carried = mass_kg + RHO * VOLUME / 2, RHO * VOLUME - mass_kg
    first, last = abs(carried) * G / moved, math.sqrt(2 * abs(carried) * G / (RHO * 0.5 * math.pi * 0.14**2))
    still = force([balloon(mass_kg, 0.5)], turns=0.0, pull=(0, -G, 0))
    position, velocity = WindowStepper(still, column(0, 0, 0), column(0, 0, 0), 3.0, absolute=1e-10).propagate()
    way = math.copysign(1.0, carried)
    assert way * velocity[1, 0] == pytest.approx(last * math.tanh(3.0 * first / last), abs=1e-8)
    assert way * position[1, 0] == pytest.approx(last**2 / first * math.log(math.cosh(3.0 * first / last)), abs=1e-8)


@each_row("spin", [steady(OMEGA), ramped(0.1, [(10.0, 1.0)])])
def test_a_body_of_the_airs_density_is_moved_as_the_air_is(spin):
    """Archimedes in turning air: Du/Dt of u = Omega x r, with Omega' x r where the spin changes."""
    omega, change = float(spin.rate_rad_s(5.0)), float(spin.change_rad_s2(5.0))
    density = RHO * math.exp(-(omega**2) * (R**2 - 30.0**2) / (2 * 287.05 * 293.15))
    neutral = force([balloon(density * VOLUME)], spin, pull=(0, 0, -2.0))
    found = neutral.at(5.0, column(30.0, 0, 4.0), column(0, omega * 30.0, 0))
    assert found[:, 0] == pytest.approx([-(omega**2) * 30.0, change * 30.0, 0], abs=1e-12)


def test_those_that_are_not_buoyant_move_as_without_them():
    ball = Body(0.5, 0.2)
    state = np.array([[20.0, 30.0], [3.0, 5.0], [1.0, 2.0]]), np.array([[1.0, 2.0], [4.0, 6.0], [-3.0, 1.0]])
    both, alone = force([ball, balloon(0.01)], pull=(1.0, 0, -2.0)), force([ball], pull=(1.0, 0, -2.0))
    found = both.at(2.0, *state)[:, 0]
    assert found == pytest.approx(alone.at(2.0, *(s[:, :1] for s in state))[:, 0], rel=1e-14)
    assert both.take([0]).at(2.0, *(s[:, :1] for s in state))[:, 0] == pytest.approx(found, rel=1e-14)


@each_row("still_air", [False, True])
def test_aboard_it_is_moved_as_outside(still_air):
    """The same acceleration, turned to the axes of the turning frame and with its own accelerations added."""
    spin, time_s, bodies = ramped(0.1, [(10.0, 1.0)]), 4.0, as_arrays([Body(0.02, 0.28, buoyant=True)])
    medium, pull = Medium(spin, AIR, R), (0.3, -0.2, -1.5)
    omega, change, angle = (float(f(time_s)) for f in (spin.rate_rad_s, spin.change_rad_s2, spin.angle_rad))
    position, velocity = column(30.0, -8.0, 2.0), column(3.0, 9.0, -2.0)
    air_turns = np.zeros(1) if still_air else np.ones(1)
    outside = Force(medium, bodies, np.zeros(1), np.ones(1), np.array([pull]).T, air_turns=air_turns)
    x, u = turned_back(position, angle), turned_back(velocity, angle)
    u = u - np.cross([0, 0, omega], x, axis=0)
    turned = turned_back(outside.at(time_s, position, velocity), angle) + of_frame(omega, change, x, u)
    found = Aboard(medium, Room((), True, pull, None, still_air), bodies).at(omega, change, x, u)
    assert found == pytest.approx(turned, rel=1e-12)


def test_nothing_is_borne_in_vacuum_or_unless_asked():
    vacuum = Medium(steady(OMEGA), None, R)
    assert of_bodies(as_arrays([balloon(0.01)]), vacuum) is None
    assert of_bodies(as_arrays([Body(0.01, 0.28)]), Medium(steady(OMEGA), AIR, R)) is None


def through_a_knot(jumps):
    """The shortest of its steps, seconds, through a knot at which the spin begins to change, and where it ends."""
    spin = ramped(0.3, [(1.0, 0.3), (2.0, 0.9)])
    begin, stops = (column(50.0, 0, 0), column(-3.0, 17.0, 1.0)), {"absolute": 1e-10, "stops_s": np.array([[1.0]])}
    stepper, lengths = WindowStepper(force([balloon(0.0049, 0.47)], spin), *begin, 1.5, jumps=jumps, **stops), []
    while not stepper.done:
        step = stepper.step()
        lengths.append(step.length_s[0])
    return min(lengths), step.position_m + step.path_m[-1]


def test_where_the_change_of_the_spin_jumps_its_force_does_and_no_step_need_creep_past_that():
    (shortest, position), (creeping, crept) = (through_a_knot(jumps) for jumps in (True, False))
    assert creeping < 1e-7 < 1e-3 < shortest
    assert position == pytest.approx(crept, abs=1e-8)


@each_row(("body", "spin", "jumps"), [
    (balloon(0.0049), ramped(0.1, [(10.0, 1.0)]), True), (balloon(0.0049), steady(OMEGA), False),
    (Body(0.0049, 0.28), ramped(0.1, [(10.0, 1.0)]), False),
])  # fmt: skip
def test_only_what_is_buoyant_in_a_changing_spin_feels_it_jump(body, spin, jumps):
    assert force([body], spin).jumps == jumps
