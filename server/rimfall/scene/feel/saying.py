"""Figures in the words about what people would feel: exactly, with units, or rounded as prose has them (`rimfall/prose.py`)."""

import math

from ... import phrases, prose
from ...amounts import DEGREE, LEAST_SHARE, TIME, amount, share
from ...prose import Telling

_NB = "\u00a0"
_LEAST_SAID = 0.001
_LEAST_DEG = 0.05  # what is less is shown as 0.0°
_MANY_TIMES = 2.0  # from here on a share is told as times, not in percent
_AS_MUCH, _MORE = 0.95, 1.05  # shares between are told as one
_A_HUNDREDTH = 0.007  # a share that is told as one at least


def number(value):
    """A size of at least 0 with two or three figures, never with a power of ten: "0.56", "0.050", "12.3", "1,200"."""
    if value == 0:
        return "0"
    if value < _LEAST_SAID:
        return "less than 0.001"
    if value < 0.095:
        return f"{value:.{1 - math.floor(math.log10(value))}f}"
    return f"{value:,.{2 if value < 9.995 else 1 if value < 99.95 else 0}f}"


def push(value_g):
    """A push in words: "0.13 g"."""
    return f"{number(abs(value_g))}{_NB}g"


def weight(value_g):
    """A weight beside that on Earth: "0.56 of your Earth weight", "2.30 times your Earth weight"."""
    if value_g == 0:
        return "nothing"
    return f"{share_of(value_g)} your Earth weight"


def share_of(value_g):
    """A weight before what it is a share of: "0.56 of", "2.30 times"."""
    return f"{number(value_g)} {'times' if value_g >= 0.995 else 'of'}"


def angle(value_deg):
    """An angle in words, to the degree from ten on."""
    if value_deg < _LEAST_DEG:
        return "less than 0.1°"
    return f"{value_deg:.0f}°" if value_deg >= 9.95 else f"{value_deg:.1f}°"


def turns_at(rate_deg_s):
    """How fast a head turns, in words, to the degree from ten on."""
    shown = "less than 0.1" if 0 < rate_deg_s < 0.05 else angle(rate_deg_s).removesuffix("°")
    return f"{shown}{_NB}°/s"


def turning(value_deg_s2):
    """An angular acceleration in words."""
    shown = (
        "less than 0.1"
        if 0 < value_deg_s2 < 0.1
        else f"{value_deg_s2:.1f}"
        if value_deg_s2 < 99.95
        else f"{value_deg_s2:,.0f}"
    )
    return f"{shown}{_NB}°/s²"


def percent(share):
    """A share as a percentage."""
    if share < 0.0005:
        return f"less than 0.1{_NB}%"
    return f"{100 * share:.1f}{_NB}%" if share < 0.0995 else f"{100 * share:,.0f}{_NB}%"


def beside_weight(share):
    """A push or a change beside what one weighs: "4.6 % of", "15 times"."""
    return f"{percent(share)} of" if share < _MANY_TIMES else f"{number(share)} times"


class Exact:
    """Figures with their units, to two or three digits."""

    number = staticmethod(number)
    push = staticmethod(push)
    weight = staticmethod(weight)
    share_of = staticmethod(share_of)
    angle = staticmethod(angle)
    turns_at = staticmethod(turns_at)
    turning = staticmethod(turning)
    percent = staticmethod(percent)
    beside_weight = staticmethod(beside_weight)
    press = "press"  # so many g

    def __init__(self, units):
        self._units = units

    def length(self, value_m, upright=False):
        """A length."""
        return phrases.length(value_m, self._units)

    def speed(self, value_m_s):
        """A speed."""
        return phrases.speed(value_m_s, self._units)

    def seconds(self, value_s):
        """A time."""
        return phrases.seconds(value_s)

    def spin(self, rate_rpm):
        """How fast it turns."""
        return f"at {number(rate_rpm)} rpm"

    def round(self, times):
        """How often round."""
        return "about once" if f"{times:.1f}" == "1.0" else f"{times:.1f} times"


class Rounded:
    """The same near enough, in words and without symbols."""

    press = "presses"  # a share of one's weight

    def __init__(self, units):
        self._telling = Telling(units=units)
        self.length, self.speed, self.seconds = self._telling.length, self._telling.speed, self._telling.time

    def number(self, value_g):
        """A weight beside that on Earth, where that has been said to be what it is beside."""
        if value_g == 0:
            return "nothing"
        if value_g < _AS_MUCH:
            return share(value_g)
        times = self._times(value_g)
        return "about as on Earth" if times == "once" else f"about {times} as on Earth"

    def share_of(self, value):
        """A weight before what it is a share of."""
        if value < _AS_MUCH:
            return f"{share(value)} of"
        times = self._times(value)
        return "about" if times == "once" else f"about {times}"

    beside_weight = share_of

    def weight(self, value_g):
        """A weight."""
        if value_g < LEAST_SHARE:
            return "nothing" if value_g == 0 else "next to nothing"
        return f"{self.share_of(value_g)} your Earth weight"

    def push(self, value_g):
        """A push."""
        value_g = abs(value_g)
        return self.weight(value_g) if value_g >= LEAST_SHARE else f"{self.percent(value_g)} of your Earth weight"

    def percent(self, value):
        """A share of a weight by which it changes."""
        if value < _A_HUNDREDTH:
            return "less than a hundredth"
        if value < LEAST_SHARE:
            hundredths = round(100 * value)
            return "about a hundredth" if hundredths == 1 else f"about {prose.number(hundredths)} hundredths"
        return share(value) if value < _AS_MUCH else "about all of it" if value <= _MORE else self._times(value)

    def angle(self, value_deg):
        """An angle."""
        if value_deg < 0.75:
            return "less than a degree"
        return f"about {amount(value_deg, DEGREE)}"

    def turns_at(self, rate_deg_s):
        """How fast a head turns."""
        return f"{self.angle(rate_deg_s)} per second"

    def turning(self, value_deg_s2):
        """An angular acceleration."""
        return f"{self.angle(value_deg_s2)} per second each second"

    def spin(self, rate_rpm):
        """How fast it turns."""
        if rate_rpm < _AS_MUCH:
            return f"once in {self.seconds(60.0 / rate_rpm)}"
        return "about once a minute" if rate_rpm <= _MORE else f"about {self._times(rate_rpm)} a minute"

    def round(self, times):
        """How often round."""
        return "about once" if times <= _MORE else f"about {self._times(times)}"

    @staticmethod
    def _times(value):
        said = amount(value, TIME)
        return {"two times": "twice", "one time": "once"}.get(said, said)
