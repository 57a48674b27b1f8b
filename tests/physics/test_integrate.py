"""The stepper of what coasts: its parabola, exact however long, and where its steps end."""

import numpy as np
import pytest

from rimfall.physics.integrate import Coaster
from tests.tables import each_row


def test_a_coaster_flies_its_parabola_exactly_in_one_step():
    pull, position, velocity = np.array([[0.0], [0.0], [-2.0]]), np.zeros((3, 1)), np.array([[3.0], [0.0], [5.0]])
    coaster = Coaster(pull, position, velocity, np.array([6.0]), np.array([np.inf]))
    step = coaster.step()
    assert coaster.done
    assert step.path_m[-1][:, 0] == pytest.approx([18, 0, 30 - 36])
    assert step.path_m_s[-1][:, 0] == pytest.approx([0, 0, -12])


def test_a_coaster_goes_no_further_than_its_reach_in_the_plane_of_rotation():
    still = np.zeros((3, 2))
    velocity = np.array([[3.0, 0.0], [4.0, 0.0], [90.0, 90.0]])
    step = Coaster(still, still, velocity, np.array([100.0, 100.0]), np.array([10.0, 10.0])).step()
    assert list(step.length_s) == [2.0, 100.0]


def test_a_coaster_in_steps_flies_the_same_parabola_and_stops_where_each_body_must():
    rng = np.random.default_rng(1)
    pull, position, velocity = rng.normal(size=(3, 3, 2))
    limit_s, stops_s = np.array([2.0, 3.0]), np.array([[0.7, -1.0], [9.0, 1.25]])
    coaster = Coaster(
        pull, position, velocity, limit_s, np.full(2, np.inf), longest_s=np.array([0.5, 2.0]), stops_s=stops_s
    )
    ends = [[], []]
    while not np.all(coaster.done):
        flying = ~coaster.done
        step = coaster.step()
        for i in np.flatnonzero(flying):
            ends[i].append(step.elapsed_s[i] + step.length_s[i])
            at = step.position_m[:, i] + step.path_m[-1, :, i]
            moving = step.velocity_m_s[:, i] + step.path_m_s[-1, :, i]
            assert at == pytest.approx(position[:, i] + ends[i][-1] * (velocity[:, i] + ends[i][-1] / 2 * pull[:, i]))
            assert moving == pytest.approx(velocity[:, i] + ends[i][-1] * pull[:, i])
    assert ends == [pytest.approx([0.5, 0.7, 1.2, 1.7, 2.0]), pytest.approx([1.25, 3.0])]


@each_row("mask", [[True, False], [False, True]])
def test_a_coaster_goes_on_with_those_that_are_kept(mask):
    rng = np.random.default_rng(1)
    pull, position, velocity = rng.normal(size=(3, 3, 2))
    coasters = [Coaster(pull, position, velocity, np.array([2.0, 3.0]), np.full(2, np.inf), longest_s=np.array([0.5, 0.4]))
                for _ in range(2)]  # fmt: skip
    coasters[0].step(), coasters[1].step()
    coasters[1].keep(np.array(mask))
    assert coasters[1].step().path_m == pytest.approx(coasters[0].step().path_m[..., mask])
