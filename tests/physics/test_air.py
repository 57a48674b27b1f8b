"""Air: gas law, viscosity, thinning toward the axis."""

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from rimfall.physics.air import Air, air_at
from rimfall.physics.bodies import Bodies
from rimfall.physics.forces import Force, Medium
from rimfall.physics.spin import steady
from tests.tables import each_row

HYDROSTATIC = 1e-9  # relative, of the integration below
R, OMEGA = 900.0, 0.3


def density_ratio(air, omega, radius_m, deck_radius_m):
    """Density at a radius over that at the deck, read off the drag of a body that moves along the axis through the air."""
    bodies = Bodies(np.ones(2), np.ones(2), np.ones(2))
    force = Force(Medium(steady(omega), air, deck_radius_m), bodies, np.zeros(2), np.ones(2), np.zeros((3, 2)))
    position = np.array([[radius_m, deck_radius_m], [0.0, 0.0], [0.0, 0.0]])
    carried = np.array([[0.0, 0.0], omega * position[0], [1.0, 1.0]])
    drag = force.at(0.0, position, carried)[2]
    return drag[0] / drag[1]


def test_kilopascals_and_degrees_celsius_are_read():
    assert air_at(101.325, 20.0) == Air(101325.0, 293.15)


def test_deck_density_is_that_of_an_ideal_gas_at_every_pressure():
    assert air_at(50.0, 20.0).deck_density_kg_m3 == pytest.approx(50e3 / (287.05 * 293.15))


@each_row("radius_m", [0.0, 300.0, 895.0, 900.0])
def test_thinning_balances_the_centrifugal_pull(radius_m):
    air = air_at(101.325, 20.0)
    weight = lambda r, p: p / (287.05 * 293.15) * OMEGA**2 * r  # noqa: E731 - dp/dr = rho omega^2 r
    pressure = solve_ivp(weight, (R, radius_m), [1.0], rtol=1e-12, atol=1e-14).y[0, -1] if radius_m < R else 1.0
    assert density_ratio(air, OMEGA, radius_m, R) == pytest.approx(pressure, rel=HYDROSTATIC)


def test_air_that_does_not_turn_is_of_one_density():
    assert density_ratio(air_at(101.325, 20.0), 0.0, 0.0, R) == 1.0


def test_viscosity_grows_with_temperature_and_knows_no_pressure():
    assert air_at(100.0, 100.0).viscosity_pa_s > air_at(100.0, 0.0).viscosity_pa_s
    assert air_at(1.0, 20.0).viscosity_pa_s == air_at(900.0, 20.0).viscosity_pa_s
