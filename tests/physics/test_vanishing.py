"""How long a step may be before what friction goes by would vanish, and systems in halves: against numpy's own series and its own solver."""

import numpy as np
import pytest
from numpy.polynomial import chebyshev

from rimfall.physics import collocation
from rimfall.physics.vanishing import hurry
from tests.physics.test_walker import DRUM, FLAT, on_drum, walk, walker

DEGREE, ALLOWED_M = 20, 2e-9


def longest_s(away, rate):
    return 1.0 / hurry(np.array([away]).T, np.array([rate]).T, DEGREE, ALLOWED_M)[0]


def left_out_m(away, rate, length_s):
    """What a series of the degree leaves out of the direction, times |away| L: numpy's interpolation, against the direction itself."""
    s = np.linspace(0.0, 1.0, 801)

    def direction(s):
        c = np.array(away)[:, None] + length_s * s * np.array(rate)[:, None]
        return c / np.sqrt(np.sum(c * c, axis=0))

    off = [
        chebyshev.chebval(2 * s - 1, chebyshev.chebinterpolate(lambda t, k=k: direction((t + 1) / 2)[k], DEGREE))
        - direction(s)[k]
        for k in (0, 1)
    ]
    return np.max(np.abs(off)) * np.sqrt(np.sum(np.square(away))) * length_s


@pytest.mark.parametrize("ahead_s", [-3.0, 0.1, 0.5, 2.0])
@pytest.mark.parametrize("aside_s", [0.05, 0.3, 1.0])
def test_a_step_is_as_long_as_its_series_holds_the_turning_of_friction(ahead_s, aside_s):
    """c = c' (t - ahead) + aside across: it passes nothing at that distance."""
    away, rate = (-1.5 * ahead_s, 1.5 * aside_s, 0.0), (1.5, 0.0, 0.0)
    length = longest_s(away, rate)
    assert left_out_m(away, rate, length) < 30 * ALLOWED_M  # an integral of it, twice, is a tenth and less
    assert left_out_m(away, rate, 1.6 * length) > ALLOWED_M  # nor is it much too short


def test_what_goes_straight_to_a_stop_may_go_all_but_to_it():
    assert longest_s((0.6, 0.8, 0.0), (-0.3, -0.4, 0.0)) == pytest.approx(0.999 * 2.0, rel=1e-12)
    assert longest_s((0.6, 0.8, 0.0), (0.0, 0.0, 0.0)) > 1e100


def test_systems_in_halves_have_the_solutions_of_the_whole():
    draw = np.random.default_rng(7)
    system, known = np.eye(126) + 0.3 * draw.normal(size=(3, 126, 126)), draw.normal(size=(3, 126, 1))
    assert collocation.solution(system, known) == pytest.approx(np.linalg.solve(system, known), rel=1e-9, abs=1e-9)


@pytest.mark.parametrize(("mode", "surface"), [("rolls", DRUM), ("slides", DRUM), ("stands", FLAT)])
def test_no_system_goes_to_several_threads(monkeypatch, mode, surface):
    """Libraries of linear algebra give those of 100 equations and more to all cores (OpenBLAS: 10,000 figures), which wait longer than they work."""
    sizes, solve = [], np.linalg.solve
    monkeypatch.setattr(np.linalg, "solve", lambda a, b: sizes.append(a.shape[-1]) or solve(a, b))
    place = on_drum(np.array([0.3])) if surface is DRUM else np.array([[0.0], [0.0], [0.1]])
    pull = (0.0, 0.0, 0.0) if surface is DRUM else (0.0, 0.0, -9.8)
    walk(walker(mode, surface, None, place, np.array([[0.0], [3.0], [0.5]]) if surface is DRUM else np.array([[3.0], [0.5], [0.0]]),
                pull=pull, end_s=0.1))  # fmt: skip
    assert 0 < max(sizes) < 100


def test_what_starts_from_rest_first_comes_to_a_walking_ball_s_pace():
    """Drag by a broken power of the speed is no polynomial of the time there."""
    assert longest_s((1e-9, 0.0, 0.0), (0.5, 0.0, 0.0)) == pytest.approx(0.4)
    assert (
        hurry(np.array([[0.01], [0.0], [0.0]]), np.array([[0.5], [0.0], [0.0]]), DEGREE, ALLOWED_M) == 0.0
    )  # nor later
