"""How a value lies among published ones, as a sentence."""

from .limits import same

_LEAST = 1e-6  # six places are shown of a small value
_NB = "\u00a0"


def lies(value, marks, called, unit):
    """How a value above 0 lies among marks, (value, what it is), rising: "This spin, 3.00 rpm, lies below the 6 rpm of the last step."."""
    equal = [mark for mark in marks if same(value, mark[0])]
    over = [mark for mark in marks if mark[0] < value]
    under = [mark for mark in marks if mark[0] > value]
    if equal:
        where = f"equals the {_mark(equal[0], unit)}"
    elif over and under:
        where = f"lies between the {_mark(over[-1], unit)} and the {_mark(under[0], unit)}"
    else:
        where = f"lies below the {_mark(under[0], unit)}" if under else f"lies above the {_mark(over[-1], unit)}"
    return f"{called}, {_told_apart(value, marks, unit)}, {where}."


def _mark(mark, unit):
    return f"{mark[0]:g}{_NB}{unit} {mark[1]}"


def _told_apart(value, marks, unit):
    """A value with as many places as tell it from the marks that it does not equal."""
    if value < _LEAST:
        return f"less than {_LEAST:.6f}{_NB}{unit}"
    beside = [mark for mark, _ in marks if not same(value, mark)]
    if value < 0.01:
        return f"{value:.6f}".rstrip("0") + f"{_NB}{unit}"
    texts = (f"{value:.{places}f}" for places in range(2, 12))
    return next(text for text in texts if float(text) not in beside) + f"{_NB}{unit}"
