"""The stepper with a step of its own for every body: each as if alone, no step past a knot or a corner, states in place."""

from itertools import pairwise

import numpy as np
import pytest

from rimfall.motions.flight import Room
from rimfall.physics import rolling
from rimfall.physics.bodies import Body
from rimfall.physics.crowd import CrowdWalker
from rimfall.physics.forces import Medium
from rimfall.physics.spin import ramped, steady
from rimfall.physics.surfaces import Drum, Plane
from rimfall.physics.walker import MOST_TURNED_RAD, Walker
from tests.tables import each_row

G, RADIUS_M = 9.80665, 20.0
FLAT, DRUM = Plane("floor", (0.0, 0.0, 1.0), 0.0), Drum("deck", RADIUS_M, hollow=True)
BALL = Body(0.5, 0.2, friction=0.4)


def walker(
    mode, surface, spin, position, velocity, *, body=BALL, pull=(0.0, 0.0, 0.0), start_s=0.0, end_s=10.0, kind=Walker
):
    count = position.shape[1]
    room = Room((surface,), spin is not None, pull, None)
    medium = Medium(spin or steady(0.0), None, RADIUS_M)
    law = rolling.LAWS[mode](surface, rolling.riders(medium, room, [body], np.zeros(count, dtype=int)))
    state = np.concatenate([position, 0 * position]), np.concatenate([velocity, 0 * velocity])
    times = np.broadcast_to(start_s, count).astype(float), np.broadcast_to(end_s, count).astype(float)
    return kind(law, spin, *times, *state, absolute_m=1e-10, lasts_s=np.ones(count))


def on_drum(angles):
    return (RADIUS_M - BALL.radius_m) * np.array([np.cos(angles), np.sin(angles), 0 * angles])


def walk(one, until=lambda w: np.all(w.time_s >= w._end_s), most=500):
    """All Taken until it is there."""
    taken = []
    for _ in range(most):
        if until(one):
            return taken
        step = one.step()
        if step is not None:
            taken.append(step)
    raise AssertionError("too many steps")


def test_each_body_goes_at_its_own_pace_as_if_alone():
    x, u = on_drum(np.array([0.0, 1.0])), np.array([[0.0, -9.0], [0.1, 5.0], [0.1, 1.0]])
    both = walker("rolls", DRUM, steady(0.5), x, u)
    taken = walk(both)
    counts = np.bincount(np.concatenate([t.who[t.step.length_s > 0] for t in taken]))  # who is there waits
    for i in range(2):
        alone = walker("rolls", DRUM, steady(0.5), x[:, [i]], u[:, [i]])
        assert len(walk(alone)) == counts[i]
        assert both.position[:, i] == pytest.approx(alone.position[:, 0], abs=1e-11)
    assert counts[0] != counts[1]


def test_steps_follow_on_each_other_and_their_paths_end_where_the_next_begins():
    one = walker("rolls", DRUM, steady(0.5), on_drum(np.array([0.3])), np.array([[0.0], [3.0], [2.0]]))
    taken = walk(one)
    for before, after in pairwise(taken):
        a, b = before.step, after.step
        assert a.elapsed_s + a.length_s == pytest.approx(b.elapsed_s, abs=1e-12)
        assert a.position_m + a.path_m[-1] == pytest.approx(b.position_m, abs=1e-9)
        assert a.velocity_m_s + a.path_m_s[-1] == pytest.approx(b.velocity_m_s, abs=1e-9)
    assert one.time_s[0] == 10.0


def test_no_step_crosses_a_knot_and_each_uses_its_own_change_of_the_rate():
    spin = ramped(0.5, [(2.0, 0.5), (4.0, 0.9)])
    x, u = on_drum(np.array([0.0, 1.0])), np.array([[0.0, 0.0], [0.1, 2.0], [0.5, 1.0]])
    for t in walk(walker("rolls", DRUM, spin, x, u, start_s=np.array([0.0, 3.0]))):
        begin, end = t.step.elapsed_s, t.step.elapsed_s + t.step.length_s
        for knot in (2.0, 4.0):
            assert np.all((end <= knot + 1e-12) | (begin >= knot))
        inside = (begin >= 2.0) & (begin < 4.0)
        assert t.change_rad_s2 == pytest.approx(np.where(inside, 0.2, 0.0), abs=1e-14)
        assert t.rate_rad_s == pytest.approx(spin.rate_rad_s(begin), abs=1e-14)


def test_the_frame_never_turns_far_within_a_step():
    still = on_drum(np.array([0.0]))
    for t in walk(walker("rolls", DRUM, steady(3.0), still, 0 * still)):
        assert np.all(t.step.length_s * 3.0 <= MOST_TURNED_RAD * (1 + 1e-12))


def test_no_step_goes_past_the_corner_where_a_slip_dies_out():
    """The slip falls by mu g (1 + 1/beta) a second, in a straight line (textbook; from memory)."""
    x, u = np.array([[0.0], [0.0], [0.1]]), np.array([[2.0], [0.0], [0.0]])
    one = walker("slides", FLAT, None, x, u, pull=(0.0, 0.0, -G))
    corner_s = 2.0 / (3.5 * 0.4 * G)
    walk(one, until=lambda w: np.hypot(*w.law.vanishing(w.position, w.velocity)[:2])[0] < 1e-8)
    assert one.time_s[0] <= corner_s
    assert one.time_s[0] == pytest.approx(corner_s, abs=1e-8)
    assert one.velocity[0, 0] == pytest.approx(10 / 7, abs=1e-8)


def test_states_keep_to_the_surface_and_the_rolling():
    one = walker("rolls", DRUM, steady(0.5), on_drum(np.array([0.3])), np.array([[0.0], [3.0], [2.0]]), end_s=60.0)
    walk(one)
    n = DRUM.normal(one.position[:3])
    assert DRUM.gap(one.position[:3], one.law.many.radius_m) == pytest.approx(np.zeros(1), abs=1e-14 * RADIUS_M)
    slip = one.velocity[:3] - np.cross(one.velocity[3:], n, axis=0)
    assert slip == pytest.approx(np.zeros((3, 1)), abs=1e-14)


def test_bodies_that_are_dropped_change_nothing_for_the_others():
    x, u = on_drum(np.arange(3.0)), np.array([[0.0, 0.0, 1.0], [0.1, 2.0, 0.0], [0.5, 1.0, 1.0]])
    whole, part = (walker("rolls", DRUM, steady(0.5), x, u) for _ in range(2))
    part.step()
    part.keep(np.array([True, False, True]))
    walk(whole)
    walk(part)
    assert part.count == 2
    assert part.position == pytest.approx(whole.position[:, [0, 2]], abs=1e-11)


@each_row("mode", ["rolls", "slides"])
def test_a_crowd_goes_the_same_way_by_steps_of_its_own(mode):
    x, u = on_drum(np.arange(3.0)), np.array([[0.0, 0.0, 0.0], [4.0, 4.0, 4.0], [2.0, 3.0, 4.0]])
    few = walker(mode, DRUM, steady(0.5), x, u, end_s=0.2)
    many = walker(mode, DRUM, steady(0.5), x, u, end_s=0.2, kind=CrowdWalker)
    walk(few)
    (last,) = walk(many, most=60)[-1:]
    assert many.position == pytest.approx(few.position, abs=1e-9)
    assert many.velocity == pytest.approx(few.velocity, abs=1e-8)
    watched = many.at_points(last, np.arange(len(last.who)), 0)
    assert watched[-1] == pytest.approx(last.watched[12, 0], abs=1e-8)  # the step's end
