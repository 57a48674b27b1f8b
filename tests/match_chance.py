"""What chance alone has made of a match: how far its noise lies off the truth in the direction that tells a quantity.

Were what is seen linear in all that is sought, an interval of 95 % would miss the truth where that distance, one standard normal
figure, is beyond 1.96: 5 % of the time whatever the method, the habitat or the noise's size. The share of so many matches in which it
is less lies off 95 % by chance alone, so what intervals hold beyond it, or short of it, is the method's: a control variate (Hammersley
& Handscomb, Monte Carlo Methods (1964), section 5.5).
"""

import numpy as np

from rimfall.physics.constants import RPM_RAD_S
from rimfall.shots.match.flight import State
from rimfall.shots.match.trials import QUANTITIES, figures

MOST = 1.959964  # standard deviations, 95 % of a normal distribution
_STEP = 1e-5


def state_of(truth) -> State:
    """The State of a truth by QUANTITIES."""

    def row(*names):
        return np.array([[truth[name] for name in names]])

    place, velocity = row("along_m", "height_m", "axial_m"), row("spinward_m_s", "up_m_s", "axial_m_s")
    radius, spin, medium, pace = (row(name)[0] for name in ("radius_m", "spin_rpm", "medium", "pace"))
    return State(radius, spin * RPM_RAD_S, place, velocity, medium, pace)


def distances(problem, truth):
    """By quantity of QUANTITIES, how many standard deviations the linear estimate lies above the truth; of what is known, nan."""
    theta, unknowns = problem.unknowns.theta(state_of(truth)), problem.unknowns
    step = _STEP * np.maximum(1.0, np.abs(theta[0]))
    moved = np.concatenate([theta + step * np.eye(len(step)), theta - step * np.eye(len(step))])
    ahead, behind = np.split(np.concatenate([problem.misfit(moved), figures(unknowns.state(moved))], axis=1), 2)
    slopes = (ahead - behind) / (2.0 * step[:, None])
    of_misfit, of_figures = np.split(slopes, [problem.count], axis=1)
    square = of_misfit @ of_misfit.T
    off = -of_figures.T @ np.linalg.solve(square, of_misfit @ problem.misfit(theta)[0])
    size = np.sqrt(np.einsum("pq,pq->q", of_figures, np.linalg.solve(square, of_figures)))
    with np.errstate(invalid="ignore", divide="ignore"):
        return dict(zip(QUANTITIES, off / size, strict=True))
