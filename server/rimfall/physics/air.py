"""Air that turns with the habitat: its density from deck to axis, its viscosity, its speed of sound.

Dry, one temperature throughout. The pressure is that at the deck, whatever the spin; turning rigidly, the air thins toward
the axis as exp(-omega^2 (R^2 - r^2) / (2 R_s T)) (the isothermal law of the gas centrifuge). Source of gas constant and
viscosity: ISO 2533:1975. Valid where air is an ideal gas: not near condensation, nor far above 100 kPa at low temperature.
"""

import math
from dataclasses import dataclass

from .constants import (
    AIR_GAS_CONSTANT_J_KG_K,
    AIR_HEAT_RATIO,
    SUTHERLAND_TEMPERATURE_K,
    SUTHERLAND_VISCOSITY,
    ZERO_CELSIUS_K,
)


@dataclass(frozen=True)
class Air:
    """pressure_pa at the deck, temperature_k everywhere; what follows from them is computed once."""

    pressure_pa: float
    temperature_k: float

    @property
    def deck_density_kg_m3(self):
        """Density at the deck, kg/m3."""
        return self.pressure_pa / (AIR_GAS_CONSTANT_J_KG_K * self.temperature_k)

    @property
    def viscosity_pa_s(self):
        """Dynamic viscosity, Pa s (Sutherland's law as ISO 2533 gives it)."""
        return SUTHERLAND_VISCOSITY * self.temperature_k**1.5 / (self.temperature_k + SUTHERLAND_TEMPERATURE_K)

    @property
    def sound_m_s(self):
        """Speed of sound, m/s."""
        return math.sqrt(AIR_HEAT_RATIO * AIR_GAS_CONSTANT_J_KG_K * self.temperature_k)

    @property
    def thinning_s2_m2(self):
        """1 / (2 R_s T): times omega^2 (R^2 - r^2) it is the exponent of the thinning."""
        return 1.0 / (2.0 * AIR_GAS_CONSTANT_J_KG_K * self.temperature_k)


def air_at(pressure_kpa, temperature_c):
    """Air of a pressure in kPa and a temperature in degrees Celsius."""
    return Air(pressure_kpa * 1e3, temperature_c + ZERO_CELSIUS_K)
