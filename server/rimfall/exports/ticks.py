"""Where an axis has figures: round values, evenly spread or on a log axis, and how they are written."""

from itertools import pairwise
from math import ceil, floor, inf, log10

from ..language import in_signs

_STEPS = ((1, 2, 5), (1, 3), (1,))  # of each decade of a log axis, tried in order
_DUST = 1e-9
_GAP = 1.3  # times a figure's own room, between two that stand beside one another


def even(low, high, about):
    """Round values from low to high, about that many: steps of 1, 2 or 5 times a power of ten."""
    raw = (high - low) / about
    power = 10.0 ** floor(log10(raw))
    step = next(k * power for k in (1, 2, 5, 10) if k * power >= raw * (1 - _DUST))
    return [k * step for k in range(ceil(low / step - _DUST), floor(high / step + _DUST) + 1)]


def decades(low, high, length, room_of, over=inf):
    """Values of a log axis and their figures, [(value, figure)]: as many of each decade as have room beside one another on an axis
    so long; room_of(figure): what a figure takes of that length; over: how far the last may reach past the axis' end."""
    decade = length / log10(high / low)
    for steps in _STEPS:
        for write in (figure_of, thousands):
            ticks = [(value, write(value)) for value in _rounds(low, high, steps)]
            past = room_of(ticks[-1][1]) / 2 - decade * log10(high / ticks[-1][0])
            if past <= over and all(_apart(*pair, decade, room_of) for pair in pairwise(ticks)):
                return ticks
    return ticks


def _rounds(low, high, steps):
    powers = range(floor(log10(low) + _DUST), floor(log10(high) + _DUST) + 1)
    every = [step * 10.0**power for power in powers for step in steps]
    return [value for value in every if low * (1 - _DUST) <= value <= high * (1 + _DUST)]


def _apart(one, other, decade, room_of):
    """Whether two neighbouring figures, each at the middle of its tick, keep clear of one another."""
    return decade * log10(other[0] / one[0]) >= _GAP * (room_of(one[1]) + room_of(other[1])) / 2


def figure_of(value):
    """A round value as it is written: 1,500, 0.25, −5."""
    return in_signs(_plain(value))


def _plain(value):
    return f"{value:,.10g}".replace("-", "−") if abs(value) > 1e-12 else "0"


def figures_of(values):
    """The figures of one axis, all to as many decimals: 2.96, 2.98, 3.00."""
    plain = [_plain(value) for value in values]
    places = max((len(one.partition(".")[2]) for one in plain), default=0)
    return [
        in_signs(f"{value:,.{places}f}".replace("-", "−")) if one != "0" else one
        for value, one in zip(values, plain, strict=True)
    ]


def thousands(value):
    """The same where room is scarce: 10k."""
    return f"{figure_of(value / 1000)}k" if value >= 1000 else figure_of(value)
