"""Figures of a craft in words: three digits that tell, the unit that keeps them short, US customary ones where they are in use."""

import math

from ...language import in_signs, tr, tr_as, tr_later, written
from ...phrases import FOOT_M, length
from ...physics.constants import G0_M_S2, RPM_RAD_S

NB = "\u00a0"
_LB_KG, _LBF_N = 0.45359237, 4.4482216152605  # exact: international pound (1959), and it under standard gravity
_MINUTE_S, _HOUR_S, _DAY_S, _YEAR_S = 60.0, 3600.0, 86400.0, 365.25 * 86400.0
_WORDED = (
    (1e12, tr_later("{figure}\u00a0trillion")),
    (1e9, tr_later("{figure}\u00a0billion")),
    (1e6, tr_later("{figure}\u00a0million")),
)
_RATES = (
    (1.0, tr_later("{figure}° per second")),
    (_MINUTE_S, tr_later("{figure}° per minute")),
    (_HOUR_S, tr_later("{figure}° per hour")),
    (_DAY_S, tr_later("{figure}° per day")),
)
_SLOW_RPM = 0.01  # what is slower is told by the time of a turn
_RAISED = str.maketrans("-0123456789", "⁻⁰¹²³⁴⁵⁶⁷⁸⁹")
_LEAST_PLAIN = 1e-4  # a smaller number is told with a power of ten
_LEAST_M = 1e-4  # a smaller length is none worth a word


def figure(value):
    """A number to three digits, without zeros that end its decimals: "8.43", "0.012", "2,000", "88.7 million"."""
    size = abs(value)
    if size == 0 or not math.isfinite(value):
        return f"{value:g}"
    for scale, word in _WORDED:
        if size >= 0.9995 * scale:
            return tr(word, figure=_three(value / scale)) if size < 1e15 else _power(value)
    return _three(value) if size >= _LEAST_PLAIN else _power(value)


def _three(value):
    places = 2 - math.floor(math.log10(abs(value)))
    near = round(value, places)
    places = max(0, 2 - math.floor(math.log10(abs(near))))
    return _without_zeros(f"{near:,.{places}f}")


def _without_zeros(text):
    """A number as `format` writes it, without zeros that end its decimals, in the signs of the language that is spoken."""
    return in_signs(text.rstrip("0").rstrip(".") if "." in text else text)


def _power(value):
    digits, _, power = f"{value:.2e}".partition("e")
    return f"{_without_zeros(digits)}{NB}×{NB}10{str(int(power)).translate(_RAISED)}"


def _scaled(value, unit, prefixes=(("", 1.0), ("k", 1e3), ("M", 1e6), ("G", 1e9), ("T", 1e12))):
    size = abs(value)
    prefix, scale = next((one for one in reversed(prefixes) if size >= 0.9995 * one[1]), prefixes[0])
    return f"{figure(value / scale)}{NB}{prefix}{unit}"


def rate(rad_s, bent="in"):
    """How fast something turns, whichever way: "8.43 rpm"; what is slower than a turn in an hour and a half by the time of a turn. bent: as of
    `duration`; a rate that something is brought to is not bent."""
    rpm = abs(rad_s) / RPM_RAD_S
    if 0 < rpm < _SLOW_RPM:
        return tr("one turn in {time}", time=duration(_MINUTE_S / rpm, bent))
    return f"{figure(rpm)}{NB}rpm"


def duration(value_s, bent=""):
    """A time in words: "12.3 s", "15 min", "3 h 20 min", "4.2 days", "2.3 years". bent: "in" where it follows such a word, for languages
    that bend it then."""
    value_s = abs(value_s)
    if value_s < 99.5:
        return f"{figure(value_s)}{NB}s"
    if value_s < 99.5 * _MINUTE_S:
        return f"{figure(value_s / _MINUTE_S)}{NB}min"
    if value_s < 2 * _DAY_S:
        minutes = round(value_s / _MINUTE_S)
        rest = f" {minutes % 60}{NB}min" if minutes % 60 and minutes < 600 else ""
        return f"{minutes // 60 if rest or minutes < 600 else round(value_s / _HOUR_S)}{NB}h{rest}"
    if value_s < _YEAR_S:
        days = figure(value_s / _DAY_S)
        return tr_as("in", "{figure} days", figure=days) if bent else tr("{figure} days", figure=days)
    years = figure(value_s / _YEAR_S)
    return tr_as("in", "{figure} years", figure=years) if bent else tr("{figure} years", figure=years)


def mass(value_kg, units="si"):
    """A mass: "2,000 kg", "90 t"; in US units pounds."""
    if units == "us":
        return f"{figure(value_kg / _LB_KG)}{NB}lb"
    return f"{figure(value_kg / 1000)}{NB}t" if abs(value_kg) >= 19_950 else f"{figure(value_kg)}{NB}kg"


def force(value_n, units="si"):
    """A force, whichever way: "450 N", "12.4 kN"."""
    value_n = abs(value_n)
    return f"{figure(value_n / _LBF_N)}{NB}lbf" if units == "us" else _scaled(value_n, "N")


def torque(value_n_m, units="si"):
    """A torque, whichever way: "5 kN m"; in US units foot-pounds."""
    value_n_m = abs(value_n_m)
    return f"{figure(value_n_m / _LBF_N / FOOT_M)}{NB}lbf{NB}ft" if units == "us" else _scaled(value_n_m, f"N{NB}m")


def energy(value_j):
    """An energy: "13.9 MJ"."""
    return _scaled(value_j, "J")


def power(value_w):
    """A power: "1.57 kW"."""
    return _scaled(value_w, "W")


def momentum(value):
    """An angular momentum, whichever way: "88.7 million kg m²/s"."""
    return f"{figure(abs(value))}{NB}kg{NB}m²/s"


def inertia(value):
    """A moment of inertia: "282 million kg m²"."""
    return f"{figure(value)}{NB}kg{NB}m²"


def gravity(value_m_s2):
    """Gravity as a share of the Earth's: "0.564 g"."""
    return f"{figure(value_m_s2 / G0_M_S2)}{NB}g"


def angle(value_deg):
    """An angle: "0.31°", small ones in minutes of arc."""
    size = abs(value_deg)
    if 0 < size < 0.1:
        return tr("{figure} arc minutes", figure=figure(size * 60))
    return f"{figure(size)}°"


def short(value_m, units="si"):
    """A length to three digits: "3 m", "0.482 m", "12 mm"; in US units feet or inches."""
    value_m = abs(value_m)
    if units == "us" and value_m >= FOOT_M:
        return f"{figure(value_m / FOOT_M)}{NB}ft"
    if units == "us" or 0 < value_m < _LEAST_M:
        return length(value_m, units)
    return f"{figure(value_m * 1000)}{NB}mm" if 0 < value_m < 0.1 else f"{figure(value_m)}{NB}m"


def percent(share):
    """A share of one: "12.3 %"."""
    return f"{figure(100 * share)}{NB}%"


def slow(value_deg_s):
    """A turn rate: "0.1° per second", what is slower by the minute, the hour or the day."""
    per, says = next((one for one in _RATES if value_deg_s * one[0] >= 0.0995), _RATES[-1])
    return tr(says, figure=figure(value_deg_s * per))


def times(ratio):
    """How many times, before what it is of: "half", "twice", "0.82 times"."""
    near = round(ratio, 3)
    if near == 0.5:
        return tr_as("how many times the inertia", "half")
    if near == 1.0:
        return tr_as("how many times the inertia", "as much as")
    if near == 2.0:
        return tr_as("how many times the inertia", "twice")
    return tr_as("how many times the inertia", "{figure} times", figure=figure(ratio))


def rate_from(rad_s, other_rad_s):
    """A rate beside another that it differs from: to as many digits as show it, and that it is the other way where it is."""
    rpm, apart_rpm = abs(rad_s) / RPM_RAD_S, (rad_s - other_rad_s) / RPM_RAD_S
    said = rate(rad_s) if rpm < _SLOW_RPM else f"{precise(rpm, apart_rpm)}{NB}rpm"
    return tr("{rate} the other way", rate=said) if rad_s < 0 < other_rad_s else said


def angle_to(value_deg):
    """An azimuth in words: "37°", from 0 to below 360."""
    return f"{written(round(value_deg % 360, 1) % 360, 'g')}°"


def signed(value_m, units="si"):
    """A place along the axis: "+3 m", "−12 m"."""
    return f"{'−' if value_m < 0 else '+'}{short(value_m, units)}" if value_m else short(0.0, units)


def precise(value, change):
    """A number to three digits, or to as many more as show a change of it, up to eight: "3" and "2.9837"."""
    size, change = abs(value), abs(change)
    if size < _LEAST_PLAIN:
        return figure(value)
    digits = 3 if not change else min(8, max(3, math.ceil(math.log10(size / change)) + 2))
    places = max(0, digits - 1 - math.floor(math.log10(size)))
    return _without_zeros(f"{value:,.{places}f}")


def velocity(value_m_s, units="si"):
    """A speed, whichever way: "17.6 m/s"; in US units feet a second."""
    value_m_s = abs(value_m_s)
    return f"{figure(value_m_s / FOOT_M)}{NB}ft/s" if units == "us" else f"{figure(value_m_s)}{NB}m/s"


def pressure(value_pa):
    """A stress or a pressure: "96.7 MPa"."""
    return _scaled(value_pa, "Pa")


def area(value_m2, units="si"):
    """An area: "12.3 m²"; in US units square feet."""
    return f"{figure(value_m2 / FOOT_M**2)}{NB}ft²" if units == "us" else f"{figure(value_m2)}{NB}m²"
