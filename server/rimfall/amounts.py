"""Numbers, amounts and shares in words, rounded as prose has them: "twenty-one", "half a second", "about a tenth".

An amount is in the dative after words such as "after" and "at", else in the accusative, for languages that bend it.
"""

import math
from bisect import bisect
from dataclasses import dataclass
from itertools import pairwise

from .language import Later, tr, tr_as, tr_later, tr_later_as, written

LEAST_SHARE = 0.035  # a smaller one is next to nothing
_AS_MUCH, _MORE = 0.95, 1.05  # between these a share of one is all of it

_ONES = (
    tr_later_as("number", "zero"),
    tr_later_as("number", "one"),
    tr_later_as("number", "two"),
    tr_later_as("number", "three"),
    tr_later_as("number", "four"),
    tr_later_as("number", "five"),
    tr_later_as("number", "six"),
    tr_later_as("number", "seven"),
    tr_later_as("number", "eight"),
    tr_later_as("number", "nine"),
    tr_later_as("number", "ten"),
    tr_later_as("number", "eleven"),
    tr_later_as("number", "twelve"),
    tr_later_as("number", "thirteen"),
    tr_later_as("number", "fourteen"),
    tr_later_as("number", "fifteen"),
    tr_later_as("number", "sixteen"),
    tr_later_as("number", "seventeen"),
    tr_later_as("number", "eighteen"),
    tr_later_as("number", "nineteen"),
)
_TENS = (
    tr_later_as("number", "twenty"),
    tr_later_as("number", "thirty"),
    tr_later_as("number", "forty"),
    tr_later_as("number", "fifty"),
    tr_later_as("number", "sixty"),
    tr_later_as("number", "seventy"),
    tr_later_as("number", "eighty"),
    tr_later_as("number", "ninety"),
)


@dataclass(frozen=True)
class Unit:
    """What amounts are of: one of it, half of it and several, each in the dative and in the accusative; of: what a part is one of."""

    one: tuple[Later, Later]
    half: tuple[Later, Later]
    several: tuple[Later, Later]
    of: Later


SECOND = Unit(
    (tr_later_as("dative", "one second"), tr_later_as("accusative", "one second")),
    (tr_later_as("dative", "half a second"), tr_later_as("accusative", "half a second")),
    (tr_later_as("dative", "seconds"), tr_later_as("accusative", "seconds")),
    tr_later_as("a part of", "a second"),
)
MINUTE = Unit(
    (tr_later_as("dative", "one minute"), tr_later_as("accusative", "one minute")),
    (tr_later_as("dative", "half a minute"), tr_later_as("accusative", "half a minute")),
    (tr_later_as("dative", "minutes"), tr_later_as("accusative", "minutes")),
    tr_later_as("a part of", "a minute"),
)
HOUR = Unit(
    (tr_later_as("dative", "one hour"), tr_later_as("accusative", "one hour")),
    (tr_later_as("dative", "half an hour"), tr_later_as("accusative", "half an hour")),
    (tr_later_as("dative", "hours"), tr_later_as("accusative", "hours")),
    tr_later_as("a part of", "an hour"),
)
METRE = Unit(
    (tr_later_as("dative", "one metre"), tr_later_as("accusative", "one metre")),
    (tr_later_as("dative", "half a metre"), tr_later_as("accusative", "half a metre")),
    (tr_later_as("dative", "metres"), tr_later_as("accusative", "metres")),
    tr_later_as("a part of", "a metre"),
)
FOOT = Unit(
    (tr_later_as("dative", "one foot"), tr_later_as("accusative", "one foot")),
    (tr_later_as("dative", "half a foot"), tr_later_as("accusative", "half a foot")),
    (tr_later_as("dative", "feet"), tr_later_as("accusative", "feet")),
    tr_later_as("a part of", "a foot"),
)
DEGREE = Unit(
    (tr_later_as("dative", "one degree"), tr_later_as("accusative", "one degree")),
    (tr_later_as("dative", "half a degree"), tr_later_as("accusative", "half a degree")),
    (tr_later_as("dative", "degrees"), tr_later_as("accusative", "degrees")),
    tr_later_as("a part of", "a degree"),
)
TIME = Unit(  # how often, how many times as much
    (tr_later_as("dative", "one time"), tr_later_as("accusative", "one time")),
    (tr_later_as("dative", "half a time"), tr_later_as("accusative", "half a time")),
    (tr_later_as("dative", "times"), tr_later_as("accusative", "times")),
    tr_later_as("a part of", "a time"),
)
_SMALL = {  # of a unit: its part, in the dative and in the accusative; or how many
    0.2: (tr_later_as("dative", "a fifth of {unit}"), tr_later_as("accusative", "a fifth of {unit}")),
    0.25: (tr_later_as("dative", "a quarter of {unit}"), tr_later_as("accusative", "a quarter of {unit}")),
    1 / 3: (tr_later_as("dative", "a third of {unit}"), tr_later_as("accusative", "a third of {unit}")),
    0.4: (tr_later_as("dative", "two fifths of {unit}"), tr_later_as("accusative", "two fifths of {unit}")),
    0.5: None,
    2 / 3: (tr_later_as("dative", "two thirds of {unit}"), tr_later_as("accusative", "two thirds of {unit}")),
    0.75: (tr_later_as("dative", "three quarters of {unit}"), tr_later_as("accusative", "three quarters of {unit}")),
    1: None,
    1.25: tr_later("one and a quarter {units}"),
    1.5: tr_later("one and a half {units}"),
    2: tr_later("two {units}"),
}
_SHARES = (  # of one, in words
    (1 / 25, tr_later_as("share", "a twenty-fifth")),
    (1 / 20, tr_later_as("share", "a twentieth")),
    (1 / 15, tr_later_as("share", "a fifteenth")),
    (1 / 12, tr_later_as("share", "a twelfth")),
    (1 / 10, tr_later_as("share", "a tenth")),
    (1 / 8, tr_later_as("share", "an eighth")),
    (1 / 6, tr_later_as("share", "a sixth")),
    (1 / 5, tr_later_as("share", "a fifth")),
    (1 / 4, tr_later_as("share", "a quarter")),
    (1 / 3, tr_later_as("share", "a third")),
    (2 / 5, tr_later_as("share", "two fifths")),
    (1 / 2, tr_later_as("share", "half")),
    (3 / 5, tr_later_as("share", "three fifths")),
    (2 / 3, tr_later_as("share", "two thirds")),
    (3 / 4, tr_later_as("share", "three quarters")),
    (9 / 10, tr_later_as("share", "nine tenths")),
)


def _halfway(sizes):
    """What lies as far, by its ratio, from each of rising sizes as from the next."""
    return [math.sqrt(a * b) for a, b in pairwise(sizes)]


_SMALL_SIZES = tuple(_SMALL)
_SMALL_HALFWAY, _SHARES_HALFWAY = _halfway(_SMALL_SIZES), _halfway([size for size, _ in _SHARES])


def number(value):
    """A whole number in words up to a hundred, in digits beyond."""
    value = round(value)
    if not 0 <= value <= 100:
        return written(value, ",")
    if value < 20:
        return tr(_ONES[value])
    if value == 100:
        return tr_as("number", "a hundred")
    tens, ones = divmod(value, 10)
    if not ones:
        return tr(_TENS[tens - 2])
    return tr_as("number", "{tens}-{ones}", tens=tr(_TENS[tens - 2]), ones=tr(_ONES[ones]))


def amount(value, unit, dative=False):
    """So many of a Unit, to the nearest that prose has: "half a second", "one and a half metres", "two metres", "120 metres"."""
    case = 0 if dative else 1
    if value < 2.25:
        return _small(_SMALL_SIZES[bisect(_SMALL_HALFWAY, value)], unit, case)
    halves, units = round(2 * value), tr(unit.several[case])
    if value < 5 and halves % 2:
        return tr("{number} and a half {units}", number=number(halves // 2), units=units)
    return tr_as("amount", "{number} {units}", number=number(round_off(value)), units=units)


def _small(near, unit, case):
    if near == 0.5:
        return tr(unit.half[case])
    if near == 1:
        return tr(unit.one[case])
    if near < 1:
        return tr(_SMALL[near][case], unit=tr(unit.of))
    return tr(_SMALL[near], units=tr(unit.several[case]))


def round_off(value):
    """To two figures, whole."""
    if value < 1:
        return round(value)
    step = 10 ** max(0, math.floor(math.log10(value)) - 1)
    return step * round(value / step)


def share(value):
    """A share of one in words: "a little over half", "about a tenth", "almost all"; above one, how many times."""
    if value < LEAST_SHARE:
        return tr("next to nothing")
    if value < _AS_MUCH:
        near, said = _SHARES[bisect(_SHARES_HALFWAY, value)]
        off, part = value / near - 1, tr(said)
        if abs(off) <= 0.04:
            return tr("about {part}", part=part)
        return tr("a little over {part}", part=part) if off > 0 else tr("a little under {part}", part=part)
    if value <= _MORE:
        return tr("as much")
    return tr("{times} as much", times=amount(value, TIME))


def of_earth_weight(value):
    """A share of one's weight on Earth, in words."""
    if value < _AS_MUCH:
        return tr("{share} of your weight on Earth", share=share(value))
    return tr_as("as much or more", "{share} of your weight on Earth", share=share(value))
