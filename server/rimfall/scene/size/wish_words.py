"""Wishes for a habitat and figures of one, in words: three figures, their units, and a wish as it was given."""

import math

from ...comfort.published import STUDIES
from ...comfort.quantities import QUANTITIES
from ...language import in_signs, tr, tr_as, tr_later
from ...phrases import in_units

_NB = "\u00a0"
_AS_WISHED = {
    "gravity": "{figure}",
    "spin": "{figure}",
    "gradient": tr_later("{figure} from head to foot"),
    "rim_speed": tr_later("{figure} at the rim"),
    "head_turn": tr_later("{figure} as the head turns"),
    "coriolis": tr_later("{figure} of Coriolis to gravity"),
    "radius": tr_later("a radius of {figure}"),
}
_LEAST_SAID = 1e-6  # what is smaller is only said to be
_MOST_PLACES = 9
_MOST_PLACES_OF_ANY = 300  # of next to nothing: a power of ten beyond is no number
_MOST_MORE = 9  # figures, besides the three
_EXACT = 2.5e-10  # relative: what is this near a wish meets it, with room for what follows from it
DUST = 1e-9  # of a last figure: what is this near a round one is that


def three_figures(value):
    """A number to three figures, never with a power of ten: 0.272, 2.00, 41.9, 1,235."""
    return _said(three_digits(value))


def three_digits(value):
    """The same in English signs; "" for one too small to be shown."""
    size = abs(value)
    if size < _LEAST_SAID:
        return "0" if size == 0 else ""
    return f"{value:,.{_places(size)}f}"


def _said(digits):
    """A number of these digits in the signs of the language."""
    return in_signs(digits) if digits else tr("under {figure}", figure=in_signs("0.000001"))


def _places(size):
    """Decimals of three figures."""
    places = 0 if size >= 99.95 else 1 if size >= 9.995 else 2
    while size * 10.0**places < 99.95 and size < 0.9995 and places < _MOST_PLACES_OF_ANY:
        places += 1
    return places


def in_unit(quantity, value, units="si", digits=three_digits):
    """A value of a quantity, or of "radius", with its unit: "2.00 rpm"; lengths and speeds in feet where units is "us"."""
    figure, unit = _shown(quantity, value, units, digits)
    return _said(figure) + (f"{_NB}{unit}" if unit else "")


def _shown(quantity, value, units, digits):
    """The digits that are shown of a value, and its unit."""
    unit = "m" if quantity == "radius" else QUANTITIES[quantity].unit
    value, unit = in_units(value, unit, units)
    if unit == "m" and value >= 10_000:
        value, unit = value / 1000, "km"
    return digits(value), unit


def as_written(quantity, value, units, digits):
    """The figure that `in_unit` writes, as a number in the quantity's own unit; the value itself where no number is written."""
    unit = "m" if quantity == "radius" else QUANTITIES[quantity].unit
    shown, name = in_units(value, unit, units)
    if value == 0:
        return 0.0
    per = shown / value / (1000 if name == "m" and shown >= 10_000 else 1)
    figure, _ = _shown(quantity, value, units, digits)
    return float(f"{float(figure.replace(',', '')) / per:.12g}") if figure else value


def as_given(value):
    """A wish's own figure, as it was given where that is short: 0.9, 2, 60."""
    return _said(digits_given(value))


def digits_given(value):
    """The same in English signs."""
    return f"{value:,.7g}" if 1e-4 <= value < 1e6 else f"{value:,.0f}" if value >= 1e6 else three_digits(value)


def wanted(wish, units="si"):
    """A wish in words: "no more than 2 rpm"."""
    if wish.kind == "study":
        return tr("the limits of {study}", study=STUDIES[wish.study].called)
    return wanted_figure(wish.quantity, wish.bound, wish.value, units)


def wanted_figure(quantity, bound, value, units="si"):
    """A wish for a figure in words."""
    digits = three_digits if units == "us" and converts(quantity) else digits_given
    return as_wished(quantity, bounded(bound, in_unit(quantity, value, units, digits)))


def as_wished(quantity, figure):
    """A figure of a quantity as a wish has it: "0.06 from head to foot"."""
    return tr(_AS_WISHED[quantity], figure=figure)


def bounded(bound, figure):
    """A figure with what it bounds."""
    if bound == "exactly":
        return figure
    if bound == "at_least":
        return tr("at least {figure}", figure=figure)
    return tr_as("a wish", "no more than {figure}", figure=figure)


def converts(quantity):
    """Whether US units show another figure of it."""
    return quantity in ("radius", "rim_speed")


def enough(change, as_was):
    """What gives the digits of the figure that a `answers.Change` could be: three toward the side that does, or as many more as keep
    to what does and tell it from the one that it was, whose digits `as_was` gives."""
    whole = math.ceil if change.could_be > change.was else math.floor
    ends = sorted((change.could_be, change.furthest))

    def digits(value):
        if value < _LEAST_SAID:
            return three_digits(value)
        scale = value / change.could_be
        was, first = _bare(as_was(scale * change.was)), _places(rounded(value, whole))
        for places in range(first, first + _MOST_MORE + 1):
            near = rounded(value, whole, places)
            text = three_digits(near) if places == first else f"{near:,.{places}f}"
            does = ends[0] * (1 - _EXACT) <= near / scale <= ends[1] * (1 + _EXACT)
            if does and _bare(text) != was:
                break
        return text

    return digits


def _bare(text):
    """A number without the zeros that end its decimals."""
    return text.rstrip("0").rstrip(".") if "." in text else text


def apart_from(radius_m, units):
    """What gives the digits of a radius: three, or as many more as part it from one that is told beside it."""
    other, _ = in_units(radius_m, "m", units)

    def digits(value):
        places = _places(abs(value))
        while round(value, places) == round(other, places) and places < _MOST_PLACES:
            places += 1
        return f"{value:,.{places}f}"

    return digits


def rounded(value, whole, places=None):
    """A value up or down to so many decimals, or to the figures that `three_figures` shows: 0.9997 is 0.999 then, not 0.99."""
    step = 10.0 ** -(_places(value) if places is None else places)
    near = whole(value / step - (DUST if whole is math.ceil else -DUST)) * step
    finer = _places(near)
    return rounded(value, whole, finer) if places is None and 10.0**-finer < step else near
