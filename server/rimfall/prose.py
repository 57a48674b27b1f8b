"""Figures as prose has them: rounded, in words, measured against a body, and without symbols.

The exact sentences are in `phrases.py` and what builds on it; here nothing is exact, and everything is near (`NEAR`, `NEAR_M`).
"""

import math
from bisect import bisect
from dataclasses import dataclass
from itertools import pairwise

from .phrases import FOOT_M, STILL_M, listed
from .physics.constants import ARM_REACH_M, PERSON_HEIGHT_M

NEAR, NEAR_M = 0.2, 0.0125  # the greatest error of a figure in prose, as a share of it or in metres
LEAST_SHARE = 0.035  # a smaller one is next to nothing


@dataclass(frozen=True)
class Measure:
    """A part of a body that lengths are told by: one of it and several in words, its size, how many are told, where the size is from."""

    one: str
    several: str
    size_m: float
    most: int
    source: str


# Segments are shares of stature by Drillis & Contini, Body segment parameters, New York University report 1166.03 (1966), as
# textbooks of biomechanics reprint them; breadths are means of Gordon et al., 1988 anthropometric survey of US Army personnel (1989),
# men and women together. All from memory.
_SEGMENTS = "Drillis & Contini (1966), share of stature, from memory"
_SURVEY = "Gordon et al. (1989), mean of men and women, from memory"
MEASURES = (
    Measure("a finger’s breadth", "{count} fingers’ breadth", 0.02, 6, f"{_SURVEY}, rounded"),
    Measure("a hand’s breadth", "{count} hands’ breadth", 0.085, 4, _SURVEY),
    Measure("a hand’s length", "{count} hands’ length", 0.108 * PERSON_HEIGHT_M, 3, _SEGMENTS),
    Measure(
        "a forearm’s length",
        "{count} forearms’ length",
        0.254 * PERSON_HEIGHT_M,
        2,
        f"{_SEGMENTS}: elbow to fingertips",
    ),
    Measure("an arm’s reach", "{count} arms’ reach", ARM_REACH_M, 1, f"{_SEGMENTS}: shoulder to fingertips"),
    Measure("a step", "{count} steps", 0.43 * PERSON_HEIGHT_M, 4, "a walker’s step, share of stature: from memory"),
    Measure("a step and a half", "", 1.5 * 0.43 * PERSON_HEIGHT_M, 1, "a step, as above"),
    Measure("a body’s length", "{count} body lengths", PERSON_HEIGHT_M, 1, "the person on the stages"),
)
ON_FOOT = {"a step", "a step and a half", "a body’s length"}  # told along the ground alone
UPRIGHT = {"an arm’s reach"}  # told of heights alone
BY_BODY_M, UPRIGHT_BY_BODY_M = 3.3, 1.0  # what is longer is told in metres or feet

_ONES = (
    "zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve", "thirteen", "fourteen",
    "fifteen", "sixteen", "seventeen", "eighteen", "nineteen",
)  # fmt: skip
_TENS = ("twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety")
_SHARES = (  # of one, in words
    (1 / 25, "a twenty-fifth"),
    (1 / 20, "a twentieth"),
    (1 / 15, "a fifteenth"),
    (1 / 12, "a twelfth"),
    (1 / 10, "a tenth"),
    (1 / 8, "an eighth"),
    (1 / 6, "a sixth"),
    (1 / 5, "a fifth"),
    (1 / 4, "a quarter"),
    (1 / 3, "a third"),
    (2 / 5, "two fifths"),
    (1 / 2, "half"),
    (3 / 5, "three fifths"),
    (2 / 3, "two thirds"),
    (3 / 4, "three quarters"),
    (9 / 10, "nine tenths"),
)

_ALL_ROUND = 0.95  # turns from which it is once round, and not a part of the way

_SMALL = {  # of a unit
    0.2: "a fifth",
    0.25: "a quarter",
    1 / 3: "a third",
    0.4: "two fifths",
    0.5: "half",
    2 / 3: "two thirds",
    0.75: "three quarters",
    1: "one",
    1.25: "one and a quarter",
    1.5: "one and a half",
    2: "two",
}


def _halfway(sizes):
    """What lies as far, by its ratio, from each of rising sizes as from the next."""
    return [math.sqrt(a * b) for a, b in pairwise(sizes)]


_SMALL_SIZES = tuple(_SMALL)
_SMALL_HALFWAY, _SHARES_HALFWAY = _halfway(_SMALL_SIZES), _halfway([size for size, _ in _SHARES])


def number(value):
    """A whole number in words up to a hundred, in digits beyond."""
    value = round(value)
    if not 0 <= value <= 100:
        return f"{value:,}"
    if value < 20:
        return _ONES[value]
    if value == 100:
        return "a hundred"
    tens, ones = divmod(value, 10)
    return _TENS[tens - 2] + (f"-{_ONES[ones]}" if ones else "")


def amount(value, one, several):
    """So many of a unit, to the nearest that prose has: "half a second", "one and a half metres", "two metres", "120 metres"."""
    if value < 2.25:
        near = _SMALL_SIZES[bisect(_SMALL_HALFWAY, value)]
        if near < 1:
            part = _SMALL[near]
            return f"{part} {_article(one)}" if part == "half" else f"{part} of {_article(one)}"
        return f"{_SMALL[near]} {several if near > 1 else one}"
    halves = round(2 * value)
    if value < 5 and halves % 2:
        return f"{number(halves // 2)} and a half {several}"
    return f"{number(round_off(value))} {several}"


def round_off(value):
    """To two figures, whole."""
    if value < 1:
        return round(value)
    step = 10 ** max(0, math.floor(math.log10(value)) - 1)
    return step * round(value / step)


def _article(word):
    return f"{'an' if word[0] in 'aeiou' else 'a'} {word}"


def share(value):
    """A share of one in words: "a little over half", "about a tenth", "almost all"; above one, how many times."""
    if value < LEAST_SHARE:
        return "next to nothing"
    if value < 0.95:
        near, said = _SHARES[bisect(_SHARES_HALFWAY, value)]
        off = value / near - 1
        return f"{'about' if abs(off) <= 0.04 else 'a little over' if off > 0 else 'a little under'} {said}"
    if value <= 1.05:
        return "as much"
    return f"{amount(value, 'time', 'times')} as much"


def _by_body(left_out):
    """(logarithm of its size, how much less it is liked than one of them, its words) of so many of each measure but some."""
    return [
        (
            math.log(count * measure.size_m),
            0.01 * (count - 1),
            measure.one if count == 1 else measure.several.format(count=number(count)),
        )
        for measure in MEASURES
        if measure.one not in left_out
        for count in range(1, measure.most + 1)
    ]


_OF_HEIGHTS, _ALONG_THE_GROUND = _by_body(ON_FOOT), _by_body(UPRIGHT)


@dataclass(frozen=True)
class Telling:
    """How a paragraph is told: present or past tense, in metres or feet."""

    past: bool = False
    units: str = "si"

    def verb(self, present, past):
        """The form of a verb."""
        return past if self.past else present

    def would(self, verb, participle):
        """What did not happen: "would land", "would have landed"."""
        return f"would have {participle}" if self.past else f"would {verb}"

    def length(self, value_m, upright=False):
        """About how long: "about a hand’s breadth", "about five metres", "about 1.2 kilometres"; upright: told of a height."""
        if value_m < (UPRIGHT_BY_BODY_M if upright else BY_BODY_M):
            return self._by_body(value_m, upright)
        small, large, per, many = (1.0, 1000.0, ("metre", "metres"), ("kilometre", "kilometres"))
        if self.units == "us":
            small, large, per, many = (FOOT_M, 5280 * FOOT_M, ("foot", "feet"), ("mile", "miles"))
        if value_m < large:
            return f"about {amount(value_m / small, *per)}"
        return f"about {self._in_digits(value_m / large)} {many[1]}"

    def _in_digits(self, value):
        return f"{value:.1f}" if value < 10 else f"{round_off(value):,}"

    def _by_body(self, value_m, upright):
        if value_m < 0.7 * MEASURES[0].size_m:
            return "less than a finger’s breadth"
        size, likes = math.log(value_m), _OF_HEIGHTS if upright else _ALONG_THE_GROUND
        return f"about {min(likes, key=lambda one: abs(size - one[0]) + one[1])[2]}"

    def time(self, value_s):
        """About how long it lasts: "half a second", "about two and a half seconds", "about three minutes"."""
        if value_s < 0.18:
            return "a fraction of a second"
        if value_s < 90:
            return f"about {amount(value_s, 'second', 'seconds')}"
        if value_s < 5400:
            return f"about {amount(value_s / 60, 'minute', 'minutes')}"
        return f"about {amount(value_s / 3600, 'hour', 'hours')}"

    def speed(self, value_m_s):
        """About how fast: "about six metres per second", "at a walking pace" is told by who walks."""
        per, names = (FOOT_M, ("foot", "feet")) if self.units == "us" else (1.0, ("metre", "metres"))
        if value_m_s / per < 0.2:
            return "hardly any speed"
        return f"about {amount(value_m_s / per, *names)} per second"

    def where(self, way, across, whom="you"):
        """Where a way (`motions.ways.Way`) leads from somebody who faces spinward: "about a hand’s breadth behind you, against the
        spin"; "" where it leads nowhere. across: words for either way across; whom: from whom or what it is counted."""
        along, aside = abs(way.in_all_m), abs(way.axial_m)
        if max(along, aside) < STILL_M:
            return ""
        parts = []
        if along >= max(STILL_M, 0.1 * aside):
            parts.append((along, self._along(way, whom)))
        if aside >= max(STILL_M, 0.1 * along):
            parts.append((aside, f"{self.length(aside)} {_aside(way.axial_m, across)}"))
        return listed([said for _, said in sorted(parts, key=lambda part: -part[0])])

    def _along(self, way, whom):
        ahead = way.in_all_m > 0
        side = f"ahead of {whom}, with the spin" if ahead else f"behind {whom}, against the spin"
        if way.turns and way.round_m:
            turns = abs(way.in_all_m) / way.round_m
            if turns < _ALL_ROUND:
                return f"{share(turns)} of the way round the habitat, {side.partition(', ')[2]}"
            times = amount(turns, "time", "times")
            return f"{'about once' if times == 'one time' else f'about {times}'} round the habitat, {side.partition(', ')[2]}"
        of_turn = abs(way.of_turn or 0.0)
        part = f", {share(of_turn)} of the way round the habitat" if of_turn >= 0.06 else ""
        return f"{self.length(abs(way.spinward_m))} {side}{part}"


def _aside(axial_m, across):
    if "axis" in across[0]:  # facing spinward with up toward the axis, the axis points to the right
        return "to your right" if axial_m > 0 else "to your left"
    return "farther out" if axial_m > 0 else "farther in"
