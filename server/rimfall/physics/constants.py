"""Constants: value, unit, source, one a line."""

import math

TURN_RAD = 2 * math.pi
RPM_RAD_S = TURN_RAD / 60  # one turn a minute in rad/s
LIGHT_M_S = 299_792_458.0  # speed of light; exact, SI
G0_M_S2 = 9.80665  # standard gravity; exact, CGPM 1901
GRAVITATION_M3_KG_S2 = 6.67430e-11  # Newtonian constant; CODATA 2018
AIR_GAS_CONSTANT_J_KG_K = 287.05  # dry air; ISO 2533:1975 (287.05287, as the design rounds it)
ZERO_CELSIUS_K = 273.15  # exact, ITS-90
SUTHERLAND_VISCOSITY = 1.458e-6  # kg/(m s sqrt(K)); ISO 2533:1975
SUTHERLAND_TEMPERATURE_K = 110.4  # ISO 2533:1975
AIR_HEAT_RATIO = 1.4  # ISO 2533:1975, for the speed of sound
PERSON_HEIGHT_M = 1.75  # the figure drawn for scale; our own choice
ARM_REACH_M = 0.44 * PERSON_HEIGHT_M  # shoulder to fingertips: Drillis & Contini (1966), share of stature, from memory
