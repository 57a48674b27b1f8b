"""A frame whose axis moves: a free top's steady precession in closed form (Landau & Lifshitz, Mechanics, 3rd ed., §33), and differences in time."""

import numpy as np
import pytest
from scipy.spatial.transform import Rotation

from rimfall.physics import turned
from rimfall.physics.tumbling import Tumbling
from rimfall.vessel.attitude import torque_free
from rimfall.vessel.shell import shell
from tests.vessel.tumbling import body_of

ACROSS, ALONG, START = 2.0, 3.0, np.array([0.3, 0.0, 1.1])  # moments of a top, and its rates at time 0
CENTRE = np.array([4.0, -2.0, 7.0])
PLACE, SPEED, TIME, STEP = np.array([1.0, 5.0, -3.0]), np.array([0.7, -1.2, 0.4]), 8.0, 1e-3
TIMES = TIME + STEP * np.arange(-2, 3)
FIRST, SECOND = np.array([1, -8, 0, 8, -1]) / 12 / STEP, np.array([-1, 16, -30, 16, -1]) / 12 / STEP**2


def frame(rates=START):
    return Tumbling(torque_free(body_of([ACROSS, ACROSS, ALONG]), rates), CENTRE, 30.0)


def attitude(time_s):
    """Round the momentum at L/I, and round its own axis by what is left of its rate."""
    precession = np.array([ACROSS, ACROSS, ALONG]) * START / ACROSS
    own = (1 - ALONG / ACROSS) * START[2] * np.array([0.0, 0.0, 1.0])
    time_s = np.asarray(time_s)[..., None]
    return Rotation.from_rotvec(precession * time_s) * Rotation.from_rotvec(own * time_s)


def rates(time_s):
    nods = (ALONG / ACROSS - 1) * START[2] * time_s
    return np.array([START[0] * np.cos(nods), START[0] * np.sin(nods), START[2]])


def at_rest_aboard(place):
    return attitude(TIMES).apply(place - CENTRE) + CENTRE


def test_to_the_room_and_back_aboard():
    """Of what goes straight on aboard, place and velocity in the room; and those of what stands still."""
    spin = frame()
    way = attitude(TIMES).apply(PLACE + SPEED * (TIMES - TIME)[:, None] - CENTRE) + CENTRE
    position, velocity = spin.to_inertial(TIME, PLACE, SPEED)
    np.testing.assert_allclose(position, way[2], atol=1e-11)
    np.testing.assert_allclose(velocity, FIRST @ way, atol=1e-9)
    back = spin.to_frame(TIME, position, velocity)
    np.testing.assert_allclose(back, (PLACE, SPEED), atol=1e-11)
    np.testing.assert_allclose(spin.carries(TIME, way[2]), FIRST @ at_rest_aboard(PLACE), atol=1e-9)
    np.testing.assert_allclose(spin.turn(SPEED, TIME), attitude(TIME).apply(SPEED), atol=1e-11)
    np.testing.assert_allclose(spin.turn_back(SPEED, TIME), attitude(TIME).inv().apply(SPEED), atol=1e-11)


def test_its_accelerations_are_those_of_a_straight_line_in_the_room():
    spin = frame()
    line = PLACE + SPEED * (TIMES - TIME)[:, None]
    aboard = attitude(TIMES).inv().apply(line - CENTRE) + CENTRE
    np.testing.assert_allclose(spin.own(TIME, aboard[2], FIRST @ aboard), SECOND @ aboard, atol=1e-6)
    change = (rates(TIME + STEP) - rates(TIME - STEP)) / (2 * STEP)
    np.testing.assert_allclose(spin.omega_rad_s(TIME), rates(TIME), atol=1e-12)
    np.testing.assert_allclose(spin.omega_change_rad_s2(TIME), change, atol=1e-6)
    assert spin.rate_rad_s(TIME) == pytest.approx(START[2])
    held = (
        attitude(TIME).inv().apply(SECOND @ at_rest_aboard(PLACE))
    )  # what holds it there against all but its velocity
    outward = spin.centrifugal(TIME, PLACE)
    np.testing.assert_allclose(outward - np.cross(change, PLACE - CENTRE), -held, atol=1e-6)
    aside = spin.own(TIME, PLACE, SPEED) - spin.own(TIME, PLACE, 0.0 * SPEED)
    np.testing.assert_allclose(spin.coriolis(TIME, SPEED), aside, atol=1e-12)


def test_a_thrown_path_is_bent_aboard_as_differences_say():
    spin, pull = frame(), np.array([0.3, -0.8, 0.5])
    since = (TIMES - TIME)[:, None]
    aboard = attitude(TIMES).inv().apply(PLACE + SPEED * since + pull * since**2 / 2 - CENTRE) + CENTRE
    at = np.array([TIME])
    place, velocity, acceleration = turned.states(spin, at, *(v[:, None] for v in (PLACE, SPEED, pull)))
    np.testing.assert_allclose(place[:, 0], aboard[2], atol=1e-11)
    np.testing.assert_allclose(velocity[:, 0], FIRST @ aboard, atol=1e-9)
    np.testing.assert_allclose(acceleration[:, 0], SECOND @ aboard, atol=1e-6)


def test_what_does_not_turn_turns_back_aboard():
    (by,) = frame().back(np.array([2.0]), np.array([TIME]))
    turned = Rotation.from_quat(by, scalar_first=True).as_matrix()
    np.testing.assert_allclose(turned, (attitude(TIME).inv() * attitude(2.0)).as_matrix(), atol=1e-11)


def test_how_far_and_how_fast_it_turns():
    steady, time_s = frame([0.0, 0.0, 1.1]), np.linspace(0, 30, 301)
    np.testing.assert_allclose(steady.angle_rad(time_s), 1.1 * time_s, atol=1e-9)
    assert 1.0 <= frame().fastest_rad_s / np.linalg.norm(START) < 1.2


def test_a_sheet_has_the_inertia_of_a_plate():
    """m (b² + c²)/12 about the normal of a thin plate, m c²/12 and m b²/12 about its edges' directions: any textbook."""
    b, c, off = 6.0, 2.0, np.array([3.0, 4.0, 5.0])
    corners = np.array([[-b, -c, 0], [b, -c, 0], [b, c, 0], [-b, c, 0]]) / 2 + off
    body = shell(corners[[[0, 1, 2], [0, 2, 3]]])
    assert body.mass_kg == pytest.approx(b * c)
    assert body.centre_m == pytest.approx(off)
    expected = b * c / 12 * np.diag([c**2, b**2, b**2 + c**2])
    np.testing.assert_allclose(body.inertia_kg_m2, expected, atol=1e-9)
