"""Figures in the words about what people would feel: exactly, with units, or rounded as prose has them (`rimfall/prose.py`)."""

import math
from dataclasses import dataclass

from ... import phrases
from ...amounts import DEGREE, LEAST_SHARE, TIME, amount, share
from ...amounts import number as in_words
from ...comfort.grounds import on_the
from ...language import tr, tr_as, written
from ...prose import Telling

_NB = "\u00a0"
_LEAST_SAID = 0.001
_LEAST_DEG = 0.05  # what is less is shown as 0.0°
_MANY_TIMES = 2.0  # from here on a share is told as times, not in percent
_AS_MUCH, _MORE = 0.95, 1.05  # shares between are told as one
_ONCE_BELOW = math.sqrt(1.25)  # as far, by its ratio, from one as from one and a quarter
_TWICE_FROM, _TWICE_UP_TO = math.sqrt(3.0), 2.25  # as far from one and a half; what is told as two and a half
_A_DEGREE = 0.75  # an angle that is told as one at least
_A_HUNDREDTH = 0.007  # a share that is told as one at least


def _once(times):
    """Whether a number of times from about one on is told as one."""
    return times < _ONCE_BELOW


def _twice(times):
    """Whether a number of times is told as two."""
    return _TWICE_FROM <= times <= _TWICE_UP_TO


def number(value):
    """A size of at least 0 with two or three figures, never with a power of ten: "0.56", "0.050", "12.3", "1,200"."""
    if value == 0:
        return "0"
    if value < _LEAST_SAID:
        return less_than(written(_LEAST_SAID))
    if value < 0.095:
        return written(value, f".{1 - math.floor(math.log10(value))}f")
    return written(value, f",.{2 if value < 9.995 else 1 if value < 99.95 else 0}f")


def less_than(figure):
    """What is smaller than a figure."""
    return tr("less than {figure}", figure=figure)


@dataclass(frozen=True)
class Whole:
    """What a share is of: its words after "0.56 of", and those after "about"."""

    shared: str
    as_much: str


def earth_weight():
    """One's weight on Earth."""
    return Whole(tr_as("a share of", "your Earth weight"), tr_as("about as much as", "your Earth weight"))


def its_earth_weight():
    """What a thing weighs on Earth."""
    return Whole(tr_as("a share of", "what it weighs on Earth"), tr_as("about as much as", "what it weighs on Earth"))


def would_weigh_on_earth():
    """What a thing would weigh on Earth."""
    return Whole(tr_as("a share of", "what it would on Earth"), tr_as("about as much as", "what it would on Earth"))


def feet_weigh_on_earth():
    """What one's feet weigh on Earth."""
    return Whole(tr_as("a share of", "what they weigh on Earth"), tr_as("about as much as", "what they weigh on Earth"))


def weight_at_the_feet():
    """One's weight here, at the feet."""
    return Whole(tr_as("a share of", "your weight at the feet"), tr_as("about as much as", "your weight at the feet"))


def weight_on_the(ground):
    """One's weight here, on a ground."""
    return Whole(
        tr_as("a share of", "your weight on the {ground}", ground=on_the(ground)),
        tr_as("about as much as", "your weight on the {ground}", ground=on_the(ground)),
    )


def push(value_g):
    """A push in words: "0.13 g"."""
    return f"{number(abs(value_g))}{_NB}g"


def weight(value_g):
    """A weight beside that on Earth: "0.56 of your Earth weight", "2.30 times your Earth weight"."""
    if value_g == 0:
        return tr("nothing")
    return share_of(value_g, earth_weight())


def share_of(value_g, whole):
    """A weight as a share of a `Whole`: "0.56 of your Earth weight", "2.30 times your Earth weight"."""
    if value_g >= 0.995:
        return tr("{number} times {whole}", number=number(value_g), whole=whole.shared)
    if 0 < value_g < _LEAST_SAID:
        return tr("less than {number} of {whole}", number=written(_LEAST_SAID), whole=whole.shared)
    return tr("{number} of {whole}", number=number(value_g), whole=whole.shared)


def angle(value_deg):
    """An angle in words, to the degree from ten on."""
    if value_deg < _LEAST_DEG:
        return less_than(f"{written(0.1)}°")
    return f"{written(value_deg, '.0f' if value_deg >= 9.95 else '.1f')}°"


def turns_at(rate_deg_s):
    """How fast a head turns, in words, to the degree from ten on."""
    if rate_deg_s < _LEAST_DEG:
        return less_than(f"{written(0.1)}{_NB}°/s")
    return f"{angle(rate_deg_s).removesuffix('°')}{_NB}°/s"


def turning(value_deg_s2):
    """An angular acceleration in words."""
    if 0 < value_deg_s2 < 0.1:
        return less_than(f"{written(0.1)}{_NB}°/s²")
    return f"{written(value_deg_s2, '.1f' if value_deg_s2 < 99.95 else ',.0f')}{_NB}°/s²"


def percent(share):
    """A share as a percentage."""
    if share < 0.0005:
        return less_than(f"{written(0.1)}{_NB}%")
    return f"{written(100 * share, '.1f' if share < 0.0995 else ',.0f')}{_NB}%"


def beside_weight(share, whole):
    """A push or a change beside a `Whole` that one weighs: "4.6 % of your weight at the feet", "15 times your weight at the feet"."""
    if share < _MANY_TIMES:
        return tr("{percent} of {whole}", percent=percent(share), whole=whole.shared)
    return tr("{number} times {whole}", number=number(share), whole=whole.shared)


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
    several = True  # so many g press

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
        return tr("at {rate} rpm", rate=number(rate_rpm))

    def round(self, times):
        """How often round."""
        return tr("about once") if f"{times:.1f}" == "1.0" else tr("{count} times", count=written(times, ".1f"))


def _at_an_angle(value_deg):
    """An angle as prose has it after "at"."""
    if value_deg < _A_DEGREE:
        return tr_as("dative", "less than a degree")
    return tr("about {amount}", amount=amount(value_deg, DEGREE, dative=True))


class Rounded:
    """The same near enough, in words and without symbols."""

    several = False  # a share of one's weight presses

    def __init__(self, units):
        self._telling = Telling(units=units)
        self.length, self.speed = self._telling.length, self._telling.speed

    def seconds(self, value_s):
        """A time, as after "for"."""
        return self._telling.time(value_s, dative=False)

    def number(self, value_g):
        """A weight beside that on Earth, where that has been said to be what it is beside."""
        if value_g == 0:
            return tr("nothing")
        if value_g < _AS_MUCH:
            return share(value_g)
        if _once(value_g):
            return tr("about as on Earth")
        return tr("about {times} as on Earth", times=self._times(value_g))

    def share_of(self, value, whole):
        """A weight as a share of a `Whole`."""
        if value < LEAST_SHARE:
            return tr("next to nothing of {whole}", whole=whole.shared)
        if value < _AS_MUCH:
            return tr("{share} of {whole}", share=share(value), whole=whole.shared)
        if _once(value):
            return tr("about {whole}", whole=whole.as_much)
        return tr("about {times} {whole}", times=self._times(value), whole=whole.as_much)

    beside_weight = share_of

    def weight(self, value_g):
        """A weight."""
        if value_g < LEAST_SHARE:
            return tr("nothing") if value_g == 0 else tr("next to nothing")
        return self.share_of(value_g, earth_weight())

    def push(self, value_g):
        """A push."""
        value_g = abs(value_g)
        if value_g >= LEAST_SHARE:
            return self.weight(value_g)
        return tr("{percent} of {whole}", percent=self.percent(value_g), whole=earth_weight().shared)

    def percent(self, value):
        """A share of a weight by which it changes."""
        if value < _A_HUNDREDTH:
            return tr("less than a hundredth")
        if value < LEAST_SHARE:
            hundredths = round(100 * value)
            if hundredths == 1:
                return tr("about a hundredth")
            return tr("about {count} hundredths", count=in_words(hundredths))
        return share(value) if value < _AS_MUCH else tr("about all of it") if value <= _MORE else self._times(value)

    def angle(self, value_deg):
        """An angle."""
        if value_deg < _A_DEGREE:
            return tr("less than a degree")
        return tr("about {amount}", amount=amount(value_deg, DEGREE))

    def turns_at(self, rate_deg_s):
        """How fast a head turns."""
        return tr("{angle} per second", angle=_at_an_angle(rate_deg_s))

    def turning(self, value_deg_s2):
        """An angular acceleration."""
        return tr("{angle} per second each second", angle=_at_an_angle(value_deg_s2))

    def spin(self, rate_rpm):
        """How fast it turns."""
        if rate_rpm < _AS_MUCH:
            return tr("once in {time}", time=self._telling.time(60.0 / rate_rpm))
        if rate_rpm <= _MORE:
            return tr("about once a minute")
        return tr("about {times} a minute", times=self._times(rate_rpm))

    def round(self, times):
        """How often round."""
        return tr("about once") if times <= _MORE else tr("about {times}", times=self._times(times))

    @staticmethod
    def _times(value):
        return tr("once") if _once(value) else tr("twice") if _twice(value) else amount(value, TIME)
