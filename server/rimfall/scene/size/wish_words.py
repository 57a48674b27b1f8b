"""Wishes for a habitat and figures of one, in words: three figures, their units, and a wish as it was given."""

import math

from ...comfort.published import STUDIES
from ...comfort.quantities import QUANTITIES
from ...phrases import in_units

_NB = "\u00a0"
BOUNDS = {"exactly": "", "at_least": "at least ", "at_most": "no more than "}
AS_WISHED = {
    "gravity": "{}",
    "spin": "{}",
    "gradient": "{} from head to foot",
    "rim_speed": "{} at the rim",
    "head_turn": "{} as the head turns",
    "coriolis": "{} of Coriolis to gravity",
    "radius": "a radius of {}",
}
_LEAST_SAID = 1e-6  # what is smaller is only said to be
_MOST_PLACES = 9
_MOST_PLACES_OF_ANY = 300  # of next to nothing: a power of ten beyond is no number
_MOST_MORE = 9  # figures, besides the three
_EXACT = 2.5e-10  # relative: what is this near a wish meets it, with room for what follows from it
DUST = 1e-9  # of a last figure: what is this near a round one is that


def three_figures(value):
    """A number to three figures, never with a power of ten: 0.272, 2.00, 41.9, 1,235."""
    size = abs(value)
    if size < _LEAST_SAID:
        return "0" if size == 0 else "under 0.000001"
    return f"{value:,.{_places(size)}f}"


def _places(size):
    """Decimals of three figures."""
    places = 0 if size >= 99.95 else 1 if size >= 9.995 else 2
    while size * 10.0**places < 99.95 and size < 0.9995 and places < _MOST_PLACES_OF_ANY:
        places += 1
    return places


def in_unit(quantity, value, units="si", figures=three_figures):
    """A value of a quantity, or of "radius", with its unit: "2.00 rpm"; lengths and speeds in feet where units is "us"."""
    unit = "m" if quantity == "radius" else QUANTITIES[quantity].unit
    value, unit = in_units(value, unit, units)
    if unit == "m" and value >= 10_000:
        value, unit = value / 1000, "km"
    return figures(value) + (f"{_NB}{unit}" if unit else "")


def as_written(quantity, value, units, figures):
    """The figure that `in_unit` writes, as a number in the quantity's own unit; the value itself where no number is written."""
    unit = "m" if quantity == "radius" else QUANTITIES[quantity].unit
    shown, name = in_units(value, unit, units)
    if value == 0:
        return 0.0
    per = shown / value / (1000 if name == "m" and shown >= 10_000 else 1)
    written = in_unit(quantity, value, units, figures).partition(_NB)[0].replace(",", "")
    try:
        return float(f"{float(written) / per:.12g}")
    except ValueError:
        return value


def as_given(value):
    """A wish's own figure, as it was given where that is short: 0.9, 2, 60."""
    return f"{value:,.7g}" if 1e-4 <= value < 1e6 else f"{value:,.0f}" if value >= 1e6 else three_figures(value)


def wanted(wish, units="si"):
    """A wish in words: "no more than 2 rpm"."""
    if wish.kind == "study":
        return f"the limits of {STUDIES[wish.study].called}"
    return wanted_figure(wish.quantity, wish.bound, wish.value, units)


def wanted_figure(quantity, bound, value, units="si"):
    """A wish for a figure in words."""
    figures = three_figures if units == "us" and converts(quantity) else as_given
    return AS_WISHED[quantity].format(BOUNDS[bound] + in_unit(quantity, value, units, figures))


def converts(quantity):
    """Whether US units show another figure of it."""
    return quantity in ("radius", "rim_speed")


def enough(change, as_was):
    """What writes the figure that a `answers.Change` could be: three figures toward the side that does, or as many more as keep
    to what does and tell it from the one that it was, which `as_was` writes."""
    whole = math.ceil if change.could_be > change.was else math.floor
    ends = sorted((change.could_be, change.furthest))

    def figures(value):
        if value < _LEAST_SAID:
            return three_figures(value)
        scale = value / change.could_be
        was, first = _bare(as_was(scale * change.was)), _places(rounded(value, whole))
        for places in range(first, first + _MOST_MORE + 1):
            near = rounded(value, whole, places)
            text = three_figures(near) if places == first else f"{near:,.{places}f}"
            does = ends[0] * (1 - _EXACT) <= near / scale <= ends[1] * (1 + _EXACT)
            if does and _bare(text) != was:
                break
        return text

    return figures


def _bare(text):
    """A number without the zeros that end its decimals."""
    return text.rstrip("0").rstrip(".") if "." in text else text


def apart_from(radius_m, units):
    """What writes a radius to three figures, or to as many more as part it from one that is told beside it."""
    other, _ = in_units(radius_m, "m", units)

    def figures(value):
        places = _places(abs(value))
        while round(value, places) == round(other, places) and places < _MOST_PLACES:
            places += 1
        return f"{value:,.{places}f}"

    return figures


def rounded(value, whole, places=None):
    """A value up or down to so many decimals, or to the figures that `three_figures` shows: 0.9997 is 0.999 then, not 0.99."""
    step = 10.0 ** -(_places(value) if places is None else places)
    near = whole(value / step - (DUST if whole is math.ceil else -DUST)) * step
    finer = _places(near)
    return rounded(value, whole, finer) if places is None and 10.0**-finer < step else near
