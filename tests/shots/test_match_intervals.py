"""The ends of a matched path's intervals against scipy's least squares: there the profile of chi squared has risen by 3.84."""

import math

import numpy as np
import pytest
from scipy.optimize import least_squares
from scipy.stats import chi2 as chi_squared

from rimfall.physics.air import air_at
from rimfall.physics.bodies import Body
from rimfall.physics.constants import G0_M_S2, RPM_RAD_S
from rimfall.shots.match.fit import Problem
from rimfall.shots.match.flight import Resistance
from rimfall.shots.match.sights import PlacesAboard
from rimfall.shots.match.trials import intervals, tried
from rimfall.shots.match.unknowns import Known, Unknowns
from tests.shots.match_paths import flown

SD_M = 0.01
FIXED = {"radius_m": ("radius_m", 1.0), "spin_rpm": ("omega_rad_s", RPM_RAD_S), "gravity_g": ("gravity_m_s2", G0_M_S2)}


def seen(seed):
    """A lob in a vacuum as it is seen, with noise."""
    time_s, places = flown(count=40, heading_deg=120.0)
    noise = np.random.default_rng(seed).normal(0.0, SD_M, places.shape)
    return PlacesAboard(time_s, places + noise, np.full(3, SD_M))


def least(trial, known, above=-np.inf):
    """The least chi squared that scipy finds near a Trial, so much known and a medium's density above so much."""
    unknowns = trial.problem.unknowns
    sought = Unknowns(known, True, True, unknowns.nominal_radius_m, unknowns.least_radius_m, unknowns.most_medium)
    problem = Problem(trial.problem.sight, sought, trial.problem.resistance)
    start = sought.theta(trial.state)[0]
    low = np.array([above if name == "medium" else -np.inf for name in sought.names])
    best = least_squares(
        lambda theta: problem.misfit(theta[None])[0],
        np.maximum(start, low + 1e-6),
        bounds=(low, np.inf),
        x_scale="jac",
        xtol=1e-10,
    )
    return 2.0 * best.cost


def test_interval_ends_are_those_of_the_profile_likelihood():
    """Where chi squared, at its least over all else, has risen by the 95 % point of chi squared with one degree of freedom."""
    rise = chi_squared.ppf(0.95, 1)
    for known in (Known(), Known(gravity_m_s2=56.0 * (math.pi / 10) ** 2), Known(radius_m=56.0)):
        trial = tried(seen(5), known, None)
        assert trial.chi2 == pytest.approx(least(trial, known), abs=0.01)
        figures = intervals(trial)
        for name, (field, times) in FIXED.items():
            if figures[name].known:
                continue
            for end in (figures[name].low, figures[name].high):
                assert least(trial, known.but(**{field: end * times})) - trial.chi2 == pytest.approx(rise, abs=0.1)


def test_a_fit_at_a_density_of_none_is_the_least_and_its_intervals_are_those_over_densities_of_either_sign():
    """Of a path in a vacuum the best density is none about half the time, as here: chi squared is least there with all else moved along.
    The ends are where the profile over densities of either sign has risen so far above its own least; above the least within the range
    the ends would lie farther out (Self & Liang 1987), except for the density itself."""
    known, rise = Known(radius_m=56.0, medium=None), chi_squared.ppf(0.95, 1)
    trial = tried(seen(1), known, Resistance(Body(1.0, 0.124, 0.5), air_at(101.325, 20.0)))
    assert trial.state.medium[0] == 0.0
    assert trial.chi2 == pytest.approx(least(trial, known, above=0.0), abs=0.01)
    figures, free = intervals(trial), least(trial, known)
    assert free < trial.chi2 - 2.0
    assert figures["medium"].low == 0.0
    assert least(trial, known.but(medium=figures["medium"].high)) - trial.chi2 == pytest.approx(rise, abs=0.1)
    for end in (figures["spin_rpm"].low, figures["spin_rpm"].high):
        assert least(trial, known.but(omega_rad_s=end * RPM_RAD_S)) - free == pytest.approx(rise, abs=0.1)
