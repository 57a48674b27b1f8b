"""Figures as prose has them: rounded, in words, measured against a body, and without symbols.

The exact sentences are in `phrases.py` and what builds on it; here nothing is exact, and everything is near (`NEAR`, `NEAR_M`).
"""

import math
from dataclasses import dataclass

from .amounts import FOOT, HOUR, METRE, MINUTE, SECOND, TIME, amount, number, round_off, share
from .language import tr, tr_as, tr_later, tr_later_as, written
from .phrases import ALONG_THE_AXIS, FOOT_M, STILL_M, listed
from .physics.constants import ARM_REACH_M, PERSON_HEIGHT_M

NEAR, NEAR_M = 0.2, 0.0125  # the greatest error of a figure in prose, as a share of it or in metres


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
    Measure(tr_later("a finger’s breadth"), tr_later("{count} fingers’ breadth"), 0.02, 6, f"{_SURVEY}, rounded"),
    Measure(tr_later("a hand’s breadth"), tr_later("{count} hands’ breadth"), 0.085, 4, _SURVEY),
    Measure(tr_later("a hand’s length"), tr_later("{count} hands’ length"), 0.108 * PERSON_HEIGHT_M, 3, _SEGMENTS),
    Measure(
        tr_later("a forearm’s length"),
        tr_later("{count} forearms’ length"),
        0.254 * PERSON_HEIGHT_M,
        2,
        f"{_SEGMENTS}: elbow to fingertips",
    ),
    Measure(
        tr_later("an arm’s reach"),
        tr_later("{count} arms’ reach"),
        ARM_REACH_M,
        1,
        f"{_SEGMENTS}: shoulder to fingertips",
    ),
    Measure(
        tr_later("a step"),
        tr_later_as("on foot", "{count} steps"),
        0.43 * PERSON_HEIGHT_M,
        4,
        "a walker’s step, share of stature: from memory",
    ),
    Measure(tr_later("a step and a half"), "", 1.5 * 0.43 * PERSON_HEIGHT_M, 1, "a step, as above"),
    Measure(
        tr_later("a body’s length"), tr_later("{count} body lengths"), PERSON_HEIGHT_M, 1, "the person on the stages"
    ),
)
ON_FOOT = {"a step", "a step and a half", "a body’s length"}  # told along the ground alone
UPRIGHT = {"an arm’s reach"}  # told of heights alone
BY_BODY_M, UPRIGHT_BY_BODY_M = 3.3, 1.0  # what is longer is told in metres or feet

# turns from which it is once round, and not a part of the way; and up to which, halfway to one and a quarter
_ALL_ROUND, _ONCE_UP_TO = 0.95, math.sqrt(1.25)


def _by_body(left_out):
    """(logarithm of its size, how much less it is liked than one of them, measure, count) of so many of each measure but some."""
    return [
        (math.log(count * measure.size_m), 0.01 * (count - 1), measure, count)
        for measure in MEASURES
        if measure.one not in left_out
        for count in range(1, measure.most + 1)
    ]


_OF_HEIGHTS, _ALONG_THE_GROUND = _by_body(ON_FOOT), _by_body(UPRIGHT)
YOU, WHERE_YOU_JUMPED = 0, 1  # from whom or what a way is counted
_SIDES = (  # of the length of a way: behind and ahead
    (tr_later("{length} behind you, against the spin"), tr_later("{length} ahead of you, with the spin")),
    (
        tr_later("{length} behind where you jumped, against the spin"),
        tr_later("{length} ahead of where you jumped, with the spin"),
    ),
)
_PART_ROUND = (
    tr_later("{share} of the way round the habitat, against the spin"),
    tr_later("{share} of the way round the habitat, with the spin"),
)
_ONCE_ROUND = (
    tr_later("about once round the habitat, against the spin"),
    tr_later("about once round the habitat, with the spin"),
)
_TIMES_ROUND = (
    tr_later("about {times} round the habitat, against the spin"),
    tr_later("about {times} round the habitat, with the spin"),
)


@dataclass(frozen=True)
class Telling:
    """How a paragraph is told: present or past tense, in metres or feet."""

    past: bool = False
    units: str = "si"

    def says(self, present, past, /, **places):
        """A sentence in its tense: it is given in both, marked (`tr_later`)."""
        return tr(past if self.past else present, **places)

    def length(self, value_m, upright=False):
        """About how long: "about a hand’s breadth", "about five metres", "about 1.2 kilometres"; upright: told of a height."""
        if value_m < (UPRIGHT_BY_BODY_M if upright else BY_BODY_M):
            return self._by_body(value_m, upright)
        us = self.units == "us"
        small, large, unit = (FOOT_M, 5280 * FOOT_M, FOOT) if us else (1.0, 1000.0, METRE)
        if value_m < large:
            return tr("about {amount}", amount=amount(value_m / small, unit))
        far = self._in_digits(value_m / large)
        return tr("about {number} miles", number=far) if us else tr("about {number} kilometres", number=far)

    def _in_digits(self, value):
        return written(value, ".1f") if value < 10 else written(round_off(value), ",")

    def _by_body(self, value_m, upright):
        if value_m < 0.7 * MEASURES[0].size_m:
            return tr("less than a finger’s breadth")
        size, likes = math.log(value_m), _OF_HEIGHTS if upright else _ALONG_THE_GROUND
        _, _, measure, count = min(likes, key=lambda one: abs(size - one[0]) + one[1])
        said = tr(measure.one) if count == 1 else tr(measure.several, count=number(count))
        return tr("about {amount}", amount=said)

    def time(self, value_s, dative=True):
        """About how long it lasts, as after "after": "half a second", "about two and a half seconds", "about three minutes"."""
        if value_s < 0.18:
            return (
                tr_as("dative", "a fraction of a second") if dative else tr_as("accusative", "a fraction of a second")
            )
        if value_s < 90:
            said = amount(value_s, SECOND, dative)
        else:
            said = amount(value_s / 60, MINUTE, dative) if value_s < 5400 else amount(value_s / 3600, HOUR, dative)
        return tr("about {amount}", amount=said)

    def speed(self, value_m_s):
        """About how fast, as after "at": "about six metres per second"; "at a walking pace" is told by who walks."""
        per, unit = (FOOT_M, FOOT) if self.units == "us" else (1.0, METRE)
        if value_m_s / per < 0.2:
            return tr("hardly any speed")
        return tr("about {amount} per second", amount=amount(value_m_s / per, unit, dative=True))

    def where(self, way, across, whom=YOU):
        """Where a way (`motions.ways.Way`) leads from somebody who faces spinward: "about a hand’s breadth behind you, against the
        spin"; "" where it leads nowhere. across: words for either way across; whom: from whom or what it is counted."""
        along, aside = abs(way.in_all_m), abs(way.axial_m)
        if max(along, aside) < STILL_M:
            return ""
        parts = []
        if along >= max(STILL_M, 0.1 * aside):
            parts.append((along, self._along(way, whom)))
        if aside >= max(STILL_M, 0.1 * along):
            parts.append((aside, _aside(self.length(aside), way.axial_m, across)))
        return listed([said for _, said in sorted(parts, key=lambda part: -part[0])])

    def _along(self, way, whom):
        ahead = way.in_all_m > 0
        if way.turns and way.round_m:
            turns = abs(way.in_all_m) / way.round_m
            if turns < _ALL_ROUND:
                return tr(_PART_ROUND[ahead], share=share(turns))
            if turns < _ONCE_UP_TO:
                return tr(_ONCE_ROUND[ahead])
            return tr(_TIMES_ROUND[ahead], times=amount(turns, TIME))
        where, of_turn = tr(_SIDES[whom][ahead], length=self.length(abs(way.spinward_m))), abs(way.of_turn or 0.0)
        if of_turn < 0.06:
            return where
        return tr("{where}, {share} of the way round the habitat", where=where, share=share(of_turn))


def _aside(length, axial_m, across):
    if across == ALONG_THE_AXIS:  # facing spinward with up toward the axis, the axis points to the right
        return (
            tr("{length} to your right", length=length) if axial_m > 0 else tr("{length} to your left", length=length)
        )
    return tr("{length} farther out", length=length) if axial_m > 0 else tr("{length} farther in", length=length)
