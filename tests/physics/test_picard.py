"""Picard's iteration: windows against scipy and closed forms, bodies together as alone, and windows that are too long."""

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from rimfall.physics import bernstein, picard
from tests.tables import each_row

START = np.array([[1.0], [0.0], [0.2]]), np.array([[0.1], [0.9], [0.0]])


def attraction(_which, _time_s, position, *_):
    return -position / np.sum(position**2, axis=0) ** 1.5


def one(length_s, degree=24, position=START[0], velocity=START[1]):
    count = position.shape[1]
    return picard.second_order(
        attraction, np.zeros(count), np.full(count, length_s), position, velocity, 1e-13, degree=degree
    )


def inside(control, s):
    """Values (D, n) at s (n,) of the polynomial of control points (m + 1, D)."""
    return np.array([bernstein.value(np.repeat(column[:, None], len(s), 1), s) for column in control.T])


@each_row("length_s", [0.3, 0.9, 1.5])
def test_states_and_path_of_a_window_are_scipys(length_s):
    window = one(length_s)
    s = np.linspace(0.0, 1.0, 33)
    rates = lambda _t, y: np.concatenate([y[3:], attraction(None, None, y[:3, None])[:, 0]])  # noqa: E731
    start = np.concatenate([v[:, 0] for v in START])
    exact = solve_ivp(rates, (0, length_s), start, "DOP853", length_s * s, rtol=1e-13, atol=1e-13).y
    assert START[0] + inside(window.path_m()[..., 0], s) == pytest.approx(exact[:3], abs=1e-12)
    assert START[1] + inside(window.path_m_s()[..., 0], s) == pytest.approx(exact[3:], abs=1e-12)
    assert window.end()[0][:, 0] == pytest.approx(exact[:3, -1], abs=1e-12)
    assert window.end()[1][:, 0] == pytest.approx(exact[3:, -1], abs=1e-12)


def test_the_tail_tells_of_the_error():
    s = np.linspace(0.0, 1.0, 33)
    exact = inside(one(1.0, 28).path_m_s()[..., 0], s)
    for degree in (8, 12, 16):
        window = one(1.0, degree)
        off = np.abs(inside(window.path_m_s()[..., 0], s) - exact).max()
        assert off < window.tail()[0] < 1e4 * off


def test_many_bodies_go_as_each_would_alone():
    sizes = np.linspace(1.0, 40.0, 90)  # the far ones are settled in a few rounds, and are asked no more
    position, velocity = START[0] * sizes, np.repeat(START[1], 90, axis=1)
    asked = []

    def counted(which, time_s, position, *_):
        asked.append(position.shape[2])
        assert time_s.shape == position.shape[1:]
        assert which is None or len(which) == position.shape[2]
        return attraction(which, time_s, position)

    together = picard.second_order(counted, np.zeros(90), np.full(90, 1.0), position, velocity, 1e-13)
    assert min(asked) < 45
    for i in (0, 30, 89):
        alone = one(1.0, 19, position[:, [i]], velocity[:, [i]])
        assert together.states()[0][..., i] == pytest.approx(alone.states()[0][..., 0], abs=1e-13)


def test_a_window_far_too_long_says_so_and_harms_no_other():
    stays = one(0.5)
    position, velocity = (np.repeat(v, 2, axis=1) for v in START)
    both = picard.second_order(
        lambda _which, _t, x, v, _slowing: -x - 200.0 * v * np.abs(v),
        np.zeros(2),
        np.array([1e-3, 50.0]),
        position,
        velocity,
        1e-13,
    )
    assert np.isinf(both.moved[1])
    assert both.moved[0] <= 1e-13
    assert stays.moved[0] <= 1e-13


def test_the_next_length_grows_and_shrinks_with_the_error():
    lengths = picard.next_length(np.ones(4), np.array([1e-12, 1.0, 1e6, np.inf]), 19)
    assert lengths[0] > 2.0
    assert lengths[3] < lengths[2] < lengths[1] < 1.0
