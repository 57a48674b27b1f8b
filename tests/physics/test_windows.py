"""The stepper of whole windows against closed forms, and what it keeps over many windows."""

from dataclasses import dataclass, replace

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from rimfall.motions.flight import Room
from rimfall.physics import bernstein
from rimfall.physics.aboard import Aboard
from rimfall.physics.air import air_at
from rimfall.physics.bodies import Body, as_arrays
from rimfall.physics.forces import Medium
from rimfall.physics.pendulum import Hung
from rimfall.physics.spin import ramped, steady
from rimfall.physics.windows import RULE, Windows
from tests.tables import each_row


@dataclass(frozen=True)
class Spring:
    """x'' = -k^2 x, and along z the frame's own rate and its change."""

    rate_1_s: float

    def take(self, _which):
        return self

    def at(self, rate, position, _velocity):
        out = -(self.rate_1_s**2) * position
        out[2] = rate[0] + 10.0 * rate[1]
        return out, position[0]

    def settled(self, position, velocity):
        return position, velocity

    def through_air(self, _rate, _position, _velocity):
        return None


def taken(law, spin, end_s, position, velocity, tolerance_m=1e-12):
    windows = Windows(
        law,
        spin,
        0.0,
        end_s,
        np.array(position, dtype=float)[:, None],
        np.array(velocity, dtype=float)[:, None],
        tolerance_m,
    )
    made = []
    while windows.time_s < end_s:
        window = windows.step()
        if window is not None:
            made.append(window)
    return windows, made


@each_row("rate", [0.3, 7.0])
def test_it_swings_as_a_cosine_all_the_way(rate):
    _, made = taken(Spring(rate), steady(0.0), 20.0, [1.0, 0.0, 0.0], [0.0, 2.0, 0.0])
    for window in made:
        step, s = window.step, np.linspace(0, 1, 9)
        time_s = step.elapsed_s[0] + s * step.length_s[0]
        place, moving = (
            state[:, 0] + bernstein.weights(len(change) - 1, s).T @ change[..., 0]
            for state, change in ((step.position_m, step.path_m), (step.velocity_m_s, step.path_m_s))
        )
        assert place[:, 0] == pytest.approx(np.cos(rate * time_s), abs=1e-10)
        assert moving[:, 1] == pytest.approx(2.0 * np.cos(rate * time_s), abs=1e-10)


def test_no_window_crosses_a_knot_of_the_spin():
    """Along z the second integral of w + 10 w' of a ramp from 1 to 3 rad/s in 2 s, held after (by hand)."""
    windows, made = taken(Spring(1.0), ramped(1.0, [(2.0, 3.0)]), 5.0, [1.0, 0.0, 0.0], [0.0, 0.0, 0.0])
    assert any(w.step.elapsed_s[0] == 2.0 for w in made)
    at_knot, moving = 11 * 2**2 / 2 + 2**3 / 6, 11 * 2 + 2**2 / 2
    assert windows.position[2, 0] == pytest.approx(at_knot + 3 * moving + 3 * 3**2 / 2, rel=1e-13)
    assert windows.time_s == 5.0


def test_a_window_too_long_is_taken_back():
    law = Hung(
        np.zeros(3),
        1.0,
        Aboard(Medium(steady(0.0), None, 1.0), Room((), True, (0.0, 0.0, -10.0), None), as_arrays([Body(1.0, 0.0)])),
    )
    windows = Windows(law, steady(0.0), 0.0, 9.0, np.array([[0.6], [0.0], [-0.8]]), np.zeros((3, 1)), 1e-14)
    assert windows.step() is None
    assert windows.time_s == 0.0


def test_a_line_keeps_its_length_over_many_windows():
    """Put back on its sphere after every window, it is off by rounding alone; left to itself it is off by 1e-12 in as long."""
    forces = Aboard(
        Medium(steady(0.3), None, 1.0), Room((), True, (0.0, 0.0, -10.0), None), as_arrays([Body(1.0, 0.0)])
    )
    law = Hung(np.array([50.0, 0.0, 0.0]), 2.0, forces)
    _, made = taken(law, steady(0.3), 200.0, [1.2, 0.0, -1.6], [0.0, 1.0, 0.0], 1e-10)
    assert max(abs(float(np.linalg.norm(w.step.position_m)) - 2.0) for w in made) < 1e-14
    free = replace(law, taut=False)
    assert free.settled(np.ones((3, 1)), np.ones((3, 1)))[0].tolist() == np.ones((3, 1)).tolist()


@each_row(
    ("rate", "mass_kg", "diameter_m", "angle_deg", "most_tries"),
    [(0.3, 2.0, 0.08, 15, 6), (0.3, 1.2, 0.22, 20, 16), (0.0, 0.05, 0.1, 60, 24)],
)
def test_in_air_windows_end_with_the_swings_and_err_by_no_more_than_they_may(
    rate, mass_kg, diameter_m, angle_deg, most_tries
):
    """Against scipy, from the start of each window: drag has a corner where the bob turns back, which a series may not show."""
    length_m, tolerance_m = 2.0, 2e-10
    medium = Medium(steady(rate), air_at(101.325, 20.0), 1.0)
    forces = Aboard(medium, Room((), True, (0.0, 0.0, -9.8), None), as_arrays([Body(mass_kg, diameter_m)]))
    law = Hung(np.zeros(3), length_m, forces)
    begin = length_m * np.array([np.sin(np.radians(angle_deg)), 0.0, -np.cos(np.radians(angle_deg))])
    windows = Windows(law, steady(rate), 0.0, 6.0, begin[:, None], np.zeros((3, 1)), tolerance_m)
    tries, turns = 0, 0

    def change(_time_s, state):
        return np.concatenate([state[3:], law.at((rate, 0.0), state[:3, None], state[3:, None])[0][:, 0]])

    while windows.time_s < 6.0:
        tries += 1
        window = windows.step()
        if window is None:
            continue
        step, s = window.step, np.array([0.001, 0.03, 0.5, 0.97, 1.0])
        state = np.concatenate([step.position_m[:, 0], step.velocity_m_s[:, 0]])
        place = state[:3] + bernstein.weights(len(step.path_m) - 1, s).T @ step.path_m[..., 0]
        truth = solve_ivp(
            change,
            (0, step.length_s[0]),
            state,
            "DOP853",
            s * step.length_s[0],
            rtol=1e-12,
            atol=1e-13,
            first_step=1e-4,
        )
        assert np.abs(place - truth.y[:3].T).max() < tolerance_m
        speeds = np.linalg.norm(step.velocity_m_s + bernstein.value(step.path_m_s, np.linspace(0, 1, 99)[1:-1]), axis=0)
        assert speeds.min() > 1e-3 * speeds.max()
        turns += np.linalg.norm(windows.velocity) < 0.05
    assert turns >= 3
    assert tries <= most_tries


def test_values_at_the_points_become_bernstein_coefficients():
    """s is linear in Bernstein form (Farin, ch. 5): its coefficients are i/n."""
    count = len(RULE.points)
    assert pytest.approx(np.arange(count) / (count - 1), abs=1e-10) == RULE.control @ (RULE.series @ RULE.points)
